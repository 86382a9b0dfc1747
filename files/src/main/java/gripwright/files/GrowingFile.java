package gripwright.files;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.Arrays;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * A file of lines that another program appends to. Each look reads the bytes that are new, and gives out the lines that
 * have ended; of a line that never ends a bounded beginning is kept. The file may be cut, replaced or deleted at any
 * time. Links are not followed.
 */
public final class GrowingFile implements AutoCloseable {
    private static final int BLOCK = 1 << 16;
    private static final int MARK = 64;

    private final Path path;
    private final FileChannel channel;
    private final @Nullable Object key;
    private final LineCutter cutter;
    private final ByteBuffer block = ByteBuffer.allocate(BLOCK);
    private final byte[] mark = new byte[MARK];
    private int marked;
    private long at;
    /** Where the last whole line ends. */
    private long whole;

    private boolean withinLine;

    /** What a look found. */
    public enum Found {
        /** Nothing new. */
        NOTHING,
        /** More bytes. */
        MORE,
        /** Another file of that name, or this one cut or written anew: what was read is not true of it. */
        ANOTHER,
        GONE
    }

    private GrowingFile(Path path, FileChannel channel, @Nullable Object key, int longest) {
        this.path = path;
        this.channel = channel;
        this.key = key;
        this.cutter = new LineCutter(longest);
    }

    /**
     * Opens it at its beginning.
     *
     * @param longest bytes kept of one line
     * @throws IOException also if it is a link, a folder, a device or a pipe
     */
    public static GrowingFile open(Path path, int longest) throws IOException {
        BasicFileAttributes is = Files.readAttributes(path, BasicFileAttributes.class, LinkOption.NOFOLLOW_LINKS);
        if (!is.isRegularFile()) {
            throw new IOException(path.getFileName() + " is no plain file");
        }
        FileChannel channel = FileChannel.open(path, StandardOpenOption.READ, LinkOption.NOFOLLOW_LINKS);
        return new GrowingFile(path, channel, is.fileKey(), longest);
    }

    /** Reads on, at most so many bytes. */
    public <X extends Exception> Found look(long most, LineCutter.Taker<X> taker) throws IOException, X {
        try {
            BasicFileAttributes is = Files.readAttributes(path, BasicFileAttributes.class, LinkOption.NOFOLLOW_LINKS);
            if (!is.isRegularFile() || !Objects.equals(is.fileKey(), key)) {
                return Found.ANOTHER;
            }
        } catch (NoSuchFileException e) {
            return Found.GONE;
        }
        if (!sameBefore()) {
            return Found.ANOTHER;
        }
        long end = at + most;
        boolean more = false;
        while (at < end) {
            block.clear().limit((int) Math.min(BLOCK, end - at));
            int n = channel.read(block, at);
            if (n <= 0) {
                break;
            }
            more = true;
            take(n, taker);
        }
        return more ? Found.MORE : Found.NOTHING;
    }

    private <X extends Exception> void take(int n, LineCutter.Taker<X> taker) throws X {
        byte[] bytes = block.array();
        remember(bytes, n);
        long from = at;
        at += n;
        for (int i = n - 1; i >= 0; i--) {
            if (bytes[i] == '\n') {
                whole = from + i + 1;
                break;
            }
        }
        cutter.feed(bytes, n, (line, kept, length, ended) -> {
            if (withinLine) {
                withinLine = false;
            } else {
                taker.line(line, kept, length, ended);
            }
        });
    }

    /** False if the bytes before are not those that were read, which shows a file that was written anew in its place. */
    private boolean sameBefore() throws IOException {
        long size = channel.size();
        if (size < at) {
            if (size < whole || withinLine) {
                return false;
            }
            // Cut within the line that had only begun: who appends cuts such a line off.
            at = whole;
            marked = 0;
            cutter.forget();
        }
        if (marked > 0) {
            ByteBuffer now = ByteBuffer.allocate(marked);
            channel.read(now, at - marked);
            return Arrays.equals(now.array(), 0, marked, mark, 0, marked);
        }
        return true;
    }

    private void remember(byte[] bytes, int n) {
        marked = Math.min(MARK, n);
        System.arraycopy(bytes, n - marked, mark, 0, marked);
    }

    /** Leaves out what is there now but for the last bytes; the line in which that begins is left out too. */
    public void skipTo(long place) {
        at = Math.max(at, place);
        whole = at;
        marked = 0;
        withinLine = true;
        cutter.forget();
    }

    /** Bytes that are there and were not read yet. */
    public long behind() throws IOException {
        return Math.max(0, channel.size() - at);
    }

    /** Bytes in front of the next that will be read. */
    public long at() {
        return at;
    }

    public long size() throws IOException {
        return channel.size();
    }

    /**
     * Whether a program holds the file to write into it.
     *
     * @param otherwise the answer where the file system cannot tell
     */
    public boolean held(boolean otherwise) {
        try (FileLock lock = channel.tryLock(0, Long.MAX_VALUE, true)) {
            return lock == null;
        } catch (OverlappingFileLockException e) {
            return true;
        } catch (IOException e) {
            return otherwise;
        }
    }

    @Override
    public void close() {
        try {
            channel.close();
        } catch (IOException e) {
            return; // it was only read
        }
    }
}
