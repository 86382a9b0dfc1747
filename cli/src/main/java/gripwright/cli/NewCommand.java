package gripwright.cli;

import gripwright.files.StartingProject;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** Makes a project to start from. */
@Command(
        name = "new",
        description = "Make a project folder to start from: a small hand, a need, and a comment on every line.",
        footer = {"", "Example:", "  gripwright new bench"})
final class NewCommand implements Callable<Integer> {
    @Parameters(paramLabel = "DIR", description = "The folder to make; it must not hold a project yet.")
    private Path dir = Path.of("");

    private final Surroundings at;

    NewCommand(Surroundings at) {
        this.at = at;
    }

    @Override
    public Integer call() {
        Path folder = at.path(dir);
        for (String name : new String[] {"hand.yaml", "need.yaml"}) {
            if (Files.exists(folder.resolve(name))) {
                throw new CommandFailure(
                        Exit.FILES, dir + " holds a " + name + " already; nothing was written. Choose another folder");
            }
        }
        try {
            StartingProject.write(folder);
        } catch (IOException e) {
            throw new CommandFailure(Exit.FILES, "cannot write the project to " + dir + ": " + ResultFile.reason(e), e);
        }
        at.out().println(dir + " holds a project to start from: hand.yaml and need.yaml. Next:");
        at.out().println("  gripwright check " + dir);
        return Exit.YES.code();
    }
}
