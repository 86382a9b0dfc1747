package gripwright.cli;

import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;

/**
 * Ctrl-C as a wish to stop: studies look at it, end after the runs under way, and their command prints and writes what
 * is finished before the program ends.
 */
final class Interruption {
    private static final long LONGEST_WAIT_SECONDS = 60;

    private final CountDownLatch finished = new CountDownLatch(1);
    private volatile boolean requested;

    boolean requested() {
        return requested;
    }

    void request() {
        requested = true;
    }

    /** From now on the end of the program waits for {@link #finished}; its exit code after Ctrl-C stays 130. */
    void listen() {
        Runtime.getRuntime().addShutdownHook(new Thread(this::stopAndWait, "gripwright-stop"));
    }

    /** The command has printed and written everything. */
    void finished() {
        finished.countDown();
    }

    private void stopAndWait() {
        requested = true;
        try {
            // If it takes longer, something hangs: the program ends without its partial result.
            finished.await(LONGEST_WAIT_SECONDS, TimeUnit.SECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
