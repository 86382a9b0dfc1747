package gripwright.record;

import java.io.IOException;
import java.util.Arrays;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import org.jspecify.annotations.Nullable;

/**
 * Reads a source in a thread of its own, so that bytes leave the system's small buffers and get their time of arrival
 * even while the disk is slow. What waits here is bounded: then reading waits too, and a source with flow control slows
 * down, while one without (a serial line) loses bytes, which its sequence numbers show.
 */
final class Feed implements AutoCloseable {
    /** Bytes that may wait between source and log. */
    static final int MOST_WAITING = 32 << 20;

    private static final int READ = 1 << 16;
    private static final int OVERHEAD = 64; // of a chunk in memory

    /** Bytes of one read with their time of arrival; none: the end. */
    record Chunk(byte[] bytes, long nanos, long wall) {}

    private final Source source;
    private final Clocks clocks;
    private final LinkedBlockingQueue<Chunk> queue = new LinkedBlockingQueue<>();
    private final Semaphore room = new Semaphore(MOST_WAITING);
    private final Thread reader = new Thread(this::read, "gripwright-source");
    private volatile @Nullable IOException failure;
    private volatile boolean closed;
    private final AtomicInteger waits = new AtomicInteger();
    private final AtomicInteger most = new AtomicInteger();

    Feed(Source source, Clocks clocks) {
        this.source = source;
        this.clocks = clocks;
        reader.setDaemon(true); // standard input may never end
        reader.start();
    }

    /** The next bytes, or null if none came in that time. An empty chunk is the end. */
    @Nullable
    Chunk next(long millis) throws InterruptedException {
        Chunk chunk = queue.poll(millis, TimeUnit.MILLISECONDS);
        if (chunk != null && chunk.bytes.length > 0) {
            room.release(chunk.bytes.length + OVERHEAD);
        }
        return chunk;
    }

    /** Why the source ended before its end, if it did. */
    @Nullable
    IOException failure() {
        return failure;
    }

    /** Bytes that wait now. */
    int waiting() {
        return MOST_WAITING - room.availablePermits();
    }

    /** Most bytes that ever waited. */
    int mostWaiting() {
        return most.get();
    }

    /** How often reading had to wait for the log. */
    int waits() {
        return waits.get();
    }

    private void read() {
        byte[] buffer = new byte[READ];
        try {
            int n;
            while (!closed && (n = source.read(buffer)) >= 0) {
                if (n > 0) {
                    Chunk chunk = new Chunk(
                            Arrays.copyOf(buffer, n),
                            clocks.nanos().getAsLong(),
                            clocks.wall().getAsLong());
                    if (!room.tryAcquire(n + OVERHEAD)) {
                        waits.incrementAndGet();
                        room.acquire(n + OVERHEAD);
                    }
                    most.accumulateAndGet(waiting(), Math::max);
                    queue.add(chunk);
                }
            }
        } catch (IOException e) {
            failure = closed ? null : e;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt(); // closed while it waited for room
        }
        queue.add(
                new Chunk(new byte[0], clocks.nanos().getAsLong(), clocks.wall().getAsLong()));
    }

    @Override
    public void close() {
        closed = true;
        source.close();
        reader.interrupt();
    }
}
