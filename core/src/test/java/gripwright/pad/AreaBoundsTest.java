package gripwright.pad;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;

class AreaBoundsTest {
    private static final double NOISE = 3;
    private static final double FORCE = 0.1;
    private static final PadResponse RESPONSE =
            PadModel.filled(PadGeometry.of(Chips.SMALL, 4e-3), 1e6, 1e6 / (3 * (1 - 2 * 0.4999)));

    private static PadDesign pad(int rows, double stagger) {
        return new PadDesign("p", Chips.SMALL, 4e-3, 1e6, 1.7e9, 5, 4e-3, rows, 3.5e-3, stagger, 0.02);
    }

    @Test
    void aSingleRowCannotTellPlaceAcrossFromForce() {
        assertThat(AreaBounds.at(pad(1, 0), RESPONSE, 0.7e-3, 0, FORCE, NOISE, 0)
                        .across())
                .isInfinite();
        assertThat(AreaBounds.at(pad(2, 0), RESPONSE, 0.7e-3, 0.4e-3, FORCE, NOISE, 0)
                        .across())
                .isFinite();
    }

    /** Symmetry: mirrored loads are told equally well; shifted rows do not change what is mirrored about the middle. */
    @Test
    void propertyMirroredLoadsHaveEqualBounds() {
        PadDesign pad = pad(2, 2e-3);
        Random random = new Random(11);
        for (int trial = 0; trial < 50; trial++) {
            double x = 3e-3 * random.nextGaussian();
            double y = 1e-3 * random.nextGaussian();
            AreaBounds a = AreaBounds.at(pad, RESPONSE, x, y, FORCE, NOISE, 0.02);
            AreaBounds b = AreaBounds.at(pad, RESPONSE, -x, -y, FORCE, NOISE, 0.02);
            assertThat(a.along()).as("seed 11, trial " + trial).isCloseTo(b.along(), Percentage.withPercentage(1e-4));
            assertThat(a.force()).as("seed 11, trial " + trial).isCloseTo(b.force(), Percentage.withPercentage(1e-4));
        }
    }

    /**
     * An independent estimate: least squares on 2000 noisy copies of the readings, by Gauss-Newton with differences for the
     * slopes. An efficient estimator comes close to the bound.
     */
    @Test
    void referenceLeastSquaresEstimatesScatterByTheBound() {
        PadDesign pad = pad(2, 2e-3);
        double[] truth = {0.6e-3, 0.5e-3, FORCE};
        AreaBounds bound = AreaBounds.at(pad, RESPONSE, truth[0], truth[1], FORCE, NOISE, 0);
        double[] exact = readings(pad, truth);
        Random random = new Random(3);
        double[] squares = new double[3];
        int runs = 2000;
        for (int run = 0; run < runs; run++) {
            double[] seen = exact.clone();
            for (int i = 0; i < seen.length; i++) {
                seen[i] += NOISE * random.nextGaussian();
            }
            double[] found = fit(pad, seen, truth.clone());
            for (int k = 0; k < 3; k++) {
                squares[k] += (found[k] - truth[k]) * (found[k] - truth[k]) / runs;
            }
        }
        // a standard deviation from 2000 runs is known to 1.6 %: four of those
        assertThat(Math.sqrt(squares[0])).as("along, seed 3").isCloseTo(bound.along(), Percentage.withPercentage(6.4));
        assertThat(Math.sqrt(squares[1]))
                .as("across, seed 3")
                .isCloseTo(bound.across(), Percentage.withPercentage(6.4));
        assertThat(Math.sqrt(squares[2]) / FORCE)
                .as("force, seed 3")
                .isCloseTo(bound.force(), Percentage.withPercentage(6.4));
    }

    private static double[] readings(PadDesign pad, double[] p) {
        double[] out = new double[pad.cells()];
        for (int row = 0; row < 2; row++) {
            for (int i = 0; i < 5; i++) {
                double cx = (i - 2) * 4e-3 + (row == 1 ? 1e-3 : -1e-3);
                double cy = row == 1 ? 1.75e-3 : -1.75e-3;
                out[row * 5 + i] = p[2] * RESPONSE.at(Math.hypot(p[0] - cx, p[1] - cy));
            }
        }
        return out;
    }

    private static double[] fit(PadDesign pad, double[] seen, double[] p) {
        double[] step = {1e-7, 1e-7, 1e-6};
        for (int iteration = 0; iteration < 6; iteration++) {
            double[] now = readings(pad, p);
            double[][] normal = new double[3][4];
            double[][] slopes = new double[3][];
            for (int k = 0; k < 3; k++) {
                double[] moved = p.clone();
                moved[k] += step[k];
                slopes[k] = readings(pad, moved);
                for (int i = 0; i < now.length; i++) {
                    slopes[k][i] = (slopes[k][i] - now[i]) / step[k];
                }
            }
            for (int a = 0; a < 3; a++) {
                for (int i = 0; i < now.length; i++) {
                    for (int b = 0; b < 3; b++) {
                        normal[a][b] += slopes[a][i] * slopes[b][i];
                    }
                    normal[a][3] += slopes[a][i] * (seen[i] - now[i]);
                }
            }
            for (int a = 0; a < 3; a++) {
                for (int r = 0; r < 3; r++) {
                    if (r != a) {
                        double factor = normal[r][a] / normal[a][a];
                        for (int c = a; c < 4; c++) {
                            normal[r][c] -= factor * normal[a][c];
                        }
                    }
                }
            }
            for (int k = 0; k < 3; k++) {
                p[k] += normal[k][3] / normal[k][k];
            }
        }
        return p;
    }
}
