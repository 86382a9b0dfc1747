package gripwright.closing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import gripwright.math.Rotation;
import gripwright.math.Vec3;
import gripwright.model.FrictionTable;
import gripwright.model.GraspObject;
import gripwright.model.Grip;
import gripwright.model.Hand;
import gripwright.model.Spread;
import gripwright.shape.Box;
import gripwright.shape.Cylinder;
import gripwright.shape.Shape;
import gripwright.shape.Sphere;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** Small worlds and what must come of them; all numbers invented. */
class OutcomesTest {
    private static final Sphere BALL = new Sphere(0.035);

    private static ClosingSimulator over(GraspObject object, double palmHeight) {
        return over(BenchHands.threeFinger(), object, palmHeight);
    }

    private static ClosingSimulator over(Hand hand, GraspObject object, double gap) {
        return new ClosingSimulator(
                hand, BenchHands.above(gap), object, Spread.exactly(0.5), Numerics.DEFAULT, Criteria.DEFAULT);
    }

    private static GraspObject squeezable(double newtons) {
        GraspObject o = BenchHands.object("ball", BALL, 0.2);
        return new GraspObject(
                o.name(),
                o.shape(),
                o.mass(),
                o.massSpread(),
                o.centreOfMass(),
                o.surface(),
                o.stance(),
                OptionalDouble.of(newtons),
                OptionalDouble.empty(),
                o.grips(),
                1);
    }

    @Test
    void aCentredBallIsHeldAndTheReasonSaysByHowMany() {
        ClosingDetail d = over(BenchHands.object("ball", BALL, 0.2), 0.06).detail(Conditions.NOMINAL);
        assertThat(d.summary().outcome()).isEqualTo(Outcome.HELD);
        assertThat(d.reason()).startsWith("The ball left the table with ").contains("bodies pressing");
        assertThat(d.tableHeight()).isEqualTo(-0.020);
    }

    @Test
    void aBallFarAsideIsMissedOrNotHeldAndNeverMovedWithoutTouch() {
        ClosingDetail d = over(BenchHands.object("ball", BALL, 0.2), 0.06).detail(Conditions.at(0, 0.2, 0));
        assertThat(d.summary().outcome()).isEqualTo(Outcome.MISSED);
        assertThat(d.summary().travel()).isLessThan(1e-6);
        assertThat(d.reason()).isEqualTo("Nothing touched the ball.");
    }

    @Test
    void anOpenFingerComingDownOnABoxLandsOnIt() {
        GraspObject box = BenchHands.object("box", new Box(0.03, 0.03, 0.03, 0.003), 0.2);
        ClosingDetail d = over(box, 0.05).detail(Conditions.at(0.055, 0.0225, 0));
        assertThat(d.summary().outcome()).isEqualTo(Outcome.LANDED_ON_IT);
        assertThat(d.summary().landingForce()).isGreaterThan(Criteria.DEFAULT.landingForce());
        assertThat(d.reason()).contains("pressed on the box");
    }

    @Test
    void aHandSetTooLowLandsOnTheTable() {
        ClosingDetail d = over(BenchHands.object("flat box", new Box(0.02, 0.02, 0.01, 0.002), 0.1), 0.03)
                .detail(Conditions.at(0, 0.2, 0));
        assertThat(d.summary().outcome()).isEqualTo(Outcome.LANDED_ON_IT);
        assertThat(d.reason()).contains("pressed on the table");
    }

    @Test
    void aWeakBallIsSqueezedTooHardAndTheBodyIsNamed() {
        ClosingDetail d = over(squeezable(1.0), 0.06).detail(Conditions.NOMINAL);
        assertThat(d.summary().outcome()).isEqualTo(Outcome.SQUEEZED);
        assertThat(d.reason()).contains("pressed with").contains("bears 1.0 N");
        assertThat(over(squeezable(1000), 0.06).run(Conditions.NOMINAL).outcome())
                .isEqualTo(Outcome.HELD);
    }

    @Test
    void aPadPressedHarderThanTheObjectBearsIsSqueezingToo() {
        GraspObject o = squeezable(1000);
        GraspObject soft = new GraspObject(
                o.name(),
                o.shape(),
                o.mass(),
                o.massSpread(),
                o.centreOfMass(),
                o.surface(),
                o.stance(),
                OptionalDouble.empty(),
                OptionalDouble.of(20e3),
                o.grips(),
                1);
        ClosingDetail d = over(soft, 0.06).detail(Conditions.NOMINAL);
        assertThat(d.summary().outcome()).isEqualTo(Outcome.SQUEEZED);
        assertThat(d.reason()).contains("A pad pressed with").contains("bears 20.0 kPa");
    }

    @Test
    void movingFartherThanTheLimitIsThrownOutAndSinkingDeeperIsDropped() {
        Criteria c = Criteria.DEFAULT;
        GraspObject ball = BenchHands.object("ball", BALL, 0.2);
        ClosingSummary held = judged(ball, 0.06, c);
        assertThat(held.travel()).isGreaterThan(0.01);
        Criteria near = new Criteria(
                c.landingForce(), c.touchForce(), c.lift(), c.sink(), held.travel() / 2, c.tilt(), c.pushed());
        assertThat(judged(ball, 0.06, near).outcome()).isEqualTo(Outcome.THROWN_OUT);
        GraspObject heavy = BenchHands.object("can", new Cylinder(0.03, 0.05, 0.003), 0.4);
        ClosingSummary sunk = judged(heavy, 0.03, c);
        assertThat(sunk.outcome()).isEqualTo(Outcome.HELD);
        assertThat(sunk.sink()).isGreaterThan(1e-5);
        Criteria strict = new Criteria(
                c.landingForce(), c.touchForce(), c.lift(), sunk.sink() / 2, c.thrown(), c.tilt(), c.pushed());
        assertThat(judged(heavy, 0.03, strict).outcome())
                .as("it left the table, so it was gripped and then lost, however far it had been drawn in")
                .isEqualTo(Outcome.DROPPED);
    }

    private static ClosingSummary judged(GraspObject object, double gap, Criteria criteria) {
        return new ClosingSimulator(
                        BenchHands.threeFinger(),
                        BenchHands.above(gap),
                        object,
                        Spread.exactly(0.5),
                        Numerics.DEFAULT,
                        criteria)
                .run(Conditions.NOMINAL);
    }

    @Test
    void aStatedSlipperinessIsNeverRaised() {
        Hand hand = BenchHands.threeFinger();
        Hand ice = new Hand(
                hand.name(),
                hand.palm(),
                hand.fingers(),
                hand.motors(),
                new FrictionTable(Map.of("soft", Map.of("plain", new Spread(0.005, 0.001))), Spread.exactly(0.003)),
                hand.arm(),
                hand.grips());
        ClosingDetail d = over(ice, BenchHands.object("ball", BALL, 0.2), 0.06).detail(Conditions.NOMINAL);
        assertThat(d.contacts().stream()
                        .filter(x -> x.kind() == ContactForce.Kind.PAD_ON_OBJECT)
                        .map(ContactForce::friction)
                        .distinct())
                .containsExactly(0.005);
    }

    @Test
    void aSlipperyHeavyBallIsNotHeld() {
        Hand hand = BenchHands.threeFinger();
        Hand slippery = new Hand(
                hand.name(),
                hand.palm(),
                hand.fingers(),
                hand.motors(),
                new FrictionTable(Map.of("soft", Map.of("plain", Spread.exactly(0.05))), Spread.exactly(0.05)),
                hand.arm(),
                hand.grips());
        ClosingSummary held =
                over(hand, BenchHands.object("ball", BALL, 0.5), 0.06).run(Conditions.NOMINAL);
        ClosingSummary lost =
                over(slippery, BenchHands.object("ball", BALL, 3), 0.075).run(Conditions.NOMINAL);
        assertThat(held.outcome()).isEqualTo(Outcome.HELD);
        assertThat(lost.held()).isFalse();
        assertThat(lost.outcome()).isNotEqualTo(Outcome.UNDECIDED);
    }

    @Test
    void aTallCylinderPushedHighUpIsKnockedOver() {
        GraspObject tall = BenchHands.object("tube", new Cylinder(0.015, 0.09, 0.002), 0.1);
        ClosingSimulator s = over(tall, 0.03);
        boolean knocked = false;
        for (double x = -0.06; x <= 0.061; x += 0.01) {
            for (double y = -0.04; y <= 0.041; y += 0.01) {
                ClosingSummary r = s.run(Conditions.at(x, y, 0));
                assertThat(r.outcome()).isNotEqualTo(Outcome.UNDECIDED);
                knocked |= r.outcome() == Outcome.KNOCKED_OVER && r.tilt() > Criteria.DEFAULT.tilt();
            }
        }
        assertThat(knocked).as("some misplacement knocks the tube over").isTrue();
    }

    @Test
    void anObjectBiggerThanTheReachIsAllowedAndNotHeld() {
        GraspObject barrel = BenchHands.object("barrel", new Cylinder(0.2, 0.25, 0.005), 9);
        ClosingSummary near = over(barrel, 0.13).run(Conditions.NOMINAL);
        assertThat(near.outcome().decided()).isTrue();
        assertThat(near.held()).isFalse();
        // beyond the fingers' reach nothing touches it
        assertThat(over(barrel, 0.20).run(Conditions.NOMINAL).outcome()).isEqualTo(Outcome.MISSED);
    }

    @Test
    void anObjectThatCannotStandIsRefusedByName() {
        GraspObject o = BenchHands.object("pole", new Cylinder(0.005, 0.1, 0.001), 0.1);
        GraspObject leaning = new GraspObject(
                "pole",
                o.shape(),
                0.1,
                Spread.exactly(0.1),
                new Vec3(0.02, 0, 0.05),
                "plain",
                Rotation.IDENTITY,
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                List.of("top"),
                1);
        assertThatThrownBy(() -> over(leaning, 0.03))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("pole does not stay as it is said to stand");
    }

    @Test
    void aGripWithAnAbsentFingerIsRefusedWithTheFingersThereAre() {
        Grip g = new Grip(
                "odd",
                Grip.Approach.ABOVE,
                new Grip.PalmToObject(0.06, Double.NaN),
                0,
                Map.of(),
                List.of("left", "pinky"));
        assertThatThrownBy(() -> new ClosingSimulator(
                        BenchHands.threeFinger(),
                        g,
                        BenchHands.object("ball", BALL, 0.2),
                        Spread.exactly(0.5),
                        Numerics.DEFAULT,
                        Criteria.DEFAULT))
                .hasMessage("grip 'odd' names the finger 'pinky'; the hand has [left, right, thumb]");
    }

    @Test
    void aMissingFrictionIsRefusedWithBothNames() {
        Shape shape = BALL;
        GraspObject o = BenchHands.object("ball", shape, 0.2);
        GraspObject oily = new GraspObject(
                "ball",
                shape,
                0.2,
                o.massSpread(),
                Vec3.ZERO,
                "oil",
                Rotation.IDENTITY,
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                List.of("top"),
                1);
        assertThatThrownBy(() -> over(oily, 0.06).run(Conditions.NOMINAL))
                .hasMessageContaining("rubber 'soft' on 'oil'")
                .hasMessageContaining("ball");
    }

    @Test
    void aFingerNotTakingPartStaysWhereItsSpringHoldsIt() {
        Grip pinch = new Grip(
                "pinch",
                Grip.Approach.ABOVE,
                new Grip.PalmToObject(0.06, Double.NaN),
                0,
                Map.of(),
                List.of("left", "thumb"));
        ClosingSimulator s = new ClosingSimulator(
                BenchHands.threeFinger(),
                pinch,
                BenchHands.object("ball", BALL, 0.2),
                Spread.exactly(0.5),
                Numerics.DEFAULT,
                Criteria.DEFAULT);
        ClosingDetail d = s.detail(Conditions.at(0, 0.2, 0));
        double rest = BenchHands.threeFinger().fingers().get(1).joints().get(0).rest();
        assertThat(d.joints().stream()
                        .filter(j -> j.name().equals("right 1"))
                        .findFirst()
                        .orElseThrow()
                        .value())
                .isCloseTo(rest, org.assertj.core.data.Offset.offset(1e-9));
        assertThat(d.joints().stream()
                        .filter(j -> j.name().equals("left 1"))
                        .findFirst()
                        .orElseThrow()
                        .value())
                .isGreaterThan(rest + 0.5);
    }

    @Test
    void framesCoverAllPhasesAndStayFewEnoughToDraw() {
        ClosingSimulator s = new ClosingSimulator(
                BenchHands.threeFinger(),
                BenchHands.above(0.06),
                BenchHands.object("ball", BALL, 0.2),
                Spread.exactly(0.5),
                Numerics.DEFAULT.recording(),
                Criteria.DEFAULT);
        ClosingDetail d = s.detail(Conditions.NOMINAL);
        assertThat(d.frames()).hasSizeBetween(20, 200);
        assertThat(d.frames().stream().map(Frame::phase).distinct())
                .containsExactly(Frame.Phase.APPROACH, Frame.Phase.CLOSE, Frame.Phase.LIFT);
        assertThat(d.firstTouches()).isNotEmpty();
        assertThat(d.frames().get(0).padPressure()).hasSize(d.padPoints().size());
    }

    @Test
    void oneRunAllocatesLessThanAKilobyte() {
        ClosingSimulator s = over(BenchHands.object("ball", BALL, 0.2), 0.06);
        for (int i = 0; i < 40; i++) {
            s.run(Conditions.at(0.001 * i, 0, 0));
        }
        var bean = (com.sun.management.ThreadMXBean) java.lang.management.ManagementFactory.getThreadMXBean();
        Conditions[] places = new Conditions[20];
        for (int i = 0; i < places.length; i++) {
            places[i] = Conditions.at(0.002 * i, 0.001 * i, 0);
        }
        long before = bean.getCurrentThreadAllocatedBytes();
        for (Conditions c : places) {
            s.run(c);
        }
        long each = (bean.getCurrentThreadAllocatedBytes() - before) / places.length;
        assertThat(each).as("bytes per run").isLessThan(1500);
    }
}
