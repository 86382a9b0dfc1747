package gripwright.signal;

import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What a log says about one taxel.
 *
 * @param column in the log
 * @param number counted from 1 over all taxels
 * @param state whether it could be fitted
 * @param words why not, or what stands out and the likely cause; empty if nothing does
 * @param recast whether its rubber had better be cast anew
 * @param figures by kind; empty if it was not fitted
 * @param model empty if it was not fitted
 * @param allan Allan deviations at rest; empty without rest
 * @param loading deviation of the reading from the best straight line while loading, at 5, 10, ..., 95 % of full force [-
 *     of full-scale output]; empty without cycles
 * @param unloading the same while unloading
 * @param spikes single readings left out
 */
public record Taxel(
        String column,
        String pad,
        int number,
        State state,
        String words,
        boolean recast,
        Map<FigureKind, Figure> figures,
        Optional<TaxelModel> model,
        List<Allan.Point> allan,
        List<Double> loading,
        List<Double> unloading,
        int spikes) {
    /** Whether and why a taxel was or was not fitted. */
    public enum State {
        FITTED("fitted"),
        DEAD("dead"),
        SWAPPED("swapped"),
        UNFIT("not fitted");

        private final String words;

        State(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    public Taxel {
        figures = Map.copyOf(figures);
        allan = List.copyOf(allan);
        loading = List.copyOf(loading);
        unloading = List.copyOf(unloading);
    }

    static Taxel without(SensorLog.Channel c, State state, String words, boolean recast, int spikes) {
        return new Taxel(
                c.column(),
                c.pad(),
                c.number(),
                state,
                words,
                recast,
                Map.of(),
                Optional.empty(),
                List.of(),
                List.of(),
                List.of(),
                spikes);
    }

    /** The same with other words. */
    Taxel judged(String says, boolean castAnew) {
        return new Taxel(column, pad, number, state, says, castAnew, figures, model, allan, loading, unloading, spikes);
    }
}
