package gripwright.bench;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/** Stands for a recording: a log that is held and appended to as the command does. */
final class FakeRecording implements AutoCloseable {
    final Path file;
    private final FileChannel channel;
    /** Kept: one that nobody refers to any more is forgotten within this program. */
    private final FileLock lock;

    private int rows;

    /** @param columns of the source, after arrival and wall */
    FakeRecording(Path folder, String name, String columns) {
        try {
            Path logs = Files.createDirectories(folder.resolve("logs"));
            file = logs.resolve(name);
            channel = FileChannel.open(file, StandardOpenOption.WRITE, StandardOpenOption.CREATE_NEW);
            lock = channel.lock();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        write("# gripwright log 1\n# project: test\n# hand: test\n# source: serial:/dev/ttyACM0?baud=115200\n"
                + "# started: 2026-11-25T10:00:00.000Z\n# units: arrival s, wall ms, t s, p00 Pa, p01 Pa, F N\n"
                + "arrival,wall," + columns + "\n");
    }

    void write(String text) {
        try {
            channel.write(ByteBuffer.wrap(text.getBytes(StandardCharsets.UTF_8)));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** So many readings, a hundred a second, of a source with seq, t and these fields. */
    void rows(int count, String fields) {
        StringBuilder out = new StringBuilder();
        for (int i = 0; i < count; i++, rows++) {
            out.append(rows / 100.0)
                    .append(',')
                    .append(1_795_600_800_000L + 10L * rows)
                    .append(',');
            out.append(rows)
                    .append(',')
                    .append(rows / 100.0)
                    .append(',')
                    .append(fields)
                    .append('\n');
        }
        write(out.toString());
    }

    /** The source loses so many. */
    void lose(int count) {
        rows += count;
    }

    long size() {
        try {
            return channel.size();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    void truncate(long size) {
        try {
            channel.truncate(size);
            channel.position(size);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Override
    public void close() {
        try {
            lock.close();
            channel.close();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
