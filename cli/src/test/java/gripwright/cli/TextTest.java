package gripwright.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;

/** Numbers, tables and sentences as they are shown. */
class TextTest {
    @Test
    void sharesAreNeverRoundedToAllOrNothing() {
        assertThat(Say.percent(0.776)).isEqualTo("78 %");
        assertThat(Say.percent(0.999)).isEqualTo("over 99 %");
        assertThat(Say.percent(0.001)).isEqualTo("under 1 %");
        assertThat(Say.percent(1)).isEqualTo("100 %");
        assertThat(Say.percent(Double.NaN)).isEqualTo("-");
        assertThat(Say.exactly(0.925)).isEqualTo("92.5 %");
    }

    @Test
    void intervalsAreRoundedOutwards() {
        assertThat(Say.interval(0.678, 0.842)).isEqualTo("67 to 85 %");
        assertThat(Say.interval(0.29, 0.58)).isEqualTo("29 to 58 %");
        assertThat(Say.interval(0, 1)).isEqualTo("0 to 100 %");
    }

    @Test
    void promisedLengthsAreRoundedDown() {
        assertThat(Say.atLeast(0.01897)).isEqualTo("18 mm");
        assertThat(Say.atLeast(0.00897)).isEqualTo("8.9 mm");
        assertThat(Say.atLeast(0.030)).isEqualTo("30 mm");
        assertThat(Say.atLeast(0)).isEqualTo("0 mm");
    }

    @Test
    void noiseOfTheSolverReadsAsNothing() {
        assertThat(Say.length(3e-12)).isEqualTo("0 mm");
        assertThat(Say.force(-2e-9)).isEqualTo("0 N");
        assertThat(Say.length(0.0031)).isEqualTo("3.1 mm");
        assertThat(Say.residual(3.04e-6, "N")).isEqualTo("3.0e-06 N");
    }

    @Test
    void tablesAlignTheirColumns() {
        assertThat(new Table("lr", "what", "n").row("a", "10").row("long name", "9"))
                .hasToString("what        n\na          10\nlong name   9");
        assertThatThrownBy(() -> new Table("l", "a").row("1", "2"))
                .hasMessage("row has 2 entries; expected 1 (one cell a column)");
    }

    @Test
    void linesBreakAtBlanksButNotBetweenANumberAndItsUnit() {
        String text = "word ".repeat(21) + "wo 90 % and more";
        assertThat(Words.wrapped(text).lines()).hasSize(2).last().asString().startsWith("  90 % and");
        assertThat(Words.wrapped("short")).isEqualTo("short");
    }
}
