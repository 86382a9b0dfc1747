package gripwright.signal;

import java.util.Arrays;

/**
 * Noise of a reading that wanders: white noise on a level that walks at random from 0. Passing readings and columns of a
 * model through its one-step prediction turns correlated errors into independent ones of one size (the innovations of a
 * Kalman filter), so that plain least squares of the result is best for such noise.
 */
final class LocalLevel {
    private static final double[] RATIOS = ratios();

    private LocalLevel() {}

    /** From no walk to one that outweighs the white noise within a second; in steps of a factor of about 3. */
    private static double[] ratios() {
        double[] ratios = new double[16];
        for (int k = 1; k < ratios.length; k++) {
            ratios[k] = 1e-7 * Math.pow(10, 0.5 * (k - 1));
        }
        return ratios;
    }

    /**
     * What is left of series after prediction, in units of the white noise's deviation.
     *
     * @param series those given, each shortened to the rows whose weight is above 0
     * @param rows which rows these are
     * @param logVariance sum of the logarithms of the predictions' variances
     */
    record Whitened(double[][] series, int[] rows, double logVariance) {}

    /**
     * @param series shape k x n
     * @param weight of each row, 1 for the white noise's full precision, 0 for none; shape n
     * @param step from row to row [s]
     * @param ratio growth of the walk's variance per second, in units of the white noise's variance [1/s]
     */
    static Whitened whiten(double[][] series, double[] weight, double step, double ratio) {
        int n = weight.length;
        int m = 0;
        for (double w : weight) {
            if (w > 0) {
                m++;
            }
        }
        int[] rows = new int[m];
        double[] gain = new double[m];
        double[] size = new double[m];
        double walk = 0;
        double logVariance = 0;
        int at = 0;
        for (int i = 0; i < n; i++) {
            if (weight[i] > 0) {
                double variance = walk + 1 / weight[i];
                rows[at] = i;
                gain[at] = walk / variance;
                size[at] = 1 / Math.sqrt(variance);
                logVariance += Math.log(variance);
                walk *= 1 - gain[at];
                at++;
            }
            walk += ratio * step;
        }
        double[][] out = new double[series.length][m];
        for (int k = 0; k < series.length; k++) {
            double level = 0;
            double[] in = series[k];
            for (int i = 0; i < m; i++) {
                double off = in[rows[i]] - level;
                out[k][i] = off * size[i];
                level += gain[i] * off;
            }
        }
        return new Whitened(out, rows, logVariance);
    }

    /**
     * The ratio under which the readings are most probable, coefficients integrated out (restricted likelihood).
     *
     * @param columns of the model, shape p x n
     * @param y shape n
     */
    static double ratio(double[][] columns, double[] y, double[] weight, double step) {
        double[] cost = new double[RATIOS.length];
        int best = 0;
        for (int k = 0; k < RATIOS.length; k++) {
            cost[k] = cost(columns, y, weight, step, RATIOS[k]);
            if (cost[k] < cost[best]) {
                best = k;
            }
        }
        if (best < 2 || best == RATIOS.length - 1) {
            return RATIOS[best];
        }
        double bend = cost[best - 1] - 2 * cost[best] + cost[best + 1];
        double shift = bend > 0 ? 0.5 * (cost[best - 1] - cost[best + 1]) / bend : 0;
        return RATIOS[best] * Math.pow(10, 0.5 * Math.max(-0.5, Math.min(0.5, shift)));
    }

    /** Minus twice the logarithm of the restricted likelihood, up to a constant. */
    private static double cost(double[][] columns, double[] y, double[] weight, double step, double ratio) {
        Whitened white = whiten(with(columns, y), weight, step, ratio);
        int p = columns.length;
        double[] target = white.series()[p];
        Regression fit = Regression.fit(first(white.series(), p), target);
        int free = target.length - p;
        return white.logVariance() + free * Math.log(fit.squares() / free) + fit.logDeterminant();
    }

    static double[][] with(double[][] columns, double[] y) {
        double[][] all = Arrays.copyOf(columns, columns.length + 1);
        all[columns.length] = y;
        return all;
    }

    static double[][] first(double[][] series, int count) {
        return Arrays.copyOf(series, count);
    }
}
