package gripwright.study;

import gripwright.closing.Conditions;
import gripwright.closing.Outcome;
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
     * @param failures how often each outcome other than held happened
     * @param influence how much each sampled input matters, strongest first
     * @param examples conditions of one typical run of each outcome seen, for pictures
     */
    public record Pair(
            String object,
            String grip,
            Proportion success,
            Map<Outcome, Integer> outcomes,
            List<Influence> influence,
            Map<Outcome, Conditions> examples) {
        public Pair {
            outcomes = Map.copyOf(outcomes);
            influence = List.copyOf(influence);
            examples = Map.copyOf(examples);
        }
    }

    /**
     * How strongly one sampled input decides between held and not.
     *
     * @param input "x", "y", "turn", "height", "pad friction", "table friction", "mass", "pad stiffness"
     * @param strength [-], 0 = none; definition printed with the table
     */
    public record Influence(String input, double strength) {}

    /** The grip chosen for an object on the choosing seeds, and its success on fresh ones. */
    public record Best(String object, String grip, Proportion success) {}

    /** A weighted mean of shares with its 95 % interval. */
    public record Weighted(double share, double low, double high) {}

    public TrialsResult {
        pairs = List.copyOf(pairs);
        best = List.copyOf(best);
    }
}
