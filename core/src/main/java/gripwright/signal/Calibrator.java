package gripwright.signal;

import gripwright.check.Check;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;

/** From a log to a {@link Calibration}: clocks first, then every taxel, then what they share. */
public final class Calibrator {
    private static final int LEAST_ROWS = 500;
    private static final double TARED = 0.02;

    private Calibrator() {}

    /**
     * Calibrates all taxels of a log.
     *
     * @throws IllegalArgumentException if there is no force to calibrate against, saying what was found
     */
    public static Calibration of(SensorLog log, Rates rates) {
        Check.that(
                log.rows() >= LEAST_ROWS,
                "the log has " + log.rows() + " rows; a calibration needs at least " + LEAST_ROWS);
        return calibrate(new CleanLog(log), rates);
    }

    private static Calibration calibrate(CleanLog log, Rates rates) {
        Check.that(
                Arrays.stream(log.force()).anyMatch(Double::isFinite),
                "the reference holds no number beside the readings; expected the load cell's force in N in most rows");
        double top = CleanLog.greatest(log.force());
        check(log.force(), top);
        double step = log.bins().step();
        double[] rough = log.binned(log.force());
        List<String> notes = new ArrayList<>(log.aboutForce());
        double restForce = RobustWeights.median(lowest(rough));
        if (Math.abs(restForce) > TARED * top) {
            notes.add("the load cell reads " + Words.number(restForce)
                    + " N when nothing presses; tare it before recording: the figures take its 0 as no force");
        }

        LoadCourse first = LoadCourse.of(rough, step);
        boolean plate = ProbePresses.hasPlate(log, first);
        Lag lag = TapClock.lag(log, first, plate);

        double[] moved = log.aligned(lag);
        double[] smoothed = log.smooth(moved);
        LoadCourse all = LoadCourse.of(smoothed, step);
        LoadCourse shared = plate ? LoadCourse.of(log.smooth(log.on(moved, -1, true)), step) : all;
        Surroundings around = Surroundings.of(log, all);
        ProbePresses presses = new ProbePresses(log, log.binned(moved), smoothed);
        notes.addAll(presses.unknown());
        Map<Integer, Integer> swapped = SwappedTaxels.of(log, presses, all, smoothed);
        TaxelCalibration one = new TaxelCalibration(log, moved, plate, shared, all, around, lag, swapped, rates);
        Taxel[] taxels = new Taxel[log.channels().size()];
        IntStream.range(0, taxels.length).parallel().forEach(c -> taxels[c] = one.of(c));
        List<Taxel> judged = Verdicts.of(List.of(taxels), log.log().unit());
        double cycleTime = shared.cycles().stream()
                .mapToDouble(s -> s.length() * step)
                .average()
                .orElse(Double.NaN);
        boolean ownClock = log.reference().clock() != null;
        return new Calibration(
                log.log().unit(),
                plate,
                rates,
                log.rows(),
                log.step(),
                log.gaps(),
                top,
                shared.cycles().size(),
                shared.practice().size(),
                cycleTime,
                ownClock,
                TapClock.lagTold(log.reference().told(lag), ownClock),
                TapClock.skewTold(log.reference().told(lag), ownClock),
                around.temperature0(),
                around.ambient0(),
                judged,
                presses.shares(judged),
                presses.refusal(),
                notes);
    }

    private static void check(double[] force, double top) {
        double least = Arrays.stream(force).filter(v -> !Double.isNaN(v)).min().orElse(0);
        Check.that(
                top > 0 && top > -least,
                "the reference force lies between " + Words.number(least) + " N and " + Words.number(top)
                        + " N; pressing must read as positive (change the load cell's sign)");
        Check.that(top - least > 0, "the reference force is " + top + " N all the time");
    }

    private static double[] lowest(double[] values) {
        double[] sorted =
                Arrays.stream(values).filter(v -> !Double.isNaN(v)).sorted().toArray();
        return Arrays.copyOf(sorted, Math.max(1, sorted.length / 4));
    }
}
