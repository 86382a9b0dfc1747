package gripwright.report;

import java.util.ArrayList;
import java.util.List;

/**
 * Makes a traced loop fit for drawing: points on straight runs go, and corners that the tracing grid cut off come
 * back where two long straight runs meet.
 */
final class Tidy {
    private final double cell;

    /** @param cell pitch of the tracing grid, in the unit of the points */
    Tidy(double cell) {
        this.cell = cell;
    }

    List<Svg.P> tidy(List<Svg.P> loop) {
        int far = 0;
        for (int i = 1; i < loop.size(); i++) {
            if (loop.get(0).to(loop.get(i)) > loop.get(0).to(loop.get(far))) {
                far = i;
            }
        }
        List<Svg.P> kept = new ArrayList<>();
        thin(loop, 0, far, kept);
        List<Svg.P> round = new ArrayList<>(loop);
        round.add(loop.get(0));
        thin(round, far, loop.size(), kept);
        return corners(kept);
    }

    /** Douglas-Peucker: adds the points kept of first (included) to last (left out). */
    private void thin(List<Svg.P> p, int first, int last, List<Svg.P> kept) {
        double worst = 0.06 * cell;
        int at = -1;
        Svg.P a = p.get(first);
        Svg.P b = p.get(last);
        double n = Math.max(a.to(b), 1e-12);
        for (int i = first + 1; i < last; i++) {
            Svg.P q = p.get(i);
            double off = Math.abs((b.x() - a.x()) * (q.y() - a.y()) - (b.y() - a.y()) * (q.x() - a.x())) / n;
            if (off > worst) {
                worst = off;
                at = i;
            }
        }
        if (at < 0) {
            kept.add(a);
        } else {
            thin(p, first, at, kept);
            thin(p, at, last, kept);
        }
    }

    private List<Svg.P> corners(List<Svg.P> p) {
        int n = p.size();
        if (n < 5) {
            return p;
        }
        List<Svg.P> out = new ArrayList<>();
        boolean skip = false;
        for (int i = 0; i < n; i++) {
            if (skip) {
                skip = false;
                continue;
            }
            Svg.P before = p.get((i + n - 1) % n);
            Svg.P a = p.get(i);
            Svg.P b = p.get((i + 1) % n);
            Svg.P after = p.get((i + 2) % n);
            boolean cut = i + 1 < n && a.to(b) < 1.6 * cell && before.to(a) > 4 * cell && b.to(after) > 4 * cell;
            Svg.P corner = cut ? meeting(before, a, b, after) : a;
            skip = !corner.equals(a);
            out.add(corner);
        }
        return out;
    }

    /** Where the lines before-a and b-after meet, if that is near; else a. */
    private Svg.P meeting(Svg.P before, Svg.P a, Svg.P b, Svg.P after) {
        double ux = a.x() - before.x();
        double uy = a.y() - before.y();
        double vx = after.x() - b.x();
        double vy = after.y() - b.y();
        double cross = ux * vy - uy * vx;
        if (Math.abs(cross) < 0.1 * Math.hypot(ux, uy) * Math.hypot(vx, vy)) {
            return a;
        }
        double t = ((b.x() - a.x()) * vy - (b.y() - a.y()) * vx) / cross;
        Svg.P m = new Svg.P(a.x() + t * ux, a.y() + t * uy);
        return m.to(a) < 1.6 * cell && m.to(b) < 1.6 * cell ? m : a;
    }
}
