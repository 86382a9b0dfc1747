package gripwright.report;

import gripwright.study.Refinement;
import java.util.List;
import java.util.function.ToDoubleFunction;

/** What a finer calculation changes at the end of one closing: one row a choice, one column a quantity. */
public final class RefinePicture {
    private static final double WIDTH = 960;
    private static final double NAMES = 250;
    private static final double ROW = 42;

    private RefinePicture() {}

    /** A column: its title, the change in the unit shown, the decimals. */
    private record Column(String title, ToDoubleFunction<Refinement> change, int decimals) {}

    private static final List<Column> COLUMNS = List.of(
            new Column("object moves, mm", r -> 1e3 * r.moved(), 2),
            new Column("object turns, deg", r -> Math.toDegrees(r.turned()), 2),
            new Column("a joint turns, deg", r -> Math.toDegrees(r.joint()), 2),
            new Column("force, N", Refinement::force, 2),
            new Column("pressure, kPa", r -> 1e-3 * r.pressure(), 1));

    public static Picture draw(String object, List<Refinement> refinements) {
        Svg svg = new Svg();
        double width = (WIDTH - NAMES) / COLUMNS.size();
        double y = 30;
        for (int k = 0; k < COLUMNS.size(); k++) {
            svg.text(NAMES + k * width, 16, COLUMNS.get(k).title(), "n");
        }
        svg.line(0, y, WIDTH, y, "t");
        for (Refinement r : refinements) {
            svg.text(0, y + 18, r.choice(), "n");
            svg.mark(r.finer().summary().outcome(), 0, y + 23, 13);
            svg.text(18, y + 34, r.finer().summary().outcome().words() + (r.turns() ? ": another outcome" : ""), "v");
            for (int k = 0; k < COLUMNS.size(); k++) {
                Column column = COLUMNS.get(k);
                double most = refinements.stream()
                        .mapToDouble(column.change())
                        .map(Math::abs)
                        .max()
                        .orElse(0);
                double value = column.change().applyAsDouble(r);
                double length = most > 0 ? (width - 56) * Math.abs(value) / most : 0;
                double left = NAMES + k * width;
                svg.rect(left, y + 12, Math.max(0.8, length), 12, "bf");
                svg.text(left + Math.max(0.8, length) + 5, y + 23, Num.text(value, column.decimals()), "l");
            }
            y += ROW;
            svg.line(0, y, WIDTH, y, "rule");
        }
        svg.text(0, y + 18, "Change against the usual calculation; bars to the greatest of their column.", "lq");
        String title = "What a finer calculation changes when the hand closes on the " + object;
        return new Picture(title, WIDTH, y + 26, svg.body());
    }
}
