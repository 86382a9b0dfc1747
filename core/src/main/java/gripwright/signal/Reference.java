package gripwright.signal;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * The load cell's readings without spikes, by the device's time as far as rows say.
 *
 * @param time rising [s], shape m
 * @param force NaN where missing [N], shape m
 * @param step usual step [s]
 * @param clock how its own clock goes; null if it was logged by the device
 * @param shift by how much the force was moved to later rows, as found from slow presses [s]
 * @param spikes that were taken out
 */
record Reference(double[] time, double[] force, double step, OwnClock.@Nullable Line clock, double shift, int spikes) {
    private static final double GRID = 0.1;
    private static final double FARTHEST = 10;
    private static final double LEAST_LIKENESS = 0.3;

    /** Smaller shifts are left to the taps. */
    private static final double LEAST_SHIFT = 0.25;

    /**
     * @param felt all taxels together, shape of the log's time
     * @param step of the log [s]
     */
    static Reference of(SensorLog log, double[] felt, double step) {
        double[] force = log.force().clone();
        if (log.own().isEmpty()) {
            int spikes = clean(force);
            return new Reference(log.time(), force, step, null, 0, spikes);
        }
        OwnClock own = log.own().get();
        force = own.force().clone();
        int spikes = clean(force);
        OwnClock.Line line = own.line(log.time()[0]);
        double ownStep = Bins.usualStep(own.stamp()) / line.rate();
        Reference merged = new Reference(line.times(own.stamp(), 0), force, ownStep, line, 0, spikes);
        double shift = merged.shift(log.time(), felt);
        return new Reference(line.times(own.stamp(), shift), force, ownStep, line, shift, spikes);
    }

    private static int clean(double[] force) {
        return Despike.clean(force, 1e-4 * CleanLog.greatest(force));
    }

    Resample.Curve curve() {
        return new Resample.Curve(time, force, step);
    }

    /** Force at the rows as the log has them [N]; NaN outside and in gaps. */
    double[] inRows(double[] rows) {
        return clock == null ? force : curve().at(rows);
    }

    /** By how much later the taxels answer than the merge has the force, from all presses [s]; 0 if it is small. */
    private double shift(double[] rows, double[] felt) {
        int count = (int) ((rows[rows.length - 1] - rows[0]) / GRID);
        int most = (int) Math.round(FARTHEST / GRID);
        double[] a = slopes(rows, felt, rows[0], count);
        double[] b = slopes(rows, inRows(rows), rows[0], count);
        int best = 0;
        double highest = 0;
        double squares = 0;
        double others = 0;
        for (int i = 0; i < a.length; i++) {
            squares += a[i] * a[i];
            others += b[i] * b[i];
        }
        for (int late = -most; late <= most; late++) {
            double sum = 0;
            for (int i = Math.max(0, late); i < Math.min(a.length, a.length + late); i++) {
                sum += a[i] * b[i - late];
            }
            if (sum > highest) {
                highest = sum;
                best = late;
            }
        }
        boolean clear = highest > LEAST_LIKENESS * Math.sqrt(squares * others);
        return clear && Math.abs(best) * GRID >= LEAST_SHIFT ? best * GRID : 0;
    }

    private static double[] slopes(double[] rows, double[] values, double from, int count) {
        double[] sum = new double[count];
        int[] n = new int[count];
        for (int i = 0; i < rows.length; i++) {
            int k = (int) ((rows[i] - from) / GRID);
            if (k < count && !Double.isNaN(values[i])) {
                sum[k] += values[i];
                n[k]++;
            }
        }
        Arrays.setAll(sum, k -> n[k] > 0 ? sum[k] / n[k] : Double.NaN);
        Resample.bridge(sum);
        double[] slopes = new double[Math.max(0, count - 1)];
        Arrays.setAll(slopes, k -> Double.isNaN(sum[k + 1] - sum[k]) ? 0 : sum[k + 1] - sum[k]);
        return slopes;
    }

    /** The lag by this clock: how much more it shows than the device's at the log's start, and how much faster it goes. */
    Lag told(Lag lag) {
        if (clock == null) {
            return lag;
        }
        double rate = clock.rate();
        return new Lag(
                clock.at() - clock.start() + rate * (lag.atStart() - shift),
                rate * lag.atStartError(),
                rate * (1 + lag.skew()) - 1,
                rate * lag.skewError());
    }
}
