package gripwright.report;

import gripwright.closing.Outcome;
import gripwright.model.GraspObject;
import gripwright.model.Need;
import gripwright.study.MapResult;
import gripwright.study.TrialsResult;
import gripwright.study.Verdict;
import java.util.ArrayList;
import java.util.List;

/** All objects in a row with what became of each: the answer before any word is read. */
final class GlancePicture {
    private static final double WIDTH = 1012;
    private static final double SLOT = 126;
    private static final double TALL = 96;

    private GlancePicture() {}

    static Picture draw(ReportInput input) {
        Need need = input.project().need();
        int perRow = perRow(need.objects().size());
        List<Silhouette> fronts = new ArrayList<>();
        Box2 most = Box2.NOTHING;
        for (GraspObject o : need.objects()) {
            Silhouette s = Silhouette.of(o.shape(), o.stance(), View.FRONT);
            fronts.add(s);
            most = most.with(0, 0).with(s.bounds().width(), s.bounds().height());
        }
        double scale = Math.min(TALL / Math.max(most.height(), 1e-3), (SLOT - 22) / Math.max(most.width(), 1e-3));
        Svg svg = new Svg();
        double rowHeight = scale * most.height() + 110;
        int n = need.objects().size();
        for (int i = 0; i < n; i++) {
            double x = i % perRow * SLOT;
            int row = i / perRow;
            double table = row * rowHeight + scale * most.height() + 6;
            if (i % perRow == 0) {
                double length = Math.min(perRow, n - i) * SLOT - 16;
                svg.rect(0, table, length, 6, "ground").line(0, table, length, table, "o");
            }
            Box2 b = fronts.get(i).bounds();
            double cx = x + (SLOT - 16) / 2 - scale * (b.left() + b.right()) / 2;
            svg.path(fronts.get(i).path(scale, cx, table + scale * b.low()), "o objf");
            fate(svg, input, need.objects().get(i), x, table + 24);
        }
        int rows = (n + perRow - 1) / perRow;
        double end = rows * rowHeight;
        if (input.trials().isPresent()) {
            String note = "bar: share held with the best grip; bracket: 95\u00a0% interval; broken line: the wanted "
                    + Num.percent(need.wantedSuccess()) + "; off by: how far the object may be from its place";
            svg.text(0, end + 8, note, "lq");
            end += 14;
        }
        return new Picture("What became of each object, drawn to one scale", WIDTH, end, svg.body());
    }

    /** As many objects in every row, within one. */
    private static int perRow(int objects) {
        int most = (int) (WIDTH / SLOT);
        int rows = (objects + most - 1) / most;
        return (objects + rows - 1) / rows;
    }

    private static void fate(Svg svg, ReportInput input, GraspObject object, double x, double y) {
        int letters = (int) ((SLOT - 12) / (0.56 * 13));
        String name = Wrap.shortened(object.name(), letters);
        svg.text(x, y, name, "n");
        double line = y + 8;
        TrialsResult.Best best = input.trials().stream()
                .flatMap(t -> t.best().stream())
                .filter(b -> b.object().equals(object.name()))
                .findFirst()
                .orElse(null);
        if (best != null && best.success().trials() > 0) {
            double wanted = input.project().need().wantedSuccess();
            ShareBar.draw(
                    svg,
                    x,
                    line,
                    66,
                    best.success().share(),
                    best.success().low(),
                    best.success().high(),
                    wanted,
                    Verdict.of(best.success(), wanted) == Verdict.REACHES);
            svg.text(x + 73, line + 16, Num.share(best.success().share()), "n");
            svg.text(x, line + 36, best.grip() + ", " + ShareBar.words(Verdict.of(best.success(), wanted)), "lq");
            line += 52;
        } else {
            line = closings(svg, input, object, x, line + 14);
        }
        for (MapResult map : input.maps()) {
            if (map.object().equals(object.name())) {
                svg.text(x, line, "off by " + MapLegend.radius(map), "l");
                line += 15;
            }
        }
    }

    /** Without trials: how the runs shown ended. */
    private static double closings(Svg svg, ReportInput input, GraspObject object, double x, double y) {
        double line = y;
        for (ReportInput.Closing c : input.closings()) {
            if (c.object().equals(object.name()) && line < y + 40) {
                Outcome outcome = c.detail().summary().outcome();
                svg.mark(outcome, x, line - 11, 13).text(x + 17, line, outcome.words(), "l");
                line += 16;
            }
        }
        return line;
    }
}
