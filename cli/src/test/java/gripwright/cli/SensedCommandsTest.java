package gripwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import gripwright.files.ProjectReader;
import gripwright.model.Hand;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Readings and drive policies, on the demo with the real closing. */
class SensedCommandsTest {
    @TempDir
    @SuppressWarnings("NullAway.Init")
    Path folder;

    @SuppressWarnings("NullAway.Init")
    private Shell shell;

    @BeforeEach
    void demo() {
        shell = new Shell(folder, Surroundings.SIMULATION);
        shell.run("demo", "--touch", "--only-files", "--to", "d");
    }

    private void change(String file, String old, String text) throws IOException {
        Path path = folder.resolve("d").resolve(file);
        String whole = Files.readString(path);
        assertThat(whole).contains(old);
        Files.writeString(path, whole.replace(old, text));
    }

    private Shell.Ran close(String... more) {
        return shell.run(java.util.stream.Stream.concat(
                        java.util.stream.Stream.of("close", "d", "--object", "mug", "--grip", "wrap", "--once"),
                        java.util.stream.Stream.of(more))
                .toArray(String[]::new));
    }

    @Test
    void closeWritesEveryReadingOfEveryChip() throws IOException {
        Shell.Ran ran = close("--readings", "r.csv", "--json", "r.json", "--picture", "r.svg");
        assertThat(ran.err()).isEmpty();
        assertThat(ran.out()).contains("30 chips read every", "left tip", "end of range");
        assertThat(ResultSchemasTest.faults(SchemaCommand.Kind.close, folder.resolve("r.json")))
                .isEmpty();
        List<String> lines = Files.readAllLines(folder.resolve("r.csv"));
        assertThat(lines.get(0)).isEqualTo("pad,chip,sampled_s,arrived_s,pressure_Pa,rise_Pa,saturated");
        assertThat(lines.stream().filter(l -> l.startsWith("thumb tip,10,"))).hasSizeGreaterThan(20);
        assertThat(lines).hasSizeGreaterThan(30 * 20);
        assertThat(folder.resolve("r.svg"))
                .content()
                .contains("What the chips read", "alarm", "</svg>")
                .doesNotContain("NaN");
    }

    @Test
    void touchStopsEachMotorAndSaysWhy() {
        assertThat(close("--policy", "touch", "--offset", "15 mm, 0 mm").out())
                .contains("stopped  left motor after", "stopped  right motor after", "stopped  thumb motor after")
                .contains("had felt it at");
    }

    @Test
    void policiesThatAHandCannotFollowAreRefused() throws IOException {
        shell.run("demo", "--only-files", "--to", "one");
        Shell.Ran touch = shell.run("close", "one", "--object", "mug", "--grip", "wrap", "--once", "--policy", "touch");
        assertThat(touch.code()).isEqualTo(Exit.USAGE.code());
        assertThat(touch.err()).contains("one motor for all its fingers", "or use 'centre'");
        assertThat(close("--policy", "gently").err()).contains("gently", "blind, touch, centre");
        assertThat(shell.run("trials", "d", "--policy", "touch", "--against", "touch")
                        .err())
                .contains("name two different ones");
        Files.delete(folder.resolve("d/pads.yaml"));
        assertThat(close("--sensed").err()).contains("has no pads.yaml");
    }

    @Test
    void comparisonIsTheSameOnOneThreadAndOnThree() throws IOException {
        String need = Files.readString(folder.resolve("d/need.yaml"));
        int from = need.indexOf("  oil bottle:");
        int to = need.indexOf("  bare bulb:");
        int end = need.indexOf("  D cell:");
        Files.writeString(
                folder.resolve("d/need.yaml"),
                need.substring(0, need.indexOf("  spray can:"))
                        + need.substring(from, need.indexOf("  screwdriver:"))
                        + need.substring(to, end));
        for (String threads : new String[] {"1", "3"}) {
            Shell.Ran ran = shell.run(
                    "trials",
                    "d",
                    "--policy",
                    "touch",
                    "--against",
                    "blind",
                    "--runs",
                    "7",
                    "--threads",
                    threads,
                    "--json",
                    threads + ".json",
                    "--picture",
                    threads + ".svg");
            assertThat(ran.out()).contains("oil bottle", "bare bulb", "95 % interval, mm");
        }
        assertThat(folder.resolve("3.json")).hasSameTextualContentAs(folder.resolve("1.json"));
        assertThat(folder.resolve("3.svg")).hasSameTextualContentAs(folder.resolve("1.svg"));
        assertThat(ResultSchemasTest.faults(SchemaCommand.Kind.policies, folder.resolve("1.json")))
                .isEmpty();
        assertThat(folder.resolve("1.svg"))
                .content()
                .contains("touch against blind")
                .doesNotContain("NaN");
    }

    @Test
    void blindSideOfAComparisonIsTheTrialsTable() throws IOException {
        Shell.Ran trials = shell.run("trials", "d", "--runs", "5", "--json", "t.json");
        shell.run("trials", "d", "--policy", "centre", "--against", "blind", "--runs", "5", "--json", "p.json");
        assertThat(trials.err()).doesNotContain("gripwright:");
        tools.jackson.databind.JsonNode rows = json("p.json").get("rows");
        tools.jackson.databind.JsonNode pairs = json("t.json").get("pairs");
        assertThat(rows.size()).isEqualTo(pairs.size());
        for (int i = 0; i < rows.size(); i++) {
            if (rows.get(i).get("undecided").asInt() == 0) {
                assertThat(rows.get(i).get("held_with_both").asInt()
                                + rows.get(i).get("held_with_the_other_only").asInt())
                        .isEqualTo(pairs.get(i).get("success").get("held").asInt());
            }
        }
    }

    private tools.jackson.databind.JsonNode json(String file) throws IOException {
        return new tools.jackson.databind.ObjectMapper().readTree(Files.readString(folder.resolve(file)));
    }

    @Test
    void touchingDemoDiffersInDriveAndNameOnly() throws IOException {
        shell.run("demo", "--only-files", "--to", "one");
        Hand one = ProjectReader.read(folder.resolve("one")).hand();
        Hand touching = ProjectReader.read(folder.resolve("d")).hand();
        assertThat(touching.motors()).hasSize(3);
        assertThat(touching.name()).isEqualTo("Bench hand, three fingers, three motors");
        assertThat(touching.fingers()).isEqualTo(one.fingers());
        assertThat(touching.palm()).isEqualTo(one.palm());
        assertThat(touching.grips()).isEqualTo(one.grips());
        assertThat(Files.readString(folder.resolve("d/hand.yaml"))).doesNotContain("one motor");
    }

    @Test
    void shiftedStripMustStayOnItsPad() throws IOException {
        change(
                "pads.yaml",
                "on: left, phalanx: 2, board: 1 mm, chips: 10, pitch: 3 mm, shift: 20 mm",
                "on: left, " + "phalanx: 2, board: 1 mm, chips: 10, pitch: 3 mm, shift: 30 mm");
        Shell.Ran ran = shell.run("check", "d");
        assertThat(ran.out() + ran.err()).contains("pads.yaml", "shifted by 30 mm leaves its pad", "a shift from");
    }
}
