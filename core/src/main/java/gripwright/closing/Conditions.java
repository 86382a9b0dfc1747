package gripwright.closing;

/**
 * What differs from the nominal in one run.
 *
 * @param x shift of the object along the closing direction [m], table axes
 * @param y shift across [m]
 * @param turn of the object about the vertical through its nominal place [rad]
 * @param height of the hand over its intended height [m]
 * @param padFriction standard deviations added to every pad-object coefficient [-]
 * @param tableFriction standard deviations added to the table coefficient [-]
 * @param mass standard deviations added to the mass [-]
 * @param padStiffness factor on normal and shear stiffness of every pad [-]
 * @param springRate factor on every joint spring [-]
 */
public record Conditions(
        double x,
        double y,
        double turn,
        double height,
        double padFriction,
        double tableFriction,
        double mass,
        double padStiffness,
        double springRate) {
    public static final Conditions NOMINAL = new Conditions(0, 0, 0, 0, 0, 0, 0, 1, 1);

    /** Nominal but for a shift [m] and a turn [rad] of the object. */
    public static Conditions at(double x, double y, double turn) {
        return new Conditions(x, y, turn, 0, 0, 0, 0, 1, 1);
    }
}
