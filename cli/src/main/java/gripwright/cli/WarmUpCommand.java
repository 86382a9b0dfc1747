package gripwright.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import picocli.CommandLine.Command;

/** Goes once through the short commands, so that the launcher can keep the classes they load. */
@Command(
        name = "warm-up",
        hidden = true,
        description = "Load the classes of the short commands (used by the launcher).")
final class WarmUpCommand implements Callable<Integer> {
    private final Surroundings at;

    WarmUpCommand(Surroundings at) {
        this.at = at;
    }

    @Override
    public Integer call() throws IOException {
        Path folder = Files.createTempDirectory("gripwright-warm-up");
        try {
            Surroundings inside = new Surroundings(
                    folder,
                    new PrintWriter(new StringWriter()),
                    new PrintWriter(new StringWriter()),
                    false,
                    at.clock(),
                    at.today(),
                    new Interruption(),
                    at.closings());
            int code = run(inside, "demo", "--only-files", "--to", "p");
            code += run(inside, "check", "p");
            OpenProject open = OpenProject.read(inside, Path.of("p"));
            String object = open.project().need().objects().get(0).name();
            String grip = open.project().need().objects().get(0).grips().get(0);
            // Its exit code is the answer for this object, which does not matter here.
            run(inside, "close", "p", "--object", object, "--grip", grip, "--json", "c.json", "--picture", "c.svg");
            return code;
        } finally {
            delete(folder);
        }
    }

    private static int run(Surroundings inside, String... args) {
        return Gripwright.commands(inside).execute(args);
    }

    private static void delete(Path folder) throws IOException {
        List<Path> all;
        try (Stream<Path> files = Files.walk(folder)) {
            all = files.sorted(Comparator.reverseOrder()).toList();
        }
        for (Path file : all) {
            Files.delete(file);
        }
    }
}
