package gripwright.report;

import gripwright.model.Finger;
import gripwright.model.Flexure;
import gripwright.model.Hand;
import gripwright.model.Joint;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The hand at its rest angles to scale: from the side and onto the palm, with its dimensions and tendon routes. */
public final class HandPicture {
    private static final double WIDTH = 960;

    private final Hand hand;
    private final Svg svg;

    private HandPicture(Hand hand, boolean keyed) {
        this.hand = hand;
        this.svg = new Svg(keyed);
    }

    public static Picture draw(Hand hand) {
        return new HandPicture(hand, false).picture();
    }

    /** The same; values that can be changed carry their key as in ProjectReader.Marked in the attribute data-key. */
    public static Picture keyed(Hand hand) {
        return new HandPicture(hand, true).picture();
    }

    private Picture picture() {
        RestingHand resting = new RestingHand(hand);
        Box2 side = resting.bounds(View.FRONT);
        Box2 top = resting.bounds(View.TOP);
        double scale = Math.min(2500, Math.min(600 / side.width(), 560 / Math.max(side.height(), top.height())));
        double x = 352 - scale * (side.left() + side.right()) / 2;
        double sideY = 96 + scale * side.high();
        double sideEnd = sideY - scale * side.low() + 96;
        new HandSideView(resting, View.FRONT.scaled(scale, x, sideY), svg).draw(sideEnd);
        double topY = sideEnd + 60 + scale * top.high();
        double topEnd = topY - scale * top.low() + 52;
        new HandTopView(resting, View.TOP.scaled(scale, x, topY), svg).draw(sideEnd + 26);
        svg.scaleBar(0, topEnd + 14, scale, 110, "; drawn at the rest angles");
        double jointsEnd = joints(716, 26);
        String title = "The hand " + hand.name() + " to scale: from the side and onto the palm";
        return new Picture(title, WIDTH, Math.max(topEnd + 24, jointsEnd), svg.body());
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
            for (int i = 0; i < group.getKey().size(); i++) {
                String key = "hand.yaml: fingers." + group.getValue().get(0) + ".joints[" + i + "].";
                y = joint(group.getKey().get(i), i + 1, key, x, y);
            }
            y += 8;
        }
        return y;
    }

    /** One joint in three short lines; each value can be changed on its own. */
    private double joint(Joint j, int number, String key, double x, double y) {
        svg.text(x, y + 12, Integer.toString(number), "l b");
        svg.open(x + 16, y + 12, "l");
        svg.run("arm ").run(key + "moment arm", Num.mm(j.momentArm()));
        svg.run(", rest ").run(key + "rest", Num.degrees(j.rest())).end();
        svg.open(x + 16, y + 28, "l");
        String rate = Num.digits(j.kind().bendingRate(), 3) + "\u00a0N\u00b7m/rad";
        if (j.kind() instanceof Flexure flexure) {
            svg.run("rubber ").run(key + "flexure.thickness", Num.mm(flexure.thickness()));
            svg.run(" thick: " + rate).end();
        } else {
            svg.run("spring ").run(key + "pin.spring", rate).end();
        }
        svg.open(x + 16, y + 44, "l");
        svg.run("stops ").run(key + "limits[0]", Num.degrees(j.lower()));
        svg.run(" to ").run(key + "limits[1]", Num.degrees(j.upper())).end();
        return y + 52;
    }
}
