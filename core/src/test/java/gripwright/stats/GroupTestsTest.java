package gripwright.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gripwright.truth.Truth;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class GroupTestsTest {
    static Stream<List<String>> fisher() {
        return ReferenceCsv.rows("exact_tests.csv")
                .filter(row -> row.get(0).equals("fisher") && row.get(5).equals("p_greater"));
    }

    /** Source: reference/statistics/exact_tests.csv, equal to R 'fisher.test'; relative 1e-8 as stated. */
    @ParameterizedTest
    @MethodSource("fisher")
    void referenceOneSidedFisherTest(List<String> row) {
        int a = Integer.parseInt(row.get(1));
        int b = Integer.parseInt(row.get(2));
        int c = Integer.parseInt(row.get(3));
        int d = Integer.parseInt(row.get(4));
        double found = FisherExact.atLeast(a, a + b, a + c, a + b + c + d);
        Truth.record(
                "tests of groups",
                "Fisher's exact test, one-sided p, table " + a + ", " + b + "; " + c + ", " + d,
                "R fisher.test and scipy",
                Double.parseDouble(row.get(6)),
                found,
                "1e-8",
                "printed to ten digits");
        assertThat(found).isCloseTo(Double.parseDouble(row.get(6)), Percentage.withPercentage(1e-6));
    }

    /** Source: scipy 1.17.1 mannwhitneyu, U = 21 of 30 pairs with ties, so 2 * 21 / 30 - 1; exact. */
    @Test
    void referenceRankBiserialWithTies() {
        double[] first = {3.1, 2.0, 5.5, 2.0, 7.25, 1.0};
        double[] second = {2.0, 0.5, 4.0, 1.5, 2.0};
        Truth.record(
                "tests of groups",
                "rank-biserial correlation of 6 and 5 values with ties",
                "scipy 1.17.1 mannwhitneyu, 2 U / 30 - 1",
                0.4,
                RankBiserial.of(first, second),
                "1e-15",
                "whole numbers of pairs");
        assertThat(RankBiserial.of(first, second)).isCloseTo(0.4, within(1e-15));
        assertThat(RankBiserial.of(second, first)).isCloseTo(-0.4, within(1e-15));
    }

    @Test
    void separateGroupsCorrelateFullyAndAnEmptyOneNotAtAll() {
        assertThat(RankBiserial.of(new double[] {3, 4}, new double[] {1, 2})).isEqualTo(1);
        assertThat(RankBiserial.of(new double[] {3, 4}, new double[0])).isZero();
    }

    /** About 5 % of unrelated pairs of groups must pass the noise level: 2000 draws, standard error 0.5 points. */
    @Test
    void propertyTheNoiseLevelIsPassedByLuckInOneCaseOfTwenty() {
        Random random = new Random(3);
        int passed = 0;
        for (int draw = 0; draw < 2000; draw++) {
            double strength = RankBiserial.of(
                    random.doubles(25).toArray(), random.doubles(60).toArray());
            passed += Math.abs(strength) > RankBiserial.noise(25, 60, 0.05) ? 1 : 0;
        }
        assertThat(passed / 2000.0).isCloseTo(0.05, within(0.02));
    }
}
