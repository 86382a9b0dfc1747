package gripwright.signal;

import gripwright.check.Check;
import gripwright.stats.Interval;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.statistics.distribution.ChiSquaredDistribution;

/**
 * Overlapping Allan deviation: how far means over neighbouring stretches of one length differ. It falls while averaging
 * helps and rises where drift takes over.
 *
 * <p>Formulas: W. J. Riley, Handbook of Frequency Stability Analysis, NIST SP 1065 (2008), section 5.2.4; equivalent
 * degrees of freedom for white noise and for a random walk from its section 5.4.1 (those two from memory).
 */
public final class Allan {
    private Allan() {}

    /**
     * One point of the curve.
     *
     * @param time averaged over [s]
     * @param deviation in the unit of the readings
     * @param interval 95 %
     */
    public record Point(double time, double deviation, Interval interval) {}

    /**
     * Overlapping Allan deviation of evenly spaced readings.
     *
     * @param readings shape n
     * @param m readings per stretch, at least 1 and at most n/2
     */
    public static double deviation(double[] readings, int m) {
        int n = readings.length;
        Check.that(m >= 1 && 2 * m <= n, "stretches of " + m + " readings do not fit twice into " + n);
        double offset = readings[0];
        double[] sum = new double[n + 1];
        for (int i = 0; i < n; i++) {
            sum[i + 1] = sum[i] + (readings[i] - offset);
        }
        double squares = 0;
        int terms = n - 2 * m + 1;
        for (int i = 0; i < terms; i++) {
            double second = sum[i + 2 * m] - 2 * sum[i + m] + sum[i];
            squares += second * second;
        }
        return Math.sqrt(squares / (2.0 * terms * m * m));
    }

    /** The whole curve at stretches of 1, 2, 4, ... readings, as long as at least 4 fit. */
    public static List<Point> curve(double[] readings, double step) {
        List<Point> curve = new ArrayList<>();
        for (int m = 1; 4 * m <= readings.length; m *= 2) {
            double deviation = deviation(readings, m);
            curve.add(new Point(m * step, deviation, interval(deviation, freedom(readings.length, m))));
        }
        return curve;
    }

    /** The smaller of the degrees of freedom for white noise and for a random walk. */
    static double freedom(int n, int m) {
        double white = (3.0 * (n - 1) / (2.0 * m) - 2.0 * (n - 2) / n) * 4.0 * m * m / (4.0 * m * m + 5);
        double walk =
                (n - 2.0) / m * ((n - 1.0) * (n - 1.0) - 3.0 * m * (n - 1.0) + 4.0 * m * m) / ((n - 3.0) * (n - 3.0));
        return Math.max(1, Math.min(white, walk));
    }

    /** 95 % interval of a standard deviation known with so many degrees of freedom. */
    static Interval interval(double deviation, double freedom) {
        ChiSquaredDistribution chi = ChiSquaredDistribution.of(freedom);
        return new Interval(
                deviation * Math.sqrt(freedom / chi.inverseCumulativeProbability(0.975)),
                deviation * Math.sqrt(freedom / chi.inverseCumulativeProbability(0.025)));
    }
}
