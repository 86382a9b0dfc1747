package gripwright.files;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;

/** Follows the side file of a log: how many lines were malformed, and why the last one was. */
public final class SideFollower implements AutoCloseable {
    private static final int LONGEST = 1_000; // number, time, length and reason stand in front of the line itself
    private static final int FIELDS = 5;

    private final Path path;
    private @Nullable GrowingFile file;
    private long lines;
    private long malformed;
    private String last = "";

    public SideFollower(Path log) {
        this.path = LogMarks.sideFile(log);
    }

    /** Reads on, at most so many bytes; true if there was something new. A side file may come later, or never. */
    public boolean look(long most) throws IOException {
        GrowingFile opened = file;
        if (opened == null) {
            if (!Files.isRegularFile(path, LinkOption.NOFOLLOW_LINKS)) {
                return false;
            }
            opened = GrowingFile.open(path, LONGEST);
            file = opened;
        }
        GrowingFile.Found found = opened.look(most, this::line);
        if (found == GrowingFile.Found.ANOTHER || found == GrowingFile.Found.GONE) {
            close();
            file = null;
            lines = 0;
            malformed = 0;
            last = "";
        }
        return found != GrowingFile.Found.NOTHING;
    }

    private void line(byte[] bytes, int kept, long length, boolean ended) {
        lines++;
        if (lines == 1) {
            return; // its names
        }
        // Every character of a side file is ASCII but for the reason, which may quote the source.
        String[] cells = fields(new String(bytes, 0, kept, StandardCharsets.UTF_8));
        if (cells.length < FIELDS - 1) {
            return;
        }
        String reason = cells[3];
        if (!reason.equals(LogMarks.COMMENT) && !reason.equals(LogMarks.NAMES_AGAIN)) {
            malformed++;
            last = "line " + Words.clip(cells[0]) + ": " + reason;
        }
    }

    /** The first four fields; the reason may be quoted. */
    private static String[] fields(String line) {
        String[] cells = line.split(",", FIELDS - 1);
        if (cells.length == FIELDS - 1) {
            String rest = cells[3];
            if (rest.startsWith("\"")) {
                int end = 1;
                while (end < rest.length()
                        && (rest.charAt(end) != '"' || end + 1 < rest.length() && rest.charAt(end + 1) == '"')) {
                    end += rest.charAt(end) == '"' ? 2 : 1;
                }
                cells[3] = rest.substring(1, Math.min(end, rest.length())).replace("\"\"", "\"");
            } else {
                int comma = rest.indexOf(',');
                cells[3] = comma < 0 ? rest : rest.substring(0, comma);
            }
        }
        return cells;
    }

    /** Malformed lines of the source. */
    public long malformed() {
        return malformed;
    }

    /** Why the last of them was none; empty if there was none. */
    public String last() {
        return last;
    }

    @Override
    public void close() {
        GrowingFile opened = file;
        if (opened != null) {
            opened.close();
        }
    }
}
