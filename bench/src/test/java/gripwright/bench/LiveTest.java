package gripwright.bench;

import static org.assertj.core.api.Assertions.assertThat;

import gripwright.closing.ClosingDetail;
import gripwright.closing.ClosingRunner;
import gripwright.closing.ClosingSummary;
import gripwright.closing.Conditions;
import gripwright.files.ProjectReader;
import gripwright.model.Project;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Closings while somebody looks on: the newest request of a page wins, and no older one holds it up. */
class LiveTest {
    @TempDir
    Path folder;

    private @Nullable Project read;
    private final List<String> log = new CopyOnWriteArrayList<>();
    private final CountDownLatch started = new CountDownLatch(1);

    @BeforeEach
    void read() {
        new TestBench(folder, 0).close();
        read = ProjectReader.read(folder);
    }

    private Project project() {
        return Objects.requireNonNull(read);
    }

    /** At x = 1 m it closes for ever, unless it is called off; elsewhere as usual. */
    private Closings closings() {
        return (p, numerics) -> (object, grip) -> {
            ClosingRunner real = TestBench.SIMULATION.of(p, numerics).create(object, grip);
            return new ClosingRunner() {
                @Override
                public ClosingSummary run(Conditions c) {
                    return real.run(c);
                }

                @Override
                public ClosingDetail detail(Conditions c) {
                    if (c.x() < 1) {
                        return real.detail(c);
                    }
                    started.countDown();
                    for (int i = 0; i < 100_000; i++) {
                        try {
                            real.detail(Conditions.at(0.2, 0.2, 0)); // misses: short
                        } catch (java.util.concurrent.CancellationException e) {
                            log.add("called off");
                            throw e;
                        }
                    }
                    throw new AssertionError("nobody called it off");
                }
            };
        };
    }

    private Live.Wish wish(double x, String page, long number) {
        return new Live.Wish(
                project(),
                "r",
                project().need().object("mug"),
                project().hand().grip("wrap"),
                Conditions.at(x, 0, 0),
                page,
                number);
    }

    @Test
    void newerRequestOfThePageEndsTheOneUnderWay() throws Exception {
        try (Live live = new Live(closings())) {
            CompletableFuture<Live.@Nullable Closing> old =
                    CompletableFuture.supplyAsync(() -> close(live, wish(1, "page", 1)));
            assertThat(started.await(20, TimeUnit.SECONDS)).isTrue();
            Live.Closing now = Objects.requireNonNull(close(live, wish(0.002, "page", 2)));
            assertThat(old.get(20, TimeUnit.SECONDS)).isNull();
            assertThat(log).containsExactly("called off");
            // the runner that was interrupted gives what a fresh one gives
            ClosingSummary fresh = TestBench.SIMULATION
                    .of(project(), gripwright.closing.Numerics.DEFAULT.recording())
                    .create(project().need().object("mug"), project().hand().grip("wrap"))
                    .run(Conditions.at(0.002, 0, 0));
            assertThat(now.detail().summary()).isEqualTo(fresh);
        }
    }

    @Test
    void olderRequestThatComesLateIsNotAnswered() {
        try (Live live = new Live(closings())) {
            assertThat(close(live, wish(0, "page", 7))).isNotNull();
            assertThat(close(live, wish(0.001, "page", 6))).isNull();
            assertThat(close(live, wish(0.001, "another page", 6))).isNotNull();
        }
    }

    private static Live.@Nullable Closing close(Live live, Live.Wish wish) {
        try {
            return live.close(wish);
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }
}
