package gripwright.record;

import static org.assertj.core.api.Assertions.assertThat;

import gripwright.files.Recording.Strip;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Traces of a recording of any length in a bounded number of strips. */
class TracesTest {
    @Test
    void propertyNothingIsLostWhenStripsAreJoined() {
        Random random = new Random(5);
        for (int trial = 0; trial < 20; trial++) {
            Traces traces = new Traces();
            traces.taxels(1);
            double seconds = 0;
            double least = Double.POSITIVE_INFINITY;
            double greatest = Double.NEGATIVE_INFINITY;
            int malformed = 0;
            for (int i = 0; i < 3_000; i++) {
                seconds += random.nextDouble();
                float value = (float) random.nextGaussian();
                traces.reading(seconds, 2);
                traces.value(seconds, 0, value);
                least = Math.min(least, value);
                greatest = Math.max(greatest, value);
                if (random.nextInt(10) == 0) {
                    traces.malformed(seconds);
                    malformed++;
                }
            }
            String of = "trial " + trial + " of seed 5";
            assertThat(traces.strips()).as(of).hasSizeBetween(200, 400);
            assertThat(traces.width() * traces.strips().size()).as(of).isBetween(seconds, seconds + traces.width());
            assertThat(traces.strips().stream().mapToLong(Strip::readings).sum())
                    .as(of)
                    .isEqualTo(3_000);
            assertThat(traces.strips().stream().mapToLong(Strip::missing).sum())
                    .as(of)
                    .isEqualTo(6_000);
            assertThat(traces.strips().stream().mapToLong(Strip::malformed).sum())
                    .as(of)
                    .isEqualTo(malformed);
            assertThat(traces.low(0).stream().mapToDouble(v -> v).min().orElse(0))
                    .as(of)
                    .isEqualTo(least);
            assertThat(traces.high(0).stream().mapToDouble(v -> v).max().orElse(0))
                    .as(of)
                    .isEqualTo(greatest);
        }
    }
}
