package gripwright.closing;

import gripwright.check.Check;
import gripwright.closing.PressResult.Reach;
import gripwright.closing.PressResult.Verdict;
import gripwright.math.Pose;
import gripwright.math.Rotation;
import gripwright.math.Vec3;
import gripwright.mechanics.HandTree;
import gripwright.model.Finger;
import gripwright.model.Grip;
import gripwright.model.Hand;
import gripwright.model.Motor;
import gripwright.model.Press;
import gripwright.shape.Shape;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Tests a job of a free finger on the held object, in two parts that meet in the force between them: the finger, from
 * the statics of its own joints on a place that gives way; and the hold, pushed at that place against the palm along the
 * finger's force until it gives way. The state is put back.
 */
final class Pressing {
    /** First step on the way, as a share of the greatest tension; then no joint turns by more than this in one [rad]. */
    private static final int ON_THE_WAY = 400;

    private static final double MOST_TURN = 0.02;
    private static final double SHORTEST = 1e-9;

    private static final int PRESSING = 40;
    private static final int FOLLOWING = 20;
    /** A pad that first counts as over the place deeper than this has come with its end or side [m]. */
    private static final double FROM_ABOVE = 2e-4;
    /** Sinking of the finger into something else that counts as meeting it [m]. */
    private static final double MEETS = 3e-4;
    /** Within this of the place the last pad may touch the object: half a fingertip [m]. */
    private static final double AROUND = 0.01;

    private final Hand hand;
    private final Grip grip;
    private final StepSystem system;
    private final Shape shape;
    private final HoldTests tests;
    private final double springRate;

    /** @param springRate factor on the joint springs in this run [-] */
    Pressing(Hand hand, Grip grip, StepSystem system, Shape shape, HoldTests tests, double springRate) {
        this.hand = hand;
        this.grip = grip;
        this.system = system;
        this.shape = shape;
        this.tests = tests;
        this.springRate = springRate;
    }

    /** @param travel of the place in the hand to which the hold is pushed [m] */
    PressResult run(Press task, double travel) {
        tests.held.restore(system);
        try {
            return new OfTask(task, travel).result();
        } finally {
            tests.held.restore(system);
        }
    }

    private static PressingFinger finger(Hand hand, Finger finger, double springRate) {
        double friction = 0;
        double wrap = 0;
        for (Motor motor : hand.motors()) {
            if (motor.pulls().fingers().contains(finger.name())) {
                friction = motor.sheathFriction();
                wrap = motor.wrap().getOrDefault(finger.name(), 0.0);
            }
        }
        return new PressingFinger(finger, friction, wrap, springRate);
    }

    private final class OfTask {
        private final Press task;
        private final double travel;
        private final int index;
        private final PressingFinger finger;
        private final int[] flexions;
        private final int lastBody;
        /** From the plane of the finger to the world. */
        private final Pose plane;

        private final Pose object;
        private final Vec3 place;
        private final Vec3 direction;
        private final double restingGap;
        private Reach reach = Reach.SHORT;
        private double miss = Double.POSITIVE_INFINITY;
        private String met = "";
        private double touchTension = Double.NaN;
        private double fingerForce = Double.NaN;
        private double lastForce = Double.NaN;
        private double needed = Double.NaN;
        private double off = Double.NaN;
        private boolean slides;
        private boolean slidOff;
        private double followed;
        private String trouble = "";

        OfTask(Press task, double travel) {
            this.task = task;
            this.travel = travel;
            List<String> names = hand.fingers().stream().map(Finger::name).toList();
            index = names.indexOf(task.finger());
            Check.that(
                    index >= 0,
                    "task '" + task.name() + "' names the finger '" + task.finger() + "'; the hand has " + names);
            Check.that(
                    !grip.fingers().contains(task.finger()),
                    "task '" + task.name() + "' needs the finger '" + task.finger() + "', which takes part in grip '"
                            + grip.name() + "'");
            finger = finger(hand, hand.fingers().get(index), springRate);
            flexions = Rig.flexions(system.rig.tree(), hand.fingers().size()).get(index);
            lastBody = lastBody();
            HandTree.Coordinate base = system.rig.tree().coordinates().get(flexions[0]);
            plane = system.bodyPose(0).times(new Pose(base.offset(), base.mounting()));
            object = new Pose(new Vec3(system.p[0], system.p[1], system.p[2]), Rotation.of(system.r, 0));
            place = plane.applyInverse(object.apply(task.point()));
            direction = plane.rotation().applyInverse(object.rotation().apply(task.direction()));
            restingGap = system.rig.links().leastFingerGap();
        }

        private int lastBody() {
            int last = 0;
            for (int b = 0; b < system.rig.tree().bodies().size(); b++) {
                if (system.rig.tree().bodies().get(b).finger() == index) {
                    last = b;
                }
            }
            return last;
        }

        PressResult result() {
            approach();
            List<Double> posture = Arrays.stream(finger.q).boxed().toList();
            Vec3 along = task.direction();
            double aligned = 1;
            if (reach == Reach.REACHES) {
                Vec3 f = press();
                double force = f.dot(direction);
                fingerForce = force;
                off = StrictMath.acos(Math.max(-1, Math.min(1, force / f.length())));
                if (force > 0) {
                    aligned = force / f.length();
                    along = object.rotation()
                            .applyInverse(plane.rotation().apply(f))
                            .unit();
                }
            }
            HoldTests.Pushed pushed =
                    tests.push(object.apply(task.point()), object.rotation().apply(along), travel);
            double holdForce = aligned * pushed.push().peak();
            double give = displacementAt(pushed.push(), task.force() / aligned);
            if (reach == Reach.REACHES && fingerForce > 0 && !slidOff && trouble.isEmpty()) {
                follow(along, Double.isNaN(give) ? 0 : give);
            }
            if (pushed.push().kind() == PullResult.Kind.UNDECIDED) {
                trouble = pushed.push().trouble();
            }
            return new PressResult(
                    task,
                    reach,
                    reach == Reach.REACHES ? 0 : miss,
                    met,
                    touchTension,
                    posture,
                    fingerForce,
                    lastForce,
                    needed,
                    off,
                    slides,
                    followed,
                    pushed.push(),
                    holdForce,
                    give,
                    pushed.turned(),
                    pushed.share(),
                    verdict(pushed, give),
                    trouble);
        }

        private Verdict verdict(HoldTests.Pushed pushed, double give) {
            if (reach != Reach.REACHES) {
                return Verdict.NOT_REACHED;
            }
            if (!trouble.isEmpty()) {
                return Verdict.UNDECIDED;
            }
            if (slidOff) {
                return Verdict.SLIDES_OFF;
            }
            if (fingerForce < task.force()) {
                return Verdict.TOO_WEAK;
            }
            if (Double.isNaN(give)) {
                return pushed.share() < 0.5
                        ? Verdict.TURNS
                        : pushed.push().kind() == PullResult.Kind.YIELDS ? Verdict.YIELDS : Verdict.SLIPS;
            }
            if (followed < task.travel()) {
                return Verdict.CANNOT_FOLLOW;
            }
            return lastForce < task.force() ? Verdict.TOO_WEAK : Verdict.WORKS;
        }

        // ------------------------------------------------------------------ the finger

        /** Draws the finger in until its last pad touches the place, or the tension is reached. */
        private void approach() {
            finger.free(0);
            miss = distance();
            if (finger.gap(place.x(), place.y()) <= 0) {
                reach = Reach.PAST;
                return;
            }
            double most = task.greatestTension();
            double before = 0;
            double step = most / ON_THE_WAY;
            double[] posture = finger.q.clone();
            while (before < most) {
                double tension = Math.min(most, before + step);
                finger.free(tension);
                double turned = finger.turnedSince(posture);
                if (turned > MOST_TURN && step > SHORTEST * most) {
                    step *= 0.5;
                    continue;
                }
                if (finger.gap(place.x(), place.y()) <= 0) {
                    tension = touching(before, tension);
                    miss = Math.min(miss, distance());
                    if (finger.gap(place.x(), place.y()) >= -FROM_ABOVE) {
                        touched(tension);
                    }
                    return;
                }
                miss = Math.min(miss, distance());
                if (meets(Vec3.ZERO, 0)) {
                    reach = Reach.BLOCKED;
                    return;
                }
                before = tension;
                posture = finger.q.clone();
                step *= turned < 0.5 * MOST_TURN ? 2 : 1;
            }
            if (Math.abs(place.z()) > finger.halfWidth) {
                reach = Reach.BESIDE;
            }
        }

        private void touched(double tension) {
            if (Math.abs(place.z()) > finger.halfWidth) {
                reach = Reach.BESIDE;
            } else if (meets(Vec3.ZERO, 0)) {
                reach = Reach.BLOCKED;
            } else {
                reach = Reach.REACHES;
                touchTension = tension;
            }
        }

        private double distance() {
            double beside = Math.max(0, Math.abs(place.z()) - finger.halfWidth);
            return Math.hypot(beside, finger.distance(place.x(), place.y()));
        }

        private double touching(double apart, double under) {
            double low = apart;
            double high = under;
            for (int i = 0; i < 50; i++) {
                double middle = 0.5 * (low + high);
                finger.free(middle);
                if (finger.gap(place.x(), place.y()) > 0) {
                    low = middle;
                } else {
                    high = middle;
                }
            }
            finger.free(high);
            return high;
        }

        /** Raises the tension on the place that it touches; the force on it at the greatest tension, in the plane. */
        private Vec3 press() {
            int pad = system.rig.points().firstPoint(lastBody);
            finger.touch(place.x(), place.y(), system.pads.friction(pad));
            double tension = touchTension;
            double last = 0;
            Vec3 force = Vec3.ZERO;
            for (int i = 1; i <= PRESSING; i++) {
                double next = touchTension + (task.greatestTension() - touchTension) * i / PRESSING;
                if (!finger.press(place.x(), place.y(), next)) {
                    trouble = "the finger finds no balance on the place at " + Math.round(next * 10) / 10.0 + " N";
                    return force;
                }
                if (!finger.over(place.x(), place.y())) {
                    slidOff = true;
                    return force;
                }
                force = force();
                slides |= finger.slides();
                double along = force.dot(direction);
                if (Double.isNaN(needed) && along >= task.force()) {
                    needed = tension + (next - tension) * (task.force() - last) / (along - last);
                }
                tension = next;
                last = along;
            }
            return force;
        }

        private Vec3 force() {
            double[] f = finger.force(place.x(), place.y());
            return new Vec3(f[0], f[1], 0);
        }

        /** Lets the place give way by the task's travel and the hold by its give, at the greatest tension. */
        private void follow(Vec3 along, double give) {
            Vec3 given = plane.rotation().applyInverse(object.rotation().apply(along));
            for (int i = 1; i <= FOLLOWING; i++) {
                double share = (double) i / FOLLOWING;
                Vec3 now = place.plus(direction.times(share * task.travel())).plus(given.times(share * give));
                if (!finger.press(now.x(), now.y(), task.greatestTension())) {
                    trouble = "the finger finds no balance on the place as it gives way";
                    return;
                }
                boolean over = finger.over(now.x(), now.y()) && Math.abs(now.z()) <= finger.halfWidth;
                if (!over || meets(plane.rotation().apply(given).times(share * give), share * task.travel())) {
                    return;
                }
                followed = share * task.travel();
                double[] f = finger.force(now.x(), now.y());
                lastForce = i == FOLLOWING ? f[0] * direction.x() + f[1] * direction.y() : Double.NaN;
            }
        }

        /**
         * True, with its name noted, if a body of the finger as it stands meets the object elsewhere than at the place,
         * or another finger.
         *
         * @param shift of the object in the hand [m], world
         * @param sunk by how much the place has given way [m]
         */
        private boolean meets(Vec3 shift, double sunk) {
            for (int j = 0; j < flexions.length; j++) {
                system.q[flexions[j]] = finger.q[j];
            }
            system.commit();
            if (system.rig.links().leastFingerGap() < Math.min(0, restingGap) - MEETS) {
                met = "another finger";
                return true;
            }
            Vec3 around = task.point().plus(task.direction().times(sunk));
            for (int b = 0; b <= lastBody; b++) {
                if (system.rig.tree().bodies().get(b).finger() == index && inside(b, shift, around)) {
                    met = system.rig.tree().bodies().get(b).name();
                    return true;
                }
            }
            return false;
        }

        private boolean inside(int body, Vec3 shift, Vec3 around) {
            Pose pose = system.bodyPose(body);
            for (int i = system.rig.points().firstPoint(body);
                    i < system.rig.points().firstPoint(body + 1);
                    i++) {
                Vec3 y = object.applyInverse(
                        pose.apply(system.rig.points().points().get(i).place()).minus(shift));
                double gap = shape.distance(y.x(), y.y(), y.z())
                        - system.rig.points().points().get(i).radius();
                boolean atPlace = body == lastBody && y.minus(around).length() < AROUND;
                if (gap < -MEETS && !atPlace) {
                    return true;
                }
            }
            return false;
        }
    }

    /** Displacement at which a load was first reached; NaN if it was not. */
    private static double displacementAt(PullResult push, double load) {
        List<PullResult.Sample> curve = new ArrayList<>(push.curve());
        for (int i = 1; i < curve.size(); i++) {
            PullResult.Sample a = curve.get(i - 1);
            PullResult.Sample b = curve.get(i);
            if (b.load() >= load) {
                return a.moved() + (b.moved() - a.moved()) * (load - a.load()) / (b.load() - a.load());
            }
        }
        return Double.NaN;
    }
}
