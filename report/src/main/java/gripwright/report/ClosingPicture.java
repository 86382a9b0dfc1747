package gripwright.report;

import gripwright.closing.ClosingDetail;
import gripwright.closing.Conditions;
import gripwright.closing.ContactForce;
import gripwright.closing.Frame;
import gripwright.math.Rotation;
import gripwright.math.Vec3;
import gripwright.model.GraspObject;
import gripwright.model.Hand;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** A run as a film strip: its key moments across, the three views down, forces in the last moment. */
public final class ClosingPicture {
    private static final double WIDTH = 1012;
    private static final double LEFT = 56;
    private static final double GAP = 10;
    private static final double LONGEST_ARROW = 46;

    private final Hand hand;
    private final GraspObject object;
    private final ClosingDetail detail;
    private final List<Moments.Moment> moments;
    private final Map<View, Box2> fields = new LinkedHashMap<>();
    private final Map<Key, Silhouette> outlines = new HashMap<>();
    private final Svg svg = new Svg();

    /** An outline depends on the object's turn and the view only. */
    private record Key(Rotation turn, View view) {}

    private ClosingPicture(Hand hand, GraspObject object, ClosingDetail detail) {
        this.hand = hand;
        this.object = object;
        this.detail = detail;
        this.moments = Moments.of(detail);
        for (View view : View.values()) {
            fields.put(view, field(view));
        }
    }

    /**
     * Film strip with graphs under it.
     *
     * @param detail of a run that recorded its frames
     */
    public static Picture draw(Hand hand, GraspObject object, ClosingDetail detail) {
        return new ClosingPicture(hand, object, detail).picture(true);
    }

    /** The film strip alone. */
    public static Picture strip(Hand hand, GraspObject object, ClosingDetail detail) {
        return new ClosingPicture(hand, object, detail).picture(false);
    }

    private Picture picture(boolean graphs) {
        String title = "The hand closes on the " + object.name() + ": "
                + detail.summary().outcome().words();
        double y = verdict();
        if (moments.isEmpty()) {
            svg.text(0, y + 14, "This run kept no frames, so there is no film strip.", "lq");
            return new Picture(title, WIDTH, y + 24, svg.body());
        }
        double column = (WIDTH - LEFT - GAP * (moments.size() - 1)) / Math.max(moments.size(), 3);
        double scale = scale(column);
        double top = y + 40;
        for (int i = 0; i < moments.size(); i++) {
            heading(i, LEFT + i * (column + GAP), y + 14);
        }
        ForceScale forces = forceScale();
        for (View view : View.values()) {
            double height = Math.max(84, scale * shown(view).height());
            svg.text(0, top + 12, view.word, "n");
            for (int i = 0; i < moments.size(); i++) {
                boolean last = i == moments.size() - 1;
                cell(view, moments.get(i), LEFT + i * (column + GAP), top, column, height, scale, last ? forces : null);
            }
            svg.axes(4, top + height - 6, view.rightAxis, view.upAxis);
            top += height + GAP;
        }
        legend(top + 10, scale, forces);
        double end = graphs ? ClosingGraphs.draw(svg, hand, object, detail, LEFT, WIDTH, top + 46) : top + 24;
        return new Picture(title, WIDTH, end, svg.body());
    }

    private double verdict() {
        svg.mark(detail.summary().outcome(), 0, 0, 18);
        svg.text(26, 14, detail.summary().outcome().words(), "title");
        double y = 34;
        for (String line : Wrap.lines(Num.sentence(detail.reason()), 128)) {
            svg.text(26, y, line, "v");
            y += 17;
        }
        for (String caution : detail.cautions()) {
            for (String line : Wrap.lines("Caution: " + Num.sentence(caution), 140)) {
                svg.text(26, y, line, "lq");
                y += 16;
            }
        }
        for (String line : Wrap.lines("placed " + placed() + touches(), 140)) {
            svg.text(26, y, line, "lq");
            y += 16;
        }
        return y + 1;
    }

    /** Who touched first and when, in words. */
    private String touches() {
        if (detail.firstTouches().isEmpty()) {
            return "; nothing touched it";
        }
        return detail.firstTouches().stream()
                .map(t -> detail.bodies().get(t.body()).replace(' ', '\u00a0') + " at " + Num.newtons(t.tension()))
                .collect(Collectors.joining(", ", "; first touches: ", ""));
    }

    /** Where the object was put, in words. */
    private String placed() {
        Conditions c = detail.conditions();
        return "x " + Num.mm(c.x()) + ", y " + Num.mm(c.y()) + ", turned " + Num.degrees(c.turn());
    }

    private void heading(int index, double x, double y) {
        Moments.Moment m = moments.get(index);
        Frame frame = detail.frames().get(m.frame());
        svg.text(x, y, (index + 1) + ". " + m.word(), "n");
        svg.text(x, y + 16, "tension " + Num.newtons(Moments.tension(frame)), "l");
    }

    private void cell(
            View view,
            Moments.Moment moment,
            double x,
            double y,
            double width,
            double height,
            double scale,
            @Nullable ForceScale forces) {
        Frame frame = detail.frames().get(moment.frame());
        Box2 f = shown(view);
        svg.open(x, y, width, height);
        View.Scaled v = view.scaled(
                scale, (width - scale * f.width()) / 2 - scale * f.left(), (height + scale * (f.high() + f.low())) / 2);
        if (view != View.TOP) {
            double table = v.y() - scale * frame.table();
            svg.rect(0, table, width, 6, "ground").line(0, table, width, table, "o");
        }
        scene(v, frame);
        if (forces != null) {
            forces.draw(svg, v);
        }
        svg.close().rect(x, y, width, height, "gl");
        Vec3 p = frame.object().apply(object.centreOfMass());
        Svg.P at = v.at(p);
        if (at.x() < 0 || at.x() > width || at.y() < 0 || at.y() > height) {
            svg.text(x + 6, y + height - 8, "object outside, " + Num.mm(p.length()) + " away", "l halo");
        }
    }

    /** Far things first; the object's hidden outline is drawn again, broken, over what hides it. */
    private void scene(View.Scaled v, Frame frame) {
        Vec3 near = v.view().near;
        List<HandBodies.Body> bodies = new ArrayList<>(HandBodies.of(hand, frame.bodies(), HandBodies.COARSE));
        bodies.sort(Comparator.comparingDouble(b -> near.dot(b.middle())));
        double objectDepth = near.dot(frame.object().apply(object.centreOfMass()));
        Svg.P at = v.at(frame.object().position());
        String outline = outlines.computeIfAbsent(
                        new Key(frame.object().rotation(), v.view()),
                        k -> Silhouette.of(object.shape(), k.turn, k.view))
                .path(v.scale(), at.x(), at.y());
        boolean drawn = false;
        for (HandBodies.Body body : bodies) {
            if (!drawn && near.dot(body.middle()) > objectDepth) {
                svg.path(outline, "o objf");
                drawn = true;
            }
            draw(body, v, drawn && body.palm());
        }
        svg.path(outline, drawn ? "h dash" : "o objf");
    }

    /** From above the palm hides everything, so over the object it is only outlined. */
    private void draw(HandBodies.Body body, View.Scaled v, boolean overObject) {
        if (overObject && v.view() == View.TOP) {
            body.bone().outline(svg, v, "t");
        } else {
            body.draw(svg, v);
        }
    }

    /** What all moments need in a view: the hand always; the object as far as one hand's size away. */
    private Box2 field(View view) {
        Box2 box = Box2.NOTHING;
        double r = object.shape().boundingRadius();
        double table = 0;
        for (Moments.Moment m : moments) {
            Frame frame = detail.frames().get(m.frame());
            for (HandBodies.Body body : HandBodies.of(hand, frame.bodies(), HandBodies.COARSE)) {
                box = box.with(body.bone().bounds(view)).with(body.pad().bounds(view));
            }
            table = Math.min(table, frame.table());
        }
        Box2 near = box.grown(Math.max(1.2 * r, 0.3 * Math.max(box.width(), box.height())));
        for (Moments.Moment m : moments) {
            Frame frame = detail.frames().get(m.frame());
            Vec3 p = frame.object().apply(object.centreOfMass());
            double h = Math.max(near.left(), Math.min(near.right(), view.right.dot(p)));
            double u = Math.max(near.low(), Math.min(near.high(), view.up.dot(p)));
            Silhouette s = outlines.computeIfAbsent(
                    new Key(frame.object().rotation(), view), k -> Silhouette.of(object.shape(), k.turn, k.view));
            Box2 b = s.bounds();
            Vec3 off = frame.object().position().minus(p);
            box = box.with(h + view.right.dot(off) + b.left(), u + view.up.dot(off) + b.low())
                    .with(h + view.right.dot(off) + b.right(), u + view.up.dot(off) + b.high());
        }
        Box2 framed = box.grown(0.008);
        return view == View.TOP ? framed : framed.with(framed.left(), table - 0.01);
    }

    private Box2 shown(View view) {
        return Objects.requireNonNull(fields.get(view), "every view has its field");
    }

    private double scale(double column) {
        double widest = fields.values().stream().mapToDouble(Box2::width).max().orElse(1);
        double highest =
                fields.values().stream().mapToDouble(Box2::height).max().orElse(1);
        return Math.min((column - 4) / widest, 260 / highest);
    }

    /** Forces on the object at the end, gathered by the body that exerts them. */
    private ForceScale forceScale() {
        Map<String, List<ContactForce>> byBody = new LinkedHashMap<>();
        for (ContactForce c : detail.contacts()) {
            if (c.other().equals("object")) {
                byBody.computeIfAbsent(c.body(), k -> new ArrayList<>()).add(c);
            }
        }
        return ForceScale.of(byBody, LONGEST_ARROW);
    }

    private void legend(double y, double scale, ForceScale forces) {
        svg.scaleBar(LEFT, y, scale, 90, "");
        double x = LEFT + 190;
        if (forces.isEmpty()) {
            svg.text(x, y + 5.5, "nothing presses on the object at the end", "l");
            return;
        }
        double length = forces.round() * forces.unitsPerNewton();
        svg.force(new Svg.P(x, y + 2), new Svg.P(x + length, y + 2));
        svg.text(x + length + 7, y + 5.5, Num.newtons(forces.round()) + " on the object, by body, at the end", "l");
        svg.rect(x + 330, y - 4, 18, 11, "t rub").text(x + 354, y + 5.5, "rubber", "l");
        svg.line(x + 420, y + 2, x + 444, y + 2, "h dash").text(x + 450, y + 5.5, "object behind the hand", "l");
    }
}
