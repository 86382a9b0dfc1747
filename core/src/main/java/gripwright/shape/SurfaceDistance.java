package gripwright.shape;

import gripwright.math.Vec3;

/**
 * Exact signed distance to a closed surface, by a tree of bounding boxes. The sign comes from the normal of the nearest
 * face, edge or corner (angle-weighted at corners), which is right at edges too. For filling a grid, not for hot loops.
 *
 * <p>Nearest point of a triangle by the regions of its corners and edges: common practice, no source.
 */
final class SurfaceDistance {
    private static final int LEAF = 4;

    private final ClosedSurface surface;
    private final int[] order;
    /** Six bounds per node (low x, y, z, high x, y, z); the children of node i are 2 i + 1 and 2 i + 2. */
    private final double[] bounds;

    private final double[] middles;
    private final double[] points;

    private double px;
    private double py;
    private double pz;
    private double nearest;
    private double share;
    private double signed;
    private int found;

    SurfaceDistance(ClosedSurface surface) {
        this.surface = surface;
        int count = surface.faces.length / 3;
        order = new int[count];
        middles = new double[3 * count];
        points = new double[9 * count];
        for (int t = 0; t < count; t++) {
            order[t] = t;
            for (int k = 0; k < 3; k++) {
                Vec3 corner = surface.corners.get(surface.faces[3 * t + k]);
                points[9 * t + 3 * k] = corner.x();
                points[9 * t + 3 * k + 1] = corner.y();
                points[9 * t + 3 * k + 2] = corner.z();
            }
            for (int axis = 0; axis < 3; axis++) {
                middles[3 * t + axis] = points[9 * t + axis] + points[9 * t + 3 + axis] + points[9 * t + 6 + axis];
            }
        }
        int nodes = 1;
        for (int leaves = 1; leaves * LEAF < count; leaves *= 2) {
            nodes = 2 * nodes + 1;
        }
        bounds = new double[6 * nodes];
        build(0, 0, count);
    }

    private boolean isLeaf(int node) {
        return 12 * node + 6 >= bounds.length;
    }

    private void build(int node, int from, int to) {
        for (int axis = 0; axis < 3; axis++) {
            double low = Double.POSITIVE_INFINITY;
            double high = Double.NEGATIVE_INFINITY;
            for (int i = from; i < to; i++) {
                for (int k = 0; k < 3; k++) {
                    double v = points[9 * order[i] + 3 * k + axis];
                    low = Math.min(low, v);
                    high = Math.max(high, v);
                }
            }
            bounds[6 * node + axis] = low;
            bounds[6 * node + 3 + axis] = high;
        }
        if (isLeaf(node)) {
            return;
        }
        int widest = 0;
        double most = -1;
        for (int axis = 0; axis < 3; axis++) {
            double width = bounds[6 * node + 3 + axis] - bounds[6 * node + axis];
            if (width > most) {
                most = width;
                widest = axis;
            }
        }
        int middle = (from + to) >>> 1;
        split(from, to - 1, middle, widest);
        build(2 * node + 1, from, middle);
        build(2 * node + 2, middle, to);
    }

    /** Quickselect: the middle triangle along an axis to its place, smaller ones before it. */
    private void split(int from, int to, int middle, int axis) {
        int low = from;
        int high = to;
        while (low < high) {
            double pivot = middles[3 * order[(low + high) >>> 1] + axis];
            int i = low;
            int j = high;
            while (i <= j) {
                while (middles[3 * order[i] + axis] < pivot) {
                    i++;
                }
                while (middles[3 * order[j] + axis] > pivot) {
                    j--;
                }
                if (i <= j) {
                    int swap = order[i];
                    order[i++] = order[j];
                    order[j--] = swap;
                }
            }
            if (middle <= j) {
                high = j;
            } else if (middle >= i) {
                low = i;
            } else {
                return;
            }
        }
    }

    /**
     * Signed distance of a point [m]; quickest if the point asked for before lies near.
     *
     * @param roughly whether 1 % too much is good enough: in the middle of a body all triangles are about equally far,
     *     and to find the very nearest would mean to visit them all
     */
    double distance(double x, double y, double z, boolean roughly) {
        px = x;
        py = y;
        pz = z;
        // Of squares: 0.98 for 1 %.
        share = roughly ? 0.98 : 1;
        nearest = Double.POSITIVE_INFINITY;
        triangle(found);
        visit(0, 0, order.length);
        return signed;
    }

    private void visit(int node, int from, int to) {
        if (isLeaf(node)) {
            for (int i = from; i < to; i++) {
                triangle(order[i]);
            }
            return;
        }
        int middle = (from + to) >>> 1;
        double left = boxDistance(2 * node + 1);
        double right = boxDistance(2 * node + 2);
        if (left <= right) {
            visitIfNear(left, 2 * node + 1, from, middle);
            visitIfNear(right, 2 * node + 2, middle, to);
        } else {
            visitIfNear(right, 2 * node + 2, middle, to);
            visitIfNear(left, 2 * node + 1, from, middle);
        }
    }

    private void visitIfNear(double boxDistance, int node, int from, int to) {
        if (boxDistance < nearest * share && from < to) {
            visit(node, from, to);
        }
    }

    private double boxDistance(int node) {
        int at = 6 * node;
        double dx = Math.max(Math.max(bounds[at] - px, px - bounds[at + 3]), 0);
        double dy = Math.max(Math.max(bounds[at + 1] - py, py - bounds[at + 4]), 0);
        double dz = Math.max(Math.max(bounds[at + 2] - pz, pz - bounds[at + 5]), 0);
        return dx * dx + dy * dy + dz * dz;
    }

    private void triangle(int t) {
        int at = 9 * t;
        double ax = points[at];
        double ay = points[at + 1];
        double az = points[at + 2];
        double abx = points[at + 3] - ax;
        double aby = points[at + 4] - ay;
        double abz = points[at + 5] - az;
        double acx = points[at + 6] - ax;
        double acy = points[at + 7] - ay;
        double acz = points[at + 8] - az;
        double apx = px - ax;
        double apy = py - ay;
        double apz = pz - az;
        double abab = abx * abx + aby * aby + abz * abz;
        double abac = abx * acx + aby * acy + abz * acz;
        double acac = acx * acx + acy * acy + acz * acz;
        double d1 = abx * apx + aby * apy + abz * apz;
        double d2 = acx * apx + acy * apy + acz * apz;
        double d3 = d1 - abab;
        double d4 = d2 - abac;
        double d5 = d1 - abac;
        double d6 = d2 - acac;
        double vc = d1 * d4 - d3 * d2;
        double vb = d5 * d2 - d1 * d6;
        double va = d3 * d6 - d5 * d4;
        // v, w: weights of the second and third corner in the nearest point. Feature: 0..2 corners, 3..5 edges, 6 face.
        double v;
        double w;
        int feature;
        if (d1 <= 0 && d2 <= 0) {
            v = 0;
            w = 0;
            feature = 0;
        } else if (d3 >= 0 && d4 <= d3) {
            v = 1;
            w = 0;
            feature = 1;
        } else if (d6 >= 0 && d5 <= d6) {
            v = 0;
            w = 1;
            feature = 2;
        } else if (vc <= 0 && d1 >= 0 && d3 <= 0) {
            v = d1 / (d1 - d3);
            w = 0;
            feature = 3;
        } else if (va <= 0 && d4 - d3 >= 0 && d5 - d6 >= 0) {
            w = (d4 - d3) / (d4 - d3 + d5 - d6);
            v = 1 - w;
            feature = 4;
        } else if (vb <= 0 && d2 >= 0 && d6 <= 0) {
            v = 0;
            w = d2 / (d2 - d6);
            feature = 5;
        } else {
            double all = 1 / (va + vb + vc);
            v = vb * all;
            w = vc * all;
            feature = 6;
        }
        double dx = apx - v * abx - w * acx;
        double dy = apy - v * aby - w * acy;
        double dz = apz - v * abz - w * acz;
        double squared = dx * dx + dy * dy + dz * dz;
        if (squared < nearest) {
            nearest = squared;
            found = t;
            Vec3 n = normal(t, feature);
            double side = dx * n.x() + dy * n.y() + dz * n.z();
            signed = side < 0 ? -Math.sqrt(squared) : Math.sqrt(squared);
        }
    }

    private Vec3 normal(int t, int feature) {
        if (feature < 3) {
            return surface.cornerNormals[surface.faces[3 * t + feature]];
        }
        if (feature < 6) {
            return surface.faceNormals[t].plus(surface.faceNormals[surface.across[3 * t + feature - 3]]);
        }
        return surface.faceNormals[t];
    }
}
