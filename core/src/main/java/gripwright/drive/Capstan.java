package gripwright.drive;

import gripwright.check.Check;

/**
 * Tension lost by a tendon sliding over something round: T2 = T1 exp(mu phi).
 *
 * <p>Source: Euler-Eytelwein relation, any machine-design handbook. Valid for a thin, flexible tendon.
 */
public final class Capstan {
    private Capstan() {}

    /**
     * Tension on the far side of a guide.
     *
     * @param tension on the pulled side [N]
     * @param friction coefficient [-], 0 or more
     * @param wrap total bend [rad], 0 or more
     * @return tension on the far side when the tendon slides towards the pulled side [N]
     */
    public static double farSide(double tension, double friction, double wrap) {
        Check.notNegative(tension, "tension", "N");
        Check.notNegative(friction, "friction", "");
        Check.notNegative(wrap, "wrap", "rad");
        return tension * share(friction * wrap);
    }

    /** Share of the tension left after guides whose friction times bend adds up to {@code loss} [-]. */
    static double share(double loss) {
        return StrictMath.exp(-loss);
    }
}
