package gripwright.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** What all commands on a project folder have in common. */
abstract class ProjectCommand implements Callable<Integer> {
    @Parameters(paramLabel = "DIR", description = "The project folder.")
    private Path dir = Path.of("");

    @Option(
            names = "--json",
            paramLabel = "FILE",
            description = "Also write the result as JSON; 'gripwright schema' prints what it holds.")
    private @Nullable Path json;

    @Option(
            names = "--picture",
            paramLabel = "FILE.svg",
            description = "Also draw the result: the hand (check), a film strip (close), the map (map), the table of "
                    + "objects and grips (trials, report).")
    private @Nullable Path picture;

    @Spec
    @SuppressWarnings("NullAway.Init") // set by picocli before the call
    private CommandSpec spec;

    final Surroundings at;

    ProjectCommand(Surroundings at) {
        this.at = at;
    }

    @Override
    public Integer call() {
        return run().code();
    }

    abstract Exit run();

    final Path dir() {
        return dir;
    }

    final OpenProject open() {
        return OpenProject.read(at, dir);
    }

    final void writeJson(Supplier<String> text) {
        if (json != null) {
            write("json", json, text);
        }
    }

    final boolean pictureWanted() {
        return picture != null;
    }

    final void writePicture(Supplier<String> svg) {
        if (picture != null) {
            write("picture", picture, svg);
        }
    }

    /** The command as the user typed it. */
    final String typed() {
        return "gripwright "
                + String.join(" ", spec.root().commandLine().getParseResult().originalArgs());
    }

    /** Writes a result and says where it is. */
    private void write(String what, Path file, Supplier<String> text) {
        ResultFile.write(at.path(file), text.get());
        at.out().println(what + " ".repeat(Math.max(1, 9 - what.length())) + "written to " + file);
    }
}
