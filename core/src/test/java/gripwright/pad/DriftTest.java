package gripwright.pad;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;

class DriftTest {
    private static final PadDesign PAD = new PadDesign("p", Chips.WIDE, 6e-3, 0.7e6, 1.5e9, 5, 6e-3, 1, 1, 0, 0.02);
    private static final PadResponse RESPONSE =
            PadModel.filled(PadGeometry.of(Chips.WIDE, 6e-3), PAD.modulus(), PAD.bulk());

    @Test
    void heatIsARangeUnlessItWasMeasured() {
        Drift unknown = Drift.over(10, 0.01, RESPONSE, Chips.WIDE);
        assertThat(unknown.heatLeast()).isZero();
        assertThat(unknown.heatMost()).isCloseTo(0.1 * RESPONSE.perKelvin(Cavity.EXPANSION), within(1e-9));
        Drift measured = Drift.over(10, 0.01, RESPONSE, Chips.withHeat(Chips.WIDE, 2000));
        assertThat(measured.heatLeast()).isEqualTo(measured.heatMost()).isCloseTo(200, within(1e-9));
    }

    /** 1 hPa an hour over 10 s is 0.28 Pa (common practice, no source); a full cell follows by nearly all of it. */
    @Test
    void referenceWeatherOverTenSeconds() {
        Drift d = Drift.over(10, 0, RESPONSE, Chips.WIDE);
        assertThat(d.weather() / RESPONSE.ambientRatio()).isCloseTo(0.28, within(0.003));
        assertThat(d.heatMost()).isZero();
    }

    /** International Standard Atmosphere at sea level: 1.225 kg/m^3 times 9.80665 m/s^2. */
    @Test
    void referencePressureOverHeight() {
        assertThat(Drift.PER_METRE).isCloseTo(1.225 * 9.80665, within(0.005));
    }

    /** Seeded draws: at the stated limit the stated shares of alarms and misses come out, zero and mean both noisy. */
    @Test
    void propertyMeanOfSeveralReadingsKeepsTheStatedRates() {
        PadSetup.Judging judging = new PadSetup.Judging(0.05, 0.05, 20, 0.05, 0.5);
        Drift still = Drift.over(1, 0, RESPONSE, Chips.WIDE);
        Averaging a = Averaging.of(8, PAD, RESPONSE.peak(), still, judging);
        double noise = Chips.WIDE.noise();
        double deviation = noise * Math.sqrt(1 / 8.0 + 1 / 20.0);
        double threshold = Detection.quantile(0.05) * deviation;
        java.util.Random random = new java.util.Random(new SplittableRandom(5).nextLong());
        int alarms = 0;
        int misses = 0;
        int runs = 20_000;
        for (int i = 0; i < runs; i++) {
            double zero = mean(random, 20) * noise;
            alarms += mean(random, 8) * noise - zero > threshold ? 1 : 0;
            misses += mean(random, 8) * noise + a.noise() * RESPONSE.peak() - zero <= threshold ? 1 : 0;
        }
        // four standard deviations of a share of 0.05 in 20 000
        assertThat(alarms / (double) runs).as("seed 5").isCloseTo(0.05, within(0.0062));
        assertThat(misses / (double) runs).as("seed 5").isCloseTo(0.05, within(0.0062));
    }

    private static double mean(java.util.Random random, int n) {
        double sum = 0;
        for (int i = 0; i < n; i++) {
            sum += random.nextGaussian();
        }
        return sum / n;
    }

    /** With endless zeros z sigma / (S sqrt n) + c n is least at n = (z sigma / (2 S c))^(2/3), worked by hand. */
    @Test
    void referenceAveragingEndsWhereDriftOvertakesNoise() {
        PadSetup.Judging judging = new PadSetup.Judging(0.05, 0.05, 1_000_000_000, 0.05, 0.5);
        Drift d = Drift.over(1, 0.01, RESPONSE, Chips.WIDE);
        Averaging best = Averaging.best(PAD, RESPONSE.peak(), d, judging);
        double z = 2 * 1.6448536269514722; // normal quantile at 0.95, published tables
        double perReading = d.rate() * Chips.WIDE.conversion();
        assertThat((double) best.readings())
                .isCloseTo(Math.pow(z * 150 / (2 * perReading), 2.0 / 3), Percentage.withPercentage(5))
                .isGreaterThan(10);
    }

    @Test
    void pouringIsTooLongForAQuickResin() {
        CastingTimes slow = CastingTimes.of(new PadSetup.Casting(3100, 3, 1800, 0.05), 4e-3);
        CastingTimes quick = CastingTimes.of(new PadSetup.Casting(3100, 3, 600, 0.05), 4e-3);
        assertThat(slow.fits()).isTrue();
        assertThat(quick.fits()).isFalse();
        assertThat(slow.total()).isEqualTo(quick.total());
        // a resin ten times as stiff holds its bubbles ten times as long: Stokes
        CastingTimes thick = CastingTimes.of(new PadSetup.Casting(3100, 30, 1800, 0.05), 10e-3);
        assertThat(thick.steps().get(3).time()).isCloseTo(1260, Percentage.withPercentage(1));
    }
}
