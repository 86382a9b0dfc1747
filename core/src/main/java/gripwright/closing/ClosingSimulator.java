package gripwright.closing;

import gripwright.math.Pose;
import gripwright.math.Rotation;
import gripwright.math.Vec3;
import gripwright.model.Finger;
import gripwright.model.GraspObject;
import gripwright.model.Grip;
import gripwright.model.Hand;
import gripwright.model.Spread;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Closes one hand with one grip on one object: the open hand comes in, the winches wind until they stall, the hand is
 * raised. Quasi-static: no inertia; every step is solved for balance of forces. Not shared between threads; a run's
 * result depends on its conditions only.
 */
public final class ClosingSimulator implements ClosingRunner {
    /** A coefficient of friction sampled below this is taken as this [-]. */
    public static final double LEAST_FRICTION = 0.02;
    /** A mass sampled below this share of the mean is taken as this share [-]. */
    public static final double LEAST_MASS = 0.1;

    private static final double APPROACH_SECONDS = 10;
    private static final double CLOSE_SECONDS = 1;
    private static final double LIFT_SECONDS = 1;
    /** A motor counts as stalled at this share of its greatest tension [-]. */
    private static final double STALLED = 0.999;

    private static final double STILL_STALLED = 0.98;
    private static final int MOST_PULLS = 48;
    /** Force by which a body counts as holding [N]. */
    private static final double CARRIES = 0.05;

    private final Hand hand;
    private final Grip grip;
    private final GraspObject object;
    private final Spread tableFriction;
    private final Criteria criteria;
    private final Numerics numerics;
    final Rig rig;
    final StepSystem system;
    private final Stepper stepper;
    private final RestPose rest;
    private final GripPose gripPose;
    private final RunWatch watch;
    private final double[] surfaceFriction;
    private final double[] handRotation;
    private final double longestWinding;
    private Conditions conditions = Conditions.NOMINAL;
    private String trouble = "";
    private final Policy policy;
    private final @Nullable Sensing sensing;
    private @Nullable TouchRun keepingRun;
    /** Of the hand along x by the arm before it tightens [m]. */
    private double shift;

    /**
     * @param tableFriction coefficient of the object on the table [-]
     * @throws IllegalArgumentException if the grip names a finger that the hand does not have, a pad's rubber has no
     *     friction on the object's surface, or the object does not stay as it is said to stand
     */
    public ClosingSimulator(
            Hand hand, Grip grip, GraspObject object, Spread tableFriction, Numerics numerics, Criteria criteria) {
        this(hand, grip, object, tableFriction, numerics, criteria, Policies.BLIND, null);
    }

    /**
     * With chips.
     *
     * @param sensing null only for a policy that does not feel
     * @throws IllegalArgumentException as above, or if the hand cannot do with this grip what the policy says
     */
    public ClosingSimulator(
            Hand hand,
            Grip grip,
            GraspObject object,
            Spread tableFriction,
            Numerics numerics,
            Criteria criteria,
            Policy policy,
            @Nullable Sensing sensing) {
        this.hand = hand;
        this.grip = grip;
        this.object = object;
        this.tableFriction = tableFriction;
        this.criteria = criteria;
        this.numerics = numerics;
        rig = Rig.of(hand, grip, numerics);
        system = new StepSystem(rig, object.shape());
        stepper = new Stepper(system, numerics);
        surfaceFriction = new double[rig.points().surfaces().size()];
        rest = RestPose.find(object, tableFriction.mean());
        gripPose = GripPose.of(hand, grip, object, rest.pose(), rig.tree(), rig.open());
        handRotation = gripPose.hand().rotation().toArray();
        watch = new RunWatch(system, criteria, object, numerics.record());
        longestWinding = longestWinding(hand);
        checkFingersClear(grip);
        this.policy = policy;
        this.sensing = sensing;
        if (policy.feels()) {
            if (sensing == null) {
                throw new IllegalArgumentException("policy '" + policy.word() + "' needs chips; none are given");
            }
            policy.refusal(hand, grip, sensing).ifPresent(why -> {
                throw new IllegalArgumentException(why);
            });
            watch.touching = touchRun(sensing, false);
        }
    }

    private TouchRun touchRun(Sensing chips, boolean keep) {
        return new TouchRun(chips, hand, grip, system, watch, stepper, keep, this::shiftHand, this::wound);
    }

    private void shiftHand(double along) {
        shift = along;
        handBack(0);
    }

    /** Travel that pulls every joint to its stop, with room for the tendon's stretch [m]. */
    private static double longestWinding(Hand hand) {
        double sum = 0;
        for (gripwright.model.Motor motor : hand.motors()) {
            sum = Math.max(sum, motor.greatestTension() / motor.tendonStiffness());
        }
        for (Finger finger : hand.fingers()) {
            for (gripwright.model.Joint joint : finger.joints()) {
                sum += joint.momentArm() * (joint.upper() - joint.lower()) * 4;
            }
        }
        return sum + 0.05;
    }

    private void checkFingersClear(Grip grip) {
        place(Conditions.NOMINAL, gripPose.retreat());
        system.commit();
        double gap = rig.links().leastFingerGap();
        if (gap < 0) {
            throw new IllegalArgumentException("in grip '" + grip.name() + "' two open fingers overlap by "
                    + Math.round(-gap * 1e5) / 100.0
                    + " mm; move their bases apart or turn them less");
        }
    }

    // ------------------------------------------------------------------ a run

    @Override
    public ClosingSummary run(Conditions wanted) {
        begin(wanted);
        Outcome outcome = approach();
        if (outcome == Outcome.HELD) {
            outcome = close();
        }
        if (outcome == Outcome.HELD) {
            outcome = lift();
        }
        return watch.summary(judge(outcome), stepper);
    }

    @Override
    public ClosingDetail detail(Conditions wanted) {
        ClosingSummary summary = run(wanted);
        return new DetailWriter(system, watch, object, criteria, numerics, hand).write(summary, conditions, trouble);
    }

    @Override
    public SensedDetail sensed(Conditions wanted) {
        if (sensing == null) {
            throw new UnsupportedOperationException("this hand's chips are not asked");
        }
        TouchRun usual = watch.touching;
        TouchRun keeping = keepingRun == null ? touchRun(sensing, true) : keepingRun;
        keepingRun = keeping;
        watch.touching = keeping;
        try {
            ClosingDetail closing = detail(wanted);
            return new SensedDetail(closing, keeping.readings(policy, closing.bodies()));
        } finally {
            watch.touching = usual;
        }
    }

    @Override
    public HoldDetail hold(Conditions wanted, HoldPlan plan) {
        ClosingDetail closing = detail(wanted);
        if (closing.summary().outcome() != Outcome.HELD) {
            return HoldDetail.notHeld(closing, plan);
        }
        HoldTests tests = new HoldTests(system, stepper, criteria);
        List<String> fingers = hand.fingers().stream().map(Finger::name).toList();
        Release release = new LettingGo(system, stepper, criteria, fingers).from(tests.held, this::handBack, retreat());
        Pressing pressing = new Pressing(hand, grip, system, object.shape(), tests, wanted.springRate());
        List<PressResult> presses = object.tasks().stream()
                .filter(task -> task.grip().equals(grip.name()))
                .map(task -> pressing.run(task, plan.travel()))
                .toList();
        return tests.all(closing, plan, reach(), Optional.of(release)).with(presses);
    }

    /** Greatest extent of the object from its centre of mass along its own axes [m]. */
    private double reach() {
        double most = 0;
        for (Vec3 d : HoldTests.SIX) {
            most = Math.max(most, object.shape().extent(d) - d.dot(object.centreOfMass()));
        }
        return most;
    }

    /** Tests of the state that the last run left; only after one that ended held. */
    HoldTests holdTests() {
        return new HoldTests(system, stepper, criteria);
    }

    private void begin(Conditions wanted) {
        conditions = wanted;
        trouble = "";
        for (int i = 0; i < surfaceFriction.length; i++) {
            String surface = rig.points().surfaces().get(i);
            Spread mu = surface.equals(gripwright.contact.PadPoints.BONE)
                    ? hand.friction().bone()
                    : hand.friction()
                            .of(surface, object.surface())
                            .orElseThrow(() -> new IllegalArgumentException("no friction is given for rubber '"
                                    + surface + "' on '" + object.surface() + "', the surface of " + object.name()));
            surfaceFriction[i] = sampled(mu, wanted.padFriction());
        }
        system.pads.reset(surfaceFriction, wanted.padStiffness());
        system.table.reset(sampled(tableFriction, wanted.tableFriction()));
        rig.links().reset(hand.friction().bone().mean());
        system.springs.setRateFactor(wanted.springRate());
        double mass =
                object.massSpread().mean() + wanted.mass() * object.massSpread().deviation();
        system.object.mass = Math.max(LEAST_MASS * object.mass(), mass);
        system.viscosity = numerics.viscosityScale();
        system.tableHeight = 0;
        stepper.reset();
        shift = 0;
        if (watch.touching != null) {
            watch.touching.begin(object.name(), wanted);
        }
        place(wanted, retreat());
        rig.drive().reset(system.q);
        system.commit();
        watch.begin();
    }

    /** A coefficient some standard deviations from its mean; never below the lesser of the mean and the floor. */
    private static double sampled(Spread mu, double score) {
        return Math.max(Math.min(mu.mean(), LEAST_FRICTION), mu.mean() + score * mu.deviation());
    }

    /** From the side the misplaced object may stand nearer: start farther back. */
    private double retreat() {
        return gripPose.retreat() + Math.abs(conditions.x()) + Math.abs(conditions.y()) + Math.abs(conditions.height());
    }

    private void place(Conditions c, double back) {
        System.arraycopy(rig.open(), 0, system.q, 0, system.joints);
        Rotation turn = Rotation.about(Vec3.Z, c.turn());
        Pose pose = rest.pose();
        Vec3 p = turn.apply(pose.position()).plus(new Vec3(c.x(), c.y(), 0));
        system.p[0] = p.x();
        system.p[1] = p.y();
        system.p[2] = p.z();
        System.arraycopy(turn.times(pose.rotation()).toArray(), 0, system.r, 0, 9);
        Vec3 com = object.centreOfMass();
        system.object.centreOfMass[0] = com.x();
        system.object.centreOfMass[1] = com.y();
        system.object.centreOfMass[2] = com.z();
        handBack(back);
    }

    /** Puts the hand {@code back} metres before its grip pose on its way in. */
    private void handBack(double back) {
        Vec3 at = gripPose.hand().position();
        Vec3 d = gripPose.direction();
        system.kinematics.setBase(
                handRotation,
                at.x() + shift - back * d.x(),
                at.y() - back * d.y(),
                at.z() + conditions.height() - back * d.z());
    }

    /** HELD stands for "go on". */
    private Outcome approach() {
        watch.phase = Frame.Phase.APPROACH;
        // a low side grip may have the table in its way from the start
        if (watch.stop(0)) {
            return goOn(Stepper.End.STOPPED);
        }
        double back = retreat();
        Stepper.End end = stepper.ramp(t -> handBack(back * (1 - t)), APPROACH_SECONDS, 0.02, 1, watch);
        if (end == Stepper.End.DONE) {
            end = settle();
        }
        return goOn(end);
    }

    private Stepper.End settle() {
        watch.settling(true);
        Stepper.End end = stepper.settle(watch);
        watch.settling(false);
        if (end == Stepper.End.DONE) {
            watch.rested();
        }
        return end;
    }

    private Outcome close() {
        watch.phase = Frame.Phase.CLOSE;
        TouchRun touching = watch.touching;
        if (touching != null) {
            touching.arrived();
            Stepper.End end = policy.beforeTightening(touching);
            if (end != Stepper.End.DONE) {
                return goOn(end);
            }
        }
        for (int pull = 0; pull < MOST_PULLS; pull++) {
            double first = pull == 0 ? 0.01 : 1e-4;
            Stepper.End end = Stepper.End.DONE;
            while (!stalled(STALLED)) {
                watch.rememberWinding();
                end = stepper.ramp(watch::wind, CLOSE_SECONDS, first, 0.02, watch);
                if (end != Stepper.End.STOPPED || watch.verdict != null || wound()) {
                    break;
                }
                first = 1e-4;
            }
            if (end == Stepper.End.STUCK || watch.verdict != null) {
                return goOn(end);
            }
            end = settle();
            if (end != Stepper.End.DONE) {
                return goOn(end);
            }
            if (stalled(STILL_STALLED) || wound()) {
                watch.closed();
                if (touching != null) {
                    touching.lastRound();
                }
                return watch.bodiesCarrying(CARRIES) >= 2 ? Outcome.HELD : Outcome.DROPPED;
            }
        }
        trouble = "the tension still fell after winding " + MOST_PULLS + " times";
        return Outcome.UNDECIDED;
    }

    private boolean stalled(double share) {
        for (int m = 0; m < rig.drive().motors(); m++) {
            if (rig.drive().pulls(m)
                    && rig.drive().tension(m) < share * rig.drive().greatest(m)) {
                return false;
            }
        }
        return true;
    }

    /** True when winding on is pointless: everything is at its stop and the tendon still slack. */
    private boolean wound() {
        for (int m = 0; m < rig.drive().motors(); m++) {
            if (rig.drive().pulls(m) && rig.drive().wound(m) < longestWinding) {
                return false;
            }
        }
        return true;
    }

    private Outcome lift() {
        watch.phase = Frame.Phase.LIFT;
        rig.drive().hold();
        watch.beginLift();
        Stepper.End end = stepper.ramp(t -> system.tableHeight = -criteria.lift() * t, LIFT_SECONDS, 0.01, 0.1, watch);
        if (end == Stepper.End.DONE || watch.clearOfTable) {
            system.tableHeight = -criteria.lift();
            end = watch.verdict == null ? settle() : end;
        }
        if (end == Stepper.End.STUCK) {
            return goOn(end);
        }
        if (watch.verdict != null) {
            return watch.verdict;
        }
        return watch.offTheTable() ? Outcome.HELD : Outcome.DROPPED;
    }

    private Outcome goOn(Stepper.End end) {
        if (end == Stepper.End.STUCK) {
            trouble = stepper.trouble;
            return Outcome.UNDECIDED;
        }
        return watch.verdict == null ? Outcome.HELD : watch.verdict;
    }

    /** Turns "not held" into what happened to the object. */
    private Outcome judge(Outcome outcome) {
        if (outcome == Outcome.UNDECIDED || outcome == Outcome.LANDED_ON_IT) {
            return outcome;
        }
        if (watch.squeezed) {
            return Outcome.SQUEEZED;
        }
        if (!watch.touched) {
            return Outcome.MISSED;
        }
        if (outcome == Outcome.THROWN_OUT || outcome == Outcome.HELD) {
            return outcome;
        }
        if (watch.leftTable) {
            // it was gripped and raised; what the closing did to it before is not why it failed
            return Outcome.DROPPED;
        }
        if (watch.tilt() > criteria.tilt()) {
            return Outcome.KNOCKED_OVER;
        }
        return watch.travel() > criteria.pushed() ? Outcome.PUSHED_AWAY : Outcome.DROPPED;
    }
}
