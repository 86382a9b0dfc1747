package gripwright.study;

import gripwright.closing.ClosingSummary;
import gripwright.closing.Outcome;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * A capture map: the outcome for each shift of the object on a square grid about its nominal place.
 *
 * @param span half width of the square [m]
 * @param cells per side, odd, so that one cell is the nominal place
 * @param runs row by row, index = row * cells + column; row 0 is y = -span, column 0 is x = -span; null = not computed
 *     (the study was stopped)
 * @param captureRadius largest radius about the nominal place within which every cell holds [m]; 0 if the middle fails
 * @param shareRadius largest radius within which at least {@code wantedShare} of the cells hold [m]
 * @param heldArea held cells times cell area [m^2]
 */
public record MapResult(
        String object,
        String grip,
        double span,
        int cells,
        List<@Nullable ClosingSummary> runs,
        double captureRadius,
        double shareRadius,
        double wantedShare,
        double heldArea) {
    public @Nullable Outcome outcome(int row, int column) {
        ClosingSummary run = runs.get(row * cells + column);
        return run == null ? null : run.outcome();
    }

    /** Shift of a column (x) or row (y) [m]. */
    public double shift(int index) {
        return cells == 1 ? 0 : 2 * span * (index - cells / 2) / (cells - 1);
    }

    /** Distance between neighbouring cell centres [m]. */
    public double pitch() {
        return cells == 1 ? 0 : 2 * span / (cells - 1);
    }

    /** Cells that were computed. */
    public int computed() {
        return (int) runs.stream().filter(run -> run != null).count();
    }

    /** How often each outcome was seen; those never seen are missing. In the order of {@link Outcome}. */
    public Map<Outcome, Integer> outcomes() {
        Map<Outcome, Integer> counts = new EnumMap<>(Outcome.class);
        for (ClosingSummary run : runs) {
            if (run != null) {
                counts.merge(run.outcome(), 1, Integer::sum);
            }
        }
        return counts;
    }

    /** True if the capture radius ends at the edge of the map: the true one may be greater. */
    public boolean captureLimitedBySpan() {
        return captureRadius >= span * (1 - 1e-9);
    }

    /** The same of the radius for the wanted share. */
    public boolean shareLimitedBySpan() {
        return shareRadius >= span * (1 - 1e-9);
    }
}
