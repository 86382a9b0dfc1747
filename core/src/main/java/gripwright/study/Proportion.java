package gripwright.study;

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
    /** successes / trials, NaN without trials. */
    public double share() {
        return trials == 0 ? Double.NaN : (double) successes / trials;
    }
}
