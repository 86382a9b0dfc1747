package gripwright.shape;

import gripwright.math.Vec3;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/**
 * Corners of the convex hull of a mesh, at most {@value #MOST}: the farthest corner along a dense set of directions
 * and along every corner's own normal. All hull corners of a convex mesh of up to {@value #EVERY} corners are found;
 * when there are too many, those are kept that change the hull most.
 */
final class HullPoints {
    static final int MOST = 400;
    private static final int EVERY = 4000;
    private static final int DIRECTIONS = 3000;

    private final List<Vec3> points = new ArrayList<>();
    private double gap;

    HullPoints(ClosedSurface surface) {
        List<Vec3> directions = new ArrayList<>(spread(DIRECTIONS));
        if (surface.corners.size() <= EVERY) {
            for (Vec3 normal : surface.cornerNormals) {
                if (normal.length() > 0) {
                    directions.add(normal.unit());
                }
            }
        }
        double[] reach = new double[directions.size()];
        Set<Integer> candidates = new LinkedHashSet<>();
        for (int d = 0; d < reach.length; d++) {
            int far = farthest(surface.corners, directions.get(d));
            reach[d] = directions.get(d).dot(surface.corners.get(far));
            candidates.add(far);
        }
        if (candidates.size() <= MOST) {
            candidates.forEach(i -> points.add(surface.corners.get(i)));
        } else {
            choose(surface.corners, candidates, directions, reach);
        }
    }

    /** Adds the corner along the worst represented direction until there are enough. */
    private void choose(List<Vec3> corners, Set<Integer> candidates, List<Vec3> directions, double[] reach) {
        List<Vec3> pool = candidates.stream().map(corners::get).toList();
        double[] kept = new double[reach.length];
        Arrays.fill(kept, Double.NEGATIVE_INFINITY);
        Vec3 add = pool.get(0);
        while (true) {
            points.add(add);
            int worst = 0;
            for (int d = 0; d < kept.length; d++) {
                kept[d] = Math.max(kept[d], directions.get(d).dot(add));
                if (reach[d] - kept[d] > reach[worst] - kept[worst]) {
                    worst = d;
                }
            }
            gap = reach[worst] - kept[worst];
            if (points.size() == MOST || gap <= 0) {
                return;
            }
            add = pool.get(farthest(pool, directions.get(worst)));
        }
    }

    private static int farthest(List<Vec3> points, Vec3 direction) {
        int far = 0;
        double most = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < points.size(); i++) {
            double along = direction.dot(points.get(i));
            if (along > most) {
                most = along;
                far = i;
            }
        }
        return far;
    }

    /** Evenly spread directions on a golden-angle spiral (common practice, no source), after the six axes. */
    private static List<Vec3> spread(int count) {
        List<Vec3> all = new ArrayList<>(List.of(Vec3.X, Vec3.Y, Vec3.Z));
        for (int i = 0; i < 3; i++) {
            all.add(all.get(i).times(-1));
        }
        double golden = Math.PI * (3 - Math.sqrt(5));
        for (int i = 0; i < count; i++) {
            double z = 1 - (2 * i + 1.0) / count;
            double r = Math.sqrt(1 - z * z);
            all.add(new Vec3(r * StrictMath.cos(golden * i), r * StrictMath.sin(golden * i), z));
        }
        return all;
    }

    List<Vec3> points() {
        return points;
    }

    /** How far the mesh reaches beyond the kept corners along the worst of the directions tried [m]. */
    double gap() {
        return gap;
    }
}
