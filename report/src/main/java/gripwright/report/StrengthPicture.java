package gripwright.report;

import gripwright.closing.PullResult;
import gripwright.study.GripStrength.Figures;
import gripwright.study.GripStrength.OfFinger;
import gripwright.study.GripStrength.OnPipe;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;

/** Grip figures on pipes: one row a pipe, one column a figure; below, each finger alone. */
public final class StrengthPicture {
    private static final double WIDTH = 960;
    private static final double NAMES = 240;
    private static final double ROW = 44;
    private static final double FINGER_ROW = 24;
    /** Kept free at the end of a bar for its number. */
    private static final double ROOM = 130;

    private record Column(String title, String unit, ToDoubleFunction<OnPipe> value, ToDoubleFunction<OnPipe> angle) {}

    private static final List<Column> COLUMNS = List.of(
            new Column("squeeze of the split pipe", "N", OnPipe::squeeze, OnPipe::splitNormal),
            new Column("pull along the axis", "N", p -> peak(p.pull()), p -> Double.NaN),
            new Column("twist about the axis", "N\u00b7m", p -> peak(p.twist()), p -> Double.NaN));

    private final Svg svg = new Svg();
    private final Figures figures;

    private StrengthPicture(Figures figures) {
        this.figures = figures;
    }

    public static Picture draw(Figures figures) {
        return new StrengthPicture(figures).picture();
    }

    private static double peak(Optional<PullResult> test) {
        return test.map(PullResult::peak).orElse(Double.NaN);
    }

    private Picture picture() {
        double width = (WIDTH - NAMES) / COLUMNS.size();
        double y = 26;
        svg.text(0, 14, "upright pipe, outside", "n");
        for (int k = 0; k < COLUMNS.size(); k++) {
            svg.text(NAMES + k * width, 14, COLUMNS.get(k).title(), "n");
        }
        svg.line(0, y, WIDTH, y, "t");
        for (OnPipe p : figures.pipes()) {
            row(p, y, width);
            y += ROW;
            svg.line(0, y, WIDTH, y, "rule");
        }
        y += 34;
        svg.text(0, y - 8, "finger alone, on a pipe of " + figures.fingerPipe().size() + " that does not move", "n");
        double most = figures.fingers().stream()
                .mapToDouble(OfFinger::force)
                .filter(f -> f > 0)
                .max()
                .orElse(1);
        for (OfFinger f : figures.fingers()) {
            svg.text(0, y + 15, f.finger(), "v");
            if (Double.isNaN(f.force())) {
                svg.text(NAMES, y + 15, f.outcome().words(), "lq");
            } else {
                bar(NAMES, y + 5, (width - ROOM) * f.force() / most, Num.newtons(f.force()));
            }
            y += FINGER_ROW;
        }
        svg.text(
                0,
                y + 20,
                "Bars to the greatest of their column. The squeeze is that of the cut whose normal, from the closing"
                        + " direction, is given.",
                "lq");
        String title = "Grip figures on pipes of " + figures.surface() + " with the grip " + figures.grip();
        return new Picture(title, WIDTH, y + 28, svg.body());
    }

    private void row(OnPipe p, double y, double width) {
        svg.mark(p.outcome(), 0, y + 9, 15);
        svg.text(22, y + 21, p.pipe().size() + ", " + Num.text(1e3 * p.pipe().diameter(), 1) + " mm", "v");
        svg.text(22, y + 36, p.outcome().words(), "lq");
        for (int k = 0; k < COLUMNS.size(); k++) {
            Column column = COLUMNS.get(k);
            double value = column.value().applyAsDouble(p);
            if (Double.isNaN(value)) {
                svg.text(NAMES + k * width, y + 21, "\u2013", "lq");
                continue;
            }
            double most = figures.pipes().stream()
                    .mapToDouble(column.value())
                    .filter(v -> v > 0)
                    .max()
                    .orElse(1);
            double angle = column.angle().applyAsDouble(p);
            bar(
                    NAMES + k * width,
                    y + 10,
                    (width - ROOM) * value / most,
                    Num.unit(Num.digits(value, 2), column.unit())
                            + (Double.isNaN(angle) ? "" : ", " + Num.degrees(angle)));
            how(k == 1 ? p.pull() : k == 2 ? p.twist() : Optional.empty(), NAMES + k * width, y + 36);
        }
    }

    private void how(Optional<PullResult> test, double x, double y) {
        test.ifPresent(t -> svg.text(x, y, t.kind().words(), "lq"));
    }

    private void bar(double x, double y, double length, String words) {
        svg.rect(x, y, Math.max(0.8, length), 12, "bf");
        svg.text(x + Math.max(0.8, length) + 6, y + 11, words, "l");
    }
}
