package gripwright.math;

import gripwright.check.Check;

/**
 * Eigenvalues and vectors of a small symmetric matrix by Jacobi's rotations (G. Golub, C. Van Loan, "Matrix
 * Computations", from memory). A library would do the same for a dependency of the whole core.
 *
 * @param values in rising order, shape n
 * @param vectors vectors[i] belongs to values[i], length 1
 */
public record SymmetricEigen(double[] values, double[][] vectors) {
    private static final int MOST_SWEEPS = 60;

    /** @param matrix n x n, row-major; the mean of it and its transpose is taken */
    public static SymmetricEigen of(double[] matrix, int n) {
        Check.count(matrix.length, n * n, "matrix", "n x n");
        double[] a = new double[n * n];
        double[] v = new double[n * n];
        for (int i = 0; i < n; i++) {
            v[i * n + i] = 1;
            for (int k = 0; k < n; k++) {
                a[i * n + k] = 0.5 * (matrix[i * n + k] + matrix[k * n + i]);
            }
        }
        for (int sweep = 0; sweep < MOST_SWEEPS; sweep++) {
            double off = 0;
            for (int p = 0; p < n; p++) {
                for (int q = p + 1; q < n; q++) {
                    off += Math.abs(a[p * n + q]);
                    rotate(a, v, n, p, q);
                }
            }
            if (off == 0) {
                break;
            }
        }
        return sorted(a, v, n);
    }

    private static void rotate(double[] a, double[] v, int n, int p, int q) {
        double apq = a[p * n + q];
        if (Math.abs(apq) <= 1e-18 * (Math.abs(a[p * n + p]) + Math.abs(a[q * n + q]))) {
            a[p * n + q] = 0;
            a[q * n + p] = 0;
            return;
        }
        double theta = (a[q * n + q] - a[p * n + p]) / (2 * apq);
        double t = Math.copySign(1, theta) / (Math.abs(theta) + Math.sqrt(theta * theta + 1));
        double c = 1 / Math.sqrt(t * t + 1);
        double s = t * c;
        for (int k = 0; k < n; k++) {
            double kp = a[k * n + p];
            double kq = a[k * n + q];
            a[k * n + p] = c * kp - s * kq;
            a[k * n + q] = s * kp + c * kq;
        }
        for (int k = 0; k < n; k++) {
            double pk = a[p * n + k];
            double qk = a[q * n + k];
            a[p * n + k] = c * pk - s * qk;
            a[q * n + k] = s * pk + c * qk;
            double vp = v[k * n + p];
            double vq = v[k * n + q];
            v[k * n + p] = c * vp - s * vq;
            v[k * n + q] = s * vp + c * vq;
        }
    }

    private static SymmetricEigen sorted(double[] a, double[] v, int n) {
        Integer[] order = new Integer[n];
        for (int i = 0; i < n; i++) {
            order[i] = i;
        }
        java.util.Arrays.sort(order, java.util.Comparator.comparingDouble(i -> a[i * n + i]));
        double[] values = new double[n];
        double[][] vectors = new double[n][n];
        for (int i = 0; i < n; i++) {
            values[i] = a[order[i] * n + order[i]];
            for (int k = 0; k < n; k++) {
                vectors[i][k] = v[k * n + order[i]];
            }
        }
        return new SymmetricEigen(values, vectors);
    }
}
