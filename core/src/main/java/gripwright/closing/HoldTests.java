package gripwright.closing;

import gripwright.contact.WrenchSpace;
import gripwright.math.Pose;
import gripwright.math.Rotation;
import gripwright.math.Vec3;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleConsumer;
import java.util.function.DoubleFunction;
import java.util.function.DoubleSupplier;

/**
 * Tests of one held state: each begins from it, and it is put back afterwards. The table is gone, the winches are as the
 * run left them. Displacements are those of the centre of mass in the hand: the give of the arm does not count.
 */
final class HoldTests {
    /** Stiffness of the spring that pulls [N/m] and of the one that turns [N m/rad]: stiffer than the hand. */
    private static final double PULL_STIFFNESS = 2e4;

    private static final double TURN_STIFFNESS = PULL_STIFFNESS * HoldPlan.TURN_ARM * HoldPlan.TURN_ARM;

    /** Speed of the far end [m/s]: slow, so that damping adds next to nothing. */
    private static final double PULL_SPEED = 0.5e-3;

    /** Motion of the far end between two looks at the load [m], and its share of the travel. */
    private static final double LOOK = 1e-4;

    private static final double LONGEST = 0.02;
    /** The far end goes no farther [m]: a soft arm follows, and at a pull of 100 N it may have given 20 mm and more. */
    private static final double FARTHEST_PULL = 0.25;
    /** Nor does it turn farther [rad]: near half a turn the angle would jump. */
    private static final double FARTHEST_TURN = 2.5;

    private static final double LOAD_SECONDS = 1;
    private static final double FIRST_ACCELERATION = 4;
    /** Forty times gravity; nothing on a bench is shaken harder [m/s^2]. */
    private static final double GREATEST_ACCELERATION = 400;

    private static final double CLOSE_ENOUGH = 1.03;

    static final List<Vec3> SIX = List.of(Vec3.X, Vec3.X.times(-1), Vec3.Y, Vec3.Y.times(-1), Vec3.Z, Vec3.Z.times(-1));

    private final StepSystem system;
    private final Stepper stepper;
    private final Criteria criteria;
    final Snapshot held;
    private final InHand inHand;

    /** Takes the system's present state, which must be at rest, as the held one. */
    HoldTests(StepSystem system, Stepper stepper, Criteria criteria) {
        this.system = system;
        this.stepper = stepper;
        this.criteria = criteria;
        system.updatePoses();
        inHand = new InHand(system);
        held = Snapshot.of(system);
    }

    private void begin() {
        held.restore(system);
        system.tableThere = false;
        stepper.reset();
    }

    // ------------------------------------------------------------------ pulling and turning

    /** Pulls along (or turns about) a direction until the object has moved by the travel. */
    PullResult pull(Vec3 axis, boolean turning, double travel) {
        return pull(axis, turning, travel, turning ? LOOK / HoldPlan.TURN_ARM : LOOK);
    }

    /** @param look motion of the far end between two looks at the load [m or rad]: a sharp peak is found that well */
    PullResult pull(Vec3 axis, boolean turning, double travel, double look) {
        begin();
        ObjectSpring spring = turning
                ? new TurnSpring(system.object, axis, TURN_STIFFNESS, system.r)
                : new PullSpring(system.object, axis, PULL_STIFFNESS, system.p, system.r);
        DoubleSupplier moved = turning
                ? () -> spring.moved(system.p, system.r) - inHand.palmTwist(axis)
                : () -> axis.dot(inHand.moved());
        PullWatch watch =
                new PullWatch(system, criteria, () -> spring.load(system.p, system.r), moved, axis, turning, travel);
        system.object.pull = spring;
        try {
            return watch.result(pulled(spring::farEnd, watch, look), stepper.trouble);
        } finally {
            system.object.pull = null;
            held.restore(system);
        }
    }

    /** Moves the far end on until the watch has seen enough. */
    private Stepper.End pulled(DoubleConsumer farEnd, PullWatch watch, double look) {
        double travel = watch.travel;
        double longest = Math.min(LONGEST, look / travel);
        double seconds = travel * (watch.turning ? HoldPlan.TURN_ARM : 1) / PULL_SPEED;
        Stepper.End end = Stepper.End.DONE;
        double farthest = watch.turning ? FARTHEST_TURN : FARTHEST_PULL;
        for (double far = 0; end == Stepper.End.DONE && far < farthest; far += travel) {
            double from = far;
            stepper.steps = 0;
            end = stepper.ramp(t -> farEnd.accept(from + travel * t), seconds, 1e-3, longest, watch, Stepper.READ);
        }
        return end;
    }

    /**
     * What a push on one place of the object did.
     *
     * @param push of the place along the direction, against the palm
     * @param turned turn of the object in the hand at the end [rad]
     * @param share of the place's travel that the centre of mass made as well [-]: near 1 it slides, near 0 it turns
     */
    record Pushed(PullResult push, double turned, double share) {}

    /**
     * Pushes a place of the object along a direction, against the palm, until it has moved by the travel.
     *
     * @param place and
     * @param direction in the world, in the held state
     */
    Pushed push(Vec3 place, Vec3 direction, double travel) {
        begin();
        PressSpring spring = new PressSpring(
                inHand.object.rotation().applyInverse(direction),
                PULL_STIFFNESS,
                inHand.palm.applyInverse(place),
                inHand.object,
                place);
        PullWatch watch = new PullWatch(
                system,
                criteria,
                () -> spring.load(system.objectRotation, system.objectPosition),
                () -> spring.moved(system.objectRotation, system.objectPosition),
                direction,
                false,
                travel);
        system.press = spring;
        try {
            PullResult result = watch.result(pulled(spring::farEnd, watch, LOOK), stepper.trouble);
            double share = direction.dot(inHand.moved()) / result.reached();
            return new Pushed(result, inHand.turned(), share);
        } finally {
            system.press = null;
            held.restore(system);
        }
    }

    // ------------------------------------------------------------------ loads

    /** The weight turned from straight down towards a direction, and left there. */
    LoadResult gravityTowards(Vec3 direction) {
        Vec3 down = Vec3.Z.times(-1);
        Vec3 across = down.cross(direction);
        Vec3 about = across.length() > 1e-9 ? across : Vec3.Y;
        double angle = StrictMath.acos(Math.max(-1, Math.min(1, down.dot(direction))));
        double weight = system.object.mass * FreeObject.GRAVITY;
        return load(
                direction,
                t -> Rotation.about(about, angle * t).apply(down).times(weight).plus(Vec3.Z.times(weight)));
    }

    /** Half a sine of acceleration along a direction, its peak given [m/s^2], taken as a slow load. */
    LoadResult pulse(Vec3 axis, double peak) {
        double most = system.object.mass * peak;
        return load(axis, t -> axis.times(-most * StrictMath.sin(Math.PI * t)));
    }

    /** Carried round a circle without being turned: the load goes once round the horizontal. */
    LoadResult steadyTurn(double acceleration) {
        double most = system.object.mass * acceleration;
        return load(Vec3.Z, t -> {
            double angle = 2 * Math.PI * Math.max(0, (t - 0.2) / 0.8);
            double size = most * Math.min(1, t / 0.2);
            return new Vec3(size * StrictMath.cos(angle), size * StrictMath.sin(angle), 0);
        });
    }

    /** The greatest acceleration of the hand along a direction, by doubling and halving. */
    Endurance endurance(Vec3 axis) {
        double low = 0;
        double high = FIRST_ACCELERATION;
        boolean undecided = false;
        while (high <= GREATEST_ACCELERATION) {
            Kept kept = accelerate(axis, high);
            if (kept != Kept.KEPT) {
                undecided = kept == Kept.UNDECIDED;
                break;
            }
            low = high;
            high *= 2;
        }
        if (high > GREATEST_ACCELERATION) {
            return new Endurance(axis, low, Double.POSITIVE_INFINITY, false);
        }
        while (high - low > 0.05 && high > CLOSE_ENOUGH * low) {
            double middle = 0.5 * (low + high);
            Kept kept = accelerate(axis, middle);
            if (kept == Kept.KEPT) {
                low = middle;
            } else {
                high = middle;
                undecided = kept == Kept.UNDECIDED;
            }
        }
        return new Endurance(axis, low, high, undecided);
    }

    Kept accelerate(Vec3 axis, double acceleration) {
        double most = system.object.mass * acceleration;
        return load(axis, t -> axis.times(-most * t)).kept();
    }

    /** Displacement under an acceleration that is kept [m]. */
    double accelerationGive(Vec3 axis, double acceleration) {
        double most = system.object.mass * acceleration;
        return load(axis, t -> axis.times(-most * t)).atRest();
    }

    /**
     * Puts a force on the centre of mass, weight besides.
     *
     * @param force by the share 0..1 of the test gone by [N], world
     */
    private LoadResult load(Vec3 axis, DoubleFunction<Vec3> force) {
        begin();
        Vec3 before = new Vec3(system.object.push[0], system.object.push[1], system.object.push[2]);
        double[] worst = new double[2];
        Stepper.Watch watch = motion -> {
            worst[0] = Math.max(worst[0], inHand.moved().length());
            worst[1] = Math.max(worst[1], inHand.turned());
            return worst[0] > criteria.sink() || worst[1] > criteria.tilt();
        };
        Stepper.End end = stepper.ramp(
                t -> {
                    Vec3 f = before.plus(force.apply(t));
                    system.object.push[0] = f.x();
                    system.object.push[1] = f.y();
                    system.object.push[2] = f.z();
                },
                LOAD_SECONDS,
                0.01,
                LONGEST,
                watch);
        if (end == Stepper.End.DONE) {
            end = stepper.settle(watch);
        }
        Kept kept = end == Stepper.End.DONE ? Kept.KEPT : end == Stepper.End.STOPPED ? Kept.LOST : Kept.UNDECIDED;
        double atRest = kept == Kept.KEPT ? inHand.moved().length() : Double.NaN;
        held.restore(system);
        return new LoadResult(axis, kept, worst[0], worst[1], atRest);
    }

    // ------------------------------------------------------------------ all of them

    /** Faces and corners of a cube. */
    static List<Vec3> fourteen() {
        List<Vec3> out = new ArrayList<>(SIX);
        for (int i = 0; i < 8; i++) {
            out.add(new Vec3((i & 1) == 0 ? 1 : -1, (i & 2) == 0 ? 1 : -1, (i & 4) == 0 ? 1 : -1).unit());
        }
        return out;
    }

    /** @param reach greatest extent of the object from its centre of mass, by which torques are divided [m] */
    HoldDetail all(ClosingDetail closing, HoldPlan plan, double reach, Optional<Release> release) {
        double a = plan.acceleration();
        return new HoldDetail(
                closing,
                plan,
                SIX.stream().map(d -> pull(d, false, plan.travel())).toList(),
                SIX.stream().map(d -> pull(d, true, plan.turn())).toList(),
                fourteen().stream().map(this::gravityTowards).toList(),
                a > 0 ? SIX.stream().map(d -> pulse(d, a)).toList() : List.of(),
                a > 0 ? Optional.of(steadyTurn(a)) : Optional.empty(),
                SIX.stream().map(this::endurance).toList(),
                Optional.of(StiffnessOfGrasp.of(system, held)),
                Optional.of(new WrenchSpace(contacts(), reach).quality()),
                release);
    }

    /** The pressed points of the held state, from the centre of mass, world axes. */
    List<WrenchSpace.Contact> contacts() {
        List<WrenchSpace.Contact> out = new ArrayList<>();
        double[] f = new double[6];
        for (int b = 0; b < system.rig.points().bodies(); b++) {
            Pose body = system.bodyPose(b);
            for (int i = system.rig.points().firstPoint(b);
                    i < system.rig.points().firstPoint(b + 1);
                    i++) {
                if (system.pads.force(i) <= 0) {
                    continue;
                }
                system.pads.forceOnObject(i, system.objectRotation, system.objectPosition, b, f);
                Vec3 place = body.apply(system.rig.points().points().get(i).place());
                Vec3 normal = inHand.object.rotation().apply(new Vec3(f[0], f[1], f[2]));
                out.add(new WrenchSpace.Contact(place.minus(inHand.centre), normal, system.pads.friction(i), 0));
            }
        }
        return out;
    }
}
