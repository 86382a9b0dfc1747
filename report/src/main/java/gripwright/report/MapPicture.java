package gripwright.report;

import gripwright.closing.ClosingSummary;
import gripwright.closing.Outcome;
import gripwright.model.GraspObject;
import gripwright.model.Grip.Approach;
import gripwright.model.Hand;
import gripwright.study.CellShare;
import gripwright.study.MapResult;
import java.util.EnumMap;
import java.util.Map;
import java.util.TreeMap;

/** A capture map: what happens for each shift of the object, by ground, texture and mark, with the capture circle. */
public final class MapPicture {
    public static final double FIELD = 492;
    public static final double LEFT = 46;
    public static final double TOP = 8;
    private static final double LEGEND = 588;
    private static final double WIDTH = 960;
    private static final double HEIGHT = 556;

    private final MapResult map;
    private final GraspObject object;
    private final double cell;
    /** Picture units per metre. */
    private final double scale;

    private final Svg svg = new Svg();

    private MapPicture(MapResult map, GraspObject object) {
        this.map = map;
        this.object = object;
        this.cell = FIELD / map.cells();
        // The field is half a cell wider than the outermost shifts on each side.
        double pitch = map.cells() > 1 ? map.shift(1) - map.shift(0) : 2 * map.span();
        this.scale = cell / pitch;
    }

    public static Picture draw(MapResult map, Hand hand, GraspObject object) {
        return new MapPicture(map, object).picture(hand);
    }

    private Picture picture(Hand hand) {
        Map<Outcome, Integer> counts = new EnumMap<>(Outcome.class);
        grounds(counts);
        textures();
        heldOutline();
        undecided();
        modelLimited();
        svg.rect(LEFT, TOP, FIELD, FIELD, "o");
        nominal();
        circles();
        axes(hand.grip(map.grip()).approach());
        double y = new MapLegend(map, svg, LEGEND, WIDTH).draw(counts);
        GripSketch.draw(svg, hand, hand.grip(map.grip()), object, LEGEND, y + 12, WIDTH - LEGEND, HEIGHT - y - 14);
        String title = "Capture map of the " + map.object() + " with the grip " + map.grip() + ": outcome for "
                + map.cells() + " by " + map.cells() + " placements";
        return new Picture(title, WIDTH, HEIGHT, svg.body());
    }

    private double x(int column) {
        return LEFT + column * cell;
    }

    private double y(int row) {
        return TOP + (map.cells() - 1 - row) * cell;
    }

    private Svg.P at(double shiftX, double shiftY) {
        return new Svg.P(LEFT + FIELD / 2 + scale * shiftX, TOP + FIELD / 2 - scale * shiftY);
    }

    /** Cells of one ground in one path, neighbours in a row joined. */
    private void grounds(Map<Outcome, Integer> counts) {
        Map<String, StringBuilder> paths = new TreeMap<>();
        int n = map.cells();
        for (int row = 0; row < n; row++) {
            for (int column = 0; column < n; ) {
                String ground = ground(row, column);
                int start = column;
                while (column < n && ground.equals(ground(row, column))) {
                    Outcome outcome = map.outcome(row, column);
                    if (outcome != null) {
                        counts.merge(outcome, 1, Integer::sum);
                    }
                    column++;
                }
                if (!ground.isEmpty()) {
                    paths.computeIfAbsent(ground, k -> new StringBuilder())
                            .append('M')
                            .append(Num.coord(x(start)))
                            .append(' ')
                            .append(Num.coord(y(row)))
                            .append('H')
                            .append(Num.coord(x(column)))
                            .append('V')
                            .append(Num.coord(y(row) + cell))
                            .append('H')
                            .append(Num.coord(x(start)))
                            .append('Z');
                }
            }
        }
        svg.raw("<g class=\"cells\">");
        paths.forEach((ground, d) -> svg.path(d.toString(), ground));
        svg.raw("</g>");
    }

    /**
     * Empty for a cell that is not known. Below a half a share shows only where the nominal run holds: else what happens
     * in that run says more.
     */
    private String ground(int row, int column) {
        Outcome outcome = map.outcome(row, column);
        if (outcome == null) {
            return "";
        }
        return byShare(row, column) ? Look.shareGround(map.share(row, column)) : Look.ground(outcome);
    }

    private boolean byShare(int row, int column) {
        Outcome outcome = map.outcome(row, column);
        return map.hasShares()
                && outcome != null
                && outcome.decided()
                && (outcome == Outcome.HELD || map.share(row, column) >= 0.5);
    }

    /** A ring in each cell whose share depends on the calculation. */
    private void modelLimited() {
        double radius = Math.max(1.6, Math.min(0.22 * cell, 4));
        for (int row = 0; row < map.cells(); row++) {
            for (int column = 0; column < map.cells(); column++) {
                CellShare share = map.cell(row, column);
                if (share != null && share.modelLimited()) {
                    svg.circle(x(column) + cell / 2, y(row) + cell / 2, radius, "und");
                }
            }
        }
    }

    /** In every cell, or in every second or third where cells are too small to carry one. */
    private void textures() {
        int every = (int) Math.ceil(9 / cell);
        double size = Math.min(every * cell, 18);
        Map<Outcome, StringBuilder> paths = new EnumMap<>(Outcome.class);
        int n = map.cells();
        int first = (n / 2) % every;
        for (int row = first; row < n; row += every) {
            for (int column = first; column < n; column += every) {
                ClosingSummary run = map.runs().get(row * n + column);
                if (run == null || byShare(row, column)) {
                    continue;
                }
                double left = x(column) + (cell - size) / 2;
                double top = y(row) + (cell - size) / 2;
                double turn = Math.atan2(run.travelY(), run.travelX());
                paths.computeIfAbsent(run.outcome(), k -> new StringBuilder())
                        .append(Marks.texture(run.outcome(), left, top, size, turn));
            }
        }
        paths.forEach((outcome, d) -> {
            if (d.length() > 0) {
                svg.path(d.toString(), "tx tx-" + Marks.key(outcome));
            }
        });
    }

    private void undecided() {
        int n = map.cells();
        for (int row = 0; row < n; row++) {
            for (int column = 0; column < n; column++) {
                if (map.outcome(row, column) == Outcome.UNDECIDED) {
                    undecided(x(column), y(row));
                }
            }
        }
    }

    /** A framed cell with its mark; never so small that the mark cannot be read. */
    private void undecided(double x, double y) {
        double frame = Math.max(cell - 1.2, 9);
        double mark = Math.min(0.8 * frame, 18);
        double cx = Math.max(LEFT + frame / 2, Math.min(LEFT + FIELD - frame / 2, x + cell / 2));
        double cy = Math.max(TOP + frame / 2, Math.min(TOP + FIELD - frame / 2, y + cell / 2));
        svg.rect(cx - frame / 2, cy - frame / 2, frame, frame, "und");
        svg.mark(Outcome.UNDECIDED, cx - mark / 2, cy - mark / 2, mark);
    }

    private void heldOutline() {
        StringBuilder d = new StringBuilder();
        int n = map.cells();
        for (int row = 0; row < n; row++) {
            for (int column = 0; column < n; column++) {
                if (!held(row, column)) {
                    continue;
                }
                double l = x(column);
                double t = y(row);
                d.append(held(row, column - 1) ? "" : "M" + point(l, t) + "v" + Num.coord(cell));
                d.append(held(row, column + 1) ? "" : "M" + point(l + cell, t) + "v" + Num.coord(cell));
                d.append(held(row + 1, column) ? "" : "M" + point(l, t) + "h" + Num.coord(cell));
                d.append(held(row - 1, column) ? "" : "M" + point(l, t + cell) + "h" + Num.coord(cell));
            }
        }
        if (d.length() > 0) {
            svg.path(d.toString(), "held2").path(d.toString(), "held1");
        }
    }

    private static String point(double x, double y) {
        return Num.coord(x) + " " + Num.coord(y);
    }

    private boolean held(int row, int column) {
        int n = map.cells();
        return row >= 0 && row < n && column >= 0 && column < n && heldMostly(row, column);
    }

    /** With shares at least half of the runs, else the one run. */
    private boolean heldMostly(int row, int column) {
        return map.hasShares() ? map.share(row, column) >= 0.5 : map.outcome(row, column) == Outcome.HELD;
    }

    /** The object itself, to the scale of the map, at its nominal place; named, since it may be as round as the range. */
    private void nominal() {
        Silhouette s = Silhouette.of(object.shape(), object.stance(), View.TOP);
        Svg.P c = at(0, 0);
        svg.open(LEFT, TOP, FIELD, FIELD);
        String d = s.path(scale, c.x() - LEFT, c.y() - TOP);
        svg.path(d, "nomh").path(d, "nom").close();
        double top = c.y() - scale * s.bounds().high();
        if (top > TOP + 20) {
            svg.text(c.x(), top - 5, "the " + map.object() + " itself", "l halo", Svg.Anchor.MIDDLE);
        }
    }

    private void circles() {
        Svg.P c = at(0, 0);
        boolean onHeld = map.captureRadius() > 0;
        svg.line(c.x() - 6, c.y(), c.x() + 6, c.y(), onHeld ? "capl" : "t");
        svg.line(c.x(), c.y() - 6, c.x(), c.y() + 6, onHeld ? "capl" : "t");
        if (!onHeld) {
            return;
        }
        double r = map.captureRadius() * scale;
        svg.circle(c.x(), c.y(), r, "cap");
        double a = Math.toRadians(215);
        Svg.P end = new Svg.P(c.x() + r * Math.cos(a), c.y() - r * Math.sin(a));
        svg.line(c.x(), c.y(), end.x(), end.y(), "capl");
        String value = Num.mm(Num.promised(map.captureRadius()));
        if (r > Svg.textWidth(value, 14) + 14) {
            svg.head(end.x(), end.y(), Math.cos(a), -Math.sin(a), "capa");
            svg.text(
                    c.x() + 0.55 * r * Math.cos(a) - 3,
                    c.y() - 0.55 * r * Math.sin(a) - 6,
                    value,
                    "capt",
                    Svg.Anchor.MIDDLE,
                    -35);
        } else {
            svg.text(c.x(), c.y() - r - 6, value, "n halo", Svg.Anchor.MIDDLE);
        }
    }

    private void axes(Approach approach) {
        double step = Num.nice(map.span() / 2.5);
        int most = (int) Math.floor(map.span() / step + 1e-9);
        for (int i = -most; i <= most; i++) {
            Svg.P p = at(i * step, i * step);
            String value = Num.millimetres(i * step);
            svg.line(p.x(), TOP + FIELD, p.x(), TOP + FIELD + 5, "t");
            svg.text(p.x(), TOP + FIELD + 18, value, "l", Svg.Anchor.MIDDLE);
            svg.line(LEFT, p.y(), LEFT - 5, p.y(), "t");
            svg.text(LEFT - 8, p.y() + 4, value, "l", Svg.Anchor.END);
        }
        svg.text(
                LEFT + FIELD,
                TOP + FIELD + 36,
                "x: object shifted along the closing direction, mm",
                "l",
                Svg.Anchor.END);
        // From the side the hand stands at +y.
        String across = approach == Approach.SIDE ? "towards the palm" : "across the closing direction";
        svg.text(12, TOP, "y: object shifted " + across + ", mm", "l", Svg.Anchor.END, -90);
        svg.scaleBar(LEFT, TOP + FIELD + 31, scale, 90, "");
    }
}
