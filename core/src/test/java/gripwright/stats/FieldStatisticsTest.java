package gripwright.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import gripwright.truth.Truth;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.apache.commons.statistics.distribution.BinomialDistribution;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** What field trials need of statistics, against published and independently computed numbers. */
class FieldStatisticsTest {
    private static final String FAMILY = "trials of the built hand";
    private static final String SIZE = "Fleiss, Tytun and Ury 1980; sample_size.csv, agrees with R power.prop.test";
    private static final String ALL_TABLES = "all tables added up in whole numbers, Python";

    static Stream<List<String>> fisher() {
        return exactTests("fisher", "p_two_sided");
    }

    static Stream<List<String>> mcnemar() {
        return exactTests("mcnemar", "p_exact");
    }

    static Stream<List<String>> midP() {
        return exactTests("mcnemar", "p_mid");
    }

    private static Stream<List<String>> exactTests(String test, String quantity) {
        return ReferenceCsv.rows("exact_tests.csv")
                .filter(row -> row.get(0).equals(test) && row.get(5).equals(quantity));
    }

    static Stream<List<String>> sizes() {
        return ReferenceCsv.rows("sample_size.csv").filter(row -> row.get(0).startsWith("two_prop"));
    }

    static Stream<List<String>> shows() {
        return ReferenceCsv.rows("sample_size.csv")
                .filter(row ->
                        row.get(0).startsWith("zero_failure_n") || row.get(0).startsWith("one_failure"));
    }

    static Stream<List<String>> uppers() {
        return ReferenceCsv.rows("sample_size.csv").filter(row -> row.get(0).equals("zero_failure_upper95"));
    }

    private static double number(List<String> row, int column) {
        return Double.parseDouble(row.get(column));
    }

    private static int count(List<String> row, int column) {
        return Integer.parseInt(row.get(column));
    }

    /** Source: reference/statistics/exact_tests.csv, equal to R 'fisher.test' and scipy; relative 1e-8 as stated. */
    @ParameterizedTest
    @MethodSource("fisher")
    void referenceTwoSidedFisherTest(List<String> row) {
        int a = count(row, 1);
        int b = count(row, 2);
        int c = count(row, 3);
        int d = count(row, 4);
        double found = TwoShares.fisher(a, a + b, c, c + d);
        Truth.record(
                FAMILY,
                "Fisher's exact test, two-sided p, table " + a + ", " + b + "; " + c + ", " + d,
                "R fisher.test and scipy; tea-tasting table from Fisher 1935",
                number(row, 6),
                found,
                "1e-8",
                "printed to twelve digits");
        assertThat(found).isCloseTo(number(row, 6), Percentage.withPercentage(1e-6));
    }

    /** Source: the same table, equal to R 'binom.test'; 86 and 150 from Agresti's textbook (from memory). */
    @ParameterizedTest
    @MethodSource("mcnemar")
    void referenceExactMcNemarTest(List<String> row) {
        double found = Discordant.exact(count(row, 2), count(row, 3));
        note("McNemar exact p", row, found);
        assertThat(found).isCloseTo(number(row, 6), Percentage.withPercentage(1e-6));
    }

    /** Source: the same table, half of the probability of the split found. */
    @ParameterizedTest
    @MethodSource("midP")
    void referenceMcNemarMidP(List<String> row) {
        double found = Discordant.midP(count(row, 2), count(row, 3));
        note("McNemar mid-p", row, found);
        assertThat(found).isCloseTo(number(row, 6), Percentage.withPercentage(1e-6));
    }

    private static void note(String what, List<String> row, double found) {
        Truth.record(
                FAMILY,
                what + ", " + row.get(2) + " and " + row.get(3) + " pairs that disagree",
                "R binom.test and scipy; exact_tests.csv",
                number(row, 6),
                found,
                "1e-8",
                "printed to twelve digits");
    }

    /** Source: reference/statistics/sample_size.csv; relative 1e-7 as stated. */
    @ParameterizedTest
    @MethodSource("sizes")
    void referenceSampleSizeOfTwoShares(List<String> row) {
        boolean corrected = row.get(0).endsWith("_cc");
        double found = SampleSize.normal(number(row, 1), number(row, 2), 0.95, number(row, 3), corrected);
        Truth.record(
                FAMILY,
                "trials per hand, " + row.get(1) + " against " + row.get(2) + ", power " + row.get(3)
                        + (corrected ? ", continuity correction" : ""),
                SIZE,
                number(row, 4),
                found,
                "1e-7",
                "closed formula");
        assertThat(found).isCloseTo(number(row, 4), Percentage.withPercentage(1e-5));
        assertThat((int) Math.ceil(found)).isEqualTo(count(row, 5));
    }

    /** Source: the same table: ln(1 - C) / ln(R) without failures; 46 and 93 with one (success-run tables). */
    @ParameterizedTest
    @MethodSource("shows")
    void referenceTrialsToShowAShare(List<String> row) {
        int failures = row.get(0).startsWith("one") ? 1 : 0;
        int found = SampleSize.toShow(number(row, 2), number(row, 1), failures);
        Truth.record(
                FAMILY,
                "trials to show " + row.get(2) + " with confidence " + row.get(1) + " and " + failures + " failures",
                "success-run formula; sample_size.csv",
                number(row, 5),
                found,
                "0.5",
                "a whole number");
        assertThat(found).isEqualTo(count(row, 5));
    }

    /** Source: the same table: 1 - 0.05^(1/n). */
    @ParameterizedTest
    @MethodSource("uppers")
    void referenceUpperBoundWithoutFailures(List<String> row) {
        double found = BinomialIntervals.clopperPearson(0, count(row, 3), 0.90).high();
        Truth.record(
                FAMILY,
                "95 % upper bound, 0 failures of " + row.get(3),
                "1 - 0.05^(1/n); sample_size.csv",
                number(row, 4),
                found,
                "1e-8",
                "printed to ten digits");
        assertThat(found).isCloseTo(number(row, 4), Percentage.withPercentage(1e-6));
    }

    /** Source: own computation apart from this code: Python, tables weighed in whole numbers. */
    @ParameterizedTest
    @CsvSource({"10,0.9,0.3,0.6669172592355779", "20,0.9,0.5,0.7423887839114701", "30,0.95,0.65,0.7881533242425877"})
    void referencePowerOfFishersTest(int n, double p1, double p2, double expected) {
        double found = SampleSize.fisherPower(n, p1, p2, 0.95);
        Truth.record(
                FAMILY,
                "power of Fisher's test, " + n + " trials each, " + p1 + " against " + p2,
                ALL_TABLES,
                expected,
                found,
                "1e-10",
                "sums of doubles");
        assertThat(found).isCloseTo(expected, within(1e-10));
    }

    /** Source: as above. */
    @ParameterizedTest
    @CsvSource({"20,0.3,0.05,0.32117185778917967", "40,0.27,0.07,0.5051708406927365", "12,0.5,0,0.61279296875"})
    void referencePowerOfMcNemarsTest(int n, double gained, double lost, double expected) {
        double found = SampleSize.pairedPower(n, gained, lost, 0.95);
        Truth.record(
                FAMILY,
                "power of the exact McNemar test, " + n + " pairs, gained " + gained + ", lost " + lost,
                ALL_TABLES,
                expected,
                found,
                "1e-10",
                "sums of doubles");
        assertThat(found).isCloseTo(expected, within(1e-10));
    }

    /** Source: as above: the smallest number from which on five in a row keep the power. */
    @Test
    void referenceExactSampleSizes() {
        assertThat(SampleSize.separate(0.9, 0.5, 0.95, 0.8)).isEqualTo(23);
        assertThat(SampleSize.paired(0.27, 0.07, 0.95, 0.8)).isEqualTo(71);
    }

    /** Source: definition worked by hand: 0.005 x 4, 0.01 x 3, 0.03 x 2, then no less than that (Holm 1979). */
    @Test
    void referenceHolm() {
        assertThat(Holm.corrected(0.01, 0.04, 0.03, 0.005))
                .containsExactly(new double[] {0.03, 0.06, 0.06, 0.02}, within(1e-15));
        assertThat(Holm.corrected()).isEmpty();
        assertThat(Holm.corrected(0.7, 0.6)).containsExactly(1, 1);
    }

    @Test
    void equalChancesGiveTheBinomialLaw() {
        double[] law = UnequalChances.law(new double[] {0.3, 0.3, 0.3, 0.3, 0.3});
        for (int k = 0; k <= 5; k++) {
            assertThat(law[k]).isCloseTo(BinomialDistribution.of(5, 0.3).probability(k), within(1e-15));
        }
        assertThat(UnequalChances.luck(law, 5)).isCloseTo(law[5], within(1e-15));
        assertThat(UnequalChances.luck(law, 1)).isCloseTo(1, within(1e-12));
    }

    @Test
    void theWilsonIntervalIsAsNarrowAsWantedAndWouldNotBeWithOneTrialLess() {
        int n = SampleSize.forWidth(0.5, 0.2);
        Interval at = BinomialIntervals.wilson(n / 2, n / 2 * 2);
        assertThat(at.high() - at.low()).isCloseTo(0.2, within(0.003));
        assertThat(n).isBetween(90, 96); // 1.96^2 (1 - 0.2^2) / 0.2^2 = 92.2
    }

    @Test
    void withoutTrialsAnythingIsPossible() {
        TwoShares none = TwoShares.of(0, 0, 3, 5);
        assertThat(none.difference()).isNaN();
        assertThat(none.interval()).isEqualTo(new Interval(-1, 1));
        assertThat(none.luck()).isEqualTo(1);
        assertThat(Discordant.exact(0, 0)).isEqualTo(1);
    }

    @Test
    void refusesSharesThatDoNotDiffer() {
        assertThatThrownBy(() -> SampleSize.separate(0.9, 0.9, 0.95, 0.8)).hasMessageContaining("two different ones");
        assertThatThrownBy(() -> SampleSize.paired(0.1, 0.1, 0.95, 0.8)).hasMessageContaining("two different shares");
    }

    /**
     * A surface fitted to 300 answers of a known chance over two inputs comes within 0.07 of it on average, and nine in
     * ten of the surfaces it calls possible lie about as far off as it does: the mean square error of the surface is
     * within a factor of 3 of their variance.
     */
    @Test
    void propertyTheSurfaceFindsAKnownChanceAndKnowsHowWell() {
        Random random = new Random(11);
        double[][] at = new double[300][];
        boolean[] yes = new boolean[300];
        for (int i = 0; i < at.length; i++) {
            at[i] = new double[] {2 * random.nextGaussian(), 4 * random.nextDouble() - 2};
            yes[i] = random.nextDouble() < known(at[i]);
        }
        LogisticSurface surface = LogisticSurface.fit(at, yes);
        double off = 0;
        double square = 0;
        double variance = 0;
        for (int i = 0; i < 200; i++) {
            double[] x = {2 * random.nextGaussian(), 4 * random.nextDouble() - 2};
            double[][][] all =
                    surface.chances(List.of(x), new double[] {x[1]}, 40, k -> new Random(1000L * k + 7).nextGaussian());
            assertThat(all[0][0][0]).isCloseTo(surface.chance(x), within(1e-12));
            off += Math.abs(all[0][0][0] - known(x)) / 200;
            square += Math.pow(all[0][0][0] - known(x), 2) / 200;
            for (int m = 1; m <= 40; m++) {
                variance += Math.pow(all[m][0][0] - all[0][0][0], 2) / 200 / 40;
            }
        }
        assertThat(off).isLessThan(0.07);
        assertThat(square).isBetween(variance / 3, variance * 3);
    }

    private static double known(double[] x) {
        return 1 / (1 + Math.exp(3 * (x[0] * x[0] / 4 - 0.8 - 0.7 * x[1])));
    }
}
