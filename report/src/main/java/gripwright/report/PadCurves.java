package gripwright.report;

import gripwright.pad.Averaging;
import gripwright.pad.PadAnswer;
import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;

/** Three small curves of a pad: what thicker rubber costs, what pitch it allows, what averaging buys and where it ends. */
final class PadCurves {
    private static final double HEIGHT = 150;
    private static final double WIDE = 220;
    private static final double[] LEFTS = {64, 356, 648};
    private static final double GRAM = 9.80665e-3;

    private final Svg svg;
    private final PadAnswer pad;
    private final double top;

    private PadCurves(Svg svg, PadAnswer pad, double top) {
        this.svg = svg;
        this.pad = pad;
        this.top = top;
    }

    /** Draws from {@code top} on; returns where the drawing ends. */
    static double draw(Svg svg, PadAnswer pad, double top) {
        PadCurves c = new PadCurves(svg, pad, top);
        c.thickness();
        c.pitch();
        c.averaging();
        return top + HEIGHT + 62;
    }

    private Scale rubber(double left) {
        double most = pad.thicknesses().get(pad.thicknesses().size() - 1).overChip();
        return new Scale(0, 1e3 * most * 1.04, left, left + WIDE);
    }

    private void thickness() {
        Scale x = rubber(LEFTS[0]);
        double most = pad.thicknesses().get(0).peak() / 1e3;
        Scale y = new Scale(0, 1.08 * most, top + HEIGHT, top + 14);
        frame(LEFTS[0], "over the chip, kPa/N", x, y, "rubber over the chip, mm");
        line(x, y, p -> p.peak() / 1e3, "c0");
        double own = 1e3 * pad.design().overChip();
        svg.circle(x.at(own), y.at(pad.response().peak() / 1e3), 3, "forcedot");
        svg.text(x.at(own) + 8, y.at(pad.response().peak() / 1e3) - 6, "this pad", "l halo");
        svg.text(LEFTS[0] + WIDE, top + 34, "hardness changes it by " + hardness(), "lq", Svg.Anchor.END);
    }

    private String hardness() {
        double least = pad.hardnesses().stream()
                .mapToDouble(PadAnswer.Hardness::peak)
                .min()
                .orElse(0);
        double most = pad.hardnesses().stream()
                .mapToDouble(PadAnswer.Hardness::peak)
                .max()
                .orElse(0);
        return Num.percent(1 - least / most);
    }

    private void pitch() {
        Scale x = rubber(LEFTS[1]);
        double most = pad.thicknesses().get(pad.thicknesses().size() - 1).widestPitch();
        Scale y = new Scale(0, 1e3 * Math.max(most, 1.1 * pad.design().pitch()), top + HEIGHT, top + 14);
        frame(LEFTS[1], "pitch of the chips, mm", x, y, "rubber over the chip, mm");
        line(x, y, p -> 1e3 * p.widestPitch(), "c0");
        line(x, y, p -> 1e3 * p.recommendedPitch(), "c2");
        double key = x.to() - 120;
        svg.line(key, y.from() - 30, key + 26, y.from() - 30, "c0").text(key + 32, y.from() - 26, "without gaps", "l");
        svg.line(key, y.from() - 12, key + 26, y.from() - 12, "c2").text(key + 32, y.from() - 8, "recommended", "l");
        double own = 1e3 * pad.design().overChip();
        double at = y.at(1e3 * pad.design().pitch());
        svg.circle(x.at(own), at, 3, "forcedot");
        svg.text(
                x.from() + 6,
                at - 8,
                pad.blind() ? "this pad: blind gaps" : "this pad",
                pad.blind() ? "l b halo" : "l halo");
    }

    private void averaging() {
        List<Averaging> all = pad.averaging();
        double leastY = Double.POSITIVE_INFINITY;
        double mostY = 0;
        for (Averaging a : all) {
            leastY = Math.min(leastY, a.noise());
            mostY = Math.max(mostY, Math.max(a.noise(), a.drift()));
        }
        double low = Math.floor(Math.log10(leastY / GRAM));
        double high = Math.ceil(Math.log10(mostY / GRAM));
        Scale x = new Scale(0, Math.log10(all.get(all.size() - 1).readings()), LEFTS[2], LEFTS[2] + WIDE);
        Scale y = new Scale(low, high, top + HEIGHT, top + 14);
        svg.text(LEFTS[2] - 36, top, "smallest force over a chip, gf", "n");
        for (double v = low; v <= high; v++) {
            svg.line(x.from(), y.at(v), x.to(), y.at(v), "gl");
            svg.text(x.from() - 6, y.at(v) + 4, Num.digits(Math.pow(10, v), 1), "l", Svg.Anchor.END);
        }
        for (Averaging a : all) {
            double at = x.at(Math.log10(a.readings()));
            svg.line(at, y.from(), at, y.from() + 4, "t");
            svg.text(at, y.from() + 18, String.valueOf(a.readings()), "l", Svg.Anchor.MIDDLE);
        }
        svg.text(x.to(), top + HEIGHT + 36, "readings averaged", "l", Svg.Anchor.END);
        curve(all, x, y, Averaging::noise, "c0");
        curve(all, x, y, Averaging::drift, "c2");
        svg.text(x.from() + 30, y.at(Math.log10(all.get(0).noise() / GRAM)) - 2, "noise", "l halo");
        Averaging end = all.get(all.size() - 1);
        double drift = y.at(Math.log10(Math.max(Math.pow(10, low), end.drift() / GRAM)));
        svg.text(x.to(), drift - 10, "heat and weather, at most", "l halo", Svg.Anchor.END);
    }

    private void curve(List<Averaging> all, Scale x, Scale y, ToDoubleFunction<Averaging> of, String style) {
        List<Svg.P> points = new ArrayList<>();
        double floor = Math.pow(10, y.low());
        for (Averaging a : all) {
            double v = of.applyAsDouble(a) / GRAM;
            if (v >= floor) {
                points.add(new Svg.P(x.at(Math.log10(a.readings())), y.at(Math.log10(v))));
            }
        }
        if (points.size() > 1) {
            svg.polyline(points, style);
        }
    }

    private void frame(double left, String title, Scale x, Scale y, String under) {
        svg.text(left - 36, top, title, "n");
        for (double v : y.ticks(4)) {
            svg.line(x.from(), y.at(v), x.to(), y.at(v), "gl");
            svg.text(x.from() - 6, y.at(v) + 4, Num.text(v, 1), "l", Svg.Anchor.END);
        }
        for (double v : x.ticks(5)) {
            svg.line(x.at(v), y.from(), x.at(v), y.from() + 4, "t");
            svg.text(x.at(v), y.from() + 18, Num.text(v, 1), "l", Svg.Anchor.MIDDLE);
        }
        svg.line(x.from(), y.from(), x.to(), y.from(), "t");
        svg.text(left + WIDE, top + HEIGHT + 36, under, "l", Svg.Anchor.END);
    }

    private void line(Scale x, Scale y, ToDoubleFunction<PadAnswer.Thickness> of, String style) {
        List<Svg.P> points = new ArrayList<>();
        for (PadAnswer.Thickness p : pad.thicknesses()) {
            points.add(new Svg.P(x.at(1e3 * p.overChip()), y.at(of.applyAsDouble(p))));
        }
        svg.polyline(points, style);
    }
}
