package gripwright.contact;

import static org.assertj.core.api.Assertions.assertThat;

import gripwright.contact.PadPoints.Point;
import gripwright.math.Rotation;
import gripwright.math.Vec3;
import gripwright.shape.Box;
import gripwright.shape.Cylinder;
import gripwright.shape.Shape;
import gripwright.shape.Sphere;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.assertj.core.data.Offset;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Leaving out rows and bodies that cannot have come near must not change a force.
 *
 * <p>Source: the contact law itself, summed here over all points. Units: N, N m. Tolerance: 1e-12 relative, order of the
 * sum. Valid for any motion since the last commit, large or small.
 */
class SkippingTest {
    private static final double STIFFNESS = 3000;
    private static final double TOE = 1e-4;

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6})
    void propertySkippingNeverMissesAPoint(long seed) {
        Random random = new Random(seed);
        Shape shape = List.of(new Sphere(0.03), new Cylinder(0.025, 0.04, 0.002), new Box(0.02, 0.03, 0.025, 0.002))
                .get((int) (seed % 3));
        PadPoints points = points();
        PadContact contact = new PadContact(points, shape);
        contact.reset(new double[] {0}, 1);
        int pressed = 0;
        for (int trial = 0; trial < 400; trial++) {
            Rotation turn = Rotation.about(direction(random), random.nextDouble());
            Vec3 place = direction(random).times(0.03 + 0.03 * random.nextDouble());
            contact.commit(turn.toArray(), array(place));
            double size = StrictMath.pow(10, -5 + 4 * random.nextDouble());
            turn = turn.times(Rotation.about(direction(random), size / 0.03 * random.nextDouble()));
            place = place.plus(direction(random).times(size * random.nextDouble()));
            Block block = new Block();
            double energy = contact.accumulate(0, turn.toArray(), array(place), true, false, block);
            double expected = 0;
            Vec3 force = Vec3.ZERO;
            double[] n = new double[3];
            double[] h = new double[6];
            for (Point p : points.points()) {
                Vec3 y = turn.apply(p.place()).plus(place);
                double d = p.radius() - shape.distance(y.x(), y.y(), y.z());
                if (d > 0) {
                    pressed++;
                    double f = d < TOE ? STIFFNESS * d * d / (2 * TOE) : STIFFNESS * (d - TOE / 2);
                    expected += d < TOE
                            ? STIFFNESS * d * d * d / (6 * TOE)
                            : STIFFNESS * (d * d / 2 - d * TOE / 2 + TOE * TOE / 6);
                    shape.derivatives(y.x(), y.y(), y.z(), n, h);
                    force = force.minus(new Vec3(n[0], n[1], n[2]).times(f));
                }
            }
            assertThat(energy).as("seed " + seed + ", trial " + trial).isCloseTo(expected, near(expected));
            assertThat(contact.energy(0, turn.toArray(), array(place), true)).isCloseTo(expected, near(expected));
            assertThat(block.fx).isCloseTo(force.x(), near(force.length()));
            assertThat(block.fz).isCloseTo(force.z(), near(force.length()));
        }
        assertThat(pressed).isGreaterThan(300);
    }

    private static Offset<Double> near(double size) {
        return Offset.offset(1e-12 * Math.max(1e-3, size));
    }

    private static PadPoints points() {
        PadPoints.Builder builder = new PadPoints.Builder().body();
        for (int i = 0; i < 12; i++) {
            List<Point> row = new ArrayList<>();
            for (int k = 0; k < 5; k++) {
                row.add(new Point(
                        new Vec3(-0.02 + 0.004 * i, 0.004, -0.008 + 0.004 * k),
                        Vec3.Y,
                        i % 3 == 2 ? 0.003 : 0,
                        STIFFNESS,
                        1,
                        0,
                        "any"));
            }
            builder.row(row);
        }
        return builder.build();
    }

    private static Vec3 direction(Random random) {
        return new Vec3(random.nextGaussian(), random.nextGaussian(), random.nextGaussian()).unit();
    }

    private static double[] array(Vec3 v) {
        return new double[] {v.x(), v.y(), v.z()};
    }
}
