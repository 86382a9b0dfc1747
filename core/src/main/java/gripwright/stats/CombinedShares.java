package gripwright.stats;

import gripwright.check.Check;
import java.util.List;

/**
 * The interval of a weighted sum of independent shares, from the interval of each.
 *
 * <p>Model: with terms t = weight * share, low = sum t - sqrt(sum (t - low end of t)^2) and high likewise ("method of
 * variance estimates recovery"). One share alone keeps its own interval; two with weights 1 and -1 give Newcombe's
 * hybrid score interval of a difference. Shares must come from independent runs.
 *
 * <p>Source: R. G. Newcombe, Stat. Med. 17 (1998) 873-890, method 10, for differences; G. Y. Zou, W. Huang and X. Zhang,
 * "A note on confidence interval estimation for a linear function of binomial proportions", Comput. Stat. Data Anal. 53
 * (2009) 1080-1085, for linear functions (citation and form from memory).
 */
public final class CombinedShares {
    private CombinedShares() {}

    /**
     * One share of the sum.
     *
     * @param weight of any sign [-]
     * @param share found [-]
     * @param interval of the share [-]
     */
    public record Term(double weight, double share, Interval interval) {
        public Term {
            Check.finite(weight, "weight of a share", "");
            Check.that(
                    interval.contains(share),
                    "share is " + share + "; it must lie in its interval, " + interval.low() + " to "
                            + interval.high());
        }
    }

    /** Sum of weight * share [-]. */
    public static double value(List<Term> terms) {
        return terms.stream().mapToDouble(t -> t.weight * t.share).sum();
    }

    /** Interval of {@link #value}, at the confidence of the intervals handed in. */
    public static Interval interval(List<Term> terms) {
        double value = value(terms);
        double below = 0;
        double above = 0;
        for (Term term : terms) {
            double t = term.weight * term.share;
            double one = term.weight * term.interval.low();
            double other = term.weight * term.interval.high();
            below += square(t - Math.min(one, other));
            above += square(Math.max(one, other) - t);
        }
        return new Interval(value - Math.sqrt(below), value + Math.sqrt(above));
    }

    private static double square(double x) {
        return x * x;
    }
}
