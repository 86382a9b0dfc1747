package gripwright.model;

import gripwright.check.Check;
import gripwright.math.Rotation;
import gripwright.math.Vec3;
import gripwright.shape.Shape;
import java.util.List;
import java.util.OptionalDouble;

/**
 * One object to be picked up.
 *
 * @param shape in the object's own frame
 * @param mass [kg]
 * @param massSpread the same with its uncertainty [kg]
 * @param centreOfMass in the shape's frame [m]
 * @param surface name, as in the hand's friction table
 * @param stance how it stands: turn from the shape's frame to the table axes at the nominal place
 * @param squeezeForce greatest contact force on any one phalanx or the palm it bears [N]; empty = no limit
 * @param squeezePressure greatest pad pressure it bears [Pa]; empty = no limit
 * @param grips names of the grips to be tried, at least one
 * @param weight how much it counts in the total [-]
 * @param tasks jobs for a free finger while it is held; may be empty
 */
public record GraspObject(
        String name,
        Shape shape,
        double mass,
        Spread massSpread,
        Vec3 centreOfMass,
        String surface,
        Rotation stance,
        OptionalDouble squeezeForce,
        OptionalDouble squeezePressure,
        List<String> grips,
        double weight,
        List<Press> tasks) {
    public GraspObject {
        Check.positive(mass, "mass of " + name, "kg");
        Check.notNegative(weight, "weight of " + name + " in the total", "");
        grips = List.copyOf(grips);
        tasks = List.copyOf(tasks);
    }

    /** An object without tasks. */
    public GraspObject(
            String name,
            Shape shape,
            double mass,
            Spread massSpread,
            Vec3 centreOfMass,
            String surface,
            Rotation stance,
            OptionalDouble squeezeForce,
            OptionalDouble squeezePressure,
            List<String> grips,
            double weight) {
        this(
                name,
                shape,
                mass,
                massSpread,
                centreOfMass,
                surface,
                stance,
                squeezeForce,
                squeezePressure,
                grips,
                weight,
                List.of());
    }
}
