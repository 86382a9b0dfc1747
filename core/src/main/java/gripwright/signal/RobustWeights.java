package gripwright.signal;

import java.util.Arrays;

/** Weights that keep outliers from pulling a fit; constants for 95 % efficiency with normal errors (usual ones). */
final class RobustWeights {
    /** Median absolute deviation to standard deviation, for normal errors. */
    static final double MAD = 1.4826022185056018;

    private static final double HUBER = 1.345;
    private static final double TUKEY = 4.685;

    private RobustWeights() {}

    /** Huber's: 1 near, falling as 1/distance. */
    static double huber(double standardised) {
        double u = Math.abs(standardised);
        return u <= HUBER ? 1 : HUBER / u;
    }

    /** Tukey's biweight: 0 beyond 4.685 deviations. */
    static double tukey(double standardised) {
        double u = standardised / TUKEY;
        return Math.abs(u) >= 1 ? 0 : (1 - u * u) * (1 - u * u);
    }

    /** Standard deviation of what is mostly normal, about 0, from the median of its sizes; NaN are left out. */
    static double scale(double[] values) {
        double[] sizes = Arrays.stream(values)
                .filter(v -> !Double.isNaN(v))
                .map(Math::abs)
                .toArray();
        return MAD * median(sizes);
    }

    /** Median of all values; NaN if there is none. The array is sorted. */
    static double median(double[] values) {
        if (values.length == 0) {
            return Double.NaN;
        }
        Arrays.sort(values);
        int half = values.length / 2;
        return values.length % 2 == 1 ? values[half] : 0.5 * (values[half - 1] + values[half]);
    }
}
