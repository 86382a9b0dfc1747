package gripwright.report;

import gripwright.math.Vec3;
import gripwright.model.Finger;
import gripwright.model.Hand;
import java.util.Comparator;
import java.util.List;

/** The hand seen onto its palm, with names, sizes and spacings. */
final class HandTopView {
    /** Of the arrows at a finger's base, picture units. */
    private static final double REACH = 18;

    private final RestingHand resting;
    private final Hand hand;
    private final View.Scaled v;
    private final Svg svg;

    HandTopView(RestingHand resting, View.Scaled v, Svg svg) {
        this.resting = resting;
        this.hand = resting.hand;
        this.v = v;
        this.svg = svg;
    }

    /** @param titleY base line of the title */
    void draw(double titleY) {
        svg.text(0, titleY, "seen onto the palm", "lq");
        resting.draw(svg, v);
        double halfX = hand.palm().sizeX() / 2;
        double halfY = hand.palm().sizeY() / 2;
        Svg.P low = v.at(new Vec3(-halfX, -halfY, 0));
        Svg.P lowRight = v.at(new Vec3(halfX, -halfY, 0));
        Svg.P high = v.at(new Vec3(-halfX, halfY, 0));
        double below = v.scale() * Math.max(0, -halfY - resting.bounds(View.TOP).low());
        svg.key("hand.yaml: palm.size[0]").pulled(v.scale() / 2);
        svg.dimension(
                low.plus(0, below),
                lowRight.plus(0, below),
                -24,
                Num.mm(hand.palm().sizeX()) + " palm");
        svg.key("hand.yaml: palm.size[1]").pulled(v.scale() / 2);
        double away = low.x() - v.x() - v.scale() * resting.bounds(View.TOP).left();
        svg.dimension(
                low.plus(-away, 0), high.plus(-away, 0), 22, Num.mm(hand.palm().sizeY()) + " palm");
        for (int f = 0; f < hand.fingers().size(); f++) {
            Finger finger = hand.fingers().get(f);
            Svg.P base = v.at(finger.base());
            Svg.P tip = v.at(resting.tip(f));
            double width = finger.phalanges().get(0).width() / 2 * v.scale();
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
        hand.fingers().forEach(this::base);
        across();
        svg.axes(6, v.y() - v.scale() * resting.bounds(View.TOP).low() + 44, "x", "y");
    }

    /** Where a finger starts on the palm, from the palm's middle, and an arrow each way to pull at. */
    private void base(Finger finger) {
        String key = "hand.yaml: fingers." + finger.name() + ".base.at";
        Svg.P at = v.at(finger.base());
        Svg.P right = at.plus(REACH, 0);
        Svg.P up = at.plus(0, -REACH);
        svg.arrow(at, right, "t d", svg.head(key))
                .arrow(at, up, "t d", svg.head(key))
                .circle(at.x(), at.y(), 2.6, "o s1");
        double inward = finger.base().x() > 0 ? -1 : 1;
        Svg.Anchor anchor = inward < 0 ? Svg.Anchor.END : Svg.Anchor.START;
        double x = at.x() + (inward < 0 ? -8 : REACH + 6);
        svg.key(key + "[0]")
                .text(x, at.y() - 3, "x " + Num.mm(finger.base().x()), "v halo", anchor)
                .grab(key + "[0]", right.x(), right.y(), 1, 0, v.scale());
        svg.key(key + "[1]")
                .text(x, at.y() + 13, "y " + Num.mm(finger.base().y()), "v halo", anchor)
                .grab(key + "[1]", up.x(), up.y(), 0, -1, v.scale());
    }

    /** Spacing across of the two bases farthest apart on the right, and the width of a phalanx. */
    private void across() {
        List<Finger> right = hand.fingers().stream()
                .filter(f -> f.base().x() >= 0 && Math.cos(f.closesToward()) < -0.995)
                .sorted(Comparator.comparingDouble(f -> f.base().y()))
                .toList();
        double tips = v.x() + v.scale() * resting.bounds(View.TOP).right();
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
            double half = a.phalanges().get(0).width() / 2 * v.scale();
            double y = v.at(a.base()).y();
            svg.dimension(new Svg.P(tips, y - half), new Svg.P(tips, y + half), 62, Num.mm(2 * half / v.scale()));
        }
    }
}
