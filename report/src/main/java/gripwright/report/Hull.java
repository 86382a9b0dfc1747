package gripwright.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Convex hull of points in the plane (Andrew's monotone chain). */
final class Hull {
    private Hull() {}

    static List<Svg.P> of(List<Svg.P> points) {
        List<Svg.P> p = points.stream()
                .distinct()
                .sorted(Comparator.comparingDouble(Svg.P::x).thenComparingDouble(Svg.P::y))
                .toList();
        if (p.size() < 3) {
            return p;
        }
        List<Svg.P> hull = new ArrayList<>(chain(p));
        List<Svg.P> back = new ArrayList<>(p);
        java.util.Collections.reverse(back);
        hull.addAll(chain(back));
        return hull;
    }

    /** One side of the hull, its last point left out. */
    private static List<Svg.P> chain(List<Svg.P> p) {
        List<Svg.P> c = new ArrayList<>();
        for (Svg.P q : p) {
            while (c.size() >= 2 && cross(c.get(c.size() - 2), c.get(c.size() - 1), q) <= 0) {
                c.remove(c.size() - 1);
            }
            c.add(q);
        }
        return c.subList(0, c.size() - 1);
    }

    private static double cross(Svg.P o, Svg.P a, Svg.P b) {
        return (a.x() - o.x()) * (b.y() - o.y()) - (a.y() - o.y()) * (b.x() - o.x());
    }
}
