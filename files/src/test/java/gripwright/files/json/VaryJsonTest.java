package gripwright.files.json;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import gripwright.closing.Criteria;
import gripwright.study.DesignChange.Kind;
import gripwright.study.TrialsResult;
import gripwright.study.VaryResult;
import gripwright.study.VaryResult.Difference;
import gripwright.study.VaryResult.Effect;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** What was written is read again, and only for the inputs it was made from. */
class VaryJsonTest {
    private static final Origin ORIGIN = new Origin("0.1.0", "ab12", "hand: \"one\"", "need", List.of());
    private static final Effect HELPS =
            effect("first joint spring", "20 % less", Kind.DESIGN, new Difference(0.02, -1e-9, 3.5e-4));
    private static final VaryResult VARY = new VaryResult(
            Long.MAX_VALUE / 4096,
            24,
            16,
            0.06,
            List.of(new VaryResult.Tried("spray can", "wrap")),
            new TrialsResult.Weighted(0.8125, 0.7, 0.9),
            3,
            new Difference(1.2e-3, 1e-3, 2e-3),
            List.of(HELPS, effect("tendon", "cut", Kind.FAULT, new Difference(-0.5, -0.6, -0.4))),
            2,
            Optional.of(HELPS));

    private static Effect effect(String quantity, String change, Kind kind, Difference d) {
        return new Effect(quantity, change, kind, d, d, 1, "");
    }

    @Test
    void propertyReadingGivesWhatWasWritten() {
        String text = VaryJson.of(ORIGIN, Criteria.DEFAULT, VARY);
        assertThat(VaryJson.read(text, "ab12")).contains(VARY);
    }

    @Test
    void propertyAStudyThatWasStoppedStaysSo() {
        VaryResult stopped = new VaryResult(
                1, 2, 4, 0.06, List.of(), VARY.success(), 0, VARY.area(), List.of(HELPS), 30, Optional.empty());
        VaryResult read = VaryJson.read(VaryJson.of(ORIGIN, Criteria.DEFAULT, stopped), "ab12")
                .orElseThrow();
        assertThat(read.stopped()).isTrue();
        assertThat(read.again()).isEmpty();
    }

    @Test
    void resultsOfOtherInputsAreLeftOutAndOtherTextsRefused() {
        String text = VaryJson.of(ORIGIN, Criteria.DEFAULT, VARY);
        assertThat(VaryJson.read(text, "cd34")).isEmpty();
        assertThatThrownBy(() -> VaryJson.read("[1, 2", "ab12"))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("it is not JSON");
        assertThatThrownBy(() -> VaryJson.read("{\"kind\": \"gripwright map 1\"}", "ab12"))
                .hasMessageContaining("expected 'gripwright vary 1'");
        assertThatThrownBy(() -> VaryJson.read("{\"kind\": \"gripwright vary 1\"}", "ab12"))
                .hasMessage("it has no 'inputs_sha256'");
    }
}
