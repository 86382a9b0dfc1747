package gripwright.closing;

import gripwright.math.Vec3;

/**
 * One contact at the end of a run, in the world frame.
 *
 * @param kind what touches what
 * @param body name of the hand's body ("palm", "left 1" for the first phalanx of finger left), or "table"
 * @param other name of the other body: "object", "table", or a body of the hand
 * @param point where the force acts [m]
 * @param normal unit normal at the contact, pointing from {@code body} into {@code other}
 * @param normalForce [N], 0 or more, on {@code other} along the normal
 * @param tangentialForce on {@code other} [N]
 * @param friction coefficient used [-]
 * @param pressure [Pa]; 0 where the area is not defined (bone, table)
 */
public record ContactForce(
        Kind kind,
        String body,
        String other,
        Vec3 point,
        Vec3 normal,
        double normalForce,
        Vec3 tangentialForce,
        double friction,
        double pressure) {
    /** Pairs of things that touch. */
    public enum Kind {
        PAD_ON_OBJECT,
        BONE_ON_OBJECT,
        TABLE_ON_OBJECT,
        FINGER_ON_TABLE,
        FINGER_ON_FINGER
    }
}
