package gripwright.stats;

import gripwright.check.Check;

/** How many of several runs succeed if each has its own chance: the law of the count. */
public final class UnequalChances {
    private UnequalChances() {}

    /**
     * Chance of each count.
     *
     * <p>Model: one run after the other is added to the law (S. D. Poisson's binomial; a plain recursion).
     *
     * @param chances of the runs, shape n [-]
     * @return shape n + 1 [-]
     */
    public static double[] law(double[] chances) {
        double[] law = new double[chances.length + 1];
        law[0] = 1;
        for (int i = 0; i < chances.length; i++) {
            double p = chances[i];
            Check.that(p >= 0 && p <= 1, "chance " + i + " is " + p + "; it must lie between 0 and 1");
            for (int k = i + 1; k > 0; k--) {
                law[k] = law[k] * (1 - p) + law[k - 1] * p;
            }
            law[0] *= 1 - p;
        }
        return law;
    }

    /** Chance of counts that are no likelier than the one found, two-sided [-]. */
    public static double luck(double[] law, int found) {
        // The hair takes in counts that are equally likely but for rounding.
        double limit = law[found] * (1 + 1e-7);
        double sum = 0;
        for (double p : law) {
            sum += p <= limit ? p : 0;
        }
        return Math.min(1, sum);
    }
}
