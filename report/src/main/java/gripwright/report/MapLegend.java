package gripwright.report;

import gripwright.closing.Outcome;
import gripwright.study.CellShare;
import gripwright.study.MapResult;
import java.util.List;
import java.util.Map;

/** What stands beside a map: its ranges, and every outcome with ground, texture, mark, word and count. */
final class MapLegend {
    private final MapResult map;
    private final Svg svg;
    private final double left;
    private final double right;

    MapLegend(MapResult map, Svg svg, double left, double right) {
        this.map = map;
        this.svg = svg;
        this.left = left;
        this.right = right;
    }

    /**
     * @param counts of computed cells by outcome
     * @return y where it ends
     */
    double draw(Map<Outcome, Integer> counts) {
        return legend(facts() + 14, counts);
    }

    private double facts() {
        if (map.computed() == 0) {
            svg.text(left, 40, "\u2026", "big");
            return 64;
        }
        svg.text(left, 40, Num.millimetres(Num.promised(map.captureRadius())), "big");
        double after = left + 0.92 * Svg.textWidth(Num.millimetres(Num.promised(map.captureRadius())), 40) + 10;
        svg.text(after, 40, "mm capture range", "v");
        List<String[]> rows = List.of(
                new String[] {
                    map.hasShares() ? "every run this near is held" : "every placement this near is held", radius(map)
                },
                new String[] {
                    "on average " + Num.percent(map.wantedShare()) + " this near are held",
                    atLeast(map.shareLimitedBySpan()) + Num.mm(Num.promised(map.shareRadius()))
                },
                new String[] {"held area" + interval(), Num.area(map.heldArea())});
        double y = 64;
        for (String[] row : rows) {
            svg.line(left, y, right, y, "rule").text(left, y + 17, row[0], "v");
            svg.text(right, y + 17, row[1], "v b", Svg.Anchor.END);
            y += 25;
        }
        return y;
    }

    /** The capture radius in words; a promise, so rounded down. */
    static String radius(MapResult map) {
        return atLeast(map.captureLimitedBySpan()) + Num.mm(Num.promised(map.captureRadius()));
    }

    /** The true radius may be greater than the map. */
    private static String atLeast(boolean limited) {
        return limited ? "at least " : "";
    }

    private String interval() {
        if (!map.hasShares()) {
            return "";
        }
        return " (95 %: " + Num.area(map.heldAreaInterval().low()) + " to "
                + Num.area(map.heldAreaInterval().high()) + ")";
    }

    /** The ramp of held shares and the mark of cells that depend on the calculation. */
    private double shares(double y) {
        for (int eighths = 0; eighths <= 8; eighths++) {
            svg.rect(left + 12.2 * eighths, y, 12.4, 16, Look.shareGround(eighths / 8.0));
        }
        svg.rect(left, y, 110, 16, "t").text(left + 120, y + 13, "held in 0/8 to 8/8 of its runs", "v");
        svg.text(right, y + 13, Integer.toString(map.count(CellShare::mixed)) + " in part", "v b", Svg.Anchor.END);
        svg.circle(left + 55, y + 31, 4, "und").text(left + 120, y + 35, "model-limited", "v");
        svg.text(right, y + 35, Integer.toString(map.count(CellShare::modelLimited)), "v b", Svg.Anchor.END);
        svg.text(left, y + 53, "outlined: held in half or more; below half, where the nominal run", "lq");
        svg.text(left, y + 68, "fails, the ground is that of its outcome", "lq");
        return y + 76;
    }

    private double legend(double top, Map<Outcome, Integer> counts) {
        int all = map.cells() * map.cells();
        svg.text(left, top + 10, "outcome, placements out of " + Num.text(all, 0), "n");
        double y = top + 20;
        int known = 0;
        for (Outcome outcome : Marks.ORDER) {
            int count = counts.getOrDefault(outcome, 0);
            known += count;
            swatch(outcome, left, y);
            svg.mark(outcome, left + 48, y + 1.5, 17).text(left + 75, y + 14, outcome.words(), "v");
            svg.text(right, y + 14, Integer.toString(count), count > 0 ? "v b" : "v", Svg.Anchor.END);
            y += 24;
        }
        if (known < all && known > 0) {
            svg.rect(left, y, 38, 20, "t").text(left + 75, y + 14, "not computed (stopped)", "v");
            svg.text(right, y + 14, Integer.toString(all - known), "v b", Svg.Anchor.END);
            y += 24;
        }
        return map.hasShares() ? shares(y + 2) : y;
    }

    private void swatch(Outcome outcome, double x, double y) {
        svg.rect(x, y, 38, 20, Look.ground(outcome));
        if (outcome == Outcome.UNDECIDED) {
            svg.rect(x + 11.5, y + 2.5, 15, 15, "und").mark(outcome, x + 13, y + 4, 12);
        } else {
            StringBuilder d = new StringBuilder();
            for (int i = 0; i < 3; i++) {
                d.append(Marks.texture(outcome, x + 1 + 12 * i, y + 4, 12, Math.toRadians(-20)));
            }
            if (d.length() > 0) {
                svg.path(d.toString(), "tx tx-" + Marks.key(outcome));
            }
        }
        svg.rect(x, y, 38, 20, "t");
    }
}
