package gripwright.shape;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import gripwright.math.Vec3;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class MeshTest {
    private static final Mesh BALL = Mesh.of(Meshes.sphere(0.035, 5), 200_000);
    private static final Mesh BLOCK = Mesh.of(Meshes.box(0.03, 0.02, 0.04), 200_000);

    @Test
    void propertyMeshOfASphereIsTheSphere() {
        double facets = Meshes.sphere(0.035, 5).stream()
                .mapToDouble(t -> 0.035 - t.a().dot(t.areaVector().unit()))
                .max()
                .orElseThrow();
        Sphere sphere = new Sphere(0.035);
        SplittableRandom random = new SplittableRandom(1);
        double[] g = new double[3];
        double[] h = new double[6];
        double[] g2 = new double[3];
        double[] h2 = new double[6];
        assertThat(facets).isLessThan(1e-4);
        for (int i = 0; i < 2000; i++) {
            Vec3 p = direction(random).times(random.nextDouble(0.031, 0.044));
            double beyond = BALL.distance(p.x(), p.y(), p.z()) - sphere.distance(p.x(), p.y(), p.z());
            // The facets lie inside the sphere; the grid adds 2 um at most.
            assertThat(beyond).isBetween(-2e-6, facets + 2e-6);
            BALL.derivatives(p.x(), p.y(), p.z(), g, h);
            sphere.derivatives(p.x(), p.y(), p.z(), g2, h2);
            assertThat(new Vec3(g[0] - g2[0], g[1] - g2[1], g[2] - g2[2]).length())
                    .isLessThan(0.03);
        }
        assertThat(BALL.volume()).isCloseTo(sphere.volume(), withinPercentage(0.2));
        assertThat(BALL.centroid().length()).isLessThan(1e-12);
    }

    @Test
    void propertyMeshOfABoxIsTheBox() {
        Box box = new Box(0.03, 0.02, 0.04, 0);
        SplittableRandom random = new SplittableRandom(2);
        double[] g = new double[3];
        double[] h = new double[6];
        double[] g2 = new double[3];
        double worst = 0;
        for (int i = 0; i < 4000; i++) {
            Vec3 p = new Vec3(
                    random.nextDouble(-0.04, 0.04), random.nextDouble(-0.03, 0.03), random.nextDouble(-0.05, 0.05));
            double exact = box.distance(p.x(), p.y(), p.z());
            if (exact < -0.005 || exact > 0.01) {
                continue;
            }
            worst = Math.max(worst, Math.abs(BLOCK.distance(p.x(), p.y(), p.z()) - exact));
            if (awayFromEdges(p, 3 * BLOCK.pitch() + 0.005)) {
                BLOCK.derivatives(p.x(), p.y(), p.z(), g, h);
                box.derivatives(p.x(), p.y(), p.z(), g2, new double[6]);
                assertThat(g).containsExactly(g2, within(1e-5));
                assertThat(h).containsOnly(new double[6], within(0.1));
            }
        }
        assertThat(worst).as("worst error, at the sharp edges, in grid pitches").isLessThan(0.25 * BLOCK.pitch());
        assertThat(BLOCK.volume()).isCloseTo(0.06 * 0.04 * 0.08, withinPercentage(1e-9));
    }

    private static boolean awayFromEdges(Vec3 p, double band) {
        int near = 0;
        near += Math.abs(p.x()) > 0.03 - band ? 1 : 0;
        near += Math.abs(p.y()) > 0.02 - band ? 1 : 0;
        near += Math.abs(p.z()) > 0.04 - band ? 1 : 0;
        return near == 1;
    }

    @Test
    void propertyGradientIsTheSlopeOfTheDistanceAndContinuous() {
        SplittableRandom random = new SplittableRandom(3);
        double step = 1e-6;
        for (int i = 0; i < 500; i++) {
            // within the grid, which reaches 12 mm beyond the block
            Vec3 p = new Vec3(
                    random.nextDouble(-0.041, 0.041),
                    random.nextDouble(-0.031, 0.031),
                    random.nextDouble(-0.051, 0.051));
            if (BLOCK.distance(p.x(), p.y(), p.z()) < -0.005) {
                continue;
            }
            Vec3 g = gradient(BLOCK, p);
            // a spline over a sharp edge swings both ways: up to 1.09 was seen
            assertThat(g.length()).as("at " + p).isBetween(0.5, 1.2);
            Vec3 slope = new Vec3(slope(p, Vec3.X, step), slope(p, Vec3.Y, step), slope(p, Vec3.Z, step));
            assertThat(slope.minus(g).length()).isLessThan(1e-5);
            Vec3 beside = gradient(BLOCK, p.plus(direction(random).times(1e-7)));
            assertThat(beside.minus(g).length()).isLessThan(1e-3);
        }
    }

    @Test
    void propertyHessianIsTheChangeOfTheNormalAcrossTheSurface() {
        SplittableRandom random = new SplittableRandom(4);
        double[] h = new double[6];
        int jumps = 0;
        for (int i = 0; i < 500; i++) {
            Vec3 p = direction(random).times(random.nextDouble(0.033, 0.045));
            Vec3 n = gradient(BALL, p);
            BALL.derivatives(p.x(), p.y(), p.z(), new double[3], h);
            Vec3 way = n.cross(direction(random)).unit();
            double step = 1e-7;
            Vec3 change = gradient(BALL, p.plus(way.times(step)))
                    .minus(gradient(BALL, p.minus(way.times(step))))
                    .times(1 / (2 * step));
            Vec3 expected = new Vec3(
                    h[0] * way.x() + h[1] * way.y() + h[2] * way.z(),
                    h[1] * way.x() + h[3] * way.y() + h[4] * way.z(),
                    h[2] * way.x() + h[4] * way.y() + h[5] * way.z());
            jumps += change.minus(expected).length() > 1e-3 * (1 + expected.length()) ? 1 : 0;
        }
        assertThat(jumps).as("points at a joint of the spline out of 500").isLessThanOrEqualTo(3);
    }

    @Test
    void propertyBeyondTheGridTheDistanceIsALowerBoundAndContinuous() {
        SplittableRandom random = new SplittableRandom(5);
        Box box = new Box(0.03, 0.02, 0.04, 0);
        for (int i = 0; i < 1000; i++) {
            Vec3 p = direction(random).times(random.nextDouble(0.06, 0.3));
            double exact = box.distance(p.x(), p.y(), p.z());
            double found = BLOCK.distance(p.x(), p.y(), p.z());
            assertThat(found).isLessThan(exact + 1e-5).isGreaterThan(0.5 * exact);
            assertThat(gradient(BLOCK, p).length()).isBetween(0.0, 1.05);
            Vec3 beside = p.times(1 + 1e-9);
            assertThat(BLOCK.distance(beside.x(), beside.y(), beside.z())).isCloseTo(found, within(1e-8));
        }
    }

    @Test
    void propertyDeepInsideTheDistanceIsGoodToOnePercent() {
        SplittableRandom random = new SplittableRandom(7);
        for (int i = 0; i < 500; i++) {
            double depth = random.nextDouble(0.011, 0.03);
            Vec3 p = direction(random).times(0.035 - depth);
            assertThat(BALL.distance(p.x(), p.y(), p.z())).isCloseTo(-depth, withinPercentage(1.2));
        }
    }

    @Test
    void supportHoldsTheHullsCorners() {
        assertThat(BLOCK.support().balls()).hasSize(8);
        assertThat(BLOCK.supportGap()).isZero();
        assertThat(BALL.support().balls()).hasSize(400);
        // 4102 corners thinned to 400: none of the directions tried is short by more than 0.3 mm.
        assertThat(BALL.supportGap()).isBetween(1e-5, 3e-4);
        assertThat(BLOCK.extent(new Vec3(0.6, 0, 0.8))).isCloseTo(0.018 + 0.032, within(1e-12));
        assertThat(BLOCK.boundingRadius()).isCloseTo(Math.sqrt(0.0029), within(1e-12));
    }

    @Test
    void normalsThatAllPointInwardAreTurned() {
        Mesh turned = Mesh.of(Meshes.flipped(Meshes.box(0.03, 0.02, 0.04)), 20_000);
        assertThat(turned.volume()).isCloseTo(0.06 * 0.04 * 0.08, withinPercentage(1e-9));
        assertThat(turned.distance(0, 0, 0)).isNegative();
        assertThat(turned.distance(0.04, 0, 0)).isPositive();
    }

    @Test
    void cornersThatDifferByRoundingAreWelded() {
        SplittableRandom random = new SplittableRandom(6);
        List<Triangle> shaken = Meshes.box(0.03, 0.02, 0.04).stream()
                .map(t -> new Triangle(shaken(t.a(), random), shaken(t.b(), random), shaken(t.c(), random)))
                .toList();
        assertThat(Mesh.of(shaken, 20_000).support().balls()).hasSize(8);
    }

    private static Vec3 shaken(Vec3 p, SplittableRandom random) {
        return p.plus(direction(random).times(1e-8));
    }

    @Test
    void aMeshWithAHoleIsRefusedNamingTheEdge() {
        List<Triangle> holed = new ArrayList<>(Meshes.box(0.03, 0.02, 0.04));
        holed.remove(0);
        assertThatThrownBy(() -> Mesh.of(holed))
                .hasMessageContaining("the mesh has a hole: 3 edges belong to one triangle only")
                .hasMessageContaining("mm of triangle")
                .hasMessageContaining("fill the holes");
    }

    @Test
    void aTriangleTurnedInsideOutIsRefusedNamingBothTriangles() {
        List<Triangle> mixed = new ArrayList<>(Meshes.box(0.03, 0.02, 0.04));
        Triangle t = mixed.get(5);
        mixed.set(5, new Triangle(t.a(), t.c(), t.b()));
        assertThatThrownBy(() -> Mesh.of(mixed))
                .hasMessageContaining("in the same direction")
                .hasMessageContaining("6 of the mesh")
                .hasMessageContaining("recalculate the normals");
    }

    @Test
    void aCavityIsSubtractedAndABodyInsideOutRefused() {
        List<Triangle> block = Meshes.box(0.03, 0.02, 0.04);
        List<Triangle> hollow = new ArrayList<>(block);
        hollow.addAll(Meshes.flipped(Meshes.box(0.02, 0.01, 0.03)));
        Mesh mesh = Mesh.of(hollow, 100_000);
        assertThat(mesh.volume()).isCloseTo(8 * (24e-6 - 6e-6), withinPercentage(1e-9));
        assertThat(mesh.distance(0, 0, 0)).isPositive();
        assertThat(mesh.distance(0, 0, 0.035)).isNegative();
        List<Triangle> beside = new ArrayList<>(block);
        for (Triangle t : Meshes.flipped(Meshes.box(0.01, 0.01, 0.01))) {
            Vec3 away = new Vec3(0.1, 0, 0);
            beside.add(new Triangle(t.a().plus(away), t.b().plus(away), t.c().plus(away)));
        }
        assertThatThrownBy(() -> Mesh.of(beside))
                .hasMessageContaining("the mesh has 2 separate bodies; the one with triangle 13 is turned inside out");
    }

    @Test
    void aTriangleWithoutAreaIsRefusedNamingItsCorners() {
        List<Triangle> flat = new ArrayList<>(Meshes.box(0.03, 0.02, 0.04));
        flat.add(new Triangle(Vec3.ZERO, Vec3.X.times(0.01), Vec3.X.times(0.02)));
        assertThatThrownBy(() -> Mesh.of(flat))
                .hasMessageContaining("triangle 13 of the mesh has no area")
                .hasMessageContaining("(10.0, 0.0, 0.0) mm");
    }

    @Test
    void notANumberAndTooFewTrianglesAreRefused() {
        assertThatThrownBy(() -> Mesh.of(Meshes.box(0.03, 0.02, Double.NaN)))
                .hasMessageContaining("triangle 1 of the mesh has a coordinate that is not a finite number");
        assertThatThrownBy(() -> Mesh.of(Meshes.box(1, 1, 1).subList(0, 3))).hasMessageContaining("at least 4");
    }

    private static Vec3 gradient(Shape shape, Vec3 p) {
        double[] g = new double[3];
        shape.derivatives(p.x(), p.y(), p.z(), g, new double[6]);
        return new Vec3(g[0], g[1], g[2]);
    }

    private static double slope(Vec3 p, Vec3 axis, double step) {
        Vec3 a = p.plus(axis.times(step));
        Vec3 b = p.minus(axis.times(step));
        return (BLOCK.distance(a.x(), a.y(), a.z()) - BLOCK.distance(b.x(), b.y(), b.z())) / (2 * step);
    }

    private static Vec3 direction(SplittableRandom random) {
        double z = random.nextDouble(-1, 1);
        double angle = random.nextDouble(2 * Math.PI);
        double r = Math.sqrt(1 - z * z);
        return new Vec3(r * Math.cos(angle), r * Math.sin(angle), z);
    }
}
