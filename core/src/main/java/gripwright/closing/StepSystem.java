package gripwright.closing;

import gripwright.contact.Block;
import gripwright.contact.PadContact;
import gripwright.contact.PointPair;
import gripwright.contact.TableContact;
import gripwright.mechanics.HandTree;
import gripwright.mechanics.JointForces;
import gripwright.mechanics.Kinematics;
import gripwright.shape.Shape;
import java.util.Arrays;

/**
 * The equations of one quasi-static step: energy, gradient and second derivative over all unknowns.
 *
 * <p>Unknowns, in order: the hand's coordinates, the turns of spools, the object's twist (3 shifts, 3 turns, in the
 * object's axes). State: coordinates q, object pose (origin p in the world, rotation R row-major, object to world). A
 * twist (d, w) is applied as p <- p + R d, R <- R exp([w]x). The object's frame is its shape's frame.
 *
 * <p>Second derivative of a body's contacts by coordinates i, j of its chain: z_i^T G z_j plus the terms of the turning
 * axes (docs/method.md). Workspace of one thread.
 */
final class StepSystem {
    /** Length that makes joint angles comparable with shifts [m/rad]. */
    static final double JOINT_LENGTH = 0.05;
    /** Length that makes turns of the object comparable with shifts [m/rad]. */
    static final double TURN_LENGTH = 0.03;
    /** A falling object is held back as if it fell at this speed [m/s]: sets the damping c = m g / speed. */
    private static final double FALL_SPEED = 1;

    static final double GRAVITY = 9.80665;

    final int joints;
    final int spools;
    final int size;
    final double[] scale;
    final double[] gradient;
    final double[] hessian;
    final double[] skew;
    final Rig rig;
    final PadContact pads;
    final TableContact table;
    final JointForces springs;
    final Kinematics kinematics;

    final double[] q;
    final double[] qStart;
    final double[] p = new double[3];
    final double[] pStart = new double[3];
    final double[] r = {1, 0, 0, 0, 1, 0, 0, 0, 1};
    final double[] rStart = r.clone();

    /** Poses of all bodies in the world and in the object's frame. */
    final double[] worldRotation;

    final double[] worldPosition;
    final double[] objectRotation;
    final double[] objectPosition;

    double tableHeight;
    /** Off only in tests of a hand alone or of an object in mid-air. */
    boolean tableThere = true;

    boolean objectFixed;
    boolean turnLocked;
    double mass;
    final double[] centreOfMass = new double[3];
    /** Force on the object at its centre of mass besides its weight [N], world. */
    final double[] push = new double[3];

    double viscosity = 1;
    double stepTime = 1e-2;
    boolean slipping;
    private final int bodies;
    private final int[] bodyFrame;
    private final boolean[] slides;
    private final double[] axisO;
    private final double[] originO;
    private final double[] twist;
    private final Block block = new Block();
    private final double[] gz = new double[6];
    private final double[] w9 = new double[9];
    private final double[] jacobian;
    private final boolean pairSkew;
    private boolean pairWanted;

    StepSystem(Rig rig, Shape shape) {
        this.rig = rig;
        HandTree tree = rig.tree();
        joints = tree.size();
        spools = rig.drive().spools();
        size = joints + spools + 6;
        bodies = tree.bodies().size();
        kinematics = new Kinematics(tree);
        springs = new JointForces(tree);
        pads = new PadContact(rig.points(), shape);
        table = new TableContact(shape.support());
        scale = new double[size];
        slides = new boolean[joints];
        for (int j = 0; j < joints; j++) {
            slides[j] = tree.coordinates().get(j).slides();
            scale[j] = slides[j] ? 1 : JOINT_LENGTH;
        }
        Arrays.fill(scale, joints, joints + spools + 3, 1);
        Arrays.fill(scale, joints + spools + 3, size, TURN_LENGTH);
        bodyFrame = tree.bodies().stream()
                .mapToInt(b -> b.frame() < 0 ? joints : b.frame())
                .toArray();
        q = rig.open().clone();
        qStart = q.clone();
        gradient = new double[size];
        hessian = new double[size * size];
        skew = new double[size * size];
        worldRotation = new double[9 * bodies];
        worldPosition = new double[3 * bodies];
        objectRotation = new double[9 * bodies];
        objectPosition = new double[3 * bodies];
        axisO = new double[3 * joints];
        originO = new double[3 * joints];
        twist = new double[6 * joints];
        jacobian = new double[3 * joints];
        pairSkew = true;
    }

    int objectIndex() {
        return joints + spools;
    }

    /** Damping of the object's shifts [N s/m]. */
    double objectDamping() {
        return viscosity * mass * GRAVITY / FALL_SPEED;
    }

    // ------------------------------------------------------------------ poses

    /** Frames of the hand, bodies in the world and in the object's frame. */
    void updatePoses() {
        kinematics.update(q);
        double[] fr = kinematics.rotation();
        double[] fp = kinematics.position();
        for (int b = 0; b < bodies; b++) {
            int f9 = 9 * bodyFrame[b];
            int f3 = 3 * bodyFrame[b];
            int b9 = 9 * b;
            int b3 = 3 * b;
            System.arraycopy(fr, f9, worldRotation, b9, 9);
            System.arraycopy(fp, f3, worldPosition, b3, 3);
            double x = fp[f3] - p[0];
            double y = fp[f3 + 1] - p[1];
            double z = fp[f3 + 2] - p[2];
            for (int i = 0; i < 3; i++) {
                double ri = r[i];
                double si = r[3 + i];
                double ti = r[6 + i];
                objectRotation[b9 + 3 * i] = ri * fr[f9] + si * fr[f9 + 3] + ti * fr[f9 + 6];
                objectRotation[b9 + 3 * i + 1] = ri * fr[f9 + 1] + si * fr[f9 + 4] + ti * fr[f9 + 7];
                objectRotation[b9 + 3 * i + 2] = ri * fr[f9 + 2] + si * fr[f9 + 5] + ti * fr[f9 + 8];
                objectPosition[b3 + i] = ri * x + si * y + ti * z;
            }
        }
    }

    /** Axes, origins and twists z_j = [o x a; a] (turns) or [a; 0] (slides) in the object's frame. */
    private void updateTwists() {
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

    // ------------------------------------------------------------------ evaluation

    /** Energy alone with friction limits frozen: the measure of a line search. */
    double energy() {
        updatePoses();
        double over = viscosity / stepTime;
        double e = springs.accumulate(q, qStart, over, null, null, size);
        e += rig.drive().accumulate(q, qStart, over, joints, null, null, null, size);
        if (!objectFixed) {
            e += object(false, false);
        }
        for (int b = 0; b < bodies; b++) {
            e += pads.energy(b, objectRotation, objectPosition, false);
        }
        if (tableThere) {
            e += table.accumulate(r, p, tableHeight, false, false, null);
        }
        e += rig.links().accumulate(worldRotation, worldPosition, tableThere ? tableHeight : -1e3, false, false, null);
        return e;
    }

    /**
     * Energy, gradient and, if wanted, second derivative (symmetric part in {@link #hessian}, the rest in
     * {@link #skew}), friction limits taken from the present normal forces.
     */
    double evaluate(boolean wantHessian) {
        updatePoses();
        updateTwists();
        slipping = false;
        Arrays.fill(gradient, 0);
        if (wantHessian) {
            Arrays.fill(hessian, 0);
            Arrays.fill(skew, 0);
        }
        double[] h = wantHessian ? hessian : null;
        double over = viscosity / stepTime;
        double e = springs.accumulate(q, qStart, over, gradient, h, size);
        e += rig.drive().accumulate(q, qStart, over, joints, gradient, h, wantHessian ? skew : null, size);
        slipping |= rig.drive().hasFriction();
        if (!objectFixed) {
            e += object(true, wantHessian);
        }
        for (int b = 0; b < bodies; b++) {
            e += pads.accumulate(b, objectRotation, objectPosition, true, wantHessian, block);
            if (block.active) {
                addBody(bodyFrame[b], wantHessian);
            }
        }
        if (tableThere && !objectFixed) {
            e += table.accumulate(r, p, tableHeight, true, wantHessian, block);
            if (block.active) {
                addWorldLoad(wantHessian);
            }
        }
        pairWanted = wantHessian;
        e += rig.links()
                .accumulate(
                        worldRotation,
                        worldPosition,
                        tableThere ? tableHeight : -1e3,
                        true,
                        wantHessian,
                        this::addPair);
        if (objectFixed) {
            pin(objectIndex());
        } else if (turnLocked) {
            pin(objectIndex() + 3);
        }
        return e;
    }

    /** Takes the unknowns from {@code first} on out of the system. */
    private void pin(int first) {
        for (int i = first; i < size; i++) {
            gradient[i] = 0;
            for (int k = 0; k < size; k++) {
                hessian[i * size + k] = 0;
                hessian[k * size + i] = 0;
                skew[i * size + k] = 0;
                skew[k * size + i] = 0;
            }
            hessian[i * size + i] = scale[i] * scale[i];
        }
    }

    /** Weight, push and damping of the object. */
    private double object(boolean wantGradient, boolean wantHessian) {
        double c = objectDamping() / stepTime;
        double ct = c * TURN_LENGTH * TURN_LENGTH;
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
            return energy;
        }
        int o = objectIndex();
        for (int i = 0; i < 3; i++) {
            gradient[o + i] += c * (r[i] * dx + r[3 + i] * dy + r[6 + i] * dz);
        }
        // Q = R0^T R, damping moment from its skew part
        double[] s = w9;
        for (int i = 0; i < 3; i++) {
            for (int k = 0; k < 3; k++) {
                s[3 * i + k] = rStart[i] * r[k] + rStart[3 + i] * r[3 + k] + rStart[6 + i] * r[6 + k];
            }
        }
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
        // weight as a world-fixed load -f at the centre of mass
        double gx = -(r[0] * fx + r[3] * fy + r[6] * fz);
        double gy = -(r[1] * fx + r[4] * fy + r[7] * fz);
        double gzz = -(r[2] * fx + r[5] * fy + r[8] * fz);
        gradient[o] += gx;
        gradient[o + 1] += gy;
        gradient[o + 2] += gzz;
        gradient[o + 3] += my * gzz - mz * gy;
        gradient[o + 4] += mz * gx - mx * gzz;
        gradient[o + 5] += mx * gy - my * gx;
        if (wantHessian) {
            double dot = mx * gx + my * gy + mz * gzz;
            int t = o + 3;
            hessian[t * size + t] += mx * gx - dot;
            hessian[(t + 1) * size + t + 1] += my * gy - dot;
            hessian[(t + 2) * size + t + 2] += mz * gzz - dot;
            addEven(t, t + 1, 0.5 * (mx * gy + my * gx));
            addEven(t, t + 2, 0.5 * (mx * gzz + mz * gx));
            addEven(t + 1, t + 2, 0.5 * (my * gzz + mz * gy));
        }
        return energy;
    }

    private void addEven(int i, int k, double v) {
        hessian[i * size + k] += v;
        hessian[k * size + i] += v;
    }

    // ------------------------------------------------------------------ assembly

    /** Spreads a body's block over its chain and the object: coordinates get z_j . [F; M], the object its opposite. */
    private void addBody(int frame, boolean wantHessian) {
        int[] chain = rig.tree().chain(frame);
        int o = objectIndex();
        double[] v = block.v;
        double fx = block.fx;
        double fy = block.fy;
        double fz = block.fz;
        double mx = v[5] - v[7];
        double my = v[6] - v[2];
        double mz = v[1] - v[3];
        for (int j : chain) {
            int z = 6 * j;
            gradient[j] += twist[z] * fx
                    + twist[z + 1] * fy
                    + twist[z + 2] * fz
                    + twist[z + 3] * mx
                    + twist[z + 4] * my
                    + twist[z + 5] * mz;
        }
        gradient[o] -= fx;
        gradient[o + 1] -= fy;
        gradient[o + 2] -= fz;
        gradient[o + 3] -= mx;
        gradient[o + 4] -= my;
        gradient[o + 5] -= mz;
        if (!wantHessian) {
            return;
        }
        mirrorG();
        addObjectG();
        for (int b = 0; b < chain.length; b++) {
            int j = chain[b];
            timesTwist(block.g, j);
            for (int a = 0; a <= b; a++) {
                addEvenOnce(chain[a], j, twistDot(chain[a]));
            }
            for (int i = 0; i < 6; i++) {
                addEven(j, o + i, -gz[i]);
            }
            addTurningTerms(chain, b, fx, fy, fz);
        }
        addObjectTurnTerms();
        // d2E / dw dp = -[F]x
        addEven(o + 3, o + 1, fz);
        addEven(o + 3, o + 2, -fy);
        addEven(o + 4, o, -fz);
        addEven(o + 4, o + 2, fx);
        addEven(o + 5, o, fy);
        addEven(o + 5, o + 1, -fx);
        if (block.slipping) {
            addBodySlip(chain);
        }
    }

    private void mirrorG() {
        double[] g = block.g;
        for (int i = 1; i < 6; i++) {
            for (int k = 0; k < i; k++) {
                g[6 * i + k] = g[6 * k + i];
            }
        }
    }

    private void addObjectG() {
        int o = objectIndex();
        for (int i = 0; i < 6; i++) {
            int row = (o + i) * size + o;
            for (int k = 0; k < 6; k++) {
                hessian[row + k] += block.g[6 * i + k];
            }
        }
    }

    private void addEvenOnce(int i, int j, double value) {
        hessian[i * size + j] += value;
        if (i != j) {
            hessian[j * size + i] += value;
        }
    }

    /** gz = M z_j. */
    private void timesTwist(double[] m, int j) {
        int z = 6 * j;
        for (int i = 0; i < 6; i++) {
            int row = 6 * i;
            gz[i] = m[row] * twist[z]
                    + m[row + 1] * twist[z + 1]
                    + m[row + 2] * twist[z + 2]
                    + m[row + 3] * twist[z + 3]
                    + m[row + 4] * twist[z + 4]
                    + m[row + 5] * twist[z + 5];
        }
    }

    private double twistDot(int i) {
        int z = 6 * i;
        return gz[0] * twist[z]
                + gz[1] * twist[z + 1]
                + gz[2] * twist[z + 2]
                + gz[3] * twist[z + 3]
                + gz[4] * twist[z + 4]
                + gz[5] * twist[z + 5];
    }

    /** Second-order terms of coordinate j = chain[b] with the turning coordinates before it and with the object's turn. */
    private void addTurningTerms(int[] chain, int b, double fx, double fy, double fz) {
        int j = chain[b];
        int j3 = 3 * j;
        int o = objectIndex();
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
            double ox = originO[j3];
            double oy = originO[j3 + 1];
            double oz = originO[j3 + 2];
            double[] v = block.v;
            double w00 = v[0] - ox * fx;
            double w11 = v[4] - oy * fy;
            double w22 = v[8] - oz * fz;
            double trace = w00 + w11 + w22;
            ux = w00 * ax + (v[1] - ox * fy) * ay + (v[2] - ox * fz) * az - ax * trace;
            uy = (v[3] - oy * fx) * ax + w11 * ay + (v[5] - oy * fz) * az - ay * trace;
            uz = (v[6] - oz * fx) * ax + (v[7] - oz * fy) * ay + w22 * az - az * trace;
        }
        for (int a = 0; a <= b; a++) {
            int i = chain[a];
            if (slides[i]) {
                continue;
            }
            int i3 = 3 * i;
            if (slides[j] && i == j) {
                continue;
            }
            addEvenOnce(i, j, axisO[i3] * ux + axisO[i3 + 1] * uy + axisO[i3 + 2] * uz);
        }
        addEven(j, o + 3, -ux);
        addEven(j, o + 4, -uy);
        addEven(j, o + 5, -uz);
    }

    /** d2E / dw dw = sym V - tr V I. */
    private void addObjectTurnTerms() {
        double[] v = block.v;
        double trace = v[0] + v[4] + v[8];
        int t = objectIndex() + 3;
        for (int i = 0; i < 3; i++) {
            for (int k = 0; k < 3; k++) {
                hessian[(t + i) * size + t + k] += 0.5 * (v[3 * i + k] + v[3 * k + i]) - (i == k ? trace : 0);
            }
        }
    }

    private void addBodySlip(int[] chain) {
        slipping = true;
        double[] c = block.c;
        int o = objectIndex();
        addObjectSkew(c);
        for (int j : chain) {
            timesTwist(c, j);
            for (int i : chain) {
                skew[i * size + j] += twistDot(i);
            }
            int z = 6 * j;
            for (int i = 0; i < 6; i++) {
                skew[(o + i) * size + j] -= gz[i];
                double sum = 0;
                for (int k = 0; k < 6; k++) {
                    sum += c[6 * k + i] * twist[z + k];
                }
                skew[j * size + o + i] -= sum;
            }
        }
    }

    private void addObjectSkew(double[] c) {
        int o = objectIndex();
        for (int i = 0; i < 6; i++) {
            for (int k = 0; k < 6; k++) {
                skew[(o + i) * size + o + k] += c[6 * i + k];
            }
        }
    }

    /** The table's block: a load fixed in the world on points of the object. */
    private void addWorldLoad(boolean wantHessian) {
        int o = objectIndex();
        double[] v = block.v;
        gradient[o] += block.fx;
        gradient[o + 1] += block.fy;
        gradient[o + 2] += block.fz;
        gradient[o + 3] += v[5] - v[7];
        gradient[o + 4] += v[6] - v[2];
        gradient[o + 5] += v[1] - v[3];
        if (!wantHessian) {
            return;
        }
        mirrorG();
        addObjectG();
        addObjectTurnTerms();
        if (block.slipping) {
            slipping = true;
            addObjectSkew(block.c);
        }
    }

    /** A contact of a finger with the table or another finger, in the world frame. */
    private void addPair(PointPair pair, boolean wantHessian) {
        addPoint(pair, pair.bodyA, pair.a, 1, wantHessian);
        if (pair.bodyB >= 0) {
            addPoint(pair, pair.bodyB, pair.b, -1, wantHessian);
            if (wantHessian) {
                addCross(pair);
            }
        }
        slipping |= pair.slipping && pairSkew && pairWanted;
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

    private void addPoint(PointPair pair, int body, double[] at, int sign, boolean wantHessian) {
        int[] chain = rig.tree().chain(bodyFrame[body]);
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
    private void addCross(PointPair pair) {
        int[] chainA = rig.tree().chain(bodyFrame[pair.bodyA]);
        int[] chainB = rig.tree().chain(bodyFrame[pair.bodyB]);
        pointJacobian(chainA, pair.a);
        double[] first = crossScratch;
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

    private final double[] crossScratch = new double[3 * 64];

    // ------------------------------------------------------------------ residuals and steps

    /** Largest force out of balance, angles made lengths [N]. */
    double residual() {
        double worst = 0;
        for (int i = 0; i < size; i++) {
            worst = Math.max(worst, Math.abs(gradient[i]) / scale[i]);
        }
        return worst;
    }

    /** Puts the state back to the start of the step. */
    void restore() {
        System.arraycopy(qStart, 0, q, 0, joints);
        System.arraycopy(pStart, 0, p, 0, 3);
        System.arraycopy(rStart, 0, r, 0, 9);
        rig.drive().restore();
    }

    /** Ends the step at the present state: memories of friction, clearances, start values. */
    void commit() {
        updatePoses();
        System.arraycopy(q, 0, qStart, 0, joints);
        System.arraycopy(p, 0, pStart, 0, 3);
        System.arraycopy(r, 0, rStart, 0, 9);
        pads.commit(objectRotation, objectPosition);
        if (tableThere) {
            table.commit(r, p, tableHeight);
        }
        rig.links().commit(worldRotation, worldPosition, tableThere ? tableHeight : -1e3);
        rig.drive().commit(q);
    }

    /** Shift and turn of the object over the step as one length [m]. */
    double objectMotion() {
        double dx = p[0] - pStart[0];
        double dy = p[1] - pStart[1];
        double dz = p[2] - pStart[2];
        double trace = 0;
        for (int i = 0; i < 9; i++) {
            trace += rStart[i] * r[i];
        }
        double turn2 = Math.max(0, 3 - trace);
        return Math.sqrt(dx * dx + dy * dy + dz * dz + turn2 * TURN_LENGTH * TURN_LENGTH);
    }

    /** How much too far the step went; needs {@link #updatePoses} at the present state. */
    double stepRatio(double slide, double sink) {
        double worst = objectFixed ? 0 : objectMotion() / (2 * slide);
        for (int b = 0; b < bodies; b++) {
            worst = Math.max(worst, pads.stepRatio(b, objectRotation, objectPosition, slide, sink));
        }
        return Math.max(worst, rig.links().stepRatio(worldRotation, worldPosition, slide));
    }

    /** Force on the object out of balance with the step's damping taken off [N]; needs a gradient at the present state. */
    double objectResidual() {
        if (objectFixed) {
            return 0;
        }
        int o = objectIndex();
        double c = objectDamping() / stepTime;
        double sum = 0;
        for (int i = 0; i < 3; i++) {
            double damping =
                    c * (r[i] * (p[0] - pStart[0]) + r[3 + i] * (p[1] - pStart[1]) + r[6 + i] * (p[2] - pStart[2]));
            double f = gradient[o + i] - damping;
            sum += f * f;
        }
        return Math.sqrt(sum);
    }

    /** Moment on the object out of balance, damping taken off [N m]. */
    double objectMomentResidual() {
        if (objectFixed || turnLocked) {
            return 0;
        }
        int o = objectIndex();
        double ct = objectDamping() / stepTime * TURN_LENGTH * TURN_LENGTH;
        double[] s = w9;
        for (int i = 0; i < 3; i++) {
            for (int k = 0; k < 3; k++) {
                s[3 * i + k] = rStart[i] * r[k] + rStart[3 + i] * r[3 + k] + rStart[6 + i] * r[6 + k];
            }
        }
        double x = gradient[o + 3] - 0.5 * ct * (s[7] - s[5]);
        double y = gradient[o + 4] - 0.5 * ct * (s[2] - s[6]);
        double z = gradient[o + 5] - 0.5 * ct * (s[3] - s[1]);
        return Math.sqrt(x * x + y * y + z * z);
    }

    /** Moment out of balance at a coordinate, damping taken off [N m or N]. */
    double jointResidual(int j) {
        return gradient[j] - springs.damping(j, viscosity / stepTime) * (q[j] - qStart[j]);
    }

    /** Largest moment out of balance at any turning coordinate, damping taken off [N m]. */
    double worstJointResidual() {
        double worst = 0;
        for (int j = 0; j < joints; j++) {
            if (!slides[j]) {
                worst = Math.max(worst, Math.abs(jointResidual(j)));
            }
        }
        return worst;
    }
}
