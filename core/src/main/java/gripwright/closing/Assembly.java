package gripwright.closing;

import gripwright.contact.Block;
import gripwright.mechanics.HandTree;
import gripwright.mechanics.Kinematics;

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
    private final StepMatrix matrix;
    private final int joints;
    private final int object;
    private final int size;
    private final double[] gradient;
    private final double[] hessian;
    private final double[] skew;
    private final boolean[] slides;
    private final double[] axisO;
    private final double[] originO;
    private final double[] twist;
    private final double[] gz = new double[6];
    private final double[] zg = new double[6];
    /** What the bodies moving with a coordinate feel; the last one is the base's and, in the end, the sum of all. */
    private final Block[] blocks;

    private final int[] parent;

    Assembly(HandTree tree, Kinematics kinematics, StepMatrix matrix) {
        this.tree = tree;
        this.kinematics = kinematics;
        this.matrix = matrix;
        joints = tree.size();
        object = matrix.object;
        size = matrix.size;
        gradient = matrix.gradient;
        hessian = matrix.hessian;
        skew = matrix.skew;
        slides = tree.slides();
        parent = new int[joints];
        blocks = new Block[joints + 1];
        for (int j = 0; j < joints; j++) {
            int before = tree.coordinates().get(j).parent();
            parent[j] = before < 0 ? joints : before;
        }
        for (int j = 0; j <= joints; j++) {
            blocks[j] = new Block();
        }
        axisO = new double[3 * joints];
        originO = new double[3 * joints];
        twist = new double[6 * joints];
    }

    /** The block of the body that moves with a frame; to be filled between {@link #clear} and {@link #spreadBodies}. */
    Block block(int frame) {
        return blocks[frame];
    }

    /** Nothing touches any body. */
    void clear() {
        for (Block block : blocks) {
            block.clear();
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
            matrix.addEvenOnce(i, j, twistDot(gz, i));
        }
        for (int i = 0; i < 6; i++) {
            matrix.addEven(j, object + i, -gz[i]);
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
        matrix.addEven(o + 3, o + 1, all.fz);
        matrix.addEven(o + 3, o + 2, -all.fy);
        matrix.addEven(o + 4, o, -all.fz);
        matrix.addEven(o + 4, o + 2, all.fx);
        matrix.addEven(o + 5, o, all.fy);
        matrix.addEven(o + 5, o + 1, -all.fx);
        if (all.slipping) {
            matrix.slipping = true;
            addObjectSkew(all.c);
        }
    }

    /** @param g upper triangle, row-major 6 x 6 */
    private void addObjectG(double[] g) {
        int o = object;
        for (int i = 0; i < 6; i++) {
            hessian[(o + i) * size + o + i] += g[7 * i];
            for (int k = i + 1; k < 6; k++) {
                matrix.addEven(o + i, o + k, g[6 * i + k]);
            }
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
            matrix.addEvenOnce(i, j, axisO[i3] * ux + axisO[i3 + 1] * uy + axisO[i3 + 2] * uz);
        }
        matrix.addEven(j, o + 3, -ux);
        matrix.addEven(j, o + 4, -uy);
        matrix.addEven(j, o + 5, -uz);
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
            matrix.slipping = true;
            addObjectSkew(load.c);
        }
    }
}
