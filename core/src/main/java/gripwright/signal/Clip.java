package gripwright.signal;

import java.util.Arrays;

/**
 * Where a taxel stops rising: many readings at exactly the greatest value while the force still changes.
 *
 * @param found whether it does
 * @param reading the greatest value
 * @param force at which it is first seen there [N]
 */
record Clip(boolean found, double reading, double force) {
    private static final int LEAST = 20;
    private static final double CHANGES = 0.05;

    static Clip find(double[] readings, double[] force, double top) {
        double most = Double.NEGATIVE_INFINITY;
        int count = 0;
        for (double v : readings) {
            if (v > most) {
                most = v;
                count = 1;
            } else if (v == most) {
                count++;
            }
        }
        if (count < LEAST) {
            return new Clip(false, most, Double.NaN);
        }
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
