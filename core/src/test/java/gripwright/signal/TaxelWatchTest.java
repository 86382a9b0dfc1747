package gripwright.signal;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

/** What is said of taxels that stand still, end or fall silent. */
class TaxelWatchTest {
    private static final List<Layout.Taxel> TWO = List.of(
            new Layout.Taxel("p00", "strip", 50_000, 115_000), new Layout.Taxel("p01", "strip", 50_000, 115_000));
    private static final int[] PLACES = {1, 0};

    private final TaxelWatch watch = new TaxelWatch(TWO);

    /** Readings ten times a second; the columns stand in the other order. */
    private void go(int from, int to, double p00, double p01) {
        for (int i = from; i < to; i++) {
            watch.next(i / 10.0, new double[] {p01 + (i % 2), p00}, PLACES);
        }
    }

    @Test
    void standingStillForFiveSecondsIsStuck() {
        go(0, 49, 101_000, 101_000);
        assertThat(watch.warnings()).isEmpty();
        go(49, 52, 101_000, 101_000);
        assertThat(watch.warnings()).containsExactly("p00 does not change any more: stuck?");
        go(52, 53, 101_001, 101_000);
        assertThat(watch.warnings()).isEmpty();
    }

    @Test
    void theEndOfTheRangeIsRememberedAndThePresentToldApart() {
        go(0, 5, 101_000, 101_000);
        go(5, 6, 115_000, 101_000);
        assertThat(watch.saturatedNow(0)).isTrue();
        go(6, 8, 101_000, 101_000);
        assertThat(watch.saturatedNow(0)).isFalse();
        assertThat(watch.warnings()).containsExactly("p00 reached an end of the chip's range");
    }

    @Test
    void noNumberForMoreThanTwoSecondsIsSilentNotStuck() {
        go(0, 100, 101_000, 101_000);
        go(100, 120, Double.NaN, 101_000);
        assertThat(watch.silentFor(0)).isZero();
        go(120, 122, Double.NaN, 101_000);
        assertThat(watch.warnings()).containsExactly("p00 gives no number");
        go(122, 123, 101_500, 101_000);
        assertThat(watch.warnings()).isEmpty();
    }

    @Test
    void aTaxelThatNeverGaveANumberIsSilentToo() {
        go(0, 22, Double.NaN, 101_000);
        assertThat(watch.warnings()).containsExactly("p00 gives no number");
        assertThat(watch.values(0)).isZero();
    }

    @Test
    void manyTaxelsAreNamedInPart() {
        assertThat(WatchWords.some(List.of("a", "b", "c", "d", "e", "f", "g", "h", "i", "j")))
                .isEqualTo("a, b, c, d, e, f, g, h and 2 more");
    }

    @Test
    void stampsThatGoBackOrRepeatAreCounted() {
        StampCheck check = new StampCheck();
        for (double t : new double[] {0, 1, 1, 0.5, Double.NaN, 0.5, 2}) {
            check.next(t);
        }
        assertThat(check.back()).isEqualTo(1);
        assertThat(check.equal()).isEqualTo(2);
    }
}
