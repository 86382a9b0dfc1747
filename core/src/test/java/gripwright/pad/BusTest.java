package gripwright.pad;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class BusTest {
    private static Bus bus(double clock) {
        return new Bus(false, clock, 20e-6, 8, true, true, 0, 0, 3.3);
    }

    private static Stream<List<String>> rows(String file) throws IOException {
        try (BufferedReader in = new BufferedReader(new InputStreamReader(
                Objects.requireNonNull(BusTest.class.getResourceAsStream(file), file), StandardCharsets.UTF_8))) {
            List<String> lines =
                    in.lines().filter(l -> !l.startsWith("#")).skip(1).toList();
            return lines.stream().map(l -> List.of(l.split(",", -1)));
        }
    }

    static Stream<List<String>> pullUps() throws IOException {
        return rows("i2c_pullup.csv");
    }

    /** UM10204 section 7.1; the file names its source. */
    @ParameterizedTest
    @MethodSource("pullUps")
    void referencePullUpLimits(List<String> row) {
        Bus.PullUp limits = Bus.pullUp(
                1e3 * Double.parseDouble(row.get(1)),
                1e-12 * Double.parseDouble(row.get(3)),
                Double.parseDouble(row.get(4)));
        assertThat(limits.greatest()).isCloseTo(Double.parseDouble(row.get(6)), within(1e-5));
        assertThat(limits.least()).isCloseTo(Double.parseDouble(row.get(7)), within(1e-5));
        assertThat(limits.feasible()).isEqualTo(row.get(8).equals("yes"));
    }

    static Stream<List<String>> timings() throws IOException {
        return rows("i2c_timing.csv");
    }

    /** Bits over clock; the file says how bits are counted. */
    @ParameterizedTest
    @MethodSource("timings")
    void referenceTransferTimes(List<String> row) {
        Bus plain = new Bus(false, 400e3, 0, 1, false, false, 0, 0, 3.3);
        assertThat(plain.transfer(Integer.parseInt(row.get(2)), 1))
                .isCloseTo(Double.parseDouble(row.get(4)), within(1e-12));
    }

    /** Second implementation (own script): period in ms of the four schemes. */
    @ParameterizedTest
    @CsvSource({
        "5, 400e3, 9.8375, 3.1375, 3.1375, 1.9675",
        "8, 100e3, 22.6, 11.6, 9.5, 9.8",
        "32, 400e3, 63.0, 14.0, 10.6, 11.8"
    })
    void referenceScanPeriods(int n, double clock, double seq, double each, double cast, double ring) {
        Bus wide = new Bus(false, clock, 20e-6, 32, true, true, 0, 0, 3.3);
        List<Bus.Plan> plans = wide.plans(Chips.WIDE, n, 1);
        double digits = n == 5 ? 1e-9 : 0.051;
        double[] wanted = {seq, each, cast, ring};
        for (int i = 0; i < 4; i++) {
            assertThat(plans.get(i).period() * 1e3).isCloseTo(wanted[i], within(digits));
        }
        assertThat(plans.get(3).age()).isEqualTo(plans.get(3).period() + Chips.WIDE.conversion());
    }

    @Test
    void chipsOfOneAddressOnOneWireAreRefusedWithAWayOut() {
        Bus plain = new Bus(false, 400e3, 20e-6, 1, false, false, 0, 0, 3.3);
        Bus.Plan plan = plain.plans(Chips.WIDE, 8, 1).get(0);
        assertThat(plan.possible()).isFalse();
        assertThat(plan.obstacle()).contains("8 branches", "1 eight-channel switch", "separate buses");
        assertThat(plain.plans(Chips.WIDE, 2, 2).get(0).possible()).isTrue();
        assertThat(bus(400e3).plans(Chips.WIDE, 8, 1).get(0).possible()).isTrue();
    }

    @Test
    void broadcastNeedsASwitchThatOpensAll() {
        Bus closed = new Bus(false, 400e3, 20e-6, 8, true, false, 0, 0, 3.3);
        assertThat(closed.plans(Chips.WIDE, 8, 1).get(2).obstacle()).contains("enable bit");
    }

    /** Worked by hand: 8 chips, ring on one bus without driver overhead; every tenth scan one of temperatures follows. */
    @Test
    void referenceTemperatureScansCountInTheMean() {
        Chip sleepy = Chips.sleepy(Chips.SMALL, 1e-3, 10, 4e-3);
        Bus plain = new Bus(false, 400e3, 0, 8, false, false, 0, 0, 3.3);
        Bus.Plan ring = plain.plans(sleepy, 8, 1).get(3);
        double slot = (20 + 58) / 400e3;
        double ordinary = Math.max(8 * slot, 1e-3 + 0.6e-3 + slot);
        double extra = Math.max(8 * slot, 1e-3 + 4e-3 + slot);
        assertThat(ring.period()).isCloseTo(ordinary, within(1e-12));
        assertThat(ring.withTemperature()).isCloseTo(ordinary + extra, within(1e-12));
        assertThat(ring.mean()).isCloseTo(ordinary + extra / 10, within(1e-12));
    }
}
