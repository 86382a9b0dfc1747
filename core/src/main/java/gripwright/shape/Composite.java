package gripwright.shape;

import gripwright.check.Check;
import gripwright.math.Pose;
import gripwright.math.Rotation;
import gripwright.math.Vec3;
import java.util.List;

/**
 * Several shapes placed rigidly to one another, such as a mug and its handle. The distance is the nearest part's, with
 * a small fillet where two parts are equally near: a pad in a sharp inner corner would be pushed now by one part, now
 * by the other, and find no balance.
 *
 * <p>Fillet: s(a, b) = min(a, b) - f/4 (1 - |a - b| / f)^2 for |a - b| below f = {@link #FILLET}; the parts are taken in
 * their order. It adds up to a quarter of f in a corner. Source: the quadratic smooth minimum, common practice, no source.
 */
public final class Composite implements Shape {
    /** Distance over which two parts blend into each other [m]. */
    static final double FILLET = 1.5e-3;

    /** Numbers per part in {@link #places}: position (3), rotation row-major (9), bounding radius (1). */
    private static final int STRIDE = 13;

    private final List<Part> parts;
    private final Shape[] shapes;
    private final double[] places;

    /** A shape and where it sits in the composite's frame. */
    public record Part(Shape shape, Pose pose) {}

    public Composite(List<Part> parts) {
        Check.that(!parts.isEmpty(), "a composite shape has no parts; give at least one");
        this.parts = List.copyOf(parts);
        shapes = new Shape[parts.size()];
        places = new double[STRIDE * parts.size()];
        for (int i = 0; i < shapes.length; i++) {
            Part part = this.parts.get(i);
            shapes[i] = part.shape;
            Vec3 p = part.pose.position();
            places[STRIDE * i] = p.x();
            places[STRIDE * i + 1] = p.y();
            places[STRIDE * i + 2] = p.z();
            System.arraycopy(part.pose.rotation().toArray(), 0, places, STRIDE * i + 3, 9);
            places[STRIDE * i + 12] = part.shape.boundingRadius();
        }
    }

    public List<Part> parts() {
        return parts;
    }

    @Override
    public double distance(double x, double y, double z) {
        double d = Double.POSITIVE_INFINITY;
        for (int i = 0; i < shapes.length; i++) {
            if (mayMatter(i, x, y, z, d)) {
                d = blend(d, partDistance(i, x, y, z));
            }
        }
        return d;
    }

    private static double blend(double a, double b) {
        double apart = Math.abs(a - b);
        if (apart >= FILLET) {
            return Math.min(a, b);
        }
        double h = 1 - apart / FILLET;
        return Math.min(a, b) - 0.25 * FILLET * h * h;
    }

    /**
     * {@inheritDoc}
     *
     * <p>With weights wa + wb = 1 of the two distances: gradient wa ga + wb gb (shorter than 1 in a fillet), Hessian wa Ha
     * + wb Hb - (ga - gb)(ga - gb)^T / (2 f).
     */
    @Override
    public void derivatives(double x, double y, double z, double[] gradient, double[] hessian) {
        double d = Double.POSITIVE_INFINITY;
        double g0 = 0;
        double g1 = 0;
        double g2 = 0;
        double h0 = 0;
        double h1 = 0;
        double h2 = 0;
        double h3 = 0;
        double h4 = 0;
        double h5 = 0;
        for (int i = 0; i < shapes.length; i++) {
            if (!mayMatter(i, x, y, z, d)) {
                continue;
            }
            double own = partDistance(i, x, y, z);
            if (own - d >= FILLET) {
                continue;
            }
            partDerivatives(i, x, y, z, gradient, hessian);
            double apart = d - own;
            double other = apart >= FILLET ? 0 : 0.5 * (1 - apart / FILLET);
            double mine = 1 - other;
            double bend = other == 0 ? 0 : -0.5 / FILLET;
            double e0 = gradient[0] - g0;
            double e1 = gradient[1] - g1;
            double e2 = gradient[2] - g2;
            h0 = other * h0 + mine * hessian[0] + bend * e0 * e0;
            h1 = other * h1 + mine * hessian[1] + bend * e0 * e1;
            h2 = other * h2 + mine * hessian[2] + bend * e0 * e2;
            h3 = other * h3 + mine * hessian[3] + bend * e1 * e1;
            h4 = other * h4 + mine * hessian[4] + bend * e1 * e2;
            h5 = other * h5 + mine * hessian[5] + bend * e2 * e2;
            g0 += mine * e0;
            g1 += mine * e1;
            g2 += mine * e2;
            d = blend(d, own);
        }
        gradient[0] = g0;
        gradient[1] = g1;
        gradient[2] = g2;
        hessian[0] = h0;
        hessian[1] = h1;
        hessian[2] = h2;
        hessian[3] = h3;
        hessian[4] = h4;
        hessian[5] = h5;
    }

    private void partDerivatives(int part, double x, double y, double z, double[] gradient, double[] hessian) {
        int at = STRIDE * part;
        double[] m = places;
        double dx = x - m[at];
        double dy = y - m[at + 1];
        double dz = z - m[at + 2];
        shapes[part].derivatives(
                m[at + 3] * dx + m[at + 6] * dy + m[at + 9] * dz,
                m[at + 4] * dx + m[at + 7] * dy + m[at + 10] * dz,
                m[at + 5] * dx + m[at + 8] * dy + m[at + 11] * dz,
                gradient,
                hessian);
        turn(at + 3, gradient, hessian);
    }

    /** Whether the part's bounding sphere comes near enough to change the distance {@code nearest}. */
    private boolean mayMatter(int part, double x, double y, double z, double nearest) {
        int at = STRIDE * part;
        double dx = x - places[at];
        double dy = y - places[at + 1];
        double dz = z - places[at + 2];
        double reach = nearest + FILLET + places[at + 12];
        return reach > 0 && dx * dx + dy * dy + dz * dz < reach * reach;
    }

    private double partDistance(int part, double x, double y, double z) {
        int at = STRIDE * part;
        double[] m = places;
        double dx = x - m[at];
        double dy = y - m[at + 1];
        double dz = z - m[at + 2];
        return shapes[part].distance(
                m[at + 3] * dx + m[at + 6] * dy + m[at + 9] * dz,
                m[at + 4] * dx + m[at + 7] * dy + m[at + 10] * dz,
                m[at + 5] * dx + m[at + 8] * dy + m[at + 11] * dz);
    }

    /** Turns a vector and a symmetric matrix by the rotation R at {@code at}, in place: R g and R H R^T. */
    private void turn(int at, double[] g, double[] h) {
        double xx = places[at];
        double xy = places[at + 1];
        double xz = places[at + 2];
        double yx = places[at + 3];
        double yy = places[at + 4];
        double yz = places[at + 5];
        double zx = places[at + 6];
        double zy = places[at + 7];
        double zz = places[at + 8];
        double g0 = g[0];
        double g1 = g[1];
        double g2 = g[2];
        g[0] = xx * g0 + xy * g1 + xz * g2;
        g[1] = yx * g0 + yy * g1 + yz * g2;
        g[2] = zx * g0 + zy * g1 + zz * g2;
        // Columns of H R^T, one outer axis after the other.
        double ax = h[0] * xx + h[1] * xy + h[2] * xz;
        double ay = h[1] * xx + h[3] * xy + h[4] * xz;
        double az = h[2] * xx + h[4] * xy + h[5] * xz;
        double bx = h[0] * yx + h[1] * yy + h[2] * yz;
        double by = h[1] * yx + h[3] * yy + h[4] * yz;
        double bz = h[2] * yx + h[4] * yy + h[5] * yz;
        double cx = h[0] * zx + h[1] * zy + h[2] * zz;
        double cy = h[1] * zx + h[3] * zy + h[4] * zz;
        double cz = h[2] * zx + h[4] * zy + h[5] * zz;
        h[0] = xx * ax + xy * ay + xz * az;
        h[1] = yx * ax + yy * ay + yz * az;
        h[2] = zx * ax + zy * ay + zz * az;
        h[3] = yx * bx + yy * by + yz * bz;
        h[4] = zx * bx + zy * by + zz * bz;
        h[5] = zx * cx + zy * cy + zz * cz;
    }

    @Override
    public TableSupport support() {
        TableSupport all = new TableSupport(List.of(), List.of(), List.of());
        for (Part part : parts) {
            all = all.and(part.shape.support().moved(part.pose.rotation(), part.pose.position()));
        }
        return all;
    }

    @Override
    public double boundingRadius() {
        double most = 0;
        for (Part part : parts) {
            most = Math.max(most, part.pose.position().length() + part.shape.boundingRadius());
        }
        return most;
    }

    @Override
    public double extent(Vec3 direction) {
        double most = Double.NEGATIVE_INFINITY;
        for (Part part : parts) {
            Rotation turn = part.pose.rotation();
            double own = part.shape.extent(turn.applyInverse(direction));
            most = Math.max(most, direction.dot(part.pose.position()) + own);
        }
        return most;
    }

    /** Sum of the parts; where they overlap the common volume counts twice. */
    @Override
    public double volume() {
        double sum = 0;
        for (Part part : parts) {
            sum += part.shape.volume();
        }
        return sum;
    }

    @Override
    public Vec3 centroid() {
        Vec3 moment = Vec3.ZERO;
        for (Part part : parts) {
            moment = moment.plus(part.pose.apply(part.shape.centroid()).times(part.shape.volume()));
        }
        return moment.times(1 / volume());
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Composite composite && parts.equals(composite.parts);
    }

    @Override
    public int hashCode() {
        return parts.hashCode();
    }

    @Override
    public String toString() {
        return "Composite" + parts;
    }

    /** About z if every part is a body of revolution whose axis is this shape's z axis. */
    @Override
    public Symmetry symmetry() {
        return parts().stream().allMatch(Composite::turnsAboutZ) ? Symmetry.ABOUT_Z : Symmetry.NONE;
    }

    private static boolean turnsAboutZ(Part part) {
        Vec3 at = part.pose().position();
        boolean onAxis = StrictMath.hypot(at.x(), at.y()) < 1e-9;
        boolean upright = Math.abs(part.pose().rotation().zz()) > 1 - 1e-12;
        return onAxis
                && switch (part.shape().symmetry()) {
                    case FULL -> true;
                    case ABOUT_Z -> upright;
                    case NONE -> false;
                };
    }
}
