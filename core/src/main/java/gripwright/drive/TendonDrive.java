package gripwright.drive;

import gripwright.math.Memory;
import gripwright.model.Finger;
import gripwright.model.Motor;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Tendons, differentials and their friction as part of one step's equations. Workspace of one thread.
 *
 * <p>Tension in a spring: T = K stretch, never below 0, and not above the motor's greatest tension. Torque on joint j of
 * a finger: ratio T L_j r_j, where L_j is what sheath and guides leave of the tension up to that joint. L_j = exp(-sum
 * of l_k over the guides up to j); each l_k moves with the tendon's slide through guide k from its remembered value,
 * by mu phi_k over {@link #PRESLIDE}, and stays within -mu phi_k .. +mu phi_k: full capstan loss when closing, full gain
 * when paying out, anything between when the tendon rests. Source: {@link Capstan}; the presliding is common practice,
 * no source. Bend at a guide: the sheath's wrap plus the first joint's angle from straight out, then each joint's angle.
 */
public final class TendonDrive {
    /** Slide over which a guide's friction builds up fully [m]. */
    static final double PRESLIDE = 2e-4;

    /** Damping of a spool's own turn [N s/m]; only makes a slack spool's place unique. */
    private static final double SPOOL_DAMPING = 10;

    private final int springs;
    private final int spools;
    private final int motors;
    private final int[] motorOf;
    private final int[] spoolOf;
    private final double[] driverRatio;
    private final double[] stiffness;
    private final double[] cap;
    private final int[][] loadSpool;
    private final double[][] loadSpoolRatio;
    private final int[][] loadFinger;
    private final double[][] loadRatio;

    private final int fingers;
    /** Per finger: its flexion coordinates, proximal first, with moment arm [m] and reference angle [rad]. */
    private final int[][] coordinate;

    private final double[][] arm;
    private final double[][] reference;
    private final double[] sheathFriction;
    private final double[] wrap;
    private final boolean hasFriction;

    /** Per finger and guide: remembered loss, limit mu phi, present loss, L. */
    private final double[][] lossStart;

    private final double[][] lossLimit;
    private final double[][] loss;
    private final boolean[][] lossFree;
    private final double[][] left;
    private final double[] travel;
    private final double[] tension;
    private final double[] fingerTension;
    private final double[] frozenDeficit;

    private final double[] wound;
    private final double[] spool;
    private final double[] spoolStart;
    private boolean locked;
    private final boolean[] lockable;

    /**
     * @param pulled fingers of the hand
     * @param winches its motors
     * @param coordinates per finger its flexion coordinates, proximal first
     * @param reference value of every coordinate at which the tendons are just taut [rad]; shape of all coordinates
     * @param taking names of the fingers whose tendons are pulled
     */
    public TendonDrive(
            List<Finger> pulled, List<Motor> winches, List<int[]> coordinates, double[] reference, Set<String> taking) {
        TendonNet net = new TendonNet(pulled, winches, taking);
        springs = net.springs().size();
        spools = net.spools();
        motors = winches.size();
        motorOf = new int[springs];
        spoolOf = new int[springs];
        driverRatio = new double[springs];
        stiffness = new double[springs];
        cap = new double[springs];
        loadSpool = new int[springs][];
        loadSpoolRatio = new double[springs][];
        loadFinger = new int[springs][];
        loadRatio = new double[springs][];
        for (int i = 0; i < springs; i++) {
            TendonNet.Spring s = net.springs().get(i);
            motorOf[i] = s.motor();
            spoolOf[i] = s.spool();
            driverRatio[i] = s.ratio();
            stiffness[i] = s.stiffness();
            cap[i] = s.cap();
            List<TendonNet.Load> onSpools =
                    s.loads().stream().filter(l -> l.finger() < 0).toList();
            List<TendonNet.Load> onFingers =
                    s.loads().stream().filter(l -> l.finger() >= 0).toList();
            loadSpool[i] = onSpools.stream().mapToInt(TendonNet.Load::spool).toArray();
            loadSpoolRatio[i] =
                    onSpools.stream().mapToDouble(TendonNet.Load::ratio).toArray();
            loadFinger[i] = onFingers.stream().mapToInt(TendonNet.Load::finger).toArray();
            loadRatio[i] = onFingers.stream().mapToDouble(TendonNet.Load::ratio).toArray();
        }
        fingers = pulled.size();
        coordinate = coordinates.toArray(new int[0][]);
        arm = new double[fingers][];
        this.reference = new double[fingers][];
        sheathFriction = new double[fingers];
        wrap = new double[fingers];
        lossStart = new double[fingers][];
        lossLimit = new double[fingers][];
        loss = new double[fingers][];
        lossFree = new boolean[fingers][];
        left = new double[fingers][];
        for (int f = 0; f < fingers; f++) {
            Finger finger = pulled.get(f);
            int joints = finger.joints().size();
            arm[f] = finger.joints().stream().mapToDouble(j -> j.momentArm()).toArray();
            this.reference[f] =
                    Arrays.stream(coordinate[f]).mapToDouble(j -> reference[j]).toArray();
            lossStart[f] = new double[joints];
            lossLimit[f] = new double[joints];
            loss[f] = new double[joints];
            lossFree[f] = new boolean[joints];
            left[f] = new double[joints];
            for (Motor motor : winches) {
                if (motor.pulls().fingers().contains(finger.name())) {
                    sheathFriction[f] = motor.sheathFriction();
                    wrap[f] = motor.wrap().getOrDefault(finger.name(), 0.0);
                }
            }
        }
        hasFriction = Arrays.stream(sheathFriction).anyMatch(mu -> mu != 0);
        travel = new double[fingers];
        tension = new double[springs];
        fingerTension = new double[fingers];
        frozenDeficit = new double[reference.length];
        wound = new double[motors];
        spool = new double[spools];
        spoolStart = new double[spools];
        lockable = new boolean[motors];
        for (int m = 0; m < motors; m++) {
            lockable[m] = winches.get(m).whenOff() == Motor.WhenOff.LOCKED;
        }
    }

    /** Everything slack and unwound, friction forgotten. */
    public void reset(double[] q) {
        Arrays.fill(wound, 0);
        Arrays.fill(spool, 0);
        Arrays.fill(spoolStart, 0);
        Arrays.fill(frozenDeficit, 0);
        locked = false;
        for (int f = 0; f < fingers; f++) {
            Arrays.fill(lossStart[f], 0);
            Arrays.fill(loss[f], 0);
            Arrays.fill(left[f], 1);
        }
        commit(q);
    }

    public int motors() {
        return motors;
    }

    /** Number of extra unknowns: the turns of spools [m]. */
    public int spools() {
        return spools;
    }

    /** Length wound in by a motor [m]. */
    public double wound(int motor) {
        return wound[motor];
    }

    /** Winds to an absolute length [m]. */
    public void wind(int motor, double length) {
        wound[motor] = length;
    }

    /** Present turn of the spools [m], live: the unknowns. */
    public double[] spool() {
        return spool;
    }

    /** Tension at a motor's winch at the last evaluation [N]. */
    public double tension(int motor) {
        for (int i = 0; i < springs; i++) {
            if (motorOf[i] == motor) {
                return tension[i];
            }
        }
        return 0;
    }

    /** Greatest tension of a motor [N]. */
    public double greatest(int motor) {
        for (int i = 0; i < springs; i++) {
            if (motorOf[i] == motor) {
                return cap[i];
            }
        }
        return 0;
    }

    /** True if the motor pulls on any finger taking part. */
    public boolean pulls(int motor) {
        for (int i = 0; i < springs; i++) {
            if (motorOf[i] == motor) {
                return loadFinger[i].length + loadSpool[i].length > 0;
            }
        }
        return false;
    }

    /** Tension of the tendon at a joint after friction, at the last evaluation with derivatives [N]. */
    public double jointTension(int finger, int joint) {
        return fingerTension[finger] * left[finger][joint];
    }

    /**
     * Cuts the current: a lockable motor keeps its length from now on (and may carry any tension), another one its
     * greatest tension.
     */
    public void hold() {
        for (int i = 0; i < springs; i++) {
            int m = motorOf[i];
            if (m >= 0 && lockable[m]) {
                // at stall the winch has run past what the spring shows: take that back
                double stretch = wound[m] - pulledTravel(i);
                wound[m] -= Math.max(0, stretch - tension[i] / stiffness[i]);
            }
        }
        locked = true;
    }

    private double pulledTravel(int i) {
        double sum = 0;
        for (int k = 0; k < loadFinger[i].length; k++) {
            sum += loadRatio[i][k] * travel[loadFinger[i][k]];
        }
        for (int k = 0; k < loadSpool[i].length; k++) {
            sum += loadSpoolRatio[i][k] * spool[loadSpool[i][k]];
        }
        return sum;
    }

    /**
     * Adds energy, gradient, second derivative and its non-symmetric friction part.
     *
     * @param q coordinates, shape of all coordinates
     * @param q0 the same at the start of the step
     * @param overStep damping scale / step time [1/s]
     * @param firstSpool index of the first spool among the unknowns
     * @param gradient null = energy only, with friction frozen as at the last evaluation with derivatives
     * @param skew non-symmetric part, row length {@code stride}
     * @return energy [N m]; with friction only its change along a small step means something
     */
    public double accumulate(
            double[] q,
            double[] q0,
            double overStep,
            int firstSpool,
            double @Nullable [] gradient,
            double @Nullable [] hessian,
            double @Nullable [] skew,
            int stride) {
        for (int f = 0; f < fingers; f++) {
            double sum = 0;
            for (int j = 0; j < arm[f].length; j++) {
                sum += arm[f][j] * (q[coordinate[f][j]] - reference[f][j]);
            }
            travel[f] = sum;
            fingerTension[f] = 0;
            if (gradient != null) {
                losses(f, q, q0);
            }
        }
        double energy = 0;
        for (int k = 0; k < spools; k++) {
            double c = SPOOL_DAMPING * overStep;
            double move = spool[k] - spoolStart[k];
            energy += 0.5 * c * move * move;
            if (gradient != null) {
                gradient[firstSpool + k] += c * move;
            }
            if (hessian != null) {
                hessian[(firstSpool + k) * stride + firstSpool + k] += c;
            }
        }
        for (int i = 0; i < springs; i++) {
            energy += spring(i, firstSpool, gradient, hessian, skew, stride);
        }
        for (int f = 0; f < fingers; f++) {
            if (sheathFriction[f] == 0) {
                continue;
            }
            for (int j = 0; j < arm[f].length; j++) {
                int c = coordinate[f][j];
                if (gradient != null) {
                    frozenDeficit[c] = fingerTension[f] * arm[f][j] * (1 - left[f][j]);
                }
                energy += frozenDeficit[c] * q[c];
            }
        }
        return energy;
    }

    private void losses(int f, double[] q, double[] q0) {
        double[] a = arm[f];
        if (sheathFriction[f] == 0) {
            Arrays.fill(left[f], 1);
            return;
        }
        // slide through guide k: what the joints from k on have let pass
        double slide = 0;
        for (int k = a.length - 1; k >= 0; k--) {
            int c = coordinate[f][k];
            slide += a[k] * (q[c] - q0[c]);
            double most = lossLimit[f][k];
            double l = lossStart[f][k] + most * slide / PRESLIDE;
            lossFree[f][k] = l < most && l > -most;
            loss[f][k] = l > most ? most : l < -most ? -most : l;
        }
        double sum = 0;
        for (int k = 0; k < a.length; k++) {
            sum += loss[f][k];
            left[f][k] = Capstan.share(sum);
        }
    }

    private double spring(
            int i,
            int firstSpool,
            double @Nullable [] gradient,
            double @Nullable [] hessian,
            double @Nullable [] skew,
            int stride) {
        double pulled = motorOf[i] >= 0 ? wound[motorOf[i]] : driverRatio[i] * spool[spoolOf[i]];
        double stretch = pulled - pulledTravel(i);
        tension[i] = 0;
        if (stretch <= 0) {
            return 0;
        }
        double k = stiffness[i];
        boolean stalled = motorOf[i] >= 0 && k * stretch > cap[i] && !(locked && lockable[motorOf[i]]);
        double t = stalled ? cap[i] : k * stretch;
        tension[i] = t;
        double energy = stalled ? t * (stretch - 0.5 * t / k) : 0.5 * t * stretch;
        if (stalled) {
            k = 0;
        }
        for (int a = 0; a < loadFinger[i].length; a++) {
            fingerTension[loadFinger[i][a]] = loadRatio[i][a] * t;
        }
        if (gradient != null) {
            addForces(i, t, firstSpool, gradient);
        }
        if (hessian != null && skew != null) {
            addStiffness(i, k, firstSpool, hessian, skew, stride);
            for (int f : loadFinger[i]) {
                if (sheathFriction[f] != 0) {
                    addFrictionStiffness(f, hessian, skew, stride);
                }
            }
        }
        return energy;
    }

    private void addForces(int i, double t, int firstSpool, double[] gradient) {
        if (motorOf[i] < 0) {
            gradient[firstSpool + spoolOf[i]] += driverRatio[i] * t;
        }
        for (int a = 0; a < loadSpool[i].length; a++) {
            gradient[firstSpool + loadSpool[i][a]] -= loadSpoolRatio[i][a] * t;
        }
        for (int f : loadFinger[i]) {
            for (int j = 0; j < arm[f].length; j++) {
                gradient[coordinate[f][j]] -= fingerTension[f] * left[f][j] * arm[f][j];
            }
        }
    }

    /** k v w^T with v = d stretch / d unknown and w the same with friction's share of the force: row w, column v. */
    private void addStiffness(int i, double k, int firstSpool, double[] hessian, double[] skew, int stride) {
        if (k == 0) {
            return;
        }
        int rows = unknowns(i);
        for (int a = 0; a < rows; a++) {
            int row = unknown(i, a, firstSpool);
            double va = slope(i, a);
            double la = share(i, a);
            for (int b = 0; b < rows; b++) {
                int column = unknown(i, b, firstSpool);
                double v = k * va * slope(i, b);
                double even = v * Math.sqrt(la * share(i, b));
                hessian[row * stride + column] += even;
                skew[row * stride + column] += v * la - even;
            }
        }
    }

    // the unknowns of spring i, in order: driving spool (if any), loaded spools, joints of loaded fingers
    private int unknowns(int i) {
        int n = (motorOf[i] < 0 ? 1 : 0) + loadSpool[i].length;
        for (int f : loadFinger[i]) {
            n += arm[f].length;
        }
        return n;
    }

    private int unknown(int i, int index, int firstSpool) {
        int a = index;
        if (motorOf[i] < 0) {
            if (a == 0) {
                return firstSpool + spoolOf[i];
            }
            a--;
        }
        if (a < loadSpool[i].length) {
            return firstSpool + loadSpool[i][a];
        }
        a -= loadSpool[i].length;
        for (int f : loadFinger[i]) {
            if (a < arm[f].length) {
                return coordinate[f][a];
            }
            a -= arm[f].length;
        }
        throw new IndexOutOfBoundsException("unknown " + index + " of tendon spring " + i);
    }

    private double slope(int i, int index) {
        int a = index;
        if (motorOf[i] < 0) {
            if (a == 0) {
                return driverRatio[i];
            }
            a--;
        }
        if (a < loadSpool[i].length) {
            return -loadSpoolRatio[i][a];
        }
        a -= loadSpool[i].length;
        for (int n = 0; n < loadFinger[i].length; n++) {
            int f = loadFinger[i][n];
            if (a < arm[f].length) {
                return -loadRatio[i][n] * arm[f][a];
            }
            a -= arm[f].length;
        }
        throw new IndexOutOfBoundsException("unknown " + index + " of tendon spring " + i);
    }

    private double share(int i, int index) {
        int a = index - (motorOf[i] < 0 ? 1 : 0) - loadSpool[i].length;
        if (a < 0) {
            return 1;
        }
        for (int f : loadFinger[i]) {
            if (a < arm[f].length) {
                return left[f][a];
            }
            a -= arm[f].length;
        }
        throw new IndexOutOfBoundsException("unknown " + index + " of tendon spring " + i);
    }

    /** Presliding friction as a stiffness: T L_j r_j r_i sum over free guides up to both joints of mu phi / preslide. */
    private void addFrictionStiffness(int f, double[] hessian, double[] skew, int stride) {
        int joints = arm[f].length;
        for (int j = 0; j < joints; j++) {
            double sum = 0;
            int row = coordinate[f][j] * stride;
            for (int i = 0; i < joints; i++) {
                if (i <= j && lossFree[f][i]) {
                    sum += lossLimit[f][i] / PRESLIDE;
                }
                double v = fingerTension[f] * arm[f][j] * arm[f][i] * sum;
                double even = v * Math.sqrt(left[f][i] * left[f][j]);
                hessian[row + coordinate[f][i]] += even;
                skew[row + coordinate[f][i]] += v * left[f][j] - even;
            }
        }
    }

    /** True if any tendon has friction, so that the non-symmetric part is not zero. */
    public boolean hasFriction() {
        return hasFriction;
    }

    /** Damping force on a spool's turn in the step just solved [N], to be left out of residuals. */
    public double spoolDamping(int k, double overStep) {
        return SPOOL_DAMPING * overStep * (spool[k] - spoolStart[k]);
    }

    /** Puts the spools back to the start of the step. */
    public void restore() {
        System.arraycopy(spoolStart, 0, spool, 0, spools);
    }

    /** Ends a step: remembers friction, takes the bends at the new angles. */
    public void commit(double[] q) {
        System.arraycopy(spool, 0, spoolStart, 0, spools);
        for (int f = 0; f < fingers; f++) {
            if (sheathFriction[f] == 0) {
                continue;
            }
            for (int j = 0; j < arm[f].length; j++) {
                double angle = q[coordinate[f][j]];
                double bend = j == 0 ? wrap[f] + Math.abs(angle - Math.PI / 2) : Math.abs(angle);
                double most = sheathFriction[f] * bend;
                lossLimit[f][j] = most;
                lossStart[f][j] = Math.max(-most, Math.min(most, loss[f][j]));
            }
        }
    }

    /** Switches the motors on again after {@link #hold}: they wind and pay out, up to their greatest tension. */
    public void release() {
        locked = false;
    }

    /** Tension of a finger's tendon before its guides, at the last evaluation [N]. */
    public double fingerTension(int finger) {
        return fingerTension[finger];
    }

    /** A copy of everything remembered since the last commit: winches, spools, friction. */
    public Memory keep() {
        return Memory.of(numbers(), new boolean[][] {{locked}});
    }

    /** Puts back what {@link #keep} copied. */
    public void recall(Memory kept) {
        kept.into(numbers(), new boolean[][] {{locked}});
        locked = kept.singleFlag(0);
    }

    private double[][] numbers() {
        double[][] all = new double[5 + 4 * fingers][];
        all[0] = wound;
        all[1] = spool;
        all[2] = spoolStart;
        all[3] = frozenDeficit;
        all[4] = tension;
        for (int f = 0; f < fingers; f++) {
            all[5 + 4 * f] = lossStart[f];
            all[6 + 4 * f] = lossLimit[f];
            all[7 + 4 * f] = loss[f];
            all[8 + 4 * f] = left[f];
        }
        return all;
    }
}
