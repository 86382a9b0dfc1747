package gripwright.signal;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;

/** Counts over invented logs how often the truth lies in the stated interval, and how wide that is. */
final class ClosedLoop {
    static final Rates RATES = new Rates(0.05, 0.05, 100);

    /** Six taxels: sound, weaker with less play and more creep, trapped air, stuck, clipped, strong. */
    static List<InventedLog.Truth> taxels() {
        InventedLog.Truth s = InventedLog.Truth.sound();
        return List.of(
                s,
                s.gain(60, 1.0).play(0.015).creep(0.03, 8),
                s.air(),
                s.stuck(),
                s.clipped(6200 + 350),
                s.gain(110, -2));
    }

    /**
     * One figure of one taxel over all logs.
     *
     * @param inside logs whose interval holds the truth
     * @param told logs that gave the figure at all
     * @param pull mean distance of the value from the truth, in half widths
     * @param ratio median width over that of the fit that knows
     */
    record Count(int inside, int told, int logs, double ratio, double pull) {}

    final Map<String, Count> counts = new LinkedHashMap<>();
    int namedAir;
    int namedDead;
    int namedClip;

    ClosedLoop(InventedLog.Plan plan, int first, int logs) {
        Map<String, List<Boolean>> inside = new LinkedHashMap<>();
        Map<String, List<Double>> ratio = new LinkedHashMap<>();
        Map<String, List<Double>> pull = new LinkedHashMap<>();
        for (int seed = first; seed < first + logs; seed++) {
            InventedLog made = new InventedLog(plan, taxels(), seed);
            Calibration c = Calibrator.of(made.log, RATES);
            note("all: lag", c.lag(), plan.lag(), lagWidth(made), inside, ratio, pull);
            note("all: skew", c.skew(), plan.skew(), skewWidth(made), inside, ratio, pull);
            for (int k : new int[] {0, 1, 2, 4, 5}) {
                Known known = new Known(made, k, c.temperature0(), c.ambient0(), RATES);
                for (Map.Entry<FigureKind, Double> truth : known.truth.entrySet()) {
                    Figure f = c.taxels().get(k).figures().get(truth.getKey());
                    String name = "p0" + k + ": " + truth.getKey().words();
                    inside.computeIfAbsent(name, n -> new ArrayList<>());
                    if (f != null && f.known()) {
                        Objects.requireNonNull(inside.get(name))
                                .add(f.interval().contains(truth.getValue()));
                        double width = Objects.requireNonNull(known.width.get(truth.getKey()));
                        ratio.computeIfAbsent(name, n -> new ArrayList<>())
                                .add((f.interval().high() - f.interval().low()) / width);
                        pull.computeIfAbsent(name, n -> new ArrayList<>())
                                .add(pull(f.value(), truth.getValue(), f.interval()));
                    }
                }
            }
            for (Calibration.Share s : c.crossTalk()) {
                if (Math.abs(s.pressed() - s.reads()) == 1 && s.pressed() != 3 && s.reads() != 3) {
                    double truth = plan.neighbour()
                            * made.truths.get(s.reads() - 1).gain()
                            / made.truths.get(s.pressed() - 1).gain();
                    inside.computeIfAbsent(
                                    "all: cross-talk " + s.pressed() + " to " + s.reads(), n -> new ArrayList<>())
                            .add(s.interval().contains(truth));
                }
            }
            namedAir += c.taxels().get(2).words().contains("air trapped")
                            && c.taxels().get(2).recast()
                    ? 1
                    : 0;
            namedDead += c.taxels().get(3).state() == Taxel.State.DEAD ? 1 : 0;
            Figure clip = c.taxels().get(4).figures().get(FigureKind.FULL_SCALE);
            namedClip += clip != null && clip.refusal().orElse("").contains("saturates") ? 1 : 0;
        }
        inside.forEach((name, list) -> {
            List<Double> widths = new ArrayList<>(ratio.getOrDefault(name, List.of()));
            Collections.sort(widths);
            double median = widths.isEmpty() ? Double.NaN : widths.get(widths.size() / 2);
            counts.put(
                    name,
                    new Count(
                            (int) list.stream().filter(b -> b).count(),
                            list.size(),
                            logs,
                            median,
                            pull.getOrDefault(name, List.of()).stream()
                                    .mapToDouble(d -> d)
                                    .average()
                                    .orElse(Double.NaN)));
        });
    }

    private static void note(
            String name,
            Calibration.Told told,
            double truth,
            double width,
            Map<String, List<Boolean>> inside,
            Map<String, List<Double>> ratio,
            Map<String, List<Double>> pull) {
        inside.computeIfAbsent(name, n -> new ArrayList<>()).add(told.interval().contains(truth));
        ratio.computeIfAbsent(name, n -> new ArrayList<>())
                .add((told.interval().high() - told.interval().low()) / width);
        pull.computeIfAbsent(name, n -> new ArrayList<>()).add(pull(told.value(), truth, told.interval()));
    }

    private static double pull(double value, double truth, gripwright.stats.Interval interval) {
        return 2 * (value - truth) / (interval.high() - interval.low());
    }

    /** Standard deviation of the shift of one group of taps, all good taxels and the load cell's noise together. */
    private static double tapDeviation(InventedLog made, int[] group) {
        double gains = 0;
        for (InventedLog.Truth t : made.truths) {
            gains += t.dead() ? 0 : t.gain() * t.gain() / (t.noise() * t.noise() + 1 / 12.0);
        }
        double variance = 1 / gains + made.plan.forceNoise() * made.plan.forceNoise();
        double slopes = 0;
        int every = (int) Math.round(1000 / made.plan.rate());
        for (int i = group[0] + 1; i < group[1]; i += every) {
            double slope = (made.force[i + 1] - made.force[i - 1]) / 2e-3;
            slopes += slope * slope;
        }
        return Math.sqrt(variance / slopes);
    }

    private static double lagWidth(InventedLog made) {
        double a = tapDeviation(made, made.firstTaps);
        double b = tapDeviation(made, made.lastTaps);
        double apart = made.lastTaps[0] - made.firstTaps[0];
        double back = 0.5 * (made.firstTaps[0] + made.firstTaps[1]);
        return 3.92 * Math.hypot(a * (1 + back / apart), b * back / apart);
    }

    private static double skewWidth(InventedLog made) {
        double apart = (made.lastTaps[0] - made.firstTaps[0]) * 1e-3;
        return 3.92 * Math.hypot(tapDeviation(made, made.firstTaps), tapDeviation(made, made.lastTaps)) / apart;
    }

    /** The counts as a table, figures in rows, taxels side by side. */
    String text() {
        StringBuilder out = new StringBuilder();
        counts.forEach((name, c) -> out.append(String.format(
                Locale.ROOT,
                "%-40s %3d of %3d  width %.2f  pull %+.2f%n",
                name,
                c.inside(),
                c.told(),
                c.ratio(),
                c.pull())));
        return out.append("named: air ")
                .append(namedAir)
                .append(", dead ")
                .append(namedDead)
                .append(", saturated ")
                .append(namedClip)
                .append('\n')
                .toString();
    }
}
