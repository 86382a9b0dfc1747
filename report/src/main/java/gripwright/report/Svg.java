package gripwright.report;

import gripwright.closing.Outcome;
import java.util.List;

/**
 * Words of drawing from which every picture is made, so that line weights, arrowheads and type stay the same
 * everywhere. Coordinates in picture units, x to the right, y downwards; style classes as in picture.css.
 */
final class Svg {
    /** Length and half width of an arrowhead. */
    private static final double HEAD = 6.5;

    private static final double HALF_HEAD = 2;

    private final StringBuilder out = new StringBuilder();
    private final boolean keyed;
    private String key = "";
    private double perMetre;

    Svg() {
        this(false);
    }

    /** @param keyed values carry the key under which they stand in the project's files, see {@link #key} */
    Svg(boolean keyed) {
        this.keyed = keyed;
    }

    /** The next text shows the value of this key of the project's files. */
    Svg key(String next) {
        key = keyed ? next : "";
        return this;
    }

    boolean keyed() {
        return keyed;
    }

    /** The next dimension can be changed by pulling at its arrowheads; {@code units} of the picture are one metre. */
    Svg pulled(double units) {
        perMetre = units;
        return this;
    }

    /**
     * A place to take hold of, with which the value of a key can be changed.
     *
     * @param ux,uy direction in which the value grows
     * @param units of the picture that make one metre or newton
     */
    Svg grab(String of, double x, double y, double ux, double uy, double units) {
        return grab(
                of,
                x,
                y,
                "data-ux=\"" + Num.plain(ux, 4) + "\" data-uy=\"" + Num.plain(uy, 4) + "\" data-per=\""
                        + Num.plain(units, 3) + '"');
    }

    /**
     * The same for an angle.
     *
     * @param o where its sides meet
     * @param turn 1 = it grows clockwise as seen, -1 = the other way
     */
    Svg grabAngle(String of, double x, double y, P o, double turn) {
        return grab(
                of,
                x,
                y,
                "data-ox=\"" + coord(o.x) + "\" data-oy=\"" + coord(o.y) + "\" data-turn=\"" + Num.plain(turn, 0)
                        + '"');
    }

    /** Style of an arrowhead: one that changes the value of a key is told from the others. */
    String head(String of) {
        return keyed && !of.isEmpty() ? "a d pull" : "a d";
    }

    private Svg grab(String of, double x, double y, String more) {
        if (keyed && !of.isEmpty()) {
            out.append("<circle class=\"grab\" data-drag=\"")
                    .append(Num.escape(of))
                    .append("\" cx=\"");
            out.append(coord(x))
                    .append("\" cy=\"")
                    .append(coord(y))
                    .append("\" r=\"9\" ")
                    .append(more)
                    .append("/>");
        }
        return this;
    }

    /** A point of the picture. */
    record P(double x, double y) {
        P plus(double dx, double dy) {
            return new P(x + dx, y + dy);
        }

        double to(P other) {
            return Math.hypot(other.x - x, other.y - y);
        }
    }

    /** Where text stands relative to its point. */
    enum Anchor {
        START,
        MIDDLE,
        END
    }

    Svg raw(String elements) {
        out.append(elements);
        return this;
    }

    Svg path(String data, String cls) {
        out.append("<path class=\"").append(cls).append("\" d=\"").append(data).append("\"/>");
        return this;
    }

    Svg line(double x1, double y1, double x2, double y2, String cls) {
        return path("M" + xy(x1, y1) + "L" + xy(x2, y2), cls);
    }

    Svg polygon(List<P> points, String cls) {
        return path(data(points) + "Z", cls);
    }

    Svg polyline(List<P> points, String cls) {
        return path(data(points), cls);
    }

    static String data(List<P> points) {
        StringBuilder d = new StringBuilder("M");
        for (int i = 0; i < points.size(); i++) {
            d.append(i == 0 ? "" : "L").append(xy(points.get(i).x, points.get(i).y));
        }
        return d.toString();
    }

    Svg rect(double x, double y, double width, double height, String cls) {
        out.append("<rect class=\"").append(cls).append("\" x=\"").append(coord(x));
        out.append("\" y=\"").append(coord(y)).append("\" width=\"").append(coord(width));
        out.append("\" height=\"").append(coord(height)).append("\"/>");
        return this;
    }

    Svg circle(double x, double y, double r, String cls) {
        out.append("<circle class=\"").append(cls).append("\" cx=\"").append(coord(x));
        out.append("\" cy=\"")
                .append(coord(y))
                .append("\" r=\"")
                .append(coord(r))
                .append("\"/>");
        return this;
    }

    Svg text(double x, double y, String text, String cls) {
        return text(x, y, text, cls, Anchor.START, 0);
    }

    Svg text(double x, double y, String text, String cls, Anchor anchor) {
        return text(x, y, text, cls, anchor, 0);
    }

    /** Text on its base line; {@code turn} in degrees clockwise about its point. */
    Svg text(double x, double y, String text, String cls, Anchor anchor, double turn) {
        out.append("<text class=\"").append(cls).append("\" x=\"").append(coord(x));
        out.append("\" y=\"").append(coord(y)).append('"');
        if (!key.isEmpty()) {
            out.append(" data-key=\"").append(Num.escape(key)).append('"');
            key = "";
        }
        if (anchor != Anchor.START) {
            out.append(" text-anchor=\"")
                    .append(anchor == Anchor.MIDDLE ? "middle" : "end")
                    .append('"');
        }
        if (turn != 0) {
            out.append(" transform=\"rotate(")
                    .append(coord(turn))
                    .append(' ')
                    .append(xy(x, y))
                    .append(")\"");
        }
        out.append('>').append(Num.escape(text)).append("</text>");
        return this;
    }

    /** Begins a text of several runs; {@link #end} ends it. */
    Svg open(double x, double y, String cls) {
        out.append("<text class=\"").append(cls).append("\" x=\"").append(coord(x));
        out.append("\" y=\"").append(coord(y)).append("\">");
        return this;
    }

    Svg run(String words) {
        out.append(Num.escape(words));
        return this;
    }

    /** A run that shows the value of a key. */
    Svg run(String of, String value) {
        if (!keyed) {
            return run(value);
        }
        out.append("<tspan data-key=\"").append(Num.escape(of)).append("\">");
        out.append(Num.escape(value)).append("</tspan>");
        return this;
    }

    Svg end() {
        out.append("</text>");
        return this;
    }

    /** The mark of an outcome, its upper left corner at x, y. */
    Svg mark(Outcome outcome, double x, double y, double size) {
        out.append("<use href=\"#mk-")
                .append(Marks.key(outcome))
                .append("\" x=\"")
                .append(coord(x));
        out.append("\" y=\"").append(coord(y)).append("\" width=\"").append(coord(size));
        out.append("\" height=\"").append(coord(size)).append("\"/>");
        return this;
    }

    /** A filled arrowhead with its tip at x, y, pointing along (dx, dy). */
    Svg head(double x, double y, double dx, double dy, String cls, double length, double half) {
        double n = Math.hypot(dx, dy);
        double ux = dx / n;
        double uy = dy / n;
        double bx = x - ux * length;
        double by = y - uy * length;
        return path(
                "M" + xy(x, y) + "L" + xy(bx - uy * half, by + ux * half) + "L" + xy(bx + uy * half, by - ux * half)
                        + "Z",
                cls);
    }

    Svg head(double x, double y, double dx, double dy, String cls) {
        return head(x, y, dx, dy, cls, HEAD, HALF_HEAD);
    }

    /** A thin arrow. */
    Svg arrow(P from, P to, String lineClass, String headClass) {
        double n = from.to(to);
        if (n < 1e-6) {
            return this;
        }
        double dx = (to.x - from.x) / n;
        double dy = (to.y - from.y) / n;
        line(from.x, from.y, to.x - dx * HEAD * 0.8, to.y - dy * HEAD * 0.8, lineClass);
        return head(to.x, to.y, dx, dy, headClass);
    }

    /** A force: heavy shaft with a paper halo and a large head; its tip at {@code to}. */
    Svg force(P from, P to) {
        double n = from.to(to);
        if (n < 2) {
            return circle(to.x, to.y, 2.2, "forcedot");
        }
        double dx = (to.x - from.x) / n;
        double dy = (to.y - from.y) / n;
        double length = Math.min(9, 0.8 * n);
        line(from.x, from.y, to.x - dx * length * 0.8, to.y - dy * length * 0.8, "forceh");
        line(from.x, from.y, to.x - dx * length * 0.8, to.y - dy * length * 0.8, "force");
        return head(to.x, to.y, dx, dy, "forcehead", length, 3.2 * length / 9);
    }

    /**
     * A dimension between two points.
     *
     * @param off distance of the dimension line to the left of the way from a to b, as seen in the picture
     */
    Svg dimension(P a, P b, double off, String label) {
        double n = a.to(b);
        String pulled = perMetre > 0 ? key : "";
        double units = perMetre;
        perMetre = 0;
        if (n < 1e-6) {
            return this;
        }
        double ux = (b.x - a.x) / n;
        double uy = (b.y - a.y) / n;
        double nx = uy;
        double ny = -ux;
        double sign = off >= 0 ? 1 : -1;
        P p = a.plus(nx * off, ny * off);
        P q = b.plus(nx * off, ny * off);
        line(a.x + 3 * nx * sign, a.y + 3 * ny * sign, p.x + 3 * nx * sign, p.y + 3 * ny * sign, "t d");
        line(b.x + 3 * nx * sign, b.y + 3 * ny * sign, q.x + 3 * nx * sign, q.y + 3 * ny * sign, "t d");
        if (n < textWidth(label, 12.5) + 14) {
            shortDimension(p, q, ux, uy, label, head(pulled));
            return grab(pulled, p.x, p.y, -ux, -uy, units).grab(pulled, q.x, q.y, ux, uy, units);
        }
        line(p.x + 5 * ux, p.y + 5 * uy, q.x - 5 * ux, q.y - 5 * uy, "t d");
        String heads = head(pulled);
        head(p.x, p.y, -ux, -uy, heads).head(q.x, q.y, ux, uy, heads);
        double turn = upright(Math.toDegrees(Math.atan2(uy, ux)));
        double t = Math.toRadians(turn);
        double mx = (p.x + q.x) / 2 + 4.5 * Math.sin(t);
        double my = (p.y + q.y) / 2 - 4.5 * Math.cos(t);
        text(mx, my, label, "v halo", Anchor.MIDDLE, turn);
        return grab(pulled, p.x, p.y, -ux, -uy, units).grab(pulled, q.x, q.y, ux, uy, units);
    }

    /** Too short for its value: arrows from outside, the value beyond the end. */
    private Svg shortDimension(P p, P q, double ux, double uy, String label, String heads) {
        line(p.x - 13 * ux, p.y - 13 * uy, q.x + 13 * ux, q.y + 13 * uy, "t d");
        head(p.x, p.y, ux, uy, heads).head(q.x, q.y, -ux, -uy, heads);
        boolean flat = Math.abs(ux) > 0.5;
        Anchor anchor = !flat ? Anchor.MIDDLE : ux > 0 ? Anchor.START : Anchor.END;
        double reach = flat ? 17 : uy > 0 ? 26 : 18;
        return text(q.x + reach * ux, q.y + reach * uy + (flat ? 4 : 0), label, "v halo", anchor);
    }

    private static double upright(double turn) {
        double t = turn > 90 - 1e-6 ? turn - 180 : turn <= -90 - 1e-6 ? turn + 180 : turn;
        return Math.abs(Math.abs(t) - 90) < 1e-6 ? -90 : t;
    }

    /** A bar of alternating fields of a round length near {@code wish} units. */
    Svg scaleBar(double x, double y, double unitsPerMetre, double wish, String more) {
        double metres = Num.nice(wish / unitsPerMetre);
        double length = metres * unitsPerMetre;
        for (int i = 0; i < 5; i++) {
            rect(x + i * length / 5, y, length / 5, 4, i % 2 == 0 ? "sb1" : "sb0");
        }
        return text(x + length + 7, y + 5.5, Num.mm(metres) + more, "l");
    }

    /** Two named axes with their arrows, corner at x, y. */
    Svg axes(double x, double y, String right, String up) {
        P o = new P(x, y);
        arrow(o, o.plus(22, 0), "t", "a").arrow(o, o.plus(0, -22), "t", "a").circle(x, y, 1.5, "a");
        return text(x + 26, y + 3.5, right, "ax").text(x, y - 27, up, "ax", Anchor.MIDDLE);
    }

    /** Begins a field of the picture: what is drawn until {@link #close} is clipped to it, with its own origin. */
    Svg open(double x, double y, double width, double height) {
        out.append("<svg x=\"").append(coord(x)).append("\" y=\"").append(coord(y));
        out.append("\" width=\"").append(coord(width)).append("\" height=\"").append(coord(height));
        out.append("\" overflow=\"hidden\">");
        return this;
    }

    Svg close() {
        out.append("</svg>");
        return this;
    }

    /** Width of text in the widest likely fallback face, about. */
    static double textWidth(String text, double size) {
        return 0.6 * size * text.codePointCount(0, text.length());
    }

    /** A tenth of a unit is finer than any screen or printer shows at this size. */
    private static String coord(double value) {
        return Num.plain(value, 1);
    }

    private static String xy(double x, double y) {
        return coord(x) + " " + coord(y);
    }

    String body() {
        return out.toString();
    }
}
