package gripwright.report;

import gripwright.math.Pose;
import gripwright.math.Rotation;
import gripwright.math.Vec3;
import gripwright.model.GraspObject;
import gripwright.model.Grip;
import gripwright.model.Hand;
import gripwright.model.Joint;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** The open hand over the object at its nominal place, seen from above: where palm and fingers stand. */
final class GripSketch {
    private GripSketch() {}

    static void draw(
            Svg svg, Hand hand, Grip grip, GraspObject object, double x, double y, double width, double height) {
        Rotation turn = HandPose.turn(grip);
        List<Pose> open = HandPose.of(hand, grip.turned(), Joint::rest);
        Silhouette outline = Silhouette.of(object.shape(), object.stance(), View.TOP);
        Pose palm = new Pose(place(hand, grip, turn, open, outline.bounds(), object), turn);
        List<HandBodies.Body> bodies = new ArrayList<>(
                HandBodies.of(hand, open.stream().map(palm::times).toList(), HandBodies.COARSE));
        bodies.sort(Comparator.comparingDouble(b -> b.middle().z()));
        Box2 box = outline.bounds();
        for (HandBodies.Body b : bodies) {
            box = box.with(b.bone().bounds(View.TOP)).with(b.pad().bounds(View.TOP));
        }
        double scale = Math.min(width / box.width(), (height - 22) / box.height());
        svg.text(x, y + 4, "the open hand at the nominal place, from above", "lq");
        View.Scaled v = View.TOP.scaled(
                scale, x + width / 2 - scale * (box.left() + box.right()) / 2, y + 16 + scale * box.high());
        Svg.P at = v.at(Vec3.ZERO);
        svg.path(outline.path(scale, at.x(), at.y()), "o objf");
        for (HandBodies.Body b : bodies) {
            b.draw(svg, v);
        }
        svg.path(outline.path(scale, at.x(), at.y()), "h dash");
        svg.axes(x + 4, y + height - 2, "x", "y");
    }

    /** Origin of the hand frame; heights matter little from above and are only set apart from the object. */
    private static Vec3 place(Hand hand, Grip grip, Rotation turn, List<Pose> open, Box2 top, GraspObject object) {
        if (grip.approach() == Grip.Approach.ABOVE) {
            return new Vec3(0, 0, 2 * object.shape().boundingRadius());
        }
        if (grip.stand() instanceof Grip.PalmToObject stand) {
            return new Vec3(0, top.high() + stand.gap(), 0);
        }
        double reach = HandPose.tips(hand, open).stream()
                .mapToDouble(tip -> -turn.apply(tip).y())
                .max()
                .orElse(0);
        return new Vec3(0, reach, 0);
    }
}
