package gripwright.signal;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Play is undone by the way the force has come: errors against logs made by other code, and against the middle of the band. */
class PlayUndoneTest {
    private static final double PLAY = 0.1;

    /** A taxel of 100 Pa/N without creep, bend or noise to speak of. */
    private static TaxelForce taxel() {
        return new TaxelForce(
                new TaxelModel(0, 100, 0, 0, 1, PLAY, 0, 0, Double.NaN, Double.NaN, 0.05, 0, 5, Double.NaN), 100);
    }

    /** Closed form: a triangle of force behind a pin in a slot. */
    private static double worst(TaxelForce taxel, double pinAtStart, boolean learnt) {
        double pin = pinAtStart;
        double worst = 0;
        double covered = 0;
        int count = 0;
        taxel.read(100 * pin, Double.NaN, Double.NaN);
        taxel.zero();
        for (int i = 0; i < 1600; i++) {
            double phase = i % 800 / 400.0;
            double force = 2 * (phase < 1 ? phase : 2 - phase);
            pin = Math.min(Math.max(pin, force - PLAY), force + PLAY);
            taxel.read(100 * pin, Double.NaN, Double.NaN);
            taxel.turn(0.01);
            boolean sure = force > 5 * PLAY && Math.abs(force - 2) > 5 * PLAY && (i > 800) == learnt;
            if (sure) {
                worst = Math.max(worst, Math.abs(taxel.force() - force));
                covered += Math.abs(taxel.force() - force) <= 1.96 * taxel.error() ? 1 : 0;
                count++;
            }
        }
        assertThat(covered / count).isGreaterThan(0.95);
        return worst;
    }

    @Test
    void risingAndFallingForcesComeBackWithoutThePlay() {
        assertThat(worst(taxel(), PLAY, true)).isLessThan(0.1 * PLAY);
        assertThat(worst(taxel(), PLAY, false)).isLessThan(0.1 * PLAY);
    }

    /** A pad that was never pressed has its zero in the middle of the band: an error of half its width, as stated. */
    @Test
    void whereTheZeroLiesInTheBandCountsAsUncertain() {
        assertThat(worst(taxel(), 0, false)).isBetween(0.9 * PLAY, 1.05 * PLAY);
    }

    /** The middle of the band would be off by about the play; the limit leaves room for the seed. */
    @Test
    void propertyErrorsUnderLoadAreSmallerThanThePlay() {
        InventedLog.Plan plan = new InventedLog.Plan(
                50, 0.0372, 60e-6, 5, 0.002, 0.005, 0.002, 1, 6.5, 120, true, true, false, 0.08, 0.3);
        InventedLog made =
                new InventedLog(plan, List.of(InventedLog.Truth.sound().play(PLAY)), 8);
        Calibration c = Calibrator.of(made.log, ClosedLoop.RATES);
        Decoder decoder = new Decoder(
                Decoding.of(c), List.of(new Decoder.PadPlace("strip", 0, new double[] {0}, 0.006)), 0.9, 100);
        SensorLog.Channel channel = made.log.channels().get(0);
        double squares = 0;
        int count = 0;
        int inside = 0;
        for (int i = 0; i < made.log.time().length; i++) {
            double[] row = {channel.readings()[i]};
            double[] warmth = {channel.temperature()[i]};
            double time = made.log.time()[i];
            double truth = made.force[(int) Math.round(1000 * time)];
            if (decoder.step(time, row, warmth, made.log.ambient()[i], new ArrayList<>()) && truth > 0) {
                double off = Math.abs(decoder.total(0) - truth);
                if (off < 0.5) { // else a spike
                    squares += off * off;
                    count++;
                    inside += off < 1.96 * decoder.totalError(0) ? 1 : 0;
                }
            }
        }
        System.out.println("root mean square " + Math.sqrt(squares / count) + " N, inside " + inside + " of " + count);
        assertThat(Math.sqrt(squares / count)).isLessThan(0.06);
        assertThat((double) inside / count).isGreaterThan(0.9);
    }
}
