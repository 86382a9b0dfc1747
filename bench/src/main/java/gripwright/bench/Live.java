package gripwright.bench;

import gripwright.closing.ClosingDetail;
import gripwright.closing.ClosingRunner;
import gripwright.closing.ClosingSummary;
import gripwright.closing.Conditions;
import gripwright.closing.Numerics;
import gripwright.model.GraspObject;
import gripwright.model.Grip;
import gripwright.model.Project;
import gripwright.study.Sureness;
import gripwright.study.Uncertain;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.locks.LockSupport;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/**
 * Closings asked for while the user looks on. The newest request of a page wins: an older one is called off, whether it
 * waits or is under way. A runner is kept for the object and grip in view, and the last closings are kept whole.
 */
final class Live implements AutoCloseable {
    private static final int KEPT_RUNNERS = 4;
    private static final int KEPT_CLOSINGS = 24;
    private static final int KEPT_SURE = 200;
    private static final int MOST_WAITS = 150;
    private static final long WAIT_NANOSECONDS = 2_000_000;
    /** Of ensembles: a closing is as sure whenever it is asked, here and on the command line. */
    private static final long SEED = 1;

    private final Closings closings;
    // Closings and ensembles each on a thread of their own, so that calling one off interrupts nothing else.
    private final ExecutorService closing = Executors.newSingleThreadExecutor(task -> thread(task, "closing"));
    private final ExecutorService sure = Executors.newSingleThreadExecutor(task -> thread(task, "sure"));
    private final Map<RunnerKey, ClosingRunner> runners = lastUsed(KEPT_RUNNERS); // of the thread `closing`
    private final Map<Key, Closing> done = lastUsed(KEPT_CLOSINGS); // guarded by this, as all that follow
    private final Map<Key, Sureness> sureOf = lastUsed(KEPT_SURE);
    private final Map<String, Long> newest = lastUsed(64);
    private final List<Asked> waiting = new ArrayList<>();
    private final AtomicInteger urgent = new AtomicInteger();

    private record RunnerKey(String revision, String object, String grip) {}

    private record Key(RunnerKey runner, Conditions conditions) {}

    private record Asked(String page, long number, Future<?> future) {}

    /** A closing and how long it took. */
    record Closing(GraspObject object, String grip, ClosingDetail detail, double milliseconds) {}

    /**
     * Who asks for what.
     *
     * @param page name of the page that asks
     * @param number of the request; a higher one of the same page calls it off
     */
    record Wish(
            Project project,
            String revision,
            GraspObject object,
            Grip grip,
            Conditions conditions,
            String page,
            long number) {
        private Key key() {
            return new Key(new RunnerKey(revision, object.name(), grip.name()), conditions);
        }
    }

    Live(Closings closings) {
        this.closings = closings;
    }

    private static Thread thread(Runnable task, String name) {
        Thread thread = new Thread(task, "gripwright-" + name);
        thread.setDaemon(true);
        return thread;
    }

    /** Closes, or returns null if the same page asked for something else meanwhile. */
    @Nullable
    Closing close(Wish wish) throws InterruptedException {
        urgent.incrementAndGet();
        try {
            return result(wish, done, closing, () -> closed(wish));
        } finally {
            urgent.decrementAndGet();
        }
    }

    /** How sure the answer is, or null if the same page asked for another closing meanwhile. */
    @Nullable
    Sureness sure(Wish wish) throws InterruptedException {
        return result(wish, sureOf, sure, () -> sureness(wish));
    }

    private <T> @Nullable T result(Wish wish, Map<Key, T> known, ExecutorService on, Supplier<T> work)
            throws InterruptedException {
        Asked mine;
        Future<T> future;
        synchronized (this) {
            newest.merge(wish.page, wish.number, Math::max);
            if (newest.getOrDefault(wish.page, wish.number) > wish.number) {
                return null;
            }
            for (Asked asked : waiting) {
                if (asked.page.equals(wish.page) && asked.number < wish.number) {
                    asked.future.cancel(true);
                }
            }
            T earlier = known.get(wish.key());
            if (earlier != null) {
                return earlier;
            }
            future = on.submit(work::get);
            mine = new Asked(wish.page, wish.number, future);
            waiting.add(mine);
        }
        try {
            T made = future.get();
            synchronized (this) {
                known.put(wish.key(), made);
            }
            return made;
        } catch (CancellationException e) {
            return null;
        } catch (ExecutionException e) {
            if (e.getCause() instanceof RuntimeException cause) {
                throw cause;
            }
            throw new IllegalStateException(String.valueOf(e.getCause()), e.getCause());
        } finally {
            synchronized (this) {
                waiting.remove(mine);
            }
        }
    }

    private Closing closed(Wish wish) {
        long start = System.nanoTime();
        RunnerKey key = wish.key().runner;
        ClosingRunner runner = runners.get(key);
        if (runner == null) {
            runner = closings.of(wish.project, Numerics.DEFAULT.recording()).create(wish.object, wish.grip);
            runners.put(key, runner);
        }
        ClosingDetail detail = runner.detail(wish.conditions);
        return new Closing(wish.object, wish.grip.name(), detail, (System.nanoTime() - start) / 1e6);
    }

    private Sureness sureness(Wish wish) {
        ClosingRunner runner = closings.of(wish.project, Numerics.DEFAULT).create(wish.object, wish.grip);
        String subject = Sureness.subject(wish.object.name(), wish.grip.name(), wish.conditions);
        return Sureness.of(new LettingGoFirst(runner), wish.conditions, subject, Uncertain.seeded(SEED));
    }

    private final class LettingGoFirst implements ClosingRunner {
        private final ClosingRunner other;

        LettingGoFirst(ClosingRunner other) {
            this.other = other;
        }

        @Override
        public ClosingSummary run(Conditions conditions) {
            letGoFirst();
            return other.run(conditions);
        }

        @Override
        public ClosingDetail detail(Conditions conditions) {
            return other.detail(conditions);
        }
    }

    /** Studies let whoever is looking on go first. */
    void letGoFirst() {
        for (int i = 0; i < MOST_WAITS && urgent.get() > 0; i++) {
            LockSupport.parkNanos(WAIT_NANOSECONDS);
        }
    }

    @Override
    public void close() {
        closing.shutdownNow();
        sure.shutdownNow();
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
