package gripwright.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import gripwright.closing.ClosingSummary;
import gripwright.closing.Conditions;
import gripwright.closing.Outcome;
import gripwright.model.GraspObject;
import gripwright.model.Grip;
import gripwright.study.Fakes.RuleRunner;
import gripwright.study.MapGrid.Cell;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Random;
import java.util.Set;
import java.util.function.Function;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CaptureMapTest {
    private static final GraspObject MUG = Fakes.object("mug", 1, "wrap");
    private static final Grip WRAP = Fakes.grip("wrap", Grip.Approach.SIDE);

    private static MapResult map(double span, int cells, Function<Conditions, Outcome> rule) {
        return new CaptureMap(span, cells, 0.9)
                .run(
                        MUG,
                        WRAP,
                        (o, g) -> new RuleRunner(rule),
                        new ThreadJobs(2),
                        CaptureMap.Listener.NONE,
                        (n, of) -> true);
    }

    private static Outcome when(boolean held) {
        return held ? Outcome.HELD : Outcome.PUSHED_AWAY;
    }

    private static double radius(Conditions c) {
        return Math.hypot(c.x(), c.y());
    }

    @ParameterizedTest
    @ValueSource(ints = {3, 5, 33, 41})
    void everyCellComesOnceFromCoarseToFine(int cells) {
        MapGrid grid = new MapGrid(cells);
        List<Cell> order = grid.order();
        assertThat(new HashSet<>(order)).hasSize(cells * cells).hasSameSizeAs(order);
        assertThat(order.get(0)).isEqualTo(new Cell(cells / 2, cells / 2));
        assertThat(order.stream().map(grid::stride).toList()).isSortedAccordingTo(Collections.reverseOrder());
    }

    @ParameterizedTest
    @ValueSource(ints = {5, 13, 41})
    void propertyMirrorImagesFollowOneAnother(int cells) {
        MapGrid grid = new MapGrid(cells);
        Set<Cell> open = new HashSet<>();
        for (Cell cell : grid.order()) {
            if (open.isEmpty()) {
                open.addAll(images(cell, cells / 2));
            }
            assertThat(open.remove(cell))
                    .as("%s is an image of the one before", cell)
                    .isTrue();
        }
        assertThat(open).isEmpty();
    }

    private static Set<Cell> images(Cell cell, int middle) {
        Set<Cell> images = new HashSet<>();
        int x = cell.column() - middle;
        int y = cell.row() - middle;
        for (int sx : new int[] {1, -1}) {
            for (int sy : new int[] {1, -1}) {
                images.add(new Cell(middle + sy * y, middle + sx * x));
                images.add(new Cell(middle + sx * x, middle + sy * y));
            }
        }
        return images;
    }

    @Test
    void mirroredHandsGiveMirroredMapsAndEqualNumbers() {
        Function<Conditions, Outcome> rule = c -> when(c.x() < 0.011 && c.y() > -0.02 && c.x() + 2 * c.y() < 0.05);
        MapResult one = map(0.06, 21, rule);
        MapResult other = map(0.06, 21, c -> rule.apply(Conditions.at(-c.x(), c.y(), 0)));
        for (int row = 0; row < 21; row++) {
            for (int column = 0; column < 21; column++) {
                assertThat(other.outcome(row, 20 - column)).isEqualTo(one.outcome(row, column));
            }
        }
        assertThat(other.captureRadius()).isEqualTo(one.captureRadius());
        assertThat(other.shareRadius()).isEqualTo(one.shareRadius());
        assertThat(other.heldArea()).isEqualTo(one.heldArea());
    }

    /** 3 mm pitch, held within 18.2 mm: the farthest cell centre inside is 6 steps = 18 mm off; 113 lattice points. */
    @Test
    void captureRadiusIsThatOfTheFarthestCellBeforeTheFirstFailure() {
        MapResult map = map(0.06, 41, c -> when(radius(c) < 0.0182));
        assertThat(map.captureRadius()).isCloseTo(0.018, within(1e-12));
        assertThat(map.captureLimitedBySpan()).isFalse();
        // 113 points of the whole-number lattice lie within 6 of the middle (Gauss circle problem, OEIS A000328).
        assertThat(map.heldArea()).isCloseTo(113 * 9e-6, within(1e-12));
    }

    @Test
    void aSingleFailureEndsTheCaptureRadiusButNotTheShare() {
        MapResult map = map(
                0.06, 41, c -> when(radius(c) < 0.04 && !(Math.abs(c.x() - 0.006) < 1e-9 && Math.abs(c.y()) < 1e-9)));
        assertThat(map.captureRadius()).isCloseTo(0.003 * Math.sqrt(2), within(1e-12));
        assertThat(map.shareRadius()).isGreaterThan(0.039);
    }

    /** All cells with x < 0: the share within any circle is below one half, so 0.9 is never met and 0.4 always is. */
    @Test
    void shareRadiusIsZeroWhereTheShareIsNeverMet() {
        assertThat(map(0.06, 41, c -> when(c.x() < -1e-9)).shareRadius()).isZero();
        assertThat(map(0.06, 41, c -> when(c.x() < -1e-9)).captureRadius()).isZero();
    }

    @Test
    void aRadiusThatReachesTheEdgeSaysSo() {
        MapResult map = map(0.06, 41, c -> when(radius(c) <= 0.0601));
        assertThat(map.captureRadius()).isCloseTo(0.06, within(1e-12));
        assertThat(map.captureLimitedBySpan()).isTrue();
        assertThat(map.outcomes().get(Outcome.PUSHED_AWAY)).isPositive();
    }

    @Test
    void undecidedCellsEndTheRadiusAndAreCountedApart() {
        MapResult map = map(0.06, 41, c -> radius(c) > 0.0301 && c.x() > 0 ? Outcome.UNDECIDED : Outcome.HELD);
        assertThat(map.captureRadius()).isCloseTo(0.03, within(1e-12));
        assertThat(map.outcomes()).containsOnlyKeys(Outcome.UNDECIDED, Outcome.HELD);
        assertThat(map.heldArea()).isCloseTo(map.outcomes().getOrDefault(Outcome.HELD, 0) * 9e-6, within(1e-12));
    }

    @Test
    void propertyTheCaptureRadiusNeverPassesTheShareRadiusAndBothStayInTheSpan() {
        for (int seed = 0; seed < 200; seed++) {
            Random random = new Random(seed);
            double slope = random.nextDouble() * 0.06;
            List<ClosingSummary> runs = new ArrayList<>();
            for (int cell = 0; cell < 169; cell++) {
                double r = 0.005 * Math.hypot(cell / 13 - 6, cell % 13 - 6);
                runs.add(Fakes.summary(when(r < slope + 0.01 * random.nextDouble())));
            }
            MapResult map = new CaptureMap(0.03, 13, 0.9).summary("mug", "wrap", runs);
            assertThat(map.captureRadius()).as("seed %s", seed).isLessThanOrEqualTo(map.shareRadius());
            assertThat(map.shareRadius()).as("seed %s", seed).isLessThanOrEqualTo(0.03 + 1e-12);
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 7})
    void mapsAreTheSameOnAnyNumberOfThreads(int threads) {
        Function<Conditions, Outcome> rule = c -> when(Math.sin(700 * c.x()) + Math.cos(400 * c.y()) > -0.5);
        MapResult map = new CaptureMap(0.05, 17, 0.9)
                .run(
                        MUG,
                        WRAP,
                        (o, g) -> new RuleRunner(rule),
                        new ThreadJobs(threads),
                        CaptureMap.Listener.NONE,
                        Jobs.Progress.NONE);
        assertThat(map).isEqualTo(map(0.05, 17, rule));
    }

    @Test
    void aStoppedMapKeepsWhatIsFinishedAndTheListenerSawEachCell() {
        List<Cell> seen = Collections.synchronizedList(new ArrayList<>());
        MapResult map = new CaptureMap(0.06, 41, 0.9)
                .run(
                        MUG,
                        WRAP,
                        (o, g) -> new RuleRunner(c -> when(radius(c) < 0.05)),
                        new ThreadJobs(2),
                        (row, column, run) -> seen.add(new Cell(row, column)),
                        (finished, of) -> finished < 100);
        assertThat(map.computed()).isBetween(100, 101);
        assertThat(map.runs().stream().filter(Objects::nonNull)).hasSize(map.computed());
        assertThat(seen).hasSize(map.computed()).allMatch(cell -> map.outcome(cell.row(), cell.column()) != null);
        assertThat(map.captureRadius()).isBetween(0.045, 0.05);
    }

    @Test
    void shiftsOfColumnsAndRowsAreThoseTheCellsWereRunWith() {
        MapResult map = map(0.06, 5, c -> when(c.x() > 0.02 && c.y() < -0.02));
        assertThat(map.shift(0)).isEqualTo(-0.06);
        assertThat(map.shift(2)).isZero();
        assertThat(map.outcome(0, 4)).isEqualTo(Outcome.HELD);
        assertThat(map.outcome(4, 4)).isEqualTo(Outcome.PUSHED_AWAY);
    }

    @Test
    void refusesAnEvenNumberOfCellsAndNamesTheNeighbours() {
        assertThatThrownBy(() -> new CaptureMap(0.06, 40, 0.9))
                .hasMessage("cells is 40; it must be an odd number from 3 to 1001, so that one cell is the nominal"
                        + " place; 39 and 41 are");
        assertThatThrownBy(() -> new CaptureMap(0.06, 1, 0.9)).hasMessageContaining("cells is 1;");
        assertThatThrownBy(() -> new CaptureMap(Double.NaN, 41, 0.9)).hasMessageContaining("span is NaN m");
        assertThatThrownBy(() -> new CaptureMap(0.06, 41, 0)).hasMessageContaining("wanted share is 0.0");
    }
}
