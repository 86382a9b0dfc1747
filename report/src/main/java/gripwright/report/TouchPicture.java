package gripwright.report;

import gripwright.pad.TouchAnswer;

/** How far each object is pushed before the finger has stopped. */
public final class TouchPicture {
    private static final double LEFT = 190;
    private static final double RIGHT = 700;
    private static final double ROW = 26;

    private TouchPicture() {}

    public static Picture draw(TouchAnswer touch) {
        Svg svg = new Svg();
        double most = touch.objects().stream()
                .mapToDouble(o -> o.result().moved())
                .filter(Double::isFinite)
                .max()
                .orElse(0);
        Scale x = new Scale(0, 1e3 * Math.max(1.2 * TouchAnswer.KNOCKED, most), LEFT, RIGHT);
        svg.text(0, 12, "pushed before the finger has stopped, mm", "n");
        double y = 30;
        double top = y;
        for (TouchAnswer.Touched o : touch.objects()) {
            double moved = o.result().moved();
            svg.text(0, y + 13, o.name(), "l");
            double end = Double.isInfinite(moved) ? RIGHT : x.at(1e3 * moved);
            svg.rect(LEFT, y + 3, Math.max(0.8, end - LEFT), 12, "bf");
            String words = Double.isInfinite(moved)
                    ? "never felt, pushed for good"
                    : Num.mm(moved) + ", " + Num.newtons(o.result().peak()) + (o.knocked() ? ", knocked away" : "");
            svg.text(end + 8, y + 13, words, o.knocked() ? "l b halo" : "l halo");
            y += ROW;
        }
        svg.line(x.at(1e3 * TouchAnswer.KNOCKED), top - 6, x.at(1e3 * TouchAnswer.KNOCKED), y, "t dash");
        svg.line(LEFT, y, RIGHT, y, "t");
        for (double v : x.ticks(6)) {
            svg.line(x.at(v), y, x.at(v), y + 4, "t").text(x.at(v), y + 18, Num.text(v, 1), "l", Svg.Anchor.MIDDLE);
        }
        svg.text(LEFT, y + 38, "right of the dashed line it is called knocked away", "lq");
        return new Picture("How far each object is pushed by a finger that stops on touch", 900, y + 48, svg.body());
    }
}
