package gripwright.signal;

import gripwright.check.Check;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.DecompositionSolver;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.QRDecomposition;
import org.hipparchus.linear.RealMatrix;

/**
 * Linear least squares by a Householder QR of columns scaled to length 1, with two steps of refinement whose residuals
 * are summed with twice the digits.
 *
 * @param coefficients shape p
 * @param covariance of the coefficients for independent errors of one size, shape p x p
 * @param residuals y less the fit, shape n
 * @param squares sum of the squared residuals
 * @param logDeterminant of X'X
 */
record Regression(
        double[] coefficients, double[][] covariance, double[] residuals, double squares, double logDeterminant) {
    /** A scaled column this much shorter once the others are taken out is one of their mixtures. */
    private static final double DEPENDENT = 1e-14;

    private static final int REFINEMENTS = 2;

    /** Standard deviation of the errors. */
    double deviation() {
        return Math.sqrt(squares / (residuals.length - coefficients.length));
    }

    /** Standard deviation of a coefficient. */
    double deviation(int coefficient) {
        return Math.sqrt(covariance[coefficient][coefficient]);
    }

    /**
     * Fits y by a sum of columns.
     *
     * @param columns shape p x n
     * @param y shape n, n above p
     * @throws IllegalArgumentException if columns depend on one another
     */
    static Regression fit(double[][] columns, double[] y) {
        int p = columns.length;
        int n = y.length;
        Check.that(n > p, n + " readings cannot tell " + p + " coefficients");
        double[] scale = new double[p];
        double[][] rows = new double[n][p];
        for (int k = 0; k < p; k++) {
            Check.count(columns[k].length, n, "column " + k, "one value a reading");
            double sum = 0;
            for (double v : columns[k]) {
                sum += v * v;
            }
            scale[k] = Math.sqrt(sum);
            Check.that(
                    scale[k] > 0 && Double.isFinite(scale[k]), "column " + k + " of the fit is " + scale[k] + " long");
            for (int i = 0; i < n; i++) {
                rows[i][k] = columns[k][i] / scale[k];
            }
        }
        QRDecomposition qr = new QRDecomposition(new Array2DRowRealMatrix(rows, false));
        RealMatrix r = qr.getR().getSubMatrix(0, p - 1, 0, p - 1);
        double logDeterminant = 0;
        for (int k = 0; k < p; k++) {
            double pivot = Math.abs(r.getEntry(k, k));
            Check.that(pivot > DEPENDENT, "column " + k + " of the fit depends on those before it");
            logDeterminant += 2 * (Math.log(pivot) + Math.log(scale[k]));
        }
        DecompositionSolver solver = qr.getSolver();
        double[] b = solver.solve(new ArrayRealVector(y, false)).toArray();
        double[] residuals = residuals(rows, b, y);
        for (int step = 0; step < REFINEMENTS; step++) {
            double[] d = solver.solve(new ArrayRealVector(residuals, false)).toArray();
            for (int k = 0; k < p; k++) {
                b[k] += d[k];
            }
            residuals = residuals(rows, b, y);
        }
        double squares = 0;
        for (double e : residuals) {
            squares += e * e;
        }
        double[][] inverse = inverseOfUpper(r);
        double[][] covariance = new double[p][p];
        double variance = squares / (n - p);
        for (int i = 0; i < p; i++) {
            for (int j = 0; j < p; j++) {
                double sum = 0;
                for (int k = Math.max(i, j); k < p; k++) {
                    sum += inverse[i][k] * inverse[j][k];
                }
                covariance[i][j] = variance * sum / (scale[i] * scale[j]);
            }
        }
        for (int k = 0; k < p; k++) {
            b[k] /= scale[k];
        }
        return new Regression(b, covariance, residuals, squares, logDeterminant);
    }

    private static double[][] inverseOfUpper(RealMatrix r) {
        RealMatrix inverse = r.copy();
        int p = r.getRowDimension();
        DecompositionSolver solver = new QRDecomposition(inverse).getSolver();
        return solver.solve(MatrixUtils.createRealIdentityMatrix(p)).getData();
    }

    /** Each product and sum with its rounding error carried along (Ogita, Rump and Oishi's dot product, from memory). */
    private static double[] residuals(double[][] rows, double[] b, double[] y) {
        double[] out = new double[y.length];
        for (int i = 0; i < y.length; i++) {
            double sum = y[i];
            double lost = 0;
            for (int k = 0; k < b.length; k++) {
                double product = -rows[i][k] * b[k];
                lost += Math.fma(-rows[i][k], b[k], -product);
                double next = sum + product;
                double part = next - sum;
                lost += (sum - (next - part)) + (product - part);
                sum = next;
            }
            out[i] = sum + lost;
        }
        return out;
    }
}
