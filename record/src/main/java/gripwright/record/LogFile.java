package gripwright.record;

import gripwright.files.Recording;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** The log: its head, then a line for each reading. Never overwrites; goes on with a log that has the same columns. */
final class LogFile implements AutoCloseable {
    private final AppendFile file;
    private final long headLines;
    private final long base;
    private final Optional<Recording.Continued> continued;
    private final String cutTail;
    private long readings;

    private LogFile(AppendFile file, long headLines, long base, Optional<Recording.Continued> continued, String tail) {
        this.file = file;
        this.headLines = headLines;
        this.base = base;
        this.continued = continued;
        this.cutTail = tail;
    }

    /** Refuses early what {@link #open} would refuse whatever the columns. */
    static void check(Path path) throws LogFailure {
        try {
            if (exists(path)) {
                ExistingLog.read(path);
            } else if (Files.isDirectory(path)) {
                throw new LogFailure(path + " is a folder; name a file in it");
            }
        } catch (IOException e) {
            throw new LogFailure("cannot read " + path + ", which is there already: " + e.getMessage(), e);
        }
    }

    private static boolean exists(Path path) throws IOException {
        return Files.isRegularFile(path) && Files.size(path) > 0;
    }

    static LogFile open(Path path, LogFormat.Heading heading, String source, long startedWall, Columns columns)
            throws LogFailure {
        try {
            if (exists(path)) {
                return goOn(path, startedWall, columns);
            }
            if (Files.isRegularFile(path)) {
                Files.delete(path); // empty
            }
            AppendFile file = AppendFile.create(path);
            List<String> head = LogFormat.head(heading, source, startedWall, columns);
            for (String line : head) {
                file.line(line);
            }
            LogFile log = new LogFile(file, head.size(), 0, Optional.empty(), "");
            log.flush();
            return log;
        } catch (IOException e) {
            throw new LogFailure("cannot write " + path + ": " + e.getMessage() + "; choose another place", e);
        }
    }

    private static LogFile goOn(Path path, long wall, Columns columns) throws IOException, LogFailure {
        ExistingLog old = ExistingLog.read(path);
        String names = LogFormat.names(columns);
        if (!old.columns().equals(names)) {
            throw new LogFailure(path + " is there already and has other columns: " + RowReader.clip(old.columns())
                    + "; this source has " + RowReader.clip(names) + "; choose another file");
        }
        // The wall clock alone knows how long the pause was; arrival must not go back even if that clock did.
        long pause = old.readings() == 0 ? 0 : Math.max(0, 1_000 * (wall - old.wall()));
        return new LogFile(
                AppendFile.goOn(path, old.whole()),
                0,
                old.arrival() + pause,
                Optional.of(new Recording.Continued(old.readings(), old.cutBytes())),
                old.tail());
    }

    /** Added to the arrival of this recording [us]. */
    long base() {
        return base;
    }

    Optional<Recording.Continued> continued() {
        return continued;
    }

    /** What stood behind the last whole line of the older log. */
    String cutTail() {
        return cutTail;
    }

    /** @param arrivalMicros since the start of the log, {@link #base} included */
    void reading(long arrivalMicros, long wallMillis, String fields) throws LogFailure {
        StringBuilder line = new StringBuilder(fields.length() + 40);
        LogFormat.seconds(line, arrivalMicros);
        line.append(',').append(wallMillis).append(',').append(fields);
        readings++;
        file.line(line);
    }

    void flush() throws LogFailure {
        file.flush();
    }

    void force() {
        file.force();
    }

    /** Readings of this recording that the system has. */
    long written() {
        return Math.max(0, file.linesWritten() - headLines);
    }

    /** Readings of this recording that the disk has. */
    long safe() {
        return Math.max(0, file.linesForced() - headLines);
    }

    /** Readings that were taken but never written. */
    long unsaved() {
        return readings - written();
    }

    @Override
    public void close() {
        file.close();
    }
}
