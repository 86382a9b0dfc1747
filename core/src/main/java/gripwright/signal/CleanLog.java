package gripwright.signal;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/** A log without its spikes, in even bins, and the force that each taxel felt. */
final class CleanLog {
    private static final double BIN = 0.02;
    private static final double SMOOTH = 0.1;
    private static final double CALM = 1;
    private static final double STILL = 7;

    private final SensorLog log;
    private final double step;
    private final Bins bins;
    private final Reference reference;
    private final double[] force;
    private final double[][] clean;
    private final int[] spikes;

    CleanLog(SensorLog log) {
        this.log = log;
        this.step = Bins.usualStep(log.time());
        int per = Math.max(1, (int) Math.round(BIN / step));
        this.bins = Bins.of(log.time(), per * step);
        int k = log.channels().size();
        this.clean = new double[k][];
        this.spikes = new int[k];
        IntStream.range(0, k).parallel().forEach(c -> {
            clean[c] = log.channels().get(c).readings().clone();
            spikes[c] = Despike.clean(clean[c], leastStep(clean[c]));
        });
        this.reference = Reference.of(log, log.own().isPresent() ? sum() : new double[0], step);
        this.force = reference.inRows(log.time());
    }

    SensorLog log() {
        return log;
    }

    List<SensorLog.Channel> channels() {
        return log.channels();
    }

    int rows() {
        return log.rows();
    }

    /** Usual time between rows [s]. */
    double step() {
        return step;
    }

    Bins bins() {
        return bins;
    }

    /** So many bins, about, for a time [s]. */
    int bins(double time) {
        return (int) Math.round(time / bins.step());
    }

    /** The reference force without spikes, as it stands in the rows [N]; NaN where missing. */
    double[] force() {
        return force;
    }

    Reference reference() {
        return reference;
    }

    /** What was odd about the reference. */
    List<String> aboutForce() {
        List<String> odd = new ArrayList<>();
        if (reference.spikes() > 0) {
            odd.add("the reference force has " + reference.spikes() + " single readings off its neighbours; left out");
        }
        if (reference.shift() != 0) {
            odd.add("the rows have the reference " + Words.number(Math.abs(reference.shift())) + " s too "
                    + (reference.shift() > 0 ? "early" : "late")
                    + ", as the presses show: it was moved; check the merge, and column pressed if there is one");
        }
        return odd;
    }

    /** Readings of a taxel, NaN where missing or a spike, shape n. */
    double[] readings(int channel) {
        return clean[channel];
    }

    int spikes(int channel) {
        return spikes[channel];
    }

    /** Noise of a taxel, from first differences [reading]. */
    double noise(int channel) {
        return firstDifference(clean[channel]);
    }

    /** Places where rows are missing. */
    int gaps() {
        int gaps = 0;
        for (int i = 1; i < log.rows(); i++) {
            gaps += log.time()[i] - log.time()[i - 1] > 1.5 * step ? 1 : 0;
        }
        return gaps;
    }

    /** Means per bin, bridged where there are none. */
    double[] binned(double[] rows) {
        double[] mean = bins.mean(rows);
        Resample.bridge(mean);
        return mean;
    }

    /** Force in bins, smoothed so that the load cell's noise does not move the play; corners are rounded by it. */
    double[] smooth(double[] rows) {
        double[] smooth = smoothed(binned(rows));
        double noise = firstDifference(smooth);
        // First differences of a smooth series are smaller than its noise, about by this.
        double whole = noise * Math.max(1, 1.5 * SMOOTH / bins.step());
        Resample.calm(smooth, bins(CALM), STILL * whole);
        return smooth;
    }

    double[] smoothed(double[] binned) {
        return Resample.smooth(binned, SMOOTH / bins.step());
    }

    /** How far smoothing reaches, in bins. */
    int reach() {
        return bins(SMOOTH);
    }

    /** The reference force at the time the taxels felt it, per row [N]. */
    double[] aligned(Lag lag) {
        double[] at = lag.shifted(log.time());
        double[] moved = reference.curve().at(at);
        Resample.bridge(moved);
        return moved;
    }

    private boolean isPlateAt(int row) {
        return log.pressed().length == 0 || log.pressed()[row] == 0;
    }

    /** Force on a taxel, from the force of all rows: of the plate, or also when the probe is on it alone. */
    double[] on(double[] aligned, int number, boolean plate) {
        double[] out = aligned.clone();
        for (int i = 0; i < out.length; i++) {
            boolean here = plate && isPlateAt(i) || log.pressed().length > 0 && log.pressed()[i] == number;
            out[i] = here ? out[i] : 0;
        }
        return out;
    }

    /** All taxels together, each in units of its noise, so that none drowns the others. */
    double[] sum() {
        double[] sum = new double[log.rows()];
        for (double[] readings : clean) {
            double noise = firstDifference(readings);
            if (!(noise > 0)) {
                continue;
            }
            double level = RobustWeights.median(
                    Arrays.stream(readings).filter(v -> !Double.isNaN(v)).toArray());
            for (int i = 0; i < sum.length; i++) {
                sum[i] += Double.isNaN(readings[i]) ? 0 : (readings[i] - level) / noise;
            }
        }
        return sum;
    }

    static double greatest(double[] values) {
        double most = 0;
        for (double v : values) {
            most = Math.max(most, Double.isNaN(v) ? 0 : v);
        }
        return most;
    }

    static double range(double[] values) {
        double[] sorted =
                Arrays.stream(values).filter(v -> !Double.isNaN(v)).sorted().toArray();
        return sorted.length == 0 ? 0 : sorted[sorted.length - 1] - sorted[0];
    }

    /** Smallest difference between two different neighbours: the step of a coarse reading, or next to nothing. */
    static double leastStep(double[] values) {
        double least = Double.POSITIVE_INFINITY;
        for (int i = 1; i < values.length; i++) {
            double d = Math.abs(values[i] - values[i - 1]);
            if (d > 0) {
                least = Math.min(least, d);
            }
        }
        return Double.isInfinite(least) ? 0 : least;
    }

    /** Robust standard deviation of the first differences, by sqrt 2. */
    static double firstDifference(double[] readings) {
        double[] steps = new double[readings.length - 1];
        for (int i = 0; i < steps.length; i++) {
            steps[i] = readings[i + 1] - readings[i];
        }
        return RobustWeights.scale(steps) / Math.sqrt(2);
    }
}
