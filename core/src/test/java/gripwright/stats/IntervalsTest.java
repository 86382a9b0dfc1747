package gripwright.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import gripwright.stats.CombinedShares.Term;
import gripwright.truth.Truth;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class IntervalsTest {
    private static final String SHARE = "Wilson 1927, Clopper and Pearson 1934; wilson.csv, equal in scipy and R";
    private static final String DIFFERENCE = "Newcombe 1998, method 10; newcombe.csv, computed apart";

    static Stream<List<String>> wilson() {
        return ReferenceCsv.rows("wilson.csv");
    }

    static Stream<List<String>> newcombe() {
        return ReferenceCsv.rows("newcombe.csv");
    }

    // The tables are printed to ten decimals, hence the absolute part.
    private static Offset<Double> tolerance(List<String> row, int column) {
        return within(Math.abs(number(row, column)) * number(row, row.size() - 1) + 6e-11);
    }

    private static double number(List<String> row, int column) {
        return Double.parseDouble(row.get(column));
    }

    private static int count(List<String> row, int column) {
        return Integer.parseInt(row.get(column));
    }

    /** Source: reference/statistics/wilson.csv, equal to R 'prop.test' and 'binom.test'; relative 1e-8 as stated. */
    @ParameterizedTest
    @MethodSource("wilson")
    void referenceWilsonAndExactIntervals(List<String> row) {
        Interval wilson = BinomialIntervals.wilson(count(row, 0), count(row, 1));
        Interval exactly = BinomialIntervals.clopperPearson(count(row, 0), count(row, 1), 0.95);
        String counts = row.get(0) + " of " + row.get(1);
        note(counts + ", Wilson low", SHARE, row, 3, wilson.low());
        note(counts + ", Wilson high", SHARE, row, 4, wilson.high());
        note(counts + ", exact low", SHARE, row, 5, exactly.low());
        note(counts + ", exact high", SHARE, row, 6, exactly.high());
        assertThat(wilson.low()).isCloseTo(number(row, 3), tolerance(row, 3));
        assertThat(wilson.high()).isCloseTo(number(row, 4), tolerance(row, 4));
        assertThat(exactly.low()).isCloseTo(number(row, 5), tolerance(row, 5));
        assertThat(exactly.high()).isCloseTo(number(row, 6), tolerance(row, 6));
    }

    /** Source: reference/statistics/newcombe.csv: the combination with weights 1 and -1 is Newcombe's method 10. */
    @ParameterizedTest
    @MethodSource("newcombe")
    void referenceDifferenceOfTwoSharesIsNewcombesHybrid(List<String> row) {
        List<Term> terms = List.of(term(1, count(row, 0), count(row, 1)), term(-1, count(row, 2), count(row, 3)));
        Interval found = CombinedShares.interval(terms);
        String counts = row.get(0) + " of " + row.get(1) + " against " + row.get(2) + " of " + row.get(3);
        note(counts + ", difference low", DIFFERENCE, row, 5, found.low());
        note(counts + ", difference high", DIFFERENCE, row, 6, found.high());
        assertThat(CombinedShares.value(terms)).isCloseTo(number(row, 4), tolerance(row, 4));
        assertThat(found.low()).isCloseTo(number(row, 5), tolerance(row, 5));
        assertThat(found.high()).isCloseTo(number(row, 6), tolerance(row, 6));
    }

    private static void note(String what, String source, List<String> row, int column, double found) {
        Truth.record(
                "intervals of shares", what, source, number(row, column), found, "1e-8", "printed to ten decimals");
    }

    private static Term term(double weight, int successes, int trials) {
        return new Term(weight, (double) successes / trials, BinomialIntervals.wilson(successes, trials));
    }

    @Test
    void aSingleShareKeepsItsOwnInterval() {
        Interval own = BinomialIntervals.wilson(17, 20);
        Interval combined = CombinedShares.interval(List.of(term(1, 17, 20)));
        assertThat(combined.low()).isCloseTo(own.low(), within(1e-15));
        assertThat(combined.high()).isCloseTo(own.high(), within(1e-15));
    }

    @Test
    void withoutRunsAnythingIsPossible() {
        assertThat(BinomialIntervals.wilson(0, 0)).isEqualTo(new Interval(0, 1));
        assertThat(BinomialIntervals.clopperPearson(0, 0, 0.95)).isEqualTo(new Interval(0, 1));
    }

    @Test
    void propertyFailuresMirrorSuccessesAndTheExactIntervalIsTheWider() {
        for (int n = 1; n <= 60; n++) {
            for (int k = 0; k <= n; k++) {
                Interval wilson = BinomialIntervals.wilson(k, n);
                Interval mirror = BinomialIntervals.wilson(n - k, n);
                Interval exact = BinomialIntervals.clopperPearson(k, n, 0.95);
                String where = k + " of " + n;
                assertThat(wilson.low()).as(where).isCloseTo(1 - mirror.high(), within(1e-12));
                assertThat(wilson.contains((double) k / n)).as(where).isTrue();
                assertThat(exact.high() - exact.low()).as(where).isGreaterThan(0.97 * (wilson.high() - wilson.low()));
            }
        }
    }

    /**
     * The chance that the weighted interval contains the truth, worked out by drawing counts: four objects with
     * unequal weights and shares near 1. Must be 95 % within 1.5 points (4000 draws: standard error 0.35 points; the
     * method itself is approximate).
     */
    @Test
    void propertyTheWeightedIntervalCoversAboutAsOftenAsItSays() {
        double[] truth = {0.95, 0.8, 0.9, 0.5};
        double[] weight = {0.4, 0.3, 0.2, 0.1};
        Random random = new Random(5);
        int covered = 0;
        int draws = 4000;
        for (int draw = 0; draw < draws; draw++) {
            Term[] terms = new Term[4];
            double value = 0;
            for (int i = 0; i < 4; i++) {
                double share = truth[i];
                int held = (int) random.doubles(50).filter(u -> u < share).count();
                terms[i] = term(weight[i], held, 50);
                value += weight[i] * share;
            }
            covered += CombinedShares.interval(List.of(terms)).contains(value) ? 1 : 0;
        }
        assertThat((double) covered / draws).isCloseTo(0.95, within(0.015));
    }

    @Test
    void refusesCountsThatCannotBe() {
        assertThatThrownBy(() -> BinomialIntervals.wilson(5, 4))
                .hasMessage("successes is 5; it must lie between 0 and the 4 trials");
        assertThatThrownBy(() -> BinomialIntervals.wilson(1, 4, 1))
                .hasMessage("confidence is 1.0; it must lie between 0 and 1, both excluded");
    }
}
