package gripwright.signal;

import gripwright.check.Check;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.apache.commons.statistics.distribution.TDistribution;

/** From a log to a {@link Calibration}: clocks first, then every taxel, then what they share. */
public final class Calibrator {
    private static final double BIN = 0.02;
    private static final double SMOOTH = 0.1;
    private static final double ROUNDED = 4e-4;
    private static final double MOST_LOOP = 0.1;
    private static final double NEXT_TO_NOTHING = 0.01;
    private static final double CALM = 1;
    private static final double STILL = 7;
    private static final double LEAST_WARM_UP = 5;
    private static final double LEAST_VARIATION = 0.2;
    private static final double LEAST_STEP = 50;
    private static final double LEAST_REST = 20;
    private static final int LEAST_CYCLES = 3;
    private static final double SLOW_TEMPERATURE = 4;
    private static final int LEAST_ROWS = 500;
    private static final double UNSURE = 2;

    private final SensorLog log;
    private final Rates rates;
    private final double step;
    private final Bins bins;
    private final double[] force;
    private final double[][] clean;
    private final int[] spikes;
    private final List<String> notes = new ArrayList<>();

    private Calibrator(SensorLog log, Rates rates) {
        this.log = log;
        this.rates = rates;
        this.step = Bins.usualStep(log.time());
        int per = Math.max(1, (int) Math.round(BIN / step));
        this.bins = Bins.of(log.time(), per * step);
        this.force = log.force().clone();
        int off = Despike.clean(force, 1e-4 * greatest(force));
        if (off > 0) {
            notes.add("the reference force has " + off + " single readings off its neighbours; left out");
        }
        int k = log.channels().size();
        this.clean = new double[k][];
        this.spikes = new int[k];
        IntStream.range(0, k).parallel().forEach(c -> {
            clean[c] = log.channels().get(c).readings().clone();
            spikes[c] = Despike.clean(clean[c], leastStep(clean[c]));
        });
    }

    /**
     * Calibrates all taxels of a log.
     *
     * @throws IllegalArgumentException if there is no force to calibrate against, saying what was found
     */
    public static Calibration of(SensorLog log, Rates rates) {
        Check.that(
                log.rows() >= LEAST_ROWS,
                "the log has " + log.rows() + " rows; a calibration needs at least " + LEAST_ROWS);
        return new Calibrator(log, rates).calibrate();
    }

    private static double greatest(double[] values) {
        double most = 0;
        for (double v : values) {
            most = Math.max(most, Double.isNaN(v) ? 0 : v);
        }
        return most;
    }

    /** Smallest difference between two different neighbours: the step of a coarse reading, or next to nothing. */
    private static double leastStep(double[] values) {
        double least = Double.POSITIVE_INFINITY;
        for (int i = 1; i < values.length; i++) {
            double d = Math.abs(values[i] - values[i - 1]);
            if (d > 0) {
                least = Math.min(least, d);
            }
        }
        return Double.isInfinite(least) ? 0 : least;
    }

    private boolean isPlateAt(int row) {
        return log.pressed().length == 0 || log.pressed()[row] == 0;
    }

    /** Force on a taxel, from the force of all rows: of the plate, or also when the probe is on it alone. */
    private double[] on(double[] aligned, int number, boolean plate) {
        double[] out = aligned.clone();
        for (int i = 0; i < out.length; i++) {
            boolean here = plate && isPlateAt(i) || log.pressed().length > 0 && log.pressed()[i] == number;
            out[i] = here ? out[i] : 0;
        }
        return out;
    }

    private double[] binned(double[] rows) {
        double[] mean = bins.mean(rows);
        Resample.bridge(mean);
        return mean;
    }

    /** Force in bins, smoothed so that the load cell's noise does not move the play; corners are rounded by it. */
    private double[] smooth(double[] rows) {
        double[] smooth = Resample.smooth(binned(rows), SMOOTH / bins.step());
        double noise = firstDifference(smooth);
        // First differences of a smooth series are smaller than its noise, about by this.
        double whole = noise * Math.max(1, 1.5 * SMOOTH / bins.step());
        Resample.calm(smooth, (int) Math.round(CALM / bins.step()), STILL * whole);
        return smooth;
    }

    private double[] aligned(Lag lag) {
        double[] at = lag.shifted(log.time());
        double[] moved = new Resample.Curve(log.time(), force, step).at(at);
        Resample.bridge(moved);
        return moved;
    }

    private Calibration calibrate() {
        double top = greatest(force);
        double least = Arrays.stream(force).filter(v -> !Double.isNaN(v)).min().orElse(0);
        Check.that(
                top > 0 && top > -least,
                "the reference force lies between " + Words.number(least) + " N and " + Words.number(top)
                        + " N; pressing must read as positive (change the load cell's sign)");
        Check.that(top - least > 0, "the reference force is " + top + " N all the time");
        double[] rough = binned(force);
        double restForce = RobustWeights.median(lowest(rough));
        if (Math.abs(restForce) > 0.02 * top) {
            notes.add("the load cell reads " + Words.number(restForce)
                    + " N when nothing presses; tare it before recording: the figures take its 0 as no force");
        }
        LoadCourse first = LoadCourse.of(rough, bins.step());
        boolean plate = hasPlate(first);
        Lag lag = lag(first, plate);
        double[] moved = aligned(lag);
        double[] smoothed = smooth(moved);
        LoadCourse all = LoadCourse.of(smoothed, bins.step());
        Environment environment = environment(all);
        int k = log.channels().size();
        Taxel[] taxels = new Taxel[k];
        CrossTalk.Slope[][] rawSlopes = slopes(binned(moved), smoothed, List.of());
        Map<Integer, Integer> swapped = swapped(rawSlopes, all, smoothed);
        LoadCourse shared = plate ? LoadCourse.of(smooth(on(moved, -1, true)), bins.step()) : all;
        IntStream.range(0, k)
                .parallel()
                .forEach(c -> taxels[c] = taxel(c, moved, plate, shared, all, environment, lag, swapped));
        List<Taxel> judged = Verdicts.of(List.of(taxels), log.unit());
        LoadCourse counted = shared;
        double cycleTime = counted.cycles().stream()
                .mapToDouble(s -> s.length() * bins.step())
                .average()
                .orElse(Double.NaN);
        return new Calibration(
                log.unit(),
                plate,
                rates,
                log.rows(),
                step,
                gaps(),
                top,
                counted.cycles().size(),
                counted.practice().size(),
                cycleTime,
                lagTold(lag),
                skewTold(lag),
                environment.temperature0,
                environment.ambient0,
                judged,
                shares(slopes(binned(moved), smoothed, judged), judged),
                crossTalkRefusal(smoothed),
                notes);
    }

    private static double[] lowest(double[] values) {
        double[] sorted =
                Arrays.stream(values).filter(v -> !Double.isNaN(v)).sorted().toArray();
        return Arrays.copyOf(sorted, Math.max(1, sorted.length / 4));
    }

    private int gaps() {
        int gaps = 0;
        for (int i = 1; i < log.rows(); i++) {
            gaps += log.time()[i] - log.time()[i - 1] > 1.5 * step ? 1 : 0;
        }
        return gaps;
    }

    /** Whether slow presses come from a plate on all taxels. */
    private boolean hasPlate(LoadCourse course) {
        if (log.pressed().length == 0) {
            return true;
        }
        double[] pressed = bins.mean(log.pressed());
        for (Span load : course.loads()) {
            if (load.length() * bins.step() > 1.5 && mostly(pressed, load) == 0) {
                return true;
            }
        }
        return false;
    }

    /** The number that most of a load is marked with; -1 if it is not one number. */
    private static int mostly(double[] pressed, Span load) {
        double middle = pressed[(load.from() + load.to()) / 2];
        return Double.isNaN(middle) || middle != Math.rint(middle) ? -1 : (int) middle;
    }

    // ---- clocks

    private Lag lag(LoadCourse course, boolean plate) {
        List<Span> groups = new ArrayList<>();
        course.tapsAtStart().ifPresent(groups::add);
        course.tapsAtEnd().ifPresent(groups::add);
        if (groups.isEmpty()) {
            return Lag.NONE;
        }
        double[] series = sum();
        List<Lag.Seen> seen = new ArrayList<>();
        for (Span g : groups) {
            double from = bins.start() + g.from() * bins.step();
            double to = bins.start() + g.to() * bins.step();
            Lag.alike(log.time(), series, force, step, from, to)
                    .ifPresent(shift -> seen.add(new Lag.Seen(0.5 * (from + to), shift, step / 10)));
        }
        Lag rough = Lag.through(seen, log.time()[0]);
        return seen.isEmpty() ? rough : refined(rough, groups, plate);
    }

    /** All taxels together, each in units of its noise, so that none drowns the others. */
    private double[] sum() {
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

    private static double firstDifference(double[] readings) {
        double[] steps = new double[readings.length - 1];
        for (int i = 0; i < steps.length; i++) {
            steps[i] = readings[i + 1] - readings[i];
        }
        return RobustWeights.scale(steps) / Math.sqrt(2);
    }

    /** Takes the play of the best few taxels out of the shift. */
    private Lag refined(Lag rough, List<Span> groups, boolean plate) {
        double[] moved = aligned(rough);
        LoadCourse all = LoadCourse.of(smooth(moved), bins.step());
        Environment environment = environment(all);
        List<Integer> best = followers(moved, groups);
        List<Lead> leads = best.stream()
                .parallel()
                .map(c -> lead(c, moved, plate, all, environment))
                .flatMap(Optional::stream)
                .toList();
        if (leads.isEmpty()) {
            return rough;
        }
        double scale = 0;
        for (Lead lead : leads) {
            scale += lead.weight() * lead.fit().coefficients()[TaxelFit.SENSITIVITY];
        }
        double[] felt = new double[log.rows()];
        for (Lead lead : leads) {
            for (int i = 0; i < felt.length; i++) {
                felt[i] += lead.weight() * clean[lead.channel()][i] / scale;
            }
        }
        double total = scale;
        List<Lag.Seen> seen = new ArrayList<>();
        for (Span g : groups) {
            Lag.refined(
                            log.time(),
                            felt,
                            force,
                            step,
                            f -> modelled(f, leads, total),
                            rough,
                            bins.start() + g.from() * bins.step(),
                            bins.start() + g.to() * bins.step())
                    .ifPresent(seen::add);
        }
        return seen.isEmpty() ? rough : Lag.through(seen, log.time()[0]);
    }

    private record Lead(int channel, double weight, TaxelFit.Fitted fit) {}

    private static double[] modelled(double[] f, List<Lead> leads, double total) {
        double[] out = new double[f.length];
        for (Lead lead : leads) {
            double[] p = Play.of(f, lead.fit().play());
            double b1 = lead.fit().coefficients()[TaxelFit.SENSITIVITY];
            double b2 = lead.fit().coefficients()[TaxelFit.QUADRATIC];
            for (int i = 0; i < out.length; i++) {
                out[i] += lead.weight() * (b1 + b2 * p[i]) * p[i] / total;
            }
        }
        return out;
    }

    private Optional<Lead> lead(int c, double[] moved, boolean plate, LoadCourse all, Environment environment) {
        try {
            int number = log.channels().get(c).number();
            LoadCourse course = LoadCourse.of(smooth(on(moved, number, plate)), bins.step());
            Clip clip = Clip.find(clean[c], moved, course.top());
            double[] readings = unclipped(c, clip, course.force());
            TaxelFit.Input in = input(c, readings, course, course.force(), all, environment);
            TaxelFit.Fitted fit = TaxelFit.of(in);
            double noise = firstDifference(clean[c]);
            return Optional.of(new Lead(c, fit.coefficients()[TaxelFit.SENSITIVITY] / (noise * noise), fit));
        } catch (IllegalArgumentException e) {
            return Optional.empty();
        }
    }

    /** The four taxels that follow the taps most clearly. */
    private List<Integer> followers(double[] moved, List<Span> groups) {
        double[] likeness = new double[clean.length];
        for (int c = 0; c < clean.length; c++) {
            double noise = firstDifference(clean[c]);
            double[] y = bins.mean(clean[c]);
            double[] f = binned(moved);
            likeness[c] = noise > 0 ? slope(y, f, groups) / noise : 0;
        }
        return IntStream.range(0, clean.length)
                .filter(c -> likeness[c] > 0)
                .boxed()
                .sorted((a, b) -> Double.compare(likeness[b], likeness[a]))
                .limit(4)
                .toList();
    }

    private static double slope(double[] y, double[] f, List<Span> where) {
        double n = 0;
        double sy = 0;
        double sf = 0;
        double sfy = 0;
        double sff = 0;
        for (Span span : where) {
            for (int i = span.from(); i < span.to(); i++) {
                if (!Double.isNaN(y[i])) {
                    n++;
                    sy += y[i];
                    sf += f[i];
                    sfy += y[i] * f[i];
                    sff += f[i] * f[i];
                }
            }
        }
        double below = n * sff - sf * sf;
        return below > 0 ? (n * sfy - sf * sy) / below : 0;
    }

    /** Ten taps. */
    private static final double STUDENT = TDistribution.of(5).inverseSurvivalProbability(0.025);

    private static final String TAPS = "press sharply, 0.1 s long, five times at the start and five times at the end";

    private static Calibration.Told lagTold(Lag lag) {
        return Double.isNaN(lag.atStartError())
                ? Calibration.Told.refused("no sharp taps that the taxels follow; taken as 0: " + TAPS)
                : Calibration.Told.of(lag.atStart(), STUDENT * lag.atStartError());
    }

    private static Calibration.Told skewTold(Lag lag) {
        return Double.isNaN(lag.skewError())
                ? Calibration.Told.refused("no sharp taps at both ends of the log; taken as 0: " + TAPS)
                : Calibration.Told.of(lag.skew(), STUDENT * lag.skewError());
    }

    // ---- surroundings

    /** Temperature per pad and ambient pressure, in bins. */
    private record Environment(
            Map<String, double[]> temperature,
            Map<String, String> coldPads,
            double temperature0,
            double[] ambient,
            Optional<String> noStep,
            double ambient0) {}

    private Environment environment(LoadCourse all) {
        Map<String, double[]> temperature = new LinkedHashMap<>();
        Map<String, String> cold = new LinkedHashMap<>();
        double reference = Double.NaN;
        for (SensorLog.Channel c : log.channels()) {
            if (temperature.containsKey(c.pad()) || c.temperature().length == 0) {
                continue;
            }
            double[] raw = c.temperature().clone();
            Despike.clean(raw, 0.01);
            double[] slow = binned(raw);
            int half = (int) Math.round(SLOW_TEMPERATURE / bins.step());
            slow = Resample.running(Resample.running(slow, half), half / 2);
            temperature.put(c.pad(), slow);
            double[] sorted = IntStream.range(0, slow.length)
                    .filter(b -> all.force()[b] < LoadCourse.LOADED * all.top())
                    .mapToDouble(b -> c.temperature().length > 0 ? temperature.get(c.pad())[b] : 0)
                    .sorted()
                    .toArray();
            double range = sorted[sorted.length - 1 - sorted.length / 100] - sorted[sorted.length / 100];
            if (range < LEAST_WARM_UP) {
                cold.put(
                        c.pad(),
                        "the temperature changes by " + Words.number(range)
                                + " K without load; record while the pad warms by at least 5 K");
            }
            if (Double.isNaN(reference)) {
                reference = Math.rint(sorted[sorted.length / 2]);
            }
        }
        double[] ambient = new double[0];
        Optional<String> noStep = Optional.of(
                "pads.yaml names no column of an open barometer (readings: ambient); lay one beside the pad");
        double ambient0 = Double.NaN;
        if (log.ambient().length > 0) {
            double[] raw = log.ambient().clone();
            Despike.clean(raw, leastStep(raw));
            ambient = binned(raw);
            ambient0 = Math.rint(RobustWeights.median(ambient.clone()));
            double jump = jump(ambient);
            noStep = jump >= LEAST_STEP
                    ? Optional.empty()
                    : Optional.of("the ambient pressure changes by at most " + Words.number(jump)
                            + " Pa within seconds; change it on purpose by at least 50 Pa (a closed jar or a syringe)");
        }
        return new Environment(temperature, cold, reference, ambient, noStep, ambient0);
    }

    /** Greatest change between means of 5 s that lie 5 s apart. */
    private double jump(double[] ambient) {
        int half = (int) Math.round(2.5 / bins.step());
        double[] mean = Resample.running(ambient, half);
        double jump = 0;
        for (int i = half; i + 5 * half < mean.length; i++) {
            jump = Math.max(jump, Math.abs(mean[i + 4 * half] - mean[i]));
        }
        return jump;
    }

    private static double range(double[] values) {
        double[] sorted =
                Arrays.stream(values).filter(v -> !Double.isNaN(v)).sorted().toArray();
        return sorted.length == 0 ? 0 : sorted[sorted.length - 1] - sorted[0];
    }

    // ---- one taxel

    private TaxelFit.Input input(
            int c, double[] readings, LoadCourse course, double[] history, LoadCourse all, Environment environment) {
        double[] use = readings.clone();
        int begin = course.loads().isEmpty() ? 0 : course.loads().get(0).to();
        int margin = (int) Math.round(0.5 / bins.step());
        Arrays.fill(use, 0, Math.min(use.length, begin), Double.NaN);
        for (Span tap : all.taps()) {
            Arrays.fill(use, Math.max(0, tap.from() - margin), Math.min(use.length, tap.to() + margin), Double.NaN);
        }
        if (course.force() != all.force()) {
            blank(use, course, all);
        }
        round(use, history, course.top());
        for (Span practice : course.practice()) {
            Arrays.fill(use, practice.from(), practice.to(), Double.NaN);
        }
        for (Span load : all.loads()) {
            if (history[(load.from() + load.to()) / 2] < 0.5 * all.force()[(load.from() + load.to()) / 2]
                    || course.force()[(load.from() + load.to()) / 2]
                            < 0.5 * all.force()[(load.from() + load.to()) / 2]) {
                Arrays.fill(
                        use, Math.max(0, load.from() - margin), Math.min(use.length, load.to() + margin), Double.NaN);
            }
        }
        double[] temperature =
                environment.temperature().getOrDefault(log.channels().get(c).pad(), new double[0]);
        boolean warm = temperature.length > 0 && range(temperature) > LEAST_VARIATION;
        boolean varied = environment.ambient().length > 0 && range(environment.ambient()) > 0;
        return new TaxelFit.Input(
                bins,
                use,
                history,
                course.top(),
                warm ? temperature : new double[0],
                varied ? environment.ambient() : new double[0],
                environment.temperature0(),
                environment.ambient0(),
                course.cycles().size() >= LEAST_CYCLES);
    }

    /** Leaves out the time of single presses and some after: how hard they press a taxel beside a plate is not known. */
    private void blank(double[] use, LoadCourse course, LoadCourse all) {
        int from = use.length;
        int to = 0;
        for (Span load : all.loads()) {
            int middle = (load.from() + load.to()) / 2;
            if (course.force()[middle] < 0.5 * all.force()[middle]) {
                from = Math.min(from, load.from());
                to = Math.max(to, load.to());
            }
        }
        int margin = (int) Math.round(0.5 / bins.step());
        int after = (int) Math.round(30 / bins.step());
        if (from < to) {
            Arrays.fill(use, Math.max(0, from - margin), Math.min(use.length, to + after), Double.NaN);
        }
    }

    /** Leaves out where the smoothed force turns sharply: there it is not what the taxel felt. */
    private void round(double[] use, double[] history, double top) {
        double[] more = Resample.smooth(history, SMOOTH / bins.step());
        int reach = (int) Math.round(SMOOTH / bins.step());
        for (int b = 0; b < use.length; b++) {
            if (Math.abs(more[b] - history[b]) > ROUNDED * top) {
                Arrays.fill(use, Math.max(0, b - reach), Math.min(use.length, b + reach + 1), Double.NaN);
            }
        }
    }

    private Needs needs(int c, LoadCourse course, LoadCourse all, Environment environment) {
        String pad = log.channels().get(c).pad();
        Optional<String> temperature = environment.temperature().containsKey(pad)
                ? Optional.ofNullable(environment.coldPads().get(pad))
                : Optional.of("pads.yaml names no column of temperature (readings: temperature)");
        Optional<String> creep = Optional.empty();
        if (course.hold().isEmpty()) {
            creep = Optional.of("no constant force over 20 s; hold full force for a minute after a rest of a minute");
        } else if (course.restBeforeHold() < LEAST_REST) {
            creep = Optional.of("only " + Words.number(course.restBeforeHold())
                    + " s of rest before the hold; rest for a minute before it");
        }
        Optional<String> cycles = course.cycles().size() >= LEAST_CYCLES
                ? Optional.empty()
                : Optional.of(course.cycles().size() + " slow cycles of about one length to full force after "
                        + course.practice().size()
                        + " for practice; record three for practice and at least five to count,"
                        + " rising and falling steadily over some seconds");
        Optional<String> rest = all.rest().length() * bins.step() >= LEAST_REST
                ? Optional.empty()
                : Optional.of("no 20 s without load; let the pad rest for a minute");
        return new Needs(temperature, environment.noStep(), creep, cycles, rest);
    }

    private Taxel taxel(
            int c,
            double[] moved,
            boolean plate,
            LoadCourse shared,
            LoadCourse all,
            Environment environment,
            Lag lag,
            Map<Integer, Integer> swapped) {
        SensorLog.Channel channel = log.channels().get(c);
        double[] there = Arrays.stream(clean[c]).filter(v -> !Double.isNaN(v)).toArray();
        if (there.length < log.rows() / 2) {
            return Taxel.without(
                    channel,
                    Taxel.State.UNFIT,
                    log.rows() - there.length + " of " + log.rows() + " readings are missing",
                    false,
                    spikes[c]);
        }
        if (range(there) == 0) {
            return Taxel.without(
                    channel,
                    Taxel.State.DEAD,
                    "reads " + Words.number(there[0]) + " " + log.unit() + " all the time: chip, solder or bus",
                    false,
                    spikes[c]);
        }
        Integer other = swapped.get(channel.number());
        if (other != null) {
            return Taxel.without(
                    channel,
                    Taxel.State.SWAPPED,
                    "answers when taxel " + other
                            + " is pressed, and that one when this is; exchange the two columns in"
                            + " pads.yaml and calibrate again",
                    false,
                    spikes[c]);
        }
        double[] onIt = smooth(on(moved, channel.number(), plate));
        LoadCourse course = plate ? shared : LoadCourse.of(onIt, bins.step());
        if (course.top() <= 0) {
            return Taxel.without(channel, Taxel.State.UNFIT, "it was never pressed in this log", false, spikes[c]);
        }
        try {
            return fitted(c, moved, course, onIt, all, environment, lag);
        } catch (IllegalArgumentException e) {
            return Taxel.without(
                    channel,
                    Taxel.State.UNFIT,
                    "its readings do not tell the model's terms apart (" + e.getMessage() + ")",
                    false,
                    spikes[c]);
        }
    }

    private double[] unclipped(int c, Clip clip, double[] history) {
        double[] readings = bins.mean(clean[c]);
        for (int b = 0; b < readings.length && clip.found(); b++) {
            readings[b] = history[b] > clip.safe() ? Double.NaN : readings[b];
        }
        return readings;
    }

    private Taxel fitted(
            int c,
            double[] moved,
            LoadCourse course,
            double[] history,
            LoadCourse all,
            Environment environment,
            Lag lag) {
        SensorLog.Channel channel = log.channels().get(c);
        Clip clip = Clip.find(clean[c], moved, course.top());
        TaxelFit.Input in = input(c, unclipped(c, clip, history), course, history, all, environment);
        TaxelFit.Fitted fit = TaxelFit.of(in);
        double slope = fit.coefficients()[TaxelFit.SENSITIVITY];
        double noise = firstDifference(clean[c]);
        boolean follows =
                Math.abs(slope) > 4 * fit.error(TaxelFit.SENSITIVITY) && Math.abs(slope) * course.top() > noise / 4;
        if (!follows) {
            return Taxel.without(
                    channel,
                    Taxel.State.DEAD,
                    "does not follow the force: chip, solder, bus or column",
                    false,
                    spikes[c]);
        }
        if (slope < 0) {
            return Taxel.without(
                    channel,
                    Taxel.State.UNFIT,
                    "reads less under load (" + Words.number(slope) + " " + log.unit() + "/N): wrong column or sign",
                    false,
                    spikes[c]);
        }
        Needs needs = needs(c, course, all, environment).after(fit, course.restBeforeHold());
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
                                    "without taps a late reference cannot be told from hysteresis: " + TAPS));
        }
        double[][] rest = rest(c, all, in, fit);
        List<Allan.Point> allan = figures.rest(rest[0], rest[1], step, leastStep(clean[c]), rates);
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
                spikes[c]);
    }

    private static boolean isKnown(TaxelFigures figures, FigureKind kind) {
        Figure figure = figures.figures().get(kind);
        return figure != null && figure.known();
    }

    /** Readings over the longest rest, raw, and corrected for temperature and slow ambient pressure. */
    private double[][] rest(int c, LoadCourse all, TaxelFit.Input in, TaxelFit.Fitted fit) {
        int margin = (int) Math.round(UNSURE / bins.step());
        Span span = new Span(all.rest().from() + margin, all.rest().to() - margin);
        double[] slow = in.ambient().length > 0
                ? Resample.running(in.ambient(), (int) Math.round(0.05 / bins.step()))
                : in.ambient();
        List<Double> raw = new ArrayList<>();
        List<Double> corrected = new ArrayList<>();
        for (int i = 0; i < log.rows(); i++) {
            int b = bins.of()[i];
            if (span.holds(b) && !Double.isNaN(clean[c][i])) {
                double off = 0;
                if (fit.temperatureAt() >= 0) {
                    off += fit.coefficients()[fit.temperatureAt()] * (in.temperature()[b] - in.temperature0());
                }
                if (fit.ambientAt() >= 0) {
                    off += fit.coefficients()[fit.ambientAt()] * (slow[b] - in.ambient0());
                }
                raw.add(clean[c][i]);
                corrected.add(clean[c][i] - off);
            }
        }
        return new double[][] {
            raw.stream().mapToDouble(d -> d).toArray(),
            corrected.stream().mapToDouble(d -> d).toArray()
        };
    }

    // ---- what taxels share

    /** Loads of at least half a second on single taxels, by number, from before they begin until after they end. */
    private Map<Integer, List<Span>> visits(double[] smoothed) {
        Map<Integer, List<Span>> visits = new LinkedHashMap<>();
        if (log.pressed().length > 0) {
            double[] pressed = bins.mean(log.pressed());
            Resample.bridge(pressed);
            double[] alone = new double[smoothed.length];
            Arrays.setAll(alone, b -> pressed[b] >= 0.5 ? smoothed[b] : 0);
            for (Span load : LoadCourse.of(alone, bins.step()).loads()) {
                int number = mostly(pressed, load);
                if (number >= 1 && load.length() * bins.step() >= 0.5) {
                    visits.computeIfAbsent(number, n -> new ArrayList<>()).add(whole(load, smoothed));
                }
            }
        }
        return visits;
    }

    /** Widened to where the force is next to nothing. */
    private static Span whole(Span load, double[] force) {
        double none = NEXT_TO_NOTHING * LoadCourse.peak(force, load);
        int from = load.from();
        int to = load.to();
        while (from > 0 && force[from] > none) {
            from--;
        }
        while (to < force.length && force[to] > none) {
            to++;
        }
        return new Span(from, to);
    }

    /**
     * Slope of each taxel for each that is pressed, by number less 1; null where it was not pressed. The force is taken as
     * it is: a smoothed one rounds the short presses.
     */
    private CrossTalk.Slope[][] slopes(double[] sharp, double[] smoothed, List<Taxel> fitted) {
        int k = log.channels().size();
        CrossTalk.Slope[][] slopes = new CrossTalk.Slope[k][];
        Map<Integer, List<Span>> visits = visits(smoothed);
        visits.forEach((number, loads) -> {
            if (number <= k) {
                slopes[number - 1] = new CrossTalk.Slope[k];
                double play = playUnderProbe(number, fitted, sharp, loads);
                for (int c = 0; c < k; c++) {
                    slopes[number - 1][c] =
                            CrossTalk.slope(bins.mean(clean[c]), sharp, loads, bins.step(), play, c == number - 1);
                }
            } else {
                notes.add("column pressed holds " + number + ", but there are only " + k + " taxels");
            }
        });
        return slopes;
    }

    /** Play counts in what the taxel feels, and a probe makes it feel more per newton than a plate does. */
    private double playUnderProbe(int number, List<Taxel> fitted, double[] smoothed, List<Span> loads) {
        Optional<TaxelModel> model =
                fitted.isEmpty() ? Optional.empty() : fitted.get(number - 1).model();
        if (model.isEmpty()) {
            return 0;
        }
        double[] readings = bins.mean(clean[number - 1]);
        double slope =
                CrossTalk.slope(readings, smoothed, loads, bins.step(), 0, true).value();
        double play = model.get().play() * model.get().sensitivity() / slope;
        return play > 0
                        && play
                                < MOST_LOOP
                                        * smoothed[
                                                (loads.get(0).from()
                                                                + loads.get(0).to())
                                                        / 2]
                ? play
                : 0;
    }

    /** Pairs that answer for one another, by number. */
    private Map<Integer, Integer> swapped(CrossTalk.Slope[][] slopes, LoadCourse all, double[] smoothed) {
        int k = slopes.length;
        double[] own = new double[k];
        Map<Integer, List<Span>> visits = visits(smoothed);
        List<Span> plates = all.loads().stream()
                .filter(l -> visits.values().stream()
                        .flatMap(List::stream)
                        .noneMatch(v -> v.from() < l.to() && l.from() < v.to()))
                .toList();
        for (int c = 0; c < k; c++) {
            double slope = plates.isEmpty() ? 1 : slope(bins.mean(clean[c]), smoothed, plates);
            double noise = firstDifference(clean[c]);
            // A taxel that hardly answers the plate must not be scaled up to the strongest by its noise.
            own[c] = plates.isEmpty() ? 1 : Math.max(Math.abs(slope), noise / all.top());
        }
        int[] strongest = new int[k];
        Arrays.fill(strongest, -1);
        for (int j = 0; j < k; j++) {
            double most = 0;
            for (int c = 0; c < k && slopes[j] != null; c++) {
                double answer = slopes[j][c].value() / Math.max(own[c], Double.MIN_NORMAL);
                if (answer > most && slopes[j][c].value() > 5 * slopes[j][c].error()) {
                    most = answer;
                    strongest[j] = c;
                }
            }
        }
        Map<Integer, Integer> pairs = new LinkedHashMap<>();
        for (int j = 0; j < k; j++) {
            int other = strongest[j];
            if (other >= 0 && other != j && strongest[other] == j) {
                pairs.put(j + 1, other + 1);
            }
        }
        return pairs;
    }

    private List<Calibration.Share> shares(CrossTalk.Slope[][] slopes, List<Taxel> taxels) {
        List<Calibration.Share> shares = new ArrayList<>();
        for (int j = 0; j < slopes.length; j++) {
            if (slopes[j] == null || taxels.get(j).state() != Taxel.State.FITTED) {
                continue;
            }
            for (int c = 0; c < slopes.length; c++) {
                if (taxels.get(c).state() == Taxel.State.FITTED && Double.isFinite(slopes[j][c].value())) {
                    shares.add(CrossTalk.share(j + 1, c + 1, slopes[j][c], slopes[j][j]));
                }
            }
        }
        return shares;
    }

    private Optional<String> crossTalkRefusal(double[] smoothed) {
        if (log.pressed().length == 0) {
            return Optional.of(
                    "the log does not say which taxel is pressed: press one after the other with a small probe"
                            + " and record its number in a column (pads.yaml, readings: pressed); swapped taxels cannot be found"
                            + " without it either");
        }
        return visits(smoothed).isEmpty()
                ? Optional.of("no taxel was pressed alone; press one after the other with a small probe")
                : Optional.empty();
    }
}
