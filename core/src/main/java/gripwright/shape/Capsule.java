package gripwright.shape;

import gripwright.check.Check;
import gripwright.math.Vec3;
import java.util.List;

/**
 * A rod with hemispherical ends along the z axis.
 *
 * @param radius [m]
 * @param halfLength from the middle to the centre of a hemisphere [m]
 */
public record Capsule(double radius, double halfLength) implements Shape {
    public Capsule {
        Check.positive(radius, "radius of the capsule", "m");
        Check.notNegative(halfLength, "half length of the capsule", "m");
    }

    @Override
    public double distance(double x, double y, double z) {
        double beyond = Math.max(Math.abs(z) - halfLength, 0);
        return Math.sqrt(x * x + y * y + beyond * beyond) - radius;
    }

    @Override
    public void derivatives(double x, double y, double z, double[] gradient, double[] hessian) {
        if (z > halfLength) {
            Profile.fromPoint(x, y, z - halfLength, gradient, hessian);
        } else if (z < -halfLength) {
            Profile.fromPoint(x, y, z + halfLength, gradient, hessian);
        } else {
            Profile.turned(x, y, Math.sqrt(x * x + y * y), 1, 0, 0, gradient, hessian);
        }
    }

    @Override
    public TableSupport support() {
        return TableSupport.ofBalls(List.of(
                new TableSupport.Ball(new Vec3(0, 0, halfLength), radius),
                new TableSupport.Ball(new Vec3(0, 0, -halfLength), radius)));
    }

    @Override
    public double boundingRadius() {
        return halfLength + radius;
    }

    @Override
    public double extent(Vec3 direction) {
        return Math.abs(direction.z()) * halfLength + radius;
    }

    @Override
    public double volume() {
        return Math.PI * radius * radius * (2 * halfLength + 4 * radius / 3);
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
