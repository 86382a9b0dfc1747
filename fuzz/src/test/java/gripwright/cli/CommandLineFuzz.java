package gripwright.cli;

import com.code_intelligence.jazzer.junit.FuzzTest;
import gripwright.fuzz.Limit;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;

/**
 * Any words after the command end in an exit code of {@link Exit} and never in a stack trace. Words are lines of the
 * input. Closings are refused at once, so that only reading and checking of words is tested; words that lead out of the
 * test's own folder are left out.
 */
class CommandLineFuzz {
    @FuzzTest
    void anyWordsEndInAnExitCode(byte[] bytes) {
        Limit.hold(() -> run(bytes));
    }

    private static void run(byte[] bytes) throws IOException {
        String[] words = new String(bytes, StandardCharsets.UTF_8)
                .lines()
                .filter(word -> !word.contains("/") && !word.contains("..") && !word.contains("\\"))
                .filter(word -> !word.startsWith("@") && word.indexOf('\0') < 0)
                .limit(12)
                .toArray(String[]::new);
        Path folder = Files.createTempDirectory("gripwright-fuzz");
        try {
            StringWriter err = new StringWriter();
            Surroundings at = new Surroundings(
                    folder,
                    new PrintWriter(new StringWriter()),
                    new PrintWriter(err),
                    false,
                    () -> 0,
                    () -> LocalDate.of(2026, 1, 2),
                    new Interruption(),
                    (project, numerics) -> (object, grip) -> {
                        throw new RefusedClosing(new IllegalArgumentException("no closings in this test"));
                    });
            int code = Gripwright.commands(at).execute(words);
            if (code == Exit.DEFECT.code() || Stream.of(Exit.values()).noneMatch(exit -> exit.code() == code)) {
                throw new AssertionError("exit code " + code + " after " + List.of(words) + ":\n" + err);
            }
            if (err.toString().contains("\tat ")) {
                throw new AssertionError("a stack trace after " + List.of(words) + ":\n" + err);
            }
        } finally {
            try (Stream<Path> files = Files.walk(folder)) {
                files.sorted(Comparator.reverseOrder()).forEach(CommandLineFuzz::delete);
            }
        }
    }

    private static void delete(Path file) {
        try {
            Files.delete(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
