package gripwright.study;

import gripwright.stats.Interval;
import java.util.List;

/**
 * Two drive policies on the same misplacements and materials.
 *
 * @param policy and
 * @param against their words
 * @param wanted runs of each row that were asked for
 */
public record PolicyResult(String policy, String against, long seed, long noiseSeed, int wanted, List<Row> rows) {
    /** What the numbers mean, for printing beside them. */
    public static final String DEFINITION = "Each run of one policy stands beside one of the other with the very same"
            + " object, misplacement, friction and mass; the noise of the chips is drawn anew. Change of success: paired"
            + " 95 % interval (Bonett and Price 2012). Object moved: way of its centre of mass while the hand closed,"
            + " medians; the change is the median of the pairs' differences, its interval from the order of the values."
            + " Pairs with an undecided run are left out.";

    /**
     * One object with one grip.
     *
     * @param impossible why the hand cannot do this, empty if it can
     * @param pairs both decided
     * @param both held with both policies
     * @param gained held with the policy only
     * @param lost held with the other only
     * @param undecided pairs left out
     * @param success interval of the change of the share held [-]
     * @param moved median with the policy [m]
     * @param movedAgainst median with the other [m]
     * @param change median of the differences [m]
     * @param changeInterval of the same [m]
     * @param fromStart median distance by which the object stood off its nominal place in the pairs [m]
     */
    public record Row(
            String object,
            String grip,
            String impossible,
            int pairs,
            int both,
            int gained,
            int lost,
            int undecided,
            Interval success,
            double moved,
            double movedAgainst,
            double change,
            Interval changeInterval,
            double fromStart) {
        public boolean possible() {
            return impossible.isEmpty();
        }

        /** Change of the share held [-], NaN without pairs. */
        public double successChange() {
            return pairs == 0 ? Double.NaN : (double) (gained - lost) / pairs;
        }

        public double share() {
            return pairs == 0 ? Double.NaN : (double) (both + gained) / pairs;
        }

        public double shareAgainst() {
            return pairs == 0 ? Double.NaN : (double) (both + lost) / pairs;
        }

        /** True if the interval of the change of success leaves out none. */
        public boolean successSettled() {
            return pairs > 0 && (success.low() > 0 || success.high() < 0);
        }

        /** The same of the way moved. */
        public boolean changeSettled() {
            return pairs > 0 && (changeInterval.low() > 0 || changeInterval.high() < 0);
        }
    }

    public PolicyResult {
        rows = List.copyOf(rows);
    }

    public boolean stopped() {
        return rows.stream().anyMatch(r -> r.possible() && r.pairs() + r.undecided() < wanted);
    }
}
