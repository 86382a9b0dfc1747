package gripwright.contact;

import static org.assertj.core.api.Assertions.assertThat;

import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The spring with a toe. Source: the definition of the derivative, by central differences; and worked by hand for k = 1000
 * N/m and a toe of 0.1 mm: 0.0125 N at 0.05 mm, 0.15 N at 0.2 mm. Units: SI. Tolerance: 1e-6 relative for differences over
 * 1e-9 m (rounding), 1e-12 by hand. Valid for any depth above 0.
 */
class NormalLawTest {
    private static final double K = 1000;
    private static final double TOE = 1e-4;
    private static final double STEP = 1e-9;

    @ParameterizedTest
    @ValueSource(doubles = {2e-5, 0.99e-4, 1.01e-4, 5e-4})
    void propertyForceIsTheSlopeOfTheEnergyAndStiffnessThatOfTheForce(double depth) {
        double slope = (NormalLaw.energy(K, TOE, depth + STEP) - NormalLaw.energy(K, TOE, depth - STEP)) / (2 * STEP);
        double force = NormalLaw.force(K, TOE, depth);
        assertThat(slope).isCloseTo(force, Offset.offset(1e-6 * K * TOE));
        double rise = (NormalLaw.force(K, TOE, depth + STEP) - NormalLaw.force(K, TOE, depth - STEP)) / (2 * STEP);
        assertThat(rise).isCloseTo(NormalLaw.stiffness(K, TOE, depth), Offset.offset(1e-6 * K));
    }

    @Test
    void referenceForcesByHand() {
        assertThat(NormalLaw.force(K, TOE, 5e-5)).isCloseTo(0.0125, Offset.offset(1e-12));
        assertThat(NormalLaw.force(K, TOE, 2e-4)).isCloseTo(0.15, Offset.offset(1e-12));
    }

    @Test
    void toeEndsWithoutAJump() {
        double before = Math.nextDown(TOE);
        assertThat(NormalLaw.energy(K, TOE, before)).isCloseTo(NormalLaw.energy(K, TOE, TOE), Offset.offset(1e-18));
        assertThat(NormalLaw.force(K, TOE, before)).isCloseTo(NormalLaw.force(K, TOE, TOE), Offset.offset(1e-12));
        assertThat(NormalLaw.stiffness(K, TOE, before)).isCloseTo(K, Offset.offset(1e-9));
    }
}
