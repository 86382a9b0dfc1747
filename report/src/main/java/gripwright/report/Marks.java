package gripwright.report;

import gripwright.closing.Outcome;
import java.util.List;

/** The mark of each outcome on a 16 x 16 field, and its texture in a map cell. Never shown without its word. */
final class Marks {
    private Marks() {}

    /** Best first, then by how near they came; the order of every legend. */
    static final List<Outcome> ORDER = List.of(
            Outcome.HELD,
            Outcome.DROPPED,
            Outcome.PUSHED_AWAY,
            Outcome.KNOCKED_OVER,
            Outcome.THROWN_OUT,
            Outcome.SQUEEZED,
            Outcome.LANDED_ON_IT,
            Outcome.MISSED,
            Outcome.UNDECIDED);

    /** Short name used in ids and style classes. */
    static String key(Outcome outcome) {
        return switch (outcome) {
            case HELD -> "held";
            case DROPPED -> "dropped";
            case PUSHED_AWAY -> "pushed";
            case KNOCKED_OVER -> "knocked";
            case THROWN_OUT -> "thrown";
            case SQUEEZED -> "squeezed";
            case LANDED_ON_IT -> "landed";
            case MISSED -> "missed";
            case UNDECIDED -> "undecided";
        };
    }

    private static String drawing(Outcome outcome) {
        return switch (outcome) {
            case HELD -> "<circle class=\"mf\" cx=\"8\" cy=\"8\" r=\"5.6\"/>";
            case DROPPED ->
                "<circle class=\"ms\" cx=\"8\" cy=\"5.6\" r=\"3.7\"/><path class=\"ms\" d=\"M4.4 12.2L8 15L11.6 12.2\"/>";
            case PUSHED_AWAY -> "<path class=\"ms\" d=\"M2.4 4.2V11.8M5.2 8H13M9.6 4.4L13.4 8L9.6 11.6\"/>";
            case KNOCKED_OVER ->
                "<path class=\"mf\" d=\"M3.4 10.9L10.6 1.9L13.5 4.2L8.1 10.9Z\"/><path class=\"ms\" d=\"M1.6 13.6H14.4\"/>";
            case THROWN_OUT ->
                "<circle class=\"mf\" cx=\"11.8\" cy=\"4.2\" r=\"2.6\"/>"
                        + "<path class=\"ms\" d=\"M8.6 4.6L3.2 7.2M9.6 6.8L5 12.2M11.6 8L9.4 13.8\"/>";
            case SQUEEZED -> "<path class=\"ms\" d=\"M1.6 3.8L5.4 8L1.6 12.2M14.4 3.8L10.6 8L14.4 12.2M8 2.6V13.4\"/>";
            // An arrow coming down on a dome: what stands there is met from above.
            case LANDED_ON_IT ->
                "<path class=\"ms\" d=\"M8 1.2V7M4.8 4.2L8 7.4L11.2 4.2\"/>"
                        + "<path class=\"mf\" d=\"M2.4 14.6A5.6 5 0 0 1 13.6 14.6Z\"/>";
            case MISSED -> "<circle class=\"mf\" cx=\"8\" cy=\"8\" r=\"1.7\"/>";
            case UNDECIDED ->
                "<path class=\"ms\" d=\"M4.6 5.4C4.6 3.2 6 2 8 2C10 2 11.4 3.3 11.4 5.1C11.4 7.6 8 7.7 8 10.4\"/>"
                        + "<circle class=\"mf\" cx=\"8\" cy=\"13.6\" r=\"1.2\"/>";
        };
    }

    /** One symbol per outcome, to be used by reference. */
    static String symbols() {
        StringBuilder out = new StringBuilder();
        for (Outcome outcome : ORDER) {
            out.append("<symbol id=\"mk-").append(key(outcome)).append("\" viewBox=\"0 0 16 16\">");
            out.append(drawing(outcome)).append("</symbol>");
        }
        return out.toString();
    }

    /** The mark as an element of running HTML text; its word stands beside it. */
    static String inText(Outcome outcome, int size) {
        return "<svg class=\"mark\" width=\"" + size + "\" height=\"" + size
                + "\" viewBox=\"0 0 16 16\" aria-hidden=\"true\"><use href=\"#mk-" + key(outcome) + "\"/></svg>";
    }

    /**
     * Path data of the texture of one map cell; empty for the plain grounds.
     *
     * @param x left and
     * @param y upper edge in the picture
     * @param size of the cell; the texture is drawn for 12 and scaled
     * @param turn direction of travel of a pushed object, counter-clockwise from x [rad]
     */
    static String texture(Outcome outcome, double x, double y, double size, double turn) {
        double k = size / 12;
        double cx = x + size / 2;
        double cy = y + size / 2;
        return switch (outcome) {
            case HELD, UNDECIDED -> "";
            case DROPPED -> {
                double r = 2.3 * k;
                yield "M" + xy(cx - r, cy) + arc(r, 2 * r) + arc(r, -2 * r);
            }
            case PUSHED_AWAY -> {
                double ux = Math.cos(turn);
                double uy = -Math.sin(turn);
                double hx = cx + 4.2 * k * ux;
                double hy = cy + 4.2 * k * uy;
                double a = 2.6 * k;
                double b = 1.9 * k;
                yield "M" + xy(cx - 4.2 * k * ux, cy - 4.2 * k * uy) + "L" + xy(hx, hy) + "M"
                        + xy(hx - a * ux + b * uy, hy - a * uy - b * ux) + "L" + xy(hx, hy) + "L"
                        + xy(hx - a * ux - b * uy, hy - a * uy + b * ux);
            }
            case KNOCKED_OVER -> "M" + xy(x + 2 * k, y + 10 * k) + "L" + xy(x + 10 * k, y + 2 * k);
            case THROWN_OUT ->
                "M" + xy(cx - 3 * k, cy) + "h" + Num.coord(6 * k) + "M" + xy(cx, cy - 3 * k) + "v" + Num.coord(6 * k);
            case SQUEEZED ->
                "M" + xy(cx - 2 * k, y + 1.5 * k) + "v" + Num.coord(9 * k) + "M" + xy(cx + 2 * k, y + 1.5 * k) + "v"
                        + Num.coord(9 * k);
            case LANDED_ON_IT ->
                "M" + xy(cx - 2.8 * k, cy - 3.2 * k) + "L" + xy(cx, cy) + "L" + xy(cx + 2.8 * k, cy - 3.2 * k) + "M"
                        + xy(cx - 3.6 * k, cy + 2.8 * k) + "h" + Num.coord(7.2 * k);
            case MISSED -> "M" + xy(cx, cy) + "h0";
        };
    }

    private static String arc(double r, double dx) {
        return "a" + Num.coord(r) + " " + Num.coord(r) + " 0 1 0 " + Num.coord(dx) + " 0";
    }

    private static String xy(double x, double y) {
        return Num.coord(x) + " " + Num.coord(y);
    }
}
