package gripwright.closing;

import gripwright.contact.LinkContacts;
import gripwright.contact.PointPair;
import gripwright.mechanics.HandTree;
import gripwright.mechanics.Kinematics;

/**
 * Spreads contacts of fingers with the table and with each other over the hand's coordinates, in the world frame.
 *
 * <p>With J = d(point)/dq, the columns a x (point - o) for a coordinate that turns about the axis a through o and a for one
 * that slides: gradient += J^T g, second derivative += J^T S J + g . d2(point)/dq2, the last term being g . (a_i x column
 * j) for a turning i before j; between two bodies -J_A^T S J_B. Workspace of one thread.
 */
final class PairSpread implements LinkContacts.Sink {
    private final HandTree tree;
    private final Kinematics kinematics;
    private final StepMatrix matrix;
    private final int size;
    private final double[] gradient;
    private final double[] skew;
    private final int[] bodyFrame;
    private final boolean[] slides;
    /** Columns of the point's Jacobian, by coordinate. */
    private final double[] jacobian;

    private final double[] otherJacobian;

    /** @param bodyFrame the frame that each body moves with */
    PairSpread(HandTree tree, Kinematics kinematics, StepMatrix matrix, int[] bodyFrame) {
        this.tree = tree;
        this.kinematics = kinematics;
        this.matrix = matrix;
        this.bodyFrame = bodyFrame;
        size = matrix.size;
        gradient = matrix.gradient;
        skew = matrix.skew;
        slides = tree.slides();
        jacobian = new double[3 * tree.size()];
        otherJacobian = new double[3 * tree.size()];
    }

    /** A contact of a finger with the table or another finger, in the world frame. */
    @Override
    public void take(PointPair pair, boolean wantHessian) {
        int[] chainA = tree.chain(bodyFrame[pair.bodyA]);
        addPoint(pair, chainA, pair.a, 1, wantHessian);
        if (pair.bodyB >= 0) {
            int[] chainB = tree.chain(bodyFrame[pair.bodyB]);
            addPoint(pair, chainB, pair.b, -1, wantHessian);
            if (wantHessian) {
                addCross(pair, chainA, chainB);
            }
        }
        matrix.slipping |= pair.slipping && wantHessian;
    }

    /** Columns d(point)/dq of one body's chain into {@link #jacobian}, by coordinate. */
    private void pointJacobian(int[] chain, double[] at) {
        double[] fp = kinematics.position();
        double[] fa = kinematics.axis();
        for (int j : chain) {
            int j3 = 3 * j;
            if (slides[j]) {
                System.arraycopy(fa, j3, jacobian, j3, 3);
                continue;
            }
            double x = at[0] - fp[j3];
            double y = at[1] - fp[j3 + 1];
            double z = at[2] - fp[j3 + 2];
            jacobian[j3] = fa[j3 + 1] * z - fa[j3 + 2] * y;
            jacobian[j3 + 1] = fa[j3 + 2] * x - fa[j3] * z;
            jacobian[j3 + 2] = fa[j3] * y - fa[j3 + 1] * x;
        }
    }

    private void addPoint(PointPair pair, int[] chain, double[] at, int sign, boolean wantHessian) {
        pointJacobian(chain, at);
        double gx = sign * pair.g[0];
        double gy = sign * pair.g[1];
        double gz = sign * pair.g[2];
        for (int j : chain) {
            gradient[j] += jacobian[3 * j] * gx + jacobian[3 * j + 1] * gy + jacobian[3 * j + 2] * gz;
        }
        if (!wantHessian) {
            return;
        }
        double[] fa = kinematics.axis();
        for (int b = 0; b < chain.length; b++) {
            int j = chain[b];
            double jx = jacobian[3 * j];
            double jy = jacobian[3 * j + 1];
            double jz = jacobian[3 * j + 2];
            for (int a = 0; a <= b; a++) {
                int i = chain[a];
                double value = quadratic(pair.s, i, jx, jy, jz);
                if (!slides[i]) {
                    // g . (a_i x column j)
                    double ax = fa[3 * i];
                    double ay = fa[3 * i + 1];
                    double az = fa[3 * i + 2];
                    value += gx * (ay * jz - az * jy) + gy * (az * jx - ax * jz) + gz * (ax * jy - ay * jx);
                }
                matrix.addEvenOnce(i, j, value);
            }
            if (pair.slipping) {
                double n = pair.n[0] * jx + pair.n[1] * jy + pair.n[2] * jz;
                for (int i : chain) {
                    skew[i * size + j] += n
                            * (pair.t[0] * jacobian[3 * i]
                                    + pair.t[1] * jacobian[3 * i + 1]
                                    + pair.t[2] * jacobian[3 * i + 2]);
                }
            }
        }
    }

    private double quadratic(double[] s, int i, double jx, double jy, double jz) {
        return jacobian[3 * i] * (s[0] * jx + s[1] * jy + s[2] * jz)
                + jacobian[3 * i + 1] * (s[3] * jx + s[4] * jy + s[5] * jz)
                + jacobian[3 * i + 2] * (s[6] * jx + s[7] * jy + s[8] * jz);
    }

    /** Mixed terms -J_A^T S J_B of a contact between two bodies (they share at most the arm's coordinates). */
    private void addCross(PointPair pair, int[] chainA, int[] chainB) {
        pointJacobian(chainA, pair.a);
        double[] first = otherJacobian;
        System.arraycopy(jacobian, 0, first, 0, jacobian.length);
        pointJacobian(chainB, pair.b);
        double[] s = pair.s;
        for (int i : chainA) {
            double x = first[3 * i];
            double y = first[3 * i + 1];
            double z = first[3 * i + 2];
            double n = pair.n[0] * x + pair.n[1] * y + pair.n[2] * z;
            double t = pair.t[0] * x + pair.t[1] * y + pair.t[2] * z;
            for (int j : chainB) {
                double value = -quadratic(s, j, x, y, z);
                matrix.addEven(i, j, value);
                if (pair.slipping) {
                    double nj = pair.n[0] * jacobian[3 * j]
                            + pair.n[1] * jacobian[3 * j + 1]
                            + pair.n[2] * jacobian[3 * j + 2];
                    double tj = pair.t[0] * jacobian[3 * j]
                            + pair.t[1] * jacobian[3 * j + 1]
                            + pair.t[2] * jacobian[3 * j + 2];
                    skew[i * size + j] -= t * nj;
                    skew[j * size + i] -= tj * n;
                }
            }
        }
    }
}
