package gripwright.pad;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The finite element model against closed forms and against a second implementation (own, in another language). */
class PadModelTest {
    /** Bulk modulus that gives a Poisson's ratio of 0.4999 with a modulus of 1 MPa. */
    private static final double BULK_4999 = 1e6 / (3 * (1 - 2 * 0.4999));

    private static final double H = 4e-3;

    private static PadResponse filled(Chip chip, double modulus, double bulk) {
        return PadModel.filled(PadGeometry.of(chip, H), modulus, bulk);
    }

    private static Percentage percent(double p) {
        return Percentage.withPercentage(p);
    }

    /** Second implementation: Q2/P-1 with sparse LU at 8 cells per port radius; the mesh is another, between nodes a cubic spline. */
    @ParameterizedTest
    @CsvSource({"wide, 90.92986, 44.12454, 7.719334", "small, 82.49905, 44.55919, 9.507921"})
    void referencePressurePerNewtonAgreesWithASecondImplementation(String name, double peak, double at15, double at3) {
        PadResponse pad = filled(name.equals("wide") ? Chips.WIDE : Chips.SMALL, 1e6, BULK_4999);
        assertThat(pad.peak() / 1e3).isCloseTo(peak, percent(0.1));
        assertThat(pad.at(1.5e-3) / 1e3).isCloseTo(at15, percent(0.1));
        assertThat(pad.at(3e-3) / 1e3).isCloseTo(at3, percent(0.2));
    }

    /** Second implementation, as above: the shape of the field at other thicknesses. */
    @ParameterizedTest
    @CsvSource({
        "wide, 2, 756, .635, .970", "wide, 3, 204, .531, .835", "wide, 6, 33.1, .521, .828",
        "small, 2, 601, .524, .825", "small, 3, 174, .525, .844", "small, 8, 15.9, .507, .799"
    })
    void referenceReceptiveWidthsOverThickness(String name, double h, double peak, double r50, double r20) {
        Chip chip = name.equals("wide") ? Chips.WIDE : Chips.SMALL;
        PadResponse pad = PadModel.filled(PadGeometry.of(chip, h * 1e-3), 1e6, BULK_4999, 6);
        double t = pad.geometry().overChip();
        assertThat(pad.peak() / 1e3).isCloseTo(peak, percent(0.5));
        assertThat(pad.radius(0.5) / t).isCloseTo(r50, within(0.002));
        assertThat(pad.radius(0.2) / t).isCloseTo(r20, within(0.003));
    }

    /** Second implementation, as above. */
    @Test
    void referenceSoftBulkSwallowsTheSignal() {
        double bulk = 1e6 / (3 * (1 - 2 * 0.49));
        double wide =
                PadModel.filled(PadGeometry.of(Chips.WIDE, H), 1e6, bulk, 6).peak();
        double small =
                PadModel.filled(PadGeometry.of(Chips.SMALL, H), 1e6, bulk, 6).peak();
        assertThat(wide / 1e3).isCloseTo(32.7328, percent(0.1));
        assertThat(small / 1e3).isCloseTo(17.3610, percent(0.1));
    }

    /** Second implementation, as above; volume expansion 9e-4 per kelvin (silicone, from memory). */
    @ParameterizedTest
    @CsvSource({"wide, 91.2995, 19.0395", "small, 83.2040, 40.0471"})
    void referenceHeatOfAFilledCavity(String name, double peak, double perKelvin) {
        PadResponse pad = filled(name.equals("wide") ? Chips.WIDE : Chips.SMALL, 0.7e6, 1500e6);
        assertThat(pad.peak() / 1e3).isCloseTo(peak, percent(0.1));
        assertThat(pad.perKelvin(9e-4) / 1e3).isCloseTo(perKelvin, percent(0.5));
    }

    /** Second implementation, as above: a filled cell follows the air's pressure. */
    @Test
    void referenceFilledCellFollowsAmbientPressure() {
        assertThat(filled(Chips.WIDE, 0.7e6, 1500e6).ambientRatio()).isCloseTo(0.986, within(0.002));
        assertThat(filled(Chips.SMALL, 0.7e6, 1500e6).ambientRatio()).isCloseTo(0.970, within(0.002));
    }

    /**
     * Half of a penny-shaped crack's volume under pressure, 2 a^3 / E (I. N. Sneddon 1946, form from memory), and the
     * series of two springs made from it; the second implementation, whose mesh resolves the port's edge less well,
     * gives compliances 2.7 and 4.8 % lower.
     */
    @ParameterizedTest
    @CsvSource({"wide, 0.5, 67.85", "small, 0.25, 139.56"})
    void referenceAirUnderThePortLosesTwoOrders(String name, double port, double ratio) {
        Chip chip = name.equals("wide") ? Chips.WIDE : Chips.SMALL;
        Membrane air = PadModel.unfilled(PadGeometry.of(chip, H), 0.7e6, 1500e6);
        double unfilled = air.at(0, chip.volume(), 101325);
        assertThat(air.compliance() * 1e15).isCloseTo(2 * Math.pow(port, 3) / 0.7, percent(0.5));
        assertThat(filled(chip, 0.7e6, 1500e6).peak() / unfilled).isCloseTo(ratio, percent(4));
    }

    /** common practice, no source: rubber poured without degassing makes a very insensitive sensor. */
    @Test
    void referencePouringWithoutVacuumLosesMoreThanFiftyfold() {
        double unfilled =
                PadModel.unfilled(PadGeometry.of(Chips.WIDE, H), 0.7e6, 1500e6).at(0, Chips.WIDE.volume(), 101325);
        assertThat(filled(Chips.WIDE, 0.7e6, 1500e6).peak() / unfilled).isGreaterThan(50);
    }

    /** Own Hankel integrals of the incompressible bonded layer: a die of radius 0.1 t averages its own width. */
    @Test
    void referenceFlushDieAgreesWithTheClosedForm() {
        double t = 3e-3;
        PadResponse pad = PadModel.filled(PadGeometry.flush(t, 0.1e-3), 1e6, 1e6 / (3 * (1 - 2 * 0.49999)), 3);
        for (double x : new double[] {0, 1e-3, 2e-3, 3e-3}) {
            assertThat(pad.at(x)).isCloseTo(BondedLayer.point(x, t), percent(0.4));
        }
    }

    /**
     * A. N. Gent and P. B. Lindley, Proc. Inst. Mech. Eng. 173 (1959) 111 (form E (1 + 2 S^2), from memory); the
     * formula itself is approximate to a few percent.
     */
    @ParameterizedTest
    @CsvSource({"1, 2.956", "2, 8.7587", "3, 18.56", "5, 50.15"})
    void referenceBondedDiscStiffens(double factor, double secondImplementation) {
        double t = 1e-3;
        double radius = 2 * t * factor;
        double bulk = 1e6 / (3 * (1 - 2 * 0.499999));
        PadGeometry disc = new PadGeometry(t, 0, 0, radius / 4, 0, 0, 0, radius);
        PadSystem system = new PadSystem(new PadMesh(disc, 6, true), 1e6, bulk, PadSystem.Top.PLATE);
        double[] load = system.onPlate();
        double sink = PadSystem.dot(system.solved(load), load);
        double apparent = t / (sink * Math.PI * radius * radius) / 1e6;
        assertThat(apparent).isCloseTo(1 + 2 * factor * factor, percent(3.5));
        assertThat(apparent).isCloseTo(secondImplementation, percent(1));
    }

    @ParameterizedTest
    @CsvSource({"wide", "small"})
    void halvingTheCellsChangesThePeakByLessThanAThousandth(String name) {
        Chip chip = name.equals("wide") ? Chips.WIDE : Chips.SMALL;
        PadGeometry pad = PadGeometry.of(chip, H);
        double coarse = PadModel.filled(pad, 0.7e6, 1500e6, PadMesh.FINENESS).peak();
        double fine = PadModel.filled(pad, 0.7e6, 1500e6, 2 * PadMesh.FINENESS).peak();
        assertThat(coarse).isCloseTo(fine, percent(0.1));
    }

    /** Second implementation, as above: 0.31 of the peak at 0.48 t, and a shift of 0.058 t at a ratio of 0.3. */
    @Test
    void referenceFrictionFakesTheLocation() {
        PadResponse pad = filled(Chips.SMALL, 1e6, BULK_4999);
        double t = pad.geometry().overChip();
        assertThat(pad.greatestTangential()[0]).isCloseTo(0.31, within(0.01));
        assertThat(pad.greatestTangential()[1] / t).isCloseTo(0.48, within(0.03));
        assertThat(Math.abs(pad.frictionShift(0.3)) / t).isCloseTo(0.058, within(0.004));
    }

    @Test
    void modulusHardlyChangesPressurePerNewton() {
        double soft =
                PadModel.filled(PadGeometry.of(Chips.SMALL, H), 0.3e6, 2000e6).peak();
        double hard =
                PadModel.filled(PadGeometry.of(Chips.SMALL, H), 3e6, 2000e6).peak();
        assertThat(hard / soft).isBetween(0.9, 1.0);
    }

    @Test
    void impossibleGeometryIsRefused() {
        assertThatThrownBy(() -> PadGeometry.of(Chips.WIDE, 1.1e-3)).hasMessageContaining("lower");
        assertThatThrownBy(() -> PadGeometry.of(Chips.WIDE, 4e-3).endingAt(2e-3))
                .hasMessageContaining("wider");
        assertThatThrownBy(() -> filled(Chips.WIDE, 1e6, 0.3e6)).hasMessageContaining("bulk modulus");
    }
}
