package gripwright.closing;

import static org.assertj.core.api.Assertions.assertThat;

import gripwright.math.Pose;
import gripwright.math.Rotation;
import gripwright.math.Vec3;
import gripwright.model.ArmCompliance;
import gripwright.model.FingerTendon;
import gripwright.model.Floating;
import gripwright.model.Hand;
import gripwright.model.Motor;
import gripwright.model.Spool;
import gripwright.model.Spread;
import gripwright.model.Transmission.Branch;
import gripwright.shape.Box;
import gripwright.shape.Cylinder;
import gripwright.shape.Shape;
import gripwright.shape.Sphere;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The step's gradient against central differences of its energy, and its second derivative with the friction coupling
 * against differences of the gradient. Source of the expected values: the definition of the derivative.
 */
class DerivativesTest {
    private static final double STEP = 1e-7;

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6})
    void propertyGradientIsTheSlopeOfTheEnergy(long seed) {
        StepSystem s = someState(seed);
        double scale = 0;
        s.evaluate(true);
        double[] g = s.gradient.clone();
        for (double v : g) {
            scale = Math.max(scale, Math.abs(v));
        }
        Mover mover = new Mover(s);
        for (int i = 0; i < s.size; i++) {
            mover.to(i, STEP);
            double up = s.energy();
            mover.to(i, -STEP);
            double down = s.energy();
            mover.back();
            s.evaluate(true);
            assertThat((up - down) / (2 * STEP))
                    .as("seed " + seed + ", unknown " + i)
                    .isCloseTo(g[i], org.assertj.core.data.Offset.offset(2e-4 * Math.max(1, scale)));
        }
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6})
    void propertySecondDerivativeIsTheSlopeOfTheGradient(long seed) {
        secondDerivative(someState(seed), seed, -1);
    }

    /** The same with a pulling or a turning spring on the object, stretched as in the middle of a test of the hold. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6})
    void propertySpringsOnTheObjectKeepTheDerivatives(long seed) {
        StepSystem s = alone(seed);
        s.evaluate(true);
        double[] g = s.gradient.clone();
        Mover mover = new Mover(s);
        for (int i = s.objectIndex(); i < s.size; i++) {
            mover.to(i, 1e-5);
            double up = s.energy();
            mover.to(i, -1e-5);
            double down = s.energy();
            mover.back();
            assertThat((up - down) / 2e-5)
                    .as("seed " + seed + ", unknown " + i)
                    .isCloseTo(g[i], org.assertj.core.data.Offset.offset(1e-6 * 100));
        }
        secondDerivative(s, seed, 0);
    }

    /** What the push between palm and object adds, on hands with and without a soft arm. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4})
    void propertyAPushAgainstThePalmKeepsTheDerivatives(long seed) {
        StepSystem s = someState(seed);
        Vec3 place = new Vec3(s.p[0] + 0.01, s.p[1] - 0.02, s.p[2] + 0.03);
        Pose held = new Pose(new Vec3(s.p[0], s.p[1], s.p[2]), Rotation.of(s.r, 0));
        s.updatePoses();
        PressSpring press = new PressSpring(
                new Vec3(0.3, -0.5, seed).unit(), 2e4, s.bodyPose(0).applyInverse(place), held, place);
        press.farEnd(0.002);
        Mover mover = new Mover(s);
        double[] g = ofPress(s, press, 0, 0);
        s.press = press;
        s.evaluate(true);
        double[] h = s.hessian.clone();
        s.press = null;
        s.evaluate(true);
        for (int i = 0; i < h.length; i++) {
            h[i] -= s.hessian[i];
        }
        for (int k = 0; k < s.size; k++) {
            mover.to(k, STEP);
            s.updatePoses();
            double up = press.energy(s.objectRotation, s.objectPosition);
            double[] gUp = ofPress(s, press, k, STEP);
            mover.to(k, -STEP);
            s.updatePoses();
            double down = press.energy(s.objectRotation, s.objectPosition);
            double[] gDown = ofPress(s, press, k, -STEP);
            mover.back();
            assertThat((up - down) / (2 * STEP))
                    .as("seed " + seed + ", unknown " + k)
                    .isCloseTo(g[k], org.assertj.core.data.Offset.offset(1e-4));
            for (int i = 0; i < s.size; i++) {
                assertThat((gUp[i] - gDown[i]) / (2 * STEP))
                        .as("seed " + seed + ", entry " + i + ", " + k)
                        .isCloseTo(h[i * s.size + k], org.assertj.core.data.Offset.offset(0.05));
            }
        }
    }

    /** Gradient that the push alone adds at the present state, in the axes of the base. */
    private static double[] ofPress(StepSystem s, PressSpring press, int unknown, double by) {
        s.press = null;
        s.evaluate(false);
        double[] without = s.gradient.clone();
        s.press = press;
        s.evaluate(false);
        s.press = null;
        for (int i = 0; i < s.size; i++) {
            s.gradient[i] -= without[i];
        }
        return by == 0 ? s.gradient.clone() : inBaseAxes(s, unknown, by);
    }

    /** Nothing but the spring acts on the object: no contact hides a fault in it. */
    private static StepSystem alone(long seed) {
        Random random = new Random(seed);
        StepSystem s = new StepSystem(Rig.empty(), new Sphere(0.03));
        s.tableThere = false;
        s.object.mass = 0.1;
        s.object.centreOfMass[0] = 0.01;
        s.object.centreOfMass[2] = -0.02;
        Vec3 n = new Vec3(random.nextGaussian(), random.nextGaussian(), random.nextGaussian()).unit();
        Newton.turn(s.r.clone(), random.nextGaussian(), random.nextGaussian(), random.nextGaussian(), s.r);
        s.object.pull =
                seed % 2 == 0 ? new PullSpring(s.object, n, 2e4, s.p, s.r) : new TurnSpring(s.object, n, 18, s.r);
        s.object.pull.farEnd(seed % 2 == 0 ? 0.004 : 0.3);
        s.p[0] += 1e-3;
        s.p[1] -= 2e-3;
        Newton.turn(s.r.clone(), 0.2 * random.nextGaussian(), 0.2 * random.nextGaussian(), 0.2, s.r);
        s.commit();
        return s;
    }

    private static void secondDerivative(StepSystem s, long seed, int mostBad) {
        s.evaluate(true);
        int n = s.size;
        double[] h = s.hessian.clone();
        for (int i = 0; i < h.length; i++) {
            h[i] += s.skew[i];
        }
        Mover mover = new Mover(s);
        int bad = 0;
        double worst = 0;
        for (int k = 0; k < n; k++) {
            mover.to(k, STEP);
            s.evaluate(false);
            double[] up = inBaseAxes(s, k, STEP);
            mover.to(k, -STEP);
            s.evaluate(false);
            double[] down = inBaseAxes(s, k, -STEP);
            mover.back();
            for (int i = 0; i < n; i++) {
                double difference = (up[i] - down[i]) / (2 * STEP);
                double size = Math.sqrt(Math.abs(h[i * n + i] * h[k * n + k])) + 1e-6;
                double error = Math.abs(difference - h[i * n + k]) / size;
                worst = Math.max(worst, error);
                // links against links and table leave out the motion of the closest points; contacts may switch
                if (error > 2e-3) {
                    bad++;
                }
            }
        }
        assertThat(bad)
                .as("seed " + seed + ": entries off by more than 2e-3, worst " + worst)
                .isLessThanOrEqualTo(mostBad < 0 ? n / 4 : mostBad);
        assertThat(worst).as("seed " + seed).isLessThan(0.05);
    }

    /**
     * The gradient comes in the axes of the turned object; the second derivative is meant in those of the base. For a
     * small turn w: shifts g + w x g, turns g + w x g / 2 (first order of the exponential map).
     */
    private static double[] inBaseAxes(StepSystem s, int unknown, double by) {
        double[] g = s.gradient.clone();
        int t = s.objectIndex() + 3;
        if (unknown < t) {
            return g;
        }
        double[] w = new double[3];
        w[unknown - t] = by;
        for (int block = 0; block < 2; block++) {
            int o = s.objectIndex() + 3 * block;
            double f = block == 0 ? 1 : 0.5;
            double x = w[1] * g[o + 2] - w[2] * g[o + 1];
            double y = w[2] * g[o] - w[0] * g[o + 2];
            double z = w[0] * g[o + 1] - w[1] * g[o];
            g[o] += f * x;
            g[o + 1] += f * y;
            g[o + 2] += f * z;
        }
        return g;
    }

    /** Moves one unknown from a kept base, by the same update as the solver's. */
    private static final class Mover {
        private final StepSystem s;
        private final double[] q;
        private final double[] spool;
        private final double[] p;
        private final double[] r;

        Mover(StepSystem s) {
            this.s = s;
            q = s.q.clone();
            spool = s.rig.drive().spool().clone();
            p = s.p.clone();
            r = s.r.clone();
        }

        void back() {
            System.arraycopy(q, 0, s.q, 0, q.length);
            System.arraycopy(spool, 0, s.rig.drive().spool(), 0, spool.length);
            System.arraycopy(p, 0, s.p, 0, 3);
            System.arraycopy(r, 0, s.r, 0, 9);
        }

        void to(int unknown, double by) {
            back();
            int o = s.objectIndex();
            if (unknown < s.joints) {
                s.q[unknown] += by;
            } else if (unknown < o) {
                s.rig.drive().spool()[unknown - s.joints] += by;
            } else if (unknown < o + 3) {
                for (int i = 0; i < 3; i++) {
                    s.p[i] += r[3 * i + unknown - o] * by;
                }
            } else {
                double[] w = new double[3];
                w[unknown - o - 3] = by;
                Newton.turn(r, w[0], w[1], w[2], s.r);
            }
        }
    }

    /** A held or pushed object of one of three shapes, one of three hands, shaken a little. */
    private static StepSystem someState(long seed) {
        Random random = new Random(seed);
        Shape shape = new Shape[] {new Sphere(0.035), new Cylinder(0.03, 0.05, 0.003), new Box(0.03, 0.03, 0.03, 0.003)}
                [(int) (seed % 3)];
        double height = new double[] {0.07, 0.10, 0.06}[(int) (seed % 3)];
        Hand hand = seed % 2 == 0 ? BenchHands.threeFinger(OptionalDouble.of(2), 0.15) : softArmedSpoolHand();
        ClosingSimulator sim = new ClosingSimulator(
                hand,
                BenchHands.above(0.13 - height),
                BenchHands.object("object", shape, 0.2),
                Spread.exactly(0.4),
                Numerics.DEFAULT.withPadPoints(7, 3),
                Criteria.DEFAULT);
        sim.run(Conditions.at(0.004, 0.01, 0.1));
        StepSystem s = sim.system;
        s.tableHeight = -0.00002;
        for (int j = 0; j < s.joints; j++) {
            s.q[j] += 2e-3 * random.nextGaussian();
        }
        for (int i = 0; i < 3; i++) {
            s.p[i] += 1e-4 * random.nextGaussian();
        }
        double[] before = s.r.clone();
        Newton.turn(
                before, 3e-3 * random.nextGaussian(), 3e-3 * random.nextGaussian(), 3e-3 * random.nextGaussian(), s.r);
        s.stepTime = 0.01;
        return s;
    }

    private static Hand softArmedSpoolHand() {
        Hand h = BenchHands.threeFinger(OptionalDouble.empty(), 0.1);
        Motor motor = new Motor(
                "main",
                new Floating(List.of(
                        new Branch(
                                1,
                                new Spool(List.of(
                                        new Branch(1, new FingerTendon("left")),
                                        new Branch(1, new FingerTendon("right"))))),
                        new Branch(1, new FingerTendon("thumb")))),
                40,
                2e4,
                0.1,
                Map.of("left", 1.0),
                Motor.WhenOff.LOCKED);
        return new Hand(
                "soft arm",
                h.palm(),
                h.fingers(),
                List.of(motor),
                h.friction(),
                Optional.of(new ArmCompliance(new Vec3(5e3, 5e3, 8e3), new Vec3(40, 40, 20))),
                h.grips());
    }
}
