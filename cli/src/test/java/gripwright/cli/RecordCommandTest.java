package gripwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The command record, from files. */
class RecordCommandTest {
    private static final String READINGS = """

            readings:
              time: {column: t_us, unit: us}
              sequence: seq
              unit: kPa
              taxels:
                left strip: [a0, a1, a2, a3, a4, a5, a6, a7]
                thumb strip: [b0, b1, b2, b3, b4, b5, b6, b7]
              temperature: temp
              force: F
            """;

    @TempDir
    @SuppressWarnings("NullAway.Init")
    Path folder;

    @SuppressWarnings("NullAway.Init")
    private Shell shell;

    @BeforeEach
    void demo() throws IOException {
        shell = new Shell(folder);
        shell.run("demo", "--only-files", "--to", "d");
        // These columns in the place of the demo's own.
        Path pads = folder.resolve("d/pads.yaml");
        String text = Files.readString(pads);
        int own = text.indexOf("\nreadings:");
        Files.writeString(pads, (own < 0 ? text : text.substring(0, own + 1)) + READINGS);
    }

    private String cells(double value) {
        return ("," + value).repeat(16);
    }

    private void source(String... lines) throws IOException {
        Files.writeString(folder.resolve("sent.csv"), String.join("\n", lines) + "\n");
    }

    private Shell.Ran record(String... more) {
        return shell.run(Stream.concat(Stream.of("record", "d", "--from", "file:sent.csv?pace=max"), Stream.of(more))
                .toArray(String[]::new));
    }

    @Test
    void readingsInTheOrderOfPadsYamlBecomeALog() throws IOException {
        source("0,0" + cells(101.3) + ",23.1,0.5", "5000,1" + cells(101.4) + ",23.1,0.5");
        Shell.Ran ran = record("--to", "a.csv", "--json", "a.json", "--picture", "a.svg");
        assertThat(ran.err()).isEmpty();
        assertThat(ran.code()).isZero();
        assertThat(ran.out())
                .contains("log      a.csv: 2 readings", "all on the disk", "lost     no reading missing")
                .contains("source   file:sent.csv?pace=max: the source has ended");
        assertThat(folder.resolve("a.csv"))
                .content()
                .contains("# pads: left strip, thumb strip\n", "t_us us, a0 kPa", "temp degC, F N\n")
                .contains("arrival,wall,t_us,seq,a0,a1,");
        assertThat(ResultSchemasTest.faults(SchemaCommand.Kind.record, folder.resolve("a.json")))
                .isEmpty();
        assertThat(folder.resolve("a.svg")).content().contains("thumb strip b7").endsWith("</svg>\n");
    }

    @Test
    void theLogLiesInTheProjectUnlessSaidOtherwise() throws IOException {
        source("0,0" + cells(101.3) + ",23.1,0.5");
        shell.run("check", "d", "--json", "before.json");
        assertThat(record().out())
                .containsPattern("log      d/logs/[0-9]{4}-[0-9]{2}-[0-9]{2}-[0-9]{6}\\.csv: 1 reading");
        assertThat(record().code()).isZero();
        try (Stream<Path> logs = Files.list(folder.resolve("d/logs"))) {
            assertThat(logs.filter(p -> p.toString().endsWith(".csv"))).hasSize(2);
        }
        shell.run("check", "d", "--json", "after.json");
        assertThat(folder.resolve("after.json")).hasSameTextualContentAs(folder.resolve("before.json"));
    }

    @Test
    void whatIsLostShowsInWordsAndExitCode() throws IOException {
        source("0,0" + cells(101.3) + ",23.1,0.5", "5000,4" + cells(115) + ",23.1,x");
        Shell.Ran ran = record("--to", "a.csv");
        assertThat(ran.code()).isEqualTo(Exit.NO.code());
        assertThat(ran.out()).contains("aside    1 malformed line in a.bad.csv");
        source("0,0" + cells(101.3) + ",23.1,0.5", "5000,4" + cells(115) + ",23.1,0.5");
        ran = record("--to", "b.csv");
        assertThat(ran.code()).isEqualTo(Exit.NO.code());
        assertThat(ran.out())
                .contains("lost     3 readings missing in 1 gap")
                .contains("warning  a0, a1, a2, a3, a4, a5, a6, a7 and 8 more reached an end of the chip's range");
    }

    @Test
    void aColumnThatIsNotSentIsNamed() throws IOException {
        source("t_us,seq" + names() + ",temp", "0,0" + cells(101.3) + ",23.1");
        assertThat(record("--to", "a.csv").out()).contains("warning  F is named in pads.yaml and not sent");
        source("t_us,seq,temp,F", "0,0,23.1,0.5");
        Shell.Ran ran = record("--to", "b.csv");
        assertThat(ran.err())
                .contains("gripwright: the source names the columns t_us, seq, temp, F; pads.yaml wants a0, a1, a2,")
                .contains("and 4 more too");
        assertThat(ran.code()).isEqualTo(Exit.FILES.code());
        assertThat(folder.resolve("b.csv")).doesNotExist();
    }

    private static String names() {
        StringBuilder names = new StringBuilder();
        for (String pad : List.of("a", "b")) {
            for (int i = 0; i < 8; i++) {
                names.append(',').append(pad).append(i);
            }
        }
        return names.toString();
    }

    @Test
    void whatCannotBeAskedIsRefused() throws IOException {
        assertThat(shell.run("record", "d", "--from", "usb:1").err())
                .contains("'usb:1' is no source; expected serial:");
        assertThat(shell.run("record", "d").err()).contains("--from");
        source("1");
        assertThat(record("--lines", "0").err()).contains("--lines is 0; expected a whole number of 1 or more");
        assertThat(record("--for", "5").err()).contains("expected a time");
        assertThat(record("--for", "0 s").err()).contains("expected a duration, such as 10 min");
        Files.writeString(folder.resolve("notes.csv"), "mine\n");
        Shell.Ran ran = record("--to", "notes.csv");
        assertThat(ran.err()).contains("notes.csv is there already and is no log of this program");
        assertThat(ran.code()).isEqualTo(Exit.FILES.code());
        assertThat(folder.resolve("notes.csv")).hasContent("mine\n");
    }

    @Test
    void theViewOnATerminalFitsAndNamesWhatIsWrong() throws IOException {
        source(
                "0,0" + cells(101.3) + ",23.1,0.5",
                "400000,4" + cells(115) + ",23.1,0.5",
                "1200000,5" + cells(114) + ",23.1,0.5"); // so late that the screen shows the second one before
        java.io.StringWriter screen = new java.io.StringWriter();
        Surroundings at = new Surroundings(
                folder,
                new java.io.PrintWriter(new java.io.StringWriter()),
                new java.io.PrintWriter(screen),
                true,
                () -> 0,
                () -> java.time.LocalDate.of(2026, 1, 2),
                new Interruption(),
                new FakeClosings());
        Gripwright.commands(at).execute("record", "d", "--from", "file:sent.csv", "--for", "5 s");
        at.interruption().finished();
        assertThat(screen.toString())
                .contains("recording file:sent.csv -> ", "lost      3 readings missing in 1 gap; 0 malformed")
                .contains("last      t_us 400000   seq 4   temp 23.1   F 0.5")
                .contains("taxels    ████████\n          ████████\n")
                .endsWith("\u001b[J");
        assertThat(screen.toString().lines()).allMatch(line -> line.length() < 120);
    }
}
