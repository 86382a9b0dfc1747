package gripwright.study;

import gripwright.closing.ClosingSummary;
import gripwright.closing.Conditions;
import gripwright.model.GraspObject;
import gripwright.model.Grip;
import gripwright.study.CellShare.Basis;
import gripwright.study.MapGrid.Cell;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;

/**
 * A capture map with held shares, that spends its runs where the answer turns. Its result depends on the grid, the
 * runners and the seed only.
 *
 * @param map the grid and the wanted share
 * @param uncertain the ensembles
 */
public record ShareMap(CaptureMap map, Uncertain uncertain) {
    /**
     * A share is that of the runs within this distance of the cell's middle, in x and in y [m]; of those in the cell
     * where cells are larger. Half a fingertip: what a share says of a smaller patch, nobody can aim at.
     */
    public static final double PATCH = 3e-3;

    /** How cells are chosen, for printing beside a map. */
    public static final String REFINED =
            "Refining: every fourth cell is computed, then every second and every one whose"
                    + " computed neighbours end differently, until each border between outcomes is followed on both sides; cells"
                    + " between agreeing ones take their outcome over. An island smaller than that can be missed. Cells beside a"
                    + " border between held and not held, and beside cells whose own runs disagree, get ensembles.";

    /** What a cell's share is counted over, for printing beside a map. */
    public static final String SHARED =
            "Shares: of all runs made within 3 mm of the cell's middle in x and y, those of the cells beside it too (in the"
                    + " cell, where cells are larger than 6 mm); an outcome is that of the cell's own nominal run.";

    /** When a cell's share is said to depend on the calculation, for printing beside a map. */
    public static final String MODEL_LIMITED =
            "Model-limited: where the runs behind a share disagree, 4 of those within 6 mm are"
                    + " repeated with half the step and with half the damping, 8 if any of them changes (fewer, where there are"
                    + " not as many); if half of them or more change (net), the share there says as much about the calculation as"
                    + " about the hand.";

    private static final int COARSEST = 4;

    /** What closes the hand as usual, with half the step, and with half the damping. */
    public record Runners(RunnerFactory usual, RunnerFactory halfStep, RunnerFactory halfDamping) {}

    /** Computes the map; stopped by the progress, it keeps what is finished. */
    public MapResult run(GraspObject object, Grip grip, Runners runners, Jobs jobs, Jobs.Progress progress) {
        return run(object, grip, runners, jobs, progress, soFar -> {});
    }

    /**
     * The same.
     *
     * @param soFar told of each whole map on the way, with the same span: of coarser grids, then with one run a cell
     */
    public MapResult run(
            GraspObject object,
            Grip grip,
            Runners runners,
            Jobs jobs,
            Jobs.Progress progress,
            Consumer<MapResult> soFar) {
        return new Work(object, grip, runners, jobs, progress, soFar).run();
    }

    /** The outcomes alone, without ensembles. */
    MapResult outcomes(GraspObject object, Grip grip, RunnerFactory closings, Jobs jobs) {
        Work work = new Work(
                object, grip, new Runners(closings, closings, closings), jobs, Jobs.Progress.NONE, soFar -> {});
        work.outcomes();
        return work.result();
    }

    /** One map on its way. */
    private final class Work {
        private final GraspObject object;
        private final Grip grip;
        private final Runners runners;
        private final MapJobs jobs;
        private final Consumer<MapResult> soFar;
        private final MapGrid grid = new MapGrid(map.cells());
        private final int n = map.cells();
        private final @Nullable ClosingSummary[] runs = new ClosingSummary[n * n];
        private final boolean[] takenOver = new boolean[n * n];
        private final Patches patches = new Patches(map, grid, PATCH);

        Work(
                GraspObject object,
                Grip grip,
                Runners runners,
                Jobs jobs,
                Jobs.Progress progress,
                Consumer<MapResult> soFar) {
            this.object = object;
            this.grip = grip;
            this.runners = runners;
            this.soFar = soFar;
            this.jobs = new MapJobs(jobs, progress, factory -> factory.create(object, grip));
        }

        MapResult run() {
            outcomes();
            for (boolean more = !jobs.stopped(); more; ) {
                more = members();
                grown(1);
            }
            for (RunnerFactory other : List.of(runners.halfDamping, runners.halfStep)) {
                for (boolean more = !jobs.stopped(); more; ) {
                    more = checks(other);
                }
                patches.endChecks();
            }
            return result();
        }

        void outcomes() {
            int stride = grid.middle() >= 2 * COARSEST ? COARSEST : grid.middle() >= COARSEST ? 2 : 1;
            int coarsest = stride;
            compute(cell -> onLattice(cell, coarsest));
            grown(coarsest);
            for (stride /= 2; stride >= 1 && !jobs.stopped(); stride /= 2) {
                int step = stride;
                compute(cell -> onLattice(cell, step) && at(cell) == null && !takeOver(cell, 2 * step));
                grown(step);
            }
            for (boolean more = !jobs.stopped(); more; ) {
                more = compute(cell -> takenOver[index(cell)] && besideAnother(cell));
            }
            grown(1);
        }

        /** Tells of the map so far, if every cell so far apart is known and they reach its edge. */
        private void grown(int stride) {
            if (jobs.stopped() || grid.middle() % stride != 0) {
                return;
            }
            @Nullable CellShare[] shares = shares();
            List<@Nullable ClosingSummary> someRuns = new ArrayList<>();
            List<@Nullable CellShare> someShares = new ArrayList<>();
            for (int row = 0; row < n; row += stride) {
                for (int column = 0; column < n; column += stride) {
                    someRuns.add(runs[row * n + column]);
                    someShares.add(shares[row * n + column]);
                }
            }
            CaptureMap coarse = new CaptureMap(map.span(), (n - 1) / stride + 1, map.wantedShare());
            soFar.accept(coarse.summary(object.name(), grip.name(), someRuns, someShares));
        }

        MapResult result() {
            return map.summary(object.name(), grip.name(), Arrays.asList(runs), Arrays.asList(shares()));
        }

        private @Nullable CellShare[] shares() {
            @Nullable CellShare[] shares = new CellShare[n * n];
            for (Cell cell : grid.order()) {
                ClosingSummary run = at(cell);
                if (run != null) {
                    shares[index(cell)] = takenOver[index(cell)]
                            ? CellShare.of(Basis.NEIGHBOURS, run.outcome())
                            : patches.hasEnsemble(cell) ? patches.share(cell) : CellShare.of(Basis.RUN, run.outcome());
                }
            }
            return shares;
        }

        /** Runs the chosen cells once; true if there were any and all were finished. */
        private boolean compute(Predicate<Cell> chosen) {
            List<Cell> cells = grid.order().stream().filter(chosen).toList();
            List<ClosingSummary> done = jobs.run(runners.usual, cells, (runner, cell) -> runner.run(place(cell)));
            for (int i = 0; i < cells.size(); i++) {
                ClosingSummary run = done.get(i);
                if (run != null) {
                    runs[index(cells.get(i))] = run;
                    takenOver[index(cells.get(i))] = false;
                    patches.nominal(cells.get(i), place(cells.get(i)), run.outcome());
                }
            }
            return jobs.goesOn(cells);
        }

        private record Next(Cell cell, int number, Conditions conditions) {}

        /** A round of further runs in the cells that lack some; true if there were any and all were finished. */
        private boolean members() {
            List<Cell> unclear = grid.order().stream().filter(this::unclear).toList();
            List<Next> next = unclear.stream()
                    .flatMap(cell -> patches.lacking(cell, takenOver[index(cell)])
                            .mapToObj(number -> new Next(cell, number, member(cell, number))))
                    .toList();
            List<ClosingSummary> done =
                    jobs.run(runners.usual, next, (runner, member) -> runner.run(member.conditions));
            for (int i = 0; i < next.size(); i++) {
                ClosingSummary run = done.get(i);
                Next member = next.get(i);
                if (run != null && member.number == 0) {
                    runs[index(member.cell)] = run;
                    takenOver[index(member.cell)] = false;
                    patches.nominal(member.cell, member.conditions, run.outcome());
                } else if (run != null) {
                    patches.member(member.cell, member.conditions, run.outcome());
                }
            }
            return jobs.goesOn(next);
        }

        /** A round of runs with another calculation in the patches that lack some. */
        private boolean checks(RunnerFactory other) {
            List<Patches.Check> next = patches.unchecked();
            List<ClosingSummary> done = jobs.run(other, next, (runner, check) -> runner.run(check.conditions()));
            for (int i = 0; i < next.size(); i++) {
                ClosingSummary run = done.get(i);
                if (run != null) {
                    patches.checked(next.get(i), run.held());
                }
            }
            return jobs.goesOn(next);
        }

        private Conditions member(Cell cell, int number) {
            String subject = object.name() + " at " + (cell.column() - n / 2) + ", " + (cell.row() - n / 2);
            return uncertain.member(place(cell), subject, number, map.pitch() / 2);
        }

        private boolean onLattice(Cell cell, int stride) {
            return (cell.column() - n / 2) % stride == 0 && (cell.row() - n / 2) % stride == 0;
        }

        /** Fills a cell from the corners of the coarser square around it, if all are known and alike. */
        private boolean takeOver(Cell cell, int coarse) {
            int[] columns = around(cell.column(), coarse);
            int[] rows = around(cell.row(), coarse);
            ClosingSummary first = null;
            for (int row : rows) {
                for (int column : columns) {
                    ClosingSummary corner = inside(row, column) ? runs[row * n + column] : null;
                    if (corner == null || first != null && corner.outcome() != first.outcome()) {
                        return false;
                    }
                    first = first == null ? corner : first;
                }
            }
            if (first == null || !first.outcome().decided()) {
                return false;
            }
            runs[index(cell)] = first;
            takenOver[index(cell)] = true;
            return true;
        }

        private int[] around(int index, int coarse) {
            int low = n / 2 + Math.floorDiv(index - n / 2, coarse) * coarse;
            return low == index ? new int[] {index} : new int[] {low, low + coarse};
        }

        private boolean besideAnother(Cell cell) {
            ClosingSummary mine = at(cell);
            for (int row = cell.row() - 1; row <= cell.row() + 1; row++) {
                for (int column = cell.column() - 1; column <= cell.column() + 1; column++) {
                    ClosingSummary other = inside(row, column) ? runs[row * n + column] : null;
                    if (mine != null && other != null && other.outcome() != mine.outcome()) {
                        return true;
                    }
                }
            }
            return false;
        }

        /** Undecided, or beside a cell that is held where this one is not, or whose own runs disagree. */
        private boolean unclear(Cell cell) {
            ClosingSummary mine = at(cell);
            if (mine == null) {
                return false;
            }
            return !mine.outcome().decided()
                    || turns(mine, cell.row() - 1, cell.column())
                    || turns(mine, cell.row() + 1, cell.column())
                    || turns(mine, cell.row(), cell.column() - 1)
                    || turns(mine, cell.row(), cell.column() + 1);
        }

        private boolean turns(ClosingSummary mine, int row, int column) {
            if (!inside(row, column)) {
                return false;
            }
            ClosingSummary other = runs[row * n + column];
            return other != null && other.held() != mine.held() || patches.mixedWithin(new Cell(row, column));
        }

        private boolean inside(int row, int column) {
            return row >= 0 && row < n && column >= 0 && column < n;
        }

        private @Nullable ClosingSummary at(Cell cell) {
            return runs[index(cell)];
        }

        private int index(Cell cell) {
            return cell.row() * n + cell.column();
        }

        private Conditions place(Cell cell) {
            return Conditions.at(map.shift(cell.column()), map.shift(cell.row()), 0);
        }
    }
}
