package gripwright.bench;

import gripwright.closing.ClosingSummary;
import gripwright.files.KeptRunFile;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Map;

/**
 * Every finished run is written down at once, in the project's {@code results} and as the command line does, so that
 * whoever kills the server loses the runs under way only.
 */
final class Journal {
    private static final long LARGEST = 40_000_000;

    private final Path file;
    private final String version;
    private String head = "";
    private String trouble = "";

    Journal(Path folder, String version) {
        this.file = folder.resolve(KeptRunFile.FOLDER).resolve(KeptRunFile.NAME);
        this.version = version;
    }

    /** Runs written down for the project as it is in this revision. */
    synchronized Map<String, ClosingSummary> read(String revision) {
        return KeptRunFile.read(file, KeptRunFile.head(version, revision));
    }

    /** Why nothing is written down; empty if it is. */
    synchronized String trouble() {
        return trouble;
    }

    /** Adds a run; those of an earlier revision are dropped by the first of a new one. */
    synchronized void add(String revision, String key, ClosingSummary run) {
        if (!trouble.isEmpty()) {
            return;
        }
        try {
            String wanted = KeptRunFile.head(version, revision);
            if (!wanted.equals(head) || !Files.exists(file)) {
                begin(wanted);
                head = wanted;
            }
            if (Files.size(file) < LARGEST) {
                Files.writeString(file, KeptRunFile.line(key, run) + "\n", StandardOpenOption.APPEND);
            }
        } catch (IOException e) {
            trouble = "finished runs cannot be kept in " + KeptRunFile.FOLDER + "/" + KeptRunFile.NAME + " ("
                    + e.getClass().getSimpleName() + "); they last as long as the server runs";
        }
    }

    private void begin(String wanted) throws IOException {
        Path folder = file.resolveSibling("");
        if (Files.isSymbolicLink(folder) || Files.isSymbolicLink(file)) {
            throw new IOException("a link");
        }
        Files.createDirectories(folder);
        boolean same = !KeptRunFile.read(file, wanted).isEmpty();
        if (!same) {
            Files.writeString(file, wanted + "\n");
            return;
        }
        byte[] content = Files.readAllBytes(file);
        if (content[content.length - 1] != '\n') { // the last line was cut off when the program was killed
            Files.write(file, "\n".getBytes(StandardCharsets.UTF_8), StandardOpenOption.APPEND);
        }
    }
}
