package gripwright.report;

import gripwright.study.DesignChange.Kind;
import gripwright.study.VaryFindings;
import gripwright.study.VaryResult;
import gripwright.study.VaryResult.Difference;
import gripwright.study.VaryResult.Effect;
import java.util.List;
import java.util.function.Function;

/** What changes of a hand do: one line each, effect on success and on capture area with paired intervals, ranked. */
public final class VaryPicture {
    private static final double WIDTH = 960;
    private static final double NAMES = 300;
    private static final double COLUMN = 300;
    private static final double GAP = 30;
    private static final double ROW = 22;

    private final Svg svg = new Svg();
    private final VaryResult vary;
    private final double points;
    private final double area;

    private VaryPicture(VaryResult vary) {
        this.vary = vary;
        this.points = most(e -> e.success(), 1e2);
        this.area = most(e -> e.area(), 1e4);
    }

    public static Picture draw(VaryResult vary) {
        return new VaryPicture(vary).picture();
    }

    private Picture picture() {
        double y = 34;
        y = rows("What to change", vary.ranked(Kind.DESIGN), y) + 24;
        y = rows("What can go wrong", vary.ranked(Kind.FAULT), y) + 8;
        svg.text(0, y + 14, "Lines: 95 % intervals of paired runs. Hollow: can be luck.", "lq");
        if (vary.again().isPresent()) {
            for (String line : Wrap.lines(VaryFindings.best(vary), 140)) {
                y += 18;
                svg.text(0, y + 14, line, "l");
            }
        }
        String title = "Effect of " + vary.effects().size() + " changes of the hand on success and capture area";
        return new Picture(title, WIDTH, y + 24, svg.body());
    }

    private double rows(String title, List<Effect> effects, double top) {
        svg.text(0, top - 12, title, "n");
        double left = NAMES + COLUMN / 2;
        svg.text(left, top - 12, "success, percentage points", "l", Svg.Anchor.MIDDLE);
        svg.text(left + COLUMN + GAP, top - 12, "capture area, cm\u00b2", "l", Svg.Anchor.MIDDLE);
        double y = top;
        for (Effect e : effects) {
            svg.line(0, y, WIDTH, y, "rule").text(0, y + 15, Wrap.shortened(e.words(), 42), "v");
            if (e.possible()) {
                bar(e.success(), 1e2, points, left, y);
                bar(e.area(), 1e4, area, left + COLUMN + GAP, y);
            } else {
                svg.text(NAMES, y + 15, Wrap.shortened("not possible: " + e.impossible(), 90), "lq");
            }
            y += ROW;
        }
        for (double middle : new double[] {left, left + COLUMN + GAP}) {
            svg.line(middle, top, middle, y, "t");
        }
        scale(points, left, y);
        scale(area, left + COLUMN + GAP, y);
        return y + 22;
    }

    private void bar(Difference d, double unit, double most, double middle, double y) {
        double perUnit = COLUMN / 2 / most * unit;
        double x = middle + perUnit * d.value();
        double low = Math.max(middle - COLUMN / 2, middle + perUnit * d.low());
        double high = Math.min(middle + COLUMN / 2, middle + perUnit * d.high());
        svg.line(low, y + 11, high, y + 11, "wh");
        svg.circle(x, y + 11, 4, d.settled() ? "mf" : "und");
    }

    private void scale(double most, double middle, double y) {
        double step = Num.nice(most / 2);
        for (double value = -Math.floor(most / step + 1e-9) * step; value <= most * (1 + 1e-9); value += step) {
            double x = middle + COLUMN / 2 * value / most;
            svg.line(x, y, x, y + 4, "t").text(x, y + 17, Num.text(value, 2), "l", Svg.Anchor.MIDDLE);
        }
    }

    private double most(Function<Effect, Difference> what, double unit) {
        double most = vary.effects().stream()
                .filter(Effect::possible)
                .map(what)
                .mapToDouble(d -> unit * Math.max(Math.abs(d.low()), Math.abs(d.high())))
                .max()
                .orElse(1);
        return most > 0 ? 1.02 * most : 1;
    }
}
