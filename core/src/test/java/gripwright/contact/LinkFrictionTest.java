package gripwright.contact;

import static org.assertj.core.api.Assertions.assertThat;

import gripwright.math.Rotation;
import org.assertj.core.data.Offset;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Friction between two moving bodies. Source: the definition of the derivative, by central differences over 1e-9 m; and
 * Coulomb's law (any textbook of mechanics). Units: SI. Tolerance: 1e-6 relative for differences, 1e-12 for the law. Valid
 * with the limit frozen.
 */
class LinkFrictionTest {
    private static final double MU = 0.4;
    private static final double FORCE = 5;
    private static final double STEP = 1e-9;

    private final LinkFriction friction = new LinkFriction(new int[] {0}, new int[] {1});
    private final PointPair pair = new PointPair();
    private final double[] r = new double[18];
    private final double[] t = new double[6];

    /** Body A shifted from where it touched: 0.1 mm holds, 1 mm slides (the limit of 2 N is met at 0.2 mm). */
    @ParameterizedTest
    @ValueSource(doubles = {1e-4, 1e-3})
    void propertyDerivativesAreThoseOfTheEnergy(double shift) {
        touch();
        double[] away = {0.6 * shift, -0.8 * shift, 0.3 * shift};
        double[] g = gradient(away, true);
        double[] s = pair.s.clone();
        for (int k = 0; k < 3; k++) {
            double[] up = away.clone();
            double[] down = away.clone();
            up[k] += STEP;
            down[k] -= STEP;
            assertThat(g[k]).isCloseTo((energy(up) - energy(down)) / (2 * STEP), Offset.offset(1e-6 * FORCE));
            double[] gUp = gradient(up, false);
            double[] gDown = gradient(down, false);
            for (int i = 0; i < 3; i++) {
                assertThat(s[3 * i + k]).isCloseTo((gUp[i] - gDown[i]) / (2 * STEP), Offset.offset(1e-6 * 1e4));
            }
        }
        double size = Math.sqrt(g[0] * g[0] + g[1] * g[1] + g[2] * g[2]);
        assertThat(size).isCloseTo(Math.min(MU * FORCE, 1e4 * shift), Offset.offset(1e-9));
        assertThat(g[2]).isZero();
    }

    /** After a slide is committed the shear on B is mu f along the motion of A. */
    @ParameterizedTest
    @ValueSource(doubles = {5e-4, 5e-3})
    void referenceCommitLeavesTheShearAtTheLimit(double shift) {
        touch();
        System.arraycopy(new double[] {shift, 0, 0}, 0, t, 0, 3);
        pair.a[0] += shift;
        friction.remember(0, FORCE, pair, r, t);
        assertThat(friction.onB(0, 0)).isCloseTo(MU * FORCE, Offset.offset(1e-12));
        assertThat(friction.onB(0, 1)).isZero();
        assertThat(friction.slid(0, r, t)).isZero();
    }

    private void touch() {
        System.arraycopy(Rotation.IDENTITY.toArray(), 0, r, 0, 9);
        System.arraycopy(Rotation.IDENTITY.toArray(), 0, r, 9, 9);
        java.util.Arrays.fill(t, 0);
        pair.bodyA = 0;
        pair.bodyB = 1;
        pair.n[0] = 0;
        pair.n[1] = 0;
        pair.n[2] = 1;
        friction.setCoefficient(MU);
        friction.forget(0);
        friction.remember(0, FORCE, pair, r, t);
    }

    private double energy(double[] shift) {
        System.arraycopy(shift, 0, t, 0, 3);
        java.util.Arrays.fill(pair.g, 0);
        java.util.Arrays.fill(pair.s, 0);
        return friction.add(0, LinkContacts.STIFFNESS, r, t, false, pair);
    }

    private double[] gradient(double[] shift, boolean wantHessian) {
        System.arraycopy(shift, 0, t, 0, 3);
        java.util.Arrays.fill(pair.g, 0);
        java.util.Arrays.fill(pair.s, 0);
        friction.add(0, LinkContacts.STIFFNESS, r, t, wantHessian, pair);
        return pair.g.clone();
    }
}
