package gripwright.contact;

import static org.assertj.core.api.Assertions.assertThat;

import gripwright.math.Vec3;
import java.util.Random;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;

/**
 * Closest points of two segments. Source: Euclidean geometry; worked by hand where a number stands, and against 101 x 101
 * pairs of points of random segments. Units: m. Tolerance: 1e-12 by hand. Valid for segments that have a length.
 */
class SegmentPairTest {
    private final SegmentPair pair = new SegmentPair();

    @Test
    void referenceCrossedAndPassingSegments() {
        // crossed at right angles, 3 apart
        assertThat(distance(new Vec3(-1, 0, 3), Vec3.X.times(2), new Vec3(0, -1, 0), Vec3.Y.times(2)))
                .isCloseTo(3, Offset.offset(1e-12));
        assertThat(pair.s).isCloseTo(0.5, Offset.offset(1e-12));
        assertThat(pair.dz).isCloseTo(3, Offset.offset(1e-12));
        // end to end, 3 along and 4 across
        assertThat(distance(Vec3.ZERO, Vec3.X, new Vec3(4, 4, 0), Vec3.X)).isCloseTo(5, Offset.offset(1e-12));
        // parallel, side by side
        assertThat(distance(Vec3.ZERO, Vec3.X, new Vec3(0.25, 2, 0), Vec3.X)).isCloseTo(2, Offset.offset(1e-12));
    }

    @Test
    void propertyNoTwoPointsAreCloser() {
        for (long seed = 1; seed <= 200; seed++) {
            Random random = new Random(seed);
            Vec3 a = vector(random);
            Vec3 u = vector(random);
            Vec3 b = vector(random);
            Vec3 v = vector(random);
            double found = distance(a, u, b, v);
            double least = Double.POSITIVE_INFINITY;
            for (int i = 0; i <= 100; i++) {
                for (int k = 0; k <= 100; k++) {
                    Vec3 apart = a.plus(u.times(i / 100.0)).minus(b).minus(v.times(k / 100.0));
                    least = Math.min(least, apart.length());
                }
            }
            // no farther from the truth than half a step of each grid
            assertThat(found).as("seed " + seed).isBetween(least - (u.length() + v.length()) / 200, least + 1e-12);
            Vec3 d = new Vec3(pair.dx, pair.dy, pair.dz);
            Vec3 onSecond = a.plus(u.times(pair.s)).minus(d).minus(b);
            assertThat(d.length()).isCloseTo(found, Offset.offset(1e-12));
            assertThat(onSecond.cross(v).length())
                    .as("on the second's line, seed " + seed)
                    .isLessThan(1e-9);
        }
    }

    private double distance(Vec3 a, Vec3 u, Vec3 b, Vec3 v) {
        Vec3 w = a.minus(b);
        return pair.distance(u.x(), u.y(), u.z(), u.dot(u), v.x(), v.y(), v.z(), v.dot(v), w.x(), w.y(), w.z());
    }

    private static Vec3 vector(Random random) {
        return new Vec3(random.nextGaussian(), random.nextGaussian(), random.nextGaussian());
    }
}
