package gripwright.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gripwright.model.Scatter;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class EvenScoresTest {
    private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);

    private static double mean(List<EvenScores> all, ToDoubleFunction<EvenScores> of) {
        return all.stream().mapToDouble(of).average().orElseThrow();
    }

    @Test
    void everyInputHasMeanNothingAndItsOwnSpread() {
        List<EvenScores> all = EvenScores.of(100, 4);
        assertThat(all).hasSize(100);
        for (int input = 0; input < 4; input++) {
            int i = input;
            assertThat(mean(all, e -> e.normal(i))).isCloseTo(0, within(1e-12));
            assertThat(mean(all, e -> e.normal(i) * e.normal(i))).isCloseTo(1, within(1e-12));
        }
    }

    /**
     * Mean of Phi(a + b Z1 + c Z4) is Phi(a / sqrt(1 + b^2 + c^2)) for independent standard normal Z: the probit integral
     * (common practice, no source; follows from the law of a sum of normals).
     */
    @ParameterizedTest
    @CsvSource({"0.5, 1, 0.5", "-1, 0.5, 1", "1.5, 2, 1", "0.3, 0.2, 0.1"})
    void referenceMeanOfAChanceOverItsInputs(double a, double b, double c) {
        double exact = NORMAL.cumulativeProbability(a / Math.sqrt(1 + b * b + c * c));
        double found =
                mean(EvenScores.of(100, 4), e -> NORMAL.cumulativeProbability(a + b * e.normal(0) + c * e.normal(3)));
        // Drawn by lot, the standard error of 100 points would be 0.02 to 0.04 for all but the last.
        assertThat(found).isCloseTo(exact, within(0.008));
    }

    @Test
    void aUniformLawStaysWithinItsEnds() {
        Scatter uniform = new Scatter(Scatter.Law.UNIFORM, 0.01);
        List<EvenScores> all = EvenScores.of(64, 4);
        assertThat(all).allMatch(e -> Math.abs(e.scattered(uniform, 1, 2)) < 0.02);
        assertThat(mean(all, e -> Math.pow(e.scattered(uniform, 1, 2), 2))).isCloseTo(0.02 * 0.02 / 3, within(1e-7));
    }
}
