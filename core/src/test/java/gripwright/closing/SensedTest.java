package gripwright.closing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import gripwright.closing.ChipReadings.Chip;
import gripwright.closing.ChipReadings.Value;
import gripwright.math.Streams;
import gripwright.math.Vec3;
import gripwright.model.Phalanx;
import gripwright.pad.PadGeometry;
import gripwright.pad.PadModel;
import gripwright.pad.PadResponse;
import gripwright.stats.BinomialIntervals;
import gripwright.stats.Interval;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Chips in a closing. */
class SensedTest {
    private static final double QUIET = 1e-6;
    private static final gripwright.pad.Chip EXACT = SensedHands.chip(QUIET, 1e9, 1e-6);
    private static final Conditions OFF = Conditions.at(0.006, 0, 0);

    /** Superposition of the pad model's point loads (linear theory), from forces and places of the printed contacts. */
    @Test
    void dieIsPressedByForceTimesTheResponseAtItsDistance() {
        Sensing sensing = SensedHands.sensing(EXACT, SensedHands.TOUCH, "plus", "minus");
        ClosingSimulator s =
                SensedHands.simulator(SensedHands.oneMotor(), SensedHands.can(0.2), Policies.BLIND, sensing);
        ClosingDetail end = s.detail(Conditions.NOMINAL);
        double[] found = new double[sensing.chips()];
        new ChipBank(sensing, SensedHands.oneMotor(), s.system).committed(found);
        PadResponse response = PadModel.filled(PadGeometry.of(EXACT, 4e-3), BenchHands.SOFT.modulus(), 1.5e9);
        int pressed = 0;
        for (int c = 0; c < found.length; c++) {
            Sensing.Strip strip = sensing.strips().get(c / 8);
            String body = strip.place().on() + " " + (strip.place().phalanx() + 1);
            Phalanx bone = SensedHands.oneMotor()
                    .fingers()
                    .get(0)
                    .phalanges()
                    .get(strip.place().phalanx());
            double expected = 0;
            for (ContactForce force : end.contacts()) {
                if (force.kind() == ContactForce.Kind.PAD_ON_OBJECT
                        && force.body().equals(body)) {
                    Vec3 p = end.bodyPoses().get(end.bodies().indexOf(body)).applyInverse(force.point());
                    // on the flat: the place along the bone; round the tip: unrolled
                    double along = p.x() <= bone.length()
                            ? p.x()
                            : bone.length() + bone.padHeight() * Math.atan2(p.x() - bone.length(), p.y());
                    double chip = bone.length() / 2 + (c % 8 - 3.5) * 4e-3;
                    expected += force.normalForce() * response.at(Math.hypot(along - chip, p.z()));
                }
            }
            pressed += expected > 1 ? 1 : 0;
            assertThat(found[c]).isCloseTo(expected, within(1e-6 * Math.abs(expected) + 1e-6));
        }
        assertThat(pressed).isGreaterThan(3);
    }

    @Test
    void readingsStepByTheResolutionAndEndAtTheRange() {
        gripwright.pad.Chip coarse = SensedHands.chip(30, 105e3, 25);
        Sensing sensing = SensedHands.sensing(coarse, SensedHands.TOUCH, "plus", "minus");
        ChipReadings r = SensedHands.simulator(SensedHands.oneMotor(), SensedHands.can(0.2), Policies.BLIND, sensing)
                .sensed(Conditions.NOMINAL)
                .readings();
        int saturated = 0;
        for (Chip chip : r.chips()) {
            for (Value v : chip.values()) {
                assertThat(v.pressure()).isLessThanOrEqualTo(105e3);
                assertThat(v.pressure() / 25).isCloseTo(Math.rint(v.pressure() / 25), within(1e-9));
                // beyond 6 standard deviations of noise there is no doubt
                if (Sensing.AMBIENT + v.rise() > 105e3 + 200) {
                    assertThat(v.saturated()).isTrue();
                    saturated++;
                } else if (Sensing.AMBIENT + v.rise() < 105e3 - 200) {
                    assertThat(v.saturated()).isFalse();
                    assertThat(v.pressure()).isCloseTo(Sensing.AMBIENT + v.rise(), within(200.0));
                }
            }
        }
        assertThat(saturated).isGreaterThan(10);
    }

    @Test
    void readingsCarryTheTimesOfTheScan() {
        Sensing sensing = SensedHands.sensing(EXACT, SensedHands.TOUCH, "plus", "minus");
        ChipReadings r = SensedHands.simulator(SensedHands.oneMotor(), SensedHands.can(0.2), Policies.BLIND, sensing)
                .sensed(Conditions.NOMINAL)
                .readings();
        for (int c = 0; c < r.chips().size(); c++) {
            List<Value> values = r.chips().get(c).values();
            int first = sensing.clock().sampled(c, 0) < 0 ? 1 : 0;
            for (int k = 0; k < values.size(); k++) {
                assertThat(values.get(k).sampled()).isEqualTo(sensing.clock().sampled(c, k + first));
                assertThat(values.get(k).arrived())
                        .isCloseTo(
                                sensing.clock().arrives()[c]
                                        + (k + first) * sensing.clock().period(),
                                within(1e-12));
            }
            double end = r.end() + sensing.clock().period();
            assertThat(values.get(values.size() - 1).sampled())
                    .isBetween(end - sensing.clock().period(), end);
        }
    }

    /** By definition of the mapping; in this hand no finger is in the way of another. */
    @Test
    void emptyHandClosesInTheClosingTime() {
        Sensing sensing = SensedHands.sensing(EXACT, SensedHands.TOUCH, "thumb");
        ChipReadings r = new ClosingSimulator(
                        BenchHands.threeFinger(),
                        BenchHands.above(0.13),
                        BenchHands.object("can", new gripwright.shape.Cylinder(0.02, 0.07, 0.002), 0.2),
                        gripwright.model.Spread.exactly(0.3),
                        Numerics.DEFAULT,
                        Criteria.DEFAULT,
                        Policies.BLIND,
                        sensing)
                .sensed(Conditions.at(0, 0.3, 0))
                .readings();
        assertThat(r.end()).isCloseTo(1, within(0.03));
    }

    /** Rate of Detection.threshold, against counted closings in which nothing touches. */
    @Test
    void propertySilentClosingsRaiseTheWantedRateOfAlarms() {
        double wanted = 0.05;
        gripwright.pad.TouchStop touch = new gripwright.pad.TouchStop(0.05, 1, 0, wanted, 0.05, 0.01, 5, 1000);
        Sensing sensing = SensedHands.sensing(SensedHands.chip(3, 115e3, 0.3), touch, "plus");
        ClosingSimulator s =
                SensedHands.simulator(SensedHands.oneMotor(), SensedHands.can(0.2), Policies.BLIND, sensing);
        ChipWatch chips = new ChipWatch(sensing, new ChipBank(sensing, SensedHands.oneMotor(), s.system), false);
        Streams streams = new Streams(5, "silence");
        int closings = 600;
        int alarms = 0;
        for (int i = 0; i < closings; i++) {
            chips.begin(streams.draws("", i));
            chips.accept(1);
            boolean any = false;
            for (int c = 0; c < sensing.chips(); c++) {
                any |= chips.alarm(c) < Double.POSITIVE_INFINITY;
            }
            alarms += any ? 1 : 0;
        }
        Interval counted = BinomialIntervals.wilson(alarms, closings, 0.999);
        assertThat(counted.contains(wanted))
                .as("alarms " + alarms + " of " + closings)
                .isTrue();
    }

    @ParameterizedTest
    @CsvSource({"touch", "centre"})
    void withoutAlarmsEveryPolicyIsBlindToTheLastBit(String word) {
        Sensing deaf = SensedHands.sensing(SensedHands.chip(3, 115e3, 0.3), SensedHands.TOUCH, "plus", "minus")
                .withDeviations(1e12);
        for (double x : new double[] {0, 0.007}) {
            Conditions at = Conditions.at(x, 0.002, 0.1);
            ClosingSummary blind = SensedHands.simulator(
                            SensedHands.twoMotors(), SensedHands.can(0.1), Policies.BLIND, deaf)
                    .run(at);
            ClosingSummary with = SensedHands.simulator(
                            SensedHands.twoMotors(), SensedHands.can(0.1), Policies.of(word), deaf)
                    .run(at);
            assertThat(with).isEqualTo(blind);
        }
    }

    @Test
    void readingChipsChangesNothing() {
        Sensing sensing = SensedHands.sensing(SensedHands.chip(3, 115e3, 0.3), SensedHands.TOUCH, "plus", "minus");
        ClosingSimulator s =
                SensedHands.simulator(SensedHands.oneMotor(), SensedHands.can(0.1), Policies.BLIND, sensing);
        ClosingSummary plain = s.run(OFF);
        assertThat(s.sensed(OFF).closing().summary()).isEqualTo(plain);
        assertThat(s.run(OFF)).isEqualTo(plain);
    }

    /** The alarm's reading is over the threshold, the one before is not, and the motor stops when it arrives. */
    @Test
    void quietChipsStopEachMotorAtTheThreshold() {
        Sensing sensing =
                SensedHands.sensing(EXACT, SensedHands.AT_ONCE, "plus", "minus").withDeviations(5e8); // 500 Pa
        ChipReadings r = SensedHands.simulator(
                        SensedHands.twoMotors(), SensedHands.can(0.5), Policies.of("touch"), sensing)
                .sensed(OFF)
                .readings();
        assertThat(r.stops()).extracting(ChipReadings.Stop::what).containsExactlyInAnyOrder("p", "m");
        for (ChipReadings.Stop stop : r.stops()) {
            Chip chip = r.chips().get(stop.chip());
            assertThat(chip.strip()).startsWith(stop.what().equals("p") ? "plus" : "minus");
            assertThat(stop.stopped()).isCloseTo(stop.arrived(), within(1e-7));
            int at = 0;
            while (Math.abs(chip.values().get(at).arrived() - stop.arrived()) > 1e-9) {
                at++;
            }
            assertThat(chip.values().get(at).rise()).isGreaterThan(500);
            assertThat(chip.values().get(at - 1).rise()).isLessThan(500.1);
        }
    }

    @Test
    void reactionDelaysTheStop() {
        Sensing sensing =
                SensedHands.sensing(EXACT, SensedHands.TOUCH, "plus", "minus").withDeviations(5e8);
        ChipReadings r = SensedHands.simulator(
                        SensedHands.twoMotors(), SensedHands.can(0.5), Policies.of("touch"), sensing)
                .sensed(OFF)
                .readings();
        // 10 ms of delay, and braking from 50 mm/s at 5 m/s2 as half of 10 ms
        assertThat(r.stops())
                .isNotEmpty()
                .allSatisfy(s -> assertThat(s.stopped() - s.arrived()).isCloseTo(0.015, within(1e-7)));
    }

    /**
     * On an object too heavy to be pushed by a touch, the rule leaves the hand over it: it moves by the offset. What is
     * left is the way of arm and pads between touch and halt: below 0.7 ms of the scan at 50 mm/s for the arm.
     */
    @ParameterizedTest
    @CsvSource({"0.006", "-0.009"})
    void centringMovesTheHandByTheObjectsOffset(double offset) {
        Sensing sensing = SensedHands.sensing(EXACT, SensedHands.AT_ONCE, SensedHands.FAST, "plus", "minus")
                .withDeviations(5e7); // 50 Pa
        assertThat(sensing.clock().period()).isLessThan(0.7e-3);
        Conditions at = Conditions.at(offset, 0, 0);
        SensedDetail centred = SensedHands.simulator(
                        SensedHands.oneMotor(), SensedHands.can(1.5), Policies.of("centre"), sensing)
                .sensed(at);
        ClosingSummary blind = SensedHands.simulator(
                        SensedHands.oneMotor(), SensedHands.can(1.5), Policies.BLIND, sensing)
                .run(at);
        assertThat(centred.readings().moved()).isCloseTo(offset, within(1e-4));
        assertThat(Math.abs(centred.closing().summary().travelX()))
                .as("blind " + blind.travelX())
                .isLessThan(0.05 * Math.abs(blind.travelX()));
    }

    @Test
    void whatAHandCannotDoIsRefusedWithTheReason() {
        Sensing both = SensedHands.sensing(EXACT, SensedHands.TOUCH, "plus", "minus");
        Sensing one = SensedHands.sensing(EXACT, SensedHands.TOUCH, "plus");
        assertThatThrownBy(() ->
                        SensedHands.simulator(SensedHands.oneMotor(), SensedHands.can(0.2), Policies.of("touch"), both))
                .hasMessageContaining("one motor for all its fingers");
        assertThatThrownBy(() ->
                        SensedHands.simulator(SensedHands.twoMotors(), SensedHands.can(0.2), Policies.of("touch"), one))
                .hasMessageContaining("no finger of motor m has a sensing pad");
        assertThatThrownBy(() ->
                        SensedHands.simulator(SensedHands.oneMotor(), SensedHands.can(0.2), Policies.of("centre"), one))
                .hasMessageContaining("one side has none");
        assertThatThrownBy(() -> Policies.of("telepathy")).hasMessageContaining("blind, touch, centre");
    }
}
