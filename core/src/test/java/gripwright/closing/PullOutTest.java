package gripwright.closing;

import static org.assertj.core.api.Assertions.assertThat;

import gripwright.closing.BareScene.Bead;
import gripwright.closing.BareScene.Chain;
import gripwright.closing.BareScene.Link;
import gripwright.math.Rotation;
import gripwright.math.Vec3;
import gripwright.shape.Cylinder;
import gripwright.truth.Reference;
import gripwright.truth.Truth;
import java.util.List;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;

/**
 * The disc in two thin fingers, pulled off the palm by the pull test itself.
 *
 * <p>Source: moment balance of both fingers, reference/statics/finger_statics.csv (HOLD). Worked outside: statics, and
 * again by the greatest tendon travel. Units: N, mm. Tolerance: 0.5 % of the force and of the height; the fingers are
 * rows of beads 0.2 mm apart of stated stiffness, so the disc sinks in a little, and the far end of the spring moves 10
 * um between two looks. Where it is lost: there the contact reaches the tip, and a bead carries on a little farther.
 */
class PullOutTest {
    private static final String SOURCE = "moment balance and greatest tendon travel, computed apart";
    private static final double TOLERANCE = 0.005;

    @Test
    void referencePeakAndHeightsOfThePullOut() {
        double force = hold("peak_pull_out_force_both_fingers");
        double height = hold("y_where_f1_zero");
        double end = hold("y_where_contact_reaches_tip");
        double lastForce = Double.POSITIVE_INFINITY;
        double lastHeight = Double.POSITIVE_INFINITY;
        // Softer beads say nothing here: at 1e5 N/m the peak's 11 N press them in by 0.11 mm, and the peak then stands
        // 0.52 % too high.
        for (double stiffness : new double[] {3e5, 1e6, 1e7}) {
            PullResult r = pull(stiffness);
            double top = 25 + 1e3 * r.peakAt();
            double lost = 25 + 1e3 * r.lostAt();
            String at = ", beads of " + stiffness + " N/m";
            Truth.record("pull-out", "peak [N]" + at, SOURCE, force, r.peak(), "0.5 %", "give of the beads");
            Truth.record("pull-out", "height of the peak [mm]" + at, SOURCE, height, top, "0.5 %", "give of the beads");
            Truth.record("pull-out", "height where lost [mm]" + at, SOURCE, end, lost, "0.5 %", "a bead is its tip");
            assertThat(r.peak()).as("peak" + at).isCloseTo(force, Offset.offset(TOLERANCE * force));
            assertThat(top).as("height" + at).isCloseTo(height, Offset.offset(TOLERANCE * height));
            assertThat(lost).as("lost" + at).isCloseTo(end, Offset.offset(TOLERANCE * end));
            assertThat(r.kind()).isEqualTo(PullResult.Kind.SLIPS);
            assertThat(Math.abs(r.peak() - force)).as("error of the peak" + at).isLessThan(lastForce);
            assertThat(Math.abs(top - height)).as("error of the height" + at).isLessThan(lastHeight);
            lastForce = Math.abs(r.peak() - force);
            lastHeight = Math.abs(top - height);
        }
    }

    private static double hold(String quantity) {
        return Reference.rows("statics/finger_statics.csv").stream()
                .filter(r -> r.id().equals("HOLD") && r.quantity().equals(quantity))
                .findFirst()
                .orElseThrow()
                .expected();
    }

    private static PullResult pull(double stiffness) {
        List<Link> links =
                List.of(new Link(0.045, 0.010, 0, Math.toRadians(20), -1, 3), new Link(0.035, 0.006, 0, 0, -1, 3));
        BareScene scene = new BareScene(
                        List.of(
                                new Chain(new Vec3(-0.02, 0, 0), 0, links),
                                new Chain(new Vec3(0.02, 0, 0), Math.PI, links)),
                        new Cylinder(0.025, 0.05, 0))
                .beads(List.of(new Bead(0, Vec3.ZERO)), stiffness)
                .chains(0, 2e-4, stiffness, false);
        scene.tension = 20;
        scene.mass = 0.1;
        scene.p[2] = 0.025;
        System.arraycopy(Rotation.about(Vec3.X, Math.PI / 2).toArray(), 0, scene.r, 0, 9);
        StepSystem s = scene.once();
        s.objectFixed = true;
        Stepper stepper = new Stepper(s, Numerics.DEFAULT);
        stepper.reset();
        assertThat(stepper.ramp(t -> s.rig.drive().wind(0, 0.06 * t), 1, 1e-3, 0.02, m -> false))
                .isEqualTo(Stepper.End.DONE);
        s.objectFixed = false;
        assertThat(stepper.settle(m -> false)).isEqualTo(Stepper.End.DONE);
        return new HoldTests(s, stepper, Criteria.DEFAULT).pull(Vec3.Z, false, 0.0325, 1e-5);
    }
}
