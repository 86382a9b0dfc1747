package gripwright.signal;

import gripwright.stats.Interval;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.statistics.distribution.TDistribution;

/** Slopes of all taxels while one is pressed. */
final class CrossTalk {
    private static final double BLOCK = 1;

    /** What creep does to the slope of a short press, as a share of it; as found on invented logs. */
    private static final double SHORT_PRESS = 0.01;

    private CrossTalk() {}

    /** A slope at small force with one standard deviation and its degrees of freedom [reading/N]. */
    record Slope(double value, double error, double freedom) {}

    /**
     * Slope of readings against force over some loads, each on a straight base line from the second before it to the
     * second after it.
     *
     * @param readings per bin, NaN where missing
     * @param force per bin [N]
     * @param play of the pressed taxel, half width [N]
     * @param own whether it is the pressed taxel that reads: it feels the force behind its play, and its reading bends;
     *     what a neighbour feels is too little to
     */
    static Slope slope(double[] readings, double[] force, List<Span> loads, double step, double play, boolean own) {
        List<double[]> rows = new ArrayList<>();
        List<Integer> blocks = new ArrayList<>();
        int second = Math.max(2, (int) Math.round(1 / step));
        int block = 0;
        double[] behind = play > 0 ? Play.of(force, play) : force;
        for (Span load : loads) {
            double before = mean(readings, load.from() - second - 2, load.from() - 2);
            double after = mean(readings, load.to() + 2, load.to() + second + 2);
            double rest = play > 0 ? behind[Math.max(0, load.from() - 2)] : 0; // the base line was read there
            for (int i = load.from(); i < load.to(); i++) {
                double u = (i - load.from()) / (double) load.length();
                double above = readings[i] - before - u * (after - before);
                if (!Double.isNaN(above)) {
                    rows.add(new double[] {above, own ? behind[i] - rest : force[i], force[i] * force[i]});
                    blocks.add(block + (int) ((i - load.from()) * step / BLOCK));
                }
            }
            block += (int) (load.length() * step / BLOCK) + 1;
        }
        if (rows.size() < 8) {
            return new Slope(Double.NaN, Double.NaN, 1);
        }
        int p = own ? 2 : 1;
        double[][] columns = new double[p][rows.size()];
        double[] y = new double[rows.size()];
        for (int i = 0; i < y.length; i++) {
            for (int k = 0; k < p; k++) {
                columns[k][i] = rows.get(i)[k + 1];
            }
            y[i] = rows.get(i)[0];
        }
        Regression fit = Regression.fit(columns, y);
        double variance = fit.deviation() * fit.deviation();
        double[] off = new double[block];
        for (int i = 0; i < y.length; i++) {
            for (int k = 0; k < p; k++) {
                off[blocks.get(i)] += fit.covariance()[0][k] * columns[k][i] * fit.residuals()[i] / variance;
            }
        }
        double spread = 0;
        for (double o : off) {
            spread += o * o;
        }
        int free = Math.max(3, block - p);
        spread *= block / (double) Math.max(1, block - p);
        return new Slope(fit.coefficients()[0], Math.sqrt(Math.max(spread, fit.covariance()[0][0])), free);
    }

    private static double mean(double[] values, int from, int to) {
        double sum = 0;
        int n = 0;
        for (int i = Math.max(0, from); i < Math.min(values.length, to); i++) {
            if (!Double.isNaN(values[i])) {
                sum += values[i];
                n++;
            }
        }
        return n > 0 ? sum / n : Double.NaN;
    }

    /** The share of one slope in that of the pressed taxel. */
    static Calibration.Share share(int pressed, int reads, Slope other, Slope own) {
        double share = other.value() / own.value();
        double error =
                Math.hypot(other.error() / own.value(), share * Math.hypot(own.error() / own.value(), SHORT_PRESS));
        double half =
                TDistribution.of(Math.min(other.freedom(), own.freedom())).inverseSurvivalProbability(0.025) * error;
        return new Calibration.Share(pressed, reads, other.value(), share, new Interval(share - half, share + half));
    }
}
