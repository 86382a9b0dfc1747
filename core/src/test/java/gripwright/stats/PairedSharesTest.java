package gripwright.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;

class PairedSharesTest {
    @Test
    void propertyCoversTheTrueDifferenceAboutAsOftenAsItSays() {
        // Simulation: what a 95 % interval means. 4000 repeats: standard error 0.35 points.
        Random random = new Random(7);
        for (double[] p : new double[][] {{0.1, 0.05}, {0.3, 0.1}, {0.02, 0.02}}) {
            int covered = 0;
            for (int repeat = 0; repeat < 4000; repeat++) {
                int gained = 0;
                int lost = 0;
                for (int i = 0; i < 60; i++) {
                    double u = random.nextDouble();
                    gained += u < p[0] ? 1 : 0;
                    lost += u >= p[0] && u < p[0] + p[1] ? 1 : 0;
                }
                covered += PairedShares.difference(gained, lost, 60).contains(p[0] - p[1]) ? 1 : 0;
            }
            assertThat(covered / 4000.0).isBetween(0.93, 1.0);
        }
    }

    @Test
    void manyPairsGiveTheIntervalOfLargeSamples() {
        // Closed form, common textbook: d +- 1.959964 sqrt((g + l - (g - l)^2 / n)) / n for large n.
        Interval found = PairedShares.difference(3000, 1000, 100_000);
        double half = 1.959964 * Math.sqrt(4000 - 2000.0 * 2000 / 100_000) / 100_000;
        assertThat(found.low()).isCloseTo(0.02 - half, within(1e-6));
        assertThat(found.high()).isCloseTo(0.02 + half, within(1e-6));
    }

    @Test
    void swappingGainsAndLossesMirrorsTheInterval() {
        Interval one = PairedShares.difference(7, 2, 20);
        Interval other = PairedShares.difference(2, 7, 20);
        assertThat(one.low()).isEqualTo(-other.high());
        assertThat(PairedShares.difference(0, 0, 0)).isEqualTo(new Interval(-1, 1));
        assertThatThrownBy(() -> PairedShares.difference(3, 3, 5)).hasMessageContaining("3 gained and 3 lost");
    }
}
