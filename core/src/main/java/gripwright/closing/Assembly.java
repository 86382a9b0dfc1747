package gripwright.closing;

import gripwright.contact.Block;
import gripwright.contact.PointPair;
import gripwright.mechanics.HandTree;
import gripwright.mechanics.Kinematics;
import java.util.Arrays;

/**
 * Spreads what single bodies feel over the unknowns of a step: hand coordinates, spools, the object's twist.
 *
 * <p>For a coordinate j the twist of its body in the object's frame is z_j = [o x a; a] (turning about the axis a
 * through o) or [a; 0] (sliding). A block [F; M], G gives gradient z_j . [F; M], the object its opposite, and second
 * derivatives z_i^T G z_j plus the terms of the turning axes (docs/method.md). Workspace of one thread.
 */
final class Assembly {
    private final HandTree tree;
    private final Kinematics kinematics;
    private final int joints;
    private final int object;
    private final int size;
    private final boolean[] slides;
    final double[] gradient;
    /** Symmetric part of the second derivative, row-major size x size. */
    final double[] hessian;
    /** What sliding friction adds to it. */
    final double[] skew;

    boolean slipping;
    private final double[] axisO;
    private final double[] originO;
    private final double[] twist;
    private final double[] gz = new double[6];
    private final double[] zg = new double[6];
    private final double[] jacobian;
    private final double[] otherJacobian;
    /** What the bodies moving with a coordinate feel; the last one is the base's and, in the end, the sum of all. */
    private final Block[] blocks;

    private final int[] parent;

    /** @param object index of the object's first unknown */
    Assembly(HandTree tree, Kinematics kinematics, int object) {
        this.tree = tree;
        this.kinematics = kinematics;
        joints = tree.size();
        this.object = object;
        size = object + 6;
        slides = new boolean[joints];
        parent = new int[joints];
        blocks = new Block[joints + 1];
        for (int j = 0; j < joints; j++) {
            slides[j] = tree.coordinates().get(j).slides();
            int before = tree.coordinates().get(j).parent();
            parent[j] = before < 0 ? joints : before;
        }
        for (int j = 0; j <= joints; j++) {
            blocks[j] = new Block();
        }
        gradient = new double[size];
        hessian = new double[size * size];
        skew = new double[size * size];
        axisO = new double[3 * joints];
        originO = new double[3 * joints];
        twist = new double[6 * joints];
        jacobian = new double[3 * joints];
        otherJacobian = new double[3 * joints];
    }

    /** The block of the body that moves with a frame; to be filled between {@link #clear} and {@link #spreadBodies}. */
    Block block(int frame) {
        return blocks[frame];
    }

    void clear(boolean wantHessian) {
        slipping = false;
        for (Block block : blocks) {
            block.clear();
        }
        Arrays.fill(gradient, 0);
        if (wantHessian) {
            Arrays.fill(hessian, 0);
            Arrays.fill(skew, 0);
        }
    }

    /** Axes, origins and twists z_j = [o x a; a] (turns) or [a; 0] (slides) in the object's frame. */
    void updateTwists(double[] p, double[] r) {
        double[] fp = kinematics.position();
        double[] fa = kinematics.axis();
        for (int j = 0; j < joints; j++) {
            int j3 = 3 * j;
            double x = fp[j3] - p[0];
            double y = fp[j3 + 1] - p[1];
            double z = fp[j3 + 2] - p[2];
            for (int i = 0; i < 3; i++) {
                axisO[j3 + i] = r[i] * fa[j3] + r[3 + i] * fa[j3 + 1] + r[6 + i] * fa[j3 + 2];
                originO[j3 + i] = r[i] * x + r[3 + i] * y + r[6 + i] * z;
            }
            double ax = axisO[j3];
            double ay = axisO[j3 + 1];
            double az = axisO[j3 + 2];
            int z6 = 6 * j;
            if (slides[j]) {
                twist[z6] = ax;
                twist[z6 + 1] = ay;
                twist[z6 + 2] = az;
                twist[z6 + 3] = 0;
                twist[z6 + 4] = 0;
                twist[z6 + 5] = 0;
            } else {
                twist[z6] = originO[j3 + 1] * az - originO[j3 + 2] * ay;
                twist[z6 + 1] = originO[j3 + 2] * ax - originO[j3] * az;
                twist[z6 + 2] = originO[j3] * ay - originO[j3 + 1] * ax;
                twist[z6 + 3] = ax;
                twist[z6 + 4] = ay;
                twist[z6 + 5] = az;
            }
        }
    }

    /** Takes the unknowns from {@code first} on out of the system. @param scale of the pinned unknowns, for the solver */
    void pin(int first, double scale) {
        for (int i = first; i < size; i++) {
            gradient[i] = 0;
            for (int k = 0; k < size; k++) {
                hessian[i * size + k] = 0;
                hessian[k * size + i] = 0;
                skew[i * size + k] = 0;
                skew[k * size + i] = 0;
            }
            hessian[i * size + i] = scale * scale;
        }
    }

    private void addEven(int i, int k, double v) {
        hessian[i * size + k] += v;
        hessian[k * size + i] += v;
    }

    // ------------------------------------------------------------------ assembly

    /**
     * Spreads the blocks of all bodies over the coordinates and the object, which gets their opposite.
     *
     * <p>From the tips inward: a coordinate carries the sum of the blocks of all bodies beyond it, so each pair of
     * coordinates is met once, whatever the number of bodies, as when inertias are gathered (R. Featherstone, "Rigid Body
     * Dynamics Algorithms", 2008, composite rigid bodies, from memory).
     */
    void spreadBodies(boolean wantHessian) {
        for (int j = joints - 1; j >= 0; j--) {
            Block sums = blocks[j];
            if (sums.active) {
                spread(j, sums, wantHessian);
                blocks[parent[j]].add(sums, wantHessian);
            }
        }
        Block all = blocks[joints];
        if (all.active) {
            spreadOverObject(all, wantHessian);
        }
    }

    private void spread(int j, Block sums, boolean wantHessian) {
        double[] v = sums.v;
        double fx = sums.fx;
        double fy = sums.fy;
        double fz = sums.fz;
        int z = 6 * j;
        gradient[j] += twist[z] * fx
                + twist[z + 1] * fy
                + twist[z + 2] * fz
                + twist[z + 3] * (v[5] - v[7])
                + twist[z + 4] * (v[6] - v[2])
                + twist[z + 5] * (v[1] - v[3]);
        if (!wantHessian) {
            return;
        }
        int[] chain = tree.chain(j);
        symmetricTimesTwist(sums.g, j);
        for (int i : chain) {
            addEvenOnce(i, j, twistDot(gz, i));
        }
        for (int i = 0; i < 6; i++) {
            addEven(j, object + i, -gz[i]);
        }
        addTurningTerms(chain, sums, fx, fy, fz);
        if (sums.slipping) {
            spreadSlip(chain, sums.c);
        }
    }

    private void spreadOverObject(Block all, boolean wantHessian) {
        int o = object;
        double[] v = all.v;
        gradient[o] -= all.fx;
        gradient[o + 1] -= all.fy;
        gradient[o + 2] -= all.fz;
        gradient[o + 3] -= v[5] - v[7];
        gradient[o + 4] -= v[6] - v[2];
        gradient[o + 5] -= v[1] - v[3];
        if (!wantHessian) {
            return;
        }
        addObjectG(all.g);
        addObjectTurnTerms(v);
        // d2E / dw dp = -[F]x
        addEven(o + 3, o + 1, all.fz);
        addEven(o + 3, o + 2, -all.fy);
        addEven(o + 4, o, -all.fz);
        addEven(o + 4, o + 2, all.fx);
        addEven(o + 5, o, all.fy);
        addEven(o + 5, o + 1, -all.fx);
        if (all.slipping) {
            slipping = true;
            addObjectSkew(all.c);
        }
    }

    /** @param g upper triangle, row-major 6 x 6 */
    private void addObjectG(double[] g) {
        int o = object;
        for (int i = 0; i < 6; i++) {
            hessian[(o + i) * size + o + i] += g[7 * i];
            for (int k = i + 1; k < 6; k++) {
                addEven(o + i, o + k, g[6 * i + k]);
            }
        }
    }

    private void addEvenOnce(int i, int j, double value) {
        hessian[i * size + j] += value;
        if (i != j) {
            hessian[j * size + i] += value;
        }
    }

    /** gz = M z_j for the upper triangle of M. */
    private void symmetricTimesTwist(double[] m, int j) {
        int z = 6 * j;
        double a = twist[z];
        double b = twist[z + 1];
        double c = twist[z + 2];
        double d = twist[z + 3];
        double e = twist[z + 4];
        double f = twist[z + 5];
        gz[0] = m[0] * a + m[1] * b + m[2] * c + m[3] * d + m[4] * e + m[5] * f;
        gz[1] = m[1] * a + m[7] * b + m[8] * c + m[9] * d + m[10] * e + m[11] * f;
        gz[2] = m[2] * a + m[8] * b + m[14] * c + m[15] * d + m[16] * e + m[17] * f;
        gz[3] = m[3] * a + m[9] * b + m[15] * c + m[21] * d + m[22] * e + m[23] * f;
        gz[4] = m[4] * a + m[10] * b + m[16] * c + m[22] * d + m[28] * e + m[29] * f;
        gz[5] = m[5] * a + m[11] * b + m[17] * c + m[23] * d + m[29] * e + m[35] * f;
    }

    private double twistDot(double[] x, int i) {
        int z = 6 * i;
        return x[0] * twist[z]
                + x[1] * twist[z + 1]
                + x[2] * twist[z + 2]
                + x[3] * twist[z + 3]
                + x[4] * twist[z + 4]
                + x[5] * twist[z + 5];
    }

    /** Second-order terms of a chain's last coordinate with the turning ones before it and with the object's turn. */
    private void addTurningTerms(int[] chain, Block sums, double fx, double fy, double fz) {
        int j = chain[chain.length - 1];
        int j3 = 3 * j;
        int o = object;
        double ax = axisO[j3];
        double ay = axisO[j3 + 1];
        double az = axisO[j3 + 2];
        // u such that d2E / dq_i dq_j = a_i . u for a turning i before j, and d2E / dw dq_j = -u
        double ux;
        double uy;
        double uz;
        if (slides[j]) {
            // a_i . (a_j x F)
            ux = ay * fz - az * fy;
            uy = az * fx - ax * fz;
            uz = ax * fy - ay * fx;
        } else {
            // W a - a tr W with W = V - o F^T
            double[] v = sums.v;
            double ox = originO[j3];
            double oy = originO[j3 + 1];
            double oz = originO[j3 + 2];
            double w00 = v[0] - ox * fx;
            double w11 = v[4] - oy * fy;
            double w22 = v[8] - oz * fz;
            double trace = w00 + w11 + w22;
            ux = w00 * ax + (v[1] - ox * fy) * ay + (v[2] - ox * fz) * az - ax * trace;
            uy = (v[3] - oy * fx) * ax + w11 * ay + (v[5] - oy * fz) * az - ay * trace;
            uz = (v[6] - oz * fx) * ax + (v[7] - oz * fy) * ay + w22 * az - az * trace;
        }
        for (int i : chain) {
            if (slides[i]) {
                continue;
            }
            int i3 = 3 * i;
            addEvenOnce(i, j, axisO[i3] * ux + axisO[i3 + 1] * uy + axisO[i3 + 2] * uz);
        }
        addEven(j, o + 3, -ux);
        addEven(j, o + 4, -uy);
        addEven(j, o + 5, -uz);
    }

    /** d2E / dw dw = sym V - tr V I. */
    private void addObjectTurnTerms(double[] v) {
        double trace = v[0] + v[4] + v[8];
        int t = object + 3;
        for (int i = 0; i < 3; i++) {
            for (int k = 0; k < 3; k++) {
                hessian[(t + i) * size + t + k] += 0.5 * (v[3 * i + k] + v[3 * k + i]) - (i == k ? trace : 0);
            }
        }
    }

    /** Rows and columns of a chain's last coordinate. */
    private void spreadSlip(int[] chain, double[] c) {
        int j = chain[chain.length - 1];
        int o = object;
        int z = 6 * j;
        for (int i = 0; i < 6; i++) {
            double column = 0;
            double row = 0;
            for (int k = 0; k < 6; k++) {
                column += c[6 * i + k] * twist[z + k];
                row += c[6 * k + i] * twist[z + k];
            }
            gz[i] = column;
            zg[i] = row;
            skew[(o + i) * size + j] -= column;
            skew[j * size + o + i] -= row;
        }
        for (int i : chain) {
            skew[i * size + j] += twistDot(gz, i);
            if (i != j) {
                skew[j * size + i] += twistDot(zg, i);
            }
        }
    }

    private void addObjectSkew(double[] c) {
        int o = object;
        for (int i = 0; i < 6; i++) {
            for (int k = 0; k < 6; k++) {
                skew[(o + i) * size + o + k] += c[6 * i + k];
            }
        }
    }

    /** The table's block: a load fixed in the world on points of the object. */
    void addWorldLoad(Block load, boolean wantHessian) {
        int o = object;
        double[] v = load.v;
        gradient[o] += load.fx;
        gradient[o + 1] += load.fy;
        gradient[o + 2] += load.fz;
        gradient[o + 3] += v[5] - v[7];
        gradient[o + 4] += v[6] - v[2];
        gradient[o + 5] += v[1] - v[3];
        if (!wantHessian) {
            return;
        }
        addObjectG(load.g);
        addObjectTurnTerms(v);
        if (load.slipping) {
            slipping = true;
            addObjectSkew(load.c);
        }
    }

    /** A contact of a finger with the table or another finger, in the world frame. */
    void addPair(PointPair pair, int[] bodyFrame, boolean wantHessian) {
        int[] chainA = tree.chain(bodyFrame[pair.bodyA]);
        addPoint(pair, chainA, pair.a, 1, wantHessian);
        if (pair.bodyB >= 0) {
            int[] chainB = tree.chain(bodyFrame[pair.bodyB]);
            addPoint(pair, chainB, pair.b, -1, wantHessian);
            if (wantHessian) {
                addCross(pair, chainA, chainB);
            }
        }
        slipping |= pair.slipping && wantHessian;
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
        double gzz = sign * pair.g[2];
        for (int j : chain) {
            gradient[j] += jacobian[3 * j] * gx + jacobian[3 * j + 1] * gy + jacobian[3 * j + 2] * gzz;
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
                    value += gx * (ay * jz - az * jy) + gy * (az * jx - ax * jz) + gzz * (ax * jy - ay * jx);
                }
                addEvenOnce(i, j, value);
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
                hessian[i * size + j] += value;
                hessian[j * size + i] += value;
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
