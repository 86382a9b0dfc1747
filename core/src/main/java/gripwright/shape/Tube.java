package gripwright.shape;

import gripwright.check.Check;
import gripwright.math.Vec3;
import java.util.List;

/**
 * A thick-walled tube about the z axis with rounded edges: a roll of tape, a bearing, a length of pipe. Edges below
 * 0.01 mm count as rounded by 0.01 mm, so that the normal is defined everywhere. Past the middle of the wall the normal
 * points the other way: for a wall thinner than twice what pads press in, use the solid {@link Cylinder}.
 *
 * @param outerRadius [m]
 * @param innerRadius radius of the bore [m]
 * @param halfHeight [m]
 * @param edge radius of the rounding of all four edges [m]
 */
public record Tube(double outerRadius, double innerRadius, double halfHeight, double edge) implements Shape {
    public Tube {
        Check.positive(outerRadius, "outer radius of the tube", "m");
        Check.positive(innerRadius, "inner radius of the tube", "m");
        Check.positive(halfHeight, "half height of the tube", "m");
        Check.that(
                innerRadius < outerRadius,
                "inner radius of the tube is " + innerRadius + " m; it must be below the outer radius, " + outerRadius
                        + " m, to leave a wall");
        Profile.checkEdge(edge, Math.min((outerRadius - innerRadius) / 2, halfHeight), "tube");
    }

    @Override
    public double distance(double x, double y, double z) {
        double e = Profile.rounding(edge);
        double fromMiddle = Math.abs(Math.sqrt(x * x + y * y) - (outerRadius + innerRadius) / 2);
        return Profile.corner(fromMiddle - ((outerRadius - innerRadius) / 2 - e), Math.abs(z) - (halfHeight - e)) - e;
    }

    @Override
    public void derivatives(double x, double y, double z, double[] gradient, double[] hessian) {
        double e = Profile.rounding(edge);
        double rho = Math.sqrt(x * x + y * y);
        double fromMiddle = rho - (outerRadius + innerRadius) / 2;
        double qr = Math.abs(fromMiddle) - ((outerRadius - innerRadius) / 2 - e);
        double qz = Math.abs(z) - (halfHeight - e);
        Profile.turnedCorner(x, y, rho, qr, qz, fromMiddle < 0 ? -1 : 1, z < 0 ? -1 : 1, gradient, hessian);
    }

    @Override
    public TableSupport support() {
        double e = Profile.rounding(edge);
        return TableSupport.ofRims(List.of(
                new TableSupport.Rim(new Vec3(0, 0, halfHeight - e), Vec3.Z, outerRadius - e, e),
                new TableSupport.Rim(new Vec3(0, 0, e - halfHeight), Vec3.Z, outerRadius - e, e)));
    }

    @Override
    public double boundingRadius() {
        double e = Profile.rounding(edge);
        return StrictMath.hypot(outerRadius - e, halfHeight - e) + e;
    }

    @Override
    public double extent(Vec3 direction) {
        return support().extent(direction);
    }

    /** Exact, by Pappus: area of the rounded rectangle times the path of its middle. */
    @Override
    public double volume() {
        double e = Profile.rounding(edge);
        double area = (outerRadius - innerRadius) * 2 * halfHeight - (4 - Math.PI) * e * e;
        return area * Math.PI * (outerRadius + innerRadius);
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
