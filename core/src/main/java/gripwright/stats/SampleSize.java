package gripwright.stats;

import gripwright.check.Check;
import org.apache.commons.statistics.distribution.BinomialDistribution;
import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * How many runs it takes.
 *
 * <p>Exact answers come from adding up every table that could be seen. Exact tests gain power in steps and can lose a
 * little with one run more; the number given is the smallest from which on {@link #AHEAD} numbers in a row keep the
 * wanted power.
 */
public final class SampleSize {
    /** Greatest number per group for which tables are added up; beyond it the normal approximation is close. */
    public static final int EXACT_UP_TO = 200;

    private static final int AHEAD = 5;
    private static final int MOST = 1_000_000;
    private static final NormalDistribution STANDARD_NORMAL = NormalDistribution.of(0, 1);

    private SampleSize() {}

    /**
     * Runs per group, not rounded, for a two-sided test of two shares by the normal approximation.
     *
     * <p>Model: (z_a sqrt(2 p q) + z_b sqrt(p1 q1 + p2 q2))^2 / (p1 - p2)^2 with p the mean of p1 and p2; with continuity
     * correction n / 4 (1 + sqrt(1 + 4 / (n |p1 - p2|)))^2. Source: J. L. Fleiss, A. Tytun and H. K. Ury, Biometrics 36
     * (1980) 343-346 (form from memory; agrees with R power.prop.test).
     */
    public static double normal(double p1, double p2, double confidence, double power, boolean corrected) {
        check(p1, p2, confidence, power);
        double za = STANDARD_NORMAL.inverseSurvivalProbability((1 - confidence) / 2);
        double zb = STANDARD_NORMAL.inverseCumulativeProbability(power);
        double p = (p1 + p2) / 2;
        double sum = za * Math.sqrt(2 * p * (1 - p)) + zb * Math.sqrt(p1 * (1 - p1) + p2 * (1 - p2));
        double n = square(sum / (p1 - p2));
        return corrected ? n / 4 * square(1 + Math.sqrt(1 + 4 / (n * Math.abs(p1 - p2)))) : n;
    }

    /**
     * Smallest number of runs per group with which Fisher's exact test, two-sided, sees the difference with the wanted
     * power; above {@link #EXACT_UP_TO} by the normal approximation with continuity correction, which follows that test.
     */
    public static int separate(double p1, double p2, double confidence, double power) {
        double near = normal(p1, p2, confidence, power, true);
        if (near > EXACT_UP_TO) {
            return whole(near);
        }
        return smallest(Math.max(2, (int) (0.6 * near)), n -> fisherPower(n, p1, p2, confidence), power, whole(near));
    }

    /** Chance that Fisher's exact test, two-sided, tells two groups of n runs apart [-]. */
    public static double fisherPower(int n, double p1, double p2, double confidence) {
        double[] first = law(n, p1);
        double[] second = law(n, p2);
        double[] logChoose = logChoose(n);
        double power = 0;
        for (int all = 0; all <= 2 * n; all++) {
            int low = Math.max(0, all - n);
            int high = Math.min(n, all);
            double[] table = new double[high - low + 1];
            double sum = 0;
            for (int i = 0; i < table.length; i++) {
                table[i] = StrictMath.exp(logChoose[low + i] + logChoose[all - low - i] - logChoose[n] * 2);
                sum += table[i];
            }
            for (int i = 0; i < table.length; i++) {
                double luck = 0;
                for (double other : table) {
                    luck += other <= table[i] * (1 + 1e-7) ? other : 0;
                }
                power += luck / sum <= 1 - confidence ? first[low + i] * second[all - low - i] : 0;
            }
        }
        return power;
    }

    /**
     * Smallest number of pairs with which the exact test of pairs that disagree sees a difference; above twice
     * {@link #EXACT_UP_TO} by the normal approximation.
     *
     * @param gained share of pairs that fail in the first and succeed in the second [-]
     * @param lost the other way round [-]
     */
    public static int paired(double gained, double lost, double confidence, double power) {
        Check.that(
                gained >= 0 && lost >= 0 && gained + lost > 0 && gained + lost <= 1 && gained != lost,
                "pairs that disagree have shares " + gained + " and " + lost
                        + "; expected two different shares with a sum of at most 1");
        double split = gained + lost;
        double za = STANDARD_NORMAL.inverseSurvivalProbability((1 - confidence) / 2);
        double zb = STANDARD_NORMAL.inverseCumulativeProbability(power);
        double d = gained - lost;
        // R. J. Connor, Biometrics 43 (1987) 207-211 (form from memory): a start for the exact search.
        double near = square(za * Math.sqrt(split) + zb * Math.sqrt(split - d * d)) / (d * d);
        if (near > 2 * EXACT_UP_TO) {
            return whole(near);
        }
        return smallest(
                Math.max(2, (int) (0.9 * near)), n -> pairedPower(n, gained, lost, confidence), power, whole(near));
    }

    /** Chance that the exact test of pairs that disagree tells two hands apart on n pairs [-]. */
    public static double pairedPower(int n, double gained, double lost, double confidence) {
        double split = gained + lost;
        double[] disagree = law(n, split);
        double power = 0;
        for (int m = 0; m <= n; m++) {
            if (disagree[m] < 1e-14) {
                continue;
            }
            double[] one = law(m, gained / split);
            double[] half = law(m, 0.5);
            double tail = 0;
            for (int k = 0; 2 * k < m; k++) {
                tail += half[k];
                if (2 * tail > 1 - confidence) {
                    break;
                }
                power += disagree[m] * (one[k] + one[m - k]);
            }
        }
        return power;
    }

    /**
     * Smallest number of runs with which the 95 % Wilson interval of a share is no wider than wanted.
     *
     * @param share expected [-]
     * @param width from end to end [-]
     */
    public static int forWidth(double share, double width) {
        Check.that(share >= 0 && share <= 1, "share is " + share + "; it must lie between 0 and 1");
        Check.that(width > 0 && width < 1, "width is " + width + "; it must lie between 0 and 1, both excluded");
        int high = 1;
        while (high < MOST && wilsonWidth(share, high) > width) {
            high *= 2;
        }
        int low = high / 2;
        while (high - low > 1) {
            int middle = (low + high) / 2;
            if (wilsonWidth(share, middle) > width) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return high;
    }

    // As BinomialIntervals.wilson, but of a share that need not be a whole count: it falls with n without steps.
    private static double wilsonWidth(double share, int n) {
        double z = STANDARD_NORMAL.inverseSurvivalProbability((1 - BinomialIntervals.CONFIDENCE) / 2);
        return 2 * z / (1 + z * z / n) * Math.sqrt(share * (1 - share) / n + z * z / (4.0 * n * n));
    }

    /**
     * Runs needed to show that a share is at least so high, if so many runs fail.
     *
     * <p>Model: smallest n with P(at most {@code failures} of n fail) not above 1 - confidence where each run fails with
     * 1 - share; without failures ln(1 - confidence) / ln(share). Source: closed form of the binomial law.
     */
    public static int toShow(double share, double confidence, int failures) {
        Check.that(
                share > 0 && share < 1 && confidence > 0 && confidence < 1 && failures >= 0,
                "share " + share + ", confidence " + confidence + ", failures " + failures
                        + "; expected shares between 0 and 1 and 0 failures or more");
        int n = failures + 1;
        while (n < MOST && BinomialDistribution.of(n, 1 - share).cumulativeProbability(failures) > 1 - confidence) {
            n++;
        }
        return n;
    }

    private interface Power {
        double of(int n);
    }

    private static int smallest(int from, Power power, double wanted, int near) {
        int n = from;
        while (n > 2 && power.of(n) >= wanted) {
            n = Math.max(2, n / 2); // started too high
        }
        int run = 0;
        while (run < AHEAD) {
            run = power.of(n) >= wanted ? run + 1 : 0;
            n++;
            Check.that(n < 4 * near + 100, "no number of runs up to " + n + " reaches the power " + wanted);
        }
        return n - AHEAD;
    }

    private static double[] law(int n, double p) {
        BinomialDistribution law = BinomialDistribution.of(n, p);
        double[] chances = new double[n + 1];
        for (int k = 0; k <= n; k++) {
            chances[k] = law.probability(k);
        }
        return chances;
    }

    private static double[] logChoose(int n) {
        double[] log = new double[n + 1];
        for (int k = 1; k <= n; k++) {
            log[k] = log[k - 1] + StrictMath.log((double) (n - k + 1) / k);
        }
        return log;
    }

    private static int whole(double n) {
        return (int) Math.ceil(n - 1e-9);
    }

    private static void check(double p1, double p2, double confidence, double power) {
        Check.that(
                p1 >= 0 && p1 <= 1 && p2 >= 0 && p2 <= 1 && p1 != p2,
                "shares are " + p1 + " and " + p2 + "; expected two different ones between 0 and 1");
        Check.that(
                confidence > 0 && confidence < 1 && power > 0 && power < 1,
                "confidence is " + confidence + ", power " + power + "; both must lie between 0 and 1");
    }

    private static double square(double x) {
        return x * x;
    }
}
