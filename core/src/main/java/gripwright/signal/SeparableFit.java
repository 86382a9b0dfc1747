package gripwright.signal;

import gripwright.check.Check;
import java.util.Arrays;

/**
 * Least squares for a sum of columns that themselves depend on a few parameters, by variable projection: the coefficients
 * are solved for at every step, only the parameters are searched (Golub and Pereyra 1973, in Kaufman's linearised form;
 * from memory).
 *
 * @param parameters of the columns, shape q
 * @param columns of the joint fit: those of the model, then the derivatives by the parameters
 * @param linear fit of coefficients and parameters together at the end: p coefficients, then q parameters
 * @param squares sum of the squared residuals
 * @param steps taken
 */
record SeparableFit(double[] parameters, double[][] columns, Regression linear, double squares, int steps) {
    /** Relative step of a central difference. */
    private static final double NUDGE = 1e-5;

    private static final int MOST_STEPS = 60;
    private static final int HALVINGS = 12;

    /** Columns for given parameters. */
    interface Columns {
        /** @return shape p x n */
        double[][] at(double[] parameters);
    }

    /**
     * @param columns of the model
     * @param y shape n
     * @param start parameters to start from
     * @param unit size of each parameter, above 0, that a step is measured against
     * @param least lower ends of the parameters
     * @param most upper ends
     * @param settled relative step at which the search ends
     */
    static SeparableFit of(
            Columns columns, double[] y, double[] start, double[] unit, double[] least, double[] most, double settled) {
        int q = start.length;
        double[] at = start.clone();
        Regression here = Regression.fit(columns.at(at), y);
        int steps = 0;
        while (steps < MOST_STEPS && q > 0) {
            steps++;
            Regression joint = Regression.fit(joined(columns, at, unit, here, least, most), y);
            int p = here.coefficients().length;
            double[] step = Arrays.copyOfRange(joint.coefficients(), p, p + q);
            double[] next = null;
            Regression better = null;
            double share = 1;
            for (int half = 0; half < HALVINGS && better == null; half++, share /= 2) {
                double[] trial = at.clone();
                for (int k = 0; k < q; k++) {
                    trial[k] = Math.min(most[k], Math.max(least[k], at[k] + share * step[k]));
                }
                Regression there = Regression.fit(columns.at(trial), y);
                if (there.squares() <= here.squares()) {
                    next = trial;
                    better = there;
                }
            }
            if (next == null || better == null) {
                break;
            }
            double moved = 0;
            for (int k = 0; k < q; k++) {
                moved = Math.max(moved, Math.abs(next[k] - at[k]) / Math.max(Math.abs(at[k]), unit[k]));
            }
            at = next;
            here = better;
            if (moved < settled) {
                break;
            }
        }
        double[][] all = joined(columns, at, unit, here, least, most);
        return new SeparableFit(at, all, Regression.fit(all, y), here.squares(), steps);
    }

    /** The columns with the derivatives of the fit by the parameters after them. */
    private static double[][] joined(
            Columns columns, double[] at, double[] unit, Regression here, double[] least, double[] most) {
        double[][] now = columns.at(at);
        int p = now.length;
        Check.count(here.coefficients().length, p, "the fit", "one coefficient a column");
        double[][] all = Arrays.copyOf(now, p + at.length);
        for (int k = 0; k < at.length; k++) {
            double h = NUDGE * Math.max(Math.abs(at[k]), unit[k]);
            double[] up = at.clone();
            double[] down = at.clone();
            up[k] = Math.min(most[k], at[k] + h);
            down[k] = Math.max(least[k], at[k] - h);
            all[p + k] = slope(columns.at(up), columns.at(down), here.coefficients(), up[k] - down[k]);
        }
        return all;
    }

    private static double[] slope(double[][] up, double[][] down, double[] b, double span) {
        double[] slope = new double[up[0].length];
        for (int c = 0; c < b.length; c++) {
            for (int i = 0; i < slope.length; i++) {
                slope[i] += b[c] * (up[c][i] - down[c][i]) / span;
            }
        }
        return slope;
    }
}
