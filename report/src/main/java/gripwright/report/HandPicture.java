package gripwright.report;

import gripwright.math.Pose;
import gripwright.math.Vec3;
import gripwright.model.Finger;
import gripwright.model.Hand;
import gripwright.model.Joint;
import gripwright.model.Motor;
import gripwright.model.Phalanx;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The hand at its rest angles to scale: from the side and onto the palm, with its dimensions and tendon routes. */
public final class HandPicture {
    private static final double WIDTH = 960;

    private final Hand hand;
    private final List<Pose> rest;
    private final List<HandBodies.Body> bodies;
    private final Svg svg = new Svg();
    private final double scale;

    private HandPicture(Hand hand) {
        this.hand = hand;
        this.rest = HandPose.atRest(hand);
        this.bodies = HandBodies.of(hand, rest, HandBodies.FINE);
        Box2 side = bounds(View.FRONT);
        Box2 top = bounds(View.TOP);
        scale = Math.min(2500, Math.min(600 / side.width(), 560 / Math.max(side.height(), top.height())));
    }

    public static Picture draw(Hand hand) {
        return new HandPicture(hand).picture();
    }

    private Picture picture() {
        Box2 side = bounds(View.FRONT);
        Box2 top = bounds(View.TOP);
        double x = 352 - scale * (side.left() + side.right()) / 2;
        double sideY = 96 + scale * side.high();
        double sideEnd = sideY - scale * side.low() + 96;
        sideView(View.FRONT.scaled(scale, x, sideY), sideEnd);
        double topY = sideEnd + 60 + scale * top.high();
        double topEnd = topY - scale * top.low() + 52;
        topView(View.TOP.scaled(scale, x, topY), sideEnd + 26);
        svg.scaleBar(0, topEnd + 14, scale, 110, "; drawn at the rest angles");
        double jointsEnd = joints(716, 26);
        return new Picture(
                "The hand " + hand.name() + " to scale: from the side and onto the palm",
                WIDTH,
                Math.max(topEnd + 24, jointsEnd),
                svg.body());
    }

    private Box2 bounds(View view) {
        Box2 box = Box2.NOTHING;
        for (HandBodies.Body b : bodies) {
            box = box.with(b.bone().bounds(view)).with(b.pad().bounds(view));
        }
        return box;
    }

    private void bodies(View.Scaled v) {
        Vec3 near = v.view().near;
        bodies.stream()
                .sorted(Comparator.comparingDouble(b -> near.dot(b.middle())))
                .forEach(b -> b.draw(svg, v));
    }

    /** Poses of the phalanges of a finger. */
    private List<Pose> poses(int finger) {
        int first = 1;
        for (int i = 0; i < finger; i++) {
            first += hand.fingers().get(i).phalanges().size();
        }
        return rest.subList(
                first, first + hand.fingers().get(finger).phalanges().size());
    }

    private void sideView(View.Scaled v, double end) {
        svg.text(0, 14, "seen from the side", "lq");
        bodies(v);
        Svg.P middle = v.at(Vec3.ZERO);
        svg.line(middle.x(), middle.y() - 34, middle.x(), end - 74, "t chain d");
        for (int f = 0; f < hand.fingers().size(); f++) {
            tendon(v, f);
        }
        int right = outermost(1);
        int left = outermost(-1);
        int measured = flat(right) ? right : left;
        int turned = flat(left) ? left : right;
        lengths(v, measured, measured == turned ? 62 : 26);
        restAngles(v, turned);
        if (measured != turned) {
            arms(v, turned);
        }
        double padTop = pad(v, measured);
        if (left != right) {
            spacing(v, left, right, end - 20);
        }
        opening(v, left, right, padTop);
        pull(v);
        svg.axes(6, end - 30, "x", "z");
    }

    /** The finger whose stretched tip lies farthest along +x (sign 1) or -x (sign -1). */
    private int outermost(int sign) {
        int best = 0;
        for (int f = 1; f < hand.fingers().size(); f++) {
            if (sign * tip(f).x() > sign * tip(best).x() + 1e-9) {
                best = f;
            }
        }
        return best;
    }

    /** Whether the finger closes in the plane of the side view, so that its lengths and angles show true. */
    private boolean flat(int finger) {
        return Math.abs(Math.cos(hand.fingers().get(finger).closesToward())) > 0.995;
    }

    /** A distance seen in projection says so. */
    private static String sideways(Vec3 a, Vec3 b) {
        return Math.abs(a.y() - b.y()) > 1e-4 ? ", along x" : "";
    }

    private Vec3 tip(int finger) {
        List<Pose> p = poses(finger);
        Phalanx last = hand.fingers().get(finger).phalanges().get(p.size() - 1);
        return p.get(p.size() - 1).apply(new Vec3(last.length(), 0, 0));
    }

    /** Lengths of the phalanges along their backs. */
    private void lengths(View.Scaled v, int finger, double off) {
        List<Pose> p = poses(finger);
        for (int i = 0; i < p.size(); i++) {
            Phalanx ph = hand.fingers().get(finger).phalanges().get(i);
            Svg.P a = v.at(p.get(i).apply(new Vec3(0, -ph.bone() / 2, 0)));
            Svg.P b = v.at(p.get(i).apply(new Vec3(ph.length(), -ph.bone() / 2, 0)));
            if (Math.abs(a.to(b) - scale * ph.length()) < 0.02 * scale * ph.length()) {
                // The back lies to the right of the way from joint to tip for a finger that points to +x.
                Svg.P pad = v.at(p.get(i).apply(new Vec3(0, ph.bone(), 0)));
                boolean padLeft = (b.x() - a.x()) * (pad.y() - a.y()) - (b.y() - a.y()) * (pad.x() - a.x()) < 0;
                svg.dimension(a, b, (padLeft ? -1 : 1) * off, Num.mm(ph.length()));
            }
        }
    }

    /** Rest angles as arcs from the stretched direction to the phalanx. */
    private void restAngles(View.Scaled v, int finger) {
        List<Pose> p = poses(finger);
        Finger f = hand.fingers().get(finger);
        Vec3 straight = new Vec3(-Math.cos(f.closesToward()), -Math.sin(f.closesToward()), 0);
        for (int i = 0; i < p.size(); i++) {
            Vec3 along = p.get(i).rotation().column(0);
            Svg.P o = v.at(p.get(i).position());
            double r = Math.min(0.8 * scale * f.phalanges().get(i).length(), i == 0 ? 110 : 74);
            double a0 = angle(v, straight);
            double a1 = angle(v, along);
            if (flat(finger) && Math.abs(a1 - a0) > Math.toRadians(2) && Math.abs(a1 - a0) < Math.PI) {
                svg.line(o.x(), o.y(), o.x() + (r + 14) * Math.cos(a0), o.y() + (r + 14) * Math.sin(a0), "t d chain");
                arc(o, r, a0, a1, Num.degrees(f.joints().get(i).rest()));
            }
            straight = along;
        }
    }

    private static double angle(View.Scaled v, Vec3 direction) {
        return Math.atan2(-v.view().up.dot(direction), v.view().right.dot(direction));
    }

    private void arc(Svg.P o, double r, double from, double to, String label) {
        double sweep = Math.IEEEremainder(to - from, 2 * Math.PI);
        StringBuilder d = new StringBuilder();
        List<Svg.P> points = new ArrayList<>();
        for (int i = 0; i <= 16; i++) {
            double a = from + sweep * i / 16;
            points.add(new Svg.P(o.x() + r * Math.cos(a), o.y() + r * Math.sin(a)));
        }
        d.append(Svg.data(points));
        svg.path(d.toString(), "t d");
        double end = from + sweep;
        double turn = Math.signum(sweep);
        Svg.P tip = points.get(16);
        svg.head(tip.x(), tip.y(), -turn * Math.sin(end), turn * Math.cos(end), "a d");
        double m = from + sweep / 2;
        Svg.P at = new Svg.P(o.x() + (r + 20) * Math.cos(m), o.y() + (r + 20) * Math.sin(m) + 4);
        svg.text(at.x(), at.y(), label, "v halo", Svg.Anchor.MIDDLE);
    }

    /** Moment arms, led out to the inside of the finger. */
    private void arms(View.Scaled v, int finger) {
        List<Pose> p = poses(finger);
        Vec3 before = Vec3.Z;
        for (int i = 0; i < p.size(); i++) {
            double arm = hand.fingers().get(finger).joints().get(i).momentArm();
            Vec3 inside = before.plus(p.get(i).rotation().column(1));
            before = p.get(i).rotation().column(1);
            if (arm <= 0 || inside.length() < 1e-6) {
                continue;
            }
            Svg.P o = v.at(p.get(i).position());
            Svg.P rim = v.at(p.get(i).position().plus(inside.unit().times(arm)));
            double n = Math.max(o.to(rim), 1e-6);
            double ux = (rim.x() - o.x()) / n;
            double uy = (rim.y() - o.y()) / n;
            Svg.P out = new Svg.P(o.x() + (n + 30) * ux, o.y() + (n + 30) * uy);
            svg.arrow(o, rim, "t d", "a d").line(rim.x(), rim.y(), out.x(), out.y(), "t d");
            svg.text(
                    out.x() + (ux < 0 ? -4 : 4),
                    out.y() - 3,
                    "arm " + Num.mm(arm),
                    "v halo",
                    ux < 0 ? Svg.Anchor.END : Svg.Anchor.START);
        }
    }

    /**
     * Thickness and rubber of the first pad, led out to the inside.
     *
     * @return upper end of the words
     */
    private double pad(View.Scaled v, int finger) {
        Phalanx ph = hand.fingers().get(finger).phalanges().get(0);
        Pose p = poses(finger).get(0);
        Svg.P q = v.at(
                p.apply(new Vec3(0.35 * ph.length(), ph.padHeight() - ph.pad().thickness() / 2, 0)));
        double sign = v.view().right.dot(p.rotation().column(1)) < 0 ? -1 : 1;
        Svg.P out = q.plus(sign * 30, -44);
        svg.circle(q.x(), q.y(), 1.8, "a").line(q.x(), q.y(), out.x(), out.y(), "t d");
        Svg.Anchor anchor = Svg.Anchor.MIDDLE;
        svg.text(out.x(), out.y() - 20, "pad " + Num.mm(ph.pad().thickness()), "v halo", anchor);
        svg.text(out.x(), out.y() - 5, "rubber " + ph.pad().rubber().name(), "l halo", anchor);
        return out.y() - 34;
    }

    private void spacing(View.Scaled v, int left, int right, double y) {
        Svg.P a = v.at(hand.fingers().get(left).base());
        Svg.P b = v.at(hand.fingers().get(right).base());
        if (Math.abs(b.x() - a.x()) > 8) {
            Svg.P la = new Svg.P(Math.min(a.x(), b.x()), y - 30);
            Svg.P lb = new Svg.P(Math.max(a.x(), b.x()), y - 30);
            svg.dimension(
                    la,
                    lb,
                    -24,
                    "bases " + Num.mm(Math.abs(b.x() - a.x()) / scale)
                            + sideways(
                                    hand.fingers().get(left).base(),
                                    hand.fingers().get(right).base()));
        }
    }

    private void opening(View.Scaled v, int left, int right, double padTop) {
        if (left == right) {
            return;
        }
        Svg.P a = v.at(tip(left));
        Svg.P b = v.at(tip(right));
        double y = Math.min(Math.min(a.y(), b.y()), padTop + 26);
        svg.dimension(
                new Svg.P(a.x(), y),
                new Svg.P(b.x(), y),
                38,
                Num.mm(Math.abs(b.x() - a.x()) / scale) + " between the tips at rest"
                        + sideways(tip(left), tip(right)));
    }

    /** The tendon keeps its moment arm from every joint on the pad's side and ends in the last phalanx. */
    private void tendon(View.Scaled v, int finger) {
        Finger f = hand.fingers().get(finger);
        List<Pose> p = poses(finger);
        Vec3 toward = new Vec3(Math.cos(f.closesToward()), Math.sin(f.closesToward()), 0);
        double depth = hand.palm().bone() + hand.palm().pad().thickness();
        List<Svg.P> way = new ArrayList<>();
        Vec3 before = toward;
        way.add(v.at(f.base().plus(toward.times(f.joints().get(0).momentArm())).plus(Vec3.Z.times(-depth - 0.006))));
        for (int i = 0; i < p.size(); i++) {
            double arm = f.joints().get(i).momentArm();
            Vec3 after = p.get(i).rotation().column(1);
            for (int k = 0; k <= 4; k++) {
                Vec3 n = before.times(1 - k / 4.0).plus(after.times(k / 4.0));
                if (n.length() > 1e-6) {
                    way.add(v.at(p.get(i).position().plus(n.unit().times(arm))));
                }
            }
            before = after;
        }
        Phalanx last = f.phalanges().get(p.size() - 1);
        Svg.P end = v.at(p.get(p.size() - 1).apply(new Vec3(0.5 * last.length(), 0, 0)));
        way.add(end);
        svg.polyline(way, "tendonh").polyline(way, "tendon").circle(end.x(), end.y(), 3, "o s1");
        for (int i = 0; i < p.size(); i++) {
            Svg.P j = v.at(p.get(i).position());
            svg.circle(j.x(), j.y(), scale * f.joints().get(i).momentArm(), "t dash");
            svg.circle(j.x(), j.y(), 2.6, "o s1");
        }
    }

    private void pull(View.Scaled v) {
        double depth = hand.palm().bone() + hand.palm().pad().thickness() + 0.006;
        Svg.P p = v.at(new Vec3(0, 0, -depth));
        svg.arrow(new Svg.P(p.x(), p.y()), new Svg.P(p.x(), p.y() + 22), "k2", "a");
        StringBuilder words = new StringBuilder();
        for (Motor m : hand.motors()) {
            words.append(words.length() == 0 ? "pull of " : ", ")
                    .append(m.name())
                    .append(" at most ")
                    .append(Num.newtons(m.greatestTension()));
        }
        svg.text(p.x() + 12, p.y() + 20, words.toString(), "v halo");
    }

    private void topView(View.Scaled v, double titleY) {
        svg.text(0, titleY, "seen onto the palm", "lq");
        bodies(v);
        double halfX = hand.palm().sizeX() / 2;
        double halfY = hand.palm().sizeY() / 2;
        Svg.P low = v.at(new Vec3(-halfX, -halfY, 0));
        Svg.P lowRight = v.at(new Vec3(halfX, -halfY, 0));
        Svg.P high = v.at(new Vec3(-halfX, halfY, 0));
        double below = scale * Math.max(0, -halfY - bounds(View.TOP).low());
        svg.dimension(
                low.plus(0, below),
                lowRight.plus(0, below),
                -24,
                Num.mm(hand.palm().sizeX()) + " palm");
        double away = low.x() - v.x() - scale * bounds(View.TOP).left();
        svg.dimension(
                low.plus(-away, 0), high.plus(-away, 0), 22, Num.mm(hand.palm().sizeY()) + " palm");
        for (int f = 0; f < hand.fingers().size(); f++) {
            Finger finger = hand.fingers().get(f);
            Svg.P base = v.at(finger.base());
            Svg.P tip = v.at(tip(f));
            double width = finger.phalanges().get(0).width() / 2 * scale;
            double n = Math.max(base.to(tip), 1e-6);
            double ux = (tip.x() - base.x()) / n;
            double uy = (tip.y() - base.y()) / n;
            svg.line(base.x(), base.y(), tip.x() + 14 * ux, tip.y() + 14 * uy, "t chain d");
            Svg.P name = new Svg.P((base.x() + tip.x()) / 2, (base.y() + tip.y()) / 2);
            double side = Math.abs(ux) > 0.5 ? -width - 8 : 0;
            svg.text(
                    name.x() + (side == 0 ? width + 8 : 0),
                    name.y() + side,
                    finger.name(),
                    "n halo",
                    side == 0 ? Svg.Anchor.START : Svg.Anchor.MIDDLE);
        }
        across(v);
        svg.axes(6, v.y() - scale * bounds(View.TOP).low() + 44, "x", "y");
    }

    /** Spacing across of the two bases farthest apart on the right, and the width of a phalanx. */
    private void across(View.Scaled v) {
        List<Finger> right = hand.fingers().stream()
                .filter(f -> f.base().x() >= 0 && Math.cos(f.closesToward()) < -0.995)
                .sorted(Comparator.comparingDouble(f -> f.base().y()))
                .toList();
        double tips = v.x() + scale * bounds(View.TOP).right();
        if (right.size() >= 2) {
            Finger a = right.get(0);
            Finger b = right.get(right.size() - 1);
            svg.dimension(
                    new Svg.P(tips + 16, v.at(a.base()).y()),
                    new Svg.P(tips + 16, v.at(b.base()).y()),
                    -16,
                    Num.mm(b.base().y() - a.base().y()));
        }
        if (!right.isEmpty()) {
            Finger a = right.get(0);
            double half = a.phalanges().get(0).width() / 2 * scale;
            double y = v.at(a.base()).y();
            svg.dimension(new Svg.P(tips, y - half), new Svg.P(tips, y + half), 62, Num.mm(2 * half / scale));
        }
    }

    /**
     * Joint by joint what a drawing cannot show; fingers with equal joints share an entry.
     *
     * @return y where it ends
     */
    private double joints(double x, double y0) {
        double y = y0;
        svg.text(x, y, "joints, from the palm outwards", "n");
        y += 12;
        Map<List<Joint>, List<String>> groups = new LinkedHashMap<>();
        for (Finger f : hand.fingers()) {
            groups.computeIfAbsent(f.joints(), k -> new ArrayList<>()).add(f.name());
        }
        for (Map.Entry<List<Joint>, List<String>> group : groups.entrySet()) {
            svg.line(x, y, WIDTH, y, "rule");
            for (String line : Wrap.lines(String.join(", ", group.getValue()), 32)) {
                y += 18;
                svg.text(x, y, line, "n");
            }
            y += 8;
            int number = 1;
            for (Joint j : group.getKey()) {
                svg.text(x, y + 12, Integer.toString(number++), "l b");
                svg.text(
                        x + 16, y + 12, "tendon arm " + Num.mm(j.momentArm()) + ", rest " + Num.degrees(j.rest()), "l");
                String stops = ", stops " + Num.degrees(j.lower()) + " to " + Num.degrees(j.upper());
                svg.text(x + 16, y + 28, Num.digits(j.kind().bendingRate(), 3) + "\u00a0N\u00b7m/rad" + stops, "lq");
                y += 36;
            }
            y += 8;
        }
        return y;
    }
}
