package gripwright.pad;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TouchTest {
    /** Inverse of the normal distribution (SciPy): Phi^-1((1 - 0.001)^(1/500)). */
    @Test
    void referenceThresholdOverManySamples() {
        assertThat(Detection.threshold(1e-3, 5, 100)).isCloseTo(4.611278607345268, within(1e-9));
        assertThat(Detection.quantile(0.05)).isCloseTo(1.6448536270, within(1e-9));
    }

    /** L. A. Currie, Pure Appl. Chem. 67 (1995) 1699 (form from memory): 3.2897 sigma for a long zero. */
    @Test
    void referenceDetectionLimit() {
        double gram = 9.80665e-3;
        assertThat(Detection.limit(150, 82.5e3, 0.05, 0.05, 1_000_000) / gram).isCloseTo(0.610, within(0.001));
        assertThat(Detection.limit(150, 82.5e3, 0.05, 0.05, 1) / gram).isCloseTo(0.863, within(0.001));
        assertThat(Detection.limit(1, 1, 0.05, 0.05, Integer.MAX_VALUE)).isCloseTo(3.2897072539, within(1e-6));
    }

    /** common practice, no source: a degassed pad over a coarse chip feels about one gram-force. */
    @ParameterizedTest
    @CsvSource({"4", "5", "6"})
    void referenceDegassedPadFeelsAboutAGram(double h) {
        double peak = PadModel.filled(PadGeometry.of(Chips.WIDE, h * 1e-3), 0.7e6, 1500e6)
                .peak();
        assertThat(Detection.limit(150, peak, 0.05, 0.05, 100) / 9.80665e-3).isBetween(0.3, 3.0);
    }

    /** Closed form and a time stepping of 2 microseconds (second implementation); g is 9.81 there. */
    @ParameterizedTest
    @CsvSource({
        "0.02, 0.4, 500, 0.05, 0.05, 0.01, 1.050976, 0.234320",
        "0.05, 0.4, 1000, 0.05, 0.05, 0.02, 2.0652, NaN",
        "0.1, 0.4, 1000, 0.05, 0.1, 0.02, 1.4422, NaN"
    })
    void referencePushOfALightObject(
            double m, double mu, double k, double v, double notice, double delay, double mm, double peak) {
        Push.Result found = new Push(m, mu * m * 9.81, k, v, notice, delay).run();
        assertThat(found.moved() * 1e3).isCloseTo(mm, Percentage.withPercentage(0.005));
        if (!Double.isNaN(peak)) {
            assertThat(found.peak()).isCloseTo(peak, within(1e-6));
        }
    }

    /** Where contact is lost before the halt the closed form fails (7.42 mm); time stepping gives 7.82 mm. */
    @Test
    void referencePushWithFlight() {
        Push.Result found = new Push(0.01, 0.3 * 0.01 * 9.81, 1000, 0.1, 0.2, 0.01).run();
        assertThat(found.moved() * 1e3).isCloseTo(7.82, within(0.02));
    }

    @Test
    void propertyEventsAgreeWithTimeStepping() {
        SplittableRandom random = new SplittableRandom(7);
        for (int trial = 0; trial < 40; trial++) {
            double m = 0.005 * Math.exp(4 * random.nextDouble());
            double friction = (0.15 + 0.6 * random.nextDouble()) * m * 9.81;
            double k = 200 * Math.exp(3 * random.nextDouble());
            double v = 0.01 + 0.2 * random.nextDouble();
            double most = friction + v * Math.sqrt(k * m);
            double notice = most * (0.05 + 0.9 * random.nextDouble());
            double delay = 0.03 * random.nextDouble();
            Push.Result found = new Push(m, friction, k, v, notice, delay).run();
            double[] stepped = stepped(m, friction, k, v, notice, delay);
            String what = "seed 7, trial " + trial;
            assertThat(found.moved()).as(what).isCloseTo(stepped[0], within(2e-5 + 5e-3 * stepped[0]));
            assertThat(found.peak()).as(what).isCloseTo(stepped[1], within(1e-3 + 5e-3 * stepped[1]));
        }
    }

    private static double[] stepped(double m, double friction, double k, double v, double notice, double delay) {
        double dt = 2e-6;
        double x = 0;
        double speed = 0;
        double finger = 0;
        double peak = 0;
        double felt = Double.POSITIVE_INFINITY;
        for (double t = 0; t < 1.5; t += dt) {
            double force = Math.max(0, k * (finger - x));
            peak = Math.max(peak, force);
            felt = force >= notice ? Math.min(felt, t) : felt;
            boolean halted = t >= felt + delay;
            if (speed <= 0 && force <= friction) {
                speed = 0;
                if (halted) {
                    break;
                }
            } else {
                speed = Math.max(0, speed + dt * (force - friction) / m);
            }
            x += speed * dt;
            finger += halted ? 0 : v * dt;
        }
        return new double[] {x, peak};
    }

    @Test
    void heavyObjectIsNotMovedAndVeryLightOneIsNeverNoticed() {
        Push.Result heavy = new Push(1, 4, 500, 0.05, 0.05, 0.01).run();
        assertThat(heavy.moved()).isZero();
        assertThat(heavy.peak()).isCloseTo(0.05 + 500 * 0.05 * 0.01, within(1e-9));
        Push.Result light = new Push(0.001, 0.004, 500, 0.01, 0.5, 0.01).run();
        assertThat(light.noticed()).isFalse();
        assertThat(light.moved()).isInfinite();
    }

    /** The overshoot worked by hand: F + k v (1/f + T) + k v^2 / (2 a). */
    @Test
    void referencePeakForceAfterTheDelay() {
        TouchStop stop = new TouchStop(0.05, 1, 0.01, 1e-3, 0.05, 0.01, 5, 1e12);
        TouchStop.Forces forces = stop.forces(15e3, 3, 5, 1 / 200.0, 1000);
        assertThat(forces.peak() - forces.detection()).isCloseTo(1000 * 0.05 * 0.015 + 0.25, within(1e-6));
        assertThat(forces.detection()).isCloseTo(0.0013, within(5e-5));
    }
}
