package gripwright.closing;

import gripwright.check.Check;

/**
 * What the tests of a hold ask.
 *
 * @param travel of the object in the hand to which it is pulled [m]; it is turned by this over {@link #TURN_ARM}
 * @param acceleration of the transport [m/s^2]; 0 = not tested
 */
public record HoldPlan(double travel, double acceleration) {
    /** Length that makes the turning tests go as far as the pulling ones [m/rad]. */
    public static final double TURN_ARM = 0.03;

    /** Displacement at which the load is also told [m], as a measure of how stiff the hold is in earnest. */
    public static final double FIRST_GIVE = 0.001;

    /** Travel of 5 mm (common practice, no source): farther, a thing counts as having left its place. */
    public static final HoldPlan DEFAULT = new HoldPlan(0.005, 0);

    private static final double LONGEST = 0.045;

    public HoldPlan {
        Check.positive(travel, "travel of the pull tests", "m");
        Check.notNegative(acceleration, "acceleration of the transport", "m/s^2");
        Check.that(
                travel <= LONGEST,
                "the travel of the pull tests is " + Math.round(1e4 * travel) / 10.0
                        + " mm; expected at most 45 mm: farther, the turning tests would pass a right angle");
    }

    /** Angle to which the object is turned [rad]. */
    public double turn() {
        return travel / TURN_ARM;
    }

    public HoldPlan withTravel(double metres) {
        return new HoldPlan(metres, acceleration);
    }

    public HoldPlan withAcceleration(double metresPerSquareSecond) {
        return new HoldPlan(travel, metresPerSquareSecond);
    }
}
