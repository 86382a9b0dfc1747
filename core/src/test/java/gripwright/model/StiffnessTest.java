package gripwright.model;

import static org.assertj.core.api.Assertions.assertThat;

import gripwright.truth.Reference;
import gripwright.truth.Reference.Row;
import gripwright.truth.Truth;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;

/**
 * Rates of flexures and moduli from hardness.
 *
 * <p>Source: beam formula; A. N. Gent 1958 as two public codes print it; reference/contact/contact.csv. Worked outside:
 * by formula. Units: N m/rad, MPa. Tolerance: 1e-9, closed formulas. Valid: a flexure this short is a beam within 30 %
 * only, hardness 40 to 60 Shore A.
 */
class StiffnessTest {
    @Test
    void referenceFlexureBendsAsABeam() {
        Flexure flexure = new Flexure(5e6, 0.008, 0.012, 0.003);
        agrees("flexure E I / L [N m/rad]", row("FLX", "bending_stiffness_EI/L").expected(), flexure.bendingRate());
        double second = row("FLX", "second_moment").expected();
        agrees("flexure's second moment [m^4 x 1e12]", second * 1e12, flexure.bendingRate() * 0.008 / 5e6 * 1e12);
        // turned by a quarter: width and thickness change places, 16 times as stiff at 12 : 3
        agrees(
                "flexure sideways [N m/rad]",
                16 * 0.016875,
                flexure.sidewaysRate().orElseThrow());
    }

    @Test
    void referenceModulusFromShoreA() {
        Reference.rows("contact/contact.csv").stream()
                .filter(r -> r.id().equals("GENT"))
                .forEach(r -> agrees(
                        "Gent 1958, Shore A " + r.input("S") + " [MPa]",
                        r.expected(),
                        Rubber.modulusFromShoreA(r.input("S")) / 1e6));
    }

    private static Row row(String id, String quantity) {
        return Reference.rows("contact/contact.csv").stream()
                .filter(r -> r.id().equals(id) && r.quantity().equals(quantity))
                .findFirst()
                .orElseThrow();
    }

    private static void agrees(String what, double expected, double found) {
        Truth.record("rates and moduli", what, "beam formula; Gent 1958", expected, found, "1e-9", "closed formula");
        assertThat(found).as(what).isCloseTo(expected, Offset.offset(1e-9 * expected));
    }
}
