package gripwright.closing;

import gripwright.math.DenseSolver;
import gripwright.mechanics.JointForces;
import gripwright.model.Finger;
import gripwright.model.Joint;
import gripwright.model.Phalanx;
import java.util.Arrays;

/**
 * One finger pulled by a line of its own, in its plane: where it goes when it meets nothing, and what it presses with on
 * one place that it has met with its last phalanx.
 *
 * <p>Plane: origin at the first joint, u away from the closing direction in the palm's plane, v out of the palm; angles
 * from u towards v, as joints flex. Torque on joint j: T L_j r_j - k_j (q_j - rest_j) - stop, with L_j = exp(-mu sum of
 * bends) what sheath and guides leave of the tension of a tendon that is being pulled in ({@link
 * gripwright.drive.Capstan}). On a pressed place: torques = J^T f. A workspace: it keeps its posture and where it
 * sticks.
 */
final class PressingFinger {
    /** Give of the pad over a pressed place [N/m], small beside all else here. */
    private static final double CONTACT = 1e5;

    private static final double SOLVED = 1e-9;
    private static final double GREATEST_STEP = 0.1;
    private static final double NUDGE = 1e-7;
    /** Joints are sought this far beyond their stops [rad]. */
    private static final double BEYOND = 2;

    private final int n;
    private final double[] length;
    private final double[] arm;
    private final double[] rate;
    private final double[] rest;
    private final double[] lower;
    private final double[] upper;
    private final double friction;
    private final double wrap;
    private final double padHeight;
    private final double padStart;
    private final double padEnd;
    final double halfWidth;

    final double[] q;
    private double anchor;
    private double padFriction;
    private double normal;
    private double tangential;
    private final DenseSolver solver;

    /**
     * @param friction of the tendon against its sheath and guides [-]
     * @param wrap bend of the sheath up to the first joint [rad]
     * @param rateFactor on the joint springs [-]
     */
    PressingFinger(Finger finger, double friction, double wrap, double rateFactor) {
        n = finger.joints().size();
        length = finger.phalanges().stream().mapToDouble(Phalanx::length).toArray();
        arm = finger.joints().stream().mapToDouble(Joint::momentArm).toArray();
        rate = finger.joints().stream()
                .mapToDouble(j -> rateFactor * j.kind().bendingRate())
                .toArray();
        rest = finger.joints().stream().mapToDouble(Joint::rest).toArray();
        lower = finger.joints().stream().mapToDouble(Joint::lower).toArray();
        upper = finger.joints().stream().mapToDouble(Joint::upper).toArray();
        this.friction = friction;
        this.wrap = wrap;
        Phalanx last = finger.phalanges().get(n - 1);
        padHeight = last.padHeight();
        halfWidth = last.width() / 2;
        boolean round = last.tip() == Phalanx.Tip.ROUND;
        padStart = Math.max(0, (last.length() - last.pad().length()) / 2);
        padEnd = round ? last.length() : padStart + last.pad().length();
        roundTip = round;
        q = new double[n];
        double[] ones = new double[n];
        Arrays.fill(ones, 1);
        solver = new DenseSolver(ones);
    }

    private final boolean roundTip;

    // ------------------------------------------------------------------ torques

    /** Spring, stop and tendon at a joint [N m], closing positive; joints before it give the bends. */
    private double torque(int j, double[] at, double tension) {
        double over = at[j] > upper[j] ? at[j] - upper[j] : at[j] < lower[j] ? at[j] - lower[j] : 0;
        double bends = wrap;
        for (int k = 0; k <= j; k++) {
            bends += k == 0 ? Math.abs(at[0] - Math.PI / 2) : Math.abs(at[k]);
        }
        double pull = tension * StrictMath.exp(-friction * bends) * arm[j];
        return pull - rate[j] * (at[j] - rest[j]) - JointForces.STOP * over;
    }

    /** Takes the posture that it has under a tension when it meets nothing. */
    void free(double tension) {
        for (int j = 0; j < n; j++) {
            double low = Math.min(lower[j], rest[j]) - BEYOND;
            double high = Math.max(upper[j], rest[j]) + BEYOND;
            for (int i = 0; i < 60; i++) {
                q[j] = 0.5 * (low + high);
                if (torque(j, q, tension) > 0) {
                    low = q[j];
                } else {
                    high = q[j];
                }
            }
        }
    }

    /** Greatest change of a joint angle since a posture [rad]. */
    double turnedSince(double[] posture) {
        double most = 0;
        for (int j = 0; j < n; j++) {
            most = Math.max(most, Math.abs(q[j] - posture[j]));
        }
        return most;
    }

    // ------------------------------------------------------------------ places

    /** A place in the frame of the last phalanx: along it, out of its pad. */
    private record Local(double along, double out, double u, double v, double angle) {}

    private Local local(double[] at, double u, double v) {
        double x = 0;
        double y = 0;
        double angle = 0;
        for (int j = 0; j < n; j++) {
            angle += at[j];
            if (j < n - 1) {
                x += length[j] * StrictMath.cos(angle);
                y += length[j] * StrictMath.sin(angle);
            }
        }
        double c = StrictMath.cos(angle);
        double s = StrictMath.sin(angle);
        return new Local(c * (u - x) + s * (v - y), c * (v - y) - s * (u - x), x, y, angle);
    }

    private boolean onTip(Local p) {
        return roundTip && p.along > padEnd;
    }

    /**
     * Distance of a place from the surface of the last pad, negative under it [m]; beside the pad's ends, or behind the
     * finger, infinite.
     */
    double gap(double u, double v) {
        Local p = local(q, u, v);
        if (onTip(p)) {
            return p.out < 0 ? Double.POSITIVE_INFINITY : Math.hypot(p.along - padEnd, p.out) - padHeight;
        }
        boolean over = p.along >= padStart && p.along <= padEnd && p.out > -padHeight;
        return over ? p.out - padHeight : Double.POSITIVE_INFINITY;
    }

    /** Distance of a place from the last pad, ends and all [m]. */
    double distance(double u, double v) {
        Local p = local(q, u, v);
        double along = Math.max(padStart, Math.min(padEnd, p.along));
        double far = onTip(p) ? 0 : p.along - along;
        double gap = onTip(p) ? Math.hypot(p.along - padEnd, p.out) - padHeight : p.out - padHeight;
        return Math.hypot(far, gap);
    }

    /** Direction out of the pad over a place, an angle in the plane [rad]. */
    private static double outward(Local p, boolean tip, double end) {
        return p.angle + (tip ? StrictMath.atan2(p.out, p.along - end) : Math.PI / 2);
    }

    private double surface(Local p) {
        return onTip(p) ? padEnd + padHeight * StrictMath.atan2(p.along - padEnd, p.out) : p.along;
    }

    // ------------------------------------------------------------------ pressing

    /** Sticks to a place that it just touches; the friction coefficient of the pad on it. */
    void touch(double u, double v, double coefficient) {
        anchor = surface(local(q, u, v));
        padFriction = coefficient;
        normal = 0;
        tangential = 0;
    }

    /** Normal and tangential force on the place [N], the latter towards the tip. */
    private double[] forces(double[] at, double u, double v) {
        Local p = local(at, u, v);
        boolean tip = onTip(p);
        double depth = padHeight - (tip ? Math.hypot(p.along - padEnd, p.out) : p.out);
        double fn = CONTACT * Math.max(0, depth);
        double ft = CONTACT * (anchor - surface(p));
        double most = padFriction * fn;
        ft = Math.max(-most, Math.min(most, ft));
        double out = outward(p, tip, padEnd);
        double c = StrictMath.cos(out);
        double s = StrictMath.sin(out);
        // towards the tip: the outward direction turned back by a right angle
        return new double[] {fn, ft, fn * c + ft * s, fn * s - ft * c};
    }

    private double[] residual(double[] at, double u, double v, double tension) {
        double[] f = forces(at, u, v);
        double[] out = new double[n];
        double x = 0;
        double y = 0;
        double angle = 0;
        for (int j = 0; j < n; j++) {
            // moment of f about joint j at the place it acts on
            out[j] = torque(j, at, tension) - ((u - x) * f[3] - (v - y) * f[2]);
            angle += at[j];
            x += length[j] * StrictMath.cos(angle);
            y += length[j] * StrictMath.sin(angle);
        }
        return out;
    }

    /**
     * Finds the posture in which it presses on a place, by Newton, and lets it slide on as friction says.
     *
     * @return false if there is none near
     */
    boolean press(double u, double v, double tension) {
        double[] trial = new double[n];
        double[] step = new double[n];
        double[] matrix = new double[n * n];
        double[] none = new double[n * n];
        for (int iteration = 0; iteration < 60; iteration++) {
            double[] r = residual(q, u, v, tension);
            double size = size(r);
            if (size < SOLVED) {
                double[] f = forces(q, u, v);
                normal = f[0];
                tangential = f[1];
                // the anchor follows a sliding pad
                anchor = surface(local(q, u, v)) + tangential / CONTACT;
                return true;
            }
            for (int k = 0; k < n; k++) {
                System.arraycopy(q, 0, trial, 0, n);
                trial[k] += NUDGE;
                double[] moved = residual(trial, u, v, tension);
                for (int j = 0; j < n; j++) {
                    matrix[n * j + k] = (moved[j] - r[j]) / NUDGE;
                }
            }
            if (!solver.luSolve(matrix, none, r, step)) {
                return false;
            }
            double most = size(step);
            double share = Math.min(1, GREATEST_STEP / most);
            boolean better = false;
            for (int halving = 0; halving < 30 && !better; halving++) {
                for (int j = 0; j < n; j++) {
                    trial[j] = q[j] + share * step[j];
                }
                better = size(residual(trial, u, v, tension)) < size;
                share *= 0.5;
            }
            if (!better) {
                return size < 1e3 * SOLVED;
            }
            System.arraycopy(trial, 0, q, 0, n);
        }
        return false;
    }

    private static double size(double[] a) {
        double most = 0;
        for (double x : a) {
            most = Math.max(most, Math.abs(x));
        }
        return most;
    }

    /** Force on the pressed place [N], along u and v. */
    double[] force(double u, double v) {
        double[] f = forces(q, u, v);
        return new double[] {f[2], f[3]};
    }

    /** True if the pad slides over the pressed place. */
    boolean slides() {
        return normal > 0 && Math.abs(tangential) >= padFriction * normal * (1 - 1e-9);
    }

    /** True if the place still lies over the pad. */
    boolean over(double u, double v) {
        return gap(u, v) < CLOSE;
    }

    private static final double CLOSE = 1e-6;
}
