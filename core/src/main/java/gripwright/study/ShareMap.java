package gripwright.study;

import gripwright.closing.ClosingRunner;
import gripwright.closing.ClosingSummary;
import gripwright.closing.Conditions;
import gripwright.model.GraspObject;
import gripwright.model.Grip;
import gripwright.study.CellShare.Basis;
import gripwright.study.MapGrid.Cell;
import gripwright.study.Uncertain.Member;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.Predicate;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/**
 * A capture map with held shares, that spends its runs where the answer turns. Its result depends on the grid, the
 * runners and the seed only.
 *
 * @param map the grid and the wanted share
 * @param uncertain the ensembles
 */
public record ShareMap(CaptureMap map, Uncertain uncertain) {
    /** How cells are chosen, for printing beside a map. */
    public static final String REFINED =
            "Refining: every fourth cell is computed, then every second and every one whose"
                    + " computed neighbours end differently, until each border between outcomes is followed on both sides; cells"
                    + " between agreeing ones take their outcome over. An island smaller than that can be missed. Cells beside a"
                    + " border between held and not held, and beside cells that hold only in part, get ensembles.";

    /** When a cell's share is said to depend on the calculation, for printing beside a map. */
    public static final String MODEL_LIMITED =
            "Model-limited: in a cell whose runs disagree, up to 4 of them are repeated"
                    + " with half the step and with half the damping; if 2 or more of 4 change (net), the share there says as"
                    + " much about the calculation as about the hand.";

    private static final int COARSEST = 4;
    private static final int PAIRS = 4;
    private static final int NET_CHANGE = 2;

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
        return new Work(object, grip, new Runners(closings, closings, closings), jobs, Jobs.Progress.NONE, soFar -> {})
                .outcomes();
    }

    private record Ensemble(ClosingSummary nominal, CellShare share) {}

    /** The runners of one thread; the two others are rarely needed. */
    private static final class Trio {
        private final Supplier<ClosingRunner> step;
        private final Supplier<ClosingRunner> damping;
        final ClosingRunner usual;
        private @Nullable ClosingRunner halfStep;
        private @Nullable ClosingRunner halfDamping;

        Trio(GraspObject object, Grip grip, Runners runners) {
            usual = runners.usual.create(object, grip);
            step = () -> runners.halfStep.create(object, grip);
            damping = () -> runners.halfDamping.create(object, grip);
        }

        ClosingRunner halfStep() {
            ClosingRunner runner = halfStep == null ? step.get() : halfStep;
            halfStep = runner;
            return runner;
        }

        ClosingRunner halfDamping() {
            ClosingRunner runner = halfDamping == null ? damping.get() : halfDamping;
            halfDamping = runner;
            return runner;
        }
    }

    /** One map on its way. Cells are counted row by row. */
    private final class Work {
        private final GraspObject object;
        private final Grip grip;
        private final Runners runners;
        private final Jobs jobs;
        private final Jobs.Progress progress;
        private final Consumer<MapResult> soFar;
        private final MapGrid grid = new MapGrid(map.cells());
        private final int n = map.cells();
        private final @Nullable ClosingSummary[] runs = new ClosingSummary[n * n];
        private final @Nullable CellShare[] shares = new CellShare[n * n];
        private int finished;
        private boolean stopped;

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
            this.jobs = jobs;
            this.progress = progress;
            this.soFar = soFar;
        }

        MapResult run() {
            outcomes();
            for (boolean more = !stopped; more; ) {
                more = ensembles(cell -> basis(cell) != Basis.ENSEMBLE && unclear(cell));
                grown(1);
            }
            return result();
        }

        MapResult outcomes() {
            int stride = grid.middle() >= 2 * COARSEST ? COARSEST : grid.middle() >= COARSEST ? 2 : 1;
            int coarsest = stride;
            compute(cell -> onLattice(cell, coarsest));
            grown(coarsest);
            for (stride /= 2; stride >= 1 && !stopped; stride /= 2) {
                int step = stride;
                compute(cell -> onLattice(cell, step) && at(cell) == null && !takenOver(cell, 2 * step));
                grown(step);
            }
            for (boolean more = !stopped; more; ) {
                more = compute(cell -> basis(cell) == Basis.NEIGHBOURS && besideAnother(cell));
            }
            grown(1);
            return result();
        }

        /** Tells of the map so far, if every cell so far apart is known and they reach its edge. */
        private void grown(int stride) {
            if (stopped || grid.middle() % stride != 0) {
                return;
            }
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

        private MapResult result() {
            return map.summary(object.name(), grip.name(), Arrays.asList(runs), Arrays.asList(shares));
        }

        /** Runs the chosen cells once; true if there were any and all were finished. */
        private boolean compute(Predicate<Cell> chosen) {
            List<Cell> cells = grid.order().stream().filter(chosen).toList();
            List<ClosingSummary> done = jobs.run(
                    cells,
                    () -> runners.usual.create(object, grip),
                    (ClosingRunner runner, Cell cell) -> runner.run(place(cell)),
                    counted(cells.size()));
            for (int i = 0; i < cells.size(); i++) {
                ClosingSummary run = done.get(i);
                if (run != null) {
                    put(cells.get(i), run, CellShare.of(Basis.RUN, run.outcome()));
                }
            }
            return finish(cells.size());
        }

        private boolean ensembles(Predicate<Cell> chosen) {
            List<Cell> cells = grid.order().stream().filter(chosen).toList();
            List<Ensemble> done =
                    jobs.run(cells, () -> new Trio(object, grip, runners), this::ensemble, counted(cells.size()));
            for (int i = 0; i < cells.size(); i++) {
                Ensemble ensemble = done.get(i);
                if (ensemble != null) {
                    put(cells.get(i), ensemble.nominal, ensemble.share);
                }
            }
            return finish(cells.size());
        }

        private Ensemble ensemble(Trio trio, Cell cell) {
            ClosingSummary known = basis(cell) == Basis.RUN ? at(cell) : null;
            ClosingSummary nominal = known == null ? trio.usual.run(place(cell)) : known;
            ClosingRunner runner = new Known(trio.usual, place(cell), nominal);
            String subject = object.name() + " at " + (cell.column() - n / 2) + ", " + (cell.row() - n / 2);
            List<Member> members = uncertain.run(runner, place(cell), subject, map.pitch() / 2);
            int held = (int) members.stream().filter(Member::held).count();
            int decided =
                    (int) members.stream().filter(m -> m.outcome().decided()).count();
            boolean limited = !Uncertain.agree(members)
                    && (changes(trio.halfDamping(), members) || changes(trio.halfStep(), members));
            return new Ensemble(
                    nominal, new CellShare(Basis.ENSEMBLE, held, decided, members.size() - decided, limited));
        }

        /** Half of the pairs suffice if none of them changes. */
        private boolean changes(ClosingRunner other, List<Member> members) {
            int net = 0;
            boolean any = false;
            for (int i = 0; i < PAIRS && i < members.size(); i++) {
                if (i == PAIRS / 2 && !any) {
                    return false;
                }
                boolean before = members.get(i).held();
                boolean after = other.run(members.get(i).conditions()).held();
                any |= before != after;
                net += (after ? 1 : 0) - (before ? 1 : 0);
            }
            return Math.abs(net) >= NET_CHANGE;
        }

        private boolean onLattice(Cell cell, int stride) {
            return (cell.column() - n / 2) % stride == 0 && (cell.row() - n / 2) % stride == 0;
        }

        /** Fills a cell from the corners of the coarser square around it, if all are known and alike. */
        private boolean takenOver(Cell cell, int coarse) {
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
            put(cell, first, CellShare.of(Basis.NEIGHBOURS, first.outcome()));
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

        /** Undecided, or beside a cell that is held where this one is not, or that holds in part. */
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
            CellShare share = shares[row * n + column];
            return other != null && other.held() != mine.held() || share != null && share.mixed();
        }

        private boolean inside(int row, int column) {
            return row >= 0 && row < n && column >= 0 && column < n;
        }

        private @Nullable ClosingSummary at(Cell cell) {
            return runs[cell.row() * n + cell.column()];
        }

        private @Nullable Basis basis(Cell cell) {
            CellShare share = shares[cell.row() * n + cell.column()];
            return share == null ? null : share.basis();
        }

        private void put(Cell cell, ClosingSummary run, CellShare share) {
            runs[cell.row() * n + cell.column()] = run;
            shares[cell.row() * n + cell.column()] = share;
        }

        private Conditions place(Cell cell) {
            return Conditions.at(map.shift(cell.column()), map.shift(cell.row()), 0);
        }

        // Rounds follow on one another; how many cells the later ones have is known only then.
        private Jobs.Progress counted(int of) {
            int before = finished;
            return (done, all) -> {
                boolean go = progress.done(before + done, before + of);
                if (!go) {
                    stopped = true;
                }
                return go;
            };
        }

        private boolean finish(int of) {
            finished += of;
            return of > 0 && !stopped;
        }
    }

    /** A runner that need not repeat a run it is told of. */
    private record Known(ClosingRunner other, Conditions at, ClosingSummary summary) implements ClosingRunner {
        @Override
        public ClosingSummary run(Conditions conditions) {
            return conditions.equals(at) ? summary : other.run(conditions);
        }

        @Override
        public gripwright.closing.ClosingDetail detail(Conditions conditions) {
            return other.detail(conditions);
        }
    }
}
