package gripwright.report;

import gripwright.math.Pose;
import gripwright.math.Vec3;
import gripwright.model.Finger;
import gripwright.model.Hand;
import gripwright.model.Motor;
import gripwright.model.Phalanx;
import java.util.ArrayList;
import java.util.List;

/** The hand seen from the side, with lengths, rest angles, moment arms and tendon routes. */
final class HandSideView {
    /** Of the arrow of the pull, when it is drawn longer. */
    private static final double UNITS_PER_NEWTON = 1;

    private final RestingHand resting;
    private final Hand hand;
    private final View.Scaled v;
    private final Svg svg;

    HandSideView(RestingHand resting, View.Scaled v, Svg svg) {
        this.resting = resting;
        this.hand = resting.hand;
        this.v = v;
        this.svg = svg;
    }

    /** @param end where the view must end in the picture */
    void draw(double end) {
        svg.text(0, 14, "seen from the side", "lq");
        resting.draw(svg, v);
        Svg.P middle = v.at(Vec3.ZERO);
        svg.line(middle.x(), middle.y() - 34, middle.x(), end - 74, "t chain d");
        for (int f = 0; f < hand.fingers().size(); f++) {
            tendon(f);
        }
        int right = outermost(1);
        int left = outermost(-1);
        int measured = flat(right) ? right : left;
        int turned = flat(left) ? left : right;
        lengths(measured, measured == turned ? 62 : 26);
        restAngles(turned);
        if (measured != turned) {
            arms(turned);
        }
        double padTop = pad(measured);
        if (left != right) {
            spacing(left, right, end - 20);
        }
        opening(left, right, padTop);
        pull();
        svg.axes(6, end - 30, "x", "z");
    }

    /** The finger whose stretched tip lies farthest along +x (sign 1) or -x (sign -1). */
    private int outermost(int sign) {
        int best = 0;
        for (int f = 1; f < hand.fingers().size(); f++) {
            if (sign * resting.tip(f).x() > sign * resting.tip(best).x() + 1e-9) {
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

    /** Lengths of the phalanges along their backs. */
    private void lengths(int finger, double off) {
        List<Pose> p = resting.poses(finger);
        for (int i = 0; i < p.size(); i++) {
            Phalanx ph = hand.fingers().get(finger).phalanges().get(i);
            Svg.P a = v.at(p.get(i).apply(new Vec3(0, -ph.bone() / 2, 0)));
            Svg.P b = v.at(p.get(i).apply(new Vec3(ph.length(), -ph.bone() / 2, 0)));
            if (Math.abs(a.to(b) - v.scale() * ph.length()) < 0.02 * v.scale() * ph.length()) {
                // The back lies to the right of the way from joint to tip for a finger that points to +x.
                Svg.P pad = v.at(p.get(i).apply(new Vec3(0, ph.bone(), 0)));
                boolean padLeft = (b.x() - a.x()) * (pad.y() - a.y()) - (b.y() - a.y()) * (pad.x() - a.x()) < 0;
                svg.key(key(finger, "phalanges", i, "length"))
                        .pulled(v.scale())
                        .dimension(a, b, (padLeft ? -1 : 1) * off, Num.mm(ph.length()));
            }
        }
    }

    /** Where a value of a finger stands in the project's files. */
    private String key(int finger, String list, int index, String name) {
        return "hand.yaml: fingers." + hand.fingers().get(finger).name() + "." + list + "[" + index + "]." + name;
    }

    /** Rest angles as arcs from the stretched direction to the phalanx. */
    private void restAngles(int finger) {
        List<Pose> p = resting.poses(finger);
        Finger f = hand.fingers().get(finger);
        Vec3 straight = new Vec3(-Math.cos(f.closesToward()), -Math.sin(f.closesToward()), 0);
        for (int i = 0; i < p.size(); i++) {
            Vec3 along = p.get(i).rotation().column(0);
            Svg.P o = v.at(p.get(i).position());
            double r = Math.min(0.8 * v.scale() * f.phalanges().get(i).length(), i == 0 ? 110 : 74);
            double a0 = angle(straight);
            double a1 = angle(along);
            if (flat(finger) && Math.abs(a1 - a0) > Math.toRadians(2) && Math.abs(a1 - a0) < Math.PI) {
                svg.line(o.x(), o.y(), o.x() + (r + 14) * Math.cos(a0), o.y() + (r + 14) * Math.sin(a0), "t d chain");
                String rest = key(finger, "joints", i, "rest");
                double sweep = Math.IEEEremainder(a1 - a0, 2 * Math.PI);
                svg.key(rest);
                arc(svg.head(rest), o, r, a0, a1, Num.degrees(f.joints().get(i).rest()));
                svg.grabAngle(
                        rest,
                        o.x() + r * Math.cos(a1),
                        o.y() + r * Math.sin(a1),
                        o,
                        Math.signum(sweep) * Math.signum(f.joints().get(i).rest()));
            }
            straight = along;
        }
    }

    private double angle(Vec3 direction) {
        return Math.atan2(-v.view().up.dot(direction), v.view().right.dot(direction));
    }

    private void arc(String head, Svg.P o, double r, double from, double to, String label) {
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
        svg.head(tip.x(), tip.y(), -turn * Math.sin(end), turn * Math.cos(end), head);
        double m = from + sweep / 2;
        Svg.P at = new Svg.P(o.x() + (r + 20) * Math.cos(m), o.y() + (r + 20) * Math.sin(m) + 4);
        svg.text(at.x(), at.y(), label, "v halo", Svg.Anchor.MIDDLE);
    }

    /** Moment arms, led out to the inside of the finger. */
    private void arms(int finger) {
        List<Pose> p = resting.poses(finger);
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
            String key = key(finger, "joints", i, "moment arm");
            svg.arrow(o, rim, "t d", svg.head(key)).line(rim.x(), rim.y(), out.x(), out.y(), "t d");
            svg.key(key);
            svg.text(
                    out.x() + (ux < 0 ? -4 : 4),
                    out.y() - 3,
                    "arm " + Num.mm(arm),
                    "v halo",
                    ux < 0 ? Svg.Anchor.END : Svg.Anchor.START);
            svg.grab(key, rim.x(), rim.y(), ux, uy, v.scale());
        }
    }

    /**
     * Thickness and rubber of the first pad, led out to the inside.
     *
     * @return upper end of the words
     */
    private double pad(int finger) {
        Phalanx ph = hand.fingers().get(finger).phalanges().get(0);
        Pose p = resting.poses(finger).get(0);
        Svg.P q = v.at(
                p.apply(new Vec3(0.35 * ph.length(), ph.padHeight() - ph.pad().thickness() / 2, 0)));
        double sign = v.view().right.dot(p.rotation().column(1)) < 0 ? -1 : 1;
        Svg.P out = q.plus(sign * 30, -44);
        svg.circle(q.x(), q.y(), 1.8, "a").line(q.x(), q.y(), out.x(), out.y(), "t d");
        Svg.Anchor anchor = Svg.Anchor.MIDDLE;
        svg.key(key(finger, "phalanges", 0, "pad.thickness"));
        svg.text(out.x(), out.y() - 20, "pad " + Num.mm(ph.pad().thickness()), "v halo", anchor);
        svg.text(out.x(), out.y() - 5, "rubber " + ph.pad().rubber().name(), "l halo", anchor);
        return out.y() - 34;
    }

    private void spacing(int left, int right, double y) {
        Svg.P a = v.at(hand.fingers().get(left).base());
        Svg.P b = v.at(hand.fingers().get(right).base());
        if (Math.abs(b.x() - a.x()) > 8) {
            Svg.P la = new Svg.P(Math.min(a.x(), b.x()), y - 30);
            Svg.P lb = new Svg.P(Math.max(a.x(), b.x()), y - 30);
            svg.dimension(
                    la,
                    lb,
                    -24,
                    "bases " + Num.mm(Math.abs(b.x() - a.x()) / v.scale())
                            + sideways(
                                    hand.fingers().get(left).base(),
                                    hand.fingers().get(right).base()));
        }
    }

    private void opening(int left, int right, double padTop) {
        if (left == right) {
            return;
        }
        Svg.P a = v.at(resting.tip(left));
        Svg.P b = v.at(resting.tip(right));
        double y = Math.min(Math.min(a.y(), b.y()), padTop + 26);
        svg.dimension(
                new Svg.P(a.x(), y),
                new Svg.P(b.x(), y),
                38,
                Num.mm(Math.abs(b.x() - a.x()) / v.scale()) + " between the tips at rest"
                        + sideways(resting.tip(left), resting.tip(right)));
    }

    /** The tendon keeps its moment arm from every joint on the pad's side and ends in the last phalanx. */
    private void tendon(int finger) {
        Finger f = hand.fingers().get(finger);
        List<Pose> p = resting.poses(finger);
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
            svg.circle(j.x(), j.y(), v.scale() * f.joints().get(i).momentArm(), "t dash");
            svg.circle(j.x(), j.y(), 2.6, "o s1");
        }
    }

    private void pull() {
        double depth = hand.palm().bone() + hand.palm().pad().thickness() + 0.006;
        Svg.P p = v.at(new Vec3(0, 0, -depth));
        boolean one = hand.motors().size() == 1;
        String tension = one ? "hand.yaml: drive." + hand.motors().get(0).name() + ".greatest tension" : "";
        svg.arrow(new Svg.P(p.x(), p.y()), new Svg.P(p.x(), p.y() + 22), "k2", svg.head(tension));
        StringBuilder words = new StringBuilder();
        for (Motor m : hand.motors()) {
            words.append(words.length() == 0 ? "pull of " : ", ")
                    .append(m.name())
                    .append(" at most ")
                    .append(Num.newtons(m.greatestTension()));
        }
        svg.key(tension).text(p.x() + 12, p.y() + 20, words.toString(), "v halo");
        svg.grab(tension, p.x(), p.y() + 22, 0, 1, UNITS_PER_NEWTON);
    }
}
