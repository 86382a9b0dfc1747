package gripwright.closing;

import static org.assertj.core.api.Assertions.assertThat;

import gripwright.closing.ClosingDetail.JointState;
import gripwright.closing.ContactForce.Kind;
import gripwright.math.Vec3;
import gripwright.model.Finger;
import gripwright.model.Hand;
import gripwright.model.Spread;
import gripwright.shape.Sphere;
import gripwright.truth.Truth;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.assertj.core.data.Offset;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Forces and moments at the end of any run, whatever the hand.
 *
 * <p>Source: balance of forces and moments, Coulomb's law. Worked outside: computed here from the published end state
 * only (contacts, axes, springs, tensions, arms). Units: N, N m, m. Tolerance: 1e-4 N on the object and 1e-6 N m at the
 * joints, the bars of every end state. Valid for states of rest: not for a run stopped on the way or while falling.
 */
class BalanceTest {
    private static final String SOURCE = "balance of forces and moments";

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18})
    void propertyForcesAndMomentsBalanceAtTheEnd(long seed) {
        Starts.Start start = Starts.OBJECTS.get((int) (seed % 3));
        ClosingDetail end = Starts.simulator(Starts.someHand(seed), start, Numerics.DEFAULT.withPadPoints(10, 4))
                .detail(Starts.somewhere(new Random(seed), 0.03));
        Outcome outcome = end.summary().outcome();
        String what = "seed " + seed + ", " + start.name() + ", " + outcome;
        assertThat(outcome).as(what).isNotEqualTo(Outcome.UNDECIDED);
        if (outcome == Outcome.LANDED_ON_IT
                || outcome == Outcome.THROWN_OUT
                || end.summary().sink() > end.criteria().sink()) {
            // stopped on the way or while falling: not a state of rest
            return;
        }
        double force = objectImbalance(end).length();
        double moment = momentImbalance(end).length();
        double joint = 0;
        for (JointState j : end.joints()) {
            joint = Math.max(joint, j.slides() ? 0 : Math.abs(jointImbalance(end, j)));
        }
        Truth.record("invariants", what + ": force on the object out of balance [N]", SOURCE, 0, force, "1e-4", "bar");
        Truth.record("invariants", what + ": moment at a joint out of balance [N m]", SOURCE, 0, joint, "1e-6", "bar");
        assertThat(force).as(what + " object").isLessThan(1e-4);
        assertThat(moment).as(what + " object's moment").isLessThan(1e-5);
        assertThat(joint).as(what + " joints").isLessThan(1e-6);
        // the program's own residuals say the same
        assertThat(end.summary().objectResidual()).as(what).isCloseTo(force, Offset.offset(2e-5));
    }

    /** The object far off: the fingers close on each other, with friction. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6})
    void propertyFingersThatMeetBalance(long seed) {
        Starts.Start far = Starts.OBJECTS.get(0);
        ClosingDetail end = Starts.simulator(facing(Starts.someHand(seed)), far, Numerics.DEFAULT.withPadPoints(10, 4))
                .detail(Conditions.at(0.01 * seed, 0.16, 0));
        assertThat(end.summary().outcome()).isEqualTo(Outcome.MISSED);
        assertThat(end.contacts()).anyMatch(c -> c.kind() == Kind.FINGER_ON_FINGER);
        double joint = 0;
        for (JointState j : end.joints()) {
            joint = Math.max(joint, j.slides() ? 0 : Math.abs(jointImbalance(end, j)));
        }
        Truth.record(
                "invariants",
                "fingers on each other, seed " + seed + ": moment at a joint [N m]",
                SOURCE,
                0,
                joint,
                "1e-6",
                "bar");
        assertThat(joint).as("own " + end.summary().jointResidual()).isLessThan(1e-6);
        for (ContactForce c : end.contacts()) {
            assertThat(c.tangentialForce().length()).isLessThanOrEqualTo(c.friction() * c.normalForce() * (1 + 1e-6));
        }
    }

    /** A weak hand set so low that its tips press on the table while they close, arm and tendons giving. */
    @ParameterizedTest
    @ValueSource(doubles = {0.114, 0.112})
    void propertyFingersOnTheTableBalance(double palm) {
        Hand weak = Starts.scaled(Starts.someHand(5), 1, 5 / 60.0, 2e4);
        ClosingDetail end = new ClosingSimulator(
                        weak,
                        BenchHands.above(palm - 0.07),
                        BenchHands.object("far", new Sphere(0.035), 0.18),
                        Spread.exactly(0.4),
                        Numerics.DEFAULT.withPadPoints(7, 3),
                        Criteria.DEFAULT)
                .detail(Conditions.at(0, 0.2, 0));
        assertThat(end.contacts())
                .anyMatch(c -> c.kind() == Kind.FINGER_ON_TABLE
                        && c.tangentialForce().length() > 0.1 * c.friction() * c.normalForce());
        double joint = 0;
        for (JointState j : end.joints()) {
            joint = Math.max(joint, j.slides() ? 0 : Math.abs(jointImbalance(end, j)));
        }
        Truth.record(
                "invariants",
                "fingers on the table, palm at " + palm + " m: moment at a joint [N m]",
                SOURCE,
                0,
                joint,
                "1e-6",
                "bar");
        assertThat(joint).isLessThan(1e-6);
    }

    /** The thumb moved over to face one finger, so that they meet. */
    private static Hand facing(Hand hand) {
        List<Finger> fingers = new ArrayList<>(hand.fingers());
        Finger thumb = fingers.get(2);
        fingers.set(
                2,
                new Finger(
                        thumb.name(),
                        new Vec3(thumb.base().x(), 0.018, 0),
                        thumb.closesToward(),
                        thumb.phalanges(),
                        thumb.joints()));
        return new Hand(hand.name(), hand.palm(), fingers, hand.motors(), hand.friction(), hand.arm(), hand.grips());
    }

    @ParameterizedTest
    @ValueSource(longs = {21, 22, 23, 24, 25, 26, 27, 28, 29})
    void propertyContactsObeyTheirLaws(long seed) {
        Starts.Start start = Starts.OBJECTS.get((int) (seed % 3));
        ClosingSimulator sim = Starts.simulator(Starts.someHand(seed), start, Numerics.DEFAULT.withPadPoints(10, 4));
        ClosingDetail end = sim.detail(Starts.somewhere(new Random(seed), 0.04));
        String what =
                "seed " + seed + ", " + start.name() + ", " + end.summary().outcome();
        for (ContactForce c : end.contacts()) {
            assertThat(c.normalForce()).as(what + c).isPositive();
            assertThat(c.normal().length()).as(what + c).isCloseTo(1, Offset.offset(1e-9));
            assertThat(c.tangentialForce().length())
                    .as(what + c)
                    .isLessThanOrEqualTo(c.friction() * c.normalForce() * (1 + 1e-6));
            assertThat(Math.abs(c.tangentialForce().dot(c.normal())))
                    .as(what + " tangential is tangential " + c)
                    .isLessThan(1e-6 + 1e-6 * c.normalForce());
            if (c.kind() == Kind.PAD_ON_OBJECT || c.kind() == Kind.BONE_ON_OBJECT) {
                Vec3 y = end.object().applyInverse(c.point());
                double radius = c.kind() == Kind.PAD_ON_OBJECT ? 0 : 0.005;
                assertThat(start.shape().distance(y.x(), y.y(), y.z()))
                        .as(what + " presses only inside " + c)
                        .isLessThan(c.body().equals("palm") ? 0.0051 : radius + 1e-12);
            }
        }
        for (JointState j : end.joints()) {
            assertThat(j.tension()).as(what + j).isNotNegative();
        }
    }

    private static Vec3 onOther(ContactForce c) {
        return c.normal().times(c.normalForce()).plus(c.tangentialForce());
    }

    private static Vec3 objectImbalance(ClosingDetail end) {
        Vec3 sum = end.weight();
        for (ContactForce c : end.contacts()) {
            if (c.other().equals("object")) {
                sum = sum.plus(onOther(c));
            }
        }
        return sum;
    }

    private static Vec3 momentImbalance(ClosingDetail end) {
        Vec3 sum = Vec3.ZERO;
        for (ContactForce c : end.contacts()) {
            if (c.other().equals("object")) {
                sum = sum.plus(c.point().minus(end.centreOfMass()).cross(onOther(c)));
            }
        }
        return sum;
    }

    private static double jointImbalance(ClosingDetail end, JointState joint) {
        double sum = joint.springMoment() + joint.tension() * joint.momentArm();
        for (ContactForce c : end.contacts()) {
            Vec3 f = onOther(c);
            if (carries(joint.name(), c.body())) {
                sum += joint.axis().dot(c.point().minus(joint.origin()).cross(f.times(-1)));
            }
            if (carries(joint.name(), c.other())) {
                sum += joint.axis().dot(c.point().minus(joint.origin()).cross(f));
            }
        }
        return sum;
    }

    /** Joint "left 1" or "left 1 sideways" carries "left 1" and "left 2"; the arm carries the whole hand. */
    private static boolean carries(String joint, String body) {
        if (body.equals("object") || body.equals("table")) {
            return false;
        }
        if (joint.startsWith("arm")) {
            return true;
        }
        String[] j = joint.split(" ");
        String[] b = body.split(" ");
        return b.length > 1 && b[0].equals(j[0]) && Integer.parseInt(b[1]) >= Integer.parseInt(j[1]);
    }
}
