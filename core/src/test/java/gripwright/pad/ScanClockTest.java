package gripwright.pad;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** When each chip is read. */
class ScanClockTest {
    private static final Bus BUS = new Bus(false, 400e3, 20e-6, 32, true, true, 0, 0, 3.3);

    private static ScanClock clock(Bus.Scheme scheme, int chips) {
        Bus.Plan plan = BUS.plans(Chips.WIDE, chips, 1).stream()
                .filter(p -> p.scheme() == scheme)
                .findFirst()
                .orElseThrow();
        return ScanClock.of(BUS, Chips.WIDE, chips, plan);
    }

    /** Scan times of 5 chips at 400 kHz from an own Python script: 9.8375, 3.1375, 3.1375, 1.9675 ms. */
    @Test
    void referenceLastValueOfARoundArrivesAtItsEnd() {
        assertThat(clock(Bus.Scheme.ONE_BY_ONE, 5).arrives()[4]).isCloseTo(9.8375e-3, within(1e-9));
        assertThat(clock(Bus.Scheme.START_ALL, 5).arrives()[4]).isCloseTo(3.1375e-3, within(1e-9));
        assertThat(clock(Bus.Scheme.BROADCAST, 5).arrives()[4]).isCloseTo(3.1375e-3, within(1e-9));
        assertThat(clock(Bus.Scheme.RING, 5).period()).isCloseTo(1.9675e-3, within(1e-9));
    }

    @Test
    void valuesAreNeitherOlderThanThePlanSaysNorReadBeforeTheyAreThere() {
        for (Bus.Scheme scheme : Bus.Scheme.values()) {
            for (int chips : new int[] {1, 3, 5, 16, 32}) {
                ScanClock clock = clock(scheme, chips);
                double age =
                        BUS.plans(Chips.WIDE, chips, 1).get(scheme.ordinal()).age();
                double half = Chips.WIDE.conversion() / 2;
                for (int c = 0; c < chips; c++) {
                    double read = BUS.read(Chips.WIDE);
                    assertThat(clock.lag(c)).isGreaterThanOrEqualTo(half + read - 1e-12);
                    assertThat(clock.lag(c) + half).isLessThanOrEqualTo(age + 1e-12);
                    assertThat(clock.sampled(c, 7) - clock.sampled(c, 6)).isCloseTo(clock.period(), within(1e-12));
                }
            }
        }
    }
}
