package gripwright.study;

import gripwright.check.Check;

/**
 * What simple bench measurements say of a hand, each with its standard uncertainty by the propagation of independent
 * ones (JCGM 100:2008, the "GUM", section 5.1.2).
 */
public final class BenchFormulas {
    /** Standard gravity [m/s^2]. */
    public static final double GRAVITY = 9.80665;

    private BenchFormulas() {}

    /** A value with one standard uncertainty, in the unit of the value. */
    public record Found(double value, double uncertainty) {}

    /**
     * Coefficient of friction from the slope at which a piece begins to slide: tan of it (Coulomb friction).
     *
     * @param slope [rad], above 0 and below a right angle
     * @param error standard uncertainty of the slope [rad]
     */
    public static Found friction(double slope, double error) {
        Check.that(slope > 0 && slope < Math.PI / 2, "the slope is " + slope + " rad; expected 0 to pi/2");
        double mu = StrictMath.tan(slope);
        return new Found(mu, (1 + mu * mu) * error);
    }

    /**
     * Rate of a joint's spring from two weights hung from a lever that is level halfway.
     *
     * <p>Model: k = g (m2 - m1) r cos(half the turn) / turn.
     *
     * @param mass m2 - m1 [kg] and its standard uncertainty [kg]
     * @param lever from joint to string, square to the string when level [m], and its standard uncertainty [m]
     * @param turn between the two weights [rad], and its standard uncertainty [rad]
     */
    public static Found springRate(
            double mass, double massError, double lever, double leverError, double turn, double turnError) {
        Check.positive(mass, "mass", "kg");
        Check.positive(lever, "lever", "m");
        Check.positive(turn, "turn", "rad");
        double k = GRAVITY * mass * lever * StrictMath.cos(turn / 2) / turn;
        double perTurn = 1 / turn + StrictMath.tan(turn / 2) / 2;
        double relative =
                StrictMath.sqrt(square(massError / mass) + square(leverError / lever) + square(perTurn * turnError));
        return new Found(k, k * relative);
    }

    /** Mass that turns a spring by so much at a lever, as {@link #springRate} reads it [kg]. */
    public static double massFor(double rate, double lever, double turn) {
        return rate * turn / (GRAVITY * lever * StrictMath.cos(turn / 2));
    }

    /**
     * Shear modulus of a pad from a side force and how far its face moves: G = F t / (A d), a layer sheared without
     * bending; for pads at least five times as long as thick (common practice, no source).
     *
     * @param force [N] and its standard uncertainty
     * @param thickness [m] and its standard uncertainty
     * @param area [m^2] and its standard uncertainty
     * @param shift [m] and its standard uncertainty
     */
    public static Found shearModulus(
            double force,
            double forceError,
            double thickness,
            double thicknessError,
            double area,
            double areaError,
            double shift,
            double shiftError) {
        double g = Check.positive(force, "force", "N")
                * Check.positive(thickness, "thickness", "m")
                / (Check.positive(area, "area", "m^2") * Check.positive(shift, "shift", "m"));
        double relative = StrictMath.sqrt(square(forceError / force)
                + square(thicknessError / thickness)
                + square(areaError / area)
                + square(shiftError / shift));
        return new Found(g, g * relative);
    }

    /**
     * Friction coefficient of tendon on sheath from the pulls at both ends while it creeps: ln(T1 / T2) / angle
     * (Euler-Eytelwein).
     *
     * @param pull at the end that leads, T1 [N]
     * @param left at the other end, T2 [N], below T1
     * @param wrap total bend between [rad]
     * @param error relative standard uncertainty of each balance [-]
     */
    public static Found sheathFriction(double pull, double left, double wrap, double error) {
        Check.positive(left, "pull at the far end", "N");
        Check.positive(wrap, "bend", "rad");
        Check.that(pull >= left, "the pulls are " + pull + " N and " + left + " N; the first must be the greater");
        return new Found(StrictMath.log(pull / left) / wrap, StrictMath.sqrt(2) * error / wrap);
    }

    private static double square(double x) {
        return x * x;
    }
}
