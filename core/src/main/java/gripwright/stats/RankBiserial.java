package gripwright.stats;

import java.util.Arrays;
import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * How well a number tells two groups apart: chance that a member of the first is the greater minus chance that it is
 * the smaller, over all pairs; ties count for neither. 1 or -1 = always, 0 = not at all.
 *
 * <p>Equal to 2 U / (n1 n2) - 1 with the statistic U of Mann and Whitney, and to 2 A - 1 with A the area under the
 * receiver operating curve. It needs no assumption on the law of the number and is not moved by outliers. Source: E. E.
 * Cureton, "Rank-biserial correlation", Psychometrika 21 (1956) 287-290 (citation from memory).
 */
public final class RankBiserial {
    private static final NormalDistribution STANDARD_NORMAL = NormalDistribution.of(0, 1);

    private RankBiserial() {}

    /** The correlation [-], -1 to 1; 0 if a group is empty. The arrays are not modified. */
    public static double of(double[] first, double[] second) {
        if (first.length == 0 || second.length == 0) {
            return 0;
        }
        double[] sorted = second.clone();
        Arrays.sort(sorted);
        long balance = 0;
        for (double value : first) {
            balance += below(sorted, value) - (sorted.length - notAbove(sorted, value));
        }
        return (double) balance / ((long) first.length * second.length);
    }

    /**
     * What the magnitude of one correlation exceeds with the given chance though the number has no bearing on the
     * groups [-]; 1 if a group is empty. Normal approximation with standard deviation sqrt((n1 + n2 + 1) / (3 n1 n2)).
     * Source: variance of U, H. B. Mann and D. R. Whitney, Ann. Math. Stat. 18 (1947) 50-60.
     *
     * @param chance two-sided [-], above 0 and below 1
     */
    public static double noise(int first, int second, double chance) {
        if (first == 0 || second == 0) {
            return 1;
        }
        double z = STANDARD_NORMAL.inverseSurvivalProbability(chance / 2);
        return Math.min(1, z * Math.sqrt((first + second + 1) / (3.0 * first * second)));
    }

    private static int below(double[] sorted, double value) {
        int low = 0;
        int high = sorted.length;
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (sorted[middle] < value) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }

    private static int notAbove(double[] sorted, double value) {
        int low = 0;
        int high = sorted.length;
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (sorted[middle] <= value) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }
}
