package gripwright.closing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import gripwright.closing.PressResult.Reach;
import gripwright.closing.PressResult.Verdict;
import gripwright.math.Pose;
import gripwright.math.Rotation;
import gripwright.math.Vec3;
import gripwright.mechanics.HandTree;
import gripwright.model.Grip;
import gripwright.model.Hand;
import gripwright.model.Press;
import gripwright.model.Spread;
import gripwright.shape.Box;
import java.util.List;
import java.util.Map;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** A bar between right and thumb; left, which is free, closes beside it on a lever that is not part of the bar. */
class PressingTest {
    private static final double TOUCH = 6;
    private static final Hand HAND = BenchHands.threeFinger();
    private static final Grip GRIP = new Grip(
            "two",
            Grip.Approach.ABOVE,
            new Grip.PalmToObject(0.05, Double.NaN),
            0,
            Map.of(),
            List.of("right", "thumb"));

    private final Box bar = new Box(0.02, 0.02, 0.04, 0.003);
    private final ClosingSimulator sim = new ClosingSimulator(
            HAND, GRIP, BenchHands.object("bar", bar, 0.1), Spread.exactly(0.4), Numerics.DEFAULT, Criteria.DEFAULT);

    private Vec3 place = Vec3.ZERO;
    private Vec3 toward = Vec3.X;

    /** Where the middle of the free finger's last pad is, and faces, at a tension on the way. */
    @BeforeEach
    void held() {
        assertThat(sim.run(Conditions.at(0, 0.010, 0)).outcome()).isEqualTo(Outcome.HELD);
        PressingFinger finger = new PressingFinger(HAND.fingers().get(0), 0, 0, 1);
        finger.free(TOUCH);
        StepSystem s = sim.system;
        s.updatePoses();
        HandTree.Coordinate base = s.rig.tree().coordinates().get(0);
        Pose plane = s.bodyPose(0).times(new Pose(base.offset(), base.mounting()));
        double q1 = finger.q[0];
        double angle = q1 + finger.q[1];
        double u = 0.065 * Math.cos(q1) + 0.02 * Math.cos(angle) - 0.009 * Math.sin(angle);
        double v = 0.065 * Math.sin(q1) + 0.02 * Math.sin(angle) + 0.009 * Math.cos(angle);
        Pose object = new Pose(new Vec3(s.p[0], s.p[1], s.p[2]), Rotation.of(s.r, 0));
        place = object.applyInverse(plane.apply(new Vec3(u, v, 0)));
        toward = object.rotation().applyInverse(plane.rotation().apply(new Vec3(-Math.sin(angle), Math.cos(angle), 0)));
    }

    private PressResult press(Vec3 at, double tension, double force, double travel) {
        Pressing pressing = new Pressing(HAND, GRIP, sim.system, bar, sim.holdTests(), 1);
        return pressing.run(new Press("lever", "two", "left", tension, at, toward, force, travel), 0.005);
    }

    /** Source: the finger itself; where its pad is at 6 N it touches at 6 N. Tolerance: rounding of the search. */
    @Test
    void propertyAPlaceOnTheWayIsTouchedWhenTheFingerIsThere() {
        PressResult r = press(place, 20, 0.1, 0.001);
        assertThat(r.reach()).isEqualTo(Reach.REACHES);
        assertThat(r.touchTension()).isCloseTo(TOUCH, Offset.offset(1e-6));
        assertThat(r.miss()).isZero();
        assertThat(r.fingerForce()).isPositive();
        assertThat(r.neededTension()).isBetween(TOUCH, 20.0);
        assertThat(r.verdict()).isEqualTo(Verdict.WORKS);
        assertThat(r.followed()).isEqualTo(0.001);
        assertThat(r.greatest()).isLessThanOrEqualTo(Math.min(r.fingerForce(), r.holdForce()));
        // more tension presses harder; the force grows with the tension beyond the touch
        PressResult harder = press(place, 34, 0.1, 0.001);
        assertThat(harder.fingerForce()).isGreaterThan(1.5 * r.fingerForce());
    }

    @Test
    void propertyAWeakLineOrAWeakHoldIsNamed() {
        PressResult weak = press(place, 20, 50, 0);
        assertThat(weak.verdict()).isEqualTo(Verdict.TOO_WEAK);
        assertThat(weak.neededTension()).isNaN();
        PressResult strong = press(place, 1000, 1.05 * weak.holdForce(), 0);
        assertThat(strong.verdict()).isIn(Verdict.TURNS, Verdict.SLIPS, Verdict.YIELDS);
        assertThat(strong.give()).isNaN();
    }

    @Test
    void propertyAPlaceOffTheWayIsNotReachedAndByHowMuchIsSaid() {
        PressResult beside = press(place.plus(Vec3.Y.times(0.05)), 20, 0.1, 0);
        assertThat(beside.verdict()).isEqualTo(Verdict.NOT_REACHED);
        assertThat(beside.miss()).isGreaterThan(0.02);
        assertThat(beside.greatest()).isZero();
        assertThat(beside.fingerForce()).isNaN();
        PressResult far = press(place.plus(toward.times(0.2)), 20, 0.1, 0);
        assertThat(far.reach()).isIn(Reach.SHORT, Reach.BLOCKED);
        PressResult past = press(place.minus(toward.times(0.15)), 20, 0.1, 0);
        assertThat(past.reach()).isNotEqualTo(Reach.REACHES);
    }

    @Test
    void aFingerOfTheGripOrOneThatIsNotThereIsRefused() {
        assertThatThrownBy(() -> new Pressing(HAND, GRIP, sim.system, bar, sim.holdTests(), 1)
                        .run(new Press("lever", "two", "right", 20, place, toward, 1, 0), 0.005))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("takes part in grip 'two'");
        assertThatThrownBy(() -> new Pressing(HAND, GRIP, sim.system, bar, sim.holdTests(), 1)
                        .run(new Press("lever", "two", "little", 20, place, toward, 1, 0), 0.005))
                .hasMessageContaining("the hand has [left, right, thumb]");
    }

    @Test
    void propertyATaskLeavesNoTrace() {
        double[] q = sim.system.q.clone();
        double[] p = sim.system.p.clone();
        PressResult first = press(place, 20, 0.1, 0.001);
        assertThat(sim.system.q).isEqualTo(q);
        assertThat(sim.system.p).isEqualTo(p);
        assertThat(press(place, 20, 0.1, 0.001)).isEqualTo(first);
    }
}
