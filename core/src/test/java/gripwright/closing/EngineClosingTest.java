package gripwright.closing;

import static org.assertj.core.api.Assertions.assertThat;

import gripwright.truth.Truth;
import java.util.Arrays;
import java.util.stream.Stream;
import org.assertj.core.data.Offset;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Three bare two-link fingers closing in space on a free object on a frictionless table.
 *
 * <p>Source: three general rigid-body engines run to rest, reference/closings/engine_case.json. Worked outside: by time
 * stepping with inertia at 0.25 ms. Units: degrees, N, mm. Tolerance: the engines differ among themselves by 0.06
 * degrees, 0.01 N, 0.02 mm in these cases and print two decimals; the object slides without friction or springs, so its
 * place is the softest number: 0.06 degrees, 0.02 N, 0.03 mm. Valid where friction leaves nothing to the path.
 */
class EngineClosingTest {
    private static final String SOURCE = "three rigid-body engines, engine_case.json";

    static Stream<String> frictionless() {
        return EngineClosing.names(false);
    }

    @ParameterizedTest
    @MethodSource("frictionless")
    void referenceFrictionlessClosings(String name) {
        EngineClosing.End end = EngineClosing.smooth(name);
        assertThat(end.solved()).as("comes to rest").isTrue();
        String[] places = {"x_mm", "y_mm", "z_mm"};
        for (int j = 0; j < 6; j++) {
            check(name, angle(j), Math.toDegrees(end.angles()[j]), 0.06);
        }
        for (int b = 0; b < EngineClosing.BODIES.size(); b++) {
            check(name, EngineClosing.BODIES.get(b), end.forces()[b], 0.02);
        }
        for (int i = 0; i < 3; i++) {
            check(name, places[i], end.place()[i] * 1e3, 0.03);
        }
    }

    static Stream<String> withFriction() {
        return EngineClosing.names(true);
    }

    /**
     * With friction the end depends on stick and slip on the way (the engines differ by up to 4 degrees), and our links
     * are chains of beads with a shear stiffness: only held or not, and angles within a band about the engines'.
     */
    @ParameterizedTest
    @MethodSource("withFriction")
    void referenceClosingsWithFriction(String name) {
        EngineClosing.End end = EngineClosing.beads(name);
        assertThat(end.solved()).as(end.trouble()).isTrue();
        double heldThere = EngineClosing.there(name, "held")[0];
        Truth.record(
                "closing in space, friction",
                name + " held (1) or not (0)",
                EngineClosing.inputs(name),
                SOURCE,
                heldThere,
                end.held() ? 1 : 0,
                "equal",
                "yes or no");
        assertThat(end.held()).isEqualTo(heldThere == 1);
        if (!end.held()) {
            return;
        }
        // the sphere between unequal fingers rolls a little on the way, differently with our shear springs
        double band = name.equals("sphere70-side-double") ? 7 : 3.5;
        for (int j = 0; j < 6; j++) {
            double[] there = EngineClosing.there(name, angle(j));
            double low = Arrays.stream(there).min().orElseThrow();
            double high = Arrays.stream(there).max().orElseThrow();
            double found = Math.toDegrees(end.angles()[j]);
            Truth.record(
                    "closing in space, friction",
                    name + " " + unit(angle(j)),
                    EngineClosing.inputs(name),
                    SOURCE,
                    0.5 * (low + high),
                    found,
                    band + " beyond the engines' band",
                    "path of stick and slip");
            assertThat(found).as(name + " " + angle(j)).isBetween(low - band, high + band);
        }
    }

    /** The file's name of a quantity with its unit set apart: "q_f0_1_deg" becomes "q_f0_1 [deg]". */
    private static String unit(String key) {
        return key.replaceFirst("_(deg|mm|N)$", " [$1]");
    }

    private static String angle(int joint) {
        return "q_f" + joint / 2 + "_" + (joint % 2 + 1) + "_deg";
    }

    /** Mean of the engines. */
    private static void check(String name, String key, double found, double tolerance) {
        double expected =
                Arrays.stream(EngineClosing.there(name, key)).average().orElseThrow();
        Truth.record(
                "closing in space, frictionless",
                name + " " + unit(key),
                EngineClosing.inputs(name),
                SOURCE,
                expected,
                found,
                "" + tolerance,
                "spread of the engines, two printed decimals, contact toe");
        assertThat(found).as(name + " " + key).isCloseTo(expected, Offset.offset(tolerance));
    }
}
