package gripwright.shape;

import gripwright.check.Check;
import gripwright.math.Vec3;
import java.util.List;

/**
 * A sphere about the origin.
 *
 * @param radius [m]
 */
public record Sphere(double radius) implements Shape {
    public Sphere {
        Check.positive(radius, "radius of the sphere", "m");
    }

    @Override
    public double distance(double x, double y, double z) {
        return Math.sqrt(x * x + y * y + z * z) - radius;
    }

    @Override
    public void derivatives(double x, double y, double z, double[] gradient, double[] hessian) {
        Profile.fromPoint(x, y, z, gradient, hessian);
    }

    @Override
    public TableSupport support() {
        return TableSupport.ofBalls(List.of(new TableSupport.Ball(Vec3.ZERO, radius)));
    }

    @Override
    public double boundingRadius() {
        return radius;
    }

    @Override
    public double extent(Vec3 direction) {
        return radius;
    }

    @Override
    public double volume() {
        return 4 * Math.PI / 3 * radius * radius * radius;
    }

    @Override
    public Vec3 centroid() {
        return Vec3.ZERO;
    }

    @Override
    public Symmetry symmetry() {
        return Symmetry.FULL;
    }
}
