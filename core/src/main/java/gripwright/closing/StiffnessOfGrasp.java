package gripwright.closing;

import gripwright.math.DenseSolver;
import gripwright.math.SymmetricEigen;
import gripwright.math.Vec3;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Stiffness of a hold from the step's own second derivative: the hand's unknowns are eliminated (Schur complement; here
 * by its inverse, the displacements under six unit loads on the object). Damping is left out, and points whose friction
 * is used up count as sticking: a small load may as well turn them back as push them on.
 */
final class StiffnessOfGrasp {
    private static final double NO_DAMPING = 1e7;
    /** Keeps points at the very edge of their friction cone inside. */
    private static final double EDGE = 1.01;

    private StiffnessOfGrasp() {}

    /** At a state at rest; the state is put back. */
    static GraspStiffness of(StepSystem s, Snapshot at) {
        at.restore(s);
        s.stepTime = NO_DAMPING;
        s.pads.scaleFriction(EDGE);
        s.evaluate(true);
        double[] compliance = atCentre(s, underUnitLoads(s));
        at.restore(s);
        double[] stiffness = inverse(compliance, 6);
        SymmetricEigen push = SymmetricEigen.of(block(compliance, 0), 3);
        SymmetricEigen turn = SymmetricEigen.of(block(compliance, 3), 3);
        double[] scaled = stiffness.clone();
        for (int i = 0; i < 36; i++) {
            scaled[i] /= (i / 6 < 3 ? 1 : StepSystem.TURN_LENGTH) * (i % 6 < 3 ? 1 : StepSystem.TURN_LENGTH);
        }
        List<Double> matrix = new ArrayList<>();
        Arrays.stream(stiffness).forEach(matrix::add);
        return new GraspStiffness(
                matrix,
                vector(push.vectors()[2]),
                1 / push.values()[2],
                vector(turn.vectors()[2]),
                1 / turn.values()[2],
                SymmetricEigen.of(scaled, 6).values()[0] > 0);
    }

    /** The first component that is not 0 is made positive: an axis has no sign. */
    private static Vec3 vector(double[] v) {
        double sign = 1;
        for (double c : v) {
            if (Math.abs(c) > 1e-9) {
                sign = Math.signum(c);
                break;
            }
        }
        return new Vec3(sign * v[0], sign * v[1], sign * v[2]);
    }

    private static double[] block(double[] matrix, int from) {
        double[] out = new double[9];
        for (int i = 0; i < 3; i++) {
            System.arraycopy(matrix, 6 * (from + i) + from, out, 3 * i, 3);
        }
        return out;
    }

    /** Displacements of the object's six unknowns under unit loads on them, the hand giving as it will. */
    private static double[] underUnitLoads(StepSystem s) {
        DenseSolver solver = new DenseSolver(s.scale);
        double[] load = new double[s.size];
        double[] d = new double[s.size];
        double[] out = new double[36];
        int o = s.objectIndex();
        for (int k = 0; k < 6; k++) {
            load[o + k] = -1;
            if (!solver.luSolve(s.hessian, s.skew, load, d)) {
                throw new IllegalStateException("the stiffness of the hold is singular");
            }
            load[o + k] = 0;
            for (int i = 0; i < 6; i++) {
                out[6 * i + k] = d[o + i];
            }
        }
        return out;
    }

    /** From the twist of the object's frame to that of the centre of mass in world axes: T C T^T. */
    private static double[] atCentre(StepSystem s, double[] c) {
        double[] m = s.object.centreOfMass;
        double[] skew = {0, -m[2], m[1], m[2], 0, -m[0], -m[1], m[0], 0};
        double[] t = new double[36];
        for (int i = 0; i < 3; i++) {
            for (int j = 0; j < 3; j++) {
                t[6 * i + j] = s.r[3 * i + j];
                t[6 * (3 + i) + 3 + j] = s.r[3 * i + j];
                double sum = 0;
                for (int k = 0; k < 3; k++) {
                    sum += s.r[3 * i + k] * skew[3 * k + j];
                }
                t[6 * i + 3 + j] = -sum;
            }
        }
        return times(times(t, c), transposed(t));
    }

    private static double[] transposed(double[] a) {
        double[] out = new double[36];
        for (int i = 0; i < 36; i++) {
            out[6 * (i % 6) + i / 6] = a[i];
        }
        return out;
    }

    private static double[] times(double[] a, double[] b) {
        double[] out = new double[36];
        for (int i = 0; i < 6; i++) {
            for (int j = 0; j < 6; j++) {
                for (int k = 0; k < 6; k++) {
                    out[6 * i + j] += a[6 * i + k] * b[6 * k + j];
                }
            }
        }
        return out;
    }

    private static double[] inverse(double[] compliance, int n) {
        // natural sizes of a compliance: 1e-4 m/N, and the same over a length twice for turns
        double[] scale = {1e-2, 1e-2, 1e-2, 0.3, 0.3, 0.3};
        DenseSolver solver = new DenseSolver(scale);
        double[] out = new double[n * n];
        double[] load = new double[n];
        double[] d = new double[n];
        for (int k = 0; k < n; k++) {
            load[k] = -1;
            if (!solver.luSolve(compliance, new double[n * n], load, d)) {
                throw new IllegalStateException("the give of the hold is singular");
            }
            load[k] = 0;
            for (int i = 0; i < n; i++) {
                out[n * i + k] = d[i];
            }
        }
        return out;
    }
}
