package gripwright.cli;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** Recognises results in a project folder that were made from other inputs than it holds now. */
final class StaleResults {
    private static final Pattern INPUTS = Pattern.compile("\"inputs_sha256\": \"([0-9a-f]{64})\"");
    private static final int HEAD_LINES = 10;

    private StaleResults() {}

    /** Names of the result files in the folder {@code results} that are stale, in order. */
    static List<String> in(OpenProject open) {
        Path results = open.folder().resolve("results");
        if (!Files.isDirectory(results)) {
            return List.of();
        }
        try (Stream<Path> files = Files.list(results)) {
            return files.filter(file -> file.toString().endsWith(".json"))
                    .filter(file -> isStale(file, open.origin().inputs()))
                    .map(file -> String.valueOf(file.getFileName()))
                    .sorted()
                    .toList();
        } catch (IOException e) {
            throw new CommandFailure(
                    Exit.FILES, "cannot read " + open.given().resolve("results") + ": " + ResultFile.reason(e), e);
        }
    }

    private static boolean isStale(Path file, String inputs) {
        try (BufferedReader reader = Files.newBufferedReader(file)) {
            for (int i = 0; i < HEAD_LINES; i++) {
                String line = reader.readLine();
                Matcher found = INPUTS.matcher(line == null ? "" : line);
                if (found.find()) {
                    return !inputs.equals(found.group(1));
                }
            }
            return false; // not one of ours
        } catch (IOException e) {
            return false; // unreadable or not text: not one of ours either
        }
    }
}
