package gripwright.closing;

import static org.assertj.core.api.Assertions.assertThat;

import gripwright.closing.BareScene.Chain;
import gripwright.closing.BareScene.Link;
import gripwright.contact.LinkContacts;
import gripwright.contact.PadPoints;
import gripwright.contact.PadPoints.Point;
import gripwright.drive.TendonDrive;
import gripwright.math.Vec3;
import gripwright.mechanics.HandTree;
import gripwright.model.Hand;
import gripwright.shape.Box;
import gripwright.truth.Truth;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;

/**
 * A block between two pads, pulled sideways along the joint axes.
 *
 * <p>Source: Coulomb's law, slip at 2 mu N for two contacts of normal force N. Worked outside: by hand. Units: N, m.
 * Tolerance: 0.1 %, between a pull that it must bear and one that it must not. Valid for a block that does not turn and
 * pads without adhesion. The creep bound (1 um in 1000 steps) is a demand on the method: friction smoothed step by step
 * creeps by its smoothing length each step.
 */
class SlipTest {
    static final double FRICTION = 0.5;

    private final StepSystem system = pinch();
    private final Stepper stepper = new Stepper(system, Numerics.DEFAULT);

    @Test
    void referenceSlipsAtTwiceFrictionTimesNormalForce() {
        grip();
        double limit = FRICTION * squeeze();
        pull(0, 0.999 * limit);
        Stepper.End below = stepper.settle(motion -> false);
        double bornAt = 0.999 * limit / (FRICTION * squeeze());
        assertThat(below).as("bears 0.999 of it").isEqualTo(Stepper.End.DONE);
        double before = system.p[1];
        pull(0.999 * limit, 1.001 * limit);
        Stepper.End above = stepper.settle(motion -> system.p[1] - before > 2e-3);
        assertThat(above).as("slides away at 1.001 of it").isEqualTo(Stepper.End.STOPPED);
        double slidAt = 1.001 * limit / (FRICTION * squeeze());
        assertThat(bornAt).isLessThan(1);
        assertThat(slidAt).isGreaterThan(1).isLessThan(1.002);
        Truth.record(
                "slip",
                "pinched block: slip force over 2 mu N",
                "Coulomb",
                1,
                0.5 * (bornAt + slidAt),
                "1e-3",
                "borne at 0.999, not at 1.001");
    }

    @Test
    void propertyNoCreepUnderNineTenthsOfTheSlipLoad() {
        grip();
        pull(0, 0.9 * FRICTION * squeeze());
        assertThat(stepper.settle(motion -> false)).isEqualTo(Stepper.End.DONE);
        double before = system.p[1];
        Newton newton = new Newton(system);
        system.stepTime = 0.01;
        for (int i = 0; i < 1000; i++) {
            assertThat(newton.solve(1e-6, () -> false)).isEqualTo(Newton.End.CONVERGED);
            system.commit();
        }
        double creep = Math.abs(system.p[1] - before);
        Truth.record(
                "slip",
                "creep in 1000 steps at 0.9 of the slip load [m]",
                "method's own demand",
                0,
                creep,
                "1e-6",
                "friction anchors must not drift");
        assertThat(creep).isLessThan(1e-6);
    }

    private double squeeze() {
        return system.pads.bodyForce(1) + system.pads.bodyForce(2);
    }

    private void grip() {
        stepper.reset();
        assertThat(stepper.ramp(t -> system.rig.drive().wind(0, 0.02 * t), 1, 0.01, 0.02, motion -> false))
                .isEqualTo(Stepper.End.DONE);
        assertThat(stepper.settle(motion -> false)).isEqualTo(Stepper.End.DONE);
        assertThat(system.rig.drive().tension(0)).isEqualTo(20);
    }

    private void pull(double from, double to) {
        assertThat(stepper.ramp(t -> system.object.push[1] = from + (to - from) * t, 1, 0.01, 0.05, motion -> false))
                .isEqualTo(Stepper.End.DONE);
    }

    static StepSystem pinch() {
        List<Link> link = List.of(new Link(0.06, 0.01, 0, Math.PI / 2 - 0.02, 0, 3));
        List<Chain> chains =
                List.of(new Chain(new Vec3(-0.028, 0, 0), 0, link), new Chain(new Vec3(0.028, 0, 0), Math.PI, link));
        Hand hand = BareScene.hand(chains, 20);
        HandTree tree = HandTree.of(hand, Map.of());
        PadPoints.Builder points = new PadPoints.Builder().body();
        for (int f = 0; f < 2; f++) {
            points.body();
            for (int i = 0; i < 14; i++) {
                List<Point> row = new ArrayList<>();
                for (int k = 0; k < 6; k++) {
                    row.add(new Point(
                            new Vec3(0.010 + 0.0035 * i, 0.008, -0.0075 + 0.003 * k),
                            Vec3.Y,
                            0,
                            2600,
                            350,
                            1.05e-5,
                            "soft"));
                }
                points.row(row);
            }
        }
        double[] open = Rig.openAngles(tree);
        TendonDrive drive =
                new TendonDrive(hand.fingers(), hand.motors(), Rig.flexions(tree, 2), open, Set.of("f0", "f1"));
        StepSystem s = new StepSystem(
                new Rig(tree, points.build(), LinkContacts.none(3), drive, open), new Box(0.02, 0.02, 0.02, 0.001));
        s.tableThere = false;
        s.turnLocked = true;
        s.object.mass = 0.1;
        s.object.push[2] = s.object.mass * FreeObject.GRAVITY;
        s.p[2] = 0.035;
        s.pads.reset(new double[] {FRICTION}, 1);
        drive.reset(s.q);
        s.commit();
        return s;
    }
}
