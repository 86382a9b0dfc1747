package gripwright.shape;

import gripwright.check.Check;
import gripwright.math.Vec3;
import java.util.List;
import java.util.Objects;

/**
 * A solid tapered cup (cone frustum) along the z axis with rounded edges: the plain frustum with its corners rolled
 * round by a ball. Edges below 0.01 mm count as rounded by 0.01 mm, so that the normal is defined everywhere.
 */
public final class Cup implements Shape {
    private final double bottomRadius;
    private final double topRadius;
    private final double halfHeight;
    private final double edge;

    /** Rounding in use, the rounding ball's centres in the (rho, z) plane, the side's normal there. */
    private final double e;

    private final double half;
    private final double bottom;
    private final double top;
    private final double rise;
    private final double normalR;
    private final double normalZ;

    /**
     * @param bottomRadius at z = -halfHeight, before rounding [m]
     * @param topRadius at z = halfHeight, before rounding [m]
     * @param halfHeight [m]
     * @param edge radius of the rounding of both edges [m]
     */
    public Cup(double bottomRadius, double topRadius, double halfHeight, double edge) {
        this.bottomRadius = Check.positive(bottomRadius, "bottom radius of the cup", "m");
        this.topRadius = Check.positive(topRadius, "top radius of the cup", "m");
        this.halfHeight = Check.positive(halfHeight, "half height of the cup", "m");
        this.edge = Check.notNegative(edge, "edge radius of the cup", "m");
        e = Profile.rounding(edge);
        double slope = (topRadius - bottomRadius) / (2 * halfHeight);
        double steep = Math.sqrt(1 + slope * slope);
        half = halfHeight - e;
        bottom = bottomRadius + slope * e - steep * e;
        top = topRadius - slope * e - steep * e;
        Check.that(
                half > 0 && bottom >= 0 && top >= 0,
                "edge radius of the cup is " + edge + " m; a ball that large does not fit into a cup of bottom radius "
                        + bottomRadius + " m, top radius " + topRadius + " m and height " + 2 * halfHeight
                        + " m: make the edge smaller");
        rise = 2 * half;
        normalR = 1 / steep;
        normalZ = -slope / steep;
    }

    public double bottomRadius() {
        return bottomRadius;
    }

    public double topRadius() {
        return topRadius;
    }

    public double halfHeight() {
        return halfHeight;
    }

    public double edge() {
        return edge;
    }

    @Override
    public double distance(double x, double y, double z) {
        double rho = Math.sqrt(x * x + y * y);
        double along = along(rho, z);
        double sr = rho - bottom - (top - bottom) * along;
        double sz = z + half - rise * along;
        double er = Math.max(rho - (z < 0 ? bottom : top), 0);
        double ez = Math.abs(z) - half;
        double nearest = Math.sqrt(Math.min(sr * sr + sz * sz, er * er + ez * ez));
        return (sr < 0 && ez < 0 ? -nearest : nearest) - e;
    }

    @Override
    public void derivatives(double x, double y, double z, double[] gradient, double[] hessian) {
        double rho = Math.sqrt(x * x + y * y);
        double along = along(rho, z);
        double sr = rho - bottom - (top - bottom) * along;
        double sz = z + half - rise * along;
        double er = Math.max(rho - (z < 0 ? bottom : top), 0);
        double ez = Math.abs(z) - half;
        boolean inside = sr < 0 && ez < 0;
        if (er == 0 && er * er + ez * ez <= sr * sr + sz * sz) {
            Profile.turned(x, y, rho, 0, z < 0 ? -1 : 1, 0, gradient, hessian);
        } else if (inside || (along > 0 && along < 1)) {
            Profile.turned(x, y, rho, normalR, normalZ, 0, gradient, hessian);
        } else {
            double d = Math.sqrt(sr * sr + sz * sz);
            Profile.turned(x, y, rho, sr / d, sz / d, 1 / d, gradient, hessian);
        }
    }

    /** Where the nearest point of the side lies: 0 at the lower rounding centre, 1 at the upper. */
    private double along(double rho, double z) {
        double side = top - bottom;
        double along = ((rho - bottom) * side + (z + half) * rise) / (side * side + rise * rise);
        return Math.min(Math.max(along, 0), 1);
    }

    @Override
    public TableSupport support() {
        return TableSupport.ofRims(List.of(
                new TableSupport.Rim(new Vec3(0, 0, -half), Vec3.Z, bottom, e),
                new TableSupport.Rim(new Vec3(0, 0, half), Vec3.Z, top, e)));
    }

    @Override
    public double boundingRadius() {
        return StrictMath.hypot(Math.max(bottom, top), half) + e;
    }

    @Override
    public double extent(Vec3 direction) {
        return support().extent(direction);
    }

    /** Exact: the outline (lower arc, side, upper arc) turned about the axis. */
    @Override
    public double volume() {
        return arc(bottom, -e, e * normalZ, -half, 0) + arc(top, e * normalZ, e, half, 0) + side(0);
    }

    @Override
    public Vec3 centroid() {
        double moment = arc(bottom, -e, e * normalZ, -half, 1) + arc(top, e * normalZ, e, half, 1) + side(1);
        return new Vec3(0, 0, moment / volume());
    }

    /** pi times the integral of rho^2 (times z if {@code power} is 1) for rho = centre + sqrt(e^2 - w^2), z = z0 + w. */
    private double arc(double centre, double from, double to, double z0, int power) {
        double plain = arcPlain(centre, to) - arcPlain(centre, from);
        double moment = arcMoment(centre, to) - arcMoment(centre, from);
        return Math.PI * (power == 0 ? plain : z0 * plain + moment);
    }

    private double arcPlain(double c, double w) {
        double root = Math.sqrt(Math.max(e * e - w * w, 0));
        double angle = StrictMath.asin(Math.min(Math.max(w / e, -1), 1));
        return c * c * w + c * (w * root + e * e * angle) + e * e * w - w * w * w / 3;
    }

    private double arcMoment(double c, double w) {
        double root = Math.sqrt(Math.max(e * e - w * w, 0));
        return c * c * w * w / 2 - 2 * c / 3 * root * root * root + e * e * w * w / 2 - w * w * w * w / 4;
    }

    /** The same integrals along the straight side between its two touching points. */
    private double side(int power) {
        double r1 = bottom + e * normalR;
        double r2 = top + e * normalR;
        double z1 = -half + e * normalZ;
        double plain = rise / 3 * (r1 * r1 + r1 * r2 + r2 * r2);
        double moment = rise * rise / 12 * (r1 * r1 + 2 * r1 * r2 + 3 * r2 * r2);
        return Math.PI * (power == 0 ? plain : z1 * plain + moment);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Cup cup
                && bottomRadius == cup.bottomRadius
                && topRadius == cup.topRadius
                && halfHeight == cup.halfHeight
                && edge == cup.edge;
    }

    @Override
    public int hashCode() {
        return Objects.hash(bottomRadius, topRadius, halfHeight, edge);
    }

    @Override
    public String toString() {
        return "Cup[bottomRadius=" + bottomRadius + ", topRadius=" + topRadius + ", halfHeight=" + halfHeight
                + ", edge=" + edge + "]";
    }

    @Override
    public Symmetry symmetry() {
        return Symmetry.ABOUT_Z;
    }
}
