package gripwright.signal;

import gripwright.pad.Detection;
import gripwright.stats.Interval;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.apache.commons.statistics.distribution.TDistribution;
import org.jspecify.annotations.Nullable;

/** From a fitted model to figures with intervals; uncertainties by the law of propagation (GUM), from the fit's covariance. */
final class TaxelFigures {
    private static final double NUDGE = 0.02;
    private static final double MISFIT = 4;

    /** By how much creep is less sure if its time constant is a guess; as found on invented logs. */
    private static final double WITHOUT_TIME = 1.3;

    private final TaxelFit.Input in;
    private final TaxelFit.Fitted fit;
    private final LoadCourse course;
    private final Needs needs;
    private final double[] middles;
    private final double student;
    private final Map<FigureKind, Figure> figures = new EnumMap<>(FigureKind.class);
    private List<Double> loading = List.of();
    private List<Double> unloading = List.of();

    TaxelFigures(TaxelFit.Input in, TaxelFit.Fitted fit, LoadCourse course, Needs needs) {
        this.in = in;
        this.fit = fit;
        this.course = course;
        this.needs = needs;
        this.middles = in.bins().middles();
        this.student = TDistribution.of(fit.freedom()).inverseSurvivalProbability(0.025);
    }

    Map<FigureKind, Figure> figures() {
        return figures;
    }

    List<Double> loading() {
        return loading;
    }

    List<Double> unloading() {
        return unloading;
    }

    private double play() {
        return fit.play();
    }

    private void put(Figure figure) {
        figures.put(figure.kind(), figure);
    }

    private void linear(FigureKind kind, int parameter) {
        put(Figure.around(kind, fit.parameters()[parameter], student * fit.error(parameter)));
    }

    private void orRefused(FigureKind kind, Optional<String> lacking, Runnable otherwise) {
        if (lacking.isPresent()) {
            put(Figure.refused(kind, lacking.get()));
        } else {
            otherwise.run();
        }
    }

    /** Standard deviation of a function of the parameters, by central differences of a few percent of their errors. */
    private double error(ToDoubleFunction<double[]> function) {
        double[] at = fit.parameters();
        double[] gradient = new double[at.length];
        for (int k = 0; k < at.length; k++) {
            double h = NUDGE * fit.error(k);
            if (h > 0) {
                double[] up = at.clone();
                double[] down = at.clone();
                up[k] += h;
                down[k] -= h;
                gradient[k] = (function.applyAsDouble(up) - function.applyAsDouble(down)) / (2 * h);
            }
        }
        double variance = 0;
        for (int i = 0; i < at.length; i++) {
            for (int j = 0; j < at.length; j++) {
                variance += gradient[i] * fit.covariance()[i][j] * gradient[j];
            }
        }
        return Math.sqrt(Math.max(0, variance));
    }

    void coefficients() {
        int p = fit.count();
        ToDoubleFunction<double[]> rest =
                v -> v[TaxelFit.ZERO] + v[p] * (v[TaxelFit.SENSITIVITY] + v[p] * v[TaxelFit.QUADRATIC]);
        put(Figure.around(FigureKind.OFFSET, rest.applyAsDouble(fit.parameters()), student * error(rest)));
        linear(FigureKind.SENSITIVITY, TaxelFit.SENSITIVITY);
        linear(FigureKind.QUADRATIC, TaxelFit.QUADRATIC);
        orRefused(
                FigureKind.TEMPERATURE, needs.temperature(), () -> linear(FigureKind.TEMPERATURE, fit.temperatureAt()));
        orRefused(FigureKind.AMBIENT, needs.ambient(), () -> linear(FigureKind.AMBIENT, fit.ambientAt()));
        orRefused(FigureKind.CREEP, needs.creep(), () -> {
            ToDoubleFunction<double[]> share = v -> v[TaxelFit.CREEP] / v[TaxelFit.SENSITIVITY];
            double unsure = fit.creepTimeKnown() ? 1 : WITHOUT_TIME;
            put(Figure.around(
                    FigureKind.CREEP, share.applyAsDouble(fit.parameters()), unsure * student * error(share)));
        });
        orRefused(
                FigureKind.CREEP_TIME,
                needs.creep().isPresent() || fit.creepTimeKnown()
                        ? needs.creep()
                        : Optional.of("the creep is too small beside its uncertainty to have a time constant; record a"
                                + " longer hold at full force"),
                () -> {
                    double spread = student * fit.error(p + 1);
                    double t = fit.creepTime();
                    put(Figure.of(FigureKind.CREEP_TIME, t, t * Math.exp(-spread), t * Math.exp(spread)));
                });
    }

    private record Shape(double rise, double line, double loop) {}

    private Shape shape(double[] parameters, double full) {
        double[] model = TaxelFit.reading(in, middles, parameters);
        double rise = CycleReadings.rise(model, course.force(), course.cycles(), course.step());
        double[][] branch = CycleReadings.branches(model, course.force(), course.cycles(), full);
        double[] level = new double[CycleReadings.LEVELS];
        double[] middle = new double[level.length];
        double loop = 0;
        for (int k = 0; k < level.length; k++) {
            level[k] = CycleReadings.level(k) * full;
            middle[k] = 0.5 * (branch[0][k] + branch[1][k]);
            loop = Math.max(loop, Math.abs(branch[1][k] - branch[0][k]));
        }
        return new Shape(rise, MinimaxLine.of(level, middle).deviation(), loop);
    }

    /** Percentages of full-scale output, from the counted cycles. */
    void cycles(@Nullable String saturated) {
        Optional<String> lacking = saturated != null ? Optional.of(saturated) : needs.cycles();
        if (lacking.isPresent()) {
            for (FigureKind kind : List.of(
                    FigureKind.FULL_SCALE, FigureKind.NONLINEARITY, FigureKind.HYSTERESIS, FigureKind.REPEATABILITY)) {
                put(Figure.refused(kind, lacking.get()));
            }
            return;
        }
        double full = CycleReadings.full(course.force(), course.cycles());
        Shape shape = shape(fit.parameters(), full);
        double rise = Math.abs(shape.rise());
        double[] model = TaxelFit.reading(in, middles, fit.parameters());
        double[] left = new double[model.length];
        for (int i = 0; i < left.length; i++) {
            double steady = fit.parameters()[TaxelFit.ZERO];
            if (fit.temperatureAt() >= 0) {
                steady += fit.coefficients()[fit.temperatureAt()] * (in.temperature()[i] - in.temperature0());
            }
            if (fit.ambientAt() >= 0) {
                steady += fit.coefficients()[fit.ambientAt()] * (in.ambient()[i] - in.ambient0());
            }
            left[i] = in.readings()[i] - steady - model[i];
        }
        CycleReadings.Scatter scatter = CycleReadings.scatter(
                left, course.force(), course.cycles(), full, course.step(), fit.white(), fit.walk());
        // What the model's shape misses beyond chance widens the figures that rest on it.
        double clear = MISFIT * scatter.deviation() / Math.sqrt(course.cycles().size());
        double missedLoop = 0;
        double missedLine = 0;
        for (int k = 0; k < CycleReadings.LEVELS; k++) {
            double up = scatter.mean()[0][k];
            double down = scatter.mean()[1][k];
            if (!Double.isNaN(up + down)) {
                missedLoop = Math.max(missedLoop, Math.abs(down - up) - clear * Math.sqrt(2));
                missedLine = Math.max(missedLine, Math.abs(0.5 * (up + down)) - clear);
            }
        }
        put(Figure.around(
                FigureKind.FULL_SCALE,
                shape.rise(),
                student * error(v -> shape(v, full).rise())));
        share(
                FigureKind.NONLINEARITY,
                shape.line() / rise,
                error(v -> {
                    Shape s = shape(v, full);
                    return s.line() / Math.abs(s.rise());
                }),
                missedLine / rise);
        share(
                FigureKind.HYSTERESIS,
                shape.loop() / rise,
                error(v -> {
                    Shape s = shape(v, full);
                    return s.loop() / Math.abs(s.rise());
                }),
                missedLoop / rise);
        Interval i = scatter.interval();
        put(Figure.of(FigureKind.REPEATABILITY, scatter.deviation() / rise, i.low() / rise, i.high() / rise));
        curves(model, scatter, full, rise);
    }

    private void share(FigureKind kind, double value, double error, double missed) {
        double half = Math.hypot(student * error, Math.max(0, missed));
        put(Figure.of(kind, value, Math.max(0, value - half), value + half));
    }

    /** Measured deviations of both branches from one straight line, for the picture. */
    private void curves(double[] model, CycleReadings.Scatter scatter, double full, double rise) {
        double[][] branch = CycleReadings.branches(model, course.force(), course.cycles(), full);
        List<Double> level = new ArrayList<>();
        List<Double> middle = new ArrayList<>();
        for (int k = 0; k < CycleReadings.LEVELS; k++) {
            for (int d = 0; d < 2; d++) {
                branch[d][k] += scatter.mean()[d][k];
            }
            double mean = 0.5 * (branch[0][k] + branch[1][k]);
            if (!Double.isNaN(mean)) {
                level.add(CycleReadings.level(k) * full);
                middle.add(mean);
            }
        }
        if (level.size() < 3) {
            return;
        }
        MinimaxLine line = MinimaxLine.of(
                level.stream().mapToDouble(v -> v).toArray(),
                middle.stream().mapToDouble(v -> v).toArray());
        List<Double> up = new ArrayList<>();
        List<Double> down = new ArrayList<>();
        for (int k = 0; k < CycleReadings.LEVELS; k++) {
            double straight = line.at0() + line.slope() * CycleReadings.level(k) * full;
            up.add((branch[0][k] - straight) / rise);
            down.add((branch[1][k] - straight) / rise);
        }
        loading = up;
        unloading = down;
    }

    /**
     * Noise at rest and what can be told from it.
     *
     * @param readings at rest, evenly spaced, without gaps; empty if there is no rest
     * @param corrected the same less temperature and ambient pressure
     * @param leastStep between two different readings
     */
    List<Allan.Point> rest(double[] readings, double[] corrected, double rowStep, double leastStep, Rates rates) {
        if (needs.rest().isPresent()) {
            for (FigureKind kind :
                    List.of(FigureKind.NOISE, FigureKind.DRIFT, FigureKind.CRITICAL, FigureKind.DETECTION)) {
                put(Figure.refused(kind, needs.rest().get()));
            }
            return List.of();
        }
        double noise = noise(readings, leastStep);
        // Variance of the mean squared first difference of white noise: 3 s^4 / n (von Neumann 1941, from memory).
        Interval interval = Allan.interval(noise, 2.0 * readings.length / 3);
        put(Figure.of(FigureKind.NOISE, noise, interval.low(), interval.high()));
        List<Allan.Point> curve = Allan.curve(corrected, rowStep);
        int second = (int) Math.round(1 / rowStep);
        if (4 * second <= corrected.length && second >= 1) {
            double drift = Allan.deviation(corrected, second);
            Interval i = Allan.interval(drift, Allan.freedom(corrected.length, second));
            put(Figure.of(FigureKind.DRIFT, drift, i.low(), i.high()));
        } else {
            put(Figure.refused(FigureKind.DRIFT, "the rest is too short; record at least 20 s without load"));
        }
        double sensitivity = Math.abs(fit.parameters()[TaxelFit.SENSITIVITY]);
        double relative = Math.hypot(
                student * fit.error(TaxelFit.SENSITIVITY) / sensitivity,
                0.5 * (interval.high() - interval.low()) / noise);
        double over = Math.sqrt(1 + 1.0 / rates.zeros());
        double critical = Detection.quantile(rates.falseAlarm()) * noise * over / sensitivity;
        put(Figure.around(FigureKind.CRITICAL, critical, relative * critical));
        double limit = Detection.limit(noise, sensitivity, rates.falseAlarm(), rates.miss(), rates.zeros());
        put(Figure.around(FigureKind.DETECTION, limit, relative * limit));
        return curve;
    }

    /** Of first differences, so that drift does not count; not below what a step of the readings hides. */
    static double noise(double[] readings, double leastStep) {
        double squares = 0;
        for (int i = 1; i < readings.length; i++) {
            double d = readings[i] - readings[i - 1];
            squares += d * d;
        }
        return Math.max(Math.sqrt(squares / (2.0 * (readings.length - 1))), leastStep / Math.sqrt(12));
    }

    /** Force at which the model reaches the reading where the taxel stops rising. */
    void saturation(double clip, double seenUpTo) {
        if (Double.isNaN(clip)) {
            put(Figure.refused(
                    FigureKind.SATURATION,
                    "it did not saturate up to " + Words.number(seenUpTo) + " N; press harder to find where it does"));
            return;
        }
        ToDoubleFunction<double[]> force = v -> {
            double above = clip - v[TaxelFit.ZERO];
            double root = v[TaxelFit.SENSITIVITY] * v[TaxelFit.SENSITIVITY] + 4 * v[TaxelFit.QUADRATIC] * above;
            return root < 0 ? Double.NaN : 2 * above / (v[TaxelFit.SENSITIVITY] + Math.sqrt(root));
        };
        double value = force.applyAsDouble(fit.parameters());
        double half = student * error(force);
        if (Double.isNaN(value) || Double.isNaN(half)) {
            put(
                    Figure.refused(
                            FigureKind.SATURATION,
                            "the fitted curve bends over before the reading at which it saturates; record more cycles below it"));
            return;
        }
        put(Figure.around(FigureKind.SATURATION, value, half));
    }

    TaxelModel model(double clip) {
        double[] v = fit.parameters();
        Figure noise = figures.get(FigureKind.NOISE);
        return new TaxelModel(
                v[TaxelFit.ZERO],
                v[TaxelFit.SENSITIVITY],
                v[TaxelFit.QUADRATIC],
                needs.creep().isEmpty() || fit.creepTimeKnown() ? v[TaxelFit.CREEP] : 0,
                fit.creepTime(),
                play(),
                needs.temperature().isEmpty() ? v[fit.temperatureAt()] : 0,
                needs.ambient().isEmpty() ? v[fit.ambientAt()] : 0,
                in.temperature0(),
                in.ambient0(),
                noise != null && noise.known() ? noise.value() : fit.deviation(),
                fit.error(TaxelFit.SENSITIVITY) / Math.abs(v[TaxelFit.SENSITIVITY]),
                in.top(),
                clip);
    }
}
