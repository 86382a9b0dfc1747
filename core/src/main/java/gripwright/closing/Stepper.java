package gripwright.closing;

/**
 * Follows a load in steps short enough that no contact moves far in one: the step length is set by motion, not by time,
 * so free motion takes few steps and a snap is followed in small ones. Workspace.
 */
final class Stepper {
    /** How a ramp ended. */
    enum End {
        /** The load is fully on. */
        DONE,
        /** The stop condition was met. */
        STOPPED,
        /** The solver could not go on. */
        STUCK
    }

    /** Sets the load for a parameter 0..1. */
    interface Load {
        void set(double t);
    }

    /** Looks at the state after each accepted step; true stops the ramp. */
    interface Watch {
        /** @param motion of the object in the step, turns made lengths [m] */
        boolean stop(double motion);

        /**
         * Looks at a solved step of a ramp before it is taken.
         *
         * @param seconds of motor time
         * @return share of the step after which something happens, so that it is solved again that short; 1 = none
         */
        default double share(double seconds) {
            return 1;
        }
    }

    /** Motion allowed in one step to a point in contact [m]; accuracy study in docs/accuracy.md. */
    static final double SLIDE = 0.75e-3;
    /** Penetration allowed in one step to a point that was free [m]. */
    static final double SINK = 0.25e-3;

    /** Residual at which a step on the way is solved [N]; finer steps are solved better, else a good guess would pass. */
    private static final double ROUGH = 1e-2;
    /** Residual at which a step is solved whose load is read [N]: a thousandth of what a gram weighs. */
    static final double READ = 1e-5;
    /** Residual at which a resting state is solved [N]. */
    private static final double FINE = 1e-6;
    /** A resting state: out of balance, damping left out, by less than this [N, joints over their length scale]. */
    private static final double AT_REST = 1.2e-5;

    private static final double ACCEPT = 1.15;
    private static final double AIM = 0.85;
    private static final double GIVE_UP = 1.6;
    private static final double SHORTEST = 1e-8;
    private static final int MOST_STEPS = 6000;
    /** Steps of settling in which little moves; what is still on its way may take as many as it needs. */
    private static final int MOST_SETTLING = 400;

    private static final double MOVING = 0.5;
    private static final double LONGEST_SETTLING = 1e3;

    private final StepSystem system;
    final Newton newton;
    private final double slide;
    private final double sink;
    private final double longestScale;
    private final double rough;
    private final Newton.StepTest test = this::gone;
    int steps;
    int rejected;
    String trouble = "";
    private double lastStep;

    Stepper(StepSystem system, Numerics numerics) {
        this.system = system;
        newton = new Newton(system);
        slide = SLIDE * numerics.stepScale();
        sink = SINK * numerics.stepScale();
        longestScale = numerics.stepScale();
        rough = ROUGH * Math.min(1, numerics.stepScale());
    }

    void reset() {
        steps = 0;
        rejected = 0;
        newton.iterations = 0;
        newton.forgetChange();
        trouble = "";
        lastStep = 1e-2;
    }

    private boolean gone() {
        return ratio() > GIVE_UP;
    }

    private double ratio() {
        system.updatePoses();
        return system.stepRatio(slide, sink);
    }

    /**
     * Applies a load from 0 to 1.
     *
     * @param seconds of motor time for the whole ramp
     * @param first step and
     * @param longest step, as shares of the ramp
     */
    End ramp(Load load, double seconds, double first, double longest, Watch watch) {
        return ramp(load, seconds, first, longest, watch, rough);
    }

    /**
     * The same where loads on the way are read.
     *
     * @param tolerance residual at which a step is solved [N]
     */
    End ramp(Load load, double seconds, double first, double longest, Watch watch, double tolerance) {
        double t = 0;
        double dt = first;
        newton.forgetChange();
        while (t < 1 - 1e-12) {
            dt = Math.min(dt, 1 - t);
            load.set(t + dt);
            system.stepTime = dt * seconds;
            newton.predict(dt, true);
            Newton.End end = newton.solve(tolerance, test);
            double ratio = end == Newton.End.CONVERGED ? ratio() : 0;
            if (end != Newton.End.CONVERGED || ratio > ACCEPT) {
                if (dt > SHORTEST) {
                    system.restore();
                    rejected++;
                    dt *= end == Newton.End.CONVERGED ? Math.max(0.1, AIM / ratio) : 0.25;
                    continue;
                }
                trouble = "no step short enough (residual " + newton.residual + " N)";
                return End.STUCK;
            }
            double share = watch.share(system.stepTime);
            if (share < 1 && dt > SHORTEST) {
                system.restore();
                dt = Math.max(SHORTEST, dt * share);
                continue;
            }
            t += dt;
            steps++;
            newton.rememberChange(dt);
            double motion = system.objectMotion();
            system.commit();
            lastStep = system.stepTime;
            if (watch.stop(motion)) {
                return End.STOPPED;
            }
            if (steps > MOST_STEPS) {
                trouble = "more than " + MOST_STEPS + " steps";
                return End.STUCK;
            }
            double growth = ratio < 0.05 ? 5 : Math.min(1.8, Math.max(0.3, AIM / ratio));
            dt = Math.max(SHORTEST, Math.min(longest * longestScale, dt * growth));
        }
        return End.DONE;
    }

    /**
     * Holds the load until the forces balance without the help of damping.
     *
     * @return DONE at rest, STOPPED by the watch, STUCK if it still creeps after many steps or cannot be solved
     */
    End settle(Watch watch) {
        double h = 3 * lastStep;
        double lastSettling = lastStep;
        int small = 0;
        for (int all = 0; small < MOST_SETTLING && all < MOST_STEPS; all++) {
            system.stepTime = h;
            newton.predict(Math.min(lastSettling, h), false);
            Newton.End end = newton.solve(FINE, test);
            double ratio = end == Newton.End.CONVERGED ? ratio() : 0;
            if (end != Newton.End.CONVERGED || ratio > ACCEPT) {
                system.restore();
                newton.forgetChange();
                rejected++;
                small++;
                h *= end == Newton.End.CONVERGED ? Math.max(0.1, AIM / ratio) : 0.3;
                if (h < 1e-9) {
                    trouble = "no step short enough while settling (residual " + newton.residual + " N)";
                    return End.STUCK;
                }
                continue;
            }
            boolean rest = atRest();
            steps++;
            small += ratio < MOVING ? 1 : 0;
            newton.rememberChange(h);
            lastSettling = h;
            double motion = system.objectMotion();
            system.commit();
            lastStep = Math.min(h, 0.1);
            if (watch.stop(motion)) {
                return End.STOPPED;
            }
            if (rest && stillAtRest()) {
                return End.DONE;
            }
            h = Math.min(LONGEST_SETTLING, h * Math.min(3, Math.max(1, AIM / Math.max(ratio, 1e-9))));
        }
        trouble = small < MOST_SETTLING
                ? "still moving after " + MOST_STEPS + " steps of settling"
                : "still creeping after " + MOST_SETTLING + " steps of settling";
        return End.STUCK;
    }

    /** The balance again after the commit, which moves friction to the new normals and bends. */
    private boolean stillAtRest() {
        system.evaluate(false);
        return atRest();
    }

    /** Needs the gradient of the state just solved. */
    private boolean atRest() {
        return system.objectResidual() < AT_REST
                && system.objectMomentResidual() < AT_REST * StepSystem.TURN_LENGTH
                && system.worstJointResidual() < AT_REST * StepSystem.JOINT_LENGTH
                && system.worstSlideResidual() < AT_REST;
    }
}
