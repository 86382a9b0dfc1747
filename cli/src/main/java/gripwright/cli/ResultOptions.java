package gripwright.cli;

import java.nio.file.Path;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** Files that a result can be written to beside what is printed. */
final class ResultOptions {
    @Option(
            names = "--json",
            paramLabel = "FILE",
            description = "Also write the result as JSON; 'gripwright schema' prints what it holds.")
    private @Nullable Path json;

    @Option(
            names = "--picture",
            paramLabel = "FILE.svg",
            description = "Also draw the result; docs/look.md says how to read a drawing.")
    private @Nullable Path picture;

    private final Surroundings at;

    ResultOptions(Surroundings at) {
        this.at = at;
    }

    boolean pictureWanted() {
        return picture != null;
    }

    void json(Supplier<String> text) {
        if (json != null) {
            write("json", json, text);
        }
    }

    void picture(Supplier<String> svg) {
        if (picture != null) {
            write("picture", picture, svg);
        }
    }

    private void write(String what, Path file, Supplier<String> text) {
        ResultFile.write(at.path(file), text.get());
        at.out().println(what + " ".repeat(9 - what.length()) + "written to " + file);
    }
}
