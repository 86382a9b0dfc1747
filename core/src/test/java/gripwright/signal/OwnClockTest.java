package gripwright.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** A load cell that another instrument logged: its clock against the device's comes back, and so do the figures. */
class OwnClockTest {
    private static final InventedLog.Plan SHORT =
            new InventedLog.Plan(50, 0, 0, 5, 0.002, 0.005, 0.002, 1, 6.5, 120, true, true, true, 0.08, 0.3);
    private static final double SHOWS = 1000.25;
    private static final double FAST = 150e-6;

    /**
     * The same bench with a load cell of 80 readings a second by its own clock, merged into the rows.
     *
     * @param late how much too late the merge has it [s]
     */
    private static SensorLog merged(InventedLog made, double late, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        int m = (int) (made.force.length / 12.5) - 2;
        double[] stamp = new double[m];
        double[] beside = new double[m];
        double[] force = new double[m];
        for (int i = 0; i < m; i++) {
            double t = 0.004 + 0.0125 * i; // by the device's clock
            int k = (int) (t * 1000);
            stamp[i] = SHOWS + (1 + FAST) * t;
            beside[i] = t + late + 0.02 * random.nextDouble();
            force[i] = made.force[k]
                    + (1000 * t - k) * (made.force[k + 1] - made.force[k])
                    + 0.002 * random.nextGaussian();
        }
        SensorLog log = made.log;
        return new SensorLog(
                log.unit(),
                log.time(),
                new double[0],
                log.ambient(),
                log.pressed(),
                log.channels(),
                Optional.of(new OwnClock(stamp, beside, force)));
    }

    @Test
    void propertyOffsetAndRateOfBothClocksComeBack() {
        InventedLog.Truth s = InventedLog.Truth.sound();
        int inside = 0;
        for (int seed = 1; seed <= 3; seed++) {
            InventedLog made = new InventedLog(SHORT, List.of(s, s.gain(60, 1.0)), seed);
            // A merge right but for 60 ms, and two that are seconds wrong.
            SensorLog log = merged(made, seed == 1 ? 0.06 : seed == 2 ? 2.4 : -3.1, seed);
            Calibration c = Calibrator.of(log, ClosedLoop.RATES);
            assertThat(c.ownClock()).isTrue();
            assertThat(c.lag().value()).as("seed %d", seed).isCloseTo(SHOWS, within(2e-3));
            assertThat(c.skew().value()).as("seed %d", seed).isCloseTo(FAST, within(15e-6));
            Figure gain = Objects.requireNonNull(c.taxels().get(0).figures().get(FigureKind.SENSITIVITY));
            assertThat(gain.value()).as("seed %d", seed).isCloseTo(95, within(1.5));
            inside += c.lag().interval().contains(SHOWS) ? 1 : 0;
            inside += c.skew().interval().contains(FAST) ? 1 : 0;
            inside += gain.interval().contains(95) ? 1 : 0;
            assertThat(String.join(" ", c.notes()).contains("s too late, as the presses show"))
                    .isEqualTo(seed == 2);
            assertThat(String.join(" ", c.notes()).contains("s too early, as the presses show"))
                    .isEqualTo(seed == 3);
        }
        assertThat(inside).isGreaterThanOrEqualTo(8);
    }

    @Test
    void withoutTapsTheRowsAreBelieved() {
        InventedLog made = new InventedLog(SHORT.without("taps"), List.of(InventedLog.Truth.sound()), 5);
        Calibration c = Calibrator.of(merged(made, 0.01, 5), ClosedLoop.RATES);
        assertThat(c.lag().refusal().orElse("")).contains("taken as the rows have it");
        assertThat(c.taxels().get(0).state()).isEqualTo(Taxel.State.FITTED);
    }

    @Test
    void aClockInAnotherUnitOrTooFewReadingsAreSaid() {
        double[] rising = new double[200];
        Arrays.setAll(rising, i -> 0.0125 * i);
        double[] milliseconds = Arrays.stream(rising).map(t -> 1000 * t).toArray();
        OwnClock own = new OwnClock(milliseconds, rising, rising);
        assertThatThrownBy(() -> own.line(0))
                .hasMessageContaining("goes 1000 s per second of the device's; expected about 1: give its unit");
        double[] few = {1, 2, 3};
        assertThatThrownBy(() -> new OwnClock(few, few, few)).hasMessageContaining("stamps 3 readings");
    }
}
