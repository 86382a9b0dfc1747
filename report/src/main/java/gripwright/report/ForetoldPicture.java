package gripwright.report;

import gripwright.study.ExplainResult;
import gripwright.study.ExplainResult.Foretold;

/** Predicted against seen: one point for each object and grip, with the range of chance and the interval seen. */
public final class ForetoldPicture {
    private static final double WIDTH = 960;
    private static final double SIDE = 400;
    private static final double LEFT = 60;
    private static final double LIST = 520;

    private ForetoldPicture() {}

    public static Picture draw(ExplainResult result) {
        Svg svg = new Svg();
        Scale x = new Scale(0, 1, LEFT, LEFT + SIDE);
        Scale y = new Scale(0, 1, SIDE + 16, 16);
        svg.rect(LEFT, 16, SIDE, SIDE, "bt");
        for (int k = 0; k <= 5; k++) {
            double share = k / 5.0;
            svg.line(x.at(share), 16, x.at(share), SIDE + 16, "gl");
            svg.line(LEFT, y.at(share), LEFT + SIDE, y.at(share), "gl");
            svg.text(x.at(share), SIDE + 34, Num.text(100 * share, 0), "l", Svg.Anchor.MIDDLE);
            svg.text(LEFT - 8, y.at(share) + 4, Num.text(100 * share, 0), "l", Svg.Anchor.END);
        }
        svg.line(x.at(0), y.at(0), x.at(1), y.at(1), "t dash");
        svg.text(LEFT + SIDE / 2, SIDE + 54, Num.sentence("predicted, % held"), "v", Svg.Anchor.MIDDLE);
        svg.text(16, 16 + SIDE / 2, Num.sentence("seen, % held"), "v", Svg.Anchor.MIDDLE, -90);
        int number = 0;
        double line = 30;
        svg.text(LIST, line, "object, grip", "lq").text(WIDTH, line, "predicted, seen", "lq", Svg.Anchor.END);
        for (Foretold f : result.foretold()) {
            number++;
            point(svg, f, x, y, number);
            line += 38;
            svg.circle(LIST + 6, line - 5, 4, f.off() ? "mf" : "und");
            svg.text(LIST + 18, line, number + "  " + Wrap.shortened(f.object() + ", " + f.grip(), 34), "n");
            svg.text(WIDTH, line, Num.share(f.share()) + ", " + f.held() + " of " + f.decided(), "v", Svg.Anchor.END);
            String words =
                    (f.off() ? "off by more than chance: " : "") + Num.interval(f.low(), f.high()) + " would be chance";
            svg.text(LIST + 18, line + 15, words, "lq");
        }
        double end = Math.max(SIDE + 66, line + 30);
        svg.circle(LEFT + 6, end + 6, 4, "und").text(LEFT + 16, end + 10, "within chance", "l");
        svg.circle(LEFT + 126, end + 6, 4, "mf").text(LEFT + 136, end + 10, "off by more than chance (Holm)", "l");
        svg.text(
                LEFT + 360,
                end + 10,
                Num.sentence("upright: 95 % interval of the share seen; level: range of chance about the prediction"),
                "lq");
        return new Picture("Predicted against seen share of trials held", WIDTH, end + 18, svg.body());
    }

    private static void point(Svg svg, Foretold f, Scale x, Scale y, int number) {
        double seen = (double) f.held() / f.decided();
        double px = x.at(f.share());
        double py = y.at(seen);
        svg.line(px, y.at(f.seen().low()), px, y.at(f.seen().high()), "wh");
        svg.line(x.at(f.low()), py, x.at(f.high()), py, "t");
        svg.circle(px, py, 4.5, f.off() ? "mf" : "und");
        svg.text(px + 8, py - 7, Integer.toString(number), "bn halo");
    }
}
