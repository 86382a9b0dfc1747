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

        Shell.Ran decoded =
                shell.run("decode", "d", "--log", LOG, "--to", "f.csv", "--json", "f.json", "--picture", "f.svg");
        assertThat(folder.resolve("f.svg"))
                .content()
                .contains("left strip: total force, N", "slip suspected", "</svg>")
                .doesNotContain("NaN");
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
        Files.writeString(log, text.toString().replace("%", ""));
        assertThat(shell.run("calibrate", "d", "--log", "flat.csv").err())
                .contains(
                        "flat.csv: the reference holds no number beside the readings; expected the load cell's force in N");
    }

    private void pads(String from, String to) throws IOException {
        Path pads = folder.resolve("d/pads.yaml");
        String text = Files.readString(pads);
        assertThat(text).contains(from);
        Files.writeString(pads, text.replace(from, to));
    }

    @Test
    void onePadIsCalibratedAndTheOtherStays() throws IOException {
        pads("  unit: Pa", "    thumb strip: [q00, q01, q02, q03, q04, q05, q06, q07]\n  unit: Pa");
        assertThat(shell.run("calibrate", "d", "--log", LOG, "--pad", "thumb").err())
                .contains(
                        "--pad is 'thumb'; expected a pad with columns in pads.yaml (readings: taxels): left strip, thumb strip");
        assertThat(shell.run("calibrate", "d", "--log", LOG).err()).contains("no column 'q00'");
        Shell.Ran ran = shell.run("calibrate", "d", "--log", LOG, "--pad", "left strip");
        assertThat(ran.err()).isEmpty();
        Path file = folder.resolve("d/calibration.yaml");
        String first = Files.readString(file);
        assertThat(first).contains("\"q07\":\n    pad: \"thumb strip\"\n    not fitted: \"not calibrated yet\"");
        String model = """
                    pad: "thumb strip"
                    log: "older.csv"
                    zero: 101000
                    sensitivity: 1500
                    quadratic: -18
                    creep: 0
                    creep time: 1
                    play: 0.04
                    noise: 150
                    sensitivity error: 0.01
                    fitted to: 5
                """;
        Files.writeString(
                file, first.replaceFirst("    pad: \"thumb strip\"\n    not fitted: \"not calibrated yet\"\n", model));
        assertThat(shell.run("calibrate", "d", "--log", LOG, "--pad", "left strip")
                        .err())
                .isEmpty();
        assertThat(Files.readString(file))
                .contains("\"q00\":\n" + model)
                .contains("\"p07\":\n    pad: \"left strip\"\n    zero:")
                .containsPattern("slopes:\n  \"p00\": \\[.*\\d, (\"-\", ){7}\"-\"\\]");
        pads("unit: Pa", "unit: counts");
        assertThat(shell.run("calibrate", "d", "--log", LOG, "--pad", "left strip")
                        .code())
                .isNotEqualTo(Exit.YES.code());
    }

    @Test
    void anOwnClockThatIsNoneIsRefused() {
        assertThat(shell.run("calibrate", "d", "--log", LOG, "--reference-clock", "tF")
                        .err())
                .contains("there is no column 'tF' (the reference's own clock)");
        assertThat(shell.run("calibrate", "d", "--log", LOG, "--reference-clock", "pressed")
                        .err())
                .contains("the reference's own clock pressed stays at 0 s while the force goes from ")
                .contains("expected: stamps that rise, or stay with the same force");
        assertThat(shell.run("calibrate", "d", "--log", LOG, "--reference-clock", "temp")
                        .err())
                .contains("the log's head says that temp is in degC")
                .contains("expected: a time such as 2 s");
    }

    /** What is wrong with a log is said by decode as by calibrate, with its line. */
    @Test
    void badLogsAreRefusedByDecodeToo() throws IOException {
        StringBuilder calibration = new StringBuilder("version: 1\nlog: a\nunit: Pa\npressed by: plate\ntaxels:\n");
        for (int i = 0; i < 8; i++) {
            calibration.append("  p0" + i + ":\n    pad: left strip\n    not fitted: dead\n");
        }
        Files.writeString(folder.resolve("d/calibration.yaml"), calibration);
        String head = "t,p00,p01,p02,p03,p04,p05,p06,p07,temp,F,ambient,pressed,seq\n";
        StringBuilder rows = new StringBuilder();
        for (int i = 0; i < 400; i++) {
            rows.append(i * 0.01).append(",1,1,1,1,1,1,1,1,24,0,100900,0,0\n");
        }
        assertThat(decode(head.replace("p03", "q03") + rows).err())
                .contains("bad.csv:1: there is no column 'p03' (a taxel of left strip in pads.yaml); did you mean");
        assertThat(decode(head + rows + head + rows).err()).contains("bad.csv:402: a second line of column names");
        assertThat(decode("# units: p00 Pa, p01 kPa\n" + head + rows).err())
                .contains("mixed units: p00 is in Pa and p01 in kPa")
                .contains("expected: all taxels in one unit");
        assertThat(decode(head + rows + "9,NaN,1,1,1,1,1,1,1,24,0,100900,0,0\n").out())
                .contains("1 cell of p00 are NaN; taken as missing");
        assertThat(decode(head + rows + "9,1e300,1,1,1,1,1,1,1,24,0,100900,0,0\n")
                        .out())
                .contains("line 402: p00 is 1e300, which nothing on a bench reads");
        assertThat(decode(head + rows + "9,1,1,1").out())
                .contains("line 402 was cut off: it has no line end and was not read");
        assertThat(decode(head + "\u00e4,1\n" + rows).out()).contains("line 2: 2 cells instead of 14");
        Files.write(
                folder.resolve("bad.csv"),
                (head + "\u00e4,1\n" + rows).getBytes(java.nio.charset.StandardCharsets.ISO_8859_1));
        assertThat(shell.run("decode", "d", "--log", "bad.csv").err())
                .contains("bad.csv:2: the line is not valid UTF-8")
                .contains("expected: a log saved as UTF-8");
        assertThat(decode(head + "9".repeat(70_000)).err()).contains("bad.csv:2: the line is longer than 65536 bytes");
        assertThat(decode("").err()).contains("the log holds no line of column names");
    }

    private Shell.Ran decode(String log) throws IOException {
        Files.writeString(folder.resolve("bad.csv"), log);
        Shell.Ran ran = shell.run("decode", "d", "--log", "bad.csv");
        return new Shell.Ran(ran.code(), ran.out().replaceAll("\\s+", " "), ran.err()); // long lines are wrapped
    }
}
