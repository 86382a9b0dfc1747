package gripwright.stats;

import gripwright.check.Check;
import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * The interval of a difference between two shares counted on the same runs, so that only runs that changed count.
 *
 * <p>Model: with g runs gained, l lost and n pairs, a = (g + 1) / (n + 2), b = (l + 1) / (n + 2): a - b plus or minus z
 * sqrt((a + b - (a - b)^2) / (n + 2)). Source: D. G. Bonett and R. M. Price, "Adjusted Wald confidence interval for a
 * difference of binomial proportions based on paired data", J. Educ. Behav. Stat. 37 (2012) 479-488 (from memory).
 */
public final class PairedShares {
    private static final NormalDistribution STANDARD_NORMAL = NormalDistribution.of(0, 1);

    private PairedShares() {}

    /**
     * 95 % interval of (gained - lost) / pairs [-]; -1 to 1 without pairs.
     *
     * @param gained pairs that fail in the first and succeed in the second
     * @param lost the other way round
     */
    public static Interval difference(int gained, int lost, int pairs) {
        Check.that(
                gained >= 0 && lost >= 0 && gained + lost <= pairs,
                gained + " gained and " + lost + " lost do not fit into " + pairs + " pairs");
        if (pairs == 0) {
            return new Interval(-1, 1);
        }
        double n = pairs + 2.0;
        double a = (gained + 1) / n;
        double b = (lost + 1) / n;
        double z = STANDARD_NORMAL.inverseSurvivalProbability((1 - BinomialIntervals.CONFIDENCE) / 2);
        double half = z * Math.sqrt((a + b - (a - b) * (a - b)) / n);
        return new Interval(Math.max(-1, a - b - half), Math.min(1, a - b + half));
    }
}
