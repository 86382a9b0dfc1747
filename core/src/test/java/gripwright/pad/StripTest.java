package gripwright.pad;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class StripTest {
    private static Strip strip(double pitch) {
        PadDesign design =
                new PadDesign("p", Chips.SMALL, 4e-3, 1e6, 1e6 / (3 * (1 - 2 * 0.4999)), 5, pitch, 1, 1, 0, 0.02);
        return new Strip(design, PadModel.filled(PadGeometry.of(Chips.SMALL, 4e-3), 1e6, design.bulk()));
    }

    /** Second implementation: 5 cells 4 mm apart, load of 0.1 N at 1 mm, noise 3 Pa; interpolation differs. */
    @Test
    void referenceBoundsOfPlaceAndForce() {
        Strip.Bounds found = strip(4e-3).bounds(1e-3, 0.1, 3, 0);
        assertThat(found.place() * 1e3).isCloseTo(1.713e-3, Percentage.withPercentage(1));
        assertThat(found.force() * 0.1).isCloseTo(9.92e-5, Percentage.withPercentage(1));
    }

    /** Second implementation: share of the peak half-way between two chips. */
    @ParameterizedTest
    @CsvSource({"3, 0.54", "4, 0.352", "4.5, 0.275", "5, 0.211"})
    void referenceReadingBetweenTwoChips(double pitch, double share) {
        Strip s = strip(pitch * 1e-3);
        assertThat(s.worst() / s.best(0)).isCloseTo(share, within(0.002));
    }

    @Test
    void blindGapsOpenBeyondTheWidestPitch() {
        double widest = strip(4e-3).widestPitch();
        assertThat(strip(widest * 0.999).gaps()).isEmpty();
        assertThat(strip(widest * 1.02).gaps()).hasSize(4);
        assertThat(strip(4e-3).recommendedPitch()).isLessThan(widest);
        // Rule of thumb of the method: good up to 1.2 t, blind from 1.6 t on.
        assertThat(widest / 3.05e-3).isBetween(1.5, 1.75);
        assertThat(strip(4e-3).recommendedPitch() / 3.05e-3).isBetween(1.1, 1.35);
    }

    @Test
    void modelErrorIsAFloorUnderTheBound() {
        assertThat(strip(4e-3).worstBounds(0.1, 3, 0.05).place())
                .isGreaterThan(5 * strip(4e-3).worstBounds(0.1, 3, 0).place());
    }

    /** Lumped values of the second implementation. */
    @Test
    void referenceCavityByFormulas() {
        Cavity wide = new Cavity(Chips.WIDE, 0.7e6, 1500e6);
        Cavity small = new Cavity(Chips.SMALL, 0.7e6, 1500e6);
        assertThat(wide.perKelvin(9e-4) / 1e3).isCloseTo(16.1, within(0.05));
        assertThat(small.perKelvin(9e-4) / 1e3).isCloseTo(34.7, within(0.05));
        assertThat(wide.capillary()).isCloseTo(84, within(0.1));
        assertThat(wide.withBubble(wide.bubbleFor(0.1))).isCloseTo(0.9, within(1e-12));
        assertThat(wide.bubbleFor(0.1) * 1e9).isCloseTo(0.0062, within(0.0003));
        assertThat(wide.withBubble(wide.leftAfter(100, 4e-3))).isCloseTo(0.91, within(0.02));
        assertThat(wide.withBubble(wide.leftAfter(3100, 4e-3))).isCloseTo(0.42, within(0.02));
        assertThat(Cavity.foam(0.05, 3100)).isCloseTo(2.58, within(0.01));
        assertThat(Cavity.rise(0.1e-3, 3100, 3, 1070, 10e-3)).isCloseTo(126, within(1.0));
    }
}
