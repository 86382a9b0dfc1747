package gripwright.shape;

import gripwright.check.Check;
import gripwright.math.Vec3;
import java.util.List;

/**
 * A solid cylinder about the z axis with rounded edges. Edges below 0.01 mm count as rounded by 0.01 mm, so that the
 * normal is defined everywhere. Deeper inside than the edge radius the normal changes at once from the end to the side.
 *
 * @param radius [m]
 * @param halfHeight [m]
 * @param edge radius of the rounding of both edges [m]
 */
public record Cylinder(double radius, double halfHeight, double edge) implements Shape {
    public Cylinder {
        Check.positive(radius, "radius of the cylinder", "m");
        Check.positive(halfHeight, "half height of the cylinder", "m");
        Profile.checkEdge(edge, Math.min(radius, halfHeight), "cylinder");
    }

    @Override
    public double distance(double x, double y, double z) {
        double e = Profile.rounding(edge);
        return Profile.corner(Math.sqrt(x * x + y * y) - (radius - e), Math.abs(z) - (halfHeight - e)) - e;
    }

    @Override
    public void derivatives(double x, double y, double z, double[] gradient, double[] hessian) {
        double e = Profile.rounding(edge);
        double rho = Math.sqrt(x * x + y * y);
        double qr = rho - (radius - e);
        double qz = Math.abs(z) - (halfHeight - e);
        Profile.turnedCorner(x, y, rho, qr, qz, 1, z < 0 ? -1 : 1, gradient, hessian);
    }

    @Override
    public TableSupport support() {
        double e = Profile.rounding(edge);
        return TableSupport.ofRims(List.of(
                new TableSupport.Rim(new Vec3(0, 0, halfHeight - e), Vec3.Z, radius - e, e),
                new TableSupport.Rim(new Vec3(0, 0, e - halfHeight), Vec3.Z, radius - e, e)));
    }

    @Override
    public double boundingRadius() {
        double e = Profile.rounding(edge);
        return StrictMath.hypot(radius - e, halfHeight - e) + e;
    }

    @Override
    public double extent(Vec3 direction) {
        return support().extent(direction);
    }

    /** Exact, by Steiner's formula: the plain cylinder that the rounding ball's centre fills, grown by the ball. */
    @Override
    public double volume() {
        double e = Profile.rounding(edge);
        double r = radius - e;
        double length = 2 * (halfHeight - e);
        double solid = Math.PI * r * r * length;
        double surface = 2 * Math.PI * r * (length + r);
        double bend = Math.PI * (length + Math.PI * r);
        return solid + surface * e + bend * e * e + 4 * Math.PI / 3 * e * e * e;
    }

    @Override
    public Vec3 centroid() {
        return Vec3.ZERO;
    }

    @Override
    public Symmetry symmetry() {
        return Symmetry.ABOUT_Z;
    }
}
