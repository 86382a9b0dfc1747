package gripwright.report;

import gripwright.pad.PadAnswer;
import gripwright.pad.PadDesign;
import gripwright.pad.Strip;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;

/** What one cell reads over the offset of a load, and below it the strip in section with its blind stretches. */
public final class PadPicture {
    private static final double WIDTH = 900;
    private static final double LEFT = 64;
    private static final double RIGHT = 840;
    private static final int POINTS = 160;

    private PadPicture() {}

    public static Picture draw(PadAnswer pad) {
        Svg svg = new Svg();
        cell(svg, pad);
        double end = PadCurves.draw(svg, pad, strip(svg, pad, 330) + 30);
        return new Picture(
                "What the pad " + pad.design().name()
                        + " feels: die pressure per newton over the offset of the load, and" + " along the strip",
                WIDTH,
                end,
                svg.body());
    }

    private static void cell(Svg svg, PadAnswer pad) {
        double reach = 2.5 * pad.design().overChip();
        double peak = pad.response().peak() / 1e3;
        Scale x = new Scale(0, reach * 1e3, LEFT, 560);
        Scale y = new Scale(-0.05 * peak, 1.05 * peak, 250, 30);
        svg.text(LEFT, 14, "one cell: die pressure per newton, kPa/N", "n");
        grid(svg, x, y, true);
        svg.text(560, 284, "offset of the load from the chip, mm", "l", Svg.Anchor.END);
        curve(svg, x, y, reach, r -> pad.response().at(r) / 1e3, "c0");
        curve(svg, x, y, reach, r -> -pad.response().tangential(r) / 1e3, "c2");
        mark(svg, pad, x, y, 0.5, "half");
        mark(svg, pad, x, y, Strip.BLIND, "a fifth: blind beyond");
        double key = 590;
        svg.line(key, 50, key + 34, 50, "c0").text(key + 42, 54, "load into the pad", "l");
        svg.line(key, 72, key + 34, 72, "c2").text(key + 42, 76, "load along it, towards the chip", "l");
        svg.text(key, 112, "over the chip " + Num.digits(peak, 3) + " kPa/N", "v");
        svg.text(key, 132, "pitch " + Num.mm(pad.design().pitch()), "v");
        svg.text(key, 152, "recommended " + Num.mm(pad.strip().recommendedPitch()), "v");
        svg.text(key, 172, "widest without gaps " + Num.mm(pad.strip().widestPitch()), "v");
    }

    private static void grid(Svg svg, Scale x, Scale y, boolean labels) {
        for (double v : y.ticks(4)) {
            svg.line(x.from(), y.at(v), x.to(), y.at(v), "gl");
            svg.text(x.from() - 6, y.at(v) + 4, Num.text(v, 2), "l", Svg.Anchor.END);
        }
        svg.line(x.from(), y.at(0), x.to(), y.at(0), "t");
        for (double v : x.ticks(6)) {
            svg.line(x.at(v), y.from(), x.at(v), y.from() + 4, "t");
            if (labels) {
                svg.text(x.at(v), y.from() + 18, Num.text(v, 2), "l", Svg.Anchor.MIDDLE);
            }
        }
    }

    private static void curve(Svg svg, Scale x, Scale y, double reach, DoubleUnaryOperator f, String style) {
        List<Svg.P> points = new ArrayList<>();
        for (int i = 0; i <= POINTS; i++) {
            double r = reach * i / POINTS;
            points.add(new Svg.P(x.at(1e3 * r), y.at(f.applyAsDouble(r))));
        }
        svg.polyline(points, style);
    }

    private static void mark(Svg svg, PadAnswer pad, Scale x, Scale y, double share, String label) {
        double r = pad.response().radius(share);
        double px = x.at(1e3 * r);
        double py = y.at(share * pad.response().peak() / 1e3);
        svg.circle(px, py, 2.6, "forcedot").text(px + 9, py - 5, label + ", " + Num.mm(r), "l halo");
    }

    private static double strip(Svg svg, PadAnswer pad, double top) {
        PadDesign d = pad.design();
        Strip s = pad.strip();
        double half =
                s.cell(d.count() - 1) + Math.max(1.2 * d.overBoard(), d.chip().sizeX());
        Scale x = new Scale(-half, half, LEFT, RIGHT);
        double units = (RIGHT - LEFT) / (2 * half);
        Scale y = new Scale(0, 1.05, top + 110, top + 14);
        svg.text(LEFT, top, "along the strip: the best cell's share of the peak, %", "n");
        for (double v : new double[] {0, 0.5, 1}) {
            svg.line(LEFT, y.at(v), RIGHT, y.at(v), "gl");
            svg.text(LEFT - 6, y.at(v) + 4, Num.text(100 * v, 0), "l", Svg.Anchor.END);
        }
        svg.line(LEFT, y.at(Strip.BLIND), RIGHT, y.at(Strip.BLIND), "h dash");
        List<Svg.P> points = new ArrayList<>();
        for (int i = 0; i <= 4 * POINTS; i++) {
            double at = -half + 2 * half * i / (4 * POINTS);
            points.add(new Svg.P(
                    x.at(at), y.at(Math.max(0, s.best(at)) / pad.response().peak())));
        }
        svg.polyline(points, "c1");
        double surface = top + 140;
        double board = surface + units * d.overBoard();
        svg.rect(LEFT, surface, RIGHT - LEFT, board - surface, "rub")
                .rect(LEFT, surface, RIGHT - LEFT, board - surface, "o");
        for (int i = 0; i < d.count(); i++) {
            double left = x.at(s.cell(i) - d.chip().sizeX() / 2);
            double height = units * d.chip().height();
            svg.rect(left, board - height, units * d.chip().sizeX(), height, "s1");
            svg.rect(left, board - height, units * d.chip().sizeX(), height, "o");
            double port = units * d.chip().portRadius();
            svg.line(x.at(s.cell(i)) - port, board - height, x.at(s.cell(i)) + port, board - height, "force");
        }
        svg.rect(LEFT, board, RIGHT - LEFT, 8, "ground").line(LEFT, board, RIGHT, board, "o");
        for (Strip.Gap gap : s.gaps()) {
            svg.line(x.at(gap.from()), surface - 7, x.at(gap.to()), surface - 7, "k2");
            svg.line(x.at(gap.from()), surface - 11, x.at(gap.from()), surface - 3, "t");
            svg.line(x.at(gap.to()), surface - 11, x.at(gap.to()), surface - 3, "t");
        }
        double below = board + 34;
        svg.scaleBar(LEFT, below, units, 120, "");
        svg.text(
                RIGHT,
                below + 5.5,
                s.gaps().isEmpty()
                        ? "no blind gaps"
                        : "heavy bars: blind, " + Num.mm(s.gaps().get(0).length()) + " between every two chips",
                "l b",
                Svg.Anchor.END);
        svg.axes(LEFT - 44, board, "x", "z");
        return below + 20;
    }
}
