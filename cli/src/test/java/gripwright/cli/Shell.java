package gripwright.cli;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.time.LocalDate;

/** Runs commands in this process, in a folder of the test's own. */
final class Shell {
    private final Path folder;
    final FakeClosings closings = new FakeClosings();
    private final Surroundings.Closings used;
    final Interruption interruption = new Interruption();

    /** What a command left behind. */
    record Ran(int code, String out, String err) {}

    /** With a stand-in for the closing. */
    Shell(Path folder) {
        this.folder = folder;
        this.used = closings;
    }

    /** With another closing, such as the real one. */
    Shell(Path folder, Surroundings.Closings used) {
        this.folder = folder;
        this.used = used;
    }

    Ran run(String... args) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        Surroundings at = new Surroundings(
                folder,
                new PrintWriter(out),
                new PrintWriter(err),
                false,
                () -> 0,
                () -> LocalDate.of(2026, 1, 2),
                interruption,
                used);
        int code = Gripwright.commands(at).execute(args);
        interruption.finished();
        return new Ran(code, out.toString(), err.toString());
    }
}
