package gripwright.closing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.OptionalDouble;
import java.util.concurrent.CancellationException;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.Test;

/** A closing that nobody waits for any more ends at once, and its runner is as good as new. */
class CalledOffTest {
    private static final Conditions PLACE = Conditions.at(0.004, -0.003, 0.1);

    private static ClosingSimulator simulator() {
        return Starts.simulator(
                BenchHands.threeFinger(OptionalDouble.of(2), 0), Starts.OBJECTS.get(0), Numerics.DEFAULT);
    }

    @Test
    void interruptedThreadDoesNotCloseAtAll() {
        Thread.currentThread().interrupt();
        assertThatThrownBy(() -> simulator().run(PLACE)).isInstanceOf(CancellationException.class);
        assertThat(Thread.interrupted()).as("the thread stays marked").isTrue();
    }

    @Test
    void runnerThatWasCalledOffMidwayGivesTheSameBitsAsAFreshOne() throws Exception {
        ClosingSummary fresh = simulator().run(PLACE);
        ClosingSimulator used = simulator();
        var thread = Executors.newSingleThreadExecutor();
        try {
            for (long wait : new long[] {1, 3, 7}) {
                Future<ClosingSummary> run = thread.submit(() -> used.run(Conditions.at(0.02, 0.01, 0)));
                Thread.sleep(wait);
                run.cancel(true);
            }
            assertThat(thread.submit(() -> used.run(PLACE)).get()).isEqualTo(fresh);
        } finally {
            thread.shutdownNow();
        }
    }
}
