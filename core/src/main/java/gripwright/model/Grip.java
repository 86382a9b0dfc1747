package gripwright.model;

import gripwright.math.Vec3;
import java.util.List;
import java.util.Map;

/**
 * A named preshape and how the hand comes to the object.
 *
 * <p>World frame: z up, table top z = 0, x the closing direction at the nominal place. From above: hand z = -world z,
 * hand y = -world y. From the side: hand y = world z, hand z = -world y, so the hand stands at +y and comes along -y.
 *
 * @param height how the palm's place along its normal (from above) or its height (from the side) is set
 * @param tilt turn of the hand about its own x axis [rad], right-handed, applied at the grip pose
 * @param aim where the middle of the hand stands from the origin of the object's shape at its nominal place, in table
 *     axes; across the approach only, its other component is 0 [m]
 * @param turned turn of finger bases about the palm normal (adduction) [rad], right-handed about hand z; missing = 0
 * @param fingers those taking part; the others stay at rest with their tendons held
 */
public record Grip(
        String name,
        Approach approach,
        Stand stand,
        double tilt,
        Vec3 aim,
        Map<String, Double> turned,
        List<String> fingers) {
    /** Where the hand comes from. */
    public enum Approach {
        ABOVE,
        SIDE
    }

    /** Where the hand stops. */
    public sealed interface Stand permits PalmToObject, TipsAboveTable {}

    /**
     * The palm's pad stops this far from the nearest surface of the object at its nominal place.
     *
     * @param gap along the approach [m]
     * @param heightAboveTable of the hand's origin for a side approach [m]; NaN = half the object's height
     */
    public record PalmToObject(double gap, double heightAboveTable) implements Stand {}

    /**
     * The lowest fingertip of the open, preshaped hand stops this far above the table (from above only).
     *
     * @param gap [m]
     */
    public record TipsAboveTable(double gap) implements Stand {}

    public Grip {
        turned = Map.copyOf(turned);
        fingers = List.copyOf(fingers);
    }

    /** A grip that aims at the origin of the object's shape. */
    public Grip(
            String name,
            Approach approach,
            Stand stand,
            double tilt,
            Map<String, Double> turned,
            List<String> fingers) {
        this(name, approach, stand, tilt, Vec3.ZERO, turned, fingers);
    }
}
