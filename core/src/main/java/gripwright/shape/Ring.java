package gripwright.shape;

import gripwright.check.Check;
import gripwright.math.Vec3;
import java.util.List;

/**
 * A torus about the z axis: an O-ring, a bangle, a mug's handle.
 *
 * @param ringRadius from the axis to the middle of the tube [m]
 * @param tubeRadius less than {@code ringRadius} [m]
 */
public record Ring(double ringRadius, double tubeRadius) implements Shape {
    public Ring {
        Check.positive(ringRadius, "radius of the ring", "m");
        Check.positive(tubeRadius, "tube radius of the ring", "m");
        Check.that(
                tubeRadius < ringRadius,
                "tube radius of the ring is " + tubeRadius + " m; it must be below the ring's radius, " + ringRadius
                        + " m, to leave a hole");
    }

    @Override
    public double distance(double x, double y, double z) {
        double q = Math.sqrt(x * x + y * y) - ringRadius;
        return Math.sqrt(q * q + z * z) - tubeRadius;
    }

    @Override
    public void derivatives(double x, double y, double z, double[] gradient, double[] hessian) {
        double rho = Math.sqrt(x * x + y * y);
        double q = rho - ringRadius;
        double d = Math.sqrt(q * q + z * z);
        if (d < Profile.TINY) {
            Profile.plane(0, 0, 1, gradient, hessian);
        } else {
            Profile.turned(x, y, rho, q / d, z / d, 1 / d, gradient, hessian);
        }
    }

    @Override
    public TableSupport support() {
        return TableSupport.ofRims(List.of(new TableSupport.Rim(Vec3.ZERO, Vec3.Z, ringRadius, tubeRadius)));
    }

    @Override
    public double boundingRadius() {
        return ringRadius + tubeRadius;
    }

    @Override
    public double extent(Vec3 direction) {
        return support().extent(direction);
    }

    @Override
    public double volume() {
        return 2 * Math.PI * Math.PI * ringRadius * tubeRadius * tubeRadius;
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
