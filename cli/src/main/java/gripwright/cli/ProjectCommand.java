package gripwright.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** What all commands on a project folder have in common. */
abstract class ProjectCommand implements Callable<Integer> {
    @Parameters(paramLabel = "DIR", description = "The project folder.")
    private Path dir = Path.of("");

    @Spec
    @SuppressWarnings("NullAway.Init") // set by picocli before the call
    private CommandSpec spec;

    final Surroundings at;

    @Mixin
    final ResultOptions results;

    ProjectCommand(Surroundings at) {
        this.at = at;
        this.results = new ResultOptions(at);
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

    /** The command as the user typed it. */
    final String typed() {
        return "gripwright "
                + String.join(" ", spec.root().commandLine().getParseResult().originalArgs());
    }
}
