package gripwright.signal;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** One taxel of a log: named as dead, swapped or unfit, or fitted and judged. */
final class TaxelCalibration {
    private static final double UNSURE = 2;

    private final CleanLog log;
    private final double[] moved;
    private final boolean plate;
    private final LoadCourse shared;
    private final LoadCourse all;
    private final Surroundings around;
    private final Lag lag;
    private final Map<Integer, Integer> swapped;
    private final Rates rates;
    private final FitRows rows;

    /**
     * @param moved force per row at the time the taxels felt it [N]
     * @param plate whether a plate presses all taxels at once
     * @param shared what the plate's force does
     * @param all what the force does, whatever it presses
     * @param swapped taxels by number that answer for one another
     */
    TaxelCalibration(
            CleanLog log,
            double[] moved,
            boolean plate,
            LoadCourse shared,
            LoadCourse all,
            Surroundings around,
            Lag lag,
            Map<Integer, Integer> swapped,
            Rates rates) {
        this.log = log;
        this.moved = moved;
        this.plate = plate;
        this.shared = shared;
        this.all = all;
        this.around = around;
        this.lag = lag;
        this.swapped = swapped;
        this.rates = rates;
        this.rows = new FitRows(log, all, around);
    }

    private Taxel without(int c, Taxel.State state, String words) {
        return Taxel.without(log.channels().get(c), state, words, false, log.spikes(c));
    }

    Taxel of(int c) {
        SensorLog.Channel channel = log.channels().get(c);
        double[] there =
                Arrays.stream(log.readings(c)).filter(v -> !Double.isNaN(v)).toArray();
        if (there.length < log.rows() / 2) {
            return without(
                    c, Taxel.State.UNFIT, log.rows() - there.length + " of " + log.rows() + " readings are missing");
        }
        if (CleanLog.range(there) == 0) {
            return without(
                    c,
                    Taxel.State.DEAD,
                    "reads " + Words.number(there[0]) + " " + log.log().unit() + " all the time: chip, solder or bus");
        }
        Integer other = swapped.get(channel.number());
        if (other != null) {
            return without(
                    c,
                    Taxel.State.SWAPPED,
                    "answers when taxel " + other
                            + " is pressed, and that one when this is; exchange the two columns in"
                            + " pads.yaml and calibrate again");
        }
        double[] onIt = log.smooth(log.on(moved, channel.number(), plate));
        LoadCourse course = plate ? shared : LoadCourse.of(onIt, log.bins().step());
        if (course.top() <= 0) {
            return without(c, Taxel.State.UNFIT, "it was never pressed in this log");
        }
        try {
            return fitted(c, course, onIt);
        } catch (IllegalArgumentException e) {
            return without(
                    c, Taxel.State.UNFIT, "its readings do not tell the model's terms apart (" + e.getMessage() + ")");
        }
    }

    private Taxel fitted(int c, LoadCourse course, double[] history) {
        SensorLog.Channel channel = log.channels().get(c);
        String unit = log.log().unit();
        Clip clip = Clip.find(log.readings(c), moved, course.top());
        TaxelFit.Input in = rows.of(c, clip, course, history);
        TaxelFit.Fitted fit = TaxelFit.of(in);
        double slope = fit.coefficients()[TaxelFit.SENSITIVITY];
        double noise = log.noise(c);
        boolean follows =
                Math.abs(slope) > 4 * fit.error(TaxelFit.SENSITIVITY) && Math.abs(slope) * course.top() > noise / 4;
        if (!follows) {
            return without(c, Taxel.State.DEAD, "does not follow the force: chip, solder, bus or column");
        }
        if (slope < 0) {
            return without(
                    c,
                    Taxel.State.UNFIT,
                    "reads less under load (" + Words.number(slope) + " " + unit + "/N): wrong column or sign");
        }
        Needs needs = Needs.of(channel.pad(), course, all, around).after(fit, course.restBeforeHold());
        TaxelFigures figures = new TaxelFigures(in, fit, course, needs);
        figures.coefficients();
        figures.cycles(
                clip.found()
                        ? "it saturates at about " + Words.number(clip.force()) + " N, below the full force of "
                                + Words.number(course.top()) + " N; calibrate with less force"
                        : null);
        if (Double.isNaN(lag.atStartError()) && isKnown(figures, FigureKind.HYSTERESIS)) {
            figures.figures()
                    .put(
                            FigureKind.HYSTERESIS,
                            Figure.refused(
                                    FigureKind.HYSTERESIS,
                                    "without taps a late reference cannot be told from hysteresis: " + TapClock.TAPS));
        }
        double[][] rest = rest(c, in, fit);
        List<Allan.Point> allan =
                figures.rest(rest[0], rest[1], log.step(), CleanLog.leastStep(log.readings(c)), rates);
        figures.saturation(clip.found() ? clip.reading() : Double.NaN, course.top());
        return new Taxel(
                channel.column(),
                channel.pad(),
                channel.number(),
                Taxel.State.FITTED,
                "",
                false,
                figures.figures(),
                Optional.of(figures.model(clip.found() ? clip.reading() : Double.NaN)),
                allan,
                figures.loading(),
                figures.unloading(),
                log.spikes(c));
    }

    private static boolean isKnown(TaxelFigures figures, FigureKind kind) {
        Figure figure = figures.figures().get(kind);
        return figure != null && figure.known();
    }

    /** Readings over the longest rest, raw, and corrected for temperature and slow ambient pressure. */
    private double[][] rest(int c, TaxelFit.Input in, TaxelFit.Fitted fit) {
        int margin = log.bins(UNSURE);
        Span span = new Span(all.rest().from() + margin, all.rest().to() - margin);
        double[] slow = in.ambient().length > 0 ? Resample.running(in.ambient(), log.bins(0.05)) : in.ambient();
        double[] readings = log.readings(c);
        List<Double> raw = new ArrayList<>();
        List<Double> corrected = new ArrayList<>();
        for (int i = 0; i < log.rows(); i++) {
            int b = log.bins().of()[i];
            if (span.holds(b) && !Double.isNaN(readings[i])) {
                double off = 0;
                if (fit.temperatureAt() >= 0) {
                    off += fit.coefficients()[fit.temperatureAt()] * (in.temperature()[b] - in.temperature0());
                }
                if (fit.ambientAt() >= 0) {
                    off += fit.coefficients()[fit.ambientAt()] * (slow[b] - in.ambient0());
                }
                raw.add(readings[i]);
                corrected.add(readings[i] - off);
            }
        }
        return new double[][] {
            raw.stream().mapToDouble(d -> d).toArray(),
            corrected.stream().mapToDouble(d -> d).toArray()
        };
    }
}
