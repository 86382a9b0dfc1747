package gripwright.closing;

import static org.assertj.core.api.Assertions.assertThat;

import gripwright.math.Vec3;
import gripwright.model.Finger;
import gripwright.model.Joint;
import gripwright.model.PadLayer;
import gripwright.model.Phalanx;
import gripwright.model.PinJoint;
import gripwright.truth.Truth;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;

/** Forces of a single finger on a place that it touches, against the statics of a chain of levers. */
class PressingFingerTest {
    private static final String LEVERS = "moments about each joint, worked by hand";
    private static final double PAD = 0.009;

    private static Finger finger(List<Double> lengths, List<Double> arms, List<Double> rates, List<Double> rests) {
        PadLayer pad = new PadLayer(0.02, 0.004, BenchHands.SOFT);
        List<Phalanx> phalanges = new ArrayList<>();
        List<Joint> joints = new ArrayList<>();
        for (int i = 0; i < lengths.size(); i++) {
            PadLayer own = new PadLayer(lengths.get(i), pad.thickness(), BenchHands.SOFT);
            phalanges.add(new Phalanx(lengths.get(i), 0.018, 0.010, own, Phalanx.Tip.SQUARE));
            joints.add(
                    new Joint(new PinJoint(rates.get(i), OptionalDouble.empty()), rests.get(i), -1, 2.5, arms.get(i)));
        }
        return new Finger("f", Vec3.ZERO, 0, phalanges, joints);
    }

    /** A place that the pad of the last phalanx touches at {@code along}, in the finger's present posture. */
    private static double[] touched(PressingFinger f, double[] lengths, double along) {
        double u = 0;
        double v = 0;
        double angle = 0;
        for (int j = 0; j < lengths.length; j++) {
            angle += f.q[j];
            double length = j == lengths.length - 1 ? along : lengths[j];
            u += length * Math.cos(angle);
            v += length * Math.sin(angle);
        }
        return new double[] {u - PAD * Math.sin(angle), v + PAD * Math.cos(angle)};
    }

    /**
     * Source: lever, N = (T r - k (q - rest)) / a. Worked by hand: the free finger stands where T0 r = k (q - rest), so N
     * = (T - T0) r / a. Units: N, m. Tolerance: 1e-4, the give of the pad over the place turns the joint a little.
     */
    @Test
    void referenceOneJointPressesAsALever() {
        PressingFinger f =
                new PressingFinger(finger(List.of(0.06), List.of(0.01), List.of(0.1), List.of(0.5)), 0, 0, 1);
        f.free(5);
        double[] at = touched(f, new double[] {0.06}, 0.04);
        assertThat(f.gap(at[0], at[1])).isCloseTo(0, Offset.offset(1e-12));
        f.touch(at[0], at[1], 0);
        assertThat(f.press(at[0], at[1], 25)).isTrue();
        double[] force = f.force(at[0], at[1]);
        double normal = Math.hypot(force[0], force[1]);
        double expected = (25 - 5) * 0.01 / 0.04;
        Truth.record("free finger", "one joint, force on a place [N]", LEVERS, expected, normal, "1e-3", "pad gives");
        assertThat(normal).isCloseTo(expected, Offset.offset(1e-3 * expected));
    }

    /**
     * Source: tension over guides, T exp(-mu phi) (Euler-Eytelwein, any machine-design handbook). The bend is the
     * sheath's and that of the first joint from straight out of the palm.
     */
    @Test
    void referenceSheathFrictionTakesItsShareOfTheForce() {
        Finger one = finger(List.of(0.06), List.of(0.01), List.of(1e-6), List.of(1.0));
        PressingFinger f = new PressingFinger(one, 0.1, 2, 1);
        f.free(0);
        double[] at = touched(f, new double[] {0.06}, 0.04);
        f.touch(at[0], at[1], 0);
        assertThat(f.press(at[0], at[1], 25)).isTrue();
        double[] force = f.force(at[0], at[1]);
        double expected = 25 * Math.exp(-0.1 * (2 + Math.PI / 2 - 1.0)) * 0.01 / 0.04;
        double found = Math.hypot(force[0], force[1]);
        Truth.record(
                "free finger", "one joint, sheath 0.1 x 2 rad [N]", "Euler-Eytelwein", expected, found, "1e-3", "");
        assertThat(found).isCloseTo(expected, Offset.offset(1e-3 * expected));
    }

    /**
     * Source: J^T f = torques, two moments about two joints, solved by Cramer's rule from the corners of the triangle.
     * The pad sticks, so the force has a part along it. Tolerance: 0.1 %, the pad gives under the force.
     */
    @Test
    void referenceTwoJointsPressWithTheForceThatBalancesBothJoints() {
        double[] lengths = {0.07, 0.05};
        PressingFinger f = new PressingFinger(
                finger(List.of(0.07, 0.05), List.of(0.012, 0.006), List.of(0.15, 0.05), List.of(0.4, 0.5)), 0, 0, 1);
        f.free(4);
        double q1 = f.q[0];
        double[] at = touched(f, lengths, 0.03);
        f.touch(at[0], at[1], 10);
        for (int i = 1; i <= 10; i++) {
            assertThat(f.press(at[0], at[1], 4 + 2 * i)).isTrue();
        }
        assertThat(f.slides()).isFalse();
        double[] force = f.force(at[0], at[1]);
        // added tension 20 N over the free posture
        double t1 = 20 * 0.012;
        double t2 = 20 * 0.006;
        double x2 = at[0] - 0.07 * Math.cos(q1);
        double y2 = at[1] - 0.07 * Math.sin(q1);
        // x fy - y fx = t about both joints
        double det = -at[1] * x2 + y2 * at[0];
        double fx = (t1 * x2 - t2 * at[0]) / det;
        double fy = (-at[1] * t2 + y2 * t1) / det;
        Truth.record("free finger", "two joints, force along u [N]", LEVERS, fx, force[0], "2e-3", "pad gives");
        Truth.record("free finger", "two joints, force along v [N]", LEVERS, fy, force[1], "2e-3", "pad gives");
        double size = Math.hypot(fx, fy);
        assertThat(force[0]).isCloseTo(fx, Offset.offset(2e-3 * size));
        assertThat(force[1]).isCloseTo(fy, Offset.offset(2e-3 * size));
    }

    /**
     * Source: a pad without friction comes to rest where the first phalanx alone carries nothing, (k2 + L1 cos q2) f =
     * tau1 and k2 f = tau2 (Birglen, Laliberte, Gosselin, "Underactuated Robotic Hands", 2008, from memory), here with
     * the pad's height left out of the levers because a normal force has none of it.
     */
    @Test
    void referenceASmoothPadSlidesToWhereOneForceBalancesBothJoints() {
        PressingFinger f = new PressingFinger(
                finger(List.of(0.07, 0.05), List.of(0.012, 0.004), List.of(0.15, 0.05), List.of(0.4, 0.5)), 0, 0, 1);
        f.free(4);
        double[] at = touched(f, new double[] {0.07, 0.05}, 0.02);
        f.touch(at[0], at[1], 0);
        for (int i = 1; i <= 40; i++) {
            assertThat(f.press(at[0], at[1], 4 + 0.1 * i)).as("step " + i).isTrue();
        }
        assertThat(f.over(at[0], at[1])).isTrue();
        double[] force = f.force(at[0], at[1]);
        double n = Math.hypot(force[0], force[1]);
        double tau1 = 8 * 0.012 - 0.15 * (f.q[0] - 0.4);
        double tau2 = 8 * 0.004 - 0.05 * (f.q[1] - 0.5);
        double k2 = tau2 / n;
        double expected = n * (k2 + 0.07 * Math.cos(f.q[1]));
        Truth.record("free finger", "smooth pad, torque of joint 1 [N m]", "Birglen 2008", expected, tau1, "1e-6", "");
        assertThat(tau1).isCloseTo(expected, Offset.offset(1e-6));
        assertThat(k2).isBetween(0.0, 0.05);
    }

    @Test
    void propertyAFreeFingerStandsWhereSpringAndTendonBalance() {
        PressingFinger f = new PressingFinger(
                finger(List.of(0.07, 0.05), List.of(0.012, 0.004), List.of(0.15, 0.05), List.of(0.4, 0.5)), 0, 0, 2);
        f.free(10);
        assertThat(f.q[0]).isCloseTo(0.4 + 10 * 0.012 / 0.3, Offset.offset(1e-12));
        assertThat(f.q[1]).isCloseTo(0.5 + 10 * 0.004 / 0.1, Offset.offset(1e-12));
    }
}
