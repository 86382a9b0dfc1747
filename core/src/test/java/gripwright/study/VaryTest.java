package gripwright.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gripwright.closing.Outcome;
import gripwright.model.Finger;
import gripwright.model.FingerTendon;
import gripwright.model.Floating;
import gripwright.model.Hand;
import gripwright.model.Motor;
import gripwright.model.Project;
import gripwright.model.Transmission.Branch;
import gripwright.study.DesignChange.Kind;
import gripwright.study.Fakes.RuleRunner;
import gripwright.study.VaryResult.Effect;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.function.Function;
import org.junit.jupiter.api.Test;

class VaryTest {
    private static final Project PROJECT =
            Fakes.project(0.9, Fakes.object("mug", 2, "wrap", "top"), Fakes.object("coil", 1, "top"));

    /** Holds within a distance that grows with the length of the finger, and nothing else. */
    private static final Function<Project, RunnerFactory> LENGTH_DECIDES = project -> (object, grip) -> {
        double reach = 0.25 * project.hand().fingers().get(0).reach();
        return new RuleRunner(c -> c.x() * c.x() + c.y() * c.y() < reach * reach ? Outcome.HELD : Outcome.PUSHED_AWAY);
    };

    private static VaryResult vary(Jobs jobs, Jobs.Progress progress) {
        return new Vary(60, 8, 0.06, 1, Variation.DEFAULT).run(PROJECT, LENGTH_DECIDES, jobs, progress);
    }

    private static Effect effect(VaryResult result, String quantity, String change) {
        return result.effects().stream()
                .filter(e -> e.quantity().equals(quantity) && e.change().equals(change))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void onlyTheQuantityThatMattersHasAnEffectAndItIsNamedBest() {
        VaryResult result = vary(new ThreadJobs(2), Jobs.Progress.NONE);
        assertThat(result.effects()).hasSameSizeAs(DesignChanges.of(PROJECT.hand()));
        Effect longer = effect(result, "first phalanx length", "20 % more");
        Effect shorter = effect(result, "first phalanx length", "20 % less");
        assertThat(longer.success().low()).isPositive();
        assertThat(shorter.success().high()).isNegative();
        assertThat(result.ranked(Kind.DESIGN).subList(0, 2)).containsExactlyInAnyOrder(longer, shorter);
        assertThat(result.best()).contains(longer);
        assertThat(result.effects())
                .filteredOn(e -> !e.quantity().equals("first phalanx length"))
                .allMatch(e -> e.success().value() == 0 && !e.success().settled());
    }

    @Test
    void theBestChangeIsRunAgainOnOtherSamples() {
        VaryResult result = vary(new ThreadJobs(2), Jobs.Progress.NONE);
        Effect best = result.best().orElseThrow();
        Effect again = result.again().orElseThrow();
        assertThat(again.words()).isEqualTo(best.words());
        assertThat(again.success()).isNotEqualTo(best.success());
        assertThat(again.success().low()).as("it really helps").isPositive();
        assertThat(VaryFindings.best(result)).contains("On fresh samples");
    }

    /** Common practice, no source (the winner's curse): of many changes that do nothing one looks good, but not again. */
    @Test
    void propertyAWinnerByLuckLosesItsLeadOnFreshSamples() {
        Function<Project, RunnerFactory> luck = project -> (object, grip) -> new RuleRunner(c -> {
            int key = 31 * project.hand().name().hashCode() + Double.hashCode(c.x());
            return new Random(key).nextInt(1000) < 500 ? Outcome.HELD : Outcome.PUSHED_AWAY;
        });
        double first = 0;
        double second = 0;
        for (int seed = 1; seed <= 10; seed++) {
            VaryResult r = new Vary(30, 2, 0.06, seed, Variation.DEFAULT)
                    .run(PROJECT, luck, new ThreadJobs(2), Jobs.Progress.NONE);
            first += r.best().orElseThrow().success().value() / 10;
            second += r.again().orElseThrow().success().value() / 10;
        }
        assertThat(first).isGreaterThan(0.1);
        assertThat(second).isLessThan(0.5 * first);
    }

    @Test
    void captureAreaIsThatOfTheCircle() {
        // Closed form: pi r^2 with r a quarter of the 70 mm finger; 64 places of 2.25 cm2, one in each square.
        VaryResult result = vary(new ThreadJobs(2), Jobs.Progress.NONE);
        double radius = 0.25 * 0.07;
        assertThat(result.area().value()).isCloseTo(Math.PI * radius * radius, within(4e-4));
        assertThat(result.area().low()).isLessThan(Math.PI * radius * radius);
        assertThat(result.area().high()).isGreaterThan(Math.PI * radius * radius);
    }

    @Test
    void propertySameResultOnAnyNumberOfThreads() {
        assertThat(vary(new ThreadJobs(1), Jobs.Progress.NONE)).isEqualTo(vary(new ThreadJobs(4), Jobs.Progress.NONE));
    }

    @Test
    void stoppedStudyKeepsTheChangesThatAreFinished() {
        VaryResult result = vary(new ThreadJobs(1), (done, of) -> of > 100 || done < 8);
        assertThat(result.stopped()).isTrue();
        assertThat(result.effects()).hasSize(3);
    }

    @Test
    void handThatCannotBeIsListedWithItsReason() {
        Function<Project, RunnerFactory> refusing = project -> {
            if (project.hand().fingers().get(0).reach() > 0.08) {
                return (o, g) -> {
                    throw new IllegalArgumentException("two open fingers overlap");
                };
            }
            return LENGTH_DECIDES.apply(project);
        };
        VaryResult result = new Vary(5, 2, 0.06, 1, Variation.DEFAULT)
                .run(PROJECT, refusing, new ThreadJobs(1), Jobs.Progress.NONE);
        Effect longer = effect(result, "first phalanx length", "20 % more");
        assertThat(longer.possible()).isFalse();
        assertThat(longer.impossible()).isEqualTo("two open fingers overlap");
    }

    @Test
    void eachChangeMovesItsQuantityAndNothingElse() {
        Hand hand = PROJECT.hand();
        for (DesignChange change : DesignChanges.of(hand)) {
            Hand changed = change.applied().apply(hand);
            assertThat(changed.grips()).isEqualTo(hand.grips());
            if (change.quantity().equals("first joint spring")) {
                double ratio = rate(changed) / rate(hand);
                assertThat(ratio).isCloseTo(change.change().endsWith("more") ? 1.2 : 0.8, within(1e-12));
                assertThat(changed.fingers().get(0).phalanges())
                        .isEqualTo(hand.fingers().get(0).phalanges());
            }
        }
    }

    @Test
    void cutTendonLeavesTheOthersOfItsDifferential() {
        Hand one = PROJECT.hand();
        Finger thumb = one.fingers().get(0);
        Finger left = new Finger("left", thumb.base(), 1, thumb.phalanges(), thumb.joints());
        Motor motor = new Motor(
                "main",
                new Floating(
                        List.of(new Branch(1, new FingerTendon("left")), new Branch(2, new FingerTendon("thumb")))),
                40,
                2e4,
                0,
                Map.of(),
                Motor.WhenOff.LOCKED);
        Hand two = new Hand(
                "two", one.palm(), List.of(thumb, left), List.of(motor), one.friction(), one.arm(), one.grips());
        Hand cut = Changed.cut(two, "left");
        assertThat(cut.motors().get(0).pulls())
                .isEqualTo(new Floating(List.of(new Branch(2, new FingerTendon("thumb")))));
        assertThat(cut.fingers().get(1).joints()).allMatch(j -> j.momentArm() == 0);
    }

    private static double rate(Hand hand) {
        return hand.fingers().get(0).joints().get(0).kind().bendingRate();
    }
}
