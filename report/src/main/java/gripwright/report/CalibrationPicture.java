package gripwright.report;

import gripwright.signal.Allan;
import gripwright.signal.Calibration;
import gripwright.signal.Figure;
import gripwright.signal.FigureKind;
import gripwright.signal.Taxel;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** A calibration in pictures: sensitivities with their intervals, the loop of a taxel, Allan deviations. */
public final class CalibrationPicture {
    private static final double WIDTH = 900;
    private static final double LEFT = 74;
    private static final double RIGHT = 850;
    private static final int MOST_LOOPS = 12;

    /** A loop that many times as wide as the middle one has a scale of its own. */
    private static final double OWN_SCALE = 3;

    private static final int MOST_NAMES = 16;
    private static final double NAME_APART = 13;

    private CalibrationPicture() {}

    /** Sensitivity of every taxel with its 95 % interval; those that stand out are named. */
    public static Picture sensitivities(Calibration c) {
        Svg svg = new Svg();
        List<Taxel> taxels = c.taxels();
        double most = 0;
        for (Taxel t : taxels) {
            most = Math.max(most, high(t));
        }
        Scale y = new Scale(0, 1.08 * Math.max(most, Double.MIN_NORMAL), 230, 34);
        double pitch = (RIGHT - LEFT) / Math.max(4, taxels.size());
        svg.text(
                LEFT, 14, "sensitivity, " + c.unit() + "/N; bars: 95 % interval, within the dot where none shows", "n");
        for (double v : y.ticks(5)) {
            svg.line(LEFT, y.at(v), RIGHT, y.at(v), "gl");
            svg.text(LEFT - 6, y.at(v) + 4, Num.digits(v, 3), "l", Svg.Anchor.END);
        }
        svg.line(LEFT, y.at(0), RIGHT, y.at(0), "t");
        int every = (int) Math.ceil(46 / pitch);
        for (int i = 0; i < taxels.size(); i++) {
            Taxel t = taxels.get(i);
            double x = LEFT + pitch * (i + 0.5);
            Figure f = t.figures().get(FigureKind.SENSITIVITY);
            if (f != null && f.known()) {
                svg.line(x, y.at(0), x, y.at(f.value()), t.recast() ? "c2" : "c1");
                svg.line(x, y.at(f.interval().low()), x, y.at(f.interval().high()), "force");
                svg.circle(x, y.at(f.value()), 3.2, "forcedot");
            } else {
                svg.line(x - 4, y.at(0) - 12, x + 4, y.at(0) - 4, "t")
                        .line(x - 4, y.at(0) - 4, x + 4, y.at(0) - 12, "t");
            }
            if (i % every == 0 || t.recast() || f == null) {
                svg.text(x, 250, t.column(), t.recast() || f == null ? "l b" : "l", Svg.Anchor.MIDDLE);
            }
            if (t.recast()) {
                svg.text(
                        x,
                        f == null ? 218 : Math.min(218, y.at(f.value()) - 10),
                        "recast",
                        "l halo",
                        Svg.Anchor.MIDDLE);
            } else if (f == null) {
                svg.text(x, 208, t.state().words(), "l halo", Svg.Anchor.MIDDLE);
            }
        }
        return new Picture("Sensitivity of every taxel with its interval", WIDTH, 264, svg.body());
    }

    private static double high(Taxel t) {
        Figure f = t.figures().get(FigureKind.SENSITIVITY);
        return f != null && f.known() ? f.interval().high() : 0;
    }

    /** Deviation of loading and unloading from the best straight line, a small picture per taxel. */
    public static Picture loops(Calibration c) {
        Svg svg = new Svg();
        List<Taxel> shown = c.taxels().stream()
                .filter(t -> !t.loading().isEmpty())
                .limit(MOST_LOOPS)
                .toList();
        svg.text(LEFT - 50, 14, "deviation from the best straight line, % of full scale, over force, % of full", "n");
        int columns = 4;
        double wide = 176;
        double high = 120;
        double usual = usualReach(shown);
        for (int i = 0; i < shown.size(); i++) {
            double x0 = 58 + (i % columns) * (wide + 38);
            double y0 = 52 + (i / columns) * (high + 52.0);
            loop(svg, shown.get(i), x0, y0, wide, high, usual);
        }
        double rows = Math.ceil(shown.size() / (double) columns);
        double end = 52 + rows * (high + 52) + 4;
        svg.line(LEFT, end, LEFT + 34, end, "c1").text(LEFT + 42, end + 4, "loading", "l");
        svg.line(LEFT + 120, end, LEFT + 154, end, "c2").text(LEFT + 162, end + 4, "unloading", "l");
        return new Picture(
                "Loading and unloading of each taxel against its best straight line", WIDTH, end + 16, svg.body());
    }

    private static double most(Taxel t) {
        double most = 0;
        for (int k = 0; k < t.loading().size(); k++) {
            for (double v : new double[] {t.loading().get(k), t.unloading().get(k)}) {
                most = Double.isNaN(v) ? most : Math.max(most, Math.abs(v));
            }
        }
        return 100 * most;
    }

    /** One scale for all taxels, so that they can be compared; those far beyond the middle one have their own. */
    private static double usualReach(List<Taxel> shown) {
        double[] sorted =
                shown.stream().mapToDouble(CalibrationPicture::most).sorted().toArray();
        if (sorted.length == 0) {
            return 1;
        }
        double limit = OWN_SCALE * sorted[(sorted.length - 1) / 2];
        double most = 0;
        for (double v : sorted) {
            most = v <= limit ? Math.max(most, v) : most;
        }
        return rounded(most);
    }

    private static double rounded(double most) {
        double step = Num.nice(most);
        return Math.ceil(most / step) * step;
    }

    private static void loop(Svg svg, Taxel t, double x0, double y0, double wide, double high, double usual) {
        double most = most(t);
        boolean own = most > usual;
        double reach = own ? rounded(most) : usual;
        Scale x = new Scale(0, 100, x0, x0 + wide);
        Scale y = new Scale(-reach, reach, y0 + high, y0);
        svg.text(x0, y0 - 8, t.column() + (own ? ", another scale" : ""), "v b");
        for (double v : new double[] {-reach, 0, reach}) {
            svg.line(x0, y.at(v), x0 + wide, y.at(v), v == 0 ? "t" : "gl");
            svg.text(x0 - 5, y.at(v) + 4, Num.text(v, 2), "l", Svg.Anchor.END);
        }
        for (double v : new double[] {0, 50, 100}) {
            svg.text(x.at(v), y0 + high + 15, Num.text(v, 0), "l", Svg.Anchor.MIDDLE);
        }
        List<Svg.P> up = new ArrayList<>();
        List<Svg.P> down = new ArrayList<>();
        for (int k = 0; k < t.loading().size(); k++) {
            if (!Double.isNaN(t.loading().get(k))) {
                up.add(new Svg.P(x.at(5.0 * (k + 1)), y.at(100 * t.loading().get(k))));
            }
            if (!Double.isNaN(t.unloading().get(k))) {
                down.add(new Svg.P(x.at(5.0 * (k + 1)), y.at(100 * t.unloading().get(k))));
            }
        }
        svg.polyline(up, "c1").polyline(down, "c2");
    }

    /** Allan deviations of all taxels at rest, on logarithmic scales, with the slope that white noise has. */
    public static Picture allan(Calibration c) {
        Svg svg = new Svg();
        double shortest = Double.POSITIVE_INFINITY;
        double longest = 0;
        double low = Double.POSITIVE_INFINITY;
        double high = 0;
        for (Taxel t : c.taxels()) {
            for (Allan.Point p : t.allan()) {
                if (p.deviation() > 0) {
                    shortest = Math.min(shortest, p.time());
                    longest = Math.max(longest, p.time());
                    low = Math.min(low, p.deviation());
                    high = Math.max(high, p.deviation());
                }
            }
        }
        svg.text(LEFT, 14, "Allan deviation at rest, " + c.unit(), "n");
        if (!(longest > shortest) || !(high > 0)) {
            svg.text(LEFT, 60, "no rest long enough in this log", "l");
            return new Picture("Allan deviations", WIDTH, 80, svg.body());
        }
        Scale x = new Scale(Math.log10(shortest), Math.log10(longest), LEFT, 640);
        Scale y = new Scale(Math.floor(Math.log10(low) * 2) / 2, Math.ceil(Math.log10(high) * 2) / 2, 300, 34);
        for (double v : oneTwoFive(x)) {
            svg.line(x.at(Math.log10(v)), 34, x.at(Math.log10(v)), 300, "gl");
            svg.text(x.at(Math.log10(v)), 318, Num.digits(v, 1), "l", Svg.Anchor.MIDDLE);
        }
        svg.text(0.5 * (LEFT + 640), 338, "time averaged, s", "l", Svg.Anchor.MIDDLE);
        for (double v : oneTwoFive(y)) {
            svg.line(LEFT, y.at(Math.log10(v)), 640, y.at(Math.log10(v)), "gl");
            svg.text(LEFT - 6, y.at(Math.log10(v)) + 4, Num.digits(v, 1), "l", Svg.Anchor.END);
        }
        double first = Double.NaN;
        List<Name> names = new ArrayList<>();
        for (Taxel t : c.taxels()) {
            if (t.allan().isEmpty()) {
                continue;
            }
            List<Svg.P> points = new ArrayList<>();
            for (Allan.Point p : t.allan()) {
                points.add(new Svg.P(x.at(Math.log10(p.time())), y.at(Math.log10(Math.max(p.deviation(), 1e-300)))));
            }
            svg.polyline(points, t.words().isEmpty() ? "c1" : "c2");
            first = Double.isNaN(first) ? t.allan().get(0).deviation() : first;
            names.add(new Name(
                    t.column(),
                    !t.words().isEmpty(),
                    points.get(points.size() - 1).y()));
        }
        names(svg, names);
        double endTime = Math.min(x.high(), x.low() + 2 * (Math.log10(first) - y.low()));
        svg.line(
                x.at(x.low()),
                y.at(Math.log10(first)),
                x.at(endTime),
                y.at(Math.log10(first) - 0.5 * (endTime - x.low())),
                "c3");
        svg.line(730, 60, 764, 60, "c3").text(772, 64, "white noise", "l");
        svg.line(730, 84, 764, 84, "c2").text(772, 88, "stands out", "l");
        return new Picture("Allan deviations of all taxels at rest", WIDTH, 346, svg.body());
    }

    private record Name(String column, boolean standsOut, double at) {}

    /** Names at the ends of the curves, moved apart; of many only those that stand out and some others. */
    private static void names(Svg svg, List<Name> all) {
        List<Name> shown = new ArrayList<>(all.stream()
                .sorted(Comparator.comparing(Name::standsOut).reversed())
                .limit(MOST_NAMES)
                .sorted(Comparator.comparingDouble(Name::at))
                .toList());
        double[] place = shown.stream().mapToDouble(Name::at).toArray();
        for (int round = 0; round < 200; round++) {
            for (int k = 0; k + 1 < place.length; k++) {
                double lacks = NAME_APART - (place[k + 1] - place[k]);
                if (lacks > 0) {
                    place[k] -= 0.5 * lacks;
                    place[k + 1] += 0.5 * lacks;
                }
            }
        }
        for (int k = 0; k < place.length; k++) {
            Name name = shown.get(k);
            svg.line(642, name.at(), 660, place[k], "gl");
            svg.text(664, place[k] + 4, name.column(), name.standsOut() ? "l b" : "l");
        }
    }

    /** 1, 2 and 5 times powers of ten on a scale of logarithms; powers of ten only if that would be many. */
    private static List<Double> oneTwoFive(Scale scale) {
        List<Double> values = new ArrayList<>();
        boolean few = scale.high() - scale.low() < 3;
        for (int d = (int) Math.floor(scale.low()); d <= scale.high(); d++) {
            for (int m : few ? new int[] {1, 2, 5} : new int[] {1}) {
                double log = d + Math.log10(m);
                if (log >= scale.low() - 1e-9 && log <= scale.high() + 1e-9) {
                    values.add(Math.pow(10, d) * m);
                }
            }
        }
        return values;
    }
}
