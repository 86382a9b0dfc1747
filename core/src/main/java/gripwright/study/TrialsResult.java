package gripwright.study;

import gripwright.closing.Conditions;
import gripwright.closing.Outcome;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * Virtual trials of every object with each of its grips.
 *
 * @param seed of the samples
 * @param runsPerPair samples on which each pair is scored (a separate set of the same size chose the best grip)
 * @param pairs object by grip, in the order of the need
 * @param best per object, in the order of the need
 * @param weighted success with each object's best grip, weighted; interval by the weighted sum of Wilson-scored objects
 */
public record TrialsResult(long seed, int runsPerPair, List<Pair> pairs, List<Best> best, Weighted weighted) {
    /**
     * One object with one grip.
     *
     * @param outcomes how often each outcome other than held happened, undecided included
     * @param influence how much each sampled input matters, strongest first; empty if all runs held or all failed
     * @param examples conditions of one typical run of each outcome seen, for pictures
     * @param splits where the failures lie, strongest first; each found among the runs outside the ones before it
     */
    public record Pair(
            String object,
            String grip,
            Proportion success,
            Map<Outcome, Integer> outcomes,
            List<Influence> influence,
            Map<Outcome, Conditions> examples,
            List<Split> splits) {
        public Pair {
            outcomes = inOrder(outcomes);
            influence = List.copyOf(influence);
            examples = inOrder(examples);
            splits = List.copyOf(splits);
        }

        /** Without splits. */
        public Pair(
                String object,
                String grip,
                Proportion success,
                Map<Outcome, Integer> outcomes,
                List<Influence> influence,
                Map<Outcome, Conditions> examples) {
            this(object, grip, success, outcomes, influence, examples, List.of());
        }

        // Map.copyOf iterates in an order that changes from one start of the program to the next.
        private static <T> Map<Outcome, T> inOrder(Map<Outcome, T> map) {
            Map<Outcome, T> sorted = new EnumMap<>(Outcome.class);
            sorted.putAll(map);
            return Collections.unmodifiableMap(sorted);
        }
    }

    /**
     * How strongly one sampled input decides between held and not.
     *
     * @param input "x", "y", "turn", "height", "pad friction", "table friction", "mass", "pad stiffness",
     *     "spring rate"
     * @param strength [-], 0 = none; definition printed with the table
     */
    public record Influence(String input, double strength) {}

    /**
     * A part of the sampled range where failures are more frequent than elsewhere.
     *
     * @param input as in {@link Influence}
     * @param side on which side of the nominal value the part lies
     * @param threshold deviation from the nominal value from which on [m, rad, standard deviations, or share of the
     *     nominal, as the input has it], 0 or more
     * @param failed of the
     * @param runs beyond the threshold, and
     * @param failedElsewhere of the
     * @param runsElsewhere not beyond it; undecided runs left out
     */
    public record Split(
            String input, Side side, double threshold, int failed, int runs, int failedElsewhere, int runsElsewhere) {
        /** More than the threshold above the nominal value, below it, or away from it on either side. */
        public enum Side {
            ABOVE,
            BELOW,
            EITHER
        }
    }

    /** The grip chosen for an object on the choosing seeds, and its success on fresh ones. */
    public record Best(String object, String grip, Proportion success) {}

    /** A weighted mean of shares with its 95 % interval. */
    public record Weighted(double share, double low, double high) {}

    public TrialsResult {
        pairs = List.copyOf(pairs);
        best = List.copyOf(best);
    }

    /** Runs on which the pairs were scored, undecided ones included. */
    public int scoredRuns() {
        return pairs.stream().mapToInt(pair -> pair.success().runs()).sum();
    }

    /** Scoring runs that were asked for. */
    public int wantedRuns() {
        return runsPerPair * pairs.size();
    }

    /** True if the study was stopped before its last scoring run. */
    public boolean stopped() {
        return scoredRuns() < wantedRuns();
    }

    /** The result of an object with a grip; refuses a pair that was not tried. */
    public Pair pair(String object, String grip) {
        return pairs.stream()
                .filter(pair -> pair.object().equals(object) && pair.grip().equals(grip))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("'" + object + "' was not tried with '" + grip + "'"));
    }
}
