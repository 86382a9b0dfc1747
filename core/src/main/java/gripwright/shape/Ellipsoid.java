package gripwright.shape;

import gripwright.check.Check;
import gripwright.math.Rotation;
import gripwright.math.Vec3;
import java.util.List;

/**
 * A solid ellipsoid about the origin with its axes along x, y, z. The distance is the true one: the nearest surface
 * point comes from a safeguarded Newton iteration of one unknown (at most 24 rounds, usually 2
 * to 4), and the curvature is the exact one of the offset surface.
 *
 * @param a semi-axis along x [m]
 * @param b semi-axis along y [m]
 * @param c semi-axis along z [m]
 */
public record Ellipsoid(double a, double b, double c) implements Shape {
    private static final int MOST_ITERATIONS = 24;

    public Ellipsoid {
        Check.positive(a, "semi-axis of the ellipsoid along x", "m");
        Check.positive(b, "semi-axis of the ellipsoid along y", "m");
        Check.positive(c, "semi-axis of the ellipsoid along z", "m");
    }

    @Override
    public double distance(double x, double y, double z) {
        double t = foot(x, y, z);
        double nx = x / (t + a * a);
        double ny = y / (t + b * b);
        double nz = z / (t + c * c);
        // The point minus its foot is t times the foot's unscaled normal.
        return t * Math.sqrt(nx * nx + ny * ny + nz * nz);
    }

    @Override
    public void derivatives(double x, double y, double z, double[] gradient, double[] hessian) {
        double t = foot(x, y, z);
        double nx = x / (t + a * a);
        double ny = y / (t + b * b);
        double nz = z / (t + c * c);
        double length = Math.sqrt(nx * nx + ny * ny + nz * nz);
        if (!(length > 0)) {
            Profile.plane(0, 0, 1, gradient, hessian);
            return;
        }
        nx /= length;
        ny /= length;
        nz /= length;
        double distance = t * length;
        double da = 1 / (a * a);
        double db = 1 / (b * b);
        double dc = 1 / (c * c);
        double vx = da * nx;
        double vy = db * ny;
        double vz = dc * nz;
        double nDn = nx * vx + ny * vy + nz * vz;
        // Shape operator at the foot: S = P D P / length. Offset by d: (S + d det S P) / (1 + d tr S + d^2 det S).
        double trace = (da + db + dc - nDn) / length;
        double det = da * db * dc / (length * length * length * length);
        double below = Math.max(1 + distance * (trace + distance * det), 1e-9);
        double s = 1 / (length * below);
        double p = distance * det / below;
        gradient[0] = nx;
        gradient[1] = ny;
        gradient[2] = nz;
        hessian[0] = s * (da - 2 * nx * vx + nDn * nx * nx) + p * (1 - nx * nx);
        hessian[1] = s * (-nx * vy - ny * vx + nDn * nx * ny) - p * nx * ny;
        hessian[2] = s * (-nx * vz - nz * vx + nDn * nx * nz) - p * nx * nz;
        hessian[3] = s * (db - 2 * ny * vy + nDn * ny * ny) + p * (1 - ny * ny);
        hessian[4] = s * (-ny * vz - nz * vy + nDn * ny * nz) - p * ny * nz;
        hessian[5] = s * (dc - 2 * nz * vz + nDn * nz * nz) + p * (1 - nz * nz);
    }

    /**
     * The t for which the foot a_i^2 x_i / (t + a_i^2) lies on the surface. With r(t) = |a_i x_i / (t + a_i^2)| this is
     * r = 1; Newton runs on 1/r, which is nearly straight in t, so it needs few rounds from anywhere.
     */
    private double foot(double x, double y, double z) {
        double aa = a * a;
        double bb = b * b;
        double cc = c * c;
        double px = a * Math.abs(x);
        double py = b * Math.abs(y);
        double pz = c * Math.abs(z);
        // At this t one term alone is 1 already, so the solution is here or to the right of it.
        double least = Math.max(px - aa, Math.max(py - bb, pz - cc));
        double floor = -Math.min(aa, Math.min(bb, cc));
        least = Math.max(least, floor * (1 - 1e-9));
        double gx = x / aa;
        double gy = y / bb;
        double gz = z / cc;
        double level = gx * x + gy * y + gz * z;
        double steepness = gx * gx + gy * gy + gz * gz;
        double t = least;
        if (steepness > 0) {
            // First-order distance: good to a few micrometres for the shallow contact of a pad.
            t = Math.max(level * (Math.sqrt(level) - 1) / steepness, least);
        }
        for (int i = 0; i < MOST_ITERATIONS; i++) {
            double ia = 1 / (t + aa);
            double ib = 1 / (t + bb);
            double ic = 1 / (t + cc);
            double ux = px * ia;
            double uy = py * ib;
            double uz = pz * ic;
            double rr = ux * ux + uy * uy + uz * uz;
            double slope = ux * ux * ia + uy * uy * ib + uz * uz * ic;
            if (!(slope > 0)) {
                return least;
            }
            double step = (Math.sqrt(rr) - 1) * rr / slope;
            double next = Math.max(t + step, least);
            // Convergence is quadratic: after a step this small the next would be rounding.
            if (Math.abs(next - t) <= 1e-9 * (Math.abs(t) - floor)) {
                return next;
            }
            t = next;
        }
        return t;
    }

    @Override
    public TableSupport support() {
        return new TableSupport(
                List.of(),
                List.of(),
                List.of(new TableSupport.Ellipsoidal(Vec3.ZERO, Rotation.IDENTITY, new Vec3(a, b, c))));
    }

    @Override
    public double boundingRadius() {
        return Math.max(a, Math.max(b, c));
    }

    @Override
    public double extent(Vec3 direction) {
        return support().extent(direction);
    }

    @Override
    public double volume() {
        return 4 * Math.PI / 3 * a * b * c;
    }

    @Override
    public Vec3 centroid() {
        return Vec3.ZERO;
    }
}
