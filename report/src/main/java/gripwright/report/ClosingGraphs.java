package gripwright.report;

import gripwright.closing.ClosingDetail;
import gripwright.closing.Frame;
import gripwright.math.Vec3;
import gripwright.model.Finger;
import gripwright.model.GraspObject;
import gripwright.model.Hand;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Joint angles, forces and the object's way over tendon tension, one strip under the other on the same axis. */
final class ClosingGraphs {
    private static final double HEIGHT = 110;
    private static final double LABELS = 150;

    private ClosingGraphs() {}

    /** One curve: values in the unit of its strip. */
    private record Curve(String name, String style, List<Double> values) {}

    /**
     * Draws the strips of the closing phase below y.
     *
     * @return y where they end
     */
    static double draw(
            Svg svg, Hand hand, GraspObject object, ClosingDetail detail, double left, double right, double y) {
        List<Frame> frames = detail.frames().stream()
                .filter(f -> f.phase() == Frame.Phase.CLOSE)
                .toList();
        if (frames.size() < 2) {
            return y;
        }
        List<Double> tension = frames.stream().map(Moments::tension).toList();
        double most = tension.stream().mapToDouble(t -> t).max().orElse(1);
        Axis x = new Axis(0, Math.max(most, 1e-9), left, right - LABELS);
        double top = touches(svg, detail, x, y);
        double next = strip(svg, x, top, "joint angles, degrees", tension, angles(hand, frames), 90);
        next = strip(svg, x, next + 26, "forces on the object, N", tension, forces(hand, detail, frames), 0.1);
        next = strip(svg, x, next + 26, "object moved, mm", tension, travel(object, frames), 1);
        for (double v : x.ticks(5)) {
            svg.text(x.at(v), next + 16, Num.text(v, 2), "l", Svg.Anchor.MIDDLE);
        }
        svg.text(x.to, next + 33, "greatest tendon tension, N", "l", Svg.Anchor.END);
        return next + 40;
    }

    /** A linear axis from a value range to picture units. */
    private record Axis(double low, double high, double from, double to) {
        double at(double value) {
            return from + (value - low) / (high - low) * (to - from);
        }

        List<Double> ticks(int most) {
            double step = Num.nice((high - low) / most);
            List<Double> out = new ArrayList<>();
            for (double v = Math.ceil(low / step - 1e-9) * step; v <= high + 1e-9 * step; v += step) {
                out.add(v);
            }
            return out;
        }
    }

    /** First touches as ticks with the body's name over the strips; names that would collide take another line. */
    private static double touches(Svg svg, ClosingDetail detail, Axis x, double y) {
        double end = -1;
        int level = 0;
        svg.text(x.from - 56, y - 4, "first", "lq")
                .text(x.from - 56, y + 9, "touches", "lq")
                .line(x.from, y - 4, x.to, y - 4, "t");
        List<ClosingDetail.FirstTouch> inClosing = detail.firstTouches().stream()
                .filter(t -> t.phase() == Frame.Phase.CLOSE)
                .toList();
        int deepest = 0;
        for (int i = 0; i < inClosing.size(); i++) {
            ClosingDetail.FirstTouch t = inClosing.get(i);
            String name = (i + 1) + " " + detail.bodies().get(t.body());
            double at = x.at(Math.min(t.tension(), x.high));
            level = at < end ? level + 1 : 0;
            deepest = Math.max(deepest, level);
            svg.line(at, y - 4, at, y - 14, "t").text(at - 2, y + 9 + 14 * level, name, "l halo");
            end = Math.max(end, at + 8 + Svg.textWidth(name, 12));
        }
        return y + 34 + 14 * deepest;
    }

    private static double strip(
            Svg svg, Axis x, double top, String name, List<Double> tension, List<Curve> curves, double least) {
        double low = Math.min(0, extreme(curves, false));
        double high = Math.max(least, extreme(curves, true));
        Axis y = new Axis(low, high, top + HEIGHT, top + 14);
        svg.text(x.from, top + 6, name, "n");
        for (double v : y.ticks(3)) {
            svg.line(x.from, y.at(v), x.to, y.at(v), "gl");
            svg.text(x.from - 6, y.at(v) + 4, Num.text(v, 3), "l", Svg.Anchor.END);
        }
        svg.line(x.from, y.from, x.to, y.from, "t");
        for (double v : x.ticks(5)) {
            svg.line(x.at(v), y.from, x.at(v), y.from + 4, "t");
        }
        for (Curve c : curves) {
            List<Svg.P> points = new ArrayList<>();
            for (int i = 0; i < tension.size(); i++) {
                points.add(new Svg.P(x.at(tension.get(i)), y.at(c.values.get(i))));
            }
            svg.polyline(thinned(points), c.style);
        }
        labels(svg, x, y, curves);
        return top + HEIGHT;
    }

    /** Without points too near to the one before to be seen. */
    private static List<Svg.P> thinned(List<Svg.P> points) {
        List<Svg.P> out = new ArrayList<>();
        for (int i = 0; i < points.size(); i++) {
            Svg.P p = points.get(i);
            Svg.P last = out.isEmpty() ? p : out.get(out.size() - 1);
            if (i == 0 || i == points.size() - 1 || Math.abs(p.x() - last.x()) > 4 || Math.abs(p.y() - last.y()) > 1) {
                out.add(p);
            }
        }
        return out;
    }

    /** Each curve named at its end; names are pushed apart until none overlap. */
    private static void labels(Svg svg, Axis x, Axis y, List<Curve> curves) {
        List<Curve> byHeight = curves.stream()
                .sorted(Comparator.comparingDouble(c -> y.at(c.values.get(c.values.size() - 1))))
                .toList();
        double[] at = new double[byHeight.size()];
        for (int i = 0; i < at.length; i++) {
            Curve c = byHeight.get(i);
            double own = y.at(c.values.get(c.values.size() - 1));
            at[i] = i == 0 ? own : Math.max(own, at[i - 1] + 13);
        }
        double over = at.length == 0 ? 0 : Math.max(0, at[at.length - 1] - (y.from + 6));
        for (int i = at.length - 1; i >= 0 && over > 0; i--) {
            double limit = i == at.length - 1 ? y.from + 6 : at[i + 1] - 13;
            at[i] = Math.min(at[i], limit);
        }
        for (int i = 0; i < at.length; i++) {
            Curve c = byHeight.get(i);
            double own = y.at(c.values.get(c.values.size() - 1));
            svg.polyline(
                    List.of(new Svg.P(x.to + 2, own), new Svg.P(x.to + 10, at[i]), new Svg.P(x.to + 14, at[i])), "h d");
            svg.line(x.to + 16, at[i], x.to + 34, at[i], c.style);
            svg.text(x.to + 39, at[i] + 4, c.name, "l");
        }
    }

    private static double extreme(List<Curve> curves, boolean most) {
        return curves.stream()
                .flatMap(c -> c.values.stream())
                .mapToDouble(v -> v)
                .reduce(most ? Double.NEGATIVE_INFINITY : Double.POSITIVE_INFINITY, most ? Math::max : Math::min);
    }

    private static List<Curve> angles(Hand hand, List<Frame> frames) {
        List<Curve> out = new ArrayList<>();
        int joint = 0;
        for (int f = 0; f < hand.fingers().size(); f++) {
            Finger finger = hand.fingers().get(f);
            for (int i = 0; i < finger.joints().size(); i++) {
                int k = joint++;
                out.add(new Curve(
                        finger.name() + " " + (i + 1),
                        "c" + f,
                        frames.stream()
                                .map(frame -> Math.toDegrees(frame.jointAngles().get(k)))
                                .toList()));
            }
        }
        return out;
    }

    /** One curve per body that presses at all: fingers in their own line, the palm thin. */
    private static List<Curve> forces(Hand hand, ClosingDetail detail, List<Frame> frames) {
        List<Curve> out = new ArrayList<>();
        List<String> styles = new ArrayList<>(List.of("cobj"));
        for (int f = 0; f < hand.fingers().size(); f++) {
            for (int i = 0; i < hand.fingers().get(f).phalanges().size(); i++) {
                styles.add("c" + f);
            }
        }
        for (int b = 0; b < styles.size(); b++) {
            int k = b;
            List<Double> values = frames.stream().map(f -> f.bodyForce().get(k)).toList();
            if (values.stream().anyMatch(v -> v > detail.criteria().touchForce())) {
                out.add(new Curve(detail.bodies().get(b), styles.get(b), values));
            }
        }
        return out;
    }

    private static List<Curve> travel(GraspObject object, List<Frame> frames) {
        Vec3 start = frames.get(0).object().apply(object.centreOfMass());
        List<Double> way = frames.stream()
                .map(f -> 1e3
                        * f.object().apply(object.centreOfMass()).minus(start).length())
                .toList();
        return List.of(new Curve("centre of mass", "cobj", way));
    }
}
