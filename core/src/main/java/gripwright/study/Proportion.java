package gripwright.study;

import gripwright.stats.BinomialIntervals;
import gripwright.stats.Interval;

/**
 * A share found by counting, with its interval.
 *
 * @param successes and
 * @param trials counted, undecided runs left out
 * @param undecided runs, shown beside the share, in neither number
 * @param low and
 * @param high ends of the 95 % Wilson score interval [-]
 */
public record Proportion(int successes, int trials, int undecided, double low, double high) {
    /** With its 95 % Wilson score interval; without trials that is 0 to 1. */
    public static Proportion of(int successes, int trials, int undecided) {
        Interval interval = BinomialIntervals.wilson(successes, trials);
        return new Proportion(successes, trials, undecided, interval.low(), interval.high());
    }

    /** Runs made, undecided ones included. */
    public int runs() {
        return trials + undecided;
    }

    /** successes / trials, NaN without trials. */
    public double share() {
        return trials == 0 ? Double.NaN : (double) successes / trials;
    }
}
