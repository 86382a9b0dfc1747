package gripwright.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** Prints the schema of a project file or of a result. */
@Command(
        name = "schema",
        description = "Print the JSON Schema of a project file (hand, need, pads) or of a result (the others).",
        footer = {
            "",
            "Editors complete keys and show their meaning with the schemas of the project files.",
            "",
            "Example:",
            "  gripwright schema hand > hand.schema.json"
        })
final class SchemaCommand implements Callable<Integer> {
    /** What there is a schema of. */
    enum Kind {
        hand,
        need,
        pads,
        check,
        close,
        hold,
        strength,
        map,
        trials,
        policies,
        vary,
        plan,
        score,
        pad,
        scan,
        touch,
        calibrate,
        decode,
        record
    }

    @Parameters(paramLabel = "KIND", description = "One of: ${COMPLETION-CANDIDATES}.")
    private Kind kind = Kind.hand;

    private final Surroundings at;

    SchemaCommand(Surroundings at) {
        this.at = at;
    }

    @Override
    public Integer call() {
        at.out().print(text(kind));
        return Exit.YES.code();
    }

    static String text(Kind kind) {
        String name = "schema/" + kind + ".schema.json";
        try (InputStream schema = SchemaCommand.class.getResourceAsStream(name)) {
            if (schema == null) {
                throw new IllegalStateException("the build left out " + name);
            }
            return new String(schema.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
