package gripwright.drive;

import gripwright.math.Memory;
import gripwright.model.Finger;
import gripwright.model.Motor;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Tendons, differentials and their friction as part of one step's equations. Workspace of one thread.
 *
 * <p>Tension in a spring: T = K stretch, never below 0, and not above the motor's greatest tension. What pulls what is
 * {@link TendonNet}, each spring's share in the equations {@link TendonSpring}, each finger's tendon with its friction
 * {@link TendonRoute}. Unknowns: all coordinates, then the turns of the spools.
 */
public final class TendonDrive {
    /** Damping of a spool's own turn [N s/m]; only makes a slack spool's place unique. */
    private static final double SPOOL_DAMPING = 10;

    private final TendonRoute[] routes;
    private final TendonSpring[] springs;
    private final int spools;
    private final int motors;
    private final int firstSpool;
    private final boolean hasFriction;
    private final double[] tension;
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
        routes = new TendonRoute[pulled.size()];
        for (int f = 0; f < routes.length; f++) {
            routes[f] = new TendonRoute(pulled.get(f), winches, coordinates.get(f), reference);
        }
        firstSpool = reference.length;
        TendonNet net = new TendonNet(pulled, winches, taking);
        springs = net.springs().stream()
                .map(s -> new TendonSpring(s, routes, firstSpool))
                .toArray(TendonSpring[]::new);
        spools = net.spools();
        motors = winches.size();
        hasFriction = Arrays.stream(routes).anyMatch(TendonRoute::hasFriction);
        tension = new double[springs.length];
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
        locked = false;
        for (TendonRoute route : routes) {
            route.reset();
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
        int i = springOf(motor);
        return i < 0 ? 0 : tension[i];
    }

    /** Greatest tension of a motor [N]. */
    public double greatest(int motor) {
        int i = springOf(motor);
        return i < 0 ? 0 : springs[i].cap;
    }

    /** True if the motor pulls on any finger taking part. */
    public boolean pulls(int motor) {
        int i = springOf(motor);
        return i >= 0 && springs[i].loaded();
    }

    private int springOf(int motor) {
        for (int i = 0; i < springs.length; i++) {
            if (springs[i].motor == motor) {
                return i;
            }
        }
        return -1;
    }

    /** Tension of the tendon at a joint after friction, at the last evaluation with derivatives [N]. */
    public double jointTension(int finger, int joint) {
        TendonRoute route = routes[finger];
        return route.tension() * route.left(joint);
    }

    /**
     * Cuts the current: a lockable motor keeps its length from now on (and may carry any tension), another one its
     * greatest tension.
     */
    public void hold() {
        for (int i = 0; i < springs.length; i++) {
            int m = springs[i].motor;
            if (m >= 0 && lockable[m]) {
                // at stall the winch has run past what the spring shows: take that back
                double stretch = wound[m] - springs[i].travel(spool);
                wound[m] -= Math.max(0, stretch - tension[i] / springs[i].stiffness);
            }
        }
        locked = true;
    }

    /**
     * Adds energy, gradient, second derivative and its non-symmetric friction part.
     *
     * @param q coordinates, shape of all coordinates
     * @param q0 the same at the start of the step
     * @param overStep damping scale / step time [1/s]
     * @param gradient null = energy only, with friction frozen as at the last evaluation with derivatives
     * @param skew non-symmetric part, row length {@code stride}
     * @return energy [N m]; with friction only its change along a small step means something
     */
    public double accumulate(
            double[] q,
            double[] q0,
            double overStep,
            double @Nullable [] gradient,
            double @Nullable [] hessian,
            double @Nullable [] skew,
            int stride) {
        for (TendonRoute route : routes) {
            route.measure(q);
            if (gradient != null) {
                route.slide(q, q0);
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
        for (int i = 0; i < springs.length; i++) {
            energy += spring(i, gradient, hessian, skew, stride);
        }
        for (TendonRoute route : routes) {
            if (route.hasFriction()) {
                if (gradient != null) {
                    route.noteTaken();
                }
                energy = route.plusTaken(energy, q);
            }
        }
        return energy;
    }

    private double spring(
            int i, double @Nullable [] gradient, double @Nullable [] hessian, double @Nullable [] skew, int stride) {
        TendonSpring s = springs[i];
        double stretch = s.stretch(wound, spool);
        tension[i] = 0;
        if (stretch <= 0) {
            return 0;
        }
        double k = s.stiffness;
        boolean stalled = s.motor >= 0 && k * stretch > s.cap && !(locked && lockable[s.motor]);
        double t = stalled ? s.cap : k * stretch;
        tension[i] = t;
        s.pull(t);
        if (gradient != null) {
            s.addForces(t, gradient);
        }
        if (hessian != null && skew != null) {
            s.addStiffness(stalled ? 0 : k, hessian, skew, stride);
        }
        return stalled ? t * (stretch - 0.5 * t / k) : 0.5 * t * stretch;
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
        for (TendonRoute route : routes) {
            route.commit(q);
        }
    }

    /** Switches the motors on again after {@link #hold}: they wind and pay out, up to their greatest tension. */
    public void release() {
        locked = false;
    }

    /** Tension of a finger's tendon before its guides, at the last evaluation [N]. */
    public double fingerTension(int finger) {
        return routes[finger].tension();
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
        List<double[]> all = new ArrayList<>(List.of(wound, spool, spoolStart, tension));
        for (TendonRoute route : routes) {
            all.addAll(route.numbers());
        }
        return all.toArray(new double[0][]);
    }
}
