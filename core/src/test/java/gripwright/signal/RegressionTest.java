package gripwright.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

/** NIST/ITL Statistical Reference Datasets, certified values (data files beside the tests); GUM example H.3. */
class RegressionTest {
    private static double[] power(double[] x, int n) {
        double[] out = new double[x.length];
        Arrays.setAll(out, i -> Math.pow(x[i], n));
        return out;
    }

    private static void agrees(String dataset, Regression fit, double digits) {
        for (int k = 0; k < fit.coefficients().length; k++) {
            double[] certified = Tables.row(dataset, "B" + k);
            assertThat(Tables.digits(fit.coefficients()[k], certified[0]))
                    .as("%s B%s", dataset, k)
                    .isGreaterThan(digits);
            assertThat(Tables.digits(fit.deviation(k), certified[1]))
                    .as("%s sd of B%s", dataset, k)
                    .isGreaterThan(digits);
        }
        assertThat(Tables.digits(fit.deviation(), Tables.certified(dataset, "residual_sd")))
                .isGreaterThan(digits);
    }

    @Test
    void referenceNorrisTo10Digits() {
        double[] x = Tables.column("strd_norris", 1);
        agrees("Norris", Regression.fit(new double[][] {power(x, 0), x}, Tables.column("strd_norris", 0)), 10);
    }

    @Test
    void referenceLongleyTo8Digits() {
        double[][] columns = new double[7][];
        columns[0] = power(Tables.column("strd_longley", 1), 0);
        for (int k = 1; k < 7; k++) {
            columns[k] = Tables.column("strd_longley", k);
        }
        agrees("Longley", Regression.fit(columns, Tables.column("strd_longley", 0)), 8);
    }

    @Test
    void referenceFilipTo7Digits() {
        double[] x = Tables.column("strd_filip", 1);
        double[][] columns = new double[11][];
        Arrays.setAll(columns, k -> power(x, k));
        agrees("Filip", Regression.fit(columns, Tables.column("strd_filip", 0)), 7);
    }

    @Test
    void referenceMisra1aTo8Digits() {
        double[] y = Tables.column("strd_misra1a", 0);
        double[] x = Tables.column("strd_misra1a", 1);
        SeparableFit fit = SeparableFit.of(
                b -> new double[][] {
                    Arrays.stream(x).map(v -> -Math.expm1(-b[0] * v)).toArray()
                },
                y,
                new double[] {1e-4}, // the first of NIST's starting values
                new double[] {1e-4},
                new double[] {1e-6},
                new double[] {1},
                1e-12);
        assertThat(Tables.digits(fit.linear().coefficients()[0], Tables.certified("Misra1a", "b1")))
                .isGreaterThan(8);
        assertThat(Tables.digits(fit.parameters()[0], Tables.certified("Misra1a", "b2")))
                .isGreaterThan(8);
        assertThat(Tables.digits(fit.squares(), Tables.certified("Misra1a", "residual_ss")))
                .isGreaterThan(8);
        assertThat(Tables.digits(fit.linear().deviation(1), Tables.row("Misra1a", "b2")[1]))
                .isGreaterThan(5);
    }

    /** JCGM 100:2008, annex H.3: calibration of a thermometer; unrounded values computed apart from the printed ones. */
    @Test
    void referenceGumThermometer() {
        double[] t = Tables.column("gum_h3", 0);
        double[] b = Tables.column("gum_h3", 1);
        double[] off = Arrays.stream(t).map(v -> v - 20).toArray();
        Regression fit = Regression.fit(new double[][] {power(t, 0), off}, b);
        assertThat(fit.coefficients()[0]).isCloseTo(-0.17120379, within(1e-8));
        assertThat(fit.coefficients()[1]).isCloseTo(0.00218270, within(1e-8));
        assertThat(fit.deviation(0)).isCloseTo(0.00287760, within(1e-8));
        assertThat(fit.deviation(1)).isCloseTo(0.00066794, within(1e-8));
        assertThat(fit.covariance()[0][1] / fit.deviation(0) / fit.deviation(1)).isCloseTo(-0.930430, within(1e-6));
        double at30 = fit.coefficients()[0] + 10 * fit.coefficients()[1];
        double error = Math.sqrt(fit.covariance()[0][0] + 20 * fit.covariance()[0][1] + 100 * fit.covariance()[1][1]);
        assertThat(at30).isCloseTo(-0.14937681, within(1e-8));
        assertThat(error).isCloseTo(0.00413860, within(1e-8));
    }

    private static org.assertj.core.data.Offset<Double> within(double off) {
        return org.assertj.core.data.Offset.offset(off);
    }

    @Test
    void columnsThatDependOnOneAnotherAreRefused() {
        double[] x = {1, 2, 3, 4};
        assertThatThrownBy(() -> Regression.fit(new double[][] {x, {2, 4, 6, 8}}, x))
                .hasMessageContaining("column 1 of the fit depends on those before it");
        assertThatThrownBy(() -> Regression.fit(new double[][] {x, {0, 0, 0, 0}}, x))
                .hasMessageContaining("0.0 long");
    }
}
