package gripwright.study;

import gripwright.check.Check;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.BiFunction;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/**
 * Runs jobs on threads of this machine; each thread takes the next job as soon as it is free.
 *
 * <p>Stopping (the progress says so, or the calling thread is interrupted) lets the jobs under way finish and keeps all
 * that is done: always a whole first part of the list. After an interruption the calling thread is marked interrupted
 * again. If a job fails, the rest is stopped and the failure of the earliest failing job is thrown as {@link
 * JobFailure}; which one that is does not depend on the threads.
 *
 * @param threads at least 1
 */
public record ThreadJobs(int threads) implements Jobs {
    public ThreadJobs {
        Check.that(threads >= 1, "the number of threads is " + threads + "; it must be at least 1");
    }

    /** A job that could not be done. */
    public static final class JobFailure extends RuntimeException {
        private static final long serialVersionUID = 1;

        private final transient Object job;

        JobFailure(Object job, int index, int of, Throwable cause) {
            super("job " + (index + 1) + " of " + of + " (" + job + ") failed: " + cause, cause);
            this.job = job;
        }

        /** What was to be done. */
        public Object job() {
            return job;
        }
    }

    @Override
    public <W, J, R> List<R> run(List<J> jobs, Supplier<W> worker, BiFunction<W, J, R> work, Progress progress) {
        Batch<W, J, R> batch = new Batch<>(List.copyOf(jobs), worker, work, progress);
        List<Thread> crew = new ArrayList<>();
        for (int i = 0; i < Math.min(threads, jobs.size()); i++) {
            Thread thread = new Thread(batch::work, "gripwright-" + (i + 1));
            thread.setDaemon(true);
            crew.add(thread);
        }
        crew.forEach(Thread::start);
        joinAll(crew, batch);
        return batch.results();
    }

    private static void joinAll(List<Thread> crew, Batch<?, ?, ?> batch) {
        boolean interrupted = false;
        for (Thread thread : crew) {
            boolean joined = false;
            while (!joined) {
                try {
                    thread.join();
                    joined = true;
                } catch (InterruptedException e) {
                    interrupted = true;
                    batch.stop();
                }
            }
        }
        if (interrupted) {
            Thread.currentThread().interrupt();
        }
    }

    /** One list of jobs on its way; written by all threads, read when they have ended. */
    private static final class Batch<W, J, R> {
        private final List<J> jobs;
        private final Supplier<W> worker;
        private final BiFunction<W, J, R> work;
        private final Progress progress;
        private final @Nullable Object[] results;
        private final @Nullable Throwable[] failures;
        private final AtomicInteger next = new AtomicInteger();
        private volatile boolean stopped;
        private int finished;
        private @Nullable Throwable outsideJobs;

        Batch(List<J> jobs, Supplier<W> worker, BiFunction<W, J, R> work, Progress progress) {
            this.jobs = jobs;
            this.worker = worker;
            this.work = work;
            this.progress = progress;
            this.results = new Object[jobs.size()];
            this.failures = new Throwable[jobs.size()];
        }

        void stop() {
            stopped = true;
        }

        /** What every thread does. Whatever goes wrong in here is kept and thrown in the calling thread. */
        void work() {
            try {
                W mine = worker.get();
                while (!stopped) {
                    int index = next.getAndIncrement();
                    if (index >= jobs.size()) {
                        return;
                    }
                    one(mine, index);
                }
            } catch (Throwable t) {
                fail(t);
            }
        }

        private void one(W mine, int index) {
            try {
                results[index] = work.apply(mine, jobs.get(index));
            } catch (Throwable t) {
                failures[index] = t;
                stopped = true;
                return;
            }
            tell();
        }

        // One at a time, so that the numbers told only rise.
        private synchronized void tell() {
            finished++;
            if (!progress.done(finished, jobs.size())) {
                stopped = true;
            }
        }

        private synchronized void fail(Throwable t) {
            stopped = true;
            if (outsideJobs == null) {
                outsideJobs = t;
            }
        }

        @SuppressWarnings("unchecked")
        List<R> results() {
            for (int i = 0; i < failures.length; i++) {
                Throwable failure = failures[i];
                if (failure != null) {
                    throw new JobFailure(jobs.get(i), i, jobs.size(), failure);
                }
            }
            if (outsideJobs != null) {
                throw new IllegalStateException("a worker or the progress display failed: " + outsideJobs, outsideJobs);
            }
            return (List<R>) Collections.unmodifiableList(Arrays.asList(results));
        }
    }
}
