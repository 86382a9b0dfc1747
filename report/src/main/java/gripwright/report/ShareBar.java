package gripwright.report;

import gripwright.study.Verdict;

/** A share found by counting, as a bar with its interval and the aim, and in words. */
final class ShareBar {
    private ShareBar() {}

    /** Share, interval and aim on a bar of the given length; {@code strong} fills it with the colour of held. */
    static void draw(
            Svg svg,
            double x,
            double y,
            double length,
            double share,
            double low,
            double high,
            double aim,
            boolean strong) {
        svg.rect(x, y + 5, length, 12, "bt").rect(x, y + 5, length * share, 12, strong ? "bf best" : "bf");
        svg.line(x + length * aim, y, x + length * aim, y + 22, "aim");
        double l = x + length * low;
        double h = x + length * high;
        svg.line(l, y + 11, h, y + 11, "whh");
        svg.path("M" + Num.coord(l) + " " + Num.coord(y + 7) + "v8m0 -4H" + Num.coord(h) + "m0 -4v8", "wh");
    }

    static String words(Verdict verdict) {
        return switch (verdict) {
            case REACHES -> "reaches it";
            case MAY_REACH -> "not settled";
            case BELOW -> "below";
            case UNKNOWN -> "unknown";
        };
    }

    static String verdict(Verdict verdict, double wanted) {
        String aim = Num.percent(wanted);
        return switch (verdict) {
            case REACHES -> "reaches " + aim;
            case MAY_REACH -> aim + " not settled";
            case BELOW -> "below " + aim;
            case UNKNOWN -> "unknown";
        };
    }
}
