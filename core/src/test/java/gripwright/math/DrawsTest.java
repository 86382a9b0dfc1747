package gripwright.math;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DrawsTest {
    /**
     * Source: numpy 2.4.6, {@code Philox(key=seed | purpose << 64, counter=subject << 64 | sample << 128 | input <<
     * 192).random_raw(1)} with the words by FNV-1a over utf-16-le, and scipy 1.17.1 {@code ndtri}. Bits and uniform
     * exact; the normal to 1e-12, two independent inverses of the distribution function.
     */
    @ParameterizedTest
    @CsvSource({
        "7, 'trials, scoring', mug, 0, x, f083dcbbc5b14046, 0.9395120581081687, 1.5506904518756934",
        "7, 'trials, scoring', mug, 41, pad friction, 3cc80a6730bc726d, 0.23742737788482937, -0.7146024089957975",
        "-1, 'trials, choosing', D cell, 3, mass, 21bade55fb84a022, 0.1317576370161243, -1.1181211043693084",
        "7, 'trials, scoring', Gl\u00fchbirne, 5, turn, cea318eb5c2a05d9, 0.8071761679276862, 0.8675373358111222"
    })
    void referenceNumbersAreThoseOfAnIndependentPhilox(
            long seed,
            String purpose,
            String subject,
            int sample,
            String input,
            String bits,
            double uniform,
            double normal) {
        Draws draws = new Streams(seed, purpose).draws(subject, sample);
        assertThat(Long.toHexString(draws.bits(Draws.key(input)))).isEqualTo(bits);
        assertThat(draws.uniform(input)).isEqualTo(uniform);
        assertThat(draws.normal(input)).isCloseTo(normal, within(1e-12));
    }

    @Test
    void numbersDependOnEveryPartOfTheirNameAndNotOnTheOrderOfAsking() {
        Streams streams = new Streams(1, "a");
        Draws draws = streams.draws("mug", 3);
        double y = draws.uniform("y");
        double x = draws.uniform("x");
        assertThat(streams.draws("mug", 3).uniform("x")).isEqualTo(x);
        assertThat(draws.uniform("y")).isEqualTo(y).isNotEqualTo(x);
        assertThat(streams.draws("mug", 4).uniform("x")).isNotEqualTo(x);
        assertThat(streams.draws("cup", 3).uniform("x")).isNotEqualTo(x);
        assertThat(new Streams(2, "a").draws("mug", 3).uniform("x")).isNotEqualTo(x);
        assertThat(new Streams(1, "b").draws("mug", 3).uniform("x")).isNotEqualTo(x);
    }

    /**
     * Kolmogorov-Smirnov distance of 2000 samples from the uniform law, mean and variance of the normal ones, and the
     * correlation of two inputs. Limits: chance of about 1e-4 each for a sound generator (1.63 * 1.36 / sqrt(n) for the
     * distance, 4 standard errors else); the seed is fixed, so the test does not flicker.
     */
    @Test
    void propertyDrawsLookUniformNormalAndIndependent() {
        int n = 2000;
        double[] u = new double[n];
        double sum = 0;
        double squares = 0;
        double product = 0;
        for (int i = 0; i < n; i++) {
            Draws draws = new Streams(20261125, "check").draws("mug", i);
            u[i] = draws.uniform("x");
            double z = draws.normal("y");
            sum += z;
            squares += z * z;
            product += z * draws.normal("turn");
        }
        Arrays.sort(u);
        double distance = 0;
        for (int i = 0; i < n; i++) {
            distance = Math.max(distance, Math.max(u[i] - (double) i / n, (i + 1.0) / n - u[i]));
        }
        assertThat(distance).isLessThan(2.22 / Math.sqrt(n));
        assertThat(sum / n).isCloseTo(0, within(4 / Math.sqrt(n)));
        assertThat(squares / n).isCloseTo(1, within(4 * Math.sqrt(2.0 / n)));
        assertThat(product / n).isCloseTo(0, within(4 / Math.sqrt(n)));
    }

    @Test
    void refusesANegativeSample() {
        assertThatThrownBy(() -> new Streams(1, "a").draws("mug", -1)).hasMessage("sample is -1; it must be 0 or more");
    }
}
