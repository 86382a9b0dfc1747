package gripwright.model;

import gripwright.check.Check;

/**
 * One joint of a finger. Angle 0 of the first joint: the phalanx lies in the palm plane pointing away from the middle;
 * 90 degrees: straight out of the palm. Further joints: relative to the phalanx before. Flexion is positive.
 *
 * @param rest angle at which the spring is free [rad]
 * @param lower hard stop [rad]
 * @param upper hard stop [rad]
 * @param momentArm of the tendon about the joint [m], 0 or more; constant over the angle
 */
public record Joint(JointKind kind, double rest, double lower, double upper, double momentArm) {
    public Joint {
        Check.finite(rest, "rest angle", "rad");
        Check.notNegative(momentArm, "moment arm", "m");
        Check.that(
                lower < upper,
                "joint limits are " + lower + " and " + upper + " rad; the first must be the smaller one");
    }
}
