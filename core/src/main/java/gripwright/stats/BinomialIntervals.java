package gripwright.stats;

import gripwright.check.Check;
import org.apache.commons.statistics.distribution.BetaDistribution;
import org.apache.commons.statistics.distribution.NormalDistribution;

/** Confidence intervals of a share found by counting independent runs; without runs they are 0 to 1. */
public final class BinomialIntervals {
    /** The confidence used unless said otherwise [-]. */
    public static final double CONFIDENCE = 0.95;

    private static final Interval NOTHING_KNOWN = new Interval(0, 1);
    private static final NormalDistribution STANDARD_NORMAL = NormalDistribution.of(0, 1);

    private BinomialIntervals() {}

    /**
     * Wilson's score interval: all shares that a score test does not reject. Covers close to the confidence on
     * average, for few runs and shares near 0 or 1 too.
     *
     * <p>Source: E. B. Wilson, "Probable inference, the law of succession, and statistical inference", J. Am. Stat.
     * Assoc. 22 (1927) 209-212.
     *
     * @param confidence two-sided [-], above 0 and below 1
     */
    public static Interval wilson(int successes, int trials, double confidence) {
        check(successes, trials, confidence);
        if (trials == 0) {
            return NOTHING_KNOWN;
        }
        double z = STANDARD_NORMAL.inverseSurvivalProbability((1 - confidence) / 2);
        double share = (double) successes / trials;
        double shrink = 1 + z * z / trials;
        double middle = (share + z * z / (2.0 * trials)) / shrink;
        double half = z / shrink * Math.sqrt(share * (1 - share) / trials + z * z / (4.0 * trials * trials));
        // The ends are exact at all and at none; rounding would leave them a hair off.
        double low = successes == 0 ? 0 : middle - half;
        double high = successes == trials ? 1 : middle + half;
        return new Interval(low, high);
    }

    /** {@link #wilson(int, int, double)} at {@link #CONFIDENCE}. */
    public static Interval wilson(int successes, int trials) {
        return wilson(successes, trials, CONFIDENCE);
    }

    /**
     * The exact interval: never covers less than the confidence, at the price of being wide.
     *
     * <p>Source: C. J. Clopper and E. S. Pearson, "The use of confidence or fiducial limits illustrated in the case of
     * the binomial", Biometrika 26 (1934) 404-413, in the form of beta quantiles.
     *
     * @param confidence two-sided [-], above 0 and below 1
     */
    public static Interval clopperPearson(int successes, int trials, double confidence) {
        check(successes, trials, confidence);
        if (trials == 0) {
            return NOTHING_KNOWN;
        }
        double tail = (1 - confidence) / 2;
        int failures = trials - successes;
        double low = successes == 0
                ? 0
                : BetaDistribution.of(successes, failures + 1.0).inverseCumulativeProbability(tail);
        double high = failures == 0
                ? 1
                : BetaDistribution.of(successes + 1.0, failures).inverseSurvivalProbability(tail);
        return new Interval(low, high);
    }

    private static void check(int successes, int trials, double confidence) {
        Check.that(trials >= 0, "trials is " + trials + "; it must be 0 or more");
        Check.that(
                successes >= 0 && successes <= trials,
                "successes is " + successes + "; it must lie between 0 and the " + trials + " trials");
        Check.that(
                confidence > 0 && confidence < 1,
                "confidence is " + confidence + "; it must lie between 0 and 1, both excluded");
    }
}
