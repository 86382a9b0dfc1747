package gripwright.drive;

import gripwright.model.Finger;
import gripwright.model.Joint;
import gripwright.model.Motor;
import java.util.Arrays;
import java.util.List;

/**
 * One finger's tendon on its way over the joints: its travel, and what sheath and guides leave of its tension.
 *
 * <p>Torque on joint j: T L_j r_j, with L_j = exp(-sum of l_k over the guides k up to j) ({@link Capstan}). Each loss l_k
 * moves with the tendon's slide through guide k from its remembered value, by mu phi_k over {@link #PRESLIDE}, and stays
 * within -mu phi_k .. +mu phi_k: full loss when closing, full gain when paying out, anything between when the tendon
 * rests. The presliding is common practice, no source. Bend phi at a guide: the sheath's wrap plus the first joint's angle
 * from straight out, then each joint's angle. Workspace.
 */
final class TendonRoute {
    /** Slide over which a guide's friction builds up fully [m]. */
    static final double PRESLIDE = 2e-4;

    /** Flexion coordinates of the finger, proximal first, with moment arm [m] and angle at which the tendon is taut [rad]. */
    final int[] coordinate;

    final double[] arm;
    private final double[] taut;
    private final double friction;
    private final double wrap;

    /** Per guide: remembered loss, limit mu phi, present loss, whether it lies within the limit, and L up to it [-]. */
    private final double[] lossStart;

    private final double[] lossLimit;
    private final double[] loss;
    private final boolean[] lossFree;
    private final double[] left;
    /** Torque that friction takes off each joint, as at the last evaluation with derivatives [N m]. */
    private final double[] taken;

    /** Length drawn in since the tendon was just taut [m]. */
    private double travel;
    /** Before all guides [N]. */
    private double tension;

    /**
     * @param coordinate flexion coordinates, proximal first
     * @param reference value of every coordinate at which the tendons are just taut [rad]; shape of all coordinates
     */
    TendonRoute(Finger finger, List<Motor> motors, int[] coordinate, double[] reference) {
        this.coordinate = coordinate;
        int joints = finger.joints().size();
        arm = finger.joints().stream().mapToDouble(Joint::momentArm).toArray();
        taut = Arrays.stream(coordinate).mapToDouble(j -> reference[j]).toArray();
        double mu = 0;
        double sheath = 0;
        for (Motor motor : motors) {
            if (motor.pulls().fingers().contains(finger.name())) {
                mu = motor.sheathFriction();
                sheath = motor.wrap().getOrDefault(finger.name(), 0.0);
            }
        }
        friction = mu;
        wrap = sheath;
        lossStart = new double[joints];
        lossLimit = new double[joints];
        loss = new double[joints];
        lossFree = new boolean[joints];
        left = new double[joints];
        taken = new double[joints];
    }

    /** Friction forgotten. */
    void reset() {
        Arrays.fill(lossStart, 0);
        Arrays.fill(loss, 0);
        Arrays.fill(left, 1);
        Arrays.fill(taken, 0);
    }

    boolean hasFriction() {
        return friction != 0;
    }

    double travel() {
        return travel;
    }

    double tension() {
        return tension;
    }

    /** L at a joint: share of the tension that acts there [-]. */
    double left(int joint) {
        return left[joint];
    }

    /** Slackens the tendon and measures its travel at the coordinates q. */
    void measure(double[] q) {
        double sum = 0;
        for (int j = 0; j < arm.length; j++) {
            sum += arm[j] * (q[coordinate[j]] - taut[j]);
        }
        travel = sum;
        tension = 0;
    }

    void pull(double newtons) {
        tension = newtons;
    }

    /** Losses at the guides after the motion from q0 to q. */
    void slide(double[] q, double[] q0) {
        if (friction == 0) {
            Arrays.fill(left, 1);
            return;
        }
        // slide through guide k: what the joints from k on have let pass
        double slide = 0;
        for (int k = arm.length - 1; k >= 0; k--) {
            int c = coordinate[k];
            slide += arm[k] * (q[c] - q0[c]);
            double most = lossLimit[k];
            double l = lossStart[k] + most * slide / PRESLIDE;
            lossFree[k] = l < most && l > -most;
            loss[k] = l > most ? most : l < -most ? -most : l;
        }
        double sum = 0;
        for (int k = 0; k < arm.length; k++) {
            sum += loss[k];
            left[k] = Capstan.share(sum);
        }
    }

    /** Notes what friction takes off the torques at the present tension and losses. */
    void noteTaken() {
        for (int j = 0; j < arm.length; j++) {
            taken[j] = tension * arm[j] * (1 - left[j]);
        }
    }

    /** Energy plus the work of the torques noted, held constant [N m]; only its change along a small step means something. */
    double plusTaken(double energy, double[] q) {
        double sum = energy;
        for (int j = 0; j < arm.length; j++) {
            sum += taken[j] * q[coordinate[j]];
        }
        return sum;
    }

    void addForces(double[] gradient) {
        for (int j = 0; j < arm.length; j++) {
            gradient[coordinate[j]] -= tension * left[j] * arm[j];
        }
    }

    /** Presliding as a stiffness: T L_j r_j r_i sum over free guides up to both joints of mu phi / preslide. */
    void addStiffness(double[] hessian, double[] skew, int stride) {
        for (int j = 0; j < arm.length; j++) {
            double sum = 0;
            int row = coordinate[j] * stride;
            for (int i = 0; i < arm.length; i++) {
                if (i <= j && lossFree[i]) {
                    sum += lossLimit[i] / PRESLIDE;
                }
                double v = tension * arm[j] * arm[i] * sum;
                double even = v * Math.sqrt(left[i] * left[j]);
                hessian[row + coordinate[i]] += even;
                skew[row + coordinate[i]] += v * left[j] - even;
            }
        }
    }

    /** Ends a step: remembers the losses, takes the bends at the new angles. */
    void commit(double[] q) {
        if (friction == 0) {
            return;
        }
        for (int j = 0; j < arm.length; j++) {
            double angle = q[coordinate[j]];
            double bend = j == 0 ? wrap + Math.abs(angle - Math.PI / 2) : Math.abs(angle);
            double most = friction * bend;
            lossLimit[j] = most;
            lossStart[j] = Math.max(-most, Math.min(most, loss[j]));
        }
    }

    /** Everything that is remembered, for a snapshot. */
    List<double[]> numbers() {
        return List.of(lossStart, lossLimit, loss, left, taken);
    }
}
