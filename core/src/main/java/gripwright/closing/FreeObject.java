package gripwright.closing;

import org.jspecify.annotations.Nullable;

/**
 * Weight, push and damping of the free object in one step.
 *
 * <p>Energy: c/(2h) |p - p0|^2 + c L^2/(2h) (3 - tr R0^T R) - f . (p + R m), m the centre of mass, f weight plus push.
 * The damping lets velocities be forgotten: every step can be solved once it is short enough.
 */
final class FreeObject {
    /** A falling object is held back as if it fell at this speed [m/s]: sets the damping c = m g / speed. */
    private static final double FALL_SPEED = 1;

    static final double GRAVITY = 9.80665;

    private final int o;
    private final int size;
    private final double[] gradient;
    private final double[] hessian;
    private final double[] q = new double[9];
    double mass;
    final double[] centreOfMass = new double[3];
    /** Force on the object at its centre of mass besides its weight [N], world. */
    final double[] push = new double[3];

    /** The spring of a test that pulls or turns the object; null = none. */
    @Nullable
    ObjectSpring pull;

    FreeObject(StepMatrix matrix) {
        o = matrix.object;
        size = matrix.size;
        gradient = matrix.gradient;
        hessian = matrix.hessian;
    }

    /** Damping of shifts [N s/m]. @param viscosity factor [-] */
    double damping(double viscosity) {
        return viscosity * mass * GRAVITY / FALL_SPEED;
    }

    /**
     * Energy, and if wanted gradient and second derivative for the object's six unknowns.
     *
     * @param dampingOverStep damping / step time [N/m]
     */
    double accumulate(
            double[] p,
            double[] r,
            double[] pStart,
            double[] rStart,
            double dampingOverStep,
            boolean wantGradient,
            boolean wantHessian) {
        double c = dampingOverStep;
        double ct = c * StepSystem.TURN_LENGTH * StepSystem.TURN_LENGTH;
        double dx = p[0] - pStart[0];
        double dy = p[1] - pStart[1];
        double dz = p[2] - pStart[2];
        double trace = 0;
        for (int i = 0; i < 9; i++) {
            trace += rStart[i] * r[i];
        }
        double fx = push[0];
        double fy = push[1];
        double fz = push[2] - mass * GRAVITY;
        double mx = centreOfMass[0];
        double my = centreOfMass[1];
        double mz = centreOfMass[2];
        double energy = 0.5 * c * (dx * dx + dy * dy + dz * dz)
                + 0.5 * ct * (3 - trace)
                - fx * (p[0] + r[0] * mx + r[1] * my + r[2] * mz)
                - fy * (p[1] + r[3] * mx + r[4] * my + r[5] * mz)
                - fz * (p[2] + r[6] * mx + r[7] * my + r[8] * mz);
        if (!wantGradient) {
            return energy + (pull == null ? 0 : pull.accumulate(p, r, false, false));
        }
        for (int i = 0; i < 3; i++) {
            gradient[o + i] += c * (r[i] * dx + r[3 + i] * dy + r[6 + i] * dz);
        }
        double[] s = turnOverStep(r, rStart);
        gradient[o + 3] += 0.5 * ct * (s[7] - s[5]);
        gradient[o + 4] += 0.5 * ct * (s[2] - s[6]);
        gradient[o + 5] += 0.5 * ct * (s[3] - s[1]);
        if (wantHessian) {
            for (int i = 0; i < 3; i++) {
                hessian[(o + i) * size + o + i] += c;
                for (int k = 0; k < 3; k++) {
                    hessian[(o + 3 + i) * size + o + 3 + k] +=
                            0.5 * ct * ((i == k ? trace : 0) - 0.5 * (s[3 * i + k] + s[3 * k + i]));
                }
            }
        }
        addLoad(r, fx, fy, fz, wantHessian);
        return energy + (pull == null ? 0 : pull.accumulate(p, r, true, wantHessian));
    }

    /** A force on the centre of mass that keeps its direction in the world: gradient of -f . (p + R m). */
    void addLoad(double[] r, double fx, double fy, double fz, boolean wantHessian) {
        double mx = centreOfMass[0];
        double my = centreOfMass[1];
        double mz = centreOfMass[2];
        double gx = -(r[0] * fx + r[3] * fy + r[6] * fz);
        double gy = -(r[1] * fx + r[4] * fy + r[7] * fz);
        double gz = -(r[2] * fx + r[5] * fy + r[8] * fz);
        gradient[o] += gx;
        gradient[o + 1] += gy;
        gradient[o + 2] += gz;
        gradient[o + 3] += my * gz - mz * gy;
        gradient[o + 4] += mz * gx - mx * gz;
        gradient[o + 5] += mx * gy - my * gx;
        if (wantHessian) {
            double dot = mx * gx + my * gy + mz * gz;
            int t = o + 3;
            hessian[t * size + t] += mx * gx - dot;
            hessian[(t + 1) * size + t + 1] += my * gy - dot;
            hessian[(t + 2) * size + t + 2] += mz * gz - dot;
            addEven(t, t + 1, 0.5 * (mx * gy + my * gx));
            addEven(t, t + 2, 0.5 * (mx * gz + mz * gx));
            addEven(t + 1, t + 2, 0.5 * (my * gz + mz * gy));
        }
    }

    /** Adds k a a^T to the object's second derivative. @param a shape 6 */
    void addRankOne(double k, double[] a) {
        for (int i = 0; i < 6; i++) {
            for (int j = 0; j < 6; j++) {
                hessian[(o + i) * size + o + j] += k * a[i] * a[j];
            }
        }
    }

    /** Adds to the gradient and second derivative for the object's turn. @param h shape 9, symmetric, or empty */
    void addTurn(double gx, double gy, double gz, double[] h) {
        gradient[o + 3] += gx;
        gradient[o + 4] += gy;
        gradient[o + 5] += gz;
        for (int i = 0; i < h.length; i++) {
            hessian[(o + 3 + i / 3) * size + o + 3 + i % 3] += h[i];
        }
    }

    private void addEven(int i, int k, double v) {
        hessian[i * size + k] += v;
        hessian[k * size + i] += v;
    }

    /** Q = R0^T R; its skew part is the turn of the step. */
    private double[] turnOverStep(double[] r, double[] rStart) {
        for (int i = 0; i < 3; i++) {
            for (int k = 0; k < 3; k++) {
                q[3 * i + k] = rStart[i] * r[k] + rStart[3 + i] * r[3 + k] + rStart[6 + i] * r[6 + k];
            }
        }
        return q;
    }

    /** Force out of balance with the step's damping taken off [N]; needs the gradient at the present state. */
    double residual(double[] p, double[] r, double[] pStart, double dampingOverStep) {
        double sum = 0;
        for (int i = 0; i < 3; i++) {
            double moved = r[i] * (p[0] - pStart[0]) + r[3 + i] * (p[1] - pStart[1]) + r[6 + i] * (p[2] - pStart[2]);
            double f = gradient[o + i] - dampingOverStep * moved;
            sum += f * f;
        }
        return Math.sqrt(sum);
    }

    /** Moment out of balance, damping taken off [N m]. */
    double momentResidual(double[] r, double[] rStart, double dampingOverStep) {
        double ct = dampingOverStep * StepSystem.TURN_LENGTH * StepSystem.TURN_LENGTH;
        double[] s = turnOverStep(r, rStart);
        double x = gradient[o + 3] - 0.5 * ct * (s[7] - s[5]);
        double y = gradient[o + 4] - 0.5 * ct * (s[2] - s[6]);
        double z = gradient[o + 5] - 0.5 * ct * (s[3] - s[1]);
        return Math.sqrt(x * x + y * y + z * z);
    }
}
