package gripwright.pad;

import gripwright.model.GraspObject;
import gripwright.model.Need;
import java.util.ArrayList;
import java.util.List;

/**
 * What touch does to each object of a need before the finger halts, at one pad.
 *
 * @param forces at the worst place, between two chips
 * @param overChip at the best place
 * @param averaging readings whose running mean gives the least force on a fixed object met over a chip; below 1: none
 */
public record TouchAnswer(
        PadDesign pad, TouchStop.Forces forces, TouchStop.Forces overChip, double averaging, List<Touched> objects) {
    private static final double GRAVITY = 9.80665;

    /** More than this is called knocked away; our own convention [m]. */
    public static final double KNOCKED = 5e-3;

    public TouchAnswer {
        objects = List.copyOf(objects);
    }

    /**
     * One object.
     *
     * @param friction of the object on the table [N]
     * @param result if the object meets the pad at the worst place, between two chips
     * @param overChip if it meets the pad over a chip
     */
    public record Touched(String name, double mass, double friction, Push.Result result, Push.Result overChip) {
        public boolean knocked() {
            return result.moved() > KNOCKED;
        }
    }

    /** @param period of the scan [s] */
    public static TouchAnswer of(PadSetup setup, PadDesign pad, double period, Need need) {
        PadResponse response = PadModel.filled(PadGeometry.of(pad.chip(), pad.overBoard()), pad.modulus(), pad.bulk());
        Strip strip = new Strip(pad, response);
        double stiffness = PadAnswer.stiffness(pad);
        int cells = setup.pads().stream().mapToInt(PadDesign::cells).sum();
        TouchStop.Forces forces = setup.touch().forces(strip.worst(), pad.chip().noise(), cells, period, stiffness);
        TouchStop.Forces best = setup.touch().forces(response.peak(), pad.chip().noise(), cells, period, stiffness);
        List<Touched> objects = new ArrayList<>();
        for (GraspObject object : need.objects()) {
            double mass = object.mass();
            double friction = need.tableFriction().mean() * mass * GRAVITY;
            objects.add(new Touched(
                    object.name(),
                    mass,
                    friction,
                    setup.touch().push(forces, mass, friction).run(),
                    setup.touch().push(best, mass, friction).run()));
        }
        return new TouchAnswer(pad, forces, best, setup.touch().averaging(best, period), objects);
    }

    /** The same answer for a pad that differs only in its name. */
    public TouchAnswer named(String name) {
        return new TouchAnswer(pad.named(name), forces, overChip, averaging, objects);
    }
}
