package gripwright.closing;

import static org.assertj.core.api.Assertions.assertThat;

import gripwright.math.Vec3;
import gripwright.shape.Cylinder;
import gripwright.shape.Sphere;
import gripwright.truth.Truth;
import java.util.List;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * What the length of steps, the kind of drive and the unit of force may not change; faults that once were.
 *
 * <p>Source: convergence, dimensional analysis. Worked outside: by comparing runs. Units: m, rad. Tolerances stand beside
 * each. Valid for quasi-static runs; where friction remembers the way, within what the step and the damping change.
 */
class ScalingTest {
    private static final String SOURCE = "convergence and dimensional analysis";

    /** 9 x 9 starts of +-60 mm and three shapes; under 2 % of the verdicts may change when every step is halved. */
    @Test
    @Tag("slow")
    void propertyHalvingTheStepLeavesTheMap() {
        int changed = 0;
        int all = 0;
        for (Starts.Start start : Starts.OBJECTS) {
            ClosingSimulator coarse = Starts.simulator(BenchHands.threeFinger(), start, Numerics.DEFAULT);
            ClosingSimulator fine =
                    Starts.simulator(BenchHands.threeFinger(), start, Numerics.DEFAULT.withStepScale(0.5));
            int here = 0;
            int held = 0;
            for (int i = -4; i <= 4; i++) {
                for (int k = -4; k <= 4; k++) {
                    Conditions c = Conditions.at(0.015 * i, 0.015 * k, 0);
                    boolean holds = coarse.run(c).held();
                    held += holds ? 1 : 0;
                    here += holds == fine.run(c).held() ? 0 : 1;
                    all++;
                }
            }
            Truth.record(
                    "invariants",
                    start.name() + ": held or not changed by half the step, of 81",
                    SOURCE,
                    0,
                    here,
                    "2 % over all",
                    "step control");
            changed += here;
            assertThat(held).as(start.name() + " held").isBetween(3, 60);
        }
        assertThat(changed).isLessThan((int) Math.ceil(0.02 * all));
    }

    /**
     * A soft tendon holds its tension whatever the fingers do: a centred object ends in the same place, 0.25 mm; 1 mm
     * where it jumps from the tips into the hand, because damping then chooses the way.
     */
    @Test
    void propertyLengthDriveAndTensionDriveEndAlike() {
        for (Starts.Start start : Starts.OBJECTS) {
            ClosingDetail length = Starts.simulator(BenchHands.threeFinger(), start, Numerics.DEFAULT)
                    .detail(Conditions.NOMINAL);
            ClosingDetail tension = Starts.simulator(
                            Starts.scaled(BenchHands.threeFinger(), 1, 1, 500), start, Numerics.DEFAULT)
                    .detail(Conditions.NOMINAL);
            double apart = length.centreOfMass().minus(tension.centreOfMass()).length();
            Truth.record(
                    "invariants",
                    start.name() + ": length drive against tension drive [m]",
                    SOURCE,
                    0,
                    apart,
                    jumps(length) ? "1e-3" : "2.5e-4",
                    "friction history");
            assertThat(tension.summary().outcome()).isEqualTo(length.summary().outcome());
            assertThat(apart).as(start.name()).isLessThan(jumps(length) ? 1e-3 : 2.5e-4);
        }
    }

    /**
     * Everything elastic, heavy and pulling doubled: same angles. Table, bone and stops keep their fixed stiffness and
     * the joints their damping, and with friction the end remembers the way: tolerance 0.02 rad, where halving the
     * step or the damping alone moves an angle by 0.01.
     */
    @Test
    void propertyDoublingAllForcesLeavesTheAngles() {
        for (Starts.Start start : Starts.OBJECTS) {
            ClosingDetail once = Starts.simulator(BenchHands.threeFinger(), start, Numerics.DEFAULT)
                    .detail(Conditions.NOMINAL);
            Starts.Start heavy = new Starts.Start(start.name(), start.shape(), start.height(), 2 * start.mass());
            ClosingDetail twice = Starts.simulator(
                            Starts.scaled(BenchHands.threeFinger(), 2, 2, 4e4), heavy, Numerics.DEFAULT)
                    .detail(Conditions.NOMINAL);
            assertThat(twice.summary().outcome()).isEqualTo(once.summary().outcome());
            double worst = 0;
            for (int j = 0; j < once.joints().size(); j++) {
                worst = Math.max(
                        worst,
                        Math.abs(once.joints().get(j).value()
                                - twice.joints().get(j).value()));
            }
            Truth.record(
                    "invariants",
                    start.name() + ": angles with all forces doubled [rad]",
                    SOURCE,
                    0,
                    worst,
                    "0.02",
                    "friction remembers the way; damping and table are not doubled");
            assertThat(worst).as(start.name()).isLessThan(0.02);
        }
    }

    /** The same without friction, where the end does not depend on the way: 1e-6 rad. */
    @Test
    void propertyDoublingAllForcesLeavesTheAnglesOfABareHand() {
        double[] once = pinched(1);
        double[] twice = pinched(2);
        double worst = 0;
        for (int j = 0; j < once.length; j++) {
            worst = Math.max(worst, Math.abs(once[j] - twice[j]));
        }
        Truth.record(
                "invariants",
                "bare hand: angles with all forces doubled [rad]",
                SOURCE,
                0,
                worst,
                "1e-6",
                "where the solver calls it still");
        assertThat(worst).isLessThan(1e-6);
    }

    private static double[] pinched(double factor) {
        List<BareScene.Link> links = List.of(
                new BareScene.Link(0.07, 0.01, 0.1 * factor, 0.4, -1, 3),
                new BareScene.Link(0.05, 0.004, 0.5 * factor, 0.8, -1, 3));
        BareScene scene = new BareScene(
                        List.of(
                                new BareScene.Chain(new Vec3(-0.035, 0, 0), 0, links),
                                new BareScene.Chain(new Vec3(0.035, 0, 0), Math.PI, links)),
                        new Cylinder(0.035, 0.1, 0))
                .capsules(0.008, 1e5 * factor, true);
        scene.mass = 0.1 * factor;
        scene.tension = 25 * factor;
        scene.p[0] = 0.004;
        scene.p[2] = 0.06;
        System.arraycopy(gripwright.math.Rotation.about(Vec3.X, Math.PI / 2).toArray(), 0, scene.r, 0, 9);
        scene.close(0.05, 20_000);
        assertThat(scene.force(1)).isPositive();
        return scene.q;
    }

    /** The closing carried the object farther than pads give: it snapped from one grasp into another. */
    private static boolean jumps(ClosingDetail end) {
        return end.summary().travel() > 0.01;
    }

    /** A step that forgets where the object stood drags every object to the origin and holds everything. */
    @Test
    void regressionTheResultDependsOnTheStart() {
        ClosingSimulator sim = Starts.simulator(BenchHands.threeFinger(), Starts.OBJECTS.get(1), Numerics.DEFAULT);
        ClosingSummary centred = sim.run(Conditions.NOMINAL);
        ClosingSummary far = sim.run(Conditions.at(0, 0.12, 0));
        ClosingSummary aside = sim.run(Conditions.at(0.012, 0.004, 0));
        assertThat(far.outcome()).isEqualTo(Outcome.MISSED);
        assertThat(far.travel()).isLessThan(1e-5);
        assertThat(centred.outcome()).isNotEqualTo(Outcome.MISSED);
        assertThat(aside.travelX()).isNotCloseTo(centred.travelX(), Offset.offset(1e-4));
    }

    /** An object that turns on the spot must shorten the step as one that shifts does. */
    @Test
    void regressionTheStepIsBoundedByTheObjectsTurn() {
        StepSystem s = new StepSystem(Rig.empty(), new Sphere(0.03));
        s.object.mass = 0.1;
        s.p[2] = 0.5;
        s.table.reset(0.3);
        s.commit();
        Newton.turn(s.rStart, 0, 0, 0.1, s.r);
        s.updatePoses();
        double expected = 0.1 * StepSystem.TURN_LENGTH / (2 * Stepper.SLIDE);
        assertThat(s.stepRatio(Stepper.SLIDE, Stepper.SINK)).isCloseTo(expected, Offset.offset(1e-2 * expected));
        assertThat(expected).isGreaterThan(1.15);
    }
}
