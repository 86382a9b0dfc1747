package gripwright.truth;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.stream.Collectors;

/**
 * Writes what each check expected and found into target/truth.csv, begun afresh by each test run, so that a table of
 * agreement can be made from measurements and not from memory.
 */
public final class Truth {
    private static final Path FILE = Path.of("target", "truth.csv");
    private static boolean begun;

    private Truth() {}

    /**
     * Notes one comparison; it asserts nothing.
     *
     * @param family of checks, e.g. "finger statics"
     * @param what is compared, with its unit
     * @param source of the expected number
     * @param tolerance as a number, or in words that begin with one; without a unit it is absolute, with % relative
     * @param why the tolerance
     */
    public static void record(
            String family, String what, String source, double expected, double found, String tolerance, String why) {
        record(family, what, "", source, expected, found, tolerance, why);
    }

    /** The same with the inputs in words, where {@code what} does not say them. */
    public static void record(
            String family,
            String what,
            String inputs,
            String source,
            double expected,
            double found,
            String tolerance,
            String why) {
        add(List.of(family, what, inputs, source, Double.toString(expected), Double.toString(found), tolerance, why));
    }

    private static synchronized void add(List<String> cells) {
        try {
            if (!begun) {
                Files.createDirectories(FILE.getParent());
                Files.writeString(
                        FILE,
                        line(List.of("family", "what", "inputs", "source", "expected", "found", "tolerance", "why")));
                begun = true;
            }
            Files.writeString(FILE, line(cells), StandardCharsets.UTF_8, StandardOpenOption.APPEND);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static String line(List<String> cells) {
        return cells.stream().map(c -> "\"" + c.replace("\"", "\"\"") + "\"").collect(Collectors.joining(",")) + "\n";
    }
}
