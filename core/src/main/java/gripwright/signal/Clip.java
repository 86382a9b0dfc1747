package gripwright.signal;

import java.util.Arrays;

/**
 * Where a taxel stops rising: many readings at exactly one value, next to none above it, while the force still changes.
 *
 * @param found whether it does
 * @param reading that value
 * @param force at which it is first seen there [N]
 */
record Clip(boolean found, double reading, double force) {
    private static final int LEAST = 20;
    private static final double CHANGES = 0.05;

    /** So many readings may stand above the end, as a share of those at it: spikes that hid among steep readings. */
    private static final double STRAY = 0.01;

    private static final int PILE = 5;

    static Clip find(double[] readings, double[] force, double top) {
        double[] sorted =
                Arrays.stream(readings).filter(v -> !Double.isNaN(v)).sorted().toArray();
        int above = 0;
        int count = 0;
        int i = sorted.length;
        while (i > 0 && above <= Math.max(1, STRAY * sorted.length)) {
            count = 1;
            while (i - 1 - count >= 0 && sorted[i - 1 - count] == sorted[i - 1]) {
                count++;
            }
            boolean end = above == 0 || above <= Math.max(1, STRAY * count) && isPile(sorted, i, count);
            if (count >= LEAST && end) {
                return at(sorted[i - 1], count, readings, force, top);
            }
            above += count;
            i -= count;
        }
        return new Clip(false, sorted.length == 0 ? Double.NaN : sorted[sorted.length - 1], Double.NaN);
    }

    /** Whether there are far more equal readings than at the next value below: the tail of noise grows downward. */
    private static boolean isPile(double[] sorted, int end, int count) {
        int last = end - count;
        int below = 0;
        while (last - below > 0 && sorted[last - below - 1] == sorted[last - 1]) {
            below++;
        }
        return count > PILE * below;
    }

    private static Clip at(double most, int count, double[] readings, double[] force, double top) {
        double[] at = new double[count];
        int k = 0;
        for (int i = 0; i < readings.length; i++) {
            if (readings[i] == most) {
                at[k++] = force[i];
            }
        }
        Arrays.sort(at);
        double low = at[count / 20];
        boolean changes = at[count - 1 - count / 20] - low > CHANGES * top;
        return new Clip(changes && low > CHANGES * top, most, low);
    }

    /** Up to here no reading is cut, noise and creep allowed for [N]. */
    double safe() {
        return 0.93 * force;
    }
}
