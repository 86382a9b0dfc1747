package gripwright.study;

import gripwright.closing.Outcome;
import gripwright.stats.Interval;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * What filled score sheets say, without any calculation of closings.
 *
 * @param hands labels in the order in which they appear
 * @param rates for each hand: each object with each grip, then objects and grips where they add something, then all
 * @param comparisons of each two hands: all trials first, then each object with each grip
 */
public record SheetScore(List<String> hands, List<Rate> rates, List<Comparison> comparisons) {
    /** What is counted together. */
    public enum Scope {
        PART,
        OBJECT,
        GRIP,
        ALL
    }

    /**
     * A share held.
     *
     * @param object empty if all
     * @param grip empty if all
     * @param undecided trials that say nothing about the hand; in neither number
     * @param interval 95 % [-]
     * @param exact by Clopper and Pearson; else Wilson's
     * @param outcomes how often each other than held
     * @param reasons how often each was noted
     */
    public record Rate(
            Scope scope,
            String hand,
            String object,
            String grip,
            int held,
            int decided,
            int undecided,
            Interval interval,
            boolean exact,
            Map<Outcome, Integer> outcomes,
            Map<TrialReason, Integer> reasons) {
        public Rate {
            Map<Outcome, Integer> sorted = new EnumMap<>(Outcome.class);
            sorted.putAll(outcomes);
            outcomes = Collections.unmodifiableMap(sorted);
            Map<TrialReason, Integer> why = new EnumMap<>(TrialReason.class);
            why.putAll(reasons);
            reasons = Collections.unmodifiableMap(why);
        }

        /** NaN without decided trials. */
        public double share() {
            return decided == 0 ? Double.NaN : (double) held / decided;
        }
    }

    /**
     * Two hands on the same objects and grips.
     *
     * @param object empty if all
     * @param grip empty if all
     * @param held and
     * @param of decided trials of the first hand that count here, and of the second
     * @param pairs if the trials are pairs at the same places
     * @param difference second minus first [-]; NaN if one has no trials
     * @param interval 95 % of the difference [-]
     * @param luck chance of a difference this uneven if there is none [-]: exact McNemar or Fisher
     * @param corrected the same, corrected by Holm for the number of questions of its kind
     * @param left trials that found no partner, or of an object only one hand tried
     * @param needed trials of each hand (pairs, if paired) still to be made so that a difference as great as the one seen
     *     would be found with power 80 %; empty if it is found already or none was seen
     * @param note a caution; empty if none
     */
    public record Comparison(
            String first,
            String second,
            String object,
            String grip,
            int held,
            int of,
            int secondHeld,
            int secondOf,
            Optional<Pairs> pairs,
            double difference,
            Interval interval,
            double luck,
            double corrected,
            int left,
            OptionalInt needed,
            String note) {
        public boolean all() {
            return object.isEmpty();
        }

        /** True if luck alone is no explanation, all questions counted. */
        public boolean settled() {
            return corrected <= 1 - gripwright.stats.BinomialIntervals.CONFIDENCE;
        }

        Comparison corrected(double chance) {
            return new Comparison(
                    first,
                    second,
                    object,
                    grip,
                    held,
                    of,
                    secondHeld,
                    secondOf,
                    pairs,
                    difference,
                    interval,
                    luck,
                    chance,
                    left,
                    chance <= 1 - gripwright.stats.BinomialIntervals.CONFIDENCE ? OptionalInt.empty() : needed,
                    note);
        }
    }

    /**
     * Pairs of trials at the same places.
     *
     * @param both held by both hands
     * @param gained held by the second only
     * @param lost held by the first only
     * @param neither held by none
     * @param midP chance of luck with half the weight of what was found [-]
     */
    public record Pairs(int both, int gained, int lost, int neither, double midP) {
        public int all() {
            return both + gained + lost + neither;
        }
    }

    public SheetScore {
        hands = List.copyOf(hands);
        rates = List.copyOf(rates);
        comparisons = List.copyOf(comparisons);
    }

    /** The rate of all trials of a hand. */
    public Rate total(String hand) {
        return rates.stream()
                .filter(r -> r.scope() == Scope.ALL && r.hand().equals(hand))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no trial of '" + hand + "'; there are " + hands));
    }
}
