package gripwright.closing;

import gripwright.math.Vec3;

/**
 * Turns the object about one direction with a pure moment and leaves all else free.
 *
 * <p>Energy 1/2 k (s - a)^2. The angle a is the twist of Q = R R0^T about n: a = atan2(u, v) with u = sum A:Q, A = [n]x /
 * 2, and v = sum B:Q, B = (I - n n^T) / 2. For R exp([w]x), a sum M:Q changes by w . vex(N - N^T) + w^T (sym N - tr N I)
 * w / 2 with N = R^T M R0; a is the argument of z = v + i u, so a_i = Im(z_i / z), a_ij = Im(z_ij / z - z_i z_j / z^2).
 */
final class TurnSpring implements ObjectSpring {
    private final FreeObject object;
    private final double[] r0;
    private final double[] a = new double[9];
    private final double[] b = new double[9];
    private final double k;
    private double s;
    private final double[] first = new double[9];
    private final double[] us = new double[12];
    private final double[] vs = new double[12];
    private final double[] turn = new double[9];
    private static final double[] NONE = {};

    /**
     * @param axis in the world, of length 1
     * @param stiffness [N m/rad]
     * @param r rotation of the object at the start
     */
    TurnSpring(FreeObject object, Vec3 axis, double stiffness, double[] r) {
        this.object = object;
        k = stiffness;
        r0 = r.clone();
        double[] n = {axis.x(), axis.y(), axis.z()};
        a[1] = -0.5 * n[2];
        a[2] = 0.5 * n[1];
        a[3] = 0.5 * n[2];
        a[5] = -0.5 * n[0];
        a[6] = -0.5 * n[1];
        a[7] = 0.5 * n[0];
        for (int i = 0; i < 3; i++) {
            for (int j = 0; j < 3; j++) {
                b[3 * i + j] = 0.5 * ((i == j ? 1 : 0) - n[i] * n[j]);
            }
        }
    }

    /** sum M:Q. */
    private double sum(double[] m, double[] r) {
        double sum = 0;
        for (int i = 0; i < 3; i++) {
            for (int j = 0; j < 3; j++) {
                double q = r[3 * i] * r0[3 * j] + r[3 * i + 1] * r0[3 * j + 1] + r[3 * i + 2] * r0[3 * j + 2];
                sum += m[3 * i + j] * q;
            }
        }
        return sum;
    }

    /** Slope (3) and second derivative (9) of sum M:Q in the turn w. */
    private void slopes(double[] m, double[] r, double[] out) {
        for (int i = 0; i < 3; i++) {
            for (int j = 0; j < 3; j++) {
                first[3 * i + j] = m[3 * i] * r0[j] + m[3 * i + 1] * r0[3 + j] + m[3 * i + 2] * r0[6 + j];
            }
        }
        double[] n = turn;
        for (int i = 0; i < 3; i++) {
            for (int j = 0; j < 3; j++) {
                n[3 * i + j] = r[i] * first[j] + r[3 + i] * first[3 + j] + r[6 + i] * first[6 + j];
            }
        }
        out[0] = n[7] - n[5];
        out[1] = n[2] - n[6];
        out[2] = n[3] - n[1];
        double trace = n[0] + n[4] + n[8];
        for (int i = 0; i < 3; i++) {
            for (int j = 0; j < 3; j++) {
                out[3 + 3 * i + j] = 0.5 * (n[3 * i + j] + n[3 * j + i]) - (i == j ? trace : 0);
            }
        }
    }

    @Override
    public double accumulate(double[] p, double[] r, boolean wantGradient, boolean wantHessian) {
        double u = sum(a, r);
        double v = sum(b, r);
        double angle = StrictMath.atan2(u, v);
        double torque = k * (s - angle);
        double energy = 0.5 * k * (s - angle) * (s - angle);
        if (!wantGradient) {
            return energy;
        }
        slopes(a, r, us);
        slopes(b, r, vs);
        double size = u * u + v * v;
        double gx = (v * us[0] - u * vs[0]) / size;
        double gy = (v * us[1] - u * vs[1]) / size;
        double gz = (v * us[2] - u * vs[2]) / size;
        double[] h = wantHessian ? turn : NONE;
        if (wantHessian) {
            double[] g = {gx, gy, gz};
            double re = (v * v - u * u) / (size * size);
            double im = -2 * u * v / (size * size);
            for (int i = 0; i < 3; i++) {
                for (int j = 0; j < 3; j++) {
                    double second = (v * us[3 + 3 * i + j] - u * vs[3 + 3 * i + j]) / size;
                    double productRe = vs[i] * vs[j] - us[i] * us[j];
                    double productIm = vs[i] * us[j] + us[i] * vs[j];
                    second -= productRe * im + productIm * re;
                    h[3 * i + j] = k * g[i] * g[j] - torque * second;
                }
            }
        }
        object.addTurn(-torque * gx, -torque * gy, -torque * gz, h);
        return energy;
    }

    @Override
    public void farEnd(double place) {
        s = place;
    }

    @Override
    public double moved(double[] p, double[] r) {
        return StrictMath.atan2(sum(a, r), sum(b, r));
    }

    @Override
    public double load(double[] p, double[] r) {
        return k * (s - moved(p, r));
    }
}
