package gripwright.study;

import gripwright.closing.ClosingSummary;
import gripwright.closing.Outcome;
import java.util.List;
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
        return cells == 1 ? 0 : -span + 2 * span * index / (cells - 1);
    }
}
