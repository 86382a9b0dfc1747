package gripwright.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gripwright.pad.Detection;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Allan deviations, straight lines, limits, play and creep against numbers and forms from outside. */
class FiguresTest {
    /** NIST SP 1065 (Riley 2008), tables 30 and 31; the 1000 numbers by its own recurrence. */
    @Test
    void referenceAllanDeviations() {
        double[] nine = {892, 809, 823, 798, 671, 644, 883, 903, 677};
        double[] thousand = new double[1000];
        long n = 1234567890L;
        for (int i = 0; i < thousand.length; i++) {
            thousand[i] = n / 2147483647.0;
            n = 16807 * n % 2147483647L;
        }
        int compared = 0;
        for (String[] row : Tables.rows("allan_expected")) {
            if (row[1].equals("overlapping_allan_dev")) {
                double found = Allan.deviation(row[0].equals("9pt") ? nine : thousand, Integer.parseInt(row[2]));
                double expected = Double.parseDouble(row[3]);
                assertThat(found).as("%s factor %s", row[0], row[2]).isCloseTo(expected, within(expected * 5e-7));
                compared++;
            }
        }
        assertThat(compared).isEqualTo(5);
    }

    /** Own data of three cycles; the least largest deviation 0.0791666667 and slope 0.9943333333 by exact arithmetic. */
    @Test
    void referenceBestStraightLine() {
        List<String[]> rows = Tables.rows("linearity_example");
        double[] x = {0, 2.5, 5, 7.5, 10};
        double[] mean = new double[5];
        double[][] branch = new double[2][5];
        for (String[] r : rows) {
            int k = (int) Math.round(Double.parseDouble(r[2]) / 2.5);
            mean[k] += Double.parseDouble(r[3]) / 6;
            branch[r[1].equals("up") ? 0 : 1][k] += Double.parseDouble(r[3]) / 3;
        }
        MinimaxLine line = MinimaxLine.of(x, mean);
        assertThat(line.deviation()).isCloseTo(0.0791666667, within(1e-9));
        assertThat(line.slope()).isCloseTo(0.9943333333, within(1e-9));
        assertThat(branch[1][2] - branch[0][2]).isCloseTo(0.16, within(1e-12));
    }

    /** Currie (1995, Pure Appl. Chem. 67, 1699; formulas from memory): 1.6448536270 and 3.2897072539 deviations. */
    @Test
    void referenceDetectionLimits() {
        assertThat(Detection.quantile(0.05)).isCloseTo(1.6448536270, within(1e-9));
        assertThat(Detection.limit(1, 1, 0.05, 0.05, Integer.MAX_VALUE)).isCloseTo(3.2897072539, within(1e-8));
    }

    /** A slope and its scatter for a calibration line; own data, values by exact arithmetic. */
    @Test
    void referenceCalibrationLine() {
        double[] x = Tables.column("lod_example", 0);
        double[] one = new double[x.length];
        Arrays.fill(one, 1);
        Regression fit = Regression.fit(new double[][] {one, x}, Tables.column("lod_example", 1));
        assertThat(fit.coefficients()[1]).isCloseTo(0.9940614334, within(1e-9));
        assertThat(fit.coefficients()[0]).isCloseTo(0.0460068259, within(1e-9));
        assertThat(fit.deviation()).isCloseTo(0.0346548068, within(1e-9));
    }

    @Test
    void playFollowsOnlyBeyondItsBand() {
        assertThat(Play.of(new double[] {0, 1, 3, 2.5, 1, 4}, 1)).containsExactly(0, 0, 2, 2, 2, 3);
    }

    /** Closed form: a step held from rest creeps as 1 - exp(-t / tau). */
    @Test
    void creepOfAStepIsExponential() {
        double[] time = new double[2001];
        double[] force = new double[2001];
        Arrays.setAll(time, i -> 0.01 * i);
        Arrays.fill(force, 2);
        double[] c = Creep.of(time, force, 5);
        assertThat(c[1000]).isCloseTo(2 * -Math.expm1(-2), within(1e-12));
    }

    /** What the invented log with seed 1088 had: a spike on a steep flank, just above the end of the range. */
    @Test
    void aStraySpikeAboveTheEndDoesNotHideSaturation() {
        double[] force = new double[400];
        double[] readings = new double[400];
        for (int i = 0; i < force.length; i++) {
            force[i] = 5 * Math.sin(Math.PI * i / force.length);
            readings[i] = Math.min(95 * force[i] + Math.sin(13.7 * i), 350);
        }
        readings[20] = 355.5;
        Clip clip = Clip.find(readings, force, 5);
        assertThat(clip.found()).isTrue();
        assertThat(clip.reading()).isEqualTo(350);
        assertThat(clip.force()).isBetween(350 / 95.0 - 0.01, 350 / 95.0 + 0.2);
    }

    @Test
    void norDoOneInAHundredOfThoseAtTheEnd() {
        double[] force = new double[4000];
        double[] readings = new double[4000];
        for (int i = 0; i < force.length; i++) {
            force[i] = 5 * Math.sin(Math.PI * i / force.length);
            readings[i] = Math.min(95 * force[i] + Math.sin(13.7 * i), 350);
        }
        for (int i = 0; i < 5; i++) {
            readings[200 + i] = 355 + i;
        }
        Clip clip = Clip.find(readings, force, 5);
        assertThat(clip.found()).isTrue();
        assertThat(clip.reading()).isEqualTo(350);
    }

    /** A taxel with trapped air: whole pascals, a rise of little more than its noise; its highest readings are few. */
    @Test
    void propertyTheTailOfCoarseNoiseIsNoSaturation() {
        for (int seed = 1; seed <= 50; seed++) {
            java.util.SplittableRandom random = new java.util.SplittableRandom(seed);
            double[] force = new double[20_000];
            double[] readings = new double[force.length];
            for (int i = 0; i < force.length; i++) {
                force[i] = 2.5 - 2.5 * Math.cos(i * 0.01);
                readings[i] = Math.rint(1.6 * force[i] + 1.6 * random.nextGaussian());
            }
            assertThat(Clip.find(readings, force, 5).found())
                    .as("seed %d", seed)
                    .isFalse();
        }
    }

    @Test
    void aPlateauOfOneForceIsNoSaturation() {
        double[] force = new double[400];
        double[] readings = new double[400];
        for (int i = 0; i < force.length; i++) {
            force[i] = Math.min(4, 0.02 * i);
            readings[i] = Math.rint(95 * force[i]);
        }
        assertThat(Clip.find(readings, force, 5).found()).isFalse();
    }

    @Test
    void spikesGoAndSharpTapsStay() {
        double[] y = new double[200];
        Arrays.setAll(y, i -> 100 * Math.exp(-0.5 * Math.pow((i - 100) / 3.0, 2)) + 0.3 * Math.sin(13.7 * i));
        double top = y[100];
        y[30] += 50;
        y[150] -= 40;
        assertThat(Despike.clean(y, 0.01)).isEqualTo(2);
        assertThat(y[30]).isNaN();
        assertThat(y[150]).isNaN();
        assertThat(y[100]).isEqualTo(top);
    }

    @Test
    void weightsFallAsTheirAuthorsHaveThem() {
        assertThat(RobustWeights.huber(1.3)).isEqualTo(1);
        assertThat(RobustWeights.huber(-2.69)).isCloseTo(0.5, within(1e-12));
        assertThat(RobustWeights.tukey(4.7)).isZero();
        assertThat(RobustWeights.tukey(4.685 / Math.sqrt(2))).isCloseTo(0.25, within(1e-12));
    }

    /** Without a walk whitening changes nothing; with one, noise of that law comes out of one size. */
    @Test
    void propertyWhiteningMakesWanderingNoiseWhite() {
        java.util.SplittableRandom random = new java.util.SplittableRandom(7);
        int n = 20000;
        double[] y = new double[n];
        double walk = 0;
        for (int i = 0; i < n; i++) {
            y[i] = walk + random.nextGaussian();
            walk += 0.3 * random.nextGaussian();
        }
        double[] one = new double[n];
        Arrays.fill(one, 1);
        double[] same = LocalLevel.whiten(new double[][] {y}, one, 1, 0).series()[0];
        assertThat(same).isEqualTo(y);
        double[] white = LocalLevel.whiten(new double[][] {y}, one, 1, 0.09).series()[0];
        double square = 0;
        double neighbour = 0;
        for (int i = 1; i < n; i++) {
            square += white[i] * white[i] / (n - 1);
            neighbour += white[i] * white[i - 1] / (n - 1);
        }
        assertThat(square).isCloseTo(1, within(0.04));
        assertThat(neighbour / square).isCloseTo(0, within(0.03));
        double found = LocalLevel.ratio(new double[][] {one}, y, one, 1);
        assertThat(found).isBetween(0.06, 0.13);
    }
}
