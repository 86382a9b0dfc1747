package gripwright.study;

import gripwright.closing.ClosingSummary;
import gripwright.closing.Outcome;
import gripwright.model.Grip.Approach;
import gripwright.study.Finding.Topic;
import gripwright.study.MapGrid.Cell;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** Sentences about one capture map. */
final class MapFindings {
    private final MapResult map;
    private final Approach approach;
    private final MapGrid grid;
    private final List<Finding> findings = new ArrayList<>();

    MapFindings(MapResult map, Approach approach) {
        this.map = map;
        this.approach = approach;
        this.grid = new MapGrid(map.cells());
    }

    List<Finding> all() {
        if (map.computed() == 0) {
            add(Topic.CAUTION, "No cell of the map of the " + map.object() + " was computed before it was stopped.");
            return findings;
        }
        capture();
        share();
        area();
        if (outcome(new Cell(grid.middle(), grid.middle())) == Outcome.HELD) {
            // The tightest side first: it is the one to mend.
            List<Reach> sides = Stream.of(
                            reach(SampledInput.X, 1),
                            reach(SampledInput.X, -1),
                            reach(SampledInput.Y, 1),
                            reach(SampledInput.Y, -1))
                    .sorted(Comparator.comparingInt(Reach::steps))
                    .toList();
            direction(sides.get(0));
            toTheEdge(sides);
            sides.subList(1, sides.size()).forEach(this::direction);
        }
        cautions();
        return findings;
    }

    private void capture() {
        Outcome middle = outcome(new Cell(grid.middle(), grid.middle()));
        String with = " with " + map.grip();
        if (middle == null) {
            return;
        }
        if (middle == Outcome.UNDECIDED) {
            add(
                    Topic.ANSWER,
                    "Whether the " + map.object() + " is held at its nominal place" + with
                            + " is undecided: the solver did not converge there.");
            return;
        }
        if (middle != Outcome.HELD) {
            add(
                    Topic.ANSWER,
                    "Even at its nominal place the " + map.object() + " " + Phrases.happened(middle) + with + ".");
            return;
        }
        long inside = grid.order().stream()
                .filter(cell -> outcome(cell) != null && distance(cell) <= map.captureRadius() * (1 + 1e-9))
                .count();
        String radius = Phrases.millimetres(map.captureRadius(), RoundingMode.DOWN);
        String all = inside == 1 ? "the one cell" : "all " + inside + " cells";
        String text = "Holds the " + map.object() + with + " within " + (map.captureLimitedBySpan() ? "at least " : "")
                + radius + " of the nominal place (" + all + soFar() + " up to there hold).";
        add(
                Topic.ANSWER,
                text + nearestFailure().map(cell -> " " + nearest(cell)).orElse(""));
    }

    private String nearest(Cell cell) {
        Outcome outcome = outcome(cell);
        CellShare share = map.cell(cell.row(), cell.column());
        String what =
                share != null && share.basis() == CellShare.Basis.ENSEMBLE && share.decided() > 0 && share.held() > 0
                        ? "there it holds in " + Phrases.counted(share.proportion())
                        : outcome == null || outcome == Outcome.UNDECIDED
                                ? "the run there is undecided"
                                : "there it " + Phrases.happened(outcome);
        return "The nearest place where it does not is " + Phrases.tenths(distance(cell)) + " off, at x "
                + Phrases.millimetres(map.shift(cell.column())) + ", y " + Phrases.millimetres(map.shift(cell.row()))
                + ": " + what + ".";
    }

    private Optional<Cell> nearestFailure() {
        return grid.order().stream()
                .filter(cell -> outcome(cell) != null && !map.alwaysHolds(cell.row(), cell.column()))
                .min(Comparator.comparingInt(grid::squaredSteps));
    }

    private void share() {
        String wanted = Phrases.percent(map.wantedShare());
        if (map.shareRadius() <= map.captureRadius() * (1 + 1e-9)) {
            return;
        }
        add(
                Topic.ANSWER,
                "Within " + (map.shareLimitedBySpan() ? "at least " : "")
                        + Phrases.millimetres(map.shareRadius(), RoundingMode.DOWN) + " at least " + wanted
                        + " of the cells" + soFar() + " hold.");
    }

    private void area() {
        int held = map.outcomes().getOrDefault(Outcome.HELD, 0);
        String failures = map.outcomes().entrySet().stream()
                .filter(entry -> entry.getKey() != Outcome.HELD)
                .sorted(Map.Entry.<Outcome, Integer>comparingByValue().reversed())
                .map(entry -> entry.getKey().words() + " " + entry.getValue())
                .collect(Collectors.joining(", "));
        add(
                Topic.REASON,
                held + " of " + Phrases.plural(map.computed(), "cell") + soFar() + " hold"
                        + (map.hasShares() ? " in their nominal run" : "") + ", " + area(map.heldArea()) + " cm2"
                        + (map.hasShares()
                                ? " by held shares ("
                                        + area(map.heldAreaInterval().low()) + " to "
                                        + area(map.heldAreaInterval().high()) + ")"
                                : "")
                        + (failures.isEmpty() ? "." : "; the others: " + failures + "."));
    }

    private static double area(double squareMetres) {
        return Math.round(1e5 * squareMetres) / 10.0;
    }

    /** How far it holds to one side: cells in a row that hold, and what ends them, if anything computed does. */
    private record Reach(
            SampledInput axis,
            int sign,
            int steps,
            @Nullable Outcome end) {}

    private Reach reach(SampledInput axis, int sign) {
        int steps = 0;
        for (int step = 1; step <= grid.middle(); step++) {
            Outcome outcome = outcome(onAxis(axis, sign * step));
            if (outcome != null && outcome != Outcome.HELD) {
                return new Reach(axis, sign, steps, outcome);
            }
            steps = outcome == null ? steps : step;
        }
        return new Reach(axis, sign, steps, null);
    }

    private void direction(Reach side) {
        String where = Phrases.sentenceCase(Directions.along(side.axis, side.sign, approach));
        String far = Phrases.millimetres(side.steps * map.pitch(), RoundingMode.DOWN);
        String text;
        if (side.end != null) {
            text = where + " it holds " + (side.steps == 0 ? "at the nominal place only" : "up to " + far)
                    + "; the next cell" + soFar() + " " + Phrases.happened(side.end);
        } else if (side.steps == grid.middle()) {
            text = where + " it holds to the edge of the map (" + far + ")";
        } else {
            text = where + " it holds as far as it was computed (" + far + ")";
        }
        add(Topic.WHERE, text + quarter(side.axis, side.sign) + ".");
    }

    private void toTheEdge(List<Reach> sides) {
        long open = sides.stream().filter(side -> side.steps == grid.middle()).count();
        if (open > 0) {
            add(
                    Topic.WHERE,
                    "To " + (open == 4 ? "all sides" : open == 1 ? "one side" : open + " sides")
                            + " the map ends before the hold does: make it wider than +-"
                            + Phrases.millimetres(map.span()) + " to see how far that goes.");
        }
    }

    // The quarter of the square on that side, its diagonals included.
    private String quarter(SampledInput axis, int sign) {
        Map<Outcome, Integer> failed = new EnumMap<>(Outcome.class);
        int decided = 0;
        for (Cell cell : grid.order()) {
            int x = cell.column() - grid.middle();
            int y = cell.row() - grid.middle();
            int forward = sign * (axis == SampledInput.X ? x : y);
            int sideways = Math.abs(axis == SampledInput.X ? y : x);
            Outcome outcome = outcome(cell);
            if (forward <= 0 || sideways > forward || outcome == null || !outcome.decided()) {
                continue;
            }
            decided++;
            if (outcome != Outcome.HELD) {
                failed.merge(outcome, 1, Integer::sum);
            }
        }
        int total = failed.values().stream().mapToInt(Integer::intValue).sum();
        if (total == 0) {
            return "";
        }
        Map.Entry<Outcome, Integer> most =
                failed.entrySet().stream().max(Map.Entry.comparingByValue()).orElseThrow();
        return "; in the quarter on that side " + total + " of " + decided + " cells fail, "
                + (most.getValue() == total ? "all " : "most often ")
                + most.getKey().words()
                + (most.getValue() == total ? "" : " (" + most.getValue() + ")");
    }

    private void cautions() {
        int undecided = map.outcomes().getOrDefault(Outcome.UNDECIDED, 0);
        if (undecided > 0) {
            add(
                    Topic.CAUTION,
                    Phrases.plural(undecided, "cell") + " of " + map.computed()
                            + " undecided (the solver did not converge): not counted as held, nor as a failure of the hand.");
        }
        int inRuns =
                map.count(s -> s.basis() == CellShare.Basis.ENSEMBLE && s.here().undecided() > 0);
        if (inRuns > 0) {
            int runs = map.shares().stream()
                    .mapToInt(s -> s != null && s.basis() == CellShare.Basis.ENSEMBLE
                            ? s.here().undecided()
                            : 0)
                    .sum();
            add(
                    Topic.CAUTION,
                    Phrases.runs(runs) + " undecided in the ensembles of " + Phrases.plural(inRuns, "cell")
                            + "; left out of their shares.");
        }
        sureness();
        int all = map.cells() * map.cells();
        if (map.computed() < all) {
            add(
                    Topic.CAUTION,
                    "The map was stopped after " + map.computed() + " of " + all
                            + " cells: what holds between the computed cells is not known yet.");
        }
        add(
                Topic.CAUTION,
                "Cells are " + Phrases.millimetres(map.pitch())
                        + " apart, at nominal turn and height"
                        + (map.hasShares()
                                ? "; friction, mass, pads and springs vary in the ensembles only."
                                : ", friction and mass; between cells nothing was computed."));
    }

    private void sureness() {
        if (!map.hasShares()) {
            return;
        }
        int mixed = map.count(CellShare::mixed);
        int limited = map.count(CellShare::modelLimited);
        int taken = map.count(s -> s.basis() == CellShare.Basis.NEIGHBOURS);
        if (mixed > 0) {
            add(
                    Topic.CAUTION,
                    "In " + Phrases.plural(mixed, "cell") + " the object is held in some runs only"
                            + (limited == 0
                                    ? "; none of them is model-limited."
                                    : "; " + limited + " of them are model-limited (half the step or half the damping"
                                            + " changes the share): believe the tool least there."));
        }
        if (taken > 0) {
            add(
                    Topic.CAUTION,
                    Phrases.plural(taken, "cell") + " of " + map.computed()
                            + " not computed: the computed cells around them agree.");
        }
    }

    private String soFar() {
        return map.computed() < map.cells() * map.cells() ? " computed so far" : "";
    }

    private Cell onAxis(SampledInput axis, int steps) {
        int middle = grid.middle();
        return axis == SampledInput.X ? new Cell(middle, middle + steps) : new Cell(middle + steps, middle);
    }

    private @Nullable Outcome outcome(Cell cell) {
        ClosingSummary run = map.runs().get(cell.row() * map.cells() + cell.column());
        return run == null ? null : run.outcome();
    }

    private double distance(Cell cell) {
        return map.pitch() * Math.sqrt(grid.squaredSteps(cell));
    }

    private void add(Topic topic, String text) {
        findings.add(new Finding(topic, map.object(), map.grip(), text));
    }
}
