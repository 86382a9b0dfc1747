package gripwright.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gripwright.closing.Conditions;
import gripwright.closing.Outcome;
import gripwright.model.Project;
import gripwright.study.Explain.Settings;
import gripwright.study.ExplainResult.Estimate;
import gripwright.study.ExplainResult.Placing;
import gripwright.study.Fakes.RuleRunner;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** The update of assumptions, on closings that follow a plain rule. */
class ExplainTest {
    private static final Project BENCH = Fakes.project(0.9, Fakes.object("mug", 1, "top"));
    private static final Settings SETTINGS = new Settings(160, 1, Placing.DEFAULT);
    private static final double PER_SCORE = 0.25;

    /** Held where the place is near enough for the friction: in the probe's own scores. */
    private static Outcome rule(Conditions c) {
        return held(c.x(), c.y(), 1 + PER_SCORE * c.padFriction()) ? Outcome.HELD : Outcome.PUSHED_AWAY;
    }

    private static boolean held(double x, double y, double factor) {
        return Math.hypot(x, y) < 0.024 * factor * factor;
    }

    private static List<FieldTrial> sheet(int n, double factor, double scatter, boolean placed, long seed) {
        Random random = new Random(seed);
        List<FieldTrial> trials = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            double x = 0.012 * scatter * random.nextGaussian();
            double y = 0.012 * scatter * random.nextGaussian();
            Optional<Placed> at = placed ? Optional.of(new Placed(x, y, 0)) : Optional.empty();
            Outcome outcome = held(x, y, factor) ? Outcome.HELD : Outcome.PUSHED_AWAY;
            trials.add(new FieldTrial(i + 1, "A", "mug", "top", at, outcome, Optional.empty(), "", "", 1));
        }
        return trials;
    }

    private static ExplainResult explained(List<FieldTrial> trials) {
        return Explain.run(
                BENCH,
                trials,
                SETTINGS,
                project -> (object, grip) -> new RuleRunner(ExplainTest::rule),
                new ThreadJobs(1),
                Jobs.Progress.NONE);
    }

    @Test
    void measuredPlacesTellTheFriction() {
        ExplainResult result = explained(sheet(60, 0.75, 1, true, 5));
        Estimate friction = result.friction().get(0);
        assertThat(friction.subject()).isEqualTo("glass");
        assertThat(friction.value()).isCloseTo(0.75, within(0.12));
        assertThat(friction.low()).isLessThan(0.76);
        assertThat(friction.high()).isGreaterThan(0.74);
        assertThat(friction.off()).isTrue();
        assertThat(result.scatter()).as("every place was measured").isEmpty();
        assertThat(result.common().orElseThrow().value()).isEqualTo(friction.value());
    }

    @Test
    void placesFoundInUseTellTheScatterOnceTheFrictionIsKnown() {
        List<FieldTrial> trials = new ArrayList<>(sheet(60, 1, 1, true, 5));
        trials.addAll(sheet(60, 1, 1.7, false, 6));
        ExplainResult result = explained(trials);
        Estimate scatter = result.scatter().orElseThrow();
        assertThat(scatter.trials()).isEqualTo(60);
        assertThat(scatter.low()).isLessThan(1.7);
        assertThat(scatter.high()).isGreaterThan(1.7);
        assertThat(scatter.value()).isCloseTo(1.7, within(0.5));
        assertThat(result.friction().get(0).off()).isFalse();
    }

    @Test
    void aRightPredictionIsWithinChanceAndAWrongOneIsNot() {
        ExplainResult right = explained(sheet(60, 1, 1, true, 8));
        assertThat(right.foretold()).hasSize(1);
        assertThat(right.foretold().get(0).off()).isFalse();
        List<FieldTrial> dropped = sheet(60, 1, 1, true, 8).stream()
                .map(t -> new FieldTrial(
                        t.number(), "A", "mug", "top", t.placed(), Outcome.DROPPED, Optional.empty(), "", "", 1))
                .toList();
        ExplainResult wrong = explained(dropped);
        assertThat(wrong.foretold().get(0).off()).isTrue();
        assertThat(wrong.foretold().get(0).share())
                .isCloseTo(right.foretold().get(0).share(), within(1e-12));
    }

    @Test
    void theSurfaceIsSharpAndUnbiasedOnClosingsItHasNotMet() {
        HeldSurface.Quality quality =
                explained(sheet(40, 1, 1, true, 2)).surfaces().get(0);
        assertThat(quality.closings()).isEqualTo(160);
        assertThat(Math.abs(quality.bias())).isLessThan(4 * quality.biasError() + 0.01);
        assertThat(quality.sharpness()).isLessThan(0.5 * quality.held() * (1 - quality.held()));
    }

    @Test
    void stoppedItSaysHowFarItCame() {
        ExplainResult result = Explain.run(
                BENCH,
                sheet(10, 1, 1, true, 2),
                SETTINGS,
                project -> (object, grip) -> new RuleRunner(ExplainTest::rule),
                new ThreadJobs(1),
                (finished, of) -> finished < 30);
        assertThat(result.stopped()).isTrue();
        assertThat(result.closings()).isEqualTo(30);
        assertThat(result.wanted()).isEqualTo(160);
        assertThat(result.foretold()).isEmpty();
    }

    @Test
    void trialsThatAllHoldEverywhereTellNothingOfGreaterFriction() {
        ExplainResult result = explained(sheet(30, 3, 0.3, true, 3));
        Estimate friction = result.friction().get(0);
        assertThat(friction.openHigh()).isTrue();
        assertThat(friction.off()).isFalse();
    }
}
