package gripwright.report;

import gripwright.model.Need;
import gripwright.model.Placement;
import gripwright.model.Scatter;
import gripwright.study.Placed;
import gripwright.study.TrialPlan;
import gripwright.study.TrialPlan.Part;
import gripwright.study.TrialPlan.Planned;
import java.util.List;

/** A plan of trials: which object comes when, by which hand; and where each is to be put. */
public final class PlanPicture {
    private static final double WIDTH = 960;
    private static final double NAMES = 200;
    private static final double ROW = 20;
    private static final double PANEL = 148;
    private static final int PANELS = 6;
    private static final double WIDEST = 14;

    private final Svg svg = new Svg();
    private final TrialPlan plan;
    private final Placement placement;

    private PlanPicture(TrialPlan plan, Need need) {
        this.plan = plan;
        this.placement = need.placement();
    }

    public static Picture draw(TrialPlan plan, Need need) {
        return new PlanPicture(plan, need).picture();
    }

    private Picture picture() {
        double y = order();
        if (plan.trials().stream().anyMatch(t -> t.placed().isPresent())) {
            y = places(y + 34);
        }
        return new Picture(
                "Order of " + plan.trials().size() + " trials, and where each object is put", WIDTH, y, svg.body());
    }

    private double order() {
        svg.text(0, 14, "When", "n");
        int n = Math.max(1, plan.trials().size());
        double step = Math.min(WIDEST, (WIDTH - NAMES - 8) / n);
        double top = 36;
        double bottom = top + ROW * plan.parts().size();
        int day = 0;
        int block = 0;
        for (Planned t : plan.trials()) {
            double x = NAMES + (t.number() - 1) * step;
            if (t.day() != day) {
                svg.line(x, top - 12, x, bottom, "t").text(x + 3, top - 6, "day " + t.day(), "lq");
            } else if (t.block() != block) {
                svg.line(x, top, x, bottom, "gl");
            }
            day = t.day();
            block = t.block();
        }
        double y = top;
        for (Part part : plan.parts()) {
            svg.line(0, y, NAMES + n * step, y, "rule");
            svg.text(0, y + 14, Wrap.shortened(part.object() + ", " + part.grip(), 30), "v");
            for (Planned t : plan.trials()) {
                if (t.object().equals(part.object()) && t.grip().equals(part.grip())) {
                    mark(t.hand(), NAMES + (t.number() - 0.5) * step, y + ROW / 2, Math.min(4, 0.42 * step + 1));
                }
            }
            y += ROW;
        }
        svg.line(0, y, NAMES + n * step, y, "t");
        double x = NAMES;
        for (String hand : plan.hands()) {
            mark(hand, x + 5, y + 15, 4);
            svg.text(x + 15, y + 19, Wrap.shortened(hand, 40), "l");
            x += 40 + Svg.textWidth(Wrap.shortened(hand, 40), 12);
        }
        svg.text(0, y + 19, "trial 1 to " + plan.trials().size() + ", left to right", "lq");
        return y + 26;
    }

    private void mark(String hand, double x, double y, double r) {
        switch (plan.hands().indexOf(hand)) {
            case 0 -> svg.circle(x, y, r, "mf");
            case 1 -> svg.circle(x, y, r, "und");
            default -> svg.rect(x - r, y - r, 2 * r, 2 * r, "und");
        }
    }

    private double places(double top) {
        svg.text(0, top, "Where: off the nominal place, seen from above", "n");
        double reach = reach();
        double per = (PANEL / 2 - 12) / reach;
        double gap = (WIDTH - PANELS * PANEL) / (PANELS - 1);
        double y = top + 12;
        int i = 0;
        for (Part part : plan.parts()) {
            if (i > 0 && i % PANELS == 0) {
                y += PANEL + 34;
            }
            panel(part, i % PANELS * (PANEL + gap), y, per);
            i++;
        }
        y += PANEL + 48;
        svg.scaleBar(
                0, y, per, 70, ", 1 and 2 standard deviations of the need's scatter dashed; strokes show the turn");
        return y + 14;
    }

    private double reach() {
        double far = 2 * Math.max(deviation(placement.x()), deviation(placement.y()));
        for (Planned t : plan.trials()) {
            Placed p = t.placed().orElse(null);
            far = p == null ? far : Math.max(far, Math.max(Math.abs(p.x()), Math.abs(p.y())));
        }
        return Math.max(1e-3, 1.08 * far);
    }

    private static double deviation(Scatter scatter) {
        return scatter.law() == Scatter.Law.UNIFORM ? scatter.size() / Math.sqrt(3) : scatter.size();
    }

    private void panel(Part part, double left, double top, double per) {
        double cx = left + PANEL / 2;
        double cy = top + PANEL / 2;
        svg.rect(left, top, PANEL, PANEL, "bt");
        svg.line(left, cy, left + PANEL, cy, "gl").line(cx, top, cx, top + PANEL, "gl");
        for (int k = 1; k <= 2; k++) {
            ellipse(cx, cy, k * per * deviation(placement.x()), k * per * deviation(placement.y()));
        }
        List<Planned> own = plan.trials().stream()
                .filter(t -> t.hand().equals(plan.hands().get(0)))
                .filter(t -> t.object().equals(part.object()) && t.grip().equals(part.grip()))
                .toList();
        for (Planned t : own) {
            Placed p = t.placed().orElse(null);
            if (p != null) {
                double x = cx + per * p.x();
                double y = cy - per * p.y();
                double dx = 7 * Math.cos(p.turn());
                double dy = 7 * Math.sin(p.turn());
                svg.line(x, y, x + dx, y - dy, "t").circle(x, y, 2.6, "mf");
            }
        }
        svg.text(left, top + PANEL + 14, Wrap.shortened(part.object(), 21), "l");
        svg.text(left, top + PANEL + 28, Wrap.shortened(part.grip() + ", " + part.perHand() + " each", 21), "lq");
    }

    private void ellipse(double cx, double cy, double rx, double ry) {
        if (rx > 0 && ry > 0) {
            svg.path(
                    "M" + Num.coord(cx - rx) + " " + Num.coord(cy) + "A" + Num.coord(rx) + " " + Num.coord(ry)
                            + " 0 1 0 " + Num.coord(cx + rx) + " " + Num.coord(cy) + "A" + Num.coord(rx) + " "
                            + Num.coord(ry) + " 0 1 0 " + Num.coord(cx - rx) + " " + Num.coord(cy),
                    "h d dash");
        }
    }
}
