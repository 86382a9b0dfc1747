package gripwright.signal;

import java.util.Arrays;

/** Finds single readings that stand off their neighbours. */
final class Despike {
    private static final int WIDTH = 7;
    private static final double FAR = 8;
    private static final double FAR_LOCALLY = 5;

    private Despike() {}

    /**
     * Replaces spikes by NaN, in place. A spike is further from the running median of 7 than 8 deviations of the
     * noise and than 5 deviations of its 7 neighbours: the second keeps the tops of sharp taps.
     *
     * @param readings NaN where there is none; changed
     * @param least smallest scale, such as the step of the readings
     * @return how many were taken out
     */
    static int clean(double[] readings, double least) {
        int n = readings.length;
        int half = WIDTH / 2;
        double[] off = new double[n];
        double[] nearby = new double[n];
        double[] window = new double[WIDTH];
        for (int i = 0; i < n; i++) {
            int from = Math.max(0, Math.min(i - half, n - WIDTH));
            int count = 0;
            for (int k = from; k < Math.min(n, from + WIDTH); k++) {
                if (!Double.isNaN(readings[k])) {
                    window[count++] = readings[k];
                }
            }
            if (Double.isNaN(readings[i]) || count < 3) {
                off[i] = Double.NaN;
                continue;
            }
            double median = medianOfFirst(window, count);
            off[i] = readings[i] - median;
            for (int k = 0; k < count; k++) {
                window[k] = Math.abs(window[k] - median);
            }
            nearby[i] = medianOfFirst(window, count);
        }
        double scale = Math.max(noise(readings), least);
        int found = 0;
        for (int i = 0; i < n; i++) {
            double size = Math.abs(off[i]);
            if (size > FAR * scale && size > FAR_LOCALLY * RobustWeights.MAD * nearby[i]) {
                readings[i] = Double.NaN;
                found++;
            }
        }
        return found;
    }

    /** Standard deviation of the noise from second differences, which slow changes leave alone. */
    static double noise(double[] readings) {
        double[] second = new double[Math.max(0, readings.length - 2)];
        for (int i = 0; i < second.length; i++) {
            second[i] = readings[i] - 2 * readings[i + 1] + readings[i + 2];
        }
        return RobustWeights.scale(second) / Math.sqrt(6);
    }

    private static double medianOfFirst(double[] values, int count) {
        Arrays.sort(values, 0, count);
        return count % 2 == 1 ? values[count / 2] : 0.5 * (values[count / 2 - 1] + values[count / 2]);
    }
}
