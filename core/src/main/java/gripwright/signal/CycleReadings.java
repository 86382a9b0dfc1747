package gripwright.signal;

import gripwright.stats.Interval;
import java.util.List;
import org.apache.commons.statistics.distribution.ChiSquaredDistribution;

/** Means over the counted cycles at equal force, and how they scatter from cycle to cycle. */
final class CycleReadings {
    /** Levels as shares of full force: 5, 10, ..., 95 %. */
    static final int LEVELS = 19;

    private static final double WINDOW = 0.025;
    private static final double NEAR_TOP = 0.01;

    /** What counts of the degrees of freedom, as the noise's law is itself estimated. */
    private static final double SURE = 0.5;

    private CycleReadings() {}

    static double level(int k) {
        return 0.05 * (k + 1);
    }

    /** The middle of where the force is within 1 % of its greatest. */
    static int top(double[] force, Span cycle) {
        double peak = LoadCourse.peak(force, cycle);
        int first = -1;
        int last = -1;
        for (int i = cycle.from(); i < cycle.to(); i++) {
            if (force[i] >= (1 - NEAR_TOP) * peak) {
                first = first < 0 ? i : first;
                last = i;
            }
        }
        return (first + last) / 2;
    }

    /** Mean of a series over the counted cycles at the levels, loading first, then unloading; shape 2 x LEVELS. */
    static double[][] branches(double[] series, double[] force, List<Span> cycles, double full) {
        double[][] sum = new double[2][LEVELS];
        for (Span cycle : cycles) {
            int top = top(force, cycle);
            for (int k = 0; k < LEVELS; k++) {
                double at = level(k) * full;
                sum[0][k] += crossing(series, force, cycle.from() - 2, top, at) / cycles.size();
                sum[1][k] += crossing(series, force, top, cycle.to() + 2, at) / cycles.size();
            }
        }
        return sum;
    }

    /** The series where the force passes {@code at} first, by a straight line between bins. */
    private static double crossing(double[] series, double[] force, int from, int to, double at) {
        int first = Math.max(0, from);
        int last = Math.min(series.length - 1, to);
        for (int i = first; i < last; i++) {
            if ((force[i] - at) * (force[i + 1] - at) <= 0 && force[i] != force[i + 1]) {
                double u = (at - force[i]) / (force[i + 1] - force[i]);
                return series[i] + u * (series[i + 1] - series[i]);
            }
        }
        return Double.NaN;
    }

    /** Force at the top of the counted cycles, mean [N]. */
    static double full(double[] force, List<Span> cycles) {
        return cycles.stream().mapToDouble(c -> force[top(force, c)]).average().orElse(Double.NaN);
    }

    /** Mean rise of a series from before each cycle to its top. */
    static double rise(double[] series, double[] force, List<Span> cycles, double step) {
        double sum = 0;
        for (Span cycle : cycles) {
            int before = Math.max(0, cycle.from() - (int) Math.round(0.5 / step));
            sum += series[top(force, cycle)] - series[before];
        }
        return sum / cycles.size();
    }

    /**
     * How cycles scatter.
     *
     * @param deviation pooled standard deviation
     * @param interval 95 %
     * @param mean of what is left at each direction and level, shape 2 x LEVELS
     */
    record Scatter(double deviation, Interval interval, double[][] mean) {}

    /**
     * Scatter of what a model leaves, read at the levels and zeroed before each cycle.
     *
     * @param left reading less model, NaN where there is none, shape n
     * @param white variance of the noise of one bin
     * @param walk growth of the wandering's variance per second
     */
    static Scatter scatter(
            double[] left, double[] force, List<Span> cycles, double full, double step, double white, double walk) {
        int count = cycles.size();
        double[][] seen = new double[2 * LEVELS][count];
        for (int c = 0; c < count; c++) {
            Span cycle = cycles.get(c);
            int top = top(force, cycle);
            int second = (int) Math.round(1 / step);
            double zero = mean(left, cycle.from() - second - second / 4, cycle.from() - second / 4);
            for (int k = 0; k < LEVELS; k++) {
                seen[k][c] = near(left, force, cycle.from(), top, level(k) * full, WINDOW * full) - zero;
                seen[LEVELS + k][c] = near(left, force, top, cycle.to(), level(k) * full, WINDOW * full) - zero;
            }
        }
        double[][] mean = new double[2][LEVELS];
        double[][] off = new double[2 * LEVELS][count];
        boolean[] whole = new boolean[2 * LEVELS];
        int used = 0;
        for (int v = 0; v < 2 * LEVELS; v++) {
            double sum = 0;
            for (double s : seen[v]) {
                sum += s / count;
            }
            mean[v / LEVELS][v % LEVELS] = sum;
            whole[v] = !Double.isNaN(sum);
            used += whole[v] ? 1 : 0;
            for (int c = 0; c < count; c++) {
                off[v][c] = seen[v][c] - sum;
            }
        }
        int free = count - 1;
        double trace = 0;
        double squares = 0;
        for (int v = 0; v < 2 * LEVELS; v++) {
            for (int w = 0; w < 2 * LEVELS && whole[v]; w++) {
                if (whole[w]) {
                    double s = 0;
                    for (int c = 0; c < count; c++) {
                        s += off[v][c] * off[w][c] / free;
                    }
                    trace += v == w ? s : 0;
                    squares += s * s;
                }
            }
        }
        double deviation = Math.sqrt(trace / used);
        // Levels of one cycle move together. Satterthwaite's degrees of freedom, once from the covariance over cycles
        // (with
        // the unbiased estimate of the trace of its square, from memory), once from the noise alone; the smaller
        // counts.
        double unbiased = (double) free * free / ((free - 1.0) * (free + 2.0)) * (squares - trace * trace / free);
        double seenFreedom = free * trace * trace / Math.max(unbiased, trace * trace / used);
        double freedom = SURE * Math.min(seenFreedom, free * share(force, cycles.get(0), full, step, white, walk));
        ChiSquaredDistribution chi = ChiSquaredDistribution.of(Math.max(SURE * free, freedom));
        double f = chi.getDegreesOfFreedom();
        return new Scatter(
                deviation,
                new Interval(
                        deviation * Math.sqrt(f / chi.inverseCumulativeProbability(0.975)),
                        deviation * Math.sqrt(f / chi.inverseCumulativeProbability(0.025))),
                mean);
    }

    /** (trace)^2 over the trace of the square, for the covariance that noise and wandering alone would give. */
    private static double share(double[] force, Span cycle, double full, double step, double white, double walk) {
        int top = top(force, cycle);
        double[] delay = new double[2 * LEVELS];
        double[] own = new double[2 * LEVELS];
        for (int v = 0; v < delay.length; v++) {
            int from = v < LEVELS ? cycle.from() : top;
            int to = v < LEVELS ? top : cycle.to();
            double place = 0;
            int n = 0;
            for (int i = from; i < to; i++) {
                if (Math.abs(force[i] - level(v % LEVELS) * full) <= WINDOW * full) {
                    place += i;
                    n++;
                }
            }
            delay[v] = n == 0 ? 0 : (place / n - cycle.from()) * step + 0.75;
            own[v] = white / Math.max(1, n);
        }
        double zero = white * step;
        double trace = 0;
        double squares = 0;
        for (int v = 0; v < delay.length; v++) {
            for (int w = 0; w < delay.length; w++) {
                double c = zero + walk * Math.min(delay[v], delay[w]) + (v == w ? own[v] : 0);
                squares += c * c;
                trace += v == w ? c : 0;
            }
        }
        return trace * trace / squares;
    }

    private static double near(double[] left, double[] force, int from, int to, double at, double within) {
        double sum = 0;
        int n = 0;
        for (int i = from; i < to; i++) {
            if (Math.abs(force[i] - at) <= within && !Double.isNaN(left[i])) {
                sum += left[i];
                n++;
            }
        }
        return n > 0 ? sum / n : Double.NaN;
    }

    private static double mean(double[] values, int from, int to) {
        double sum = 0;
        int n = 0;
        for (int i = Math.max(0, from); i < to; i++) {
            if (!Double.isNaN(values[i])) {
                sum += values[i];
                n++;
            }
        }
        return n > 0 ? sum / n : Double.NaN;
    }
}
