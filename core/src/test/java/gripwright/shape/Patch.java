package gripwright.shape;

import gripwright.math.Vec3;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;

/**
 * A piece of a surface as a map from the unit square (beyond it the map stops at the border or goes on round): an
 * independent description of a shape, with a search for the
 * nearest point that knows nothing of signed distances.
 */
@FunctionalInterface
interface Patch {
    Vec3 at(double u, double v);

    /** Unsigned distance to the nearest point of any patch, by grid and repeated refinement [m]. */
    static double nearest(List<Patch> patches, Vec3 p) {
        double best = Double.POSITIVE_INFINITY;
        for (Patch patch : patches) {
            best = Math.min(best, patch.nearest(p));
        }
        return best;
    }

    private double nearest(Vec3 p) {
        int cells = 24;
        double u = 0;
        double v = 0;
        double best = Double.POSITIVE_INFINITY;
        for (int i = 0; i <= cells; i++) {
            for (int j = 0; j <= cells; j++) {
                double d = at((double) i / cells, (double) j / cells).minus(p).length();
                if (d < best) {
                    best = d;
                    u = (double) i / cells;
                    v = (double) j / cells;
                }
            }
        }
        // Straight ahead first: among equals, as beyond a border, the search stays where it is.
        int[] tries = {0, -1, 1, -2, 2};
        double step = 0.5 / cells;
        while (step > 1e-8) {
            double cu = u;
            double cv = v;
            double before = best;
            for (int i : tries) {
                for (int j : tries) {
                    double d = at(cu + i * step, cv + j * step).minus(p).length();
                    if (d < best) {
                        best = d;
                        u = cu + i * step;
                        v = cv + j * step;
                    }
                }
            }
            step *= best < before ? 1 : 0.6;
        }
        return best;
    }

    static double clamp(double u) {
        return Math.min(Math.max(u, 0), 1);
    }

    static Patch torus(double ring, double tube) {
        return (u, v) -> {
            double r = ring + tube * Math.cos(2 * Math.PI * u);
            return new Vec3(
                    r * Math.cos(2 * Math.PI * v), r * Math.sin(2 * Math.PI * v), tube * Math.sin(2 * Math.PI * u));
        };
    }

    static List<Patch> ellipsoid(Vec3 centre, double a, double b, double c) {
        return List.of((u, v) -> centre.plus(new Vec3(
                a * Math.sin(Math.PI * u) * Math.cos(2 * Math.PI * v),
                b * Math.sin(Math.PI * u) * Math.sin(2 * Math.PI * v),
                c * Math.cos(Math.PI * u))));
    }

    /** The outline (rho(u), z(u)) turned about z. */
    static Patch turned(DoubleUnaryOperator rho, DoubleUnaryOperator z) {
        return (u, v) -> {
            double in = clamp(u);
            double r = rho.applyAsDouble(in);
            return new Vec3(r * Math.cos(2 * Math.PI * v), r * Math.sin(2 * Math.PI * v), z.applyAsDouble(in));
        };
    }

    /** A straight piece of outline. */
    static Patch cone(double r1, double z1, double r2, double z2) {
        return turned(u -> r1 + u * (r2 - r1), u -> z1 + u * (z2 - z1));
    }

    /** A circular piece of outline about (r, z), from angle to angle above the rho axis. */
    static Patch arc(double r, double z, double radius, double from, double to) {
        return turned(
                u -> r + radius * Math.cos(from + u * (to - from)), u -> z + radius * Math.sin(from + u * (to - from)));
    }

    static List<Patch> box(double a, double b, double c, double e) {
        List<Patch> all = new ArrayList<>();
        double[] half = {a, b, c};
        for (int axis = 0; axis < 3; axis++) {
            int n = axis;
            int p = (axis + 1) % 3;
            int q = (axis + 2) % 3;
            for (int s = -1; s <= 1; s += 2) {
                int sign = s;
                all.add((u, v) ->
                        vector(n, sign * half[n], p, (2 * u - 1) * (half[p] - e), q, (2 * v - 1) * (half[q] - e)));
                for (int t = -1; t <= 1; t += 2) {
                    int other = t;
                    all.add((u, v) -> vector(
                            n,
                            (2 * u - 1) * (half[n] - e),
                            p,
                            sign * (half[p] - e + e * Math.cos(Math.PI / 2 * v)),
                            q,
                            other * (half[q] - e + e * Math.sin(Math.PI / 2 * v))));
                }
            }
        }
        for (int corner = 0; corner < 8; corner++) {
            Vec3 sign = new Vec3((corner & 1) * 2 - 1, (corner & 2) - 1, (corner & 4) / 2 - 1);
            all.add((u, v) -> {
                double up = Math.PI / 2 * u;
                double turn = Math.PI / 2 * v;
                return new Vec3(
                        sign.x() * (a - e + e * Math.sin(up) * Math.cos(turn)),
                        sign.y() * (b - e + e * Math.sin(up) * Math.sin(turn)),
                        sign.z() * (c - e + e * Math.cos(up)));
            });
        }
        return all.stream().map(p -> (Patch) (u, v) -> p.at(clamp(u), clamp(v))).toList();
    }

    private static Vec3 vector(int i, double vi, int j, double vj, int k, double vk) {
        double[] v = new double[3];
        v[i] = vi;
        v[j] = vj;
        v[k] = vk;
        return new Vec3(v[0], v[1], v[2]);
    }
}
