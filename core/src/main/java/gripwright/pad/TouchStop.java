package gripwright.pad;

import gripwright.check.Check;

/**
 * A finger that stops when a chip exceeds its threshold.
 *
 * @param speed of the finger at the pad [m/s]
 * @param closing time over which no false alarm is wanted [s]
 * @param warming of the rubber meanwhile [K/s]
 * @param falseAlarms wanted rate per closing [-]
 * @param misses rate at which the force at detection is stated [-]
 * @param delay of the controller, from a value to the motor [s]
 * @param deceleration of the finger [m/s^2]
 * @param fingerStiffness of finger and drive at the pad [N/m]
 */
public record TouchStop(
        double speed,
        double closing,
        double warming,
        double falseAlarms,
        double misses,
        double delay,
        double deceleration,
        double fingerStiffness) {
    public TouchStop {
        Check.positive(speed, "speed", "m/s");
        Check.positive(closing, "closing time", "s");
        Check.positive(deceleration, "deceleration", "m/s^2");
        Check.positive(fingerStiffness, "finger stiffness", "N/m");
        Check.notNegative(delay, "delay", "s");
    }

    /**
     * Thresholds and forces of one pad, at the worst place between two chips.
     *
     * @param deviations threshold over the noise [-]
     * @param threshold force at the threshold [N]
     * @param detection force noticed but for the rate of misses [N]
     * @param delay from that force to the halt [s]: scan, controller and braking
     * @param stiffness of pad and finger in series [N/m]
     * @param peak force on an object that does not move [N]
     */
    public record Forces(
            double deviations, double threshold, double detection, double delay, double stiffness, double peak) {}

    /**
     * @param sensitivity at the worst place [Pa/N]
     * @param noise of one reading [Pa]
     * @param cells over which alarms may come
     * @param period of the scan [s]
     * @param padStiffness [N/m]
     */
    public Forces forces(double sensitivity, double noise, int cells, double period, double padStiffness) {
        double deviations = Detection.threshold(falseAlarms, cells, Math.max(1, closing / period));
        double detection = (deviations + Detection.quantile(misses)) * noise / sensitivity;
        double stiffness = 1 / (1 / padStiffness + 1 / fingerStiffness);
        double braking = speed / (2 * deceleration);
        return new Forces(
                deviations,
                deviations * noise / sensitivity,
                detection,
                period + delay + braking,
                stiffness,
                detection + stiffness * speed * (period + delay + braking));
    }

    /**
     * Length of a running mean that gives the least force on an object that does not move: the mean of n readings lags by
     * n/2 scans, its noise falls with the root of n. Below 1 averaging only makes it worse.
     */
    public double averaging(Forces single, double period) {
        return Math.pow(single.detection() / (single.stiffness() * speed * period), 2.0 / 3);
    }

    /** What happens to one object; braking is taken as a sudden halt after the same way. */
    public Push push(Forces forces, double mass, double friction) {
        return new Push(mass, friction, forces.stiffness(), speed, forces.detection(), forces.delay());
    }
}
