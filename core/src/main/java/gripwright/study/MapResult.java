package gripwright.study;

import gripwright.closing.ClosingSummary;
import gripwright.closing.Outcome;
import gripwright.stats.CombinedShares;
import gripwright.stats.Interval;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;

/**
 * A capture map: the outcome for each shift of the object on a square grid about its nominal place.
 *
 * @param span half width of the square [m]
 * @param cells per side, odd, so that one cell is the nominal place
 * @param runs row by row, index = row * cells + column; row 0 is y = -span, column 0 is x = -span; null = not computed
 *     (the study was stopped)
 * @param captureRadius largest radius about the nominal place within which every cell holds in every run [m]; 0 if the
 *     middle fails
 * @param shareRadius largest radius within which the held shares are on average at least {@code wantedShare} [m]
 * @param heldArea held shares times cell area [m^2]
 * @param shares how sure each cell is, in the order of the runs, null where they are; empty = one run a cell
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
        double heldArea,
        List<@Nullable CellShare> shares) {
    /** One run a cell. */
    public MapResult(
            String object,
            String grip,
            double span,
            int cells,
            List<@Nullable ClosingSummary> runs,
            double captureRadius,
            double shareRadius,
            double wantedShare,
            double heldArea) {
        this(object, grip, span, cells, runs, captureRadius, shareRadius, wantedShare, heldArea, List.of());
    }

    /** True if the map has held shares from ensembles. */
    public boolean hasShares() {
        return !shares.isEmpty();
    }

    /** How sure a cell is; null if it is not known. */
    public @Nullable CellShare cell(int row, int column) {
        Outcome outcome = outcome(row, column);
        if (outcome == null) {
            return null;
        }
        CellShare share = shares.isEmpty() ? null : shares.get(row * cells + column);
        return share == null ? CellShare.of(CellShare.Basis.RUN, outcome) : share;
    }

    /** Held share of a cell [-]; NaN if it is not known or all its runs are undecided. */
    public double share(int row, int column) {
        CellShare cell = cell(row, column);
        if (cell == null) {
            return Double.NaN;
        }
        return cell.basis() == CellShare.Basis.NEIGHBOURS
                ? (outcome(row, column) == Outcome.HELD ? 1 : 0)
                : cell.proportion().share();
    }

    /** True if every run of a cell holds, or it is taken over from cells that do. */
    public boolean alwaysHolds(int row, int column) {
        CellShare cell = cell(row, column);
        return cell != null && share(row, column) == 1 && cell.undecided() == 0;
    }

    /** The 95 % interval of {@link #heldArea} from the runs of its ensembles [m^2]. */
    public Interval heldAreaInterval() {
        List<CombinedShares.Term> terms = shares.stream()
                .filter(s -> s != null && s.basis() == CellShare.Basis.ENSEMBLE)
                .map(s -> s.here())
                .filter(here -> here.decided() > 0)
                .map(here -> Proportion.of(here.held(), here.decided(), here.undecided()))
                .map(p -> new CombinedShares.Term(1, p.share(), new Interval(p.low(), p.high())))
                .toList();
        Interval sum = CombinedShares.interval(terms);
        double certain = heldArea - CombinedShares.value(terms) * pitch() * pitch();
        return new Interval(
                Math.max(0, certain + sum.low() * pitch() * pitch()), certain + sum.high() * pitch() * pitch());
    }

    /** Cells of a kind. */
    public int count(Predicate<CellShare> kind) {
        return (int) shares.stream().filter(s -> s != null && kind.test(s)).count();
    }

    /** Closings behind the map, those that only tell model-limited cells left out. */
    public int closings() {
        return shares.isEmpty()
                ? computed()
                : shares.stream().mapToInt(s -> s == null ? 0 : s.here().runs()).sum();
    }

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

    /** Cells whose outcome is known: computed, or taken over from neighbours. */
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
