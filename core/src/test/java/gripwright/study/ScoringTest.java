package gripwright.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gripwright.closing.Outcome;
import gripwright.study.SheetScore.Comparison;
import gripwright.study.SheetScore.Rate;
import gripwright.study.SheetScore.Scope;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class ScoringTest {
    private final List<FieldTrial> trials = new ArrayList<>();

    private void add(String hand, String object, Outcome outcome, String pair, int count) {
        trials.add(new FieldTrial(
                trials.size() + 1, hand, object, "wrap", Optional.empty(), outcome, Optional.empty(), "", pair, count));
    }

    private void pairs(String object, int both, int gained, int lost, int neither) {
        for (int i = 0; i < both + gained + lost + neither; i++) {
            boolean first = i < both || i >= both + gained && i < both + gained + lost;
            boolean second = i < both + gained;
            String pair = object + i;
            add("A", object, first ? Outcome.HELD : Outcome.DROPPED, pair, 1);
            add("B", object, second ? Outcome.HELD : Outcome.PUSHED_AWAY, pair, 1);
        }
    }

    /** Source: the pair counts 12 and 2 of reference/statistics/exact_tests.csv: p = 0.012939453125, mid-p 0.0073852539. */
    @Test
    void referencePairsAreComparedByTheExactMcNemarTest() {
        pairs("mug", 20, 12, 2, 6);
        Comparison c = Scoring.of(trials).comparisons().get(0);
        assertThat(c.pairs()).isPresent();
        assertThat(c.luck()).isCloseTo(0.012939453125, within(1e-9));
        assertThat(c.pairs().orElseThrow().midP()).isCloseTo(0.00738525390625, within(1e-9));
        assertThat(c.difference()).isCloseTo(10.0 / 40, within(1e-12));
        assertThat(c.settled()).isTrue();
        assertThat(c.needed()).isEmpty();
        assertThat(c.interval().low()).isPositive();
    }

    /** Source: newcombe.csv row 56/70 - 48/80: 0.0524 to 0.3339; Fisher by R: p below 0.05. */
    @Test
    void referenceTrialsWithoutPairsAreComparedByFishersTestAndNewcombesInterval() {
        add("A", "mug", Outcome.HELD, "", 48);
        add("A", "mug", Outcome.DROPPED, "", 32);
        add("B", "mug", Outcome.HELD, "", 56);
        add("B", "mug", Outcome.MISSED, "", 14);
        Comparison c = Scoring.of(trials).comparisons().get(0);
        assertThat(c.pairs()).isEmpty();
        assertThat(c.interval().low()).isCloseTo(0.0524314724, within(1e-9));
        assertThat(c.interval().high()).isCloseTo(0.3338726540, within(1e-9));
        assertThat(c.luck()).isBetween(0.001, 0.05);
    }

    @Test
    void chancesOfSingleObjectsAreCorrectedForTheirNumber() {
        pairs("mug", 20, 12, 2, 6);
        pairs("bulb", 10, 3, 3, 0);
        List<Comparison> all = Scoring.of(trials).comparisons();
        assertThat(all).extracting(Comparison::object).containsExactly("", "mug", "bulb");
        assertThat(all.get(1).corrected()).isCloseTo(2 * all.get(1).luck(), within(1e-12));
        assertThat(all.get(0).corrected()).isEqualTo(all.get(0).luck());
        assertThat(all.get(2).needed()).isEmpty(); // no difference seen
    }

    @Test
    void anUnsettledDifferenceSaysHowManyMorePairsItTakes() {
        pairs("mug", 20, 6, 2, 4);
        Comparison c = Scoring.of(trials).comparisons().get(0);
        assertThat(c.settled()).isFalse();
        int all = 32 + c.needed().orElseThrow();
        assertThat(gripwright.stats.SampleSize.pairedPower(all, 6 / 32.0, 2 / 32.0, 0.95))
                .isGreaterThanOrEqualTo(0.8);
    }

    @Test
    void objectsStandInOneOrderForAllHands() {
        add("A", "mug", Outcome.HELD, "", 1);
        add("A", "bulb", Outcome.HELD, "", 1);
        add("B", "bulb", Outcome.HELD, "", 1);
        add("B", "mug", Outcome.HELD, "", 1);
        assertThat(Scoring.of(trials).rates())
                .filteredOn(r -> r.scope() == SheetScore.Scope.PART)
                .extracting(r -> r.hand() + " " + r.object())
                .containsExactly("A mug", "A bulb", "B mug", "B bulb");
    }

    @Test
    void aPartnerWithoutADecidedTrialLeavesItsPairOut() {
        pairs("mug", 5, 1, 0, 0);
        add("A", "mug", Outcome.HELD, "late", 1);
        add("B", "mug", Outcome.UNDECIDED, "late", 1);
        Comparison c = Scoring.of(trials).comparisons().get(0);
        assertThat(c.of()).isEqualTo(6);
        assertThat(c.left()).isEqualTo(1);
    }

    @Test
    void theSameLabelAtAnotherPlaceIsNoPair() {
        Optional<Placed> here = Optional.of(new Placed(0, 0, 0));
        Optional<Placed> there = Optional.of(new Placed(0.01, 0, 0));
        trials.add(new FieldTrial(1, "A", "mug", "wrap", here, Outcome.HELD, Optional.empty(), "", "p1", 1));
        trials.add(new FieldTrial(1, "B", "mug", "wrap", there, Outcome.HELD, Optional.empty(), "", "p1", 1));
        assertThat(Scoring.of(trials).comparisons().get(0).pairs()).isEmpty();
    }

    @Test
    void differentMixturesOfObjectsAreNoted() {
        add("A", "mug", Outcome.HELD, "", 30);
        add("A", "bulb", Outcome.DROPPED, "", 10);
        add("B", "mug", Outcome.HELD, "", 10);
        add("B", "bulb", Outcome.DROPPED, "", 30);
        Comparison total = Scoring.of(trials).comparisons().get(0);
        assertThat(total.note()).contains("different proportions");
    }

    /** Source: wilson.csv: 9 of 10 exact 0.5549838830 to 0.9974714215; 27 of 30 Wilson 0.7437891742 to 0.9654001113. */
    @Test
    void referenceSmallCountsHaveExactIntervalsAndGreatOnesWilsons() {
        add("A", "mug", Outcome.HELD, "", 9);
        add("A", "mug", Outcome.DROPPED, "", 1);
        add("A", "bulb", Outcome.HELD, "", 27);
        add("A", "bulb", Outcome.MISSED, "", 3);
        add("A", "bulb", Outcome.UNDECIDED, "", 4);
        List<Rate> rates = Scoring.of(trials).rates();
        assertThat(rates.get(0).exact()).isTrue();
        assertThat(rates.get(0).interval().low()).isCloseTo(0.5549838830, within(1e-9));
        assertThat(rates.get(1).exact()).isFalse();
        assertThat(rates.get(1).interval().low()).isCloseTo(0.7437891742, within(1e-9));
        assertThat(rates.get(1).undecided()).isEqualTo(4);
        assertThat(rates.get(rates.size() - 1).scope()).isEqualTo(Scope.ALL);
    }
}
