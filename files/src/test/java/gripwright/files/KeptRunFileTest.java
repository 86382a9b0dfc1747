package gripwright.files;

import static org.assertj.core.api.Assertions.assertThat;

import gripwright.closing.ClosingSummary;
import gripwright.closing.Conditions;
import gripwright.closing.Numerics;
import gripwright.closing.Outcome;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class KeptRunFileTest {
    private static final String HEAD = KeptRunFile.head("0.1.0", "abc");
    private static final ClosingSummary RUN = new ClosingSummary(
            Outcome.PUSHED_AWAY, 0.1 + 0.2, -1e-9, 0.25, 0, 0.001, 0, 12.5, 3e4, 2, Double.NaN, 1e-7, 120, 400);

    @TempDir
    Path folder;

    private static String key(double x) {
        String pair = KeptRunFile.pair("a hand", Numerics.DEFAULT, "spray\tcan", "wrap");
        return KeptRunFile.key(pair, Conditions.at(x, 0, 0));
    }

    private Path file(String text) throws IOException {
        return Files.writeString(folder.resolve("kept-runs.txt"), text);
    }

    @Test
    void runsComeBackToTheLastBit() throws IOException {
        Path file = file(HEAD + "\n" + KeptRunFile.line(key(0.012), RUN) + "\n");
        assertThat(KeptRunFile.read(file, HEAD)).hasSize(1).containsEntry(key(0.012), RUN);
    }

    @Test
    void lineCutOffByAKillIsLeftOutAndTheOthersStay() throws IOException {
        String second = KeptRunFile.line(key(0.024), RUN);
        for (int cut = 1; cut < second.length() - 4; cut += 7) {
            Path file = file(HEAD + "\n" + KeptRunFile.line(key(0.012), RUN) + "\n" + second.substring(0, cut));
            assertThat(KeptRunFile.read(file, HEAD)).as("cut after %s", cut).containsOnlyKeys(key(0.012));
        }
    }

    @Test
    void runsOfOtherInputsAreNotUsed() throws IOException {
        Path file = file(HEAD + "\n" + KeptRunFile.line(key(0.012), RUN) + "\n");
        assertThat(KeptRunFile.read(file, KeptRunFile.head("0.1.0", "abd"))).isEmpty();
        assertThat(KeptRunFile.read(file, KeptRunFile.head("0.2.0", "abc"))).isEmpty();
        assertThat(KeptRunFile.read(folder.resolve("none.txt"), HEAD)).isEmpty();
    }
}
