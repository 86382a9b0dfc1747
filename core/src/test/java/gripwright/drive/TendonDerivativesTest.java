package gripwright.drive;

import static org.assertj.core.api.Assertions.assertThat;

import gripwright.model.FingerTendon;
import gripwright.model.Floating;
import gripwright.model.Spool;
import gripwright.model.Transmission;
import gripwright.model.Transmission.Branch;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.assertj.core.data.Offset;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Second derivative and skew of the tendons together are the slope of their forces, friction included.
 *
 * <p>Source: the definition of the derivative, by central differences over 1e-8. Units: N m, N. Tolerance: 1e-5 of the
 * greatest entry (rounding); the even part is symmetric to 1e-14 of it. Valid while no tendon falls slack, stalls, or comes to the end of its presliding.
 */
class TendonDerivativesTest {
    private static final double STEP = 1e-8;
    private static final List<Integer> JOINTS = List.of(2, 1, 3);
    private static final int COORDINATES = 6;

    /** Three fingers on one floating differential; or two of them on a common spool. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4})
    void propertyStiffnessIsTheSlopeOfTheForces(long seed) {
        Random random = new Random(seed);
        Branch first = new Branch(0.6, new FingerTendon("f0"));
        Branch second = new Branch(1.1, new FingerTendon("f1"));
        Branch third = new Branch(0.8, new FingerTendon("f2"));
        Transmission pulls = seed % 2 == 0
                ? new Floating(List.of(first, second, third))
                : new Floating(List.of(new Branch(1, new Spool(List.of(first, second))), third));
        double[] open = random.doubles(COORDINATES, 1.0, 1.4).toArray();
        TendonDrive drive = DriveTest.drive(JOINTS, pulls, 1e6, 0.3, Map.of("f1", 2.0), open);
        drive.reset(open);
        drive.wind(0, 5e-3);
        int n = COORDINATES + drive.spools();
        double[] x = new double[n];
        for (int j = 0; j < COORDINATES; j++) {
            x[j] = open[j] + 1e-3 * random.nextGaussian();
        }
        for (int k = COORDINATES; k < n; k++) {
            x[k] = 2e-3;
        }
        double[] hessian = new double[n * n];
        double[] skew = new double[n * n];
        gradient(drive, x, open, hessian, skew);
        double scale = 0;
        for (double h : hessian) {
            scale = Math.max(scale, Math.abs(h));
        }
        for (int k = 0; k < n; k++) {
            double[] up = x.clone();
            double[] down = x.clone();
            up[k] += STEP;
            down[k] -= STEP;
            double[] gUp = gradient(drive, up, open, new double[n * n], new double[n * n]);
            double[] gDown = gradient(drive, down, open, new double[n * n], new double[n * n]);
            for (int i = 0; i < n; i++) {
                assertThat(hessian[i * n + k] + skew[i * n + k])
                        .as("seed " + seed + ", row " + i + ", column " + k)
                        .isCloseTo((gUp[i] - gDown[i]) / (2 * STEP), Offset.offset(1e-5 * scale));
                assertThat(hessian[i * n + k]).isCloseTo(hessian[k * n + i], Offset.offset(1e-14 * scale));
            }
        }
    }

    private static double[] gradient(TendonDrive drive, double[] x, double[] open, double[] hessian, double[] skew) {
        double[] out = new double[x.length];
        System.arraycopy(x, COORDINATES, drive.spool(), 0, drive.spools());
        drive.accumulate(x, open, 0, out, hessian, skew, x.length);
        return out;
    }
}
