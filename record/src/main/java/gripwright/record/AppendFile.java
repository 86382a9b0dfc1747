package gripwright.record;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.ClosedChannelException;
import java.nio.channels.FileChannel;
import java.nio.channels.OverlappingFileLockException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.OpenOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Set;
import java.util.concurrent.locks.LockSupport;
import org.jspecify.annotations.Nullable;

/**
 * A file that grows by whole lines. What {@link #flush} has handed to the system survives the death of this program,
 * what {@link #force} has handed to the disk survives that of the machine. If the disk is full the file is cut back to
 * its last whole line.
 */
final class AppendFile implements AutoCloseable {
    private static final int BUFFER = 1 << 18;
    private static final int LOCK_TRIES = 4;
    private static final long LOCK_WAIT_NANOS = 10_000_000;

    private final Path path;
    private final FileChannel channel;
    private final boolean regular;
    private final ByteBuffer buffer = ByteBuffer.allocateDirect(BUFFER);
    private long lines;
    private boolean broken;
    private volatile long linesWritten;
    private volatile long linesForced;
    private volatile @Nullable IOException forceFailure;

    private AppendFile(Path path, FileChannel channel, boolean regular) {
        this.path = path;
        this.channel = channel;
        this.regular = regular;
    }

    /** A file that is not there yet, or a device or pipe. */
    static AppendFile create(Path path) throws IOException {
        boolean special = Files.exists(path) && !Files.isRegularFile(path);
        Path parent = path.toAbsolutePath().getParent();
        if (parent != null) {
            Files.createDirectories(parent);
        }
        Set<OpenOption> how = special
                ? Set.of(StandardOpenOption.WRITE)
                : Set.of(StandardOpenOption.WRITE, StandardOpenOption.CREATE_NEW);
        FileChannel channel = FileChannel.open(path, how);
        if (!special) {
            lock(channel);
        }
        return new AppendFile(path, channel, !special);
    }

    /** Goes on with a file whose last whole line ends at {@code end}; what stands behind it is cut off. */
    static AppendFile goOn(Path path, long end) throws IOException, LogFailure {
        FileChannel channel = FileChannel.open(path, StandardOpenOption.WRITE);
        AppendFile file = new AppendFile(path, channel, true);
        if (!lock(channel)) {
            channel.close();
            throw new LogFailure(path + " is being written by another program; choose another file");
        }
        channel.truncate(end);
        channel.position(end);
        return file;
    }

    /** False if another program holds the file; a file system without locks holds nothing. */
    private static boolean lock(FileChannel channel) {
        for (int i = 0; i < LOCK_TRIES; i++) {
            if (tryLock(channel)) {
                return true;
            }
            // Who looks whether a log is being written holds it for an instant.
            LockSupport.parkNanos(LOCK_WAIT_NANOS);
        }
        return tryLock(channel);
    }

    private static boolean tryLock(FileChannel channel) {
        try {
            return channel.tryLock() != null;
        } catch (OverlappingFileLockException e) {
            return false;
        } catch (IOException e) {
            return true;
        }
    }

    /** Lines that were handed to the system. */
    long linesWritten() {
        return linesWritten;
    }

    /** Lines that are on the disk itself. */
    long linesForced() {
        return linesForced;
    }

    /** Adds one line. */
    void line(CharSequence text) throws LogFailure {
        byte[] bytes = text.toString().getBytes(StandardCharsets.UTF_8);
        if (bytes.length + 1 > buffer.remaining()) {
            flush();
        }
        if (bytes.length + 1 > buffer.capacity()) {
            throw new IllegalStateException("a line of " + bytes.length + " bytes");
        }
        buffer.put(bytes).put((byte) '\n');
        lines++;
    }

    /** Hands everything to the system. */
    void flush() throws LogFailure {
        if (broken) {
            return; // it was said once; what came since is counted as not written
        }
        IOException failed = forceFailure;
        if (failed != null) {
            broken = true;
            throw failure(failed);
        }
        buffer.flip();
        long start = -1;
        try {
            start = regular ? channel.position() : 0;
            while (buffer.hasRemaining()) {
                channel.write(buffer);
            }
            linesWritten = lines;
        } catch (IOException e) {
            broken = true;
            cutBack(start, buffer.position());
            throw failure(e);
        } finally {
            buffer.clear();
        }
    }

    private LogFailure failure(IOException e) {
        return new LogFailure(
                "cannot write " + path + ": " + e.getMessage() + "; free some room or choose another place", e);
    }

    /** After a write that failed: leaves the whole lines that did get into the file. */
    private void cutBack(long start, int written) {
        int whole = 0;
        long saved = linesWritten;
        for (int i = 0; i < written; i++) {
            if (buffer.get(i) == '\n') {
                whole = i + 1;
                saved++;
            }
        }
        linesWritten = saved;
        if (!regular) {
            return;
        }
        try {
            channel.truncate(start + whole);
        } catch (IOException e) {
            return; // the last line stays cut, which whoever opens the log is told
        }
    }

    /** Hands what was flushed to the disk; from any thread. What fails is told by the next {@link #flush}. */
    void force() {
        long upTo = linesWritten;
        if (!regular || upTo == linesForced) {
            return;
        }
        try {
            channel.force(false);
            linesForced = upTo;
        } catch (ClosedChannelException e) {
            return;
        } catch (IOException e) {
            forceFailure = e;
        }
    }

    /** Closes; call {@link #flush} and {@link #force} before. */
    @Override
    public void close() {
        try {
            channel.close();
        } catch (IOException e) {
            return; // everything was flushed before
        }
    }
}
