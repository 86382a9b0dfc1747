package gripwright.report;

import gripwright.study.ExplainResult;
import gripwright.study.ExplainResult.Estimate;
import java.util.List;

/** What trials say about friction and scatter: the factors they support, as a map and as intervals. */
public final class SupportPicture {
    private static final double WIDTH = 960;
    private static final double LEFT = 60;
    private static final double MAP = 360;
    private static final double LIST = 500;
    private static final double ROW = 50;
    /** Drops of the log-likelihood that hold 50 and 95 % of chi-square with two degrees of freedom, halved. */
    private static final double[] DROPS = {2.995732, 0.693147};

    private final Svg svg = new Svg();
    private final ExplainResult result;

    private SupportPicture(ExplainResult result) {
        this.result = result;
    }

    /** Of a finished result. */
    public static Picture draw(ExplainResult result) {
        return new SupportPicture(result).picture();
    }

    private Picture picture() {
        boolean map = result.scatters().length > 1;
        double end = map ? map() : 0;
        end = Math.max(end, intervals(map ? LIST : LEFT));
        return new Picture("Friction and placement scatter that explain the trials", WIDTH, end + 6, svg.body());
    }

    private double map() {
        double[] f = result.factors();
        double[] s = result.scatters();
        double top = 24;
        Scale x = new Scale(f[0], f[f.length - 1], LEFT, LEFT + MAP);
        Scale y = new Scale(Math.log(s[0]), Math.log(s[s.length - 1]), top + MAP, top);
        svg.text(LEFT, 14, "one factor on the friction of all surfaces", "n");
        svg.rect(LEFT, top, MAP, MAP, "bt");
        double w = MAP / (f.length - 1);
        double h = MAP / (s.length - 1);
        StringBuilder[] cells = {new StringBuilder(), new StringBuilder()};
        for (int i = 0; i < s.length; i++) {
            for (int j = 0; j < f.length; j++) {
                double log = result.support()[i][j];
                if (log >= -DROPS[0]) {
                    double left = Math.max(LEFT, x.at(f[j]) - w / 2);
                    double upper = Math.max(top, y.at(Math.log(s[i])) - h / 2);
                    double right = Math.min(LEFT + MAP, x.at(f[j]) + w / 2);
                    double lower = Math.min(top + MAP, y.at(Math.log(s[i])) + h / 2);
                    cells[log >= -DROPS[1] ? 1 : 0]
                            .append("M")
                            .append(Num.coord(left))
                            .append(' ')
                            .append(Num.coord(upper))
                            .append("H")
                            .append(Num.coord(right))
                            .append("V")
                            .append(Num.coord(lower))
                            .append("H")
                            .append(Num.coord(left))
                            .append("Z");
                }
            }
        }
        svg.path(cells[0].toString(), "share4 cells").path(cells[1].toString(), "g-held cells");
        for (double v : x.ticks(6)) {
            svg.line(x.at(v), top + MAP, x.at(v), top + MAP + 4, "t");
            svg.text(x.at(v), top + MAP + 17, Num.text(v, 2), "l", Svg.Anchor.MIDDLE);
        }
        for (double v : new double[] {0.4, 0.5, 0.7, 1, 1.4, 2, 2.5}) {
            svg.line(LEFT - 4, y.at(Math.log(v)), LEFT, y.at(Math.log(v)), "t");
            svg.text(LEFT - 8, y.at(Math.log(v)) + 4, Num.text(v, 1), "l", Svg.Anchor.END);
        }
        svg.text(LEFT + MAP / 2, top + MAP + 36, "friction over assumed", "v", Svg.Anchor.MIDDLE);
        svg.text(14, top + MAP / 2, "scatter over assumed", "v", Svg.Anchor.MIDDLE, -90);
        svg.line(x.at(1), top, x.at(1), top + MAP, "aim").line(LEFT, y.at(0), LEFT + MAP, y.at(0), "aim");
        svg.circle(x.at(1), y.at(0), 5, "und");
        svg.text(x.at(1) + 8, y.at(0) - 8, "assumed", "l halo");
        double lower = top + MAP + 56;
        svg.rect(LEFT, lower - 10, 14, 12, "g-held").text(LEFT + 20, lower, Num.sentence("50 % region"), "l");
        svg.rect(LEFT + 110, lower - 10, 14, 12, "share4").text(LEFT + 130, lower, Num.sentence("95 % region"), "l");
        return lower + 8;
    }

    private double intervals(double left) {
        List<Estimate> all = result.estimates();
        double most = all.stream().mapToDouble(Estimate::high).max().orElse(2);
        Scale x = new Scale(0, Math.max(1.6, most), left + 150, WIDTH - 40);
        svg.text(left, 14, "each assumption, times", "n");
        double y = 24;
        svg.line(x.at(1), y, x.at(1), y + ROW * all.size(), "aim");
        for (Estimate e : all) {
            svg.line(left, y, WIDTH, y, "rule");
            List<String> lines = Wrap.lines(e.words(), 20);
            for (int i = 0; i < lines.size(); i++) {
                svg.text(left, y + 18 + 14 * i, Wrap.shortened(lines.get(i), 21), "v");
            }
            double at = y + 20;
            svg.line(x.at(e.low()), at, x.at(e.high()), at, "wh");
            if (e.openLow()) {
                svg.head(x.at(e.low()) - 5, at, -1, 0, "a");
            }
            if (e.openHigh()) {
                svg.head(x.at(e.high()) + 5, at, 1, 0, "a");
            }
            svg.circle(x.at(e.value()), at, 4.5, e.off() ? "mf" : "und");
            svg.text(left + 150, y + 42, words(e), "lq halo");
            y += ROW;
        }
        svg.line(left, y, WIDTH, y, "t");
        for (double v : x.ticks(6)) {
            svg.line(x.at(v), y, x.at(v), y + 4, "t").text(x.at(v), y + 17, Num.text(v, 2), "l", Svg.Anchor.MIDDLE);
        }
        svg.circle(left + 6, y + 36, 4, "und").text(left + 16, y + 40, "agrees with what is assumed", "l");
        svg.circle(left + 206, y + 36, 4, "mf").text(left + 216, y + 40, "refutes it (Holm)", "l");
        return y + 48;
    }

    private static String words(Estimate e) {
        if (e.silent()) {
            return "these trials do not tell";
        }
        String low = e.openLow() ? "below " + Num.text(e.low(), 2) : Num.text(e.low(), 2);
        String high = e.openHigh() ? "over " + Num.text(e.high(), 2) : Num.text(e.high(), 2);
        return Num.text(e.value(), 2) + " (" + low + " to " + high + "), " + HtmlHand.counted(e.trials(), "trial");
    }
}
