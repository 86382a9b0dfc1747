package gripwright.pad;

import gripwright.check.Check;
import org.apache.commons.statistics.distribution.NormalDistribution;

/** Noise to newtons: what can be told from nothing, with stated rates of false alarms and misses. */
public final class Detection {
    private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);

    private Detection() {}

    /** The value a standard normal variable exceeds with that probability. */
    public static double quantile(double tail) {
        Check.that(tail > 0 && tail < 1, "the rate is " + tail + "; it must be above 0 and below 1");
        return NORMAL.inverseSurvivalProbability(tail);
    }

    /**
     * Smallest force told from none in one reading [N]; as in ISO 11843 (form from memory).
     *
     * @param noise of one reading [Pa]
     * @param sensitivity [Pa/N]
     * @param zeros readings averaged for the zero
     */
    public static double limit(double noise, double sensitivity, double falseAlarm, double miss, int zeros) {
        return (quantile(falseAlarm) + quantile(miss)) * noise * Math.sqrt(1 + 1.0 / zeros) / sensitivity;
    }

    /**
     * Threshold in standard deviations for a rate of false alarms per closing over all cells and samples. Samples are
     * taken as independent; filtered ones raise fewer alarms.
     */
    public static double threshold(double falseAlarms, int cells, double samples) {
        Check.that(falseAlarms > 0 && falseAlarms < 1, "the rate of false alarms is " + falseAlarms);
        Check.that(cells >= 1 && samples >= 1, "there are " + cells + " cells and " + samples + " samples");
        return quantile(-Math.expm1(Math.log1p(-falseAlarms) / (cells * samples)));
    }
}
