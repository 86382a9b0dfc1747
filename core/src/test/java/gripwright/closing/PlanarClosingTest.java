package gripwright.closing;

import static org.assertj.core.api.Assertions.assertThat;

import gripwright.truth.Truth;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tools.jackson.databind.JsonNode;

/**
 * Two fingers closing on a fixed and on a free disc, frictionless, in a plane.
 *
 * <p>Source: independent planar computation by constrained energy minimisation, reference/closings/planar_cases.json.
 * Worked outside: with other code and another method, checked there against a rigid-body engine within 0.03 degrees and
 * 0.009 N. Units: degrees, N. Tolerance: rigid 0.004 degrees, 0.002 N + 5e-4 of the force (contacts give 1 um at
 * 1e9 N/m); soft 0.1 degrees, 0.01 N + 2e-3 (below 1 N our contact law leaves the straight line, by 50 um at
 * most, as the force goes to zero).
 * Valid for capsule links that press with one spring each. A free disc that was let go is left out: where it stays
 * depends on drag.
 */
class PlanarClosingTest {
    private static final String SOURCE = "independent planar computation (energy minimisation), planar_cases.json";
    private static final String[] NAMES = PlanarClosing.BODIES.toArray(new String[0]);

    record Case(JsonNode node) {
        @Override
        public String toString() {
            return node.get("case").asInt() + " " + node.get("disc").asString();
        }
    }

    static Stream<Case> cases() {
        return PlanarClosing.cases().map(Case::new);
    }

    @ParameterizedTest
    @MethodSource("cases")
    void referenceRigidContacts(Case c) {
        compare(c, "rigid", PlanarClosing.closed(c.node, 1e9), 0.004, 0.002, 5e-4, 4e-6);
    }

    @ParameterizedTest
    @MethodSource("cases")
    void referenceSoftContacts(Case c) {
        compare(c, "soft", PlanarClosing.closed(c.node, 2e4), 0.1, 0.01, 2e-3, 6e-5);
    }

    private static void compare(
            Case c, String column, BareScene scene, double degrees, double newtons, double share, double metres) {
        JsonNode expected = c.node.get(column);
        for (int j = 0; j < 4; j++) {
            double angle = expected.get("joint_deg").get(j).asDouble();
            double found = Math.toDegrees(scene.q[j]);
            Truth.record(
                    "planar closing, " + column,
                    c + " joint " + (j + 1) + " [deg]",
                    PlanarClosing.inputs(c.node),
                    SOURCE,
                    angle,
                    found,
                    degrees + " deg",
                    "give and toe of the contacts");
            assertThat(found).as(c + " joint " + (j + 1)).isCloseTo(angle, Offset.offset(degrees));
        }
        for (int b = 0; b < NAMES.length; b++) {
            double force = expected.get("forces_N").get(NAMES[b]).asDouble();
            Truth.record(
                    "planar closing, " + column,
                    c + " " + NAMES[b] + " [N]",
                    PlanarClosing.inputs(c.node),
                    SOURCE,
                    force,
                    scene.force(b),
                    newtons + " N + " + share,
                    "give and toe of the contacts");
            assertThat(scene.force(b)).as(c + " " + NAMES[b]).isCloseTo(force, Offset.offset(newtons + share * force));
        }
        JsonNode centre = expected.get("centre_m");
        assertThat(scene.p[0]).as(c + " x").isCloseTo(centre.get(0).asDouble(), Offset.offset(metres));
        assertThat(scene.p[2]).as(c + " height").isCloseTo(centre.get(1).asDouble(), Offset.offset(metres));
    }

    /** Chains of stiff beads, as the product lays them, close in on the rigid values as they get finer and stiffer. */
    @Test
    void referenceChainsOfBeadsCloseInOnSmoothLinks() {
        Case c = cases().filter(x -> x.toString().equals("1 free")).findFirst().orElseThrow();
        JsonNode expected = c.node.get("rigid").get("forces_N");
        List<Double> errors = new ArrayList<>();
        double[] pitch = {4e-3, 2e-3, 1e-3, 5e-4};
        for (int i = 0; i < pitch.length; i++) {
            BareScene scene = PlanarClosing.scene(c.node).chains(0.008, pitch[i], 1e6 * (1 << 2 * i), true);
            scene.longestStep = 0.01;
            scene.close(0.05, 4000);
            double worst = 0;
            for (int b = 0; b < NAMES.length; b++) {
                worst = Math.max(
                        worst, Math.abs(scene.force(b) - expected.get(NAMES[b]).asDouble()));
            }
            errors.add(worst);
            Truth.record(
                    "planar closing, chains of beads",
                    "1 free, worst force error at a pitch of " + pitch[i] * 1e3 + " mm [N]",
                    SOURCE,
                    0,
                    worst,
                    "falls with the pitch",
                    "beads leave gaps and share the load in steps");
        }
        assertThat(errors.get(3)).isLessThan(0.3 * errors.get(0));
        assertThat(errors.get(3)).isLessThan(0.005);
    }
}
