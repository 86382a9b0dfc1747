package gripwright.units;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class QuantityTextTest {
    /**
     * Source: SI Brochure, 9th edition (2019): table 4 (N = kg m s-2, Pa = kg m-1 s-2, J = kg m2 s-2, W, Hz), table 7
     * (prefixes), table 8 (minute, hour, degree = pi/180 rad); standard gravity 9.80665 m/s^2 (3rd CGPM, 1901); inch
     * 0.0254 m and pound 0.45359237 kg (international yard and pound, 1959; NIST SP 811 appendix B). All from memory.
     * Expected numbers written out by hand from those definitions, not computed by this code.
     */
    @ParameterizedTest
    @CsvSource({
        "62 mm, LENGTH, 0.062",
        "1 in, LENGTH, 0.0254",
        "1.5 um, LENGTH, 0.0000015",
        "180 g, MASS, 0.18",
        "1 lb, MASS, 0.45359237",
        "40 %, NUMBER, 0.4",
        "0.35, NUMBER, 0.35",
        "180 deg, ANGLE, 3.141592653589793",
        "1 rev, ANGLE, 6.283185307179586",
        "0.7 MPa, PRESSURE, 700000",
        "1 bar, PRESSURE, 100000",
        "1 psi, PRESSURE, 6894.757293168361",
        "1 kgf, FORCE, 9.80665",
        "1 kg*m/s^2, FORCE, 1",
        "1 kgf*cm, TORQUE, 0.0980665",
        "1 J, TORQUE, 1",
        "0.12 N*m/rad, TURNING_STIFFNESS, 0.12",
        "1 N*mm/deg, TURNING_STIFFNESS, 0.05729577951308232",
        "20 N/mm, STIFFNESS, 20000",
        "9.81 m/s^2, ACCELERATION, 9.81",
        "9.81 m/(s*s), ACCELERATION, 9.81",
        "9.81 m*s^-2, ACCELERATION, 9.81",
        "60 rpm, TURNING_SPEED, 6.283185307179586",
        "60 mm/min, SPEED, 0.001",
        "20 Shore A, HARDNESS, 20",
        "1e3 mm, LENGTH, 1",
        "-5 mm, LENGTH, -0.005",
        ".5 mm, LENGTH, 0.0005",
        "62mm, LENGTH, 0.062",
    })
    void referenceDefinitionsOfUnits(String text, Measure measure, double si) {
        assertThat(QuantityText.value(text, measure)).isCloseTo(si, within(1e-12 * Math.abs(si)));
    }

    @Test
    void signsThatPeopleTypeAreRead() {
        assertThat(QuantityText.value("25\u00b0", Measure.ANGLE)).isEqualTo(Math.toRadians(25), within(1e-15));
        assertThat(QuantityText.value("\u22125 \u00b5m", Measure.LENGTH)).isEqualTo(-5e-6, within(1e-18));
        assertThat(QuantityText.value("2 N\u00b7m/rad", Measure.TURNING_STIFFNESS))
                .isEqualTo(2);
        assertThat(QuantityText.value("2 m/s\u00b2", Measure.ACCELERATION)).isEqualTo(2);
    }

    @Test
    void torqueIsNotStiffnessNorTheOtherWayRound() {
        UnitFault fault = fault("0.12 N*m", Measure.TURNING_STIFFNESS);
        assertThat(fault).hasMessage("'0.12 N*m' is a torque, not a turning stiffness");
        assertThat(fault.column()).isEqualTo(5);
        assertThat(fault.expected()).isEqualTo("a turning stiffness, such as 0.12 N*m/rad");
        assertThat(fault("0.12 N*m/rad", Measure.TORQUE))
                .hasMessage("'0.12 N*m/rad' is a turning stiffness, not a torque");
        assertThat(fault("5 N*s", Measure.FORCE)).hasMessage("'5 N*s' is something else, not a force");
    }

    @Test
    void missingUnitIsSaidWithTheUnitToAdd() {
        UnitFault fault = fault("62", Measure.LENGTH);
        assertThat(fault).hasMessage("'62' has no unit");
        assertThat(fault.column()).isEqualTo(2);
        assertThat(fault.suggestion()).contains("62 mm");
    }

    @ParameterizedTest
    @CsvSource({
        "62 mn, LENGTH, mm, 3",
        "62 MM, LENGTH, mm, 3",
        "3 Nm, TORQUE, N*m, 2",
        "0.1 Nm/rad, TURNING_STIFFNESS, N*m/rad, 4",
        "20 degrees, ANGLE, deg, 3",
        "0.7 Mpa, PRESSURE, MPa, 4",
        "20 Shore, HARDNESS, Shore A, 3",
        "0.1 N m/rad, TURNING_STIFFNESS, N*m/rad, 5",
    })
    void nearestUnitIsSuggested(String text, Measure measure, String near, int column) {
        UnitFault fault = fault(text, measure);
        assertThat(fault.suggestion()).contains(near);
        assertThat(fault.column()).isEqualTo(column);
    }

    @ParameterizedTest
    @CsvSource({
        "NaN mm, 'NaN mm' is not a number one can compute with",
        "nan, 'nan' is not a number one can compute with",
        "-inf mm, '-inf mm' is not a number one can compute with",
        ".inf, '.inf' is not a number one can compute with",
        "1e300 mm, '1e300 mm' is far too large",
        "1e999 mm, '1e999 mm' is far too large",
        "-1e300 mm, '-1e300 mm' is far too large",
        "1e-300 mm, '1e-300 mm' is far too small",
        "about 5 mm, 'about 5 mm' does not start with a number",
        "mm, 'mm' does not start with a number",
        "5 mm/, the unit ends too early",
        "5 (mm, a bracket is not closed",
        "5 mm^0, a power is missing or too high",
        "5 mm^99, a power is missing or too high",
        "5 mm), ')' does not belong here",
        "5 kg*m/s*s, a product after a division can be read in two ways",
    })
    void nonsenseIsRefusedWithItsReason(String text, String message) {
        assertThat(fault(text, Measure.LENGTH)).hasMessage(message);
    }

    @Test
    void emptyAndEndlessTextsAreRefused() {
        assertThat(fault("  ", Measure.LENGTH)).hasMessage("nothing where a quantity should be");
        assertThat(fault("1".repeat(5000) + " mm", Measure.LENGTH)).hasMessage("a quantity of 5003 characters");
        assertThat(fault("1 " + "(".repeat(100), Measure.LENGTH)).hasMessage("too many brackets");
    }

    @Test
    void limitIsStatedInTheUnitsOfTheMeasure() {
        assertThat(fault("1e300 mm", Measure.LENGTH).expected()).isEqualTo("a length of 0 or of 0.1 um to 100 m");
    }

    @Test
    void commaInNumberIsExplained() {
        UnitFault fault = fault("1,5 mm", Measure.LENGTH);
        assertThat(fault).hasMessage("a comma in a number");
        assertThat(fault.column()).isEqualTo(1);
        assertThat(fault.suggestion()).contains("1.5 mm");
    }

    @Test
    void plusMinusIsOneStandardDeviation() {
        assertThat(QuantityText.measured("0.7 +- 0.15", Measure.NUMBER))
                .isEqualTo(new QuantityText.Measured(0.7, 0.15));
        assertThat(QuantityText.measured("12 mm +- 2 mm", Measure.LENGTH))
                .isEqualTo(new QuantityText.Measured(0.012, 0.002));
        assertThat(QuantityText.measured("12 mm \u00b1 2 mm", Measure.LENGTH).deviation())
                .isEqualTo(0.002);
        assertThat(QuantityText.measured("12 mm", Measure.LENGTH)).isEqualTo(new QuantityText.Measured(0.012, 0));
        assertThatThrownBy(() -> QuantityText.measured("12 mm +- 2", Measure.LENGTH))
                .isInstanceOfSatisfying(
                        UnitFault.class, f -> assertThat(f.column()).isEqualTo(10))
                .hasMessage("'2' has no unit");
        assertThatThrownBy(() -> QuantityText.measured("12 mm +- -2 mm", Measure.LENGTH))
                .hasMessage("the deviation after +- is negative");
    }

    @Test
    void scatterSaysItsLaw() {
        assertThat(QuantityText.scattering("12 mm sd", Measure.LENGTH))
                .isEqualTo(new QuantityText.Scattering(false, 0.012));
        assertThat(QuantityText.scattering("12 mm uniform", Measure.LENGTH))
                .isEqualTo(new QuantityText.Scattering(true, 0.012));
        assertThatThrownBy(() -> QuantityText.scattering("12 mm", Measure.LENGTH))
                .isInstanceOfSatisfying(
                        UnitFault.class, f -> assertThat(f.suggestion()).contains("12 mm sd"))
                .hasMessage("'12 mm' does not say how it scatters");
        assertThatThrownBy(() -> QuantityText.scattering("-12 mm sd", Measure.LENGTH))
                .hasMessage("the scatter is negative");
    }

    @Test
    void valuesReadWellAgain() {
        assertThat(QuantityText.format(0.062, Measure.LENGTH)).isEqualTo("62 mm");
        assertThat(QuantityText.format(0.9, Measure.SHARE)).isEqualTo("90 %");
        assertThat(QuantityText.format(7e5, Measure.PRESSURE)).isEqualTo("700 kPa");
        assertThat(QuantityText.format(4e6, Measure.PRESSURE)).isEqualTo("4 MPa");
        assertThat(QuantityText.format(Math.toRadians(25), Measure.ANGLE)).isEqualTo("25 deg");
        assertThat(QuantityText.format(0, Measure.FORCE)).isEqualTo("0 N");
        assertThat(QuantityText.format(0.35, Measure.NUMBER)).isEqualTo("0.35");
        assertThat(QuantityText.format(1e-7, Measure.LENGTH, 2)).isEqualTo("0.1 um");
    }

    @Test
    void numbersDoNotDependOnTheLocale() {
        Locale before = Locale.getDefault();
        try {
            Locale.setDefault(Locale.GERMANY);
            assertThat(QuantityText.format(0.0625, Measure.LENGTH)).isEqualTo("62.5 mm");
            assertThat(QuantityText.value("62.5 mm", Measure.LENGTH)).isEqualTo(0.0625, within(1e-15));
        } finally {
            Locale.setDefault(before);
        }
    }

    @ParameterizedTest
    @EnumSource(Measure.class)
    void propertyWhatIsWrittenReadsBack(Measure measure) {
        long seed = 20251;
        Random random = new Random(seed);
        double span = Math.log(measure.greatest() / measure.least());
        for (int trial = 0; trial < 300; trial++) {
            double value = measure.least() * 1.001 * Math.exp(random.nextDouble() * span * 0.999);
            String text = QuantityText.format(value, measure, 12);
            assertThat(QuantityText.value(text, measure))
                    .as("seed %s trial %s: %s", seed, trial, text)
                    .isCloseTo(value, within(1e-11 * value));
        }
    }

    @Test
    void propertyAnyTextEitherReadsOrNamesItsFault() {
        long seed = 20252;
        Random random = new Random(seed);
        String letters = "0123456789.eE+-*/^()% mMNPagsdrbnuk\u00b0\u00b2\u00b1,#\u1f600";
        for (int trial = 0; trial < 5000; trial++) {
            StringBuilder text = new StringBuilder();
            for (int i = random.nextInt(14); i >= 0; i--) {
                text.append(letters.charAt(random.nextInt(letters.length())));
            }
            try {
                assertThat(QuantityText.measured(text.toString(), Measure.LENGTH)
                                .value())
                        .isFinite();
            } catch (UnitFault fault) {
                assertThat(fault.getMessage())
                        .as("seed %s trial %s: %s", seed, trial, text)
                        .isNotBlank();
                assertThat(fault.column())
                        .as("seed %s trial %s: %s", seed, trial, text)
                        .isBetween(0, text.length());
            }
        }
    }

    private static UnitFault fault(String text, Measure measure) {
        return catchThrowableOfType(UnitFault.class, () -> QuantityText.value(text, measure));
    }

    /** Source: IEEE 754 binary64 ends at 1.8e308 and 4.9e-324; found by the fuzz tests. */
    @ParameterizedTest
    @ValueSource(strings = {"1e400 mm", "-1e400", "1e308 km", "1e-400 mm", "-0.01e-330", "1e-322 mm"})
    void numbersBeyondTheRangeOfTheMachineAreRefused(String text) {
        assertThatThrownBy(() -> QuantityText.quantity(text))
                .isInstanceOf(UnitFault.class)
                .hasMessageContaining("too");
    }

    @Test
    void zeroIsNotTooSmall() {
        assertThat(QuantityText.quantity("0.00e5 mm").value()).isZero();
        assertThat(QuantityText.quantity("-0").value()).isZero();
    }
}
