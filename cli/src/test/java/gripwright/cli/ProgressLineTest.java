package gripwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import org.junit.jupiter.api.Test;

class ProgressLineTest {
    private static final long SECOND = 1_000_000_000L;

    private final StringWriter text = new StringWriter();
    private final Interruption interruption = new Interruption();
    private long now;

    @Test
    void redrawsABarOnATerminalAndLeavesTheLineEmpty() {
        ProgressLine progress = line(true);
        now = 2 * SECOND;
        progress.done(50, 100);
        assertThat(text.toString()).startsWith("\rmap [===============               ] 50 of 100, about 2 s left");
        progress.end();
        assertThat(text.toString()).endsWith("\r\u001b[K");
    }

    @Test
    void printsAPlainLineNowAndThenElsewhere() {
        ProgressLine progress = line(false);
        now = SECOND;
        progress.done(1, 100);
        assertThat(text.toString()).isEmpty();
        now = 11 * SECOND;
        progress.done(11, 100);
        progress.done(12, 100);
        progress.end();
        assertThat(text.toString().lines()).containsExactly("map: 11 of 100 runs, about 89 s left");
    }

    @Test
    void goesOnUntilAnInterruptionIsAskedFor() {
        ProgressLine progress = line(false);
        assertThat(progress.done(1, 3)).isTrue();
        interruption.request();
        assertThat(progress.done(2, 3)).isFalse();
    }

    private ProgressLine line(boolean terminal) {
        return new ProgressLine("map", new PrintWriter(text), terminal, () -> now, interruption);
    }
}
