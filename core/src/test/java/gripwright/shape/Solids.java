package gripwright.shape;

import gripwright.math.Pose;
import gripwright.math.Rotation;
import gripwright.math.Vec3;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/** One of each shape, with an independent description of its surface and of its box. */
record Solids(String name, Shape shape, List<Patch> surface, double deepest) {
    static final double QUARTER = Math.PI / 2;
    static final Pose SIDE = new Pose(new Vec3(0.05, 0.01, -0.004), Rotation.about(new Vec3(1, 2, -0.5), 1.1));

    @Override
    public String toString() {
        return name;
    }

    /** {@code deepest} = how deep inside the distance is still smooth in these tests [m]. */
    static Stream<Solids> all() {
        return Stream.of(
                new Solids("sphere", new Sphere(0.035), Patch.ellipsoid(Vec3.ZERO, 0.035, 0.035, 0.035), 0.02),
                new Solids("capsule", new Capsule(0.02, 0.03), capsule(), 0.01),
                new Solids("cylinder", new Cylinder(0.03, 0.05, 0.004), cylinder(), 0.003),
                new Solids("box", new Box(0.03, 0.02, 0.04, 0.003), Patch.box(0.03, 0.02, 0.04, 0.003), 0.002),
                new Solids(
                        "ellipsoid",
                        new Ellipsoid(0.02, 0.03, 0.045),
                        Patch.ellipsoid(Vec3.ZERO, 0.02, 0.03, 0.045),
                        0.005),
                new Solids(
                        "flat ellipsoid",
                        new Ellipsoid(0.06, 0.06, 0.012),
                        Patch.ellipsoid(Vec3.ZERO, 0.06, 0.06, 0.012),
                        0.001),
                new Solids("cup", new Cup(0.025, 0.04, 0.05, 0.003), cup(0.025, 0.04, 0.05, 0.003), 0.002),
                new Solids("upturned cup", new Cup(0.04, 0.02, 0.03, 0.005), cup(0.04, 0.02, 0.03, 0.005), 0.004),
                new Solids("ring", new Ring(0.03, 0.008), List.of(Patch.torus(0.03, 0.008)), 0.005),
                new Solids("tube", new Tube(0.045, 0.03, 0.012, 0.002), tube(), 0.0015),
                new Solids("composite", composite(), compositeSurface(), 0.002));
    }

    static Composite composite() {
        return new Composite(List.of(
                new Composite.Part(new Cylinder(0.03, 0.05, 0.004), Pose.IDENTITY),
                new Composite.Part(new Ring(0.03, 0.008), SIDE)));
    }

    private static List<Patch> compositeSurface() {
        List<Patch> all = new ArrayList<>(cylinder());
        Patch ring = Patch.torus(0.03, 0.008);
        all.add((u, v) -> SIDE.apply(ring.at(u, v)));
        return all;
    }

    private static List<Patch> capsule() {
        return List.of(
                Patch.cone(0.02, -0.03, 0.02, 0.03),
                Patch.arc(0, 0.03, 0.02, 0, QUARTER),
                Patch.arc(0, -0.03, 0.02, 0, -QUARTER));
    }

    private static List<Patch> cylinder() {
        return List.of(
                Patch.cone(0.03, -0.046, 0.03, 0.046),
                Patch.cone(0, 0.05, 0.026, 0.05),
                Patch.cone(0, -0.05, 0.026, -0.05),
                Patch.arc(0.026, 0.046, 0.004, 0, QUARTER),
                Patch.arc(0.026, -0.046, 0.004, 0, -QUARTER));
    }

    private static List<Patch> tube() {
        return List.of(
                Patch.cone(0.045, -0.01, 0.045, 0.01),
                Patch.cone(0.03, -0.01, 0.03, 0.01),
                Patch.cone(0.032, 0.012, 0.043, 0.012),
                Patch.cone(0.032, -0.012, 0.043, -0.012),
                Patch.arc(0.043, 0.01, 0.002, 0, QUARTER),
                Patch.arc(0.043, -0.01, 0.002, 0, -QUARTER),
                Patch.arc(0.032, 0.01, 0.002, QUARTER, 2 * QUARTER),
                Patch.arc(0.032, -0.01, 0.002, -QUARTER, -2 * QUARTER));
    }

    /** A ball of radius e rolled inside the corners of a plain frustum; tangent lengths by e times tan of half angles. */
    private static List<Patch> cup(double bottom, double top, double half, double e) {
        double lean = Math.atan2(top - bottom, 2 * half);
        // Interior corner angles: 90 deg + lean below, 90 deg - lean above.
        double r1 = bottom - e / Math.tan((QUARTER + lean) / 2);
        double r2 = top - e / Math.tan((QUARTER - lean) / 2);
        double nr = Math.cos(lean);
        double nz = -Math.sin(lean);
        return List.of(
                Patch.cone(0, -half, r1, -half),
                Patch.cone(0, half, r2, half),
                Patch.cone(r1 + e * nr, e - half + e * nz, r2 + e * nr, half - e + e * nz),
                Patch.arc(r1, e - half, e, -QUARTER, -lean),
                Patch.arc(r2, half - e, e, -lean, QUARTER));
    }
}
