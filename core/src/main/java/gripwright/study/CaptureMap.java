package gripwright.study;

import gripwright.check.Check;
import gripwright.closing.ClosingRunner;
import gripwright.closing.ClosingSummary;
import gripwright.closing.Conditions;
import gripwright.model.GraspObject;
import gripwright.model.Grip;
import gripwright.study.MapGrid.Cell;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Closes one grip on one object for every shift on a square grid.
 *
 * @param span half width of the square [m]
 * @param cells per side, odd
 * @param wantedShare share of cells that must hold within {@link MapResult#shareRadius} [-], above 0, at most 1
 */
public record CaptureMap(double span, int cells, double wantedShare) {
    /** What the numbers of a map mean, for printing beside them. */
    public static final String CAPTURE_RADIUS =
            "Capture range: the greatest distance from the nominal place to the centre of a held cell such that every"
                    + " known cell up to that distance holds in every run made there. Undecided cells count as not"
                    + " holding here. It ends at the span of the map: if all cells up to there hold, the range is at"
                    + " least the span.";

    public static final String SHARE_RADIUS =
            "Range for a share: the greatest distance such that the held shares of the known cells up to that distance"
                    + " are on average at least the wanted share. Every cell counts alike, however likely its shift;"
                    + " undecided cells count as not holding. It too ends at the span.";

    public static final String HELD_AREA =
            "Held area: held shares of the cells of the whole square, summed, times the area of a cell (pitch times"
                    + " pitch); undecided cells and cells not computed are left out. A cell with one run has the share"
                    + " 0 or 1. The interval is that of the runs of the ensembles, as if cells were independent.";

    public CaptureMap {
        Check.positive(span, "span", "m");
        new MapGrid(cells).middle();
        Check.that(
                wantedShare > 0 && wantedShare <= 1,
                "wanted share is " + wantedShare + "; it must be above 0 and at most 1");
    }

    /** Told of each finished cell, one at a time, from any thread; for drawing while the map grows. */
    @FunctionalInterface
    public interface Listener {
        void finished(int row, int column, ClosingSummary run);

        Listener NONE = (row, column, run) -> {};
    }

    /** Computes the map; stopped by the progress, it keeps the finished cells. */
    public MapResult run(
            GraspObject object,
            Grip grip,
            RunnerFactory factory,
            Jobs jobs,
            Listener listener,
            Jobs.Progress progress) {
        List<Cell> order = new MapGrid(cells).order();
        Object oneAtATime = new Object();
        List<ClosingSummary> inOrder = jobs.run(
                order,
                () -> factory.create(object, grip),
                (ClosingRunner runner, Cell cell) -> {
                    ClosingSummary run = runner.run(Conditions.at(shift(cell.column()), shift(cell.row()), 0));
                    synchronized (oneAtATime) {
                        listener.finished(cell.row(), cell.column(), run);
                    }
                    return run;
                },
                progress);
        @Nullable ClosingSummary[] byCell = new ClosingSummary[cells * cells];
        for (int i = 0; i < order.size(); i++) {
            byCell[order.get(i).row() * cells + order.get(i).column()] = inOrder.get(i);
        }
        return summary(object.name(), grip.name(), Arrays.asList(byCell));
    }

    /**
     * The numbers of a map whose cells are known, with one run each.
     *
     * @param runs row by row, null = not computed; copied
     */
    public MapResult summary(String object, String grip, List<@Nullable ClosingSummary> runs) {
        return summary(object, grip, runs, List.of());
    }

    /**
     * The same with held shares.
     *
     * @param shares in the order of the runs, null where they are; empty = one run a cell
     */
    MapResult summary(
            String object, String grip, List<@Nullable ClosingSummary> runs, List<@Nullable CellShare> shares) {
        Check.count(runs.size(), cells * cells, "the list of cells", cells + " x " + cells);
        MapResult known = new MapResult(
                object,
                grip,
                span,
                cells,
                Collections.unmodifiableList(new ArrayList<>(runs)),
                0,
                0,
                wantedShare,
                0,
                Collections.unmodifiableList(new ArrayList<>(shares)));
        return new MapResult(
                object,
                grip,
                span,
                cells,
                known.runs(),
                captureRadius(known),
                shareRadius(known),
                wantedShare,
                heldArea(known),
                known.shares());
    }

    private double heldArea(MapResult known) {
        double sum = 0;
        for (Cell cell : new MapGrid(cells).order()) {
            double share = known.share(cell.row(), cell.column());
            sum += Double.isNaN(share) ? 0 : share;
        }
        return sum * pitch() * pitch();
    }

    private double captureRadius(MapResult known) {
        MapGrid grid = new MapGrid(cells);
        List<Cell> inside = computedInside(grid, known.runs());
        int nearestFailure = inside.stream()
                .filter(cell -> !known.alwaysHolds(cell.row(), cell.column()))
                .mapToInt(grid::squaredSteps)
                .min()
                .orElse(Integer.MAX_VALUE);
        int farthest = inside.stream()
                .mapToInt(grid::squaredSteps)
                .filter(steps -> steps < nearestFailure)
                .max()
                .orElse(0);
        return pitch() * Math.sqrt(farthest);
    }

    private double shareRadius(MapResult known) {
        MapGrid grid = new MapGrid(cells);
        List<Cell> inside = computedInside(grid, known.runs());
        double held = 0;
        int radius = 0;
        for (int i = 0; i < inside.size(); i++) {
            double share = known.share(inside.get(i).row(), inside.get(i).column());
            held += Double.isNaN(share) ? 0 : share;
            int steps = grid.squaredSteps(inside.get(i));
            boolean ringComplete = i + 1 == inside.size() || grid.squaredSteps(inside.get(i + 1)) > steps;
            // A hair of slack, else 0.9 of 10 cells could ask for a tenth one by rounding.
            if (ringComplete && held >= wantedShare * (i + 1) - 1e-9) {
                radius = steps;
            }
        }
        return pitch() * Math.sqrt(radius);
    }

    private static List<Cell> computedInside(MapGrid grid, List<@Nullable ClosingSummary> runs) {
        return grid.order().stream()
                .filter(grid::insideCircle)
                .filter(cell -> runs.get(cell.row() * grid.cells() + cell.column()) != null)
                .sorted(Comparator.comparingInt(grid::squaredSteps))
                .toList();
    }

    /** Distance between neighbouring cell centres [m]. */
    double pitch() {
        return 2 * span / (cells - 1);
    }

    // From the middle outwards, so that mirror images have exactly opposite shifts.
    double shift(int index) {
        return 2 * span * (index - cells / 2) / (cells - 1);
    }
}
