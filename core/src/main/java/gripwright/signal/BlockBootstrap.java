package gripwright.signal;

import java.util.Arrays;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;

/**
 * How far a fit would scatter if stretches of its readings were drawn anew: moving blocks keep what correlation is left
 * between neighbours. Only the linear effect on the coefficients is followed, so no draw needs another fit.
 */
final class BlockBootstrap {
    private static final int DRAWS = 300;
    private static final long SEED = 1;

    private BlockBootstrap() {}

    /**
     * Variances of the coefficients over the draws.
     *
     * @param columns of the fit, shape p x n
     * @param residuals shape n
     * @param inverse of X'X, shape p x p
     * @param block readings per block
     */
    static double[] variances(double[][] columns, double[] residuals, double[][] inverse, int block) {
        int p = columns.length;
        int n = residuals.length;
        int length = Math.max(1, Math.min(block, n / 2));
        double[][] sum = new double[p][n + 1];
        for (int k = 0; k < p; k++) {
            for (int i = 0; i < n; i++) {
                sum[k][i + 1] = sum[k][i] + columns[k][i] * residuals[i];
            }
        }
        int blocks = Math.max(2, Math.round((float) n / length));
        double stretch = Math.sqrt((double) n / ((double) blocks * length));
        UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(SEED);
        double[] mean = new double[p];
        double[] square = new double[p];
        double[] score = new double[p];
        for (int draw = 0; draw < DRAWS; draw++) {
            Arrays.fill(score, 0);
            for (int b = 0; b < blocks; b++) {
                int from = random.nextInt(n - length + 1);
                for (int k = 0; k < p; k++) {
                    score[k] += sum[k][from + length] - sum[k][from];
                }
            }
            for (int k = 0; k < p; k++) {
                double off = 0;
                for (int j = 0; j < p; j++) {
                    off += inverse[k][j] * score[j];
                }
                off *= stretch;
                mean[k] += off / DRAWS;
                square[k] += off * off / DRAWS;
            }
        }
        double[] variances = new double[p];
        for (int k = 0; k < p; k++) {
            variances[k] = Math.max(0, square[k] - mean[k] * mean[k]);
        }
        return variances;
    }
}
