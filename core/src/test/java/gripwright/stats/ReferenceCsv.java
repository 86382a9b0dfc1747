package gripwright.stats;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;

/** Rows of a table under reference/statistics, without comments and the line of names. */
final class ReferenceCsv {
    private ReferenceCsv() {}

    static Stream<List<String>> rows(String name) {
        try (var reader = new BufferedReader(new InputStreamReader(
                Objects.requireNonNull(
                        ReferenceCsv.class.getResourceAsStream("/reference/statistics/" + name), "no table " + name),
                StandardCharsets.UTF_8))) {
            return reader
                    .lines()
                    .filter(line -> !line.startsWith("#"))
                    .skip(1)
                    .map(line -> List.of(line.split(",", -1)))
                    .toList()
                    .stream();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
