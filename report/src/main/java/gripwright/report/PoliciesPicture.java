package gripwright.report;

import gripwright.stats.Interval;
import gripwright.study.PolicyResult;
import gripwright.study.PolicyResult.Row;
import java.util.function.ToDoubleFunction;

/** What a drive policy is worth: change of success and of the way the object is moved, one line each, with intervals. */
public final class PoliciesPicture {
    private static final double WIDTH = 960;
    private static final double NAMES = 210;
    private static final double VALUES = 84;
    private static final double COLUMN = 270;
    private static final double ROW = 24;

    private final Svg svg = new Svg();
    private final PolicyResult result;
    private final double points;
    private final double way;

    private PoliciesPicture(PolicyResult result) {
        this.result = result;
        points = most(r ->
                1e2 * Math.max(Math.abs(r.success().low()), Math.abs(r.success().high())));
        way = most(r -> 1e3
                * Math.max(
                        Math.abs(r.change()),
                        Math.max(
                                end(r.changeInterval().low()),
                                end(r.changeInterval().high()))));
    }

    public static Picture draw(PolicyResult result) {
        return new PoliciesPicture(result).picture();
    }

    private static double end(double value) {
        return Double.isFinite(value) ? Math.abs(value) : 0;
    }

    private double most(ToDoubleFunction<Row> what) {
        double most = result.rows().stream()
                .filter(r -> r.possible() && r.pairs() > 0)
                .mapToDouble(what)
                .max()
                .orElse(1);
        return most > 0 ? 1.05 * most : 1;
    }

    private Picture picture() {
        double first = NAMES + VALUES + COLUMN / 2;
        double second = first + COLUMN + VALUES + 24;
        svg.text(0, 14, result.policy() + " against " + result.against(), "n");
        svg.text(first, 14, "held: change in percentage points", "l", Svg.Anchor.MIDDLE);
        svg.text(second, 14, "object moved: change in mm", "l", Svg.Anchor.MIDDLE);
        double top = 26;
        double y = top;
        for (Row r : result.rows()) {
            svg.line(0, y, WIDTH, y, "rule");
            svg.text(0, y + 16, Wrap.shortened(r.object() + ", " + r.grip(), 28), "v");
            if (!r.possible()) {
                svg.text(NAMES, y + 16, Wrap.shortened("not possible: " + r.impossible(), 105), "lq");
            } else if (r.pairs() > 0) {
                svg.text(
                        NAMES + VALUES - 10,
                        y + 16,
                        Num.percent(r.shareAgainst()) + " \u2192 " + Num.percent(r.share()),
                        "l",
                        Svg.Anchor.END);
                bar(r.successChange(), r.success(), 1e2, points, first, y, r.successSettled());
                svg.text(
                        second - COLUMN / 2 - 10,
                        y + 16,
                        Num.text(1e3 * r.movedAgainst(), 1) + " \u2192 " + Num.text(1e3 * r.moved(), 1),
                        "l",
                        Svg.Anchor.END);
                bar(r.change(), r.changeInterval(), 1e3, way, second, y, r.changeSettled());
            } else {
                svg.text(NAMES, y + 16, "no decided pair", "lq");
            }
            y += ROW;
        }
        for (double middle : new double[] {first, second}) {
            svg.line(middle, top, middle, y, "t");
        }
        axis(points, first, y);
        axis(way, second, y);
        svg.text(0, y + 38, "Lines: 95 % intervals of paired runs. Hollow: can be luck. Left of the line: less.", "lq");
        String title = "What the drive policy " + result.policy() + " is worth beside " + result.against();
        return new Picture(title, WIDTH + 40, y + 46, svg.body());
    }

    private void bar(
            double value, Interval interval, double unit, double most, double middle, double y, boolean settled) {
        double perUnit = COLUMN / 2 / most * unit;
        double low = Math.max(middle - COLUMN / 2, middle + perUnit * interval.low());
        double high = Math.min(middle + COLUMN / 2, middle + perUnit * interval.high());
        svg.line(low, y + 12, high, y + 12, "wh");
        svg.circle(middle + perUnit * value, y + 12, 4, settled ? "mf" : "und");
    }

    private void axis(double most, double middle, double y) {
        double step = Num.nice(most / 2);
        for (double value = -Math.floor(most / step + 1e-9) * step; value <= most * (1 + 1e-9); value += step) {
            double x = middle + COLUMN / 2 * value / most;
            svg.line(x, y, x, y + 4, "t").text(x, y + 17, Num.text(value, 2), "l", Svg.Anchor.MIDDLE);
        }
    }
}
