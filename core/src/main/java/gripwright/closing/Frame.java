package gripwright.closing;

import gripwright.math.Pose;
import java.util.List;

/**
 * One moment of a run, for drawing.
 *
 * @param phase of the run
 * @param tension at each motor's winch [N]
 * @param jointAngles flexion angles, finger by finger, proximal first [rad]
 * @param bodies poses in the world: the palm, then the phalanges finger by finger, proximal first; phalanx frame:
 *     origin at its joint, x along it, y out of the pad, z the joint axis
 * @param object pose of the shape's frame in the world
 * @param bodyForce total normal force of each body on the object [N], in the order of {@code bodies}
 * @param padPressure pressure of each pad point [Pa], in the order of {@link PadPoint}s of the detail
 * @param table height of the table top [m] (the lift is shown as the table sinking)
 */
public record Frame(
        Phase phase,
        List<Double> tension,
        List<Double> jointAngles,
        List<Pose> bodies,
        Pose object,
        List<Double> bodyForce,
        float[] padPressure,
        double table) {
    /** Parts of a run, in order. */
    public enum Phase {
        APPROACH,
        CLOSE,
        LIFT
    }

    public Frame {
        tension = List.copyOf(tension);
        jointAngles = List.copyOf(jointAngles);
        bodies = List.copyOf(bodies);
        bodyForce = List.copyOf(bodyForce);
    }
}
