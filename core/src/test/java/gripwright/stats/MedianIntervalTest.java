package gripwright.stats;

import static org.assertj.core.api.Assertions.assertThat;

import gripwright.math.Streams;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** The median and its interval. */
class MedianIntervalTest {
    /** Ranks of the two-sided 95 % sign-test interval: 10 values 2nd and 9th, 20 values 6th and 15th (from memory). */
    @Test
    void referenceRanks() {
        assertThat(of(10)).isEqualTo(new Interval(2, 9));
        assertThat(of(20)).isEqualTo(new Interval(6, 15));
        assertThat(of(5)).isEqualTo(new Interval(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY));
        assertThat(of(6)).isEqualTo(new Interval(1, 6));
    }

    private static Interval of(int n) {
        return MedianInterval.of(IntStream.rangeClosed(1, n).mapToDouble(i -> i).toArray());
    }

    @Test
    void propertyIntervalHoldsTheMedianAtLeastAsOftenAsItSays() {
        int held = 0;
        int trials = 2000;
        for (int trial = 0; trial < trials; trial++) {
            var normals = new Streams(3, "median").draws("", trial).normals("v");
            double[] values = new double[25];
            for (int i = 0; i < values.length; i++) {
                values[i] = Math.exp(normals.getAsDouble());
            }
            held += MedianInterval.of(values).contains(1) ? 1 : 0;
        }
        assertThat(BinomialIntervals.wilson(held, trials, 0.999).high()).isGreaterThan(0.95);
        assertThat(held).isLessThan(trials);
    }

    @Test
    void medianOfAnEvenNumberLiesInTheMiddle() {
        assertThat(MedianInterval.median(new double[] {4, 1, 3, 2})).isEqualTo(2.5);
        assertThat(MedianInterval.median(new double[0])).isNaN();
    }
}
