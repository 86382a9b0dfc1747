package gripwright.pad;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Closed forms of the bonded layer, against a second implementation with library quadrature and Bessel functions. */
class LayerTest {
    /** Adaptive quadrature with SciPy's Bessel functions. */
    @Test
    void referencePointDiscAndLineLoads() {
        double peak = BondedLayer.point(0, 1);
        assertThat(peak).isCloseTo(0.7500782186, within(1e-9));
        assertThat(BondedLayer.point(0.5, 1) / peak).isCloseTo(0.4985775298, within(1e-9));
        assertThat(BondedLayer.point(1, 1) / peak).isCloseTo(0.0852811254, within(1e-9));
        assertThat(BondedLayer.point(0.4989074837, 1) / peak).isCloseTo(0.5, within(1e-8));
        assertThat(BondedLayer.point(0.9636785429, 1) / peak).isCloseTo(0.1, within(1e-8));
        assertThat(BondedLayer.disc(0, 0.5, 1)).isCloseTo(0.5361080793, within(1e-9));
        assertThat(BondedLayer.disc(0, 1, 1)).isCloseTo(0.2626867736, within(1e-9));
        assertThat(BondedLayer.line(0, 1)).isCloseTo(0.8236049192, within(1e-9));
    }

    /** Boussinesq: the half space carries 3 / (2 pi z^2); bonding to the board adds 57 % (own derivation). */
    @Test
    void referenceHalfSpaceTransferIsBoussinesqs() {
        assertThat(BondedLayer.transfer(12) / (13 * Math.exp(-12))).isCloseTo(2, within(1e-3));
        assertThat(BondedLayer.point(0, 1) / (3 / (2 * Math.PI))).isCloseTo(1.571, within(0.001));
    }

    /** A line load is the sum of point loads along it. */
    @Test
    void lineLoadIsTheSumOfItsPoints() {
        double sum = 0;
        double step = 0.02;
        for (int i = -500; i <= 500; i++) {
            sum += step * BondedLayer.point(Math.abs(i * step), 1);
        }
        assertThat(sum).isCloseTo(BondedLayer.line(0, 1), within(1e-4));
    }

    /** Second implementation, 400 rings; 3.609 and 9.069 in W. C. Hayes et al., J. Biomech. 5 (1972), from memory. */
    @ParameterizedTest
    @CsvSource({"0.5, 1.932929", "1, 3.618724", "2, 9.149415"})
    void referencePunchOnALayer(double a, double kappa) {
        double found = LayerContact.punchStiffness(a, 1, 1, 400) / (2 * a * 4 / 3);
        assertThat(found).isCloseTo(kappa, Percentage.withPercentage(0.01));
    }

    /** Second implementation, 320 rings. */
    @ParameterizedTest
    @CsvSource({"0.1, 0.284760", "0.4, 4.091995"})
    void referenceSphereOnALayer(double indentation, double force) {
        double mm = 1e-3;
        LayerContact.Pressed pressed = LayerContact.sphere(10 * mm, indentation * mm, 1e6, 3 * mm, 320);
        assertThat(pressed.force()).isCloseTo(force, Percentage.withPercentage(0.01));
        double usual =
                LayerContact.sphere(10 * mm, indentation * mm, 1e6, 3 * mm).force();
        assertThat(usual).isCloseTo(force, Percentage.withPercentage(0.1));
    }

    /** Hertz (K. L. Johnson, "Contact Mechanics" (1985), chapter 4, from memory): 4/3 E* sqrt(R) d^1.5. */
    @Test
    void referenceThickLayerIsHertzs() {
        double force = LayerContact.sphere(10e-3, 0.05e-3, 1e6, 200e-3, 200).force();
        double hertz = 16.0 / 9 * 1e6 * Math.sqrt(10e-3) * Math.pow(0.05e-3, 1.5);
        assertThat(force).isCloseTo(hertz, Percentage.withPercentage(1));
    }

    /** Second implementation: calibration with one probe does not hold for another. */
    @Test
    void referenceBluntProbeReadsLessPerNewton() {
        LayerContact.Pressed light = LayerContact.sphere(10e-3, 0.02e-3, 0.7e6, 3e-3);
        LayerContact.Pressed heavy = LayerContact.sphere(10e-3, 0.4e-3, 0.7e6, 3e-3);
        assertThat(light.boardPressure() / light.force() / 1e3).isCloseTo(80.4, within(1.0));
        assertThat(heavy.boardPressure() / heavy.force() / 1e3).isBetween(40.0, 60.0);
    }

    /** Tables of Bessel functions and elliptic integrals (Abramowitz and Stegun, from memory). */
    @Test
    void referenceSpecialFunctions() {
        assertThat(Special.j0(1)).isCloseTo(0.7651976865579666, within(1e-14));
        assertThat(Special.j1(1)).isCloseTo(0.4400505857449335, within(1e-14));
        assertThat(Special.j0(50)).isCloseTo(0.0558123276692518, within(1e-12));
        assertThat(Special.elliptic(0.5)[0]).isCloseTo(1.854074677301372, within(1e-13));
        assertThat(Special.elliptic(0.5)[1]).isCloseTo(1.350643881047675, within(1e-13));
    }
}
