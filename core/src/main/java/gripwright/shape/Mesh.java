package gripwright.shape;

import gripwright.check.Check;
import gripwright.math.Vec3;
import java.util.List;
import java.util.stream.IntStream;

/**
 * A solid bounded by a closed triangle mesh, as a grid of its exact signed distance. Between the nodes the distance is
 * a quadratic B-spline of 3 x 3 x 3 nodes: the gradient is continuous, the curvature piecewise so. Sharp edges come out
 * rounded, by up to a quarter of a {@link #pitch}; walls should be some pitches thick. Self-intersections are not
 * looked for.
 *
 * <p>The grid reaches {@value #MARGIN} m beyond the mesh; farther out the distance is a lower bound only. Deeper
 * inside than {@value #DEEP} m it may be 1 % off.
 */
public final class Mesh implements Shape {
    /** Nodes of the grid unless told otherwise: 2 MB. */
    public static final int USUAL_NODES = 500_000;

    /** Most nodes allowed: 32 MB. */
    public static final int MOST_NODES = 8_000_000;

    private static final double MARGIN = 0.012;
    private static final double DEEP = 0.01;

    private final double pitch;
    private final int nx;
    private final int ny;
    private final int nz;
    private final double x0;
    private final double y0;
    private final double z0;
    /** Spline coefficients, z fastest. Single precision: 4e-9 m at worst, and twice the nodes in the cache. */
    private final float[] nodes;

    private final List<Vec3> hull;
    private final double hullGap;
    private final double boundingRadius;
    private final double volume;
    private final Vec3 centroid;
    private final List<Triangle> triangles;
    private final int triangleCount;

    private Mesh(ClosedSurface surface, int mostNodes) {
        triangleCount = surface.faces.length / 3;
        triangles = IntStream.range(0, triangleCount)
                .mapToObj(t -> new Triangle(
                        surface.corners.get(surface.faces[3 * t]),
                        surface.corners.get(surface.faces[3 * t + 1]),
                        surface.corners.get(surface.faces[3 * t + 2])))
                .toList();
        volume = surface.volume;
        centroid = surface.centroid;
        HullPoints found = new HullPoints(surface);
        hull = List.copyOf(found.points());
        hullGap = found.gap();
        boundingRadius =
                surface.corners.stream().mapToDouble(Vec3::length).max().orElse(0);
        double lowX = surface.corners.stream().mapToDouble(Vec3::x).min().orElse(0) - MARGIN;
        double lowY = surface.corners.stream().mapToDouble(Vec3::y).min().orElse(0) - MARGIN;
        double lowZ = surface.corners.stream().mapToDouble(Vec3::z).min().orElse(0) - MARGIN;
        double sizeX = surface.corners.stream().mapToDouble(Vec3::x).max().orElse(0) + MARGIN - lowX;
        double sizeY = surface.corners.stream().mapToDouble(Vec3::y).max().orElse(0) + MARGIN - lowY;
        double sizeZ = surface.corners.stream().mapToDouble(Vec3::z).max().orElse(0) + MARGIN - lowZ;
        double step = StrictMath.cbrt(sizeX * sizeY * sizeZ / mostNodes);
        while ((double) count(sizeX, step) * count(sizeY, step) * count(sizeZ, step) > mostNodes) {
            step *= 1.01;
        }
        pitch = step;
        nx = count(sizeX, step);
        ny = count(sizeY, step);
        nz = count(sizeZ, step);
        // One node of border on each side, so that every point of the box has its 27 nodes.
        x0 = lowX - step;
        y0 = lowY - step;
        z0 = lowZ - step;
        nodes = coefficients(filled(new SurfaceDistance(surface)));
    }

    /** From triangles in any order, with corners shared or repeated; normals may all point inward. */
    public static Mesh of(List<Triangle> triangles) {
        return of(triangles, USUAL_NODES);
    }

    /**
     * The same with a finer or coarser grid.
     *
     * @param mostNodes at most this many grid nodes, 10 000 to {@link #MOST_NODES}
     */
    public static Mesh of(List<Triangle> triangles, int mostNodes) {
        Check.that(
                mostNodes >= 10_000 && mostNodes <= MOST_NODES,
                "the mesh grid is to have " + mostNodes + " nodes; expected 10000 to " + MOST_NODES);
        return new Mesh(ClosedSurface.of(triangles), mostNodes);
    }

    private static int count(double size, double step) {
        return (int) Math.ceil(size / step) + 3;
    }

    private float[] filled(SurfaceDistance exact) {
        float[] values = new float[nx * ny * nz];
        boolean deep = false;
        for (int i = 0; i < nx; i++) {
            for (int j = 0; j < ny; j++) {
                for (int k = 0; k < nz; k++) {
                    // Back and forth, so that each node lies beside the one before and mostly finds the same triangle.
                    int z = ((i * ny + j) & 1) == 0 ? k : nz - 1 - k;
                    int y = (i & 1) == 0 ? j : ny - 1 - j;
                    double d = exact.distance(x0 + i * pitch, y0 + y * pitch, z0 + z * pitch, deep);
                    deep = d < -(DEEP + pitch);
                    values[(i * ny + y) * nz + z] = (float) d;
                }
            }
        }
        return values;
    }

    /**
     * Coefficients whose spline passes (to fourth order) through the values: the spline of the bare values would be too
     * high by an eighth of their second differences.
     */
    private float[] coefficients(float[] values) {
        float[] c = values.clone();
        int sx = ny * nz;
        for (int i = 1; i < nx - 1; i++) {
            for (int j = 1; j < ny - 1; j++) {
                for (int k = 1; k < nz - 1; k++) {
                    int at = (i * ny + j) * nz + k;
                    double bend = (double) values[at - sx]
                            + values[at + sx]
                            + values[at - nz]
                            + values[at + nz]
                            + values[at - 1]
                            + values[at + 1]
                            - 6.0 * values[at];
                    c[at] = (float) (values[at] - bend / 8);
                }
            }
        }
        return c;
    }

    @Override
    public double distance(double x, double y, double z) {
        double u = clamp((x - x0) / pitch, nx);
        double v = clamp((y - y0) / pitch, ny);
        double w = clamp((z - z0) / pitch, nz);
        double value = value(u, v, w);
        double ox = x - (x0 + u * pitch);
        double oy = y - (y0 + v * pitch);
        double oz = z - (z0 + w * pitch);
        double out = ox * ox + oy * oy + oz * oz;
        // Outside the box, which holds the mesh and is convex, the two ways are never at an acute angle.
        return out < 1e-18 ? value : Math.sqrt(out + value * value);
    }

    private static double clamp(double index, int count) {
        return Math.min(Math.max(index, 1), count - 2);
    }

    private double value(double u, double v, double w) {
        int i = (int) (u + 0.5);
        int j = (int) (v + 0.5);
        int k = (int) (w + 0.5);
        double fu = u - i;
        double fv = v - j;
        double fw = w - k;
        double am = 0.5 * (0.5 - fv) * (0.5 - fv);
        double a0 = 0.75 - fv * fv;
        double ap = 0.5 * (0.5 + fv) * (0.5 + fv);
        double bm = 0.5 * (0.5 - fw) * (0.5 - fw);
        double b0 = 0.75 - fw * fw;
        double bp = 0.5 * (0.5 + fw) * (0.5 + fw);
        int at = (i * ny + j) * nz + k;
        int sx = ny * nz;
        return 0.5 * (0.5 - fu) * (0.5 - fu) * layer(at - sx, am, a0, ap, bm, b0, bp)
                + (0.75 - fu * fu) * layer(at, am, a0, ap, bm, b0, bp)
                + 0.5 * (0.5 + fu) * (0.5 + fu) * layer(at + sx, am, a0, ap, bm, b0, bp);
    }

    /** Weighted sum over 3 x 3 nodes of one x. */
    private double layer(int at, double am, double a0, double ap, double bm, double b0, double bp) {
        return am * row(at - nz, bm, b0, bp) + a0 * row(at, bm, b0, bp) + ap * row(at + nz, bm, b0, bp);
    }

    private double row(int at, double bm, double b0, double bp) {
        return bm * nodes[at - 1] + b0 * nodes[at] + bp * nodes[at + 1];
    }

    /**
     * {@inheritDoc}
     *
     * <p>Those of the spline itself: the gradient is a little shorter than 1 where the distance has a kink.
     */
    @Override
    public void derivatives(double x, double y, double z, double[] gradient, double[] hessian) {
        double u = clamp((x - x0) / pitch, nx);
        double v = clamp((y - y0) / pitch, ny);
        double w = clamp((z - z0) / pitch, nz);
        double ox = x - (x0 + u * pitch);
        double oy = y - (y0 + v * pitch);
        double oz = z - (z0 + w * pitch);
        double out = ox * ox + oy * oy + oz * oz;
        if (out >= 1e-18) {
            outside(u, v, w, ox, oy, oz, gradient, hessian);
            return;
        }
        spline(u, v, w, gradient, hessian);
    }

    /** Gradient [-] and Hessian [1/m] of the spline itself. */
    private void spline(double u, double v, double w, double[] g, double[] h) {
        int i = (int) (u + 0.5);
        int j = (int) (v + 0.5);
        int k = (int) (w + 0.5);
        double fu = u - i;
        double fv = v - j;
        double fw = w - k;
        double am = 0.5 * (0.5 - fv) * (0.5 - fv);
        double a0 = 0.75 - fv * fv;
        double ap = 0.5 * (0.5 + fv) * (0.5 + fv);
        double bm = 0.5 * (0.5 - fw) * (0.5 - fw);
        double b0 = 0.75 - fw * fw;
        double bp = 0.5 * (0.5 + fw) * (0.5 + fw);
        double cm = fv - 0.5;
        double c0 = -2 * fv;
        double cp = fv + 0.5;
        double dm = fw - 0.5;
        double d0 = -2 * fw;
        double dp = fw + 0.5;
        double gx = 0;
        double gy = 0;
        double gz = 0;
        double hxx = 0;
        double hxy = 0;
        double hxz = 0;
        double hyy = 0;
        double hyz = 0;
        double hzz = 0;
        for (int s = -1; s <= 1; s++) {
            double weight = s == 0 ? 0.75 - fu * fu : 0.5 * (0.5 + s * fu) * (0.5 + s * fu);
            double slope = s == 0 ? -2 * fu : fu + 0.5 * s;
            double bend = s == 0 ? -2 : 1;
            int at = ((i + s) * ny + j) * nz + k;
            double plain = layer(at, am, a0, ap, bm, b0, bp);
            double dy = layer(at, cm, c0, cp, bm, b0, bp);
            double dz = layer(at, am, a0, ap, dm, d0, dp);
            gx += slope * plain;
            gy += weight * dy;
            gz += weight * dz;
            hxx += bend * plain;
            hxy += slope * dy;
            hxz += slope * dz;
            hyy += weight * layer(at, 1, -2, 1, bm, b0, bp);
            hyz += weight * layer(at, cm, c0, cp, dm, d0, dp);
            hzz += weight * layer(at, am, a0, ap, 1, -2, 1);
        }
        double per = 1 / pitch;
        g[0] = gx * per;
        g[1] = gy * per;
        g[2] = gz * per;
        double perSquare = per * per;
        h[0] = hxx * perSquare;
        h[1] = hxy * perSquare;
        h[2] = hxz * perSquare;
        h[3] = hyy * perSquare;
        h[4] = hyz * perSquare;
        h[5] = hzz * perSquare;
    }

    /** Derivatives of the lower bound beyond the grid; the Hessian is that of a point's distance. */
    private void outside(double u, double v, double w, double ox, double oy, double oz, double[] g, double[] h) {
        double value = value(u, v, w);
        spline(u, v, w, g, h);
        double all = Math.sqrt(ox * ox + oy * oy + oz * oz + value * value);
        double gx = ox == 0 ? value * g[0] : ox;
        double gy = oy == 0 ? value * g[1] : oy;
        double gz = oz == 0 ? value * g[2] : oz;
        double length = Math.sqrt(gx * gx + gy * gy + gz * gz);
        double scale = length > 0 ? all / length : 0;
        Profile.fromPoint(gx * scale, gy * scale, gz * scale, g, h);
        g[0] = gx / all;
        g[1] = gy / all;
        g[2] = gz / all;
    }

    /** Distance between grid nodes [m]: details below about this size are lost. */
    public double pitch() {
        return pitch;
    }

    /** Number of grid nodes, 4 bytes each. */
    public int nodeCount() {
        return nodes.length;
    }

    /** The surface it was made from, normals outward; for drawing. */
    public List<Triangle> triangles() {
        return triangles;
    }

    public int triangleCount() {
        return triangleCount;
    }

    /** How far the mesh may reach beyond the corners of {@link #support}; 0 if all hull corners were kept [m]. */
    public double supportGap() {
        return hullGap;
    }

    @Override
    public TableSupport support() {
        return TableSupport.ofBalls(
                hull.stream().map(p -> new TableSupport.Ball(p, 0)).toList());
    }

    @Override
    public double boundingRadius() {
        return boundingRadius;
    }

    /** {@inheritDoc} That of {@link #support}, so up to {@link #supportGap} short. */
    @Override
    public double extent(Vec3 direction) {
        double most = Double.NEGATIVE_INFINITY;
        for (Vec3 p : hull) {
            most = Math.max(most, direction.dot(p));
        }
        return most;
    }

    @Override
    public double volume() {
        return volume;
    }

    @Override
    public Vec3 centroid() {
        return centroid;
    }

    @Override
    public String toString() {
        return "Mesh[" + triangleCount + " triangles, grid pitch " + pitch + " m]";
    }
}
