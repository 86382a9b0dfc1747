package gripwright.crosscheck;

import static org.assertj.core.api.Assertions.assertThat;

import gripwright.closing.PlanarClosing;
import gripwright.truth.Truth;
import java.util.stream.Stream;
import org.assertj.core.data.Offset;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tools.jackson.databind.JsonNode;

/**
 * Two fingers close on a disc in a plane, without friction: this program against the planar rigid-body engine dyn4j,
 * both run here.
 *
 * <p>Source: org.dyn4j:dyn4j 5.0.2 at 0.2 ms with 60 sweeps. Worked outside: inertia, impulses, hard contacts that may
 * overlap by 1 um. Units: degrees, N, m. Tolerance: 0.01 degrees, 0.005 N + 5e-4 of the force, 20 um: the overlap that
 * the engine leaves and our contacts' give, seen through links that lie nearly along the way they yield.
 */
class DynHandTest {
    private static final String SOURCE = "rigid-body engine dyn4j 5.0.2, run beside";
    private static final String FAMILY = "dyn4j beside us";
    /** A disc faster than this at the end has not come to rest in the engine [m/s]. */
    private static final double AT_REST = 1e-5;

    record Case(JsonNode node) {
        @Override
        public String toString() {
            return node.get("case").asInt() + " " + node.get("disc").asString();
        }
    }

    /** A choice of both kinds: fingertips, whole links, palm, unequal fingers. */
    static Stream<Case> cases() {
        return PlanarClosing.cases().map(Case::new);
    }

    @ParameterizedTest
    @MethodSource("cases")
    void referencePlanarClosingsAgree(Case c) {
        DynHand.End there = new DynHand(PlanarClosing.DATA.get("hand"), c.node).close();
        PlanarClosing.End here = PlanarClosing.end(c.node, 1e9);
        assertThat(there.speed()).as(c + " at rest in the engine").isLessThan(AT_REST);
        for (int j = 0; j < 4; j++) {
            double expected = Math.toDegrees(there.angles()[j]);
            double found = Math.toDegrees(here.angles()[j]);
            Truth.record(
                    FAMILY,
                    c + ", joint " + (j + 1) + " [deg]",
                    PlanarClosing.inputs(c.node),
                    SOURCE,
                    expected,
                    found,
                    "0.01",
                    "overlap of 1 um left by the engine");
            assertThat(found).as(c + " joint " + (j + 1)).isCloseTo(expected, Offset.offset(0.01));
        }
        for (int b = 0; b < there.forces().length; b++) {
            double expected = there.forces()[b];
            String what = c + ", " + PlanarClosing.BODIES.get(b) + " [N]";
            Truth.record(
                    FAMILY,
                    what,
                    PlanarClosing.inputs(c.node),
                    SOURCE,
                    expected,
                    here.forces()[b],
                    "0.005 N + 5e-4",
                    "overlap of 1 um left by the engine");
            assertThat(here.forces()[b]).as(what).isCloseTo(expected, Offset.offset(0.005 + 5e-4 * expected));
        }
        assertThat(here.x()).as(c + " x").isCloseTo(there.x(), Offset.offset(2e-5));
        assertThat(here.height()).as(c + " height").isCloseTo(there.y(), Offset.offset(2e-5));
    }
}
