package gripwright.mechanics;

/**
 * Springs, hard stops and the damping of one step at every coordinate.
 *
 * <p>Energy per coordinate: k/2 (q - rest)^2 + stop/2 (overrun)^2 + c/(2h) (q - q0)^2. Source: common mechanics; hard
 * stops as stiff springs are common practice, no source.
 */
public final class JointForces {
    /** Stiffness of a hard stop [N m/rad]: 60 N on a 10 mm arm runs 0.3 degrees past it. */
    public static final double STOP = 120;

    /** Damping that makes a step solvable [N m s/rad] (turns) and [N s/m] (slides of the arm). */
    public static final double DAMPING = 1e-3;

    private static final double SLIDE_DAMPING = 1;

    private final int n;
    private final double[] rate;
    private final double[] rest;
    private final double[] lower;
    private final double[] upper;
    private final double[] damping;
    private final boolean[] ofHand;
    private double rateFactor = 1;

    public JointForces(HandTree tree) {
        n = tree.size();
        rate = new double[n];
        rest = new double[n];
        lower = new double[n];
        upper = new double[n];
        damping = new double[n];
        ofHand = new boolean[n];
        for (int j = 0; j < n; j++) {
            HandTree.Coordinate c = tree.coordinates().get(j);
            rate[j] = c.rate();
            rest[j] = c.rest();
            lower[j] = c.lower();
            upper[j] = c.upper();
            ofHand[j] = c.finger() >= 0;
            damping[j] = c.slides() ? SLIDE_DAMPING : DAMPING;
        }
    }

    /** Factor on the flexion and sideways rates of this run [-] (not on the arm's: it is not part of the hand). */
    public void setRateFactor(double factor) {
        rateFactor = factor;
    }

    /** Moment of spring and stops on a coordinate [N m or N]; damping left out. */
    public double moment(int j, double q) {
        double overrun = q > upper[j] ? q - upper[j] : q < lower[j] ? q - lower[j] : 0;
        return -rateOf(j) * (q - rest[j]) - STOP * overrun;
    }

    public double rateOf(int j) {
        return ofHand[j] ? rate[j] * rateFactor : rate[j];
    }

    public double rest(int j) {
        return rest[j];
    }

    /** Damping over the step [N m s/rad or N s/m], already scaled by {@code scale}. */
    public double damping(int j, double scale) {
        return damping[j] * scale;
    }

    /**
     * Adds energy, gradient and the diagonal of the second derivative.
     *
     * @param q values, q0 values at the start of the step, shape size
     * @param dampingOverStep damping scale / step time [1/s]
     * @param gradient in and out, null = energy only; shape at least size
     * @param hessian in and out, row length {@code stride}; null = not wanted
     */
    public double accumulate(
            double[] q,
            double[] q0,
            double dampingOverStep,
            double @org.jspecify.annotations.Nullable [] gradient,
            double @org.jspecify.annotations.Nullable [] hessian,
            int stride) {
        double energy = 0;
        for (int j = 0; j < n; j++) {
            double k = rateOf(j);
            double stretch = q[j] - rest[j];
            energy += 0.5 * k * stretch * stretch;
            double g = k * stretch;
            double over = q[j] > upper[j] ? q[j] - upper[j] : q[j] < lower[j] ? q[j] - lower[j] : 0;
            if (over != 0) {
                energy += 0.5 * STOP * over * over;
                g += STOP * over;
                k += STOP;
            }
            double c = damping[j] * dampingOverStep;
            double move = q[j] - q0[j];
            energy += 0.5 * c * move * move;
            if (gradient != null) {
                gradient[j] += g + c * move;
            }
            if (hessian != null) {
                hessian[j * stride + j] += k + c;
            }
        }
        return energy;
    }
}
