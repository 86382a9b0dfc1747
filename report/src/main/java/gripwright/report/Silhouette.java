package gripwright.report;

import gripwright.math.Rotation;
import gripwright.math.Vec3;
import gripwright.shape.Shape;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * The outline of any shape seen square on: a ray inside the outline meets the shape. Rays are followed through the
 * signed distance, the border is found by marching squares and bisected, so composites and meshes need no code of
 * their own. Holes one can look through are loops of their own.
 *
 * @param loops closed, in the plane of the view about the shape's origin [m], each point (right, up)
 */
record Silhouette(List<List<Svg.P>> loops) {
    private static final int CELLS = 72;
    private static final int BISECTIONS = 8;

    /**
     * @param turn from the shape's frame to the world
     */
    static Silhouette of(Shape shape, Rotation turn, View view) {
        Vec3 right = turn.applyInverse(view.right);
        Vec3 up = turn.applyInverse(view.up);
        Vec3 near = turn.applyInverse(view.near);
        double x0 = -shape.extent(right.times(-1));
        double x1 = shape.extent(right);
        double y0 = -shape.extent(up.times(-1));
        double y1 = shape.extent(up);
        double front = shape.extent(near);
        double back = -shape.extent(near.times(-1));
        double cell = Math.max(x1 - x0, y1 - y0) / (CELLS - 2);
        int nx = (int) Math.ceil((x1 - x0) / cell) + 2;
        int ny = (int) Math.ceil((y1 - y0) / cell) + 2;
        // Half a cell of margin at the low side, so that straight sides do not fall on grid lines.
        double ox = (x0 + x1) / 2 - nx * cell / 2;
        double oy = (y0 + y1) / 2 - ny * cell / 2;
        Tracer tracer = new Tracer(shape, right, up, near, back, front);
        return new Silhouette(new Marching(tracer, ox, oy, cell, nx, ny).loops());
    }

    /** Path data at a scale about a place of the picture. */
    String path(double scale, double x, double y) {
        StringBuilder d = new StringBuilder();
        for (List<Svg.P> loop : loops) {
            d.append(Svg.data(loop.stream()
                    .map(p -> new Svg.P(x + scale * p.x(), y - scale * p.y()))
                    .toList()));
            d.append('Z');
        }
        return d.toString();
    }

    Box2 bounds() {
        Box2 box = Box2.NOTHING;
        for (List<Svg.P> loop : loops) {
            for (Svg.P p : loop) {
                box = box.with(p.x(), p.y());
            }
        }
        return box;
    }

    /** Whether the outer outline is a circle to within {@code share} of its radius. */
    boolean round(double share) {
        Box2 b = bounds();
        double r = (b.width() + b.height()) / 4;
        double cx = (b.left() + b.right()) / 2;
        double cy = (b.low() + b.high()) / 2;
        return !loops.isEmpty()
                && Math.abs(b.width() - b.height()) < share * r
                && loops.get(0).stream().allMatch(p -> Math.abs(Math.hypot(p.x() - cx, p.y() - cy) - r) < share * r);
    }

    /** Follows lines of sight through the shape's distance. */
    private record Tracer(Shape shape, Vec3 right, Vec3 up, Vec3 near, double back, double front) {
        boolean meets(double x, double y) {
            return clearance(x, y) <= 0;
        }

        /**
         * How far a line of sight passes from the shape [m]. Not above 0 if it meets the shape: then the depth of a
         * ball about the line that lies inside.
         */
        double clearance(double x, double y) {
            double px = right.x() * x + up.x() * y;
            double py = right.y() * x + up.y() * y;
            double pz = right.z() * x + up.z() * y;
            double middle = (front + back) / 2;
            double inside = shape.distance(px + near.x() * middle, py + near.y() * middle, pz + near.z() * middle);
            if (inside <= 0) {
                return inside;
            }
            double least = (front - back) / 500;
            double nearest = inside;
            double s = back - least;
            while (s <= front + least) {
                double d = shape.distance(px + near.x() * s, py + near.y() * s, pz + near.z() * s);
                if (d <= 0) {
                    return d;
                }
                nearest = Math.min(nearest, d);
                s += Math.max(d, least);
            }
            return nearest;
        }
    }

    /** Marching squares over a yes-or-no field. Directed so that the inside lies to the left. */
    private static final class Marching {
        private final Tracer tracer;
        private final double ox;
        private final double oy;
        private final double cell;
        private final int nx;
        private final int ny;
        private final boolean[] in;

        Marching(Tracer tracer, double ox, double oy, double cell, int nx, int ny) {
            this.tracer = tracer;
            this.ox = ox;
            this.oy = oy;
            this.cell = cell;
            this.nx = nx;
            this.ny = ny;
            in = new boolean[(nx + 1) * (ny + 1)];
            boolean[] known = new boolean[in.length];
            for (int j = 0; j <= ny; j++) {
                for (int i = 0; i <= nx; i++) {
                    if (!known[j * (nx + 1) + i]) {
                        double clearance = tracer.clearance(ox + i * cell, oy + j * cell);
                        // Distances of coarse grids may be a little long, hence not the whole way.
                        spread(i, j, clearance <= 0, 0.8 * Math.abs(clearance) / cell, known);
                    }
                }
            }
        }

        /** All nodes nearer than the clearance of one are on its side of the outline. */
        private void spread(int i, int j, boolean inside, double reach, boolean[] known) {
            int r = (int) reach;
            for (int b = Math.max(0, j - r); b <= Math.min(ny, j + r); b++) {
                for (int a = Math.max(0, i - r); a <= Math.min(nx, i + r); a++) {
                    if ((a == i && b == j) || Math.hypot(a - i, b - j) < reach) {
                        in[b * (nx + 1) + a] = inside;
                        known[b * (nx + 1) + a] = true;
                    }
                }
            }
        }

        List<List<Svg.P>> loops() {
            // Edge ids: 2 * node for the edge to the right of a node, 2 * node + 1 for the one above it.
            Map<Integer, Integer> next = new HashMap<>();
            for (int j = 0; j < ny; j++) {
                for (int i = 0; i < nx; i++) {
                    int a = j * (nx + 1) + i;
                    int bottom = 2 * a;
                    int left = 2 * a + 1;
                    int rightEdge = 2 * (a + 1) + 1;
                    int top = 2 * (a + nx + 1);
                    int code =
                            (in[a] ? 1 : 0) + (in[a + 1] ? 2 : 0) + (in[a + nx + 2] ? 4 : 0) + (in[a + nx + 1] ? 8 : 0);
                    int[][] pairs = switch (code) {
                        case 1 -> new int[][] {{bottom, left}};
                        case 2 -> new int[][] {{rightEdge, bottom}};
                        case 3 -> new int[][] {{rightEdge, left}};
                        case 4 -> new int[][] {{top, rightEdge}};
                        case 5 -> new int[][] {{bottom, left}, {top, rightEdge}};
                        case 6 -> new int[][] {{top, bottom}};
                        case 7 -> new int[][] {{top, left}};
                        case 8 -> new int[][] {{left, top}};
                        case 9 -> new int[][] {{bottom, top}};
                        case 10 -> new int[][] {{rightEdge, bottom}, {left, top}};
                        case 11 -> new int[][] {{rightEdge, top}};
                        case 12 -> new int[][] {{left, rightEdge}};
                        case 13 -> new int[][] {{bottom, rightEdge}};
                        case 14 -> new int[][] {{left, bottom}};
                        default -> new int[0][];
                    };
                    for (int[] pair : pairs) {
                        next.put(pair[0], pair[1]);
                    }
                }
            }
            List<List<Svg.P>> loops = new ArrayList<>();
            // Starts in the order of the edges, so that the result does not hang on the order of a hash map.
            for (int start = 0; start < 2 * in.length; start++) {
                List<Svg.P> loop = new ArrayList<>();
                Integer edge = next.remove(start);
                if (edge == null) {
                    continue;
                }
                loop.add(crossing(start));
                while (edge != null && edge != start) {
                    loop.add(crossing(edge));
                    edge = next.remove(edge);
                }
                if (loop.size() > 2) {
                    loops.add(new Tidy(cell).tidy(loop));
                }
            }
            return loops;
        }

        private Svg.P crossing(int edge) {
            int node = edge / 2;
            double x = ox + node % (nx + 1) * cell;
            int row = node / (nx + 1);
            double y = oy + row * cell;
            double dx = edge % 2 == 0 ? cell : 0;
            double dy = edge % 2 == 0 ? 0 : cell;
            boolean first = in[node];
            double lo = 0;
            double hi = 1;
            for (int k = 0; k < BISECTIONS; k++) {
                double m = (lo + hi) / 2;
                if (tracer.meets(x + m * dx, y + m * dy) == first) {
                    lo = m;
                } else {
                    hi = m;
                }
            }
            double m = (lo + hi) / 2;
            return new Svg.P(x + m * dx, y + m * dy);
        }
    }
}
