package gripwright.report;

import gripwright.pad.Push;
import gripwright.pad.TouchAnswer;
import java.util.stream.DoubleStream;

/** How far each object is pushed before the finger has stopped: met over a chip, and met between two. */
public final class TouchPicture {
    private static final double LEFT = 190;
    private static final double RIGHT = 640;
    private static final double ROW = 36;
    private static final double BAR = 10;

    private TouchPicture() {}

    public static Picture draw(TouchAnswer touch) {
        Svg svg = new Svg();
        double most = touch.objects().stream()
                .flatMapToDouble(
                        o -> DoubleStream.of(o.result().moved(), o.overChip().moved()))
                .filter(Double::isFinite)
                .max()
                .orElse(0);
        Scale x = new Scale(0, 1e3 * Math.max(1.2 * TouchAnswer.KNOCKED, most), LEFT, RIGHT);
        svg.text(0, 12, "pushed before the finger has stopped, mm", "n");
        svg.rect(LEFT + 150, 4, 26, BAR, "bf").text(LEFT + 184, 13, "met over a chip", "l");
        svg.rect(LEFT + 300, 4, 26, BAR, "rub").rect(LEFT + 300, 4, 26, BAR, "o");
        svg.text(LEFT + 334, 13, "met between two", "l");
        double y = 34;
        double top = y;
        for (TouchAnswer.Touched o : touch.objects()) {
            svg.text(0, y + 17, o.name(), "l");
            bar(svg, x, y + 2, o.overChip(), false);
            bar(svg, x, y + 4 + BAR, o.result(), true);
            y += ROW;
        }
        double limit = x.at(1e3 * TouchAnswer.KNOCKED);
        svg.line(limit, top - 4, limit, y, "t dash");
        svg.line(LEFT, y, RIGHT, y, "t");
        for (double v : x.ticks(6)) {
            svg.line(x.at(v), y, x.at(v), y + 4, "t").text(x.at(v), y + 18, Num.text(v, 1), "l", Svg.Anchor.MIDDLE);
        }
        svg.text(LEFT, y + 38, "right of the dashed line it is called knocked away; newtons: greatest force", "lq");
        return new Picture(
                "How far each object is pushed by a finger that stops on touch, pad "
                        + touch.pad().name(),
                900,
                y + 48,
                svg.body());
    }

    private static void bar(Svg svg, Scale x, double y, Push.Result result, boolean between) {
        double moved = result.moved();
        double end = Double.isInfinite(moved) ? RIGHT : x.at(1e3 * moved);
        double width = Math.max(1, end - LEFT);
        svg.rect(LEFT, y, width, BAR, between ? "rub" : "bf");
        if (between) {
            svg.rect(LEFT, y, width, BAR, "o");
        }
        boolean away = moved > TouchAnswer.KNOCKED;
        String words = !result.noticed()
                ? "never felt, pushed for good"
                : (moved == 0 ? "stays" : Num.mm(moved)) + ", " + Num.newtons(result.peak())
                        + (away ? ", knocked away" : "");
        svg.text(end + 8, y + BAR - 1, words, away ? "l b halo" : "l halo");
    }
}
