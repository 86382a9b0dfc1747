package gripwright.closing;

import gripwright.contact.Block;
import gripwright.contact.PadContact;
import gripwright.contact.TableContact;
import gripwright.mechanics.HandTree;
import gripwright.mechanics.JointForces;
import gripwright.mechanics.Kinematics;
import gripwright.shape.Shape;
import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * The equations of one quasi-static step: energy, gradient and second derivative over all unknowns.
 *
 * <p>Unknowns, in order: the hand's coordinates, the turns of spools, the object's twist (3 shifts, 3 turns, in the
 * object's axes). State: coordinates q, object pose (origin p in the world, rotation R row-major, object to world). A
 * twist (d, w) is applied as p <- p + R d, R <- R exp([w]x). The object's frame is its shape's frame.
 *
 * <p>Workspace of one thread.
 */
final class StepSystem {
    /** Length that makes joint angles comparable with shifts [m/rad]. */
    static final double JOINT_LENGTH = 0.05;
    /** Length that makes turns of the object comparable with shifts [m/rad]. */
    static final double TURN_LENGTH = 0.03;

    final int joints;
    final int spools;
    final int size;
    final double[] scale;
    final double[] gradient;
    final double[] hessian;
    final double[] skew;
    final StepMatrix matrix;
    private final Assembly assembly;
    private final PairSpread pairs;
    final FreeObject object;
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

    /** The push of a test between the palm and a place of the object; null = none. */
    @Nullable
    PressSpring press;

    double viscosity = 1;
    double stepTime = 1e-2;
    private final int bodies;
    private final int[] bodyFrame;
    private final Block block = new Block();
    private int posesOf = -1;
    private final double[] posesP = new double[3];
    private final double[] posesR = new double[9];

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
        for (int j = 0; j < joints; j++) {
            scale[j] = tree.coordinates().get(j).slides() ? 1 : JOINT_LENGTH;
        }
        Arrays.fill(scale, joints, joints + spools + 3, 1);
        Arrays.fill(scale, joints + spools + 3, size, TURN_LENGTH);
        bodyFrame = tree.bodies().stream()
                .mapToInt(b -> b.frame() < 0 ? joints : b.frame())
                .toArray();
        q = rig.open().clone();
        qStart = q.clone();
        matrix = new StepMatrix(joints + spools);
        gradient = matrix.gradient;
        hessian = matrix.hessian;
        skew = matrix.skew;
        assembly = new Assembly(tree, kinematics, matrix);
        pairs = new PairSpread(tree, kinematics, matrix, bodyFrame);
        object = new FreeObject(matrix);
        worldRotation = new double[9 * bodies];
        worldPosition = new double[3 * bodies];
        objectRotation = new double[9 * bodies];
        objectPosition = new double[3 * bodies];
    }

    int objectIndex() {
        return joints + spools;
    }

    private double dampingOverStep() {
        return object.damping(viscosity) / stepTime;
    }

    /** Height of the table for contact; far below if there is none. */
    private double tableOrNone() {
        return tableThere ? tableHeight : -1e3;
    }

    // ------------------------------------------------------------------ poses

    /** Frames of the hand, bodies in the world and in the object's frame. */
    void updatePoses() {
        kinematics.update(q);
        if (posesGood()) {
            return;
        }
        posesOf = kinematics.version();
        System.arraycopy(p, 0, posesP, 0, 3);
        System.arraycopy(r, 0, posesR, 0, 9);
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

    /** A state is often looked at more than once: by the line search, the evaluation, the step test and the commit. */
    private boolean posesGood() {
        return posesOf == kinematics.version() && Arrays.equals(p, posesP) && Arrays.equals(r, posesR);
    }

    /** Pose of a body in the world at the last update. */
    gripwright.math.Pose bodyPose(int body) {
        return kinematics.pose(bodyFrame[body]);
    }

    // ------------------------------------------------------------------ evaluation

    /** Energy alone with friction limits frozen: the measure of a line search. */
    double energy() {
        updatePoses();
        double over = viscosity / stepTime;
        double e = springs.accumulate(q, qStart, over, null, null, size);
        e += rig.drive().accumulate(q, qStart, over, null, null, null, size);
        if (!objectFixed) {
            e += object.accumulate(p, r, pStart, rStart, dampingOverStep(), false, false);
        }
        for (int b = 0; b < bodies; b++) {
            e += pads.energy(b, objectRotation, objectPosition, false);
        }
        if (tableThere) {
            e += table.accumulate(r, p, tableHeight, false, false, null);
        }
        e += rig.links().accumulate(worldRotation, worldPosition, tableOrNone(), false, false, null);
        return press == null ? e : e + press.energy(objectRotation, objectPosition);
    }

    /**
     * Energy, gradient and, if wanted, second derivative (symmetric part in {@link #hessian}, the rest in {@link #skew}), friction limits taken from the present normal forces.
     */
    double evaluate(boolean wantHessian) {
        updatePoses();
        assembly.updateTwists(p, r);
        assembly.clear();
        matrix.clear(wantHessian);
        double[] h = wantHessian ? hessian : null;
        double over = viscosity / stepTime;
        double e = springs.accumulate(q, qStart, over, gradient, h, size);
        e += rig.drive().accumulate(q, qStart, over, gradient, h, wantHessian ? skew : null, size);
        matrix.slipping |= rig.drive().hasFriction();
        if (!objectFixed) {
            e += object.accumulate(p, r, pStart, rStart, dampingOverStep(), true, wantHessian);
        }
        for (int b = 0; b < bodies; b++) {
            Block ofBody = assembly.block(bodyFrame[b]);
            e += pads.accumulate(b, objectRotation, objectPosition, true, wantHessian, ofBody);
        }
        if (press != null) {
            e += press.accumulate(objectRotation, objectPosition, wantHessian);
            assembly.block(bodyFrame[0]).add(press.block, wantHessian);
        }
        assembly.spreadBodies(wantHessian);
        if (tableThere && !objectFixed) {
            e += table.accumulate(r, p, tableHeight, true, wantHessian, block);
            if (block.active) {
                assembly.addWorldLoad(block, wantHessian);
            }
        }
        e += rig.links().accumulate(worldRotation, worldPosition, tableOrNone(), true, wantHessian, pairs);
        if (objectFixed) {
            matrix.pin(objectIndex(), 1);
        } else if (turnLocked) {
            matrix.pin(objectIndex() + 3, TURN_LENGTH);
        }
        return e;
    }

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
        rig.links().commit(worldRotation, worldPosition, tableOrNone());
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
        return object.residual(p, r, pStart, dampingOverStep());
    }

    /** Moment on the object out of balance, damping taken off [N m]. */
    double objectMomentResidual() {
        if (objectFixed || turnLocked) {
            return 0;
        }
        return object.momentResidual(r, rStart, dampingOverStep());
    }

    /** Moment out of balance at a coordinate, damping taken off [N m or N]. */
    double jointResidual(int j) {
        return gradient[j] - springs.damping(j, viscosity / stepTime) * (q[j] - qStart[j]);
    }

    /** Largest force out of balance at a sliding coordinate or a spool, damping taken off [N]. */
    double worstSlideResidual() {
        double worst = 0;
        for (int j = 0; j < joints; j++) {
            if (rig.tree().coordinates().get(j).slides()) {
                worst = Math.max(worst, Math.abs(jointResidual(j)));
            }
        }
        for (int k = 0; k < spools; k++) {
            double damping = rig.drive().spoolDamping(k, viscosity / stepTime);
            worst = Math.max(worst, Math.abs(gradient[joints + k] - damping));
        }
        return worst;
    }

    /** Largest moment out of balance at any turning coordinate, damping taken off [N m]. */
    double worstJointResidual() {
        double worst = 0;
        for (int j = 0; j < joints; j++) {
            if (!rig.tree().coordinates().get(j).slides()) {
                worst = Math.max(worst, Math.abs(jointResidual(j)));
            }
        }
        return worst;
    }
}
