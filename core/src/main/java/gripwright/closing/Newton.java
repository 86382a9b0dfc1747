package gripwright.closing;

import gripwright.math.DenseSolver;

/**
 * Solves one step's equations: Newton with the consistent, non-symmetric tangent where contacts slip, falling back to
 * shifted Cholesky of the symmetric part and a line search on the energy with friction frozen (J. Nocedal, S. Wright,
 * "Numerical Optimization", 2006, from memory). Workspace.
 */
final class Newton {
    /** Result of a solve. */
    enum End {
        CONVERGED,
        /** The step is clearly too long: not worth finishing. */
        TOO_LONG,
        FAILED
    }

    /** Asked while iterating whether the step has already gone too far. */
    interface StepTest {
        boolean tooLong();
    }

    private static final int MOST_ITERATIONS = 15;
    private static final int FIRST_TEST = 3;
    private static final int MOST_HALVINGS = 18;
    /** Greatest change of any unknown in one iteration, as a length [m]. */
    private static final double CLIP = 5e-3;
    /** Residual below which a plain full step is tried first [N]. */
    private static final double CLOSE = 1;

    /** Longest first guess, over the last step [-]. */
    private static final double LONGEST_GUESS = 1.8;

    /** Above this share the path is taken to have a kink, not a bend [-]. */
    private static final double MOST_BENT = 0.5;

    /** At a residual below so many times the tolerance the next one will do: looked at without second derivatives [-]. */
    private static final double NEARLY = 30;

    private static final double GOOD_ENOUGH = 0.9;
    private static final double ARMIJO = 1e-4;

    private final StepSystem system;
    private final DenseSolver solver;
    private final double[] direction;
    private final double[] baseQ;
    private final double[] baseSpool;
    private final double[] baseP = new double[3];
    private final double[] baseR = new double[9];
    private final double[] lastChange;
    private final double[] changeBefore;
    private final double[] guess;
    private int changes;
    private double lastLength = 1;
    private double lengthBefore = 1;
    int iterations;
    double residual;

    Newton(StepSystem system) {
        this.system = system;
        solver = new DenseSolver(system.scale);
        direction = new double[system.size];
        baseQ = new double[system.joints];
        baseSpool = new double[system.spools];
        lastChange = new double[system.size];
        changeBefore = new double[system.size];
        guess = new double[system.size];
    }

    /**
     * Iterates from the present state.
     *
     * @param tolerance residual at which the step is solved [N]
     */
    End solve(double tolerance, StepTest test) {
        boolean have = false;
        double energy = 0;
        double r = Double.POSITIVE_INFINITY;
        for (int iteration = 0; iteration < MOST_ITERATIONS; iteration++) {
            iterations++;
            if (!have) {
                energy = system.evaluate(true);
                r = system.residual();
            }
            have = false;
            residual = r;
            if (r < tolerance) {
                return End.CONVERGED;
            }
            if (!Double.isFinite(r) || !findDirection()) {
                return End.FAILED;
            }
            double slope = clipAndSlope();
            if (iteration >= FIRST_TEST && test.tooLong()) {
                return End.TOO_LONG;
            }
            keepBase();
            if (r < CLOSE) {
                // near the end the second derivatives there will hardly be wanted
                have = r > NEARLY * tolerance;
                move(1);
                double trialEnergy = system.evaluate(have);
                double trial = system.residual();
                if (trial < tolerance) {
                    iterations++;
                    residual = trial;
                    return End.CONVERGED;
                }
                if (trial < GOOD_ENOUGH * r) {
                    energy = trialEnergy;
                    r = trial;
                    continue;
                }
                have = false;
                move(0);
                energy = system.evaluate(false);
            }
            if (!lineSearch(energy, slope)) {
                move(0);
                system.evaluate(false);
                residual = system.residual();
                return residual < 10 * tolerance ? End.CONVERGED : End.FAILED;
            }
        }
        system.evaluate(false);
        residual = system.residual();
        return residual < 10 * tolerance ? End.CONVERGED : End.FAILED;
    }

    private boolean findDirection() {
        if (system.matrix.slipping && solver.luSolve(system.hessian, system.skew, system.gradient, direction)) {
            double dot = 0;
            for (int i = 0; i < system.size; i++) {
                dot += system.gradient[i] * direction[i];
            }
            if (dot < 0) {
                return true;
            }
        }
        double base = solver.largestDiagonal(system.hessian);
        double shift = 0;
        for (int attempt = 0; attempt < 16; attempt++) {
            if (solver.choleskySolve(system.hessian, shift, system.gradient, direction)) {
                return true;
            }
            shift = shift == 0 ? 1e-6 * base : 5 * shift;
        }
        return false;
    }

    private double clipAndSlope() {
        double most = 0;
        for (int i = 0; i < system.size; i++) {
            most = Math.max(most, Math.abs(direction[i]) * system.scale[i]);
        }
        double factor = most > CLIP ? CLIP / most : 1;
        double slope = 0;
        for (int i = 0; i < system.size; i++) {
            direction[i] *= factor;
            slope += system.gradient[i] * direction[i];
        }
        return slope;
    }

    private boolean lineSearch(double energy, double slope) {
        double a = 1;
        for (int halving = 0; halving < MOST_HALVINGS; halving++) {
            move(a);
            double e = system.energy();
            if (e <= energy + ARMIJO * a * slope + 1e-14 * Math.abs(energy)) {
                return true;
            }
            a *= 0.5;
        }
        return false;
    }

    private void keepBase() {
        System.arraycopy(system.q, 0, baseQ, 0, baseQ.length);
        System.arraycopy(system.rig.drive().spool(), 0, baseSpool, 0, baseSpool.length);
        System.arraycopy(system.p, 0, baseP, 0, 3);
        System.arraycopy(system.r, 0, baseR, 0, 9);
    }

    /** State = base moved by {@code a} times the direction. */
    private void move(double a) {
        double[] d = direction;
        for (int j = 0; j < system.joints; j++) {
            system.q[j] = baseQ[j] + a * d[j];
        }
        double[] spool = system.rig.drive().spool();
        for (int k = 0; k < system.spools; k++) {
            spool[k] = baseSpool[k] + a * d[system.joints + k];
        }
        int o = system.objectIndex();
        double x = a * d[o];
        double y = a * d[o + 1];
        double z = a * d[o + 2];
        double[] b = baseR;
        for (int i = 0; i < 3; i++) {
            system.p[i] = baseP[i] + b[3 * i] * x + b[3 * i + 1] * y + b[3 * i + 2] * z;
        }
        turn(b, a * d[o + 3], a * d[o + 4], a * d[o + 5], system.r);
    }

    /** out = base exp([w]x), by Rodrigues with series for small angles. */
    static void turn(double[] base, double wx, double wy, double wz, double[] out) {
        double angle2 = wx * wx + wy * wy + wz * wz;
        double s;
        double v;
        if (angle2 < 0.01) {
            s = 1 + angle2 * (-1 / 6.0 + angle2 * (1 / 120.0 + angle2 * (-1 / 5040.0 + angle2 / 362880.0)));
            v = 0.5 + angle2 * (-1 / 24.0 + angle2 * (1 / 720.0 + angle2 * (-1 / 40320.0 + angle2 / 3628800.0)));
        } else {
            double angle = Math.sqrt(angle2);
            s = StrictMath.sin(angle) / angle;
            v = (1 - StrictMath.cos(angle)) / angle2;
        }
        double m00 = 1 - v * (wy * wy + wz * wz);
        double m01 = v * wx * wy - s * wz;
        double m02 = v * wx * wz + s * wy;
        double m10 = v * wx * wy + s * wz;
        double m11 = 1 - v * (wx * wx + wz * wz);
        double m12 = v * wy * wz - s * wx;
        double m20 = v * wx * wz - s * wy;
        double m21 = v * wy * wz + s * wx;
        double m22 = 1 - v * (wx * wx + wy * wy);
        for (int i = 0; i < 3; i++) {
            double a0 = base[3 * i];
            double a1 = base[3 * i + 1];
            double a2 = base[3 * i + 2];
            out[3 * i] = a0 * m00 + a1 * m10 + a2 * m20;
            out[3 * i + 1] = a0 * m01 + a1 * m11 + a2 * m21;
            out[3 * i + 2] = a0 * m02 + a1 * m12 + a2 * m22;
        }
    }

    // ------------------------------------------------------------------ first guess

    void forgetChange() {
        changes = 0;
    }

    /** Remembers the change over the step just solved; call before the step is committed. @param length of the step */
    void rememberChange(double length) {
        System.arraycopy(lastChange, 0, changeBefore, 0, lastChange.length);
        lengthBefore = lastLength;
        lastLength = length;
        for (int j = 0; j < system.joints; j++) {
            lastChange[j] = system.q[j] - system.qStart[j];
        }
        int o = system.objectIndex();
        for (int i = 0; i < 3; i++) {
            lastChange[o + i] = system.p[i] - system.pStart[i];
        }
        double[] a = system.rStart;
        double[] b = system.r;
        lastChange[o + 3] = 0.5 * (column(a, 2, b, 1) - column(a, 1, b, 2));
        lastChange[o + 4] = 0.5 * (column(a, 0, b, 2) - column(a, 2, b, 0));
        lastChange[o + 5] = 0.5 * (column(a, 1, b, 0) - column(a, 0, b, 1));
        changes = Math.min(2, changes + 1);
    }

    private static double column(double[] a, int i, double[] b, int k) {
        return a[i] * b[k] + a[3 + i] * b[3 + k] + a[6 + i] * b[6 + k];
    }

    /**
     * Starts the next step from the last change carried on; along the parabola through the last two where the path is
     * smooth. Spools have no damping to speak of and are left where they are.
     *
     * @param length of the next step, in the unit of {@link #rememberChange}
     * @param bending false = along a straight line in any case
     */
    void predict(double length, boolean bending) {
        if (changes == 0) {
            return;
        }
        double f = Math.min(LONGEST_GUESS, length / lastLength);
        // change over a length x after the last step: x v + x (x + last) / 2 times the change of v over the mean length
        double bend = changes < 2 || !bending ? 0 : f * (f * lastLength + lastLength) / (lastLength + lengthBefore);
        double k = lastLength / lengthBefore;
        if (bend > 0) {
            double straight = 0;
            double bent = 0;
            for (int i = 0; i < lastChange.length; i++) {
                straight = Math.max(straight, Math.abs(f * lastChange[i]) * system.scale[i]);
                bent = Math.max(bent, Math.abs(bend * (lastChange[i] - k * changeBefore[i])) * system.scale[i]);
            }
            if (bent > MOST_BENT * straight) {
                bend = 0;
            }
        }
        keepBase();
        int o = system.objectIndex();
        for (int i = 0; i < lastChange.length; i++) {
            guess[i] = f * lastChange[i] + (bend == 0 ? 0 : bend * (lastChange[i] - k * changeBefore[i]));
        }
        double[] r = system.r;
        System.arraycopy(guess, 0, direction, 0, guess.length);
        for (int i = 0; i < 3; i++) {
            direction[o + i] = r[i] * guess[o] + r[3 + i] * guess[o + 1] + r[6 + i] * guess[o + 2];
        }
        move(1);
    }
}
