package gripwright.contact;

import static org.assertj.core.api.Assertions.assertThat;

import gripwright.math.Vec3;
import java.util.Random;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Friction of one point of a pad. Source of the expected values: the definition of the derivative, by central
 * differences, and Coulomb's law (any textbook of mechanics): shear never above mu times the normal force, along the slip.
 * Units: SI. Tolerance: 1e-6 relative for differences, 1e-12 for the law. Valid with the limit frozen.
 */
class PadFrictionTest {
    private static final double MU = 0.5;
    private static final double KT = 2000;
    private static final double FORCE = 4;
    /** Slip at which the spring yields [m]. */
    private static final double MOST = MU * FORCE / KT;

    private static final double STEP = 1e-8;

    /** Half the cases stick, half slide; the place is off the tangent plane as well. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6})
    void propertyDerivativesAreThoseOfTheEnergy(long seed) {
        Random random = new Random(seed);
        PadFriction friction = anchored(direction(random));
        double size = (seed % 2 == 0 ? 0.5 : 2.5) * MOST;
        double[] y = array(direction(random).times(size));
        PointTerms terms = new PointTerms();
        double energy = friction.add(0, y[0], y[1], y[2], true, terms);
        assertThat(energy).isCloseTo(friction.energy(0, y[0], y[1], y[2]), Offset.offset(1e-12));
        double[] gradient = gradient(friction, y);
        double[][] second = {
            {terms.sxx, terms.sxy, terms.sxz}, {terms.sxy, terms.syy, terms.syz}, {terms.sxz, terms.syz, terms.szz}
        };
        for (int k = 0; k < 3; k++) {
            double[] up = y.clone();
            double[] down = y.clone();
            up[k] += STEP;
            down[k] -= STEP;
            double slope = (friction.energy(0, up[0], up[1], up[2]) - friction.energy(0, down[0], down[1], down[2]))
                    / (2 * STEP);
            assertThat(gradient[k]).as("seed " + seed + ", axis " + k).isCloseTo(slope, Offset.offset(1e-6 * FORCE));
            double[] gUp = gradient(friction, up);
            double[] gDown = gradient(friction, down);
            for (int i = 0; i < 3; i++) {
                assertThat(second[i][k])
                        .as("seed " + seed + ", S " + i + k)
                        .isCloseTo((gUp[i] - gDown[i]) / (2 * STEP), Offset.offset(1e-6 * KT));
            }
        }
    }

    @Test
    void referenceSpringBelowTheLimitAndCoulombBeyondIt() {
        PadFriction friction = anchored(Vec3.Z);
        assertThat(gradient(friction, new double[] {0.5 * MOST, 0, 1})[0])
                .isCloseTo(0.5 * MU * FORCE, Offset.offset(1e-12));
        assertThat(friction.slid).isFalse();
        double[] beyond = gradient(friction, new double[] {3 * MOST, 4 * MOST, -1});
        assertThat(friction.slid).isTrue();
        assertThat(beyond[0]).isCloseTo(0.6 * MU * FORCE, Offset.offset(1e-12));
        assertThat(beyond[1]).isCloseTo(0.8 * MU * FORCE, Offset.offset(1e-12));
        assertThat(beyond[2]).isZero();
    }

    /** After a slide the anchor trails by the yield slip: the shear is mu f against the motion of the object. */
    @Test
    void referenceReturnMappingLeavesTheShearAtTheLimit() {
        PadFriction friction = anchored(Vec3.Z);
        double[] y = {7 * MOST, 0, 0};
        friction.remember(0, y[0], y[1], y[2], FORCE, new double[] {0, 0, 0.3});
        double[] out = new double[6];
        friction.onObject(0, y, out);
        assertThat(out).containsExactly(new double[] {0, 0, -1, MU * FORCE, 0, 0}, Offset.offset(1e-12));
    }

    @Test
    void forgottenOrUnpressedPointsHoldNothing() {
        PadFriction friction = anchored(Vec3.Z);
        friction.press(0, 0);
        assertThat(friction.holds(0)).isFalse();
        assertThat(friction.energy(0, MOST, 0, 0)).isZero();
        friction.press(0, FORCE);
        assertThat(friction.holds(0)).isTrue();
        friction.forget(0);
        friction.press(0, FORCE);
        assertThat(friction.energy(0, MOST, 0, 0)).isZero();
    }

    private static PadFriction anchored(Vec3 normal) {
        PadFriction friction = new PadFriction(1);
        friction.reset(0, MU, KT);
        friction.remember(0, 0, 0, 0, FORCE, array(normal));
        return friction;
    }

    private static double[] gradient(PadFriction friction, double[] y) {
        PointTerms terms = new PointTerms();
        friction.add(0, y[0], y[1], y[2], false, terms);
        return new double[] {terms.gx, terms.gy, terms.gz};
    }

    private static Vec3 direction(Random random) {
        return new Vec3(random.nextGaussian(), random.nextGaussian(), random.nextGaussian()).unit();
    }

    private static double[] array(Vec3 v) {
        return new double[] {v.x(), v.y(), v.z()};
    }
}
