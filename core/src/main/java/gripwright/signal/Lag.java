package gripwright.signal;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;

/**
 * How late the reference force is written: by {@code atStart} at the log's start, growing by {@code skew} per second.
 *
 * @param atStart [s]
 * @param atStartError one standard deviation [s]; NaN if there were no taps
 * @param skew [s/s]
 * @param skewError one standard deviation; NaN if there were not two groups of taps
 */
record Lag(double atStart, double atStartError, double skew, double skewError) {
    /** When the log has no taps. */
    static final Lag NONE = new Lag(0, Double.NaN, 0, Double.NaN);

    private static final double FARTHEST = 0.5;
    private static final double LEAST_LIKENESS = 0.3;

    /** Width of the bell, in readings, and how far it reaches: three means over three readings. */
    private static final double WIDTH = 1.41;

    private static final int REACH = 3;

    /** What a curve between readings of a sharp tap may shift it by, in steps; as found on invented logs. */
    private static final double BETWEEN = 0.0025;

    /** Below 100 readings a second the taps' corners are lost between them [1/s]; as found on invented logs at 50. */
    private static final double CORNERS = 0.6;

    private static final double FINE_STEP = 0.01;

    /** How alike white noise is to itself some readings on, once smoothed so: of (1, 3, 6, 7, 6, 3, 1), 141 at 0. */
    private static final double[] LIKENESS = {141, 126, 90, 50, 21, 6, 1};

    /**
     * The times at which the force's column shows what the taxels felt.
     *
     * @param time of the rows [s]
     */
    double[] shifted(double[] time) {
        double[] out = new double[time.length];
        Arrays.setAll(out, i -> time[i] + atStart + skew * (time[i] - time[0]));
        return out;
    }

    /**
     * A first estimate per group of taps: the shift at which the derivatives of both series are most alike (their
     * correlation's top, by a parabola). Play shifts it: {@link #refined} takes that out.
     *
     * @param series one for all taxels, shape n
     * @return shift of each group [s]; empty where nothing follows the taps
     */
    static Optional<Double> alike(
            double[] time, double[] series, double step, Reference reference, double from, double to) {
        double fine = step / 2;
        int most = (int) Math.round(FARTHEST / fine);
        int count = (int) ((to - from) / fine);
        double[] grid = new double[count];
        Arrays.setAll(grid, i -> from + i * fine);
        double[] wide = new double[count + 2 * most];
        Arrays.setAll(wide, i -> from + (i - most) * fine);
        double[] a = slopes(new Resample.Curve(time, series, step).at(grid));
        double[] b = slopes(reference.curve().at(wide));
        double[] likeness = new double[2 * most + 1];
        double own = 0;
        for (double v : a) {
            own += v * v;
        }
        int best = 0;
        for (int k = 0; k < likeness.length; k++) {
            double sum = 0;
            double other = 0;
            for (int i = 0; i < count; i++) {
                sum += a[i] * b[i + k];
                other += b[i + k] * b[i + k];
            }
            likeness[k] = own > 0 && other > 0 ? sum / Math.sqrt(own * other) : 0;
            if (likeness[k] > likeness[best]) {
                best = k;
            }
        }
        if (best == 0 || best == 2 * most || likeness[best] < LEAST_LIKENESS) {
            return Optional.empty();
        }
        double l = likeness[best - 1];
        double r = likeness[best + 1];
        double shift = 0.5 * (l - r) / (l - 2 * likeness[best] + r);
        return Optional.of((best - most + shift) * fine);
    }

    private static double[] slopes(double[] values) {
        double[] smooth = values.clone();
        Resample.bridge(smooth);
        smooth = Resample.smooth(smooth, 2);
        double[] slopes = new double[values.length];
        for (int i = 1; i + 1 < slopes.length; i++) {
            slopes[i] = Double.isNaN(smooth[i + 1] - smooth[i - 1]) ? 0 : smooth[i + 1] - smooth[i - 1];
        }
        return slopes;
    }

    /** A group's shift and its standard deviation, at the middle of the group [s]. */
    record Seen(double middle, double shift, double error) {}

    /** A line through one or two groups; to the start of the log. */
    static Lag through(List<Seen> seen, double start) {
        if (seen.isEmpty()) {
            return NONE;
        }
        Seen a = seen.get(0);
        if (seen.size() == 1) {
            return new Lag(a.shift(), a.error(), 0, Double.NaN);
        }
        Seen b = seen.get(seen.size() - 1);
        double apart = b.middle() - a.middle();
        double skew = (b.shift() - a.shift()) / apart;
        double skewError = Math.hypot(a.error(), b.error()) / apart;
        double back = a.middle() - start;
        double atStart = a.shift() - skew * back;
        double error = Math.hypot(a.error() * (1 + back / apart), b.error() * back / apart);
        return new Lag(atStart, error, skew, skewError);
    }

    /** Standard deviation of the shift for white noise that has been smoothed. */
    private static double error(SeparableFit fit, List<Integer> rows, double step) {
        Regression linear = fit.linear();
        double variance = linear.deviation() * linear.deviation();
        int n = rows.size();
        double[] effect = new double[n];
        for (int i = 0; i < n; i++) {
            for (int k = 0; k < 4; k++) {
                effect[i] += linear.covariance()[3][k] / variance * fit.columns()[k][i];
            }
        }
        double sum = 0;
        for (int i = 0; i < n; i++) {
            for (int k = i; k < n && rows.get(k) - rows.get(i) < LIKENESS.length; k++) {
                sum += (k == i ? 1 : 2) * effect[i] * effect[k] * LIKENESS[rows.get(k) - rows.get(i)] / LIKENESS[0];
            }
        }
        double corners = CORNERS * Math.max(0, step * step - FINE_STEP * FINE_STEP);
        return Math.hypot(Math.sqrt(variance * sum), BETWEEN * step + corners);
    }

    private static double[] smooth(double[] values) {
        double[] whole = values.clone();
        Resample.bridge(whole);
        return Resample.smooth(whole, WIDTH);
    }

    /** Rows that no gap and no missing reading is near. */
    private static boolean[] sure(double[] time, double[] values, double step) {
        boolean[] sure = new boolean[time.length];
        Arrays.fill(sure, true);
        for (int i = 0; i < time.length; i++) {
            if (Double.isNaN(values[i]) || i > 0 && time[i] - time[i - 1] > 1.5 * step) {
                Arrays.fill(sure, Math.max(0, i - REACH), Math.min(time.length, i + REACH + 1), false);
            }
        }
        return sure;
    }

    /**
     * The shift of one group of taps at which a model of the taxels fits best.
     *
     * @param time of the rows, shape n
     * @param felt mean of some taxels in N, NaN where missing, shape n
     * @param step usual step of the rows [s]
     * @param model what these taxels should show for a force, as {@code felt}
     * @param rough a first estimate for all of the log
     */
    static Optional<Seen> refined(
            double[] time,
            double[] felt,
            double step,
            Reference reference,
            UnaryOperator<double[]> model,
            Lag rough,
            double from,
            double to) {
        double[] base = rough.shifted(time);
        // Both are smoothed alike: between the readings of a sharp tap no curve is sure, and would be late or early.
        double[] stamps = reference.time();
        boolean[] sureForce = sure(stamps, reference.force(), reference.step());
        boolean[] sureFelt = sure(time, felt, step);
        double[] smoothFelt = smooth(felt);
        Resample.Curve curve = reference.curve();
        List<Integer> rows = new ArrayList<>();
        int j = 0;
        for (int i = 0; i < time.length; i++) {
            if (time[i] >= from && time[i] <= to && sureFelt[i]) {
                while (j + 1 < stamps.length && stamps[j + 1] <= base[i]) {
                    j++;
                }
                if (sureForce[j] && sureForce[Math.min(stamps.length - 1, j + 1)]) {
                    rows.add(i);
                }
            }
        }
        SeparableFit.Columns columns = shift -> {
            double[] at = new double[base.length];
            Arrays.setAll(at, i -> base[i] + shift[0]);
            double[] moved = curve.at(at);
            Resample.bridge(moved);
            double[] shown = Resample.smooth(model.apply(moved), WIDTH);
            double[][] out = new double[3][rows.size()];
            for (int k = 0; k < rows.size(); k++) {
                out[0][k] = 1;
                out[1][k] = shown[rows.get(k)];
                out[2][k] = time[rows.get(k)] - from; // warming and creep
            }
            return out;
        };
        double[] y = new double[rows.size()];
        Arrays.setAll(y, k -> smoothFelt[rows.get(k)]);
        if (y.length < 20) {
            return Optional.empty();
        }
        try {
            SeparableFit fit = SeparableFit.of(
                    columns,
                    y,
                    new double[] {0},
                    new double[] {step},
                    new double[] {-step * 5},
                    new double[] {step * 5},
                    1e-6);
            double middle = 0.5 * (from + to);
            double shift = rough.atStart() + rough.skew() * (middle - time[0]) + fit.parameters()[0];
            return Optional.of(new Seen(middle, shift, error(fit, rows, Math.max(step, reference.step()))));
        } catch (IllegalArgumentException e) {
            return Optional.empty(); // nothing moves in these rows
        }
    }
}
