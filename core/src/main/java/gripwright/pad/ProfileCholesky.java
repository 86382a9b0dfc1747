package gripwright.pad;

/**
 * Cholesky factor of a sparse symmetric positive definite matrix, row by row from each row's first entry. Own code
 * because the numbering of a pad's mesh keeps rows short, and a general sparse library would bring more than it saves.
 */
final class ProfileCholesky {
    private final int[] first;
    private final double[][] rows;

    /** @param first column of the first entry of each row, shape n; kept */
    ProfileCholesky(int[] first) {
        this.first = first;
        rows = new double[first.length][];
        for (int i = 0; i < first.length; i++) {
            rows[i] = new double[i - first[i] + 1];
        }
    }

    void add(int i, int j, double value) {
        if (i >= j) {
            rows[i][j - first[i]] += value;
        } else {
            rows[j][i - first[j]] += value;
        }
    }

    /** Replaces the matrix by its factor. */
    void factor() {
        for (int i = 0; i < rows.length; i++) {
            double[] row = rows[i];
            int start = first[i];
            for (int j = start; j < i; j++) {
                int from = Math.max(start, first[j]);
                double sum = dot(row, from - start, rows[j], from - first[j], j - from);
                row[j - start] = (row[j - start] - sum) / rows[j][j - first[j]];
            }
            double rest = row[i - start] - dot(row, 0, row, 0, i - start);
            if (!(rest > 0)) {
                throw new IllegalArgumentException("the stiffness matrix is not positive definite at row " + i + " of "
                        + rows.length + "; part of the pad is not held, or a modulus is not positive");
            }
            row[i - start] = Math.sqrt(rest);
        }
    }

    private static double dot(double[] a, int ia, double[] b, int ib, int n) {
        double s0 = 0;
        double s1 = 0;
        double s2 = 0;
        double s3 = 0;
        int k = 0;
        for (; k + 3 < n; k += 4) {
            s0 += a[ia + k] * b[ib + k];
            s1 += a[ia + k + 1] * b[ib + k + 1];
            s2 += a[ia + k + 2] * b[ib + k + 2];
            s3 += a[ia + k + 3] * b[ib + k + 3];
        }
        for (; k < n; k++) {
            s0 += a[ia + k] * b[ib + k];
        }
        return s0 + s1 + s2 + s3;
    }

    /** Solves in place, after {@link #factor}. */
    void solve(double[] x) {
        for (int i = 0; i < rows.length; i++) {
            double[] row = rows[i];
            x[i] = (x[i] - dot(row, 0, x, first[i], i - first[i])) / row[i - first[i]];
        }
        for (int i = rows.length - 1; i >= 0; i--) {
            double[] row = rows[i];
            x[i] /= row[i - first[i]];
            for (int k = 0; k < i - first[i]; k++) {
                x[first[i] + k] -= row[k] * x[i];
            }
        }
    }
}
