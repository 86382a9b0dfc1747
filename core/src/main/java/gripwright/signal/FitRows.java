package gripwright.signal;

import java.util.Arrays;

/** What of a log goes into the fit of one taxel: where its force is known, settled, and below saturation. */
final class FitRows {
    private static final double ROUNDED = 4e-4;
    private static final double MARGIN = 0.5;
    private static final double AFTER_SINGLE_PRESSES = 30;

    private final CleanLog log;
    private final LoadCourse all;
    private final Surroundings around;

    /** @param all what the force does, whatever it presses */
    FitRows(CleanLog log, LoadCourse all, Surroundings around) {
        this.log = log;
        this.all = all;
        this.around = around;
    }

    /**
     * @param course of the loads that are known to press the taxel
     * @param history force on it per bin, all of it [N]
     */
    TaxelFit.Input of(int channel, Clip clip, LoadCourse course, double[] history) {
        double[] use = unclipped(channel, clip, history);
        int begin = course.loads().isEmpty() ? 0 : course.loads().get(0).to();
        int margin = log.bins(MARGIN);
        Arrays.fill(use, 0, Math.min(use.length, begin), Double.NaN);
        for (Span tap : all.taps()) {
            leaveOut(use, tap.from() - margin, tap.to() + margin);
        }
        if (course.force() != all.force()) {
            leaveOutSinglePresses(use, course);
        }
        leaveOutCorners(use, history, course.top());
        for (Span practice : course.practice()) {
            Arrays.fill(use, practice.from(), practice.to(), Double.NaN);
        }
        for (Span load : all.loads()) {
            int middle = (load.from() + load.to()) / 2;
            if (history[middle] < 0.5 * all.force()[middle] || course.force()[middle] < 0.5 * all.force()[middle]) {
                leaveOut(use, load.from() - margin, load.to() + margin);
            }
        }
        return new TaxelFit.Input(
                log.bins(),
                use,
                history,
                course.top(),
                around.temperatureToFit(log.channels().get(channel).pad()),
                around.ambientToFit(),
                around.temperature0(),
                around.ambient0(),
                course.cycles().size() >= Needs.LEAST_CYCLES);
    }

    private double[] unclipped(int channel, Clip clip, double[] history) {
        double[] readings = log.bins().mean(log.readings(channel));
        for (int b = 0; b < readings.length && clip.found(); b++) {
            readings[b] = history[b] > clip.safe() ? Double.NaN : readings[b];
        }
        return readings;
    }

    private static void leaveOut(double[] use, int from, int to) {
        Arrays.fill(use, Math.max(0, from), Math.min(use.length, to), Double.NaN);
    }

    /** The time of single presses and some after: how hard they press a taxel beside a plate is not known. */
    private void leaveOutSinglePresses(double[] use, LoadCourse course) {
        int from = use.length;
        int to = 0;
        for (Span load : all.loads()) {
            int middle = (load.from() + load.to()) / 2;
            if (course.force()[middle] < 0.5 * all.force()[middle]) {
                from = Math.min(from, load.from());
                to = Math.max(to, load.to());
            }
        }
        if (from < to) {
            leaveOut(use, from - log.bins(MARGIN), to + log.bins(AFTER_SINGLE_PRESSES));
        }
    }

    /** Where the smoothed force turns sharply: there it is not what the taxel felt. */
    private void leaveOutCorners(double[] use, double[] history, double top) {
        double[] more = log.smoothed(history);
        int reach = log.reach();
        for (int b = 0; b < use.length; b++) {
            if (Math.abs(more[b] - history[b]) > ROUNDED * top) {
                leaveOut(use, b - reach, b + reach + 1);
            }
        }
    }
}
