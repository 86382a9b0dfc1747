package gripwright.math;

/**
 * Solves small dense systems in place of the same work arrays, for one size; allocates nothing after construction.
 *
 * <p>The unknowns are scaled so that all are lengths and all residuals forces: the matrix used is a[i][j] / (s_i s_j).
 * Own code because a library call would allocate and convert at every one of some thousand solves of a run.
 */
public final class DenseSolver {
    /** Pivots below this (of scaled entries) send the elimination to the version with row exchanges. */
    private static final double SMALL_PIVOT = 1e-3;

    private static final double SINGULAR = 1e-8;
    private static final double RELATIVE_PIVOT = 1e-9;

    private final int n;
    private final double[] inverseScale;
    private final double[] work;

    /** @param scale length per unit of each unknown, shape n, all above 0; copied */
    public DenseSolver(double[] scale) {
        n = scale.length;
        inverseScale = new double[n];
        for (int i = 0; i < n; i++) {
            inverseScale[i] = 1 / scale[i];
        }
        work = new double[n * n];
    }

    /** Largest scaled diagonal entry of a, the natural size for a shift. */
    public double largestDiagonal(double[] a) {
        double largest = 0;
        for (int i = 0; i < n; i++) {
            largest = Math.max(largest, Math.abs(a[i * n + i]) * inverseScale[i] * inverseScale[i]);
        }
        return largest;
    }

    /**
     * Factors the symmetric a + shift (scaled) by Cholesky and solves for -g.
     *
     * @param a shape n x n, lower triangle used
     * @param shift added to the scaled diagonal
     * @param g right-hand side with opposite sign, shape n
     * @param d out: solution, shape n
     * @return false if a + shift is not positive definite; d is then undefined
     */
    public boolean choleskySolve(double[] a, double shift, double[] g, double[] d) {
        double[] l = work;
        double[] w = inverseScale;
        for (int i = 0; i < n; i++) {
            int row = i * n;
            double wi = w[i];
            for (int k = 0; k < i; k++) {
                int other = k * n;
                double sum = a[row + k] * wi * w[k];
                for (int m = 0; m < k; m++) {
                    sum -= l[row + m] * l[other + m];
                }
                l[row + k] = sum * l[other + k];
            }
            double diagonal = a[row + i] * wi * wi + shift;
            double pivot = diagonal;
            for (int m = 0; m < i; m++) {
                pivot -= l[row + m] * l[row + m];
            }
            if (!(pivot > RELATIVE_PIVOT * Math.abs(diagonal)) || !(pivot > 0)) {
                return false;
            }
            l[row + i] = 1 / Math.sqrt(pivot);
        }
        for (int i = 0; i < n; i++) {
            double sum = -g[i] * w[i];
            for (int m = 0; m < i; m++) {
                sum -= l[i * n + m] * d[m];
            }
            d[i] = sum * l[i * n + i];
        }
        for (int i = n - 1; i >= 0; i--) {
            double sum = d[i];
            for (int m = i + 1; m < n; m++) {
                sum -= l[m * n + i] * d[m];
            }
            d[i] = sum * l[i * n + i];
        }
        for (int i = 0; i < n; i++) {
            d[i] *= w[i];
        }
        return true;
    }

    /**
     * Solves (a + b) d = -g by elimination; a + b need not be symmetric.
     *
     * @return false if singular; d is then undefined
     */
    public boolean luSolve(double[] a, double[] b, double[] g, double[] d) {
        return eliminateInOrder(a, b, g, d) || eliminateWithExchanges(a, b, g, d);
    }

    private void load(double[] a, double[] b, double[] g, double[] d) {
        for (int i = 0; i < n; i++) {
            double wi = inverseScale[i];
            int row = i * n;
            for (int k = 0; k < n; k++) {
                work[row + k] = (a[row + k] + b[row + k]) * wi * inverseScale[k];
            }
            d[i] = -g[i] * wi;
        }
    }

    /** The usual case: the matrix is nearly positive definite, so the natural order is safe and quicker. */
    private boolean eliminateInOrder(double[] a, double[] b, double[] g, double[] d) {
        load(a, b, g, d);
        double[] m = work;
        int c = 0;
        for (; c + 1 < n; c += 2) {
            int row = c * n;
            int next = row + n;
            double pivot = m[row + c];
            if (!(Math.abs(pivot) > SMALL_PIVOT)) {
                return false;
            }
            double inverse = 1 / pivot;
            double factor = m[next + c] * inverse;
            for (int k = c + 1; k < n; k++) {
                m[next + k] -= factor * m[row + k];
            }
            d[c + 1] -= factor * d[c];
            double second = m[next + c + 1];
            if (!(Math.abs(second) > SMALL_PIVOT)) {
                return false;
            }
            eliminateTwo(m, d, c, inverse, 1 / second);
        }
        if (c < n && !(Math.abs(m[c * n + c]) > SMALL_PIVOT)) {
            return false;
        }
        backSubstitute(m, d);
        return true;
    }

    /** Two columns at once, so that each entry below is fetched and stored once for both; same sums, same rounding. */
    private void eliminateTwo(double[] m, double[] d, int c, double inverse, double inverse2) {
        int row = c * n;
        int next = row + n;
        for (int i = c + 2; i < n; i++) {
            int other = i * n;
            double factor = m[other + c] * inverse;
            double factor2 = (m[other + c + 1] - factor * m[row + c + 1]) * inverse2;
            if (factor == 0 && factor2 == 0) {
                continue;
            }
            for (int k = c + 2; k < n; k++) {
                m[other + k] = m[other + k] - factor * m[row + k] - factor2 * m[next + k];
            }
            d[i] = d[i] - factor * d[c] - factor2 * d[c + 1];
        }
    }

    private boolean eliminateWithExchanges(double[] a, double[] b, double[] g, double[] d) {
        load(a, b, g, d);
        double[] m = work;
        for (int c = 0; c < n; c++) {
            int best = c;
            for (int i = c + 1; i < n; i++) {
                if (Math.abs(m[i * n + c]) > Math.abs(m[best * n + c])) {
                    best = i;
                }
            }
            if (!(Math.abs(m[best * n + c]) > SINGULAR)) {
                return false;
            }
            if (best != c) {
                swapRows(m, d, c, best);
            }
            eliminateBelow(m, d, c, 1 / m[c * n + c]);
        }
        backSubstitute(m, d);
        return true;
    }

    private void eliminateBelow(double[] m, double[] d, int c, double inversePivot) {
        int row = c * n;
        for (int i = c + 1; i < n; i++) {
            int other = i * n;
            double factor = m[other + c] * inversePivot;
            if (factor == 0) {
                continue;
            }
            for (int k = c + 1; k < n; k++) {
                m[other + k] -= factor * m[row + k];
            }
            d[i] -= factor * d[c];
        }
    }

    private void swapRows(double[] m, double[] d, int one, int two) {
        for (int k = 0; k < n; k++) {
            double keep = m[one * n + k];
            m[one * n + k] = m[two * n + k];
            m[two * n + k] = keep;
        }
        double keep = d[one];
        d[one] = d[two];
        d[two] = keep;
    }

    private void backSubstitute(double[] m, double[] d) {
        for (int i = n - 1; i >= 0; i--) {
            int row = i * n;
            double sum = d[i];
            for (int k = i + 1; k < n; k++) {
                sum -= m[row + k] * d[k];
            }
            d[i] = sum / m[row + i];
        }
        for (int i = 0; i < n; i++) {
            d[i] *= inverseScale[i];
        }
    }
}
