package gripwright.study;

import gripwright.stats.BinomialIntervals;
import gripwright.study.ExplainResult.Estimate;
import org.apache.commons.statistics.distribution.ChiSquaredDistribution;

/**
 * A log-likelihood over a grid of one factor, the others at their best: its greatest value, its interval, and how
 * strongly it speaks against 1.
 *
 * <p>Model: the interval holds the factors whose log-likelihood is within half the 95 % point of chi-square with one
 * degree of freedom (1.92) of the greatest. Source: S. S. Wilks, Ann. Math. Stat. 9 (1938) 60-62.
 */
final class Likelihood {
    private static final ChiSquaredDistribution ONE = ChiSquaredDistribution.of(1);
    private static final double DROP = ONE.inverseCumulativeProbability(BinomialIntervals.CONFIDENCE) / 2;

    private Likelihood() {}

    static Estimate estimate(String subject, double[] grid, double[] log, int trials) {
        int best = 0;
        for (int i = 1; i < log.length; i++) {
            best = log[i] > log[best] ? i : best;
        }
        double limit = log[best] - DROP;
        int low = best;
        while (low > 0 && log[low - 1] >= limit) {
            low--;
        }
        int high = best;
        while (high < log.length - 1 && log[high + 1] >= limit) {
            high++;
        }
        double luck = ONE.survivalProbability(Math.max(0, 2 * (log[best] - at(grid, log, 1))));
        return new Estimate(
                subject,
                grid[best],
                low == 0 ? grid[0] : crossing(grid, log, low, low - 1, limit),
                high == log.length - 1 ? grid[high] : crossing(grid, log, high, high + 1, limit),
                low == 0,
                high == log.length - 1,
                trials,
                luck,
                luck);
    }

    private static double crossing(double[] grid, double[] log, int inside, int outside, double limit) {
        double t = (log[inside] - limit) / (log[inside] - log[outside]);
        return grid[inside] + t * (grid[outside] - grid[inside]);
    }

    /** Linear between grid points. */
    static double at(double[] grid, double[] log, double value) {
        int i = 1;
        while (i < grid.length - 1 && grid[i] < value) {
            i++;
        }
        double t = (value - grid[i - 1]) / (grid[i] - grid[i - 1]);
        return log[i - 1] + t * (log[i] - log[i - 1]);
    }
}
