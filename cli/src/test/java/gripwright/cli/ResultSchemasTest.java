package gripwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.networknt.schema.InputFormat;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** What commands write, against what docs/schema promises. */
class ResultSchemasTest {
    private static final SchemaRegistry SCHEMAS = SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12);

    @TempDir
    @SuppressWarnings("NullAway.Init")
    Path folder;

    @SuppressWarnings("NullAway.Init")
    private Shell shell;

    @SuppressWarnings("NullAway.Init")
    private JsonNode project;

    @BeforeEach
    void projectInAFolder() throws IOException {
        shell = new Shell(folder);
        shell.run("new", "p");
        shell.run("check", "p", "--json", "check.json");
        project = read("check.json");
    }

    @Test
    void checkKeepsItsSchema() throws IOException {
        assertThat(faults(SchemaCommand.Kind.check, "check.json")).isEmpty();
        Files.writeString(folder.resolve("p/hand.yaml"), "faulty: 1\n");
        shell.run("check", "p", "--json", "faults.json");
        assertThat(faults(SchemaCommand.Kind.check, "faults.json")).isEmpty();
    }

    @Test
    void closeKeepsItsSchemaWithAndWithoutFrames() throws IOException {
        close("--json", "close.json");
        assertThat(faults(SchemaCommand.Kind.close, "close.json")).isEmpty();
        assertThat(read("close.json").has("frames")).isFalse();
        close("--json", "frames.json", "--frames");
        assertThat(faults(SchemaCommand.Kind.close, "frames.json")).isEmpty();
        assertThat(read("frames.json").get("frames").size()).isEqualTo(1);
    }

    @Test
    void holdKeepsItsSchemaHeldAndNotHeld() throws IOException {
        run("hold", "--json", "hold.json");
        assertThat(faults(SchemaCommand.Kind.hold, "hold.json")).isEmpty();
        assertThat(read("hold.json").get("pulls").size()).isEqualTo(6);
        run("hold", "--json", "lost.json", "--offset", "30 mm, 0 mm");
        assertThat(faults(SchemaCommand.Kind.hold, "lost.json")).isEmpty();
        assertThat(read("lost.json").get("tested").asBoolean()).isFalse();
    }

    @Test
    void strengthKeepsItsSchema() throws IOException {
        shell.run("strength", "p", "--grip", "wrap", "--surface", "glass", "--json", "s.json", "--picture", "s.svg");
        assertThat(faults(SchemaCommand.Kind.strength, "s.json")).isEmpty();
        assertThat(read("s.json").get("pipes").size()).isEqualTo(5);
        assertThat(Files.readString(folder.resolve("s.svg")))
                .contains("finger alone", "1-1/2 in")
                .doesNotContain("NaN");
    }

    @Test
    void mapKeepsItsSchemaWholeAndStopped() throws IOException {
        map("whole.json");
        assertThat(faults(SchemaCommand.Kind.map, "whole.json")).isEmpty();
        int[] runs = {0};
        shell.closings.atEachRun = () -> {
            if (++runs[0] == 3) {
                shell.interruption.request();
            }
        };
        map("stopped.json");
        assertThat(faults(SchemaCommand.Kind.map, "stopped.json")).isEmpty();
        assertThat(read("stopped.json").get("runs").size()).isEqualTo(25);
    }

    @Test
    void trialsKeepTheirSchema() throws IOException {
        shell.run("trials", "p", "--runs", "60", "--json", "trials.json");
        assertThat(faults(SchemaCommand.Kind.trials, "trials.json")).isEmpty();
    }

    @Test
    void schemasRefuseWhatCommandsDoNotWrite() throws IOException {
        String text = Files.readString(folder.resolve("check.json"));
        Files.writeString(folder.resolve("wrong.json"), text.replace("\"valid\": true", "\"valid\": \"yes\""));
        Files.writeString(folder.resolve("more.json"), text.replace("\"valid\"", "\"more\": 1, \"valid\""));
        assertThat(faults(SchemaCommand.Kind.check, "wrong.json")).hasSize(1);
        assertThat(faults(SchemaCommand.Kind.check, "more.json")).hasSize(1);
    }

    @Test
    void numbersAreShortAndTheSameInEveryLocale() throws IOException {
        Locale usual = Locale.getDefault();
        try {
            Locale.setDefault(Locale.forLanguageTag("ar-EG"));
            close("--json", "close.json", "--offset", "12.5 mm, -0.3 mm");
        } finally {
            Locale.setDefault(usual);
        }
        assertThat(folder.resolve("close.json"))
                .content()
                .contains("\"x_m\": 0.0125,", "\"y_m\": -3.0E-4,")
                .doesNotContain("NaN", "Infinity", "-0.0,");
    }

    private void close(String... more) {
        run("close", more);
    }

    private void map(String file) {
        run("map", "--cells", "5", "--threads", "1", "--json", file);
    }

    private void run(String command, String... more) {
        JsonNode object = project.get("objects").get(0);
        List<String> args = new java.util.ArrayList<>(List.of(
                command,
                "p",
                "--object",
                object.get("name").asString(),
                "--grip",
                object.get("grips").get(0).asString()));
        args.addAll(List.of(more));
        Shell.Ran ran = shell.run(args.toArray(new String[0]));
        assertThat(ran.err()).isEmpty();
    }

    private JsonNode read(String file) throws IOException {
        return JsonMapper.shared().readTree(Files.readString(folder.resolve(file)));
    }

    private List<String> faults(SchemaCommand.Kind kind, String file) throws IOException {
        return faults(kind, folder.resolve(file));
    }

    /** What the published schema has against a file. */
    static List<String> faults(SchemaCommand.Kind kind, Path file) throws IOException {
        return SCHEMAS
                .getSchema(SchemaCommand.text(kind), InputFormat.JSON)
                .validate(Files.readString(file), InputFormat.JSON)
                .stream()
                .map(Object::toString)
                .toList();
    }
}
