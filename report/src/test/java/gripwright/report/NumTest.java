package gripwright.report;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class NumTest {
    @Test
    void valueAndUnitNeverPart() {
        assertThat(Num.mm(-0.0125)).isEqualTo("\u221212.5\u00a0mm");
        assertThat(Num.newtons(0.034)).isEqualTo("0.034\u00a0N");
        assertThat(Num.newtons(60)).isEqualTo("60\u00a0N");
        assertThat(Num.grams(0.31)).isEqualTo("310\u00a0g");
        assertThat(Num.grams(1.25)).isEqualTo("1.25\u00a0kg");
        assertThat(Num.degrees(Math.PI / 2)).isEqualTo("90\u00b0");
    }

    @Test
    void verySmallNumbersAreNotShownAsZero() {
        assertThat(Num.digits(1.25e-7, 3)).isEqualTo("1.25\u00b710\u207b\u2077");
        assertThat(Num.newtons(1e-9)).isEqualTo("1\u00b710\u207b\u2079\u00a0N");
    }

    @Test
    void whatIsNotANumberIsADashInTextAndNoWordOfTheLanguage() {
        assertThat(Num.percent(Double.NaN)).isEqualTo("\u2013\u00a0%");
        assertThat(Num.coord(Double.NaN)).isEqualTo("0");
    }

    @Test
    void markupAndForbiddenCharactersAreEscaped() {
        assertThat(Num.escape("<a href=\"x\">&'\u0000\ud800"))
                .isEqualTo("&lt;a href=&quot;x&quot;&gt;&amp;&#39;\ufffd\ufffd");
    }

    @Test
    void roundLengthsAreOneTwoOrFiveTimesAPowerOfTen() {
        assertThat(Num.nice(0.47)).isEqualTo(0.2);
        assertThat(Num.nice(100)).isEqualTo(100);
        assertThat(Num.nice(7)).isEqualTo(5);
    }

    @Test
    void sharesAndRadiiNeverLookBetterThanTheyAre() {
        assertThat(Num.share(0.998)).isEqualTo("over 99\u00a0%");
        assertThat(Num.share(1)).isEqualTo("100\u00a0%");
        assertThat(Num.share(0.002)).isEqualTo("under 1\u00a0%");
        assertThat(Num.interval(0.817, 0.9101)).isEqualTo("81 to 92\u00a0%");
        assertThat(Num.interval(0.29, 0.58)).isEqualTo("29 to 58\u00a0%");
        assertThat(Num.mm(Num.promised(0.01398))).isEqualTo("13\u00a0mm");
        assertThat(Num.mm(Num.promised(0.00698))).isEqualTo("6.9\u00a0mm");
    }
}
