package gripwright.report;

import gripwright.closing.Endurance;
import gripwright.closing.HoldDetail;
import gripwright.closing.PressResult;
import gripwright.closing.PullResult;
import gripwright.closing.PullResult.Kind;
import gripwright.math.Vec3;
import gripwright.model.GraspObject;
import gripwright.model.Hand;
import gripwright.study.HoldFindings;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * How hard a hand holds, drawn around the object: the held state from three sides, in each an arrow per direction as
 * long as the greatest force of the pull, and the loads over displacement below.
 */
public final class HoldPicture {
    private static final double WIDTH = 1012;
    private static final double GAP = 14;
    private static final double TOP = 64;
    /** Room for arrows and labels around what is drawn, in picture units. */
    private static final double MARGIN_X = 78;

    private static final double MARGIN_Y = 62;
    private static final double LONGEST = 58;
    private static final double SHORTEST = 11;

    private final Hand hand;
    private final GraspObject object;
    private final HoldDetail hold;
    private final Svg svg = new Svg();
    private final Map<View, Silhouette> outlines = new EnumMap<>(View.class);

    private HoldPicture(Hand hand, GraspObject object, HoldDetail hold) {
        this.hand = hand;
        this.object = object;
        this.hold = hold;
        for (View view : View.values()) {
            outlines.put(
                    view, Silhouette.of(object.shape(), hold.closing().object().rotation(), view));
        }
    }

    /** The diagram; one that says why there is nothing to draw if the object was not held. */
    public static Picture draw(Hand hand, GraspObject object, HoldDetail hold) {
        return new HoldPicture(hand, object, hold).picture();
    }

    private Picture picture() {
        String title = "How hard the hand holds the " + object.name();
        svg.mark(hold.closing().summary().outcome(), 0, 0, 18);
        svg.text(26, 14, title, "title");
        if (!hold.tested()) {
            svg.text(26, 36, "It was not held, so nothing was pulled.", "v");
            return new Picture(title, WIDTH, 48, svg.body());
        }
        svg.text(
                26,
                34,
                "Arrows: greatest force of a pull through the centre of mass, weight of "
                        + Num.newtons(hold.closing().weight().length())
                        + " besides. Below each view: greatest torque about"
                        + " its line of sight.",
                "lq");
        double column = (WIDTH - 2 * GAP) / 3;
        double scale = scale(column);
        double height = tallest() * scale + 2 * MARGIN_Y;
        double x = 0;
        for (View view : View.values()) {
            svg.text(x, TOP - 8, view.word, "n");
            view(view, x, column, height, scale);
            x += column + GAP;
        }
        double y = TOP + height + 46;
        svg.scaleBar(0, y, scale, 90, "");
        double unit = unitsPerNewton();
        double round = Num.nice(46 / unit);
        svg.force(new Svg.P(230, y + 2), new Svg.P(230 + round * unit, y + 2));
        svg.text(237 + round * unit, y + 5.5, Num.newtons(round), "l");
        svg.text(
                420,
                y + 5.5,
                "slips: the peak came early; yields: still rising after "
                        + Num.mm(hold.plan().travel()),
                "l");
        double end = curves(y + 34);
        return new Picture(title, WIDTH, end, svg.body());
    }

    // ------------------------------------------------------------------ the views

    private Box2 box(View view) {
        Vec3 p = hold.closing().object().position();
        Box2 b = Objects.requireNonNull(outlines.get(view)).bounds();
        double h = view.right.dot(p);
        double u = view.up.dot(p);
        Box2 all = new Box2(b.left() + h, b.right() + h, b.low() + u, b.high() + u);
        for (HandBodies.Body body : HandBodies.of(hand, hold.closing().bodyPoses(), HandBodies.COARSE)) {
            all = all.with(body.bone().bounds(view)).with(body.pad().bounds(view));
        }
        return all;
    }

    private double scale(double column) {
        double widest = 0;
        for (View view : View.values()) {
            widest = Math.max(widest, box(view).width());
        }
        return Math.min((column - 2 * MARGIN_X) / widest, 250 / tallest());
    }

    private double tallest() {
        double highest = 0;
        for (View view : View.values()) {
            highest = Math.max(highest, box(view).height());
        }
        return highest;
    }

    private double unitsPerNewton() {
        double most = hold.pulls().stream()
                .filter(p -> p.kind() != Kind.UNDECIDED)
                .mapToDouble(PullResult::peak)
                .max()
                .orElse(1);
        return LONGEST / Math.max(most, 1e-9);
    }

    private void view(View view, double x, double width, double height, double scale) {
        Box2 b = box(view);
        View.Scaled v = view.scaled(
                scale,
                x + width / 2 - scale * (b.left() + b.right()) / 2,
                TOP + height / 2 + scale * (b.low() + b.high()) / 2);
        svg.rect(x, TOP, width, height, "gl");
        scene(v);
        for (PullResult p : hold.pulls()) {
            if (Math.abs(p.axis().dot(view.near)) < 0.5) {
                arrow(v, p);
            }
        }
        hold.presses().forEach(p -> press(v, p));
        svg.axes(x + 12, TOP + height - 10, view.rightAxis, view.upAxis);
        double y = TOP + height + 16;
        for (PullResult t : hold.turns()) {
            if (Math.abs(t.axis().dot(view.near)) > 0.5) {
                svg.text(x, y, "about " + name(t.axis()) + ": " + torque(t), "l");
                y += 15;
            }
        }
    }

    private static String name(Vec3 axis) {
        return HoldFindings.axis(axis).replace("-", "\u2212");
    }

    private static String torque(PullResult t) {
        return t.kind() == Kind.UNDECIDED
                ? "undecided"
                : Num.unit(Num.digits(t.peak(), 2), "N\u00b7m") + ", "
                        + t.kind().words();
    }

    private void scene(View.Scaled v) {
        Vec3 near = v.view().near;
        List<HandBodies.Body> bodies =
                new ArrayList<>(HandBodies.of(hand, hold.closing().bodyPoses(), HandBodies.COARSE));
        bodies.sort(Comparator.comparingDouble(b -> near.dot(b.middle())));
        double depth = near.dot(hold.closing().centreOfMass());
        Svg.P at = v.at(hold.closing().object().position());
        String outline = Objects.requireNonNull(outlines.get(v.view())).path(v.scale(), at.x(), at.y());
        boolean drawn = false;
        for (HandBodies.Body body : bodies) {
            if (!drawn && near.dot(body.middle()) > depth) {
                svg.path(outline, "o objf");
                drawn = true;
            }
            if (drawn && body.palm() && v.view() == View.TOP) {
                body.bone().outline(svg, v, "t");
            } else {
                body.draw(svg, v);
            }
        }
        svg.path(outline, drawn ? "h dash" : "o objf");
        Svg.P c = v.at(hold.closing().centreOfMass());
        svg.circle(c.x(), c.y(), 3.2, "forcedot");
    }

    /** From the edge of all that is drawn outwards, so that it lies on clear paper, with what it found at its tip. */
    private void arrow(View.Scaled v, PullResult p) {
        Svg.P c = v.at(hold.closing().centreOfMass());
        double dx = v.view().right.dot(p.axis());
        double dy = -v.view().up.dot(p.axis());
        Box2 b = box(v.view());
        double edge = dx > 0.5
                ? v.x() + v.scale() * b.right()
                : dx < -0.5
                        ? v.x() + v.scale() * b.left()
                        : dy > 0.5 ? v.y() - v.scale() * b.low() : v.y() - v.scale() * b.high();
        Svg.P from = Math.abs(dx) > 0.5 ? new Svg.P(edge + 5 * dx, c.y()) : new Svg.P(c.x(), edge + 5 * dy);
        svg.line(c.x(), c.y(), from.x(), from.y(), "h chain");
        boolean known = p.kind() != Kind.UNDECIDED;
        double length = known ? Math.max(SHORTEST, unitsPerNewton() * p.peak()) : SHORTEST;
        Svg.P tip = from.plus(dx * length, dy * length);
        if (known) {
            svg.force(from, tip);
        }
        String force = known ? (p.kind() == Kind.BEYOND ? "over " : "") + Num.newtons(p.peak()) : "undecided";
        String how = p.kind() == Kind.SLIPS
                ? "slips, " + Num.mm(p.peakAt())
                : known ? p.kind().words() : "";
        if (Math.abs(dx) > 0.5) {
            Svg.Anchor anchor = dx > 0 ? Svg.Anchor.START : Svg.Anchor.END;
            svg.text(from.x(), c.y() - 9, force, "n halo", anchor);
            svg.text(from.x(), c.y() + 18, how, "l halo", anchor);
        } else {
            double middle = (from.y() + tip.y()) / 2;
            double y = dy < 0 ? Math.min(middle, from.y() - 16) : Math.max(middle, from.y() + 12);
            svg.text(c.x() + 8, y, force, "n halo");
            svg.text(c.x() + 8, y + 14, how, "l halo");
        }
    }

    // ------------------------------------------------------------------ load over displacement

    private double curves(double top) {
        svg.text(0, top, "Force over displacement in the hand, and the greatest acceleration of the hand", "n");
        double column = (WIDTH - 2 * GAP) / 3;
        double height = 120;
        double most = hold.pulls().stream().mapToDouble(PullResult::peak).max().orElse(1);
        double tick = Num.nice(most);
        for (int pair = 0; pair < 3; pair++) {
            double x = pair * (column + GAP) + 34;
            double width = column - 40;
            double y = top + 14;
            svg.line(x, y + height, x + width, y + height, "t").line(x, y, x, y + height, "t");
            double per = (height - 12) / Math.max(most, 1e-9);
            svg.line(x, y + height - tick * per, x + width, y + height - tick * per, "gl");
            svg.text(x - 4, y + height - tick * per + 4, Num.newtons(tick), "lq", Svg.Anchor.END);
            svg.text(x + width, y + height + 15, Num.mm(hold.plan().travel()), "lq", Svg.Anchor.END);
            svg.text(x, y + height + 15, "0", "lq");
            for (int i = 0; i < 2; i++) {
                int index = 2 * pair + i;
                if (index < hold.pulls().size()) {
                    curve(hold.pulls().get(index), i, x, y, width, height, per);
                }
            }
        }
        double end = top + height + (hold.presses().isEmpty() ? 70 : 92);
        for (PressResult p : hold.presses()) {
            svg.text(0, end, task(p), "v");
            end += 18;
        }
        return end;
    }

    // ------------------------------------------------------------------ tasks of a free finger

    /** An arrow onto the place, as long as the greatest force that the hold bears there; a dot seen from behind it. */
    private void press(View.Scaled v, PressResult p) {
        Svg.P at = v.at(hold.closing().object().apply(p.task().point()));
        Vec3 d = hold.closing().object().rotation().apply(p.task().direction());
        double dx = v.view().right.dot(d);
        double dy = -v.view().up.dot(d);
        double length = Math.min(LONGEST, Math.max(SHORTEST, unitsPerNewton() * p.holdForce()));
        svg.force(at.plus(-dx * length, -dy * length), at);
        svg.text(at.x() - dx * length + 7, at.y() - dy * length - 6, p.task().name(), "n halo");
    }

    private static String task(PressResult p) {
        String finger =
                Double.isNaN(p.fingerForce()) ? "does not reach it" : "presses with " + Num.newtons(p.fingerForce());
        return "Task " + p.task().name() + ", " + Num.newtons(p.task().force()) + " wanted: "
                + p.verdict().words() + "; " + p.task().finger() + " " + finger + ", the hold bears "
                + (p.push().kind() == Kind.UNDECIDED ? "undecided" : Num.newtons(p.holdForce())) + " there";
    }

    private void curve(PullResult p, int style, double x, double y, double width, double height, double per) {
        double travel = hold.plan().travel();
        List<Svg.P> points = p.curve().stream()
                .filter(s -> s.moved() >= 0 && s.moved() <= 1.05 * travel && s.load() >= 0)
                .map(s -> new Svg.P(x + width * Math.min(1, s.moved() / travel), y + height - per * s.load()))
                .toList();
        if (points.size() > 1) {
            svg.polyline(points, style == 0 ? "c0" : "c2");
        }
        double row = y + height + 32 + 15 * style;
        svg.line(x, row - 4, x + 22, row - 4, style == 0 ? "c0" : "c2");
        String shaken = hold.endurance().stream()
                .filter(e -> e.axis().equals(p.axis()))
                .map(HoldPicture::acceleration)
                .findFirst()
                .orElse("");
        svg.text(x + 28, row, name(p.axis()) + (shaken.isEmpty() ? "" : "; hand accelerated " + shaken), "l");
    }

    private static String acceleration(Endurance e) {
        return (Double.isInfinite(e.failed()) ? "over " : "")
                + Num.unit(Num.digits(e.survived(), 2), "m/s\u00b2")
                + (e.undecided() ? ", undecided beyond" : "");
    }
}
