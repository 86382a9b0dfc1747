package gripwright.report;

import gripwright.math.Draws;
import gripwright.math.Streams;
import gripwright.math.Vec3;
import gripwright.model.GraspObject;
import gripwright.model.Need;
import gripwright.model.Scatter;
import java.util.ArrayList;
import java.util.List;

/** The objects of a need to one scale, from the front and from above, with their main dimensions and mass. */
public final class ObjectPicture {
    private static final double WIDTH = 960;
    /** Room left of an object for its height, and between caption and drawing. */
    private static final double LEFT = 46;

    private static final double GAP = 30;
    private static final int DOTS = 60;

    private ObjectPicture() {}

    /** One object ready to be placed; lengths in picture units. */
    private record Slot(
            int number, GraspObject object, Silhouette front, Silhouette top, Box2 f, Box2 t, double width) {
        /** Size of the object along a direction of the world, from the shape itself [m]. */
        double size(Vec3 direction) {
            Vec3 d = object.stance().applyInverse(direction);
            return object.shape().extent(d) + object.shape().extent(d.times(-1));
        }
    }

    public static Picture draw(Need need) {
        List<Slot> slots = slots(need);
        double scale = slots.isEmpty() ? 1000 : scale(slots);
        List<List<Slot>> rows = rows(slots, scale);
        Svg svg = new Svg();
        double y = 0;
        for (List<Slot> row : rows) {
            y = drawRow(svg, need, row, scale, y);
        }
        svg.scaleBar(0, y + 6, scale, 110, "; one scale for all, dimensions in mm");
        if (need.placement().x().size() > 0 || need.placement().y().size() > 0) {
            svg.text(WIDTH, y + 11.5, scatterNote(need), "lq", Svg.Anchor.END);
        }
        return new Picture(
                slots.size() + " objects to one scale, from the front and from above", WIDTH, y + 20, svg.body());
    }

    private static List<Slot> slots(Need need) {
        List<Slot> out = new ArrayList<>();
        for (GraspObject o : need.objects()) {
            Silhouette front = Silhouette.of(o.shape(), o.stance(), View.FRONT);
            Silhouette top = Silhouette.of(o.shape(), o.stance(), View.TOP);
            double words = Math.max(Svg.textWidth(o.name(), 13), Svg.textWidth(about(o), 12)) + 30;
            out.add(new Slot(out.size() + 1, o, front, top, front.bounds(), top.bounds(), words));
        }
        return out;
    }

    /** One unit a millimetre unless something is large. */
    private static double scale(List<Slot> slots) {
        double width = slots.stream().mapToDouble(s -> s.f.width()).max().orElse(1);
        double height = slots.stream().mapToDouble(s -> s.f.height()).max().orElse(1);
        return Math.min(1000, Math.min(420 / width, 300 / height));
    }

    private static double width(Slot s, double scale) {
        return Math.max(s.width, LEFT + scale * s.f.width()) + GAP;
    }

    private static List<List<Slot>> rows(List<Slot> slots, double scale) {
        List<List<Slot>> rows = new ArrayList<>();
        double used = WIDTH;
        for (Slot s : slots) {
            double w = width(s, scale);
            if (rows.isEmpty() || used + w > WIDTH + GAP) {
                rows.add(new ArrayList<>());
                used = 0;
            }
            rows.get(rows.size() - 1).add(s);
            used += w;
        }
        return rows;
    }

    private static double drawRow(Svg svg, Need need, List<Slot> row, double scale, double y0) {
        double high = scale * row.stream().mapToDouble(s -> s.f.height()).max().orElse(0);
        double deep = scale * row.stream().mapToDouble(s -> s.t.height()).max().orElse(0);
        double table = y0 + 20 + high + 8;
        double plan = table + 40 + deep / 2 + 14;
        svg.text(0, y0 + 12, "seen from the front", "lq");
        svg.text(0, table + 36, "seen from above", "lq");
        double used = row.stream().mapToDouble(s -> width(s, scale)).sum() - GAP;
        double spare = row.size() > 1 ? Math.max(0, Math.min(60, (WIDTH - used) / (row.size() - 1))) : 0;
        svg.rect(0, table, WIDTH, 6, "ground").line(0, table, WIDTH, table, "o");
        double x = 0;
        double caption = plan + deep / 2 + 44;
        for (Slot s : row) {
            one(svg, need, s, scale, x, table, plan, caption);
            x += width(s, scale) + spare;
        }
        return caption + 46;
    }

    private static void one(
            Svg svg, Need need, Slot s, double scale, double left, double table, double plan, double caption) {
        Box2 f = s.f;
        Box2 t = s.t;
        double x = left + LEFT - scale * f.left();
        double foot = table + scale * f.low();
        svg.path(s.front.path(scale, x, foot), "o objf");
        double lx = x + scale * f.left();
        double rx = x + scale * f.right();
        svg.dimension(
                new Svg.P(lx, table),
                new Svg.P(lx, table - scale * f.height()),
                20,
                Num.millimetres(s.size(View.FRONT.up)));
        double yc = plan + scale * (t.low() + t.high()) / 2;
        svg.path(s.top.path(scale, x, yc), "o objf");
        boolean round = s.top.round(0.03);
        double bottom = plan + scale * t.height() / 2;
        svg.dimension(
                new Svg.P(lx, bottom),
                new Svg.P(rx, bottom),
                -22,
                (round ? "\u00d8" : "") + Num.millimetres(s.size(View.TOP.right)));
        if (!round) {
            svg.dimension(
                    new Svg.P(lx, bottom),
                    new Svg.P(lx, bottom - scale * t.height()),
                    20,
                    Num.millimetres(s.size(View.TOP.up)));
        }
        scatter(svg, need, s, x, yc, scale);
        svg.circle(left + 11, caption + 4, 10, "bal");
        svg.text(left + 11, caption + 8.2, Integer.toString(s.number), "bn", Svg.Anchor.MIDDLE);
        svg.text(left + 28, caption + 2, s.object.name(), "n");
        svg.text(left + 28, caption + 17, about(s.object), "l");
        String limit = limit(s.object);
        if (!limit.isEmpty()) {
            svg.text(left + 28, caption + 32, limit, "l");
        }
    }

    /** How hard it may be squeezed, if that is limited. */
    private static String limit(GraspObject o) {
        if (o.squeezeForce().isPresent()) {
            return "at most " + Num.newtons(o.squeezeForce().getAsDouble()) + " on it";
        }
        return o.squeezePressure().isPresent()
                ? "at most " + Num.unit(Num.text(o.squeezePressure().getAsDouble() / 1e3, 0), "kPa") + " on it"
                : "";
    }

    private static String about(GraspObject o) {
        return Num.grams(o.mass()) + ", " + o.surface();
    }

    /** The nominal place, and a cloud of places where the object may stand instead. */
    private static void scatter(Svg svg, Need need, Slot s, double x, double y, double scale) {
        svg.line(x - 5, y, x + 5, y, "t").line(x, y - 5, x, y + 5, "t");
        Scatter sx = need.placement().x();
        Scatter sy = need.placement().y();
        if (!(sx.size() > 0 || sy.size() > 0)) {
            return;
        }
        boolean normal = sx.law() == Scatter.Law.NORMAL && sy.law() == Scatter.Law.NORMAL;
        for (int k = 1; normal && k <= 2; k++) {
            svg.raw("<ellipse class=\"sd\" cx=\"" + Num.coord(x) + "\" cy=\"" + Num.coord(y) + "\" rx=\""
                    + Num.coord(k * scale * sx.size()) + "\" ry=\"" + Num.coord(k * scale * sy.size()) + "\"/>");
        }
        Streams streams = new Streams(1, "picture of the scatter");
        StringBuilder dots = new StringBuilder();
        for (int i = 0; i < DOTS; i++) {
            Draws draws = streams.draws(s.object.name(), i);
            // a dot is a line of no length with a round end
            dots.append('M')
                    .append(Num.plain(x + scale * off(sx, "x", draws), 1))
                    .append(' ')
                    .append(Num.plain(y - scale * off(sy, "y", draws), 1))
                    .append("h0");
        }
        svg.path(dots.toString(), "doth").path(dots.toString(), "dot");
    }

    private static double off(Scatter scatter, String input, Draws draws) {
        return switch (scatter.law()) {
            case NORMAL -> scatter.size() * draws.normal(input);
            case UNIFORM -> scatter.size() * (2 * draws.uniform(input) - 1);
        };
    }

    private static String scatterNote(Need need) {
        return "dots: " + DOTS + " places where it may stand, "
                + scatter(need.placement().x()) + " along x, "
                + scatter(need.placement().y()) + " along y";
    }

    private static String scatter(Scatter s) {
        return Num.mm(s.size()) + (s.law() == Scatter.Law.NORMAL ? " sd" : " half width");
    }
}
