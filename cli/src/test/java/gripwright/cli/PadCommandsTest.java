package gripwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The commands on pads, on the demo. */
class PadCommandsTest {
    @TempDir
    @SuppressWarnings("NullAway.Init")
    Path folder;

    @SuppressWarnings("NullAway.Init")
    private Shell shell;

    @BeforeEach
    void demo() {
        shell = new Shell(folder);
        shell.run("demo", "--only-files", "--to", "d");
    }

    private void change(String file, String old, String text) throws IOException {
        Path path = folder.resolve("d").resolve(file);
        String whole = Files.readString(path);
        assertThat(whole).contains(old);
        Files.writeString(path, whole.replace(old, text));
    }

    @Test
    void padOfTheDemoHasBlindGapsUntilTwoNumbersChange() throws IOException {
        Shell.Ran before = shell.run("pad", "d");
        assertThat(before.out()).contains("Blind gaps: between every two chips");
        assertThat(before.code()).isEqualTo(Exit.NO.code());
        change("pads.yaml", "pitch: 6 mm", "pitch: 4 mm");
        change("hand.yaml", "thickness: 4 mm", "thickness: 5 mm");
        Shell.Ran after = shell.run("pad", "d");
        assertThat(after.out()).contains("No blind gaps");
        assertThat(after.code()).isEqualTo(Exit.YES.code());
    }

    /** What was measured is not called a computed range, and no sentence says that nobody measured. */
    @Test
    void measuredHeatIsToldAsMeasured() throws IOException {
        assertThat(shell.run("pad", "d").out()).contains("No pad was measured", "(computed range)");
        change("pads.yaml", "conversion: 1.6 ms", "conversion: 1.6 ms\n    heat: 2 kPa/K");
        assertThat(shell.run("pad", "d").out())
                .contains("Heat: 2 kPa per kelvin as measured", "(measured)")
                .doesNotContain("No pad was measured");
    }

    @Test
    void resultsKeepTheirSchemas() throws IOException {
        shell.run("pad", "d", "--json", "pad.json", "--picture", "pad.svg", "--casting-sheet", "sheet.html");
        shell.run("scan", "d", "--json", "scan.json", "--picture", "scan.svg");
        shell.run("touch", "d", "--json", "touch.json", "--picture", "touch.svg");
        assertThat(ResultSchemasTest.faults(SchemaCommand.Kind.pad, folder.resolve("pad.json")))
                .isEmpty();
        assertThat(ResultSchemasTest.faults(SchemaCommand.Kind.scan, folder.resolve("scan.json")))
                .isEmpty();
        assertThat(ResultSchemasTest.faults(SchemaCommand.Kind.touch, folder.resolve("touch.json")))
                .isEmpty();
        assertThat(folder.resolve("pad.svg"))
                .content()
                .contains("blind", "</svg>")
                .doesNotContain("NaN");
        assertThat(folder.resolve("scan.svg"))
                .content()
                .contains("ring", "</svg>")
                .doesNotContain("NaN");
        assertThat(folder.resolve("touch.svg"))
                .content()
                .contains("mug", "</svg>")
                .doesNotContain("NaN");
        assertThat(folder.resolve("sheet.html"))
                .content()
                .contains("Vacuum: only a vessel made for it", "The resin maker", "<ol>", "Fill test")
                .doesNotContain("NaN");
    }

    @Test
    void impossibleScanSaysWhatWouldMakeItPossible() throws IOException {
        change("pads.yaml", "branches: 16", "branches: 1");
        Shell.Ran scan = shell.run("scan", "d");
        assertThat(scan.code()).isEqualTo(Exit.NO.code());
        assertThat(scan.out()).contains("Not possible: 16 chips with 1 address on 1 branch", "eight-channel");
        Shell.Ran touch = shell.run("touch", "d");
        assertThat(touch.code()).isEqualTo(Exit.USAGE.code());
        assertThat(touch.err()).contains("the chips cannot be read");
    }

    @Test
    void faultyLinesAreSaid() throws IOException {
        change("pads.yaml", "capacitance: 150 pF", "capacitance: 400 pF");
        Shell.Ran scan = shell.run("scan", "d");
        assertThat(scan.code()).isEqualTo(Exit.NO.code());
        assertThat(scan.out()).contains("no pull-up fits");
    }

    @Test
    void unknownChipAndMissingFileAreRefused() throws IOException {
        assertThat(shell.run("pad", "d", "--chip", "corse").err()).contains("there are: coarse");
        Files.delete(folder.resolve("d/pads.yaml"));
        Shell.Ran ran = shell.run("pad", "d");
        assertThat(ran.code()).isEqualTo(Exit.USAGE.code());
        assertThat(ran.err()).contains("has no pads.yaml");
    }
}
