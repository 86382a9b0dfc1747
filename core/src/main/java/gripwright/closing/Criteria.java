package gripwright.closing;

/**
 * The stated limits by which a run is judged. They are printed with every result.
 *
 * @param landingForce greatest force on the way in [N]
 * @param touchForce pad force that counts as touching [N]
 * @param lift by which the hand is raised over the table [m]
 * @param sink of the object against the hand that counts as dropped [m]
 * @param thrown travel of the object that counts as thrown out [m]
 * @param tilt that counts as knocked over [rad]
 * @param pushed displacement that counts as pushed away [m]
 */
public record Criteria(
        double landingForce, double touchForce, double lift, double sink, double thrown, double tilt, double pushed) {
    public static final Criteria DEFAULT = new Criteria(5.0, 0.02, 0.020, 0.008, 0.150, Math.PI / 4, 0.010);
}
