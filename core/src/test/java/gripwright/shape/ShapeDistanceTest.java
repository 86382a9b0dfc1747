package gripwright.shape;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gripwright.math.Vec3;
import java.util.SplittableRandom;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What every shape promises, at seeded random points against an independent description of its surface. */
class ShapeDistanceTest {
    private static final String ALL = "gripwright.shape.Solids#all";
    private static final double FAR = 0.02;

    /** A random point whose distance lies in the smooth range. */
    private static Vec3 point(Solids solid, SplittableRandom random) {
        double reach = solid.shape().boundingRadius() + FAR;
        while (true) {
            Vec3 p = new Vec3(
                    random.nextDouble(-reach, reach),
                    random.nextDouble(-reach, reach),
                    random.nextDouble(-reach, reach));
            double d = solid.shape().distance(p.x(), p.y(), p.z());
            if (d > -solid.deepest() && d < FAR) {
                return p;
            }
        }
    }

    private static double distance(Solids solid, Vec3 p) {
        return solid.shape().distance(p.x(), p.y(), p.z());
    }

    private static double[] gradient(Solids solid, Vec3 p) {
        double[] g = new double[3];
        solid.shape().derivatives(p.x(), p.y(), p.z(), g, new double[6]);
        return g;
    }

    private static final Vec3[] AXES = {Vec3.X, Vec3.Y, Vec3.Z};

    @ParameterizedTest
    @MethodSource(ALL)
    void propertyDistanceIsThatOfTheNearestSurfacePoint(Solids solid) {
        SplittableRandom random = new SplittableRandom(1);
        for (int i = 0; i < 60; i++) {
            Vec3 p = point(solid, random);
            double found = distance(solid, p);
            double nearest = Patch.nearest(solid.surface(), p);
            if (solid.shape() instanceof Composite && found < 0) {
                // Surface of one part that is covered by the other is not surface of the union.
                assertThat(-found).as("depth at " + p).isGreaterThanOrEqualTo(nearest - 1e-9);
            } else if (solid.shape() instanceof Composite) {
                // The fillet takes up to a quarter of its size off the distance.
                assertThat(found)
                        .as("distance at " + p)
                        .isBetween(nearest - Composite.FILLET / 4 - 2e-9, nearest + 2e-9);
            } else {
                assertThat(Math.abs(found)).as("distance at " + p).isCloseTo(nearest, within(2e-9));
            }
        }
    }

    @ParameterizedTest
    @MethodSource(ALL)
    void propertyGradientIsTheSlopeOfTheDistanceAndAUnitVector(Solids solid) {
        SplittableRandom random = new SplittableRandom(2);
        double step = 1e-7;
        int kinks = 0;
        for (int i = 0; i < 400; i++) {
            Vec3 p = point(solid, random);
            double[] g = gradient(solid, p);
            assertUnit(solid, p, g);
            double worst = 0;
            for (int axis = 0; axis < 3; axis++) {
                Vec3 way = AXES[axis].times(step);
                double slope = (distance(solid, p.plus(way)) - distance(solid, p.minus(way))) / (2 * step);
                worst = Math.max(worst, Math.abs(slope - g[axis]));
            }
            kinks += worst > 1e-6 ? 1 : 0;
        }
        assertThat(kinks).as("points on a kink out of 400").isZero();
    }

    /** Length 1, but for a composite, where it is shorter in a fillet. */
    private static void assertUnit(Solids solid, Vec3 p, double[] g) {
        double length = new Vec3(g[0], g[1], g[2]).length();
        if (solid.shape() instanceof Composite) {
            assertThat(length).as("gradient at " + p).isLessThanOrEqualTo(1 + 1e-12);
        } else {
            assertThat(length).as("gradient at " + p).isCloseTo(1, within(1e-12));
        }
    }

    @ParameterizedTest
    @MethodSource(ALL)
    void propertyHessianIsTheSlopeOfTheGradient(Solids solid) {
        SplittableRandom random = new SplittableRandom(3);
        double step = 1e-6;
        int[][] order = {{0, 1, 2}, {1, 3, 4}, {2, 4, 5}};
        int kinks = 0;
        for (int i = 0; i < 400; i++) {
            Vec3 p = point(solid, random);
            double[] h = new double[6];
            solid.shape().derivatives(p.x(), p.y(), p.z(), new double[3], h);
            double largest = 1;
            double worst = 0;
            for (int axis = 0; axis < 3; axis++) {
                double[] ahead = gradient(solid, p.plus(AXES[axis].times(step)));
                double[] behind = gradient(solid, p.minus(AXES[axis].times(step)));
                for (int k = 0; k < 3; k++) {
                    double slope = (ahead[k] - behind[k]) / (2 * step);
                    largest = Math.max(largest, Math.abs(h[order[axis][k]]));
                    worst = Math.max(worst, Math.abs(slope - h[order[axis][k]]));
                }
            }
            kinks += worst > 1e-5 * largest ? 1 : 0;
        }
        // Where a face meets its rounding the curvature jumps; few random points lie within 1 um of that.
        assertThat(kinks).as("points on a jump of curvature out of 400").isLessThanOrEqualTo(2);
    }

    @ParameterizedTest
    @MethodSource(ALL)
    void propertySurfacePointsLieAtDistanceZero(Solids solid) {
        SplittableRandom random = new SplittableRandom(4);
        for (Patch patch : solid.surface()) {
            for (int i = 0; i < 50; i++) {
                Vec3 p = patch.at(random.nextDouble(), random.nextDouble());
                if (solid.shape() instanceof Composite) {
                    assertThat(distance(solid, p)).isLessThan(1e-12);
                } else {
                    assertThat(distance(solid, p)).isCloseTo(0, within(1e-12));
                }
                assertThat(p.length()).isLessThanOrEqualTo(solid.shape().boundingRadius() + 1e-12);
            }
        }
    }

    @ParameterizedTest
    @MethodSource(ALL)
    void propertyExtentIsTheFarthestSurfacePointAndTheSupportsExtent(Solids solid) {
        SplittableRandom random = new SplittableRandom(5);
        for (int i = 0; i < 40; i++) {
            Vec3 way = new Vec3(random.nextDouble(-1, 1), random.nextDouble(-1, 1), random.nextDouble(-1, 1)).unit();
            double extent = solid.shape().extent(way);
            // Of a far away plane's points: how much nearer than the plane through the origin is the surface?
            double far = 1e3;
            double sampled = far - Patch.nearest(solid.surface(), way.times(far));
            assertThat(solid.shape().support().extent(way)).isCloseTo(extent, within(1e-12));
            assertThat(sampled).as("extent along " + way).isCloseTo(extent, within(3e-6));
        }
    }

    @ParameterizedTest
    @MethodSource(ALL)
    void propertyVolumeAndCentroidAgreeWithCounting(Solids solid) {
        if (solid.shape() instanceof Composite) {
            return;
        }
        SplittableRandom random = new SplittableRandom(6);
        double x = solid.shape().extent(Vec3.X);
        double y = solid.shape().extent(Vec3.Y);
        double z = solid.shape().extent(Vec3.Z);
        int tries = 200_000;
        int inside = 0;
        Vec3 sum = Vec3.ZERO;
        for (int i = 0; i < tries; i++) {
            Vec3 p = new Vec3(random.nextDouble(-x, x), random.nextDouble(-y, y), random.nextDouble(-z, z));
            if (distance(solid, p) < 0) {
                inside++;
                sum = sum.plus(p);
            }
        }
        double share = (double) inside / tries;
        double deviation = 8 * x * y * z * Math.sqrt(share * (1 - share) / tries);
        assertThat(solid.shape().volume()).isCloseTo(8 * x * y * z * share, within(4 * deviation));
        Vec3 centre = sum.times(1.0 / inside).minus(solid.shape().centroid());
        double spread = Math.max(x, Math.max(y, z)) / Math.sqrt(inside);
        assertThat(centre.length()).isLessThan(4 * spread);
    }

    @ParameterizedTest
    @MethodSource(ALL)
    void valuesAreFiniteOnAxesPlanesAndFarAway(Solids solid) {
        double[] places = {-3, -0.03, -1e-9, 0, 1e-9, 0.012, 0.03, 0.05, 3};
        double[] g = new double[3];
        double[] h = new double[6];
        for (double x : places) {
            for (double y : places) {
                for (double z : places) {
                    Vec3 p = new Vec3(x, y, z);
                    assertThat(distance(solid, p)).as("distance at " + p).isFinite();
                    solid.shape().derivatives(x, y, z, g, h);
                    assertUnit(solid, p, g);
                    for (double entry : h) {
                        assertThat(entry).as("hessian at " + p).isFinite();
                    }
                }
            }
        }
    }

    @ParameterizedTest
    @MethodSource(ALL)
    void propertyDistanceNeverChangesFasterThanThePointMoves(Solids solid) {
        SplittableRandom random = new SplittableRandom(8);
        for (int i = 0; i < 2000; i++) {
            Vec3 p = new Vec3(
                    random.nextDouble(-0.08, 0.08), random.nextDouble(-0.08, 0.08), random.nextDouble(-0.08, 0.08));
            Vec3 q = p.plus(new Vec3(
                    random.nextDouble(-0.01, 0.01), random.nextDouble(-0.01, 0.01), random.nextDouble(-0.01, 0.01)));
            double change = Math.abs(distance(solid, p) - distance(solid, q));
            assertThat(change)
                    .as("from " + p + " to " + q)
                    .isLessThanOrEqualTo(p.minus(q).length() + 1e-12);
        }
    }
}
