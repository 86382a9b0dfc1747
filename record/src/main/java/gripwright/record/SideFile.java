package gripwright.record;

import gripwright.files.LogMarks;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;

/**
 * The lines of a source that are no readings, each with its number and reason: {@code NAME.bad.csv} beside the log. Made
 * when the first such line comes.
 */
final class SideFile implements AutoCloseable {
    private static final String HEAD = LogMarks.SIDE_COLUMNS;
    private static final String HEX = "0123456789abcdef";

    private final Path path;
    private volatile @Nullable AppendFile file;

    SideFile(Path path) {
        this.path = path;
    }

    boolean made() {
        return file != null;
    }

    /**
     * Keeps a line.
     *
     * @param line number in the source, from 1; 0 for the cut end of an older log
     * @param arrivalMicros since the start of the log
     * @param length of the whole line; {@code kept} bytes of it are there
     */
    void line(long line, long arrivalMicros, long length, String reason, byte[] bytes, int kept) throws LogFailure {
        StringBuilder text = new StringBuilder(kept + 80);
        text.append(line).append(',');
        LogFormat.seconds(text, arrivalMicros);
        text.append(',')
                .append(length)
                .append(',')
                .append(LogFormat.quoted(reason))
                .append(",\"");
        for (int i = 0; i < kept; i++) {
            byte b = bytes[i];
            if (b == '"') {
                text.append("\"\"");
            } else if (b == '\\') {
                text.append("\\\\");
            } else if (b >= ' ' && b < 127) {
                text.append((char) b);
            } else {
                text.append("\\x").append(HEX.charAt((b >> 4) & 15)).append(HEX.charAt(b & 15));
            }
        }
        open().line(text.append('"'));
    }

    private AppendFile open() throws LogFailure {
        AppendFile opened = file;
        if (opened == null) {
            try {
                if (Files.isRegularFile(path) && Files.size(path) > 0) {
                    opened = AppendFile.goOn(path, end());
                } else {
                    Files.deleteIfExists(path); // an empty one
                    opened = AppendFile.create(path);
                    opened.line(HEAD);
                }
            } catch (IOException e) {
                throw new LogFailure("cannot write the side file " + path + ": " + e.getMessage(), e);
            }
            file = opened;
        }
        return opened;
    }

    /** End of the last whole line of the side file that an earlier recording left. */
    private long end() throws IOException, LogFailure {
        long read;
        long end;
        boolean ours;
        try (InputStream in = Files.newInputStream(path)) {
            byte[] head = in.readNBytes(HEAD.length() + 1);
            ours = new String(head, StandardCharsets.UTF_8).equals(HEAD + "\n");
            read = head.length;
            end = read;
            byte[] block = new byte[1 << 16];
            int n;
            while ((n = in.read(block)) >= 0) {
                for (int i = 0; i < n; i++) {
                    end = block[i] == '\n' ? read + i + 1 : end;
                }
                read += n;
            }
        }
        if (!ours) {
            throw new LogFailure(path + " is there already and is no side file of a log; move it away");
        }
        return end;
    }

    void flush() throws LogFailure {
        AppendFile opened = file;
        if (opened != null) {
            opened.flush();
        }
    }

    void force() {
        AppendFile opened = file;
        if (opened != null) {
            opened.force();
        }
    }

    @Override
    public void close() {
        AppendFile opened = file;
        if (opened != null) {
            opened.close();
        }
    }
}
