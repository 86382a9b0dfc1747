package gripwright.contact;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Random;

/**
 * Convex hull of points in a few dimensions, seen from the origin: the facet that a ray meets, and the nearest one.
 *
 * <p>Ray: the linear program max s, s u = sum a_i w_i, sum a_i = 1, a_i >= 0, by the simplex method; its dual is the
 * facet v . w = t. Going on along the normal of the facet met never leads to a farther one, and ends where the foot of
 * the perpendicular lies on its facet; from many directions the least is taken. A cross of points very near the origin
 * is added so that the origin is always inside: a hull whose distance is no more than that cross's is not closed.
 */
final class WrenchHull {
    /** Half the span of the cross. */
    private static final double CROSS = 1e-7;
    /** Distance up to which the origin counts as not inside. */
    static final double NOT_CLOSED = 2e-7;

    private static final int STARTS = 160;
    private static final int MOST_PIVOTS = 500;
    private static final int MOST_FACETS = 60;
    private static final double OPTIMAL = 1e-13;

    private final List<double[]> points = new ArrayList<>();
    private final int d;

    WrenchHull(List<double[]> wrenches, int dimension) {
        d = dimension;
        for (int k = 0; k < d; k++) {
            for (int sign = 1; sign >= -1; sign -= 2) {
                double[] p = new double[d];
                p[k] = sign * CROSS;
                points.add(p);
            }
        }
        points.addAll(wrenches);
    }

    /** Radius of the largest ball round the origin inside the hull; 0 if the origin is not inside. */
    double largestBall() {
        double least = distance(nearestDirections(1).get(0));
        return least > NOT_CLOSED ? least : 0;
    }

    /** Adds a point if it lies beyond a facet of the stated normal and distance. */
    boolean addIfBeyond(double facet, double[] point, double[] normal) {
        if (dot(point, normal) > facet + 1e-13) {
            points.add(point);
            return true;
        }
        return false;
    }

    /** Farthest reach of the hull in a direction of length 1. */
    double distance(double[] u) {
        double most = Double.NEGATIVE_INFINITY;
        for (double[] p : points) {
            most = Math.max(most, dot(p, u));
        }
        return most;
    }

    /** Different normals of near facets found from many starts, the nearest first; at most {@code count}. */
    List<double[]> nearestDirections(int count) {
        Random random = new Random(20261125);
        List<double[]> found = new ArrayList<>();
        for (int i = 0; i < STARTS + 2 * d; i++) {
            double[] u = new double[d];
            for (int k = 0; k < d; k++) {
                // the axes themselves a little off, since exact symmetry makes ties
                u[k] = i < 2 * d
                        ? (i / 2 == k ? (i % 2 == 0 ? 1 : -1) : 1e-3 * random.nextGaussian())
                        : random.nextGaussian();
            }
            double[] n = descend(unit(u));
            if (found.stream().noneMatch(other -> dot(other, n) > 1 - 1e-9)) {
                found.add(n);
            }
        }
        found.sort(Comparator.comparingDouble(this::distance));
        return found.subList(0, Math.min(count, found.size()));
    }

    /** Normal of a facet at which going on along the normal ends. */
    double[] descend(double[] start) {
        double[] u = start;
        double at = distance(u);
        for (int i = 0; i < MOST_FACETS; i++) {
            double[] next = facet(u);
            double there = distance(next);
            if (!(there < at - 1e-14)) {
                return there < at ? next : u;
            }
            u = next;
            at = there;
        }
        return u;
    }

    /** Normal, of length 1, of the facet that the ray from the origin along u meets. */
    private double[] facet(double[] u) {
        int[] basis = new int[d];
        for (int k = 0; k < d; k++) {
            basis[k] = 2 * k + (u[k] >= 0 ? 0 : 1);
        }
        double[] v = new double[d];
        for (int pivot = 0; pivot < MOST_PIVOTS; pivot++) {
            double t = plane(basis, u, v);
            int enter = entering(v, t, pivot > MOST_PIVOTS / 2);
            if (enter < 0 || !exchange(basis, u, enter)) {
                break;
            }
        }
        return unit(v);
    }

    /** The plane v . w = t through the basis points with v . u = 1. @return t */
    private double plane(int[] basis, double[] u, double[] v) {
        double[][] a = new double[d + 1][d + 2];
        for (int i = 0; i < d; i++) {
            System.arraycopy(points.get(basis[i]), 0, a[i], 0, d);
            a[i][d] = -1;
        }
        System.arraycopy(u, 0, a[d], 0, d);
        a[d][d + 1] = 1;
        double[] x = solve(a);
        System.arraycopy(x, 0, v, 0, d);
        return x[d];
    }

    /** The point farthest beyond the plane; the first one beyond it if ties have to be broken; -1 = none. */
    private int entering(double[] v, double t, boolean firstOne) {
        double most = OPTIMAL * Math.max(1, Math.sqrt(dot(v, v)));
        int enter = -1;
        for (int j = 0; j < points.size(); j++) {
            double beyond = dot(v, points.get(j)) - t;
            if (beyond > most) {
                most = beyond;
                enter = j;
                if (firstOne) {
                    return enter;
                }
            }
        }
        return enter;
    }

    /** Lets a point into the basis in place of the one that first comes to weight 0. */
    private boolean exchange(int[] basis, double[] u, int enter) {
        double[] weights = solve(columns(basis, u, null));
        double[] change = solve(columns(basis, u, points.get(enter)));
        int leave = -1;
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < d; i++) {
            if (change[i] > 1e-12) {
                double ratio = Math.max(0, weights[i]) / change[i];
                if (ratio < least || (ratio == least && leave >= 0 && basis[i] < basis[leave])) {
                    least = ratio;
                    leave = i;
                }
            }
        }
        if (leave < 0) {
            return false;
        }
        basis[leave] = enter;
        return true;
    }

    /** Rows sum a_i w_i - s u = right, sum a_i = 1, for the ray's own point (right 0) or a point to enter. */
    private double[][] columns(int[] basis, double[] u, double @org.jspecify.annotations.Nullable [] enter) {
        double[][] a = new double[d + 1][d + 2];
        for (int row = 0; row < d; row++) {
            for (int i = 0; i < d; i++) {
                a[row][i] = points.get(basis[i])[row];
            }
            a[row][d] = -u[row];
            a[row][d + 1] = enter == null ? 0 : enter[row];
        }
        for (int i = 0; i < d; i++) {
            a[d][i] = 1;
        }
        a[d][d + 1] = 1;
        return a;
    }

    /** Gauss with exchange of rows, rows first brought to like size. */
    private static double[] solve(double[][] a) {
        int n = a.length;
        for (double[] row : a) {
            double most = 0;
            for (int k = 0; k < n; k++) {
                most = Math.max(most, Math.abs(row[k]));
            }
            for (int k = 0; k <= n; k++) {
                row[k] /= most == 0 ? 1 : most;
            }
        }
        for (int c = 0; c < n; c++) {
            int best = c;
            for (int i = c + 1; i < n; i++) {
                if (Math.abs(a[i][c]) > Math.abs(a[best][c])) {
                    best = i;
                }
            }
            double[] row = a[best];
            a[best] = a[c];
            a[c] = row;
            for (int i = 0; i < n; i++) {
                if (i != c && a[i][c] != 0) {
                    double factor = a[i][c] / row[c];
                    for (int k = c; k <= n; k++) {
                        a[i][k] -= factor * row[k];
                    }
                }
            }
        }
        double[] x = new double[n];
        for (int i = 0; i < n; i++) {
            x[i] = a[i][n] / a[i][i];
        }
        return x;
    }

    private static double[] unit(double[] v) {
        double size = Math.sqrt(dot(v, v));
        double[] out = new double[v.length];
        for (int i = 0; i < out.length; i++) {
            out[i] = v[i] / size;
        }
        return out;
    }

    private static double dot(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += a[i] * b[i];
        }
        return sum;
    }
}
