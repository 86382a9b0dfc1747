package gripwright.signal;

import gripwright.check.Check;

/**
 * Readings of a load cell that another instrument took by a clock of its own, merged into the log later. Arrays are shared.
 *
 * @param stamp of the instrument's clock [s], rising, shape m
 * @param beside the device's time of the row that each stands in, as good as the merge [s], shape m
 * @param force [N], shape m
 */
public record OwnClock(double[] stamp, double[] beside, double[] force) {
    /** Stamps that tell the clocks' rates apart. */
    private static final int LEAST = 100;

    private static final int MOST_PAIRS = 20_000;

    public OwnClock {
        Check.count(beside.length, stamp.length, "device's times", "one per stamp");
        Check.count(force.length, stamp.length, "forces", "one per stamp");
        Check.that(
                stamp.length >= LEAST,
                "the reference's own clock stamps " + stamp.length + " readings; a calibration needs at least "
                        + LEAST);
    }

    /**
     * The clock as the merge has it: {@code stamp = at + rate (time - start)}.
     *
     * @param at the instrument's clock at the log's start [s]
     * @param rate its seconds per second of the device
     * @param start device's time of the log's start [s]
     */
    record Line(double at, double rate, double start) {
        /** Device's times of stamps, each later by {@code shift}. */
        double[] times(double[] stamp, double shift) {
            double[] out = new double[stamp.length];
            for (int i = 0; i < out.length; i++) {
                out[i] = start + (stamp[i] - at) / rate + shift;
            }
            return out;
        }
    }

    /** Medians of slopes over half the log and of what they leave: rows that were merged wrongly do no harm. */
    Line line(double start) {
        int m = stamp.length;
        int half = m / 2;
        int every = Math.max(1, half / MOST_PAIRS);
        double[] slopes = new double[(half + every - 1) / every];
        for (int k = 0; k < slopes.length; k++) {
            int i = k * every;
            slopes[k] = (stamp[i + half] - stamp[i]) / (beside[i + half] - beside[i]);
        }
        double rate = RobustWeights.median(slopes);
        Check.that(
                rate > 0.5 && rate < 2,
                "the reference's own clock goes " + Words.number(rate)
                        + " s per second of the device's; expected about 1: give its unit, or name another column");
        double[] left = new double[m];
        for (int i = 0; i < m; i++) {
            left[i] = stamp[i] - stamp[0] - rate * (beside[i] - start);
        }
        return new Line(stamp[0] + RobustWeights.median(left), rate, start);
    }
}
