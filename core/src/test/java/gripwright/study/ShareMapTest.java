package gripwright.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gripwright.closing.Conditions;
import gripwright.closing.Outcome;
import gripwright.model.GraspObject;
import gripwright.model.Grip;
import gripwright.study.CellShare.Basis;
import gripwright.study.Fakes.RuleRunner;
import gripwright.study.Uncertain.Member;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Function;
import org.junit.jupiter.api.Test;

class ShareMapTest {
    private static final GraspObject MUG = Fakes.object("mug", 1, "wrap");
    private static final Grip WRAP = Fakes.grip("wrap", Grip.Approach.SIDE);

    private static MapResult map(int cells, Function<Conditions, Outcome> rule) {
        return map(cells, rule, rule, new ThreadJobs(2), Jobs.Progress.NONE);
    }

    private static MapResult map(
            int cells,
            Function<Conditions, Outcome> rule,
            Function<Conditions, Outcome> other,
            Jobs jobs,
            Jobs.Progress progress) {
        return new ShareMap(new CaptureMap(0.06, cells, 0.9), Uncertain.seeded(1))
                .run(
                        MUG,
                        WRAP,
                        new ShareMap.Runners(
                                (o, g) -> new RuleRunner(rule),
                                (o, g) -> new RuleRunner(rule),
                                (o, g) -> new RuleRunner(other)),
                        jobs,
                        progress);
    }

    private static Function<Conditions, Outcome> disc(double radius) {
        return c -> c.x() * c.x() + c.y() * c.y() < radius * radius ? Outcome.HELD : Outcome.PUSHED_AWAY;
    }

    @Test
    void discIsFoundAsByComputingEveryCellWithFarFewerRuns() {
        MapResult map = map(41, disc(0.0311));
        AtomicInteger wrong = new AtomicInteger();
        for (int row = 0; row < 41; row++) {
            for (int column = 0; column < 41; column++) {
                Outcome whole = disc(0.0311).apply(Conditions.at(map.shift(column), map.shift(row), 0));
                wrong.addAndGet(map.outcome(row, column) == whole ? 0 : 1);
            }
        }
        assertThat(wrong.get()).isZero();
        assertThat(map.count(s -> s.basis() == Basis.NEIGHBOURS)).isGreaterThan(1000);
    }

    @Test
    void wholeCoarserMapsAreToldOnTheWay() {
        List<Integer> cells = new ArrayList<>();
        RunnerFactory closings = (o, g) -> new RuleRunner(disc(0.0311));
        MapResult map = new ShareMap(new CaptureMap(0.06, 41, 0.9), Uncertain.seeded(1))
                .run(
                        MUG,
                        WRAP,
                        new ShareMap.Runners(closings, closings, closings),
                        new ThreadJobs(2),
                        Jobs.Progress.NONE,
                        soFar -> {
                            cells.add(soFar.cells());
                            assertThat(soFar.runs()).doesNotContainNull();
                            assertThat(soFar.span()).isEqualTo(0.06);
                            // every map of a disc says about how large it is
                            assertThat(soFar.heldArea()).isCloseTo(Math.PI * 0.0311 * 0.0311, within(4e-4));
                        });
        assertThat(cells).startsWith(11, 21, 41).endsWith(41);
        assertThat(map.runs()).doesNotContainNull();
    }

    @Test
    void heldAreaOfADiscIsThatOfTheCircle() {
        // Closed form: pi r^2. The border cells' shares are each known to about 1 / 8 of 9 mm2.
        MapResult map = map(41, disc(0.0311));
        assertThat(map.heldArea()).isCloseTo(Math.PI * 0.0311 * 0.0311, within(0.5e-4));
        assertThat(map.heldAreaInterval().contains(Math.PI * 0.0311 * 0.0311)).isTrue();
    }

    @Test
    void cellsAtTheBorderHaveEnsemblesAndThoseFarFromItOneRunAtMost() {
        MapResult map = map(41, disc(0.0311));
        assertThat(map.cell(20, 20)).isEqualTo(new CellShare(Basis.RUN, 1, 1, 0, new CellShare.Here(1, 1, 0), false));
        assertThat(map.cell(0, 0)).isEqualTo(new CellShare(Basis.RUN, 0, 1, 0, new CellShare.Here(0, 1, 0), false));
        CellShare border = Objects.requireNonNull(map.cell(20, 30));
        assertThat(border.basis()).isEqualTo(Basis.ENSEMBLE);
        assertThat(border.decided()).isBetween(Uncertain.FIRST, Uncertain.MOST);
    }

    @Test
    void captureRangeEndsBeforeTheFirstCellThatHoldsInSomeRunsOnly() {
        // The cell at 30 mm reaches from 28.5 to 31.5 mm: part of it lies outside 29.7 mm, though not its middle at 27.
        MapResult map = map(41, disc(0.0302));
        assertThat(map.outcome(20, 30)).isEqualTo(Outcome.HELD);
        assertThat(map.share(20, 30)).isBetween(0.2, 0.95);
        assertThat(map.captureRadius()).isLessThan(0.0295);
        assertThat(map.shareRadius()).isGreaterThanOrEqualTo(map.captureRadius());
    }

    @Test
    void sharesThatTheDampingDecidesAreModelLimited() {
        MapResult steady = map(41, disc(0.031));
        assertThat(steady.count(CellShare::modelLimited)).isZero();
        MapResult damped = map(41, disc(0.031), c -> Outcome.DROPPED, new ThreadJobs(2), Jobs.Progress.NONE);
        assertThat(damped.count(CellShare::modelLimited)).isPositive();
        assertThat(damped.shares())
                .allSatisfy(s ->
                        assertThat(s != null && s.modelLimited() && !s.mixed()).isFalse());
    }

    @Test
    void undecidedRunsAreCountedInTheirCellAndInNeitherNumberOfItsShare() {
        MapResult map = map(
                9,
                c -> c.x() > 0.02 && c.x() < 0.04
                        ? Outcome.UNDECIDED
                        : disc(0.05).apply(c));
        CellShare cell = Objects.requireNonNull(map.cell(4, 6));
        assertThat(cell.undecided()).isPositive();
        assertThat(cell.decided() + cell.undecided()).isLessThanOrEqualTo(Uncertain.MOST);
        assertThat(map.alwaysHolds(4, 6)).isFalse();
    }

    @Test
    void propertySameMapOnAnyNumberOfThreads() {
        Function<Conditions, Outcome> rule =
                c -> c.padFriction() * 0.004 + c.x() < 0.02 && c.y() < 0.03 ? Outcome.HELD : Outcome.DROPPED;
        MapResult one = map(21, rule, rule, new ThreadJobs(1), Jobs.Progress.NONE);
        assertThat(map(21, rule, rule, new ThreadJobs(5), Jobs.Progress.NONE)).isEqualTo(one);
    }

    @Test
    void stoppedMapKeepsWhatIsFinished() {
        MapResult map = map(41, disc(0.03), disc(0.03), new ThreadJobs(1), (done, of) -> done < 10);
        assertThat(map.computed()).isEqualTo(10);
    }

    @Test
    void ensemblesStopOnceTheFirstRunsAgreeAndFillUpOtherwise() {
        Uncertain uncertain = Uncertain.seeded(3);
        List<Member> clear = uncertain.run(new RuleRunner(c -> Outcome.HELD), Conditions.NOMINAL, "mug", 0);
        assertThat(clear).hasSize(Uncertain.FIRST).allMatch(Member::held);
        assertThat(clear.get(0).conditions()).isEqualTo(Conditions.NOMINAL);
        List<Member> close = uncertain.run(
                new RuleRunner(c -> c.padFriction() > 0.01 ? Outcome.HELD : Outcome.DROPPED),
                Conditions.NOMINAL,
                "mug",
                0);
        assertThat(close).hasSize(Uncertain.ENOUGH);
        int[] runs = {0};
        assertThat(uncertain.run(
                        new RuleRunner(c -> runs[0]++ == 3 ? Outcome.DROPPED : Outcome.HELD),
                        Conditions.NOMINAL,
                        "mug",
                        0))
                .hasSize(Uncertain.MOST);
        assertThat(close)
                .allMatch(m -> m.conditions().x() == 0 && m.conditions().y() == 0);
    }
}
