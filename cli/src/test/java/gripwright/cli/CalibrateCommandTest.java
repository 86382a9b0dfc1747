package gripwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** calibrate and decode, on the demo's invented log. */
class CalibrateCommandTest {
    private static final String LOG = "d/logs/invented-calibration.csv.gz";

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

    @Test
    void theDemoNamesItsTrappedAirAndDecodesItsOwnLog() throws IOException {
        Shell.Ran ran = shell.run("calibrate", "d", "--log", LOG, "--json", "c.json", "--picture", "c.svg");
        assertThat(ran.err()).isEmpty();
        assertThat(ran.code()).isEqualTo(Exit.NO.code());
        assertThat(ran.out())
                .contains("Recast: p05 of left strip reads", "air trapped in the chip", "Mind: p02", "pre-load")
                .contains("Not known from this log: saturation")
                .contains("hysteresis: largest difference of unloading and loading");
        assertThat(ResultSchemasTest.faults(SchemaCommand.Kind.calibrate, folder.resolve("c.json")))
                .isEmpty();
        assertThat(folder.resolve("d/results/calibration.html"))
                .content()
                .contains("Allan deviation", "recast. It reads", "What the figures mean")
                .doesNotContain("NaN");
        assertThat(folder.resolve("c.svg"))
                .content()
                .contains("recast", "</svg>")
                .doesNotContain("NaN");

        Shell.Ran decoded = shell.run("decode", "d", "--log", LOG, "--to", "f.csv", "--json", "f.json");
        assertThat(decoded.err()).isEmpty();
        assertThat(decoded.code()).isEqualTo(Exit.YES.code());
        assertThat(decoded.out()).contains("cross-talk taken apart", "touch", "release");
        assertThat(ResultSchemasTest.faults(SchemaCommand.Kind.decode, folder.resolve("f.json")))
                .isEmpty();
        List<String> rows = Files.readAllLines(folder.resolve("f.csv"));
        assertThat(rows.get(0))
                .startsWith("t_s,p00_N,p00_sd_N,")
                .endsWith("left strip_touched,left strip_slip,left strip_clipped");
        assertThat(rows).hasSizeGreaterThan(13_000).allMatch(r -> !r.contains("NaN"));
    }

    @Test
    void whatIsMissingIsSaid() throws IOException {
        assertThat(shell.run("calibrate", "d", "--log", "none.csv").err())
                .contains("cannot read none.csv: no such file");
        assertThat(shell.run("calibrate", "d", "--log", LOG, "--reference", "Force")
                        .err())
                .contains("there is no column 'Force' (the reference)");
        assertThat(shell.run("decode", "d", "--log", LOG).err()).contains("there is no file calibration.yaml");
        assertThat(shell.run("decode", "d", "--log", LOG, "--to", "f.parquet").err())
                .contains("with-tables");
        Path pads = folder.resolve("d/pads.yaml");
        String text = Files.readString(pads);
        Files.writeString(pads, text.replaceAll("  force: F.*", ""));
        assertThat(shell.run("calibrate", "d", "--log", LOG).err())
                .contains("no reference: name the load cell's column");
        Files.writeString(pads, text.replaceAll("(?s)readings:.*", ""));
        assertThat(shell.run("calibrate", "d", "--log", LOG).err()).contains("add a block `readings`");
    }

    @Test
    void forcesThatSayNothingAreRefused() throws IOException {
        Path log = folder.resolve("flat.csv");
        StringBuilder text = new StringBuilder("t,p00,p01,p02,p03,p04,p05,p06,p07,temp,F,ambient,pressed,seq\n");
        for (int i = 0; i < 600; i++) {
            text.append(i * 0.01).append(",1,1,1,1,1,1,1,1,24,%,100900,0,0\n");
        }
        Files.writeString(log, text.toString().replace("%", "0"));
        assertThat(shell.run("calibrate", "d", "--log", "flat.csv").err())
                .contains("flat.csv: the reference force lies between 0 N and 0 N");
        Files.writeString(log, text.toString().replace("%", "-3"));
        assertThat(shell.run("calibrate", "d", "--log", "flat.csv").err()).contains("change the load cell's sign");
        Files.writeString(log, text.substring(0, 900).replaceAll("[^\n]*$", "").replace("%", "1"));
        assertThat(shell.run("calibrate", "d", "--log", "flat.csv").err()).contains("needs at least 500");
    }
}
