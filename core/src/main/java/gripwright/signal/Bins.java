package gripwright.signal;

import java.util.Arrays;

/**
 * Even stretches of time that readings are averaged over.
 *
 * @param start [s]
 * @param step length of a bin [s]
 * @param count of bins
 * @param of bin of each row
 */
record Bins(double start, double step, int count, int[] of) {
    static Bins of(double[] time, double step) {
        double start = time[0] - 0.5 * usualStep(time);
        int[] of = new int[time.length];
        for (int i = 0; i < of.length; i++) {
            of[i] = (int) Math.floor((time[i] - start) / step);
        }
        return new Bins(start, step, of[of.length - 1] + 1, of);
    }

    /** Median step between rows [s]. */
    static double usualStep(double[] time) {
        double[] steps = new double[time.length - 1];
        for (int i = 0; i < steps.length; i++) {
            steps[i] = time[i + 1] - time[i];
        }
        return RobustWeights.median(steps);
    }

    /** Mean of the readings that are there; NaN where there is none. */
    double[] mean(double[] values) {
        double[] sum = new double[count];
        int[] n = new int[count];
        for (int i = 0; i < of.length; i++) {
            if (!Double.isNaN(values[i])) {
                sum[of[i]] += values[i];
                n[of[i]]++;
            }
        }
        for (int b = 0; b < count; b++) {
            sum[b] = n[b] > 0 ? sum[b] / n[b] : Double.NaN;
        }
        return sum;
    }

    /** Which bins hold any row. */
    boolean[] filled() {
        boolean[] filled = new boolean[count];
        for (int b : of) {
            filled[b] = true;
        }
        return filled;
    }

    /** Middle of each bin [s]. */
    double[] middles() {
        double[] middles = new double[count];
        Arrays.setAll(middles, b -> start + (b + 0.5) * step);
        return middles;
    }

    int bin(double time) {
        return (int) Math.max(0, Math.min(count - 1, Math.floor((time - start) / step)));
    }
}
