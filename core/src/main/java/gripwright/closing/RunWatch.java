package gripwright.closing;

import gripwright.closing.ClosingDetail.FirstTouch;
import gripwright.model.GraspObject;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.CancellationException;
import org.jspecify.annotations.Nullable;

/** Looks on while a run goes: touches, forces, limits. Workspace. */
final class RunWatch implements Stepper.Watch {
    /** Height of the lift from which being clear of the table counts [m]. */
    private static final double RAISED = 2e-3;

    /** Motion per step below which a lift that has left the table may end early [m]. */
    private static final double STILL = 2e-6;
    /** Tendon wound per second [m/s]. */
    static final double WINDING = 0.12;

    private final StepSystem system;
    private final Criteria criteria;
    private final GraspObject object;
    private final @Nullable FrameRecorder recorder;
    private final int bodies;
    private final boolean[] touchedBy;
    private final double[] windingStart;
    private final double[] start = new double[3];
    private final double[] closedAt = new double[3];
    private final double[] startR = new double[9];
    private double liftZ;
    private double liftBottom;
    private final int[] touchedInOrder;
    private final double[] touchTension;
    private final Frame.Phase[] touchPhase;
    private int touches;
    Frame.Phase phase = Frame.Phase.APPROACH;

    @Nullable
    Outcome verdict;

    boolean touched;
    boolean squeezed;
    boolean clearOfTable;
    /** The object was clear of the lowered table at some time: it had been gripped. */
    boolean leftTable;

    private boolean haveClosed;
    double landingForce;
    boolean landedOnTable;
    private double objectResidual;
    private double jointResidual;
    double peakForce;
    double peakPressure;
    double sink;
    int squeezingBody = -1;
    /** What the chips say; null in a hand whose chips are not asked. */
    @Nullable
    TouchRun touching;

    RunWatch(StepSystem system, Criteria criteria, GraspObject object, boolean record) {
        this.system = system;
        this.criteria = criteria;
        this.object = object;
        recorder = record ? new FrameRecorder(system) : null;
        bodies = system.rig.tree().bodies().size();
        touchedBy = new boolean[bodies];
        touchedInOrder = new int[bodies];
        touchTension = new double[bodies];
        touchPhase = new Frame.Phase[bodies];
        windingStart = new double[system.rig.drive().motors()];
    }

    void begin() {
        verdict = null;
        touched = false;
        squeezed = false;
        clearOfTable = false;
        leftTable = false;
        haveClosed = false;
        landingForce = 0;
        landedOnTable = false;
        objectResidual = Double.NaN;
        jointResidual = Double.NaN;
        peakForce = 0;
        peakPressure = 0;
        sink = 0;
        squeezingBody = -1;
        phase = Frame.Phase.APPROACH;
        Arrays.fill(touchedBy, false);
        touches = 0;
        centre(start);
        System.arraycopy(system.r, 0, startR, 0, 9);
        if (recorder != null) {
            recorder.begin();
        }
    }

    /** Centre of mass in the world [m]. */
    private void centre(double[] out) {
        double[] r = system.r;
        double[] c = system.object.centreOfMass;
        for (int i = 0; i < 3; i++) {
            out[i] = system.p[i] + r[3 * i] * c[0] + r[3 * i + 1] * c[1] + r[3 * i + 2] * c[2];
        }
    }

    @Override
    public boolean stop(double motion) {
        if (Thread.currentThread().isInterrupted()) {
            throw new CancellationException("the closing was called off");
        }
        double total = 0;
        for (int b = 0; b < bodies; b++) {
            double f = system.pads.bodyForce(b);
            total += f;
            if (f > peakForce) {
                peakForce = f;
            }
            if (f > criteria.touchForce() && !touchedBy[b]) {
                touchedBy[b] = true;
                touched = true;
                touchedInOrder[touches] = b;
                touchTension[touches] = mostTension();
                touchPhase[touches] = phase;
                touches++;
            }
            if (object.squeezeForce().isPresent() && f > object.squeezeForce().getAsDouble()) {
                squeeze(b);
            }
        }
        double pressure = system.pads.peakPressure();
        peakPressure = Math.max(peakPressure, pressure);
        if (object.squeezePressure().isPresent()
                && pressure > object.squeezePressure().getAsDouble()) {
            squeeze(-1);
        }
        if (phase == Frame.Phase.APPROACH) {
            double onTable = system.rig.links().tableForce();
            if (Math.max(total, onTable) > landingForce) {
                landingForce = Math.max(total, onTable);
                landedOnTable = onTable > total;
            }
            if (landingForce > criteria.landingForce()) {
                verdict = Outcome.LANDED_ON_IT;
            }
        }
        if (verdict == null && travelNow() > criteria.thrown()) {
            verdict = Outcome.THROWN_OUT;
        }
        if (recorder != null) {
            recorder.step(phase, motion);
        }
        boolean allFelt =
                touching != null && phase == Frame.Phase.CLOSE && !settling && touching.accept(system.stepTime);
        return verdict != null
                || allFelt
                || (phase == Frame.Phase.CLOSE && allStalled())
                || (phase == Frame.Phase.LIFT && lifted(motion));
    }

    @Override
    public double share(double seconds) {
        return touching == null || phase != Frame.Phase.CLOSE ? 1 : touching.share(seconds);
    }

    private void squeeze(int body) {
        if (!squeezed) {
            squeezed = true;
            squeezingBody = body;
        }
        if (verdict == null) {
            verdict = Outcome.SQUEEZED;
        }
    }

    private double mostTension() {
        double most = 0;
        for (int m = 0; m < system.rig.drive().motors(); m++) {
            most = Math.max(most, system.rig.drive().tension(m));
        }
        return most;
    }

    private boolean settling;

    boolean allStalled() {
        if (settling || (touching != null && touching.armMoves)) {
            return false;
        }
        for (int m = 0; m < system.rig.drive().motors(); m++) {
            if (system.rig.drive().pulls(m)
                    && !waits(m)
                    && system.rig.drive().tension(m)
                            < 0.999 * system.rig.drive().greatest(m)) {
                return false;
            }
        }
        return true;
    }

    private boolean waits(int motor) {
        return touching != null && touching.motorStopped(motor);
    }

    /** Keeps what is out of balance in a state that has come to rest; call after the step is ended. */
    void rested() {
        // a fresh look, with the damping of the last step gone
        system.evaluate(false);
        objectResidual = system.objectResidual();
        jointResidual = system.worstJointResidual();
        if (touching != null) {
            touching.rested();
        }
    }

    /** While settling a stalled winch does not end the run of steps. */
    void settling(boolean on) {
        settling = on;
    }

    void rememberWinding() {
        for (int m = 0; m < windingStart.length; m++) {
            windingStart[m] = system.rig.drive().wound(m);
        }
    }

    /** Winds every motor that pulls and has not stalled. */
    void wind(double t) {
        for (int m = 0; m < windingStart.length; m++) {
            if (system.rig.drive().pulls(m) && !waits(m)) {
                system.rig.drive().wind(m, windingStart[m] + WINDING * t);
            }
        }
    }

    void closed() {
        haveClosed = true;
        centre(closedAt);
    }

    void beginLift() {
        liftZ = system.p[2];
        liftBottom = system.table.depth(system.r, system.p[2], 0);
    }

    private boolean lifted(double motion) {
        leftTable |= system.tableHeight < -RAISED && system.table.touching() == 0;
        sink = Math.max(sink, liftZ - system.p[2]);
        if (sink > criteria.sink()) {
            return true;
        }
        if (!settling
                && motion < STILL
                && system.table.touching() == 0
                && !system.rig.links().touchesTable()) {
            clearOfTable = true;
            return true;
        }
        return false;
    }

    /** After the lift: not sunk out of the hand, and clear of the lowered table. */
    boolean offTheTable() {
        sink = Math.max(sink, liftZ - system.p[2]);
        return sink <= criteria.sink() && system.table.depth(system.r, system.p[2], system.tableHeight) < 0;
    }

    int bodiesCarrying(double force) {
        int count = 0;
        for (int b = 0; b < bodies; b++) {
            if (system.pads.bodyForce(b) > force) {
                count++;
            }
        }
        return count;
    }

    private double travelNow() {
        double[] r = system.r;
        double[] c = system.object.centreOfMass;
        double sum = 0;
        for (int i = 0; i < 3; i++) {
            double d = system.p[i] + r[3 * i] * c[0] + r[3 * i + 1] * c[1] + r[3 * i + 2] * c[2] - start[i];
            sum += d * d;
        }
        return Math.sqrt(sum);
    }

    private double closedMinusStart(int i) {
        if (haveClosed) {
            return closedAt[i] - start[i];
        }
        double[] r = system.r;
        double[] c = system.object.centreOfMass;
        return system.p[i] + r[3 * i] * c[0] + r[3 * i + 1] * c[1] + r[3 * i + 2] * c[2] - start[i];
    }

    /** Displacement of the centre of mass by the closing [m]. */
    double travel() {
        double x = closedMinusStart(0);
        double y = closedMinusStart(1);
        double z = closedMinusStart(2);
        return Math.sqrt(x * x + y * y + z * z);
    }

    /** Angle by which the object is tipped now against its start [rad]; rolling of round things does not count. */
    double tilt() {
        double[] now = system.r;
        return switch (object.shape().symmetry()) {
            case FULL -> 0;
            case ABOUT_Z -> Math.abs(StrictMath.acos(clamp(startR[8])) - StrictMath.acos(clamp(now[8])));
            case NONE -> StrictMath.acos(clamp(startR[6] * now[6] + startR[7] * now[7] + startR[8] * now[8]));
        };
    }

    private static double clamp(double cosine) {
        return Math.max(-1, Math.min(1, cosine));
    }

    ClosingSummary summary(Outcome outcome, Stepper stepper) {
        return new ClosingSummary(
                outcome,
                travel(),
                closedMinusStart(0),
                closedMinusStart(1),
                tilt(),
                sink,
                landingForce,
                peakForce,
                peakPressure,
                bodiesCarrying(0.05),
                objectResidual,
                jointResidual,
                stepper.steps,
                stepper.newton.iterations);
    }

    /** Index of the body that touched first, -1 if none did. */
    int firstBody() {
        return touches == 0 ? -1 : touchedInOrder[0];
    }

    /** First touches of all bodies, in order. */
    List<FirstTouch> firstTouches() {
        List<FirstTouch> out = new ArrayList<>();
        for (int i = 0; i < touches; i++) {
            out.add(new FirstTouch(touchedInOrder[i], touchTension[i], touchPhase[i]));
        }
        return out;
    }

    /** Frames of the run, none if they were not wanted. */
    List<Frame> frames() {
        return recorder == null ? List.of() : recorder.frames();
    }
}
