package gripwright.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import gripwright.closing.Conditions;
import gripwright.closing.Outcome;
import gripwright.model.Project;
import gripwright.study.Fakes.RuleRunner;
import gripwright.study.ThreadJobs.JobFailure;
import gripwright.study.TrialsResult.Influence;
import gripwright.study.TrialsResult.Pair;
import gripwright.study.TrialsResult.Split;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.DoubleStream;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TrialsTest {
    private static final Project BENCH =
            Fakes.project(0.9, Fakes.object("mug", 3, "wrap", "top"), Fakes.object("bulb", 1, "top"));

    private static Outcome rule(Conditions c) {
        if (Math.abs(c.turn()) > 0.29) {
            return Outcome.UNDECIDED;
        }
        if (c.y() > 0.012) {
            return Outcome.KNOCKED_OVER;
        }
        return c.padFriction() < -1.5 ? Outcome.DROPPED : Outcome.HELD;
    }

    private static RunnerFactory factory(Function<Conditions, Outcome> wrap, Function<Conditions, Outcome> top) {
        return (object, grip) -> new RuleRunner(grip.name().equals("wrap") ? wrap : top);
    }

    private static TrialsResult run(RunnerFactory factory, int runs, long seed, int threads) {
        return Trials.run(BENCH, factory, runs, seed, new ThreadJobs(threads), Jobs.Progress.NONE);
    }

    @ParameterizedTest
    @ValueSource(ints = {2, 7})
    void theSameSeedGivesTheSameResultOnAnyNumberOfThreads(int threads) {
        RunnerFactory factory = factory(TrialsTest::rule, c -> c.x() > 0 ? Outcome.HELD : Outcome.MISSED);
        TrialsResult one = run(factory, 60, 4, 1);
        TrialsResult many = run(factory, 60, 4, threads);
        assertThat(many).isEqualTo(one);
        assertThat(many.toString()).isEqualTo(one.toString());
        assertThat(run(factory, 60, 5, 1)).isNotEqualTo(one);
    }

    @Test
    void gripsMeetTheSameConditionsAndTheTwoSetsShareNone() {
        Map<String, List<Conditions>> met = new HashMap<>();
        RunnerFactory recording = (object, grip) -> {
            List<Conditions> list = Collections.synchronizedList(new ArrayList<>());
            met.put(object.name() + " " + grip.name(), list);
            return new RuleRunner(c -> {
                list.add(c);
                return Outcome.HELD;
            });
        };
        run(recording, 20, 1, 1);
        assertThat(met.get("mug wrap")).hasSize(40).doesNotHaveDuplicates().isEqualTo(met.get("mug top"));
        assertThat(met.get("bulb top")).hasSize(20).doesNotContainAnyElementsOf(met.get("mug top"));
        assertThat(Trials.closings(BENCH, 20)).isEqualTo(100);
    }

    @Test
    void moreRunsKeepTheEarlierOnes() {
        List<Conditions> few = conditions(10);
        assertThat(conditions(30).subList(0, 10)).isEqualTo(few);
    }

    private static List<Conditions> conditions(int runs) {
        Project bulb = Fakes.project(0.9, Fakes.object("bulb", 1, "top"));
        List<Conditions> met = new ArrayList<>();
        RunnerFactory recording = (object, grip) -> new RuleRunner(c -> {
            met.add(c);
            return Outcome.HELD;
        });
        Trials.run(bulb, recording, runs, 9, new ThreadJobs(1), Jobs.Progress.NONE);
        return met;
    }

    /** Moments against closed forms; 2000 samples, 4 standard errors; a scatter of 0 is exact. */
    @Test
    void sampledInputsFollowTheirLaws() {
        List<Conditions> met = conditions(2000);
        double root = Math.sqrt(2000);
        assertThat(deviation(met.stream().mapToDouble(Conditions::x))).isCloseTo(0.012, within(4 * 0.012 / root));
        // A uniform law of half width h has standard deviation h / sqrt(3).
        assertThat(deviation(met.stream().mapToDouble(Conditions::turn)))
                .isCloseTo(0.3 / Math.sqrt(3), within(4 * 0.3 / Math.sqrt(3) / root));
        assertThat(met).allMatch(c -> Math.abs(c.turn()) <= 0.3 && c.height() == 0);
        assertThat(deviation(met.stream().mapToDouble(Conditions::mass))).isCloseTo(1, within(4 / root));
        // Lognormal with median 1: mean sqrt(1 + c^2), coefficient of variation c.
        double mean =
                met.stream().mapToDouble(Conditions::padStiffness).average().orElseThrow();
        assertThat(mean).isCloseTo(Math.sqrt(1 + 0.15 * 0.15), within(4 * 0.15 / root));
        assertThat(deviation(met.stream().mapToDouble(Conditions::padStiffness)) / mean)
                .isCloseTo(0.15, within(0.02));
        assertThat(met).allMatch(c -> c.padStiffness() > 0 && c.springRate() > 0);
    }

    private static double deviation(DoubleStream values) {
        double[] all = values.toArray();
        double mean = DoubleStream.of(all).average().orElseThrow();
        return Math.sqrt(DoubleStream.of(all).map(v -> (v - mean) * (v - mean)).sum() / all.length);
    }

    /** P(y > 12 mm at 12 mm sd) = 1 - Phi(1) = 0.1587: the interval of 2000 runs must hold it. */
    @Test
    void theShareIsThatOfTheLaw() {
        TrialsResult result =
                run(factory(c -> c.y() > 0.012 ? Outcome.PUSHED_AWAY : Outcome.HELD, c -> Outcome.HELD), 2000, 1, 2);
        double truth = NormalDistribution.of(0, 1).cumulativeProbability(1);
        Proportion found = result.pair("mug", "wrap").success();
        assertThat(found.low()).isLessThan(truth);
        assertThat(found.high()).isGreaterThan(truth);
    }

    @Test
    void everyRunIsCountedOnceAndUndecidedRunsApart() {
        TrialsResult result = run(factory(TrialsTest::rule, TrialsTest::rule), 200, 2, 2);
        for (Pair pair : result.pairs()) {
            int failed = pair.outcomes().values().stream().mapToInt(n -> n).sum()
                    - pair.success().undecided();
            assertThat(pair.outcomes()).doesNotContainKey(Outcome.HELD);
            assertThat(pair.success().undecided()).isPositive();
            assertThat(pair.outcomes())
                    .containsEntry(Outcome.UNDECIDED, pair.success().undecided());
            assertThat(pair.success().successes() + failed)
                    .isEqualTo(pair.success().trials());
            assertThat(pair.success().runs()).isEqualTo(200);
        }
        assertThat(result.stopped()).isFalse();
    }

    @Test
    void theGripIsChosenOnOneSetAndScoredOnTheOther() {
        Function<Conditions, Outcome> half = c -> c.x() > 0 ? Outcome.HELD : Outcome.MISSED;
        TrialsResult result = run(factory(half, TrialsTest::rule), 100, 3, 2);
        assertThat(result.best().get(0).grip()).isEqualTo("top");
        assertThat(result.best().get(0).success())
                .isEqualTo(result.pair("mug", "top").success());
        assertThat(result.best()).hasSize(2);
    }

    /**
     * Two grips that are coin tosses: were the best chosen on its own runs, its mean share would be above 1/2 (by
     * 0.56 standard errors for the better of two; order statistics of the normal law, 1 / sqrt(pi)). On fresh runs it
     * must not be. 200 studies of 20 runs: standard error 0.008.
     */
    @Test
    void propertyTheChosenGripIsNotFlatteredByTheChoice() {
        Project one = Fakes.project(0.9, Fakes.object("mug", 1, "wrap", "top"));
        RunnerFactory coins = factory(
                c -> c.mass() > 0 ? Outcome.HELD : Outcome.MISSED, c -> c.x() > 0 ? Outcome.HELD : Outcome.MISSED);
        double sum = 0;
        for (int seed = 0; seed < 200; seed++) {
            TrialsResult result = Trials.run(one, coins, 20, seed, new ThreadJobs(1), Jobs.Progress.NONE);
            sum += result.best().get(0).success().share();
        }
        assertThat(sum / 200).isCloseTo(0.5, within(0.03));
    }

    @Test
    void theTotalIsWeightedAndItsIntervalHoldsIt() {
        TrialsResult result =
                run(factory(c -> Outcome.MISSED, c -> c.x() > 0 ? Outcome.HELD : Outcome.MISSED), 100, 3, 2);
        double mug = result.best().get(0).success().share();
        double bulb = result.best().get(1).success().share();
        assertThat(result.weighted().share()).isCloseTo((3 * mug + bulb) / 4, within(1e-12));
        assertThat(result.weighted().low()).isLessThan(result.weighted().share());
        assertThat(result.weighted().high()).isGreaterThan(result.weighted().share());
    }

    @Test
    void aOneSidedCauseLeadsTheInfluencesAndIsFoundAsASplit() {
        Pair pair = run(factory(TrialsTest::rule, c -> Outcome.HELD), 200, 6, 2).pair("mug", "wrap");
        assertThat(pair.influence().get(0).input()).isEqualTo("y");
        assertThat(pair.influence()).extracting(Influence::input).doesNotContain("height");
        Split first = pair.splits().get(0);
        assertThat(first.input()).isEqualTo("y");
        assertThat(first.side()).isEqualTo(Split.Side.ABOVE);
        assertThat(first.threshold()).isBetween(0.010, 0.014);
        Split second = pair.splits().get(1);
        assertThat(second.input()).isEqualTo("pad friction");
        assertThat(second.side()).isEqualTo(Split.Side.BELOW);
        assertThat(second.failed() + second.failedElsewhere() + first.failed())
                .isEqualTo(pair.success().trials() - pair.success().successes());
    }

    @Test
    void aCauseOnBothSidesShowsAsStronglyAsOneOnOneSide() {
        Pair pair = run(
                        factory(c -> Math.abs(c.x()) > 0.015 ? Outcome.MISSED : Outcome.HELD, c -> Outcome.HELD),
                        200,
                        6,
                        2)
                .pair("mug", "wrap");
        assertThat(pair.influence().get(0)).isEqualTo(new Influence("x", 1));
        assertThat(pair.splits().get(0).side()).isEqualTo(Split.Side.EITHER);
    }

    /** With outcomes that have nothing to do with the inputs a split is named in at most about 1 % of the cases. */
    @Test
    void propertyNoSplitIsSeenInMereLuck() {
        Project one = Fakes.project(0.9, Fakes.object("mug", 1, "wrap"));
        int named = 0;
        for (int seed = 0; seed < 100; seed++) {
            java.util.Random coin = new java.util.Random(seed);
            RunnerFactory luck =
                    (o, g) -> new RuleRunner(c -> coin.nextDouble() < 0.7 ? Outcome.HELD : Outcome.DROPPED);
            TrialsResult result = Trials.run(one, luck, 60, seed, new ThreadJobs(1), Jobs.Progress.NONE);
            named += result.pairs().get(0).splits().isEmpty() ? 0 : 1;
        }
        assertThat(named).isLessThanOrEqualTo(4);
    }

    @Test
    void allHeldAndAllFailedHaveNoInfluencesToTell() {
        TrialsResult result = run(factory(c -> Outcome.HELD, c -> Outcome.MISSED), 30, 1, 1);
        assertThat(result.pairs())
                .allMatch(pair -> pair.influence().isEmpty() && pair.splits().isEmpty());
    }

    @Test
    void examplesEndAsTheirNameSays() {
        Pair pair = run(factory(TrialsTest::rule, c -> Outcome.HELD), 200, 6, 2).pair("mug", "wrap");
        assertThat(pair.examples())
                .containsOnlyKeys(Outcome.UNDECIDED, Outcome.KNOCKED_OVER, Outcome.DROPPED, Outcome.HELD);
        pair.examples()
                .forEach((outcome, conditions) -> assertThat(rule(conditions)).isEqualTo(outcome));
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 7})
    void aStoppedStudyKeepsWhatIsFinishedInEqualParts(int threads) {
        RunnerFactory factory = factory(TrialsTest::rule, TrialsTest::rule);
        TrialsResult part =
                Trials.run(BENCH, factory, 100, 1, new ThreadJobs(threads), (finished, of) -> finished < 203);
        assertThat(part.stopped()).isTrue();
        assertThat(part.runsPerPair()).isEqualTo(100);
        assertThat(part.wantedRuns()).isEqualTo(300);
        assertThat(part.pairs()).allMatch(pair -> Math.abs(pair.success().runs() - 41) <= 2);
    }

    @Test
    void aStudyStoppedAtOnceStillGivesAResultThatClaimsNothing() {
        TrialsResult nothing = Trials.run(
                BENCH, factory(TrialsTest::rule, TrialsTest::rule), 100, 1, new ThreadJobs(1), (finished, of) -> false);
        assertThat(nothing.scoredRuns()).isZero();
        assertThat(nothing.weighted().share()).isNaN();
        assertThat(nothing.weighted().low()).isZero();
        assertThat(nothing.weighted().high()).isEqualTo(1);
    }

    @Test
    void aFailingRunIsNamedSoThatItCanBeRepeated() {
        RunnerFactory failing = factory(
                c -> {
                    throw new IllegalStateException("singular");
                },
                c -> Outcome.HELD);
        assertThatThrownBy(() -> run(failing, 5, 8, 2))
                .isInstanceOf(JobFailure.class)
                .hasMessageContaining("mug with wrap, run 1 of the choosing set, seed 8")
                .hasMessageContaining("singular");
    }

    @Test
    void refusesAnAbsentGripAndNoRuns() {
        Project wrong = Fakes.project(0.9, Fakes.object("mug", 1, "pinch"));
        RunnerFactory factory = factory(c -> Outcome.HELD, c -> Outcome.HELD);
        assertThatThrownBy(() -> Trials.run(wrong, factory, 5, 1, new ThreadJobs(1), Jobs.Progress.NONE))
                .hasMessage("no grip is called 'pinch'; there are [wrap, top]");
        assertThatThrownBy(() -> run(factory, 0, 1, 1)).hasMessage("the number of runs is 0; it must be at least 1");
    }
}
