package gripwright.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import gripwright.model.Need;
import gripwright.study.BenchFormulas.Found;
import gripwright.study.TrialPlan.Planned;
import gripwright.truth.Truth;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;

class TrialPlannerTest {
    private static final Need NEED = Fakes.project(
                    0.9,
                    Fakes.object("mug", 3, "wrap", "top"),
                    Fakes.object("bulb", 1, "top"),
                    Fakes.object("nut", 0, "top"))
            .need();
    private static final PlanGoal GOAL = new PlanGoal.Difference(0.3, 0.8, true);

    private static TrialPlan plan(long seed, int perDay, boolean set) {
        return new TrialPlanner(NEED, TrialPlanner.first(NEED), perDay, set).plan(List.of("A", "B"), GOAL, 0.9, seed);
    }

    @Test
    void objectsShareTheTrialsByWeightAndNoneGetsLessThanTheFewest() {
        TrialPlan plan = plan(1, 30, true);
        assertThat(plan.parts()).extracting(TrialPlan.Part::object).containsExactly("mug", "bulb", "nut");
        int mug = plan.parts().get(0).perHand();
        int bulb = plan.parts().get(1).perHand();
        assertThat(mug + bulb).isEqualTo(plan.perHand());
        assertThat((double) mug / bulb).isCloseTo(3, within(0.3));
        assertThat(plan.parts().get(2).perHand()).isEqualTo(TrialPlanner.FEWEST);
    }

    @Test
    void everyPartIsTriedAsOftenAsPlannedByEachHand() {
        TrialPlan plan = plan(3, 30, true);
        Map<List<String>, Integer> made = new HashMap<>();
        plan.trials().forEach(t -> made.merge(List.of(t.hand(), t.object()), 1, Integer::sum));
        for (TrialPlan.Part part : plan.parts()) {
            assertThat(made)
                    .containsEntry(List.of("A", part.object()), part.perHand())
                    .containsEntry(List.of("B", part.object()), part.perHand());
        }
        for (int i = 0; i < plan.trials().size(); i++) {
            assertThat(plan.trials().get(i).number()).isEqualTo(i + 1);
        }
    }

    @Test
    void pairsStandAtTheSamePlaceInTheSameBlock() {
        Map<String, Planned> first = new HashMap<>();
        int pairs = 0;
        for (Planned t : plan(1, 30, true).trials()) {
            Planned other = first.putIfAbsent(t.pair(), t);
            if (other != null) {
                pairs++;
                assertThat(other.placed()).isEqualTo(t.placed());
                assertThat(other.object()).isEqualTo(t.object());
                assertThat(other.block()).isEqualTo(t.block());
                assertThat(other.hand()).isNotEqualTo(t.hand());
            }
        }
        assertThat(pairs).isEqualTo(first.size());
    }

    @Test
    void aHandIsChangedOnceInABlockAndEachHandComesFirstInSome() {
        Map<Integer, String> order = new HashMap<>();
        String last = "";
        int block = 0;
        for (Planned t : plan(1, 1000, true).trials()) {
            if (t.block() != block) {
                block = t.block();
                last = "";
            }
            if (!t.hand().equals(last)) {
                order.merge(block, t.hand(), String::concat);
                last = t.hand();
            }
        }
        Set<String> kinds = new HashSet<>(order.values());
        assertThat(kinds).containsExactlyInAnyOrder("AB", "BA");
    }

    @Test
    void theSameSeedGivesTheSamePlanAndAnotherOneAnother() {
        assertThat(plan(1, 30, true)).isEqualTo(plan(1, 30, true));
        assertThat(plan(2, 30, true).trials()).isNotEqualTo(plan(1, 30, true).trials());
    }

    @Test
    void aDayHoldsNoMoreThanItHasRoomFor() {
        Map<Integer, Integer> days = new HashMap<>();
        plan(1, 7, true).trials().forEach(t -> days.merge(t.day(), 1, Integer::sum));
        assertThat(days.values()).allSatisfy(n -> assertThat(n).isLessThanOrEqualTo(7));
    }

    @Test
    void withoutPairsEachHandHasPlacesOfItsOwn() {
        TrialPlan plan = new TrialPlanner(NEED, TrialPlanner.first(NEED), 30, true)
                .plan(List.of("A", "B"), new PlanGoal.Difference(0.3, 0.8, false), 0.9, 1);
        assertThat(plan.trials()).allSatisfy(t -> assertThat(t.pair()).isEmpty());
        Set<Placed> first = new HashSet<>();
        Set<Placed> second = new HashSet<>();
        plan.trials()
                .forEach(t ->
                        (t.hand().equals("A") ? first : second).add(t.placed().orElseThrow()));
        first.retainAll(second);
        assertThat(first).as("places in common").hasSizeLessThan(plan.perHand() / 4);
    }

    @Test
    void placesAreLeftOpenWhereObjectsAreFoundInUse() {
        assertThat(plan(1, 30, false).trials()).allSatisfy(t -> {
            assertThat(t.placed()).isEmpty();
            assertThat(t.pair()).isEmpty();
        });
    }

    @Test
    void refusesADifferenceThatLeavesNothing() {
        assertThatThrownBy(() -> new PlanGoal.Difference(0.5, 0.8, true).trials(0.4))
                .hasMessageContaining("a difference of 50 % from an expected success of 40 % leaves nothing");
    }

    /** Source: closed forms; the capstan's exp(0.1 pi) = 1.369107771 also in reference/drive/drive_train.csv. */
    @Test
    void referenceBenchFormulasReturnWhatWentIn() {
        note("tan 38.66 deg", 0.8, BenchFormulas.friction(Math.atan(0.8), 0.01).value());
        note(
                "capstan pi, 1.369107771",
                0.1,
                BenchFormulas.sheathFriction(1.369107771, 1, Math.PI, 0.01).value());
        double mass = BenchFormulas.massFor(0.14, 0.05, 0.35);
        note(
                "rate of a spring, N m/rad",
                0.14,
                BenchFormulas.springRate(mass, 0, 0.05, 0, 0.35, 0).value());
        note(
                "shear modulus, Pa: 5 N on 4 cm2, 4 mm thick, shifted 0.2 mm",
                250_000,
                BenchFormulas.shearModulus(5, 0, 4e-3, 0, 4e-4, 0, 0.2e-3, 0).value());
    }

    private static void note(String what, double expected, double found) {
        Truth.record("bench measurements", what, "closed form", expected, found, "1e-8", "printed digits");
        assertThat(found).isCloseTo(expected, within(1e-8 * expected));
    }

    /** The stated uncertainties are the slopes of the formulas: compared with differences over small steps. */
    @Test
    void propertyUncertaintiesAreTheSlopesOfTheFormulas() {
        double step = 1e-6;
        Found mu = BenchFormulas.friction(0.6, step);
        assertThat(BenchFormulas.friction(0.6 + step, 0).value() - mu.value())
                .isCloseTo(mu.uncertainty(), within(1e-4 * mu.uncertainty()));
        Found turn = BenchFormulas.springRate(0.1, 0, 0.05, 0, 0.4, step);
        assertThat(turn.value()
                        - BenchFormulas.springRate(0.1, 0, 0.05, 0, 0.4 + step, 0)
                                .value())
                .isCloseTo(turn.uncertainty(), within(1e-4 * turn.uncertainty()));
        Found mass = BenchFormulas.springRate(0.1, step, 0.05, 0, 0.4, 0);
        assertThat(BenchFormulas.springRate(0.1 + step, 0, 0.05, 0, 0.4, 0).value() - mass.value())
                .isCloseTo(mass.uncertainty(), within(1e-4 * mass.uncertainty()));
        Found pull = BenchFormulas.sheathFriction(20, 17, 1.5, step);
        double one = BenchFormulas.sheathFriction(20 * (1 + step), 17, 1.5, 0).value() - pull.value();
        assertThat(Math.sqrt(2) * one).isCloseTo(pull.uncertainty(), within(1e-4 * pull.uncertainty()));
    }
}
