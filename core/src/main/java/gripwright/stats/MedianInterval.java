package gripwright.stats;

import gripwright.check.Check;
import java.util.Arrays;
import org.apache.commons.statistics.distribution.BinomialDistribution;

/**
 * A median with an interval that assumes nothing about the law of the values but that they are independent.
 *
 * <p>Model: the ends are the k-th value from below and from above, k the greatest number for which fewer than k of n
 * fair coins fall heads with at most half of the risk. Source: W. J. Conover, "Practical Nonparametric Statistics",
 * interval for a quantile (from memory).
 */
public final class MedianInterval {
    private MedianInterval() {}

    /** NaN without values. */
    public static double median(double[] values) {
        if (values.length == 0) {
            return Double.NaN;
        }
        double[] sorted = sorted(values);
        int n = sorted.length;
        return n % 2 == 1 ? sorted[n / 2] : (sorted[n / 2 - 1] + sorted[n / 2]) / 2;
    }

    /** 95 % interval; without ends (infinite) below 6 values. */
    public static Interval of(double[] values) {
        double[] sorted = sorted(values);
        int n = sorted.length;
        double risk = (1 - BinomialIntervals.CONFIDENCE) / 2;
        int k = 0;
        if (n > 0) {
            BinomialDistribution heads = BinomialDistribution.of(n, 0.5);
            while (k < n / 2 && heads.cumulativeProbability(k) <= risk) {
                k++;
            }
        }
        return k == 0
                ? new Interval(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY)
                : new Interval(sorted[k - 1], sorted[n - k]);
    }

    private static double[] sorted(double[] values) {
        for (double v : values) {
            Check.that(!Double.isNaN(v), "a value is not a number");
        }
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        return sorted;
    }
}
