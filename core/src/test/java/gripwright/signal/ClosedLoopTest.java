package gripwright.signal;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Logs made by other code, of which everything is known, come back within their stated intervals. */
class ClosedLoopTest {
    private static final InventedLog.Plan SHORT =
            new InventedLog.Plan(50, 0.0372, 60e-6, 5, 0.002, 0.005, 0.002, 1, 6.5, 120, true, true, true, 0.08, 0.3);

    private static Calibration calibrate(InventedLog.Plan plan, List<InventedLog.Truth> taxels) {
        return Calibrator.of(new InventedLog(plan, taxels, 1).log, ClosedLoop.RATES);
    }

    /** Of 100 logs at least 89, as a 95 % interval gives with a probability over 0.99; and at most 3 times too wide. */
    @Test
    @Tag("slow")
    void truthLiesInTheStatedIntervals() {
        int logs = Integer.getInteger("gripwright.logs", 100);
        ClosedLoop loop = new ClosedLoop(InventedLog.Plan.usual(), 1, logs);
        System.out.print(loop.text());
        assertThat(loop.namedAir).isEqualTo(logs);
        assertThat(loop.namedDead).isEqualTo(logs);
        assertThat(loop.namedClip).isEqualTo(logs);
        for (Map.Entry<String, ClosedLoop.Count> e : loop.counts.entrySet()) {
            ClosedLoop.Count c = e.getValue();
            if (c.told() > 0.9 * logs) {
                assertThat(c.inside()).as("%s inside", e.getKey()).isGreaterThanOrEqualTo((int) (0.89 * c.told()));
                assertThat(Double.isNaN(c.ratio()) ? 1 : c.ratio())
                        .as("%s width", e.getKey())
                        .isLessThanOrEqualTo(3);
            }
        }
    }

    @Test
    void whatTheLogLacksIsRefusedByName() {
        List<InventedLog.Truth> one = List.of(InventedLog.Truth.sound());
        Calibration noTaps = calibrate(SHORT.without("taps"), one);
        assertThat(noTaps.lag().refusal().orElse("")).contains("no sharp taps").contains("press sharply");
        assertThat(noTaps.skew().refusal()).isPresent();
        assertThat(refusal(noTaps, FigureKind.HYSTERESIS)).contains("without taps");
        assertThat(refusal(calibrate(SHORT.without("warm-up"), one), FigureKind.TEMPERATURE))
                .contains("warms by at least 5 K");
        assertThat(refusal(calibrate(SHORT.without("jump"), one), FigureKind.AMBIENT))
                .contains("at least 50 Pa");
        assertThat(refusal(calibrate(SHORT.without("hold"), one), FigureKind.CREEP))
                .contains("hold full force");
        assertThat(calibrate(SHORT.without("visits"), one).crossTalkRefusal().orElse(""))
                .contains("pressed alone");
    }

    private static String refusal(Calibration c, FigureKind kind) {
        Figure figure = c.taxels().get(0).figures().get(kind);
        return figure == null ? "" : figure.refusal().orElse("");
    }

    @Test
    void airDeadAndSwappedTaxelsAreNamed() {
        InventedLog.Truth s = InventedLog.Truth.sound();
        InventedLog made = new InventedLog(SHORT, List.of(s, s, s.air(), s.stuck(), s), 3);
        Calibration c = Calibrator.of(made.log, ClosedLoop.RATES);
        assertThat(c.taxels().get(2).words()).contains("air trapped");
        assertThat(c.taxels().get(2).recast()).isTrue();
        assertThat(c.taxels().get(3).state()).isEqualTo(Taxel.State.DEAD);
        assertThat(c.taxels().get(3).figures()).isEmpty();
        assertThat(c.taxels().get(3).words()).isEqualTo("reads 6200 Pa all the time: chip, solder or bus");
        assertThat(c.taxels().get(0).state()).isEqualTo(Taxel.State.FITTED);

        List<SensorLog.Channel> order = made.log.channels();
        List<SensorLog.Channel> exchanged = List.of(
                with(order.get(0), order.get(1)),
                with(order.get(1), order.get(0)),
                order.get(2),
                order.get(3),
                order.get(4));
        SensorLog log = made.log;
        Calibration swapped = Calibrator.of(
                new SensorLog(log.unit(), log.time(), log.force(), log.ambient(), log.pressed(), exchanged),
                ClosedLoop.RATES);
        assertThat(swapped.taxels().get(0).state()).isEqualTo(Taxel.State.SWAPPED);
        assertThat(swapped.taxels().get(1).words()).contains("answers when taxel 1 is pressed");
        assertThat(swapped.taxels().get(4).state()).isEqualTo(Taxel.State.FITTED);
    }

    private static SensorLog.Channel with(SensorLog.Channel place, SensorLog.Channel readings) {
        return new SensorLog.Channel(
                place.column(), place.pad(), place.number(), readings.readings(), place.temperature());
    }

    @Test
    void decodedForcesReturnWhatPressed() {
        InventedLog.Truth s = InventedLog.Truth.sound();
        InventedLog made = new InventedLog(SHORT, List.of(s, s.gain(60, 1.0), s), 4);
        Calibration c = Calibrator.of(made.log, ClosedLoop.RATES);
        Decoder decoder = new Decoder(
                Decoding.of(c),
                List.of(new Decoder.PadPlace("strip", 0, new double[] {0, 0.006, 0.012}, 0.006)),
                0.9,
                100);
        List<Decoder.Event> events = new java.util.ArrayList<>();
        int inside = 0;
        int told = 0;
        double worst = 0;
        for (int i = 0; i < made.log.time().length; i++) {
            double[] row = new double[3];
            double[] temperature = new double[3];
            for (int k = 0; k < 3; k++) {
                row[k] = made.log.channels().get(k).readings()[i];
                temperature[k] = made.log.channels().get(k).temperature()[i];
            }
            double t = made.log.time()[i];
            int fine = (int) Math.round(t * 1000);
            if (decoder.step(t, row, temperature, made.log.ambient()[i], events)
                    && fine > made.visited[0]
                    && fine < made.visited[1]) {
                double truth = made.force[fine];
                double off = Math.abs(decoder.total(0) - truth);
                boolean spike = off > 0.5;
                told += spike ? 0 : 1;
                inside += off < 2 * decoder.totalError(0) + 0.02 ? 1 : 0;
                worst = Math.max(worst, spike ? 0 : off);
                if (truth == 3 && !spike && made.pressed[fine] == 2) {
                    assertThat(decoder.centre(0)).isBetween(0.0057, 0.0063);
                }
            }
        }
        assertThat(told).isGreaterThan(500);
        assertThat((double) inside / told).isGreaterThan(0.9);
        assertThat(events.stream()
                        .filter(e -> e.kind() == Decoder.Event.Kind.TOUCH)
                        .count())
                .isGreaterThan(20);
    }
}
