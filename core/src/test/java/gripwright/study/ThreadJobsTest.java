package gripwright.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import gripwright.study.ThreadJobs.JobFailure;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ThreadJobsTest {
    private static final List<Integer> HUNDRED = IntStream.range(0, 100).boxed().toList();

    private static int square(Object worker, int job) {
        return job * job;
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 7, 200})
    void resultsComeInTheOrderOfTheJobsAndProgressOnlyRises(int threads) {
        List<Integer> told = Collections.synchronizedList(new ArrayList<>());
        List<Integer> results = new ThreadJobs(threads)
                .run(HUNDRED, Object::new, ThreadJobsTest::square, (finished, of) -> {
                    told.add(finished);
                    return of == 100;
                });
        assertThat(results).isEqualTo(HUNDRED.stream().map(i -> i * i).toList());
        assertThat(told).isEqualTo(IntStream.rangeClosed(1, 100).boxed().toList());
    }

    @Test
    void eachThreadHasOneWorkerOfItsOwn() {
        AtomicInteger made = new AtomicInteger();
        List<Boolean> own = new ThreadJobs(3)
                .run(
                        HUNDRED,
                        () -> {
                            made.incrementAndGet();
                            return new Thread[1];
                        },
                        (worker, job) -> {
                            worker[0] = worker[0] == null ? Thread.currentThread() : worker[0];
                            return worker[0] == Thread.currentThread();
                        },
                        Jobs.Progress.NONE);
        assertThat(own).doesNotContain(false);
        assertThat(made).hasValueBetween(1, 3);
    }

    @Test
    void noJobsGiveNoResults() {
        assertThat(new ThreadJobs(2).run(List.<Integer>of(), Object::new, ThreadJobsTest::square, Jobs.Progress.NONE))
                .isEmpty();
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 7})
    void aStoppedStudyKeepsAFirstPartWithoutGaps(int threads) {
        List<Integer> results = new ThreadJobs(threads)
                .run(HUNDRED, Object::new, ThreadJobsTest::square, (finished, of) -> finished < 20);
        long done = results.stream().filter(Objects::nonNull).count();
        assertThat(done).isBetween(20L, 19L + threads);
        assertThat(results).hasSize(100);
        assertThat(results.subList(0, (int) done)).doesNotContainNull();
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 7})
    void theEarliestFailureIsThrownWithItsJobNamed(int threads) {
        assertThatThrownBy(() -> new ThreadJobs(threads)
                        .run(
                                HUNDRED,
                                Object::new,
                                (worker, job) -> {
                                    if (job >= 30) {
                                        throw new IllegalStateException("no equilibrium");
                                    }
                                    return job;
                                },
                                Jobs.Progress.NONE))
                .isInstanceOf(JobFailure.class)
                .hasMessage("job 31 of 100 (30) failed: java.lang.IllegalStateException: no equilibrium")
                .hasCauseInstanceOf(IllegalStateException.class);
    }

    @Test
    void aFailingWorkerOrProgressIsNotSwallowed() {
        assertThatThrownBy(() -> new ThreadJobs(2)
                        .run(
                                HUNDRED,
                                () -> {
                                    throw new IllegalArgumentException("no finger 'left'");
                                },
                                (worker, job) -> job,
                                Jobs.Progress.NONE))
                .hasMessageContaining("no finger 'left'");
        assertThatThrownBy(() -> new ThreadJobs(2).run(HUNDRED, Object::new, ThreadJobsTest::square, (finished, of) -> {
                    throw new IllegalStateException("terminal gone");
                }))
                .hasMessageContaining("terminal gone");
    }

    @Test
    void anInterruptedCallerGetsWhatIsDoneAndStaysInterrupted() {
        Thread caller = Thread.currentThread();
        CountDownLatch forever = new CountDownLatch(1);
        List<Integer> results = new ThreadJobs(2)
                .run(
                        HUNDRED,
                        Object::new,
                        (worker, job) -> {
                            if (job == 10) {
                                caller.interrupt();
                            }
                            // Slow enough for the caller to notice long before the last job.
                            pause(forever);
                            return job;
                        },
                        Jobs.Progress.NONE);
        assertThat(Thread.interrupted()).isTrue();
        assertThat(results.get(0)).isZero();
        assertThat(results.get(99)).isNull();
    }

    private static void pause(CountDownLatch forever) {
        try {
            assertThat(forever.await(20, TimeUnit.MILLISECONDS)).isFalse();
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }

    @Test
    void refusesNoThreads() {
        assertThatThrownBy(() -> new ThreadJobs(0)).hasMessage("the number of threads is 0; it must be at least 1");
    }
}
