package gripwright.closing;

import gripwright.math.Pose;
import gripwright.math.Vec3;
import java.util.List;

/**
 * Everything needed to draw a run and to check the statics of its end independently. World frame: z up, table top
 * z = 0 before the lift, x the closing direction at the nominal place. SI units.
 *
 * @param reason why this outcome, in a sentence with its numbers
 * @param cautions what to bear in mind about the numbers, in sentences; may be empty
 * @param bodies names, in the order of {@link Frame#bodies()}
 * @param joints every degree of freedom of the hand
 * @param motors tension and length at each winch
 * @param contacts every contact that carries load at the end
 * @param object pose of the shape's frame
 * @param centreOfMass in the world [m]
 * @param weight vector on the object [N]
 * @param firstTouches in order
 * @param padPoints geometry of the pad points
 * @param frames of the run, if they were recorded
 */
public record ClosingDetail(
        ClosingSummary summary,
        Conditions conditions,
        Criteria criteria,
        Numerics numerics,
        String reason,
        List<String> cautions,
        List<String> bodies,
        List<JointState> joints,
        List<MotorState> motors,
        List<ContactForce> contacts,
        List<Pose> bodyPoses,
        Pose object,
        Vec3 centreOfMass,
        Vec3 weight,
        double tableHeight,
        List<FirstTouch> firstTouches,
        List<PadPoint> padPoints,
        List<Frame> frames) {
    /**
     * One degree of freedom.
     *
     * @param name "left 1" (flexion), "left 1 sideways", "arm x", ...
     * @param body index of the body it carries
     * @param value [rad] or [m]
     * @param origin a point of its axis in the world [m]
     * @param axis in the world [-]
     * @param slides true for a sliding degree of freedom (arm), false for a turning one
     * @param springRate [N m/rad or N/m]
     * @param rest [rad or m]
     * @param lower hard stop, upper hard stop [rad]
     * @param springMoment of spring and stops [N m or N]
     * @param momentArm of the tendon [m]
     * @param tension of the tendon at this joint, after friction [N]
     * @param residual out of balance, damping left out [N m or N]
     */
    public record JointState(
            String name,
            int body,
            double value,
            Vec3 origin,
            Vec3 axis,
            boolean slides,
            double springRate,
            double rest,
            double lower,
            double upper,
            double springMoment,
            double momentArm,
            double tension,
            double residual) {}

    /** One winch: tension [N] and length wound in since the start [m]. */
    public record MotorState(String name, double tension, double wound) {}

    /** A body's first touch of the object: its index, the greatest winch tension then [N], and the phase. */
    public record FirstTouch(int body, double tension, Frame.Phase phase) {}

    public ClosingDetail {
        cautions = List.copyOf(cautions);
        bodies = List.copyOf(bodies);
        joints = List.copyOf(joints);
        motors = List.copyOf(motors);
        contacts = List.copyOf(contacts);
        bodyPoses = List.copyOf(bodyPoses);
        firstTouches = List.copyOf(firstTouches);
        padPoints = List.copyOf(padPoints);
        frames = List.copyOf(frames);
    }
}
