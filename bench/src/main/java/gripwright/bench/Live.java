package gripwright.bench;

import gripwright.closing.ClosingDetail;
import gripwright.closing.ClosingRunner;
import gripwright.closing.Conditions;
import gripwright.closing.Numerics;
import gripwright.model.GraspObject;
import gripwright.model.Grip;
import gripwright.model.Project;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.concurrent.locks.Condition;
import java.util.concurrent.locks.LockSupport;
import java.util.concurrent.locks.ReentrantLock;
import org.jspecify.annotations.Nullable;

/**
 * Closings asked for while the user looks on. The newest request of a page wins: one that still waits when the next
 * arrives is never started. A runner is kept for the object and grip in view, and the last closings are kept whole.
 */
final class Live {
    private static final int KEPT_RUNNERS = 4;
    private static final int KEPT_CLOSINGS = 24;
    private static final int MOST_WAITS = 150;
    private static final long WAIT_NANOSECONDS = 2_000_000;

    private final Closings closings;
    private final ReentrantLock lock = new ReentrantLock();
    private final Condition free = lock.newCondition();
    private final Map<RunnerKey, ClosingRunner> runners = lastUsed(KEPT_RUNNERS);
    private final Map<Key, Closing> done = lastUsed(KEPT_CLOSINGS);
    private final Map<String, Long> newest = lastUsed(64);
    private volatile boolean busy;

    private record RunnerKey(String revision, String object, String grip) {}

    private record Key(RunnerKey runner, Conditions conditions) {}

    /** A closing and how long it took. */
    record Closing(GraspObject object, String grip, ClosingDetail detail, double milliseconds) {}

    Live(Closings closings) {
        this.closings = closings;
    }

    /**
     * Closes, or returns null if the same page asked for something else meanwhile.
     *
     * @param page name of the page that asks
     * @param number of the request; a higher one supersedes it
     */
    @Nullable
    Closing close(
            Project project,
            String revision,
            GraspObject object,
            Grip grip,
            Conditions conditions,
            String page,
            long number)
            throws InterruptedException {
        RunnerKey runnerKey = new RunnerKey(revision, object.name(), grip.name());
        Key key = new Key(runnerKey, conditions);
        lock.lockInterruptibly();
        try {
            newest.merge(page, number, Math::max);
            free.signalAll(); // whoever waits for this page is out of date now
            while (busy) {
                if (superseded(page, number)) {
                    return null;
                }
                free.await();
            }
            if (superseded(page, number)) {
                return null;
            }
            Closing known = done.get(key);
            if (known != null) {
                return known;
            }
            busy = true;
        } finally {
            lock.unlock();
        }
        @Nullable Closing made = null;
        try {
            long start = System.nanoTime();
            ClosingRunner runner = runners.get(runnerKey); // guarded by `busy`
            if (runner == null) {
                runner = closings.of(project, Numerics.DEFAULT.recording()).create(object, grip);
                runners.put(runnerKey, runner);
            }
            ClosingDetail detail = runner.detail(conditions);
            made = new Closing(object, grip.name(), detail, (System.nanoTime() - start) / 1e6);
            return made;
        } finally {
            lock.lock();
            try {
                if (made != null) {
                    done.put(key, made);
                }
                busy = false;
                free.signalAll();
            } finally {
                lock.unlock();
            }
        }
    }

    /** Studies let whoever is looking on go first. */
    void letGoFirst() {
        for (int i = 0; i < MOST_WAITS && busy; i++) {
            LockSupport.parkNanos(WAIT_NANOSECONDS);
        }
    }

    private boolean superseded(String page, long number) {
        return newest.getOrDefault(page, number) > number;
    }

    private static <K, V> Map<K, V> lastUsed(int most) {
        return new LinkedHashMap<>(16, 0.75f, true) {
            private static final long serialVersionUID = 1;

            @Override
            protected boolean removeEldestEntry(Map.Entry<K, V> eldest) {
                return size() > most;
            }
        };
    }
}
