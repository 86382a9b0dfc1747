package gripwright.signal;

import java.util.Arrays;
import java.util.stream.IntStream;

/** Fits {@link TaxelModel} to one taxel: variable projection for play and creep time, robust weights, wandering noise. */
final class TaxelFit {
    static final int ZERO = 0;
    static final int SENSITIVITY = 1;
    static final int QUADRATIC = 2;
    static final int CREEP = 3;

    private static final double ROW = 0.2;
    private static final double BLOCK = 20;
    private static final double LONGEST_CREEP = 120;
    private static final double SHORTEST_CREEP = 1;
    private static final double MOST_PLAY = 0.1;
    private static final double SETTLED = 1e-4;
    private static final double CLEAR = 4;
    private static final double MOST_FREEDOM = 8;
    private static final double[] PLAY_STARTS = {0.002, 0.008, 0.02, 0.05};
    private static final double[] CREEP_STARTS = {4, 12, 36};

    /**
     * What a fit needs.
     *
     * @param readings means per bin, NaN where none is to be used
     * @param history force on this taxel per bin, all of it, also where no reading is used [N]
     * @param temperature per bin [degC]; empty to leave it out
     * @param ambient per bin [Pa]; empty to leave it out
     * @param play whether to look for play
     */
    record Input(
            Bins bins,
            double[] readings,
            double[] history,
            double top,
            double[] temperature,
            double[] ambient,
            double temperature0,
            double ambient0,
            boolean play) {}

    /**
     * @param coefficients of the columns: zero, sensitivity, quadratic, creep, then temperature and ambient if present
     * @param play half width [N]
     * @param creepTime [s]
     * @param creepTimeKnown whether the log says how fast it creeps
     * @param covariance of the coefficients, the play and the logarithm of the creep time, in this order; those that were
     *     not searched have zeros
     * @param freedom degrees of freedom for intervals
     * @param deviation of one row of 0.2 s [reading]
     * @param white variance of one bin's noise [reading^2]
     * @param walk growth of the wandering's variance per second [reading^2/s]
     */
    record Fitted(
            double[] coefficients,
            double play,
            double creepTime,
            boolean creepTimeKnown,
            double[][] covariance,
            double freedom,
            double deviation,
            double white,
            double walk,
            int temperatureAt,
            int ambientAt) {
        int count() {
            return coefficients.length;
        }

        double[] parameters() {
            double[] all = Arrays.copyOf(coefficients, count() + 2);
            all[count()] = play;
            all[count() + 1] = Math.log(creepTime);
            return all;
        }

        double error(int parameter) {
            return Math.sqrt(covariance[parameter][parameter]);
        }
    }

    private final Input in;
    private final int perRow;
    private final int rows;
    private final double step;
    private final double[] middles;
    private final double[] y;
    private final double[] base;
    private final double shift;
    private final double[][] steady;

    private TaxelFit(Input in) {
        this.in = in;
        this.perRow = Math.max(1, (int) Math.round(ROW / in.bins().step()));
        this.rows = (in.bins().count() + perRow - 1) / perRow;
        this.step = perRow * in.bins().step();
        this.middles = in.bins().middles();
        double[] there =
                Arrays.stream(in.readings()).filter(v -> !Double.isNaN(v)).toArray();
        this.shift = RobustWeights.median(there);
        this.base = new double[rows];
        double[] shifted = new double[in.readings().length];
        Arrays.setAll(shifted, b -> in.readings()[b] - shift);
        this.y = toRows(shifted);
        for (int b = 0; b < in.bins().count(); b++) {
            if (!Double.isNaN(in.readings()[b])) {
                base[b / perRow] += 1.0 / perRow;
            }
        }
        for (int r = 0; r < rows; r++) {
            base[r] = base[r] < 0.3 ? 0 : base[r];
        }
        double[] one = new double[rows];
        Arrays.fill(one, 1);
        double[][] extra = new double[0][];
        if (in.temperature().length > 0) {
            extra = with(extra, toRows(less(in.temperature(), in.temperature0())));
        }
        if (in.ambient().length > 0) {
            extra = with(extra, toRows(less(in.ambient(), in.ambient0())));
        }
        this.steady = with(extra, one);
    }

    private static double[][] with(double[][] some, double[] one) {
        return LocalLevel.with(some, one);
    }

    private static double[] less(double[] values, double by) {
        double[] out = new double[values.length];
        Arrays.setAll(out, i -> values[i] - by);
        return out;
    }

    /** Means over the bins of a row that hold a reading; 0 for an empty row, whose weight is 0. */
    private double[] toRows(double[] bins) {
        double[] out = new double[rows];
        int[] n = new int[rows];
        for (int b = 0; b < bins.length; b++) {
            if (!Double.isNaN(in.readings()[b])) {
                out[b / perRow] += bins[b];
                n[b / perRow]++;
            }
        }
        for (int r = 0; r < rows; r++) {
            out[r] = n[r] > 0 ? out[r] / n[r] : 0;
        }
        return out;
    }

    /** Columns of the model for a play and the logarithm of a creep time. */
    private double[][] columns(double play, double logCreep) {
        double[] p = Play.of(in.history(), play);
        double[] square = new double[p.length];
        Arrays.setAll(square, i -> p[i] * p[i]);
        double[] c = Creep.of(middles, in.history(), Math.exp(logCreep));
        int extra = steady.length - 1;
        double[][] out = new double[4 + extra][];
        out[ZERO] = steady[extra];
        out[SENSITIVITY] = toRows(p);
        out[QUADRATIC] = toRows(square);
        out[CREEP] = toRows(c);
        System.arraycopy(steady, 0, out, 4, extra);
        return out;
    }

    /** @throws IllegalArgumentException if the readings cannot tell the columns apart */
    static Fitted of(Input in) {
        return new TaxelFit(in).fit();
    }

    private Fitted fit() {
        double ratio = 1e-3;
        double[] weight = base.clone();
        double[] at = start(weight, ratio);
        weight = weights(at, weight, ratio, true);
        SeparableFit fit = null;
        boolean creepTime = false;
        for (int round = 0; round < 3; round++) {
            ratio = LocalLevel.ratio(columns(at[0], at[1]), y, weight, step);
            creepTime = isCreepClear(at, weight, ratio);
            fit = search(at, weight, ratio, creepTime);
            at = whole(fit.parameters(), at, creepTime);
            if (round < 2) {
                weight = weights(at, base, ratio, false);
            }
        }
        LocalLevel.Whitened last = whitened(at, weight, ratio);
        int p = last.series().length - 1;
        if (fit == null) {
            throw new IllegalStateException("no round of the fit was made");
        }
        return result(fit, at, creepTime, p, last.series(), ratio);
    }

    private double[] whole(double[] found, double[] before, boolean creepTime) {
        double[] at = before.clone();
        int k = 0;
        if (in.play()) {
            at[0] = found[k++];
        }
        if (creepTime) {
            at[1] = found[k];
        }
        return at;
    }

    private LocalLevel.Whitened whitened(double[] at, double[] weight, double ratio) {
        return LocalLevel.whiten(LocalLevel.with(columns(at[0], at[1]), y), weight, step, ratio);
    }

    /** The best of a coarse grid. */
    private double[] start(double[] weight, double ratio) {
        double[] best = {0, Math.log(CREEP_STARTS[1])};
        double least = Double.POSITIVE_INFINITY;
        for (double play : in.play() ? PLAY_STARTS : new double[] {0}) {
            for (double creep : CREEP_STARTS) {
                double[] at = {play * in.top(), Math.log(creep)};
                LocalLevel.Whitened w = whitened(at, weight, ratio);
                int p = w.series().length - 1;
                double squares = Regression.fit(LocalLevel.first(w.series(), p), w.series()[p])
                        .squares();
                if (squares < least) {
                    least = squares;
                    best = at;
                }
            }
        }
        return best;
    }

    private double[] weights(double[] at, double[] from, double ratio, boolean first) {
        LocalLevel.Whitened w = whitened(at, from, ratio);
        int p = w.series().length - 1;
        double[] left =
                Regression.fit(LocalLevel.first(w.series(), p), w.series()[p]).residuals();
        double scale = RobustWeights.scale(left);
        double[] out = from.clone();
        for (int i = 0; i < left.length; i++) {
            double u = scale > 0 ? left[i] / scale : 0;
            out[w.rows()[i]] *= first ? RobustWeights.huber(u) : RobustWeights.tukey(u);
        }
        return out;
    }

    private boolean isCreepClear(double[] at, double[] weight, double ratio) {
        LocalLevel.Whitened w = whitened(at, weight, ratio);
        int p = w.series().length - 1;
        Regression fit = Regression.fit(LocalLevel.first(w.series(), p), w.series()[p]);
        return Math.abs(fit.coefficients()[CREEP]) > CLEAR * fit.deviation(CREEP);
    }

    private SeparableFit search(double[] at, double[] weight, double ratio, boolean creepTime) {
        double[] target =
                LocalLevel.whiten(new double[][] {y}, weight, step, ratio).series()[0];
        SeparableFit.Columns columns = found -> {
            double[] here = whole(found, at, creepTime);
            return LocalLevel.whiten(columns(here[0], here[1]), weight, step, ratio)
                    .series();
        };
        double[] unit = {0.003 * in.top(), 0.3};
        double[] least = {0, Math.log(SHORTEST_CREEP)};
        double[] most = {MOST_PLAY * in.top(), Math.log(LONGEST_CREEP)};
        int[] free =
                IntStream.of(0, 1).filter(k -> k == 0 ? in.play() : creepTime).toArray();
        return SeparableFit.of(
                columns, target, pick(at, free), pick(unit, free), pick(least, free), pick(most, free), SETTLED);
    }

    private static double[] pick(double[] values, int[] which) {
        return Arrays.stream(which).mapToDouble(k -> values[k]).toArray();
    }

    /** Standard deviations as the model of noise has them, or wider if blocks of the readings scatter more. */
    private Fitted result(SeparableFit fit, double[] at, boolean creepTime, int p, double[][] columns, double ratio) {
        Regression linear = fit.linear();
        int q = fit.parameters().length;
        double variance = linear.deviation() * linear.deviation();
        double[][] inverse = new double[p + q][p + q];
        for (int i = 0; i < p + q; i++) {
            for (int j = 0; j < p + q; j++) {
                inverse[i][j] = linear.covariance()[i][j] / variance;
            }
        }
        int block = (int) Math.round(BLOCK / step);
        double[] drawn = BlockBootstrap.variances(fit.columns(), linear.residuals(), inverse, block);
        double[] wider = new double[p + q];
        for (int i = 0; i < p + q; i++) {
            wider[i] = Math.sqrt(Math.max(1, drawn[i] / linear.covariance()[i][i]));
        }
        double[][] covariance = new double[p + 2][p + 2];
        int[] place = new int[p + q];
        for (int i = 0; i < p + q; i++) {
            place[i] = i < p ? i : in.play() && i == p ? p : p + 1;
        }
        for (int i = 0; i < p + q; i++) {
            for (int j = 0; j < p + q; j++) {
                covariance[place[i]][place[j]] = linear.covariance()[i][j] * wider[i] * wider[j];
            }
        }
        double[] b = Regression.fit(LocalLevel.first(columns, p), columns[p]).coefficients();
        b[ZERO] += shift;
        double blocks = (double) linear.residuals().length / block;
        // The noise's law is itself estimated, its wandering from few independent stretches: as with 8 degrees of
        // freedom.
        double freedom = Math.max(4, Math.min(MOST_FREEDOM, blocks - p));
        boolean hasTemperature = in.temperature().length > 0;
        return new Fitted(
                b,
                at[0],
                Math.exp(at[1]),
                creepTime,
                covariance,
                freedom,
                linear.deviation(),
                variance * perRow,
                variance * ratio,
                hasTemperature ? 4 : -1,
                in.ambient().length > 0 ? (hasTemperature ? 5 : 4) : -1);
    }

    /** What the model reads in every bin, from its parameters in the order of {@link Fitted#parameters}. */
    static double[] reading(Input in, double[] middles, double[] parameters) {
        int count = parameters.length - 2;
        double[] p = Play.of(in.history(), Math.max(0, parameters[count]));
        double[] c = Creep.of(middles, in.history(), Math.exp(parameters[count + 1]));
        double[] out = new double[p.length];
        for (int i = 0; i < p.length; i++) {
            out[i] = parameters[SENSITIVITY] * p[i] + parameters[QUADRATIC] * p[i] * p[i] + parameters[CREEP] * c[i];
        }
        return out;
    }
}
