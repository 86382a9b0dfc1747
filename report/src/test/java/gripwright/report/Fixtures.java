package gripwright.report;

import gripwright.closing.ClosingDetail;
import gripwright.closing.ClosingSummary;
import gripwright.closing.Conditions;
import gripwright.closing.ContactForce;
import gripwright.closing.Criteria;
import gripwright.closing.Frame;
import gripwright.closing.Numerics;
import gripwright.closing.Outcome;
import gripwright.math.Pose;
import gripwright.math.Rotation;
import gripwright.math.Vec3;
import gripwright.model.Finger;
import gripwright.model.FingerTendon;
import gripwright.model.Flexure;
import gripwright.model.Floating;
import gripwright.model.FrictionTable;
import gripwright.model.GraspObject;
import gripwright.model.Grip;
import gripwright.model.Hand;
import gripwright.model.Joint;
import gripwright.model.Motor;
import gripwright.model.Need;
import gripwright.model.PadLayer;
import gripwright.model.Palm;
import gripwright.model.Phalanx;
import gripwright.model.PinJoint;
import gripwright.model.Placement;
import gripwright.model.Project;
import gripwright.model.Rubber;
import gripwright.model.Scatter;
import gripwright.model.Spread;
import gripwright.model.Transmission;
import gripwright.shape.Box;
import gripwright.shape.Capsule;
import gripwright.shape.Cylinder;
import gripwright.shape.Ring;
import gripwright.shape.Shape;
import gripwright.shape.Sphere;
import gripwright.study.MapResult;
import gripwright.study.Proportion;
import gripwright.study.TrialsResult;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Invented hand, objects and results: drawn here, computed nowhere. */
final class Fixtures {
    private Fixtures() {}

    static final Rubber SOFT = new Rubber("soft", 0.7e6, "given");

    static Hand hand() {
        Phalanx proximal = new Phalanx(0.075, 0.020, 0.012, new PadLayer(0.058, 0.004, SOFT), Phalanx.Tip.SQUARE);
        Phalanx distal = new Phalanx(0.045, 0.020, 0.010, new PadLayer(0.040, 0.004, SOFT), Phalanx.Tip.ROUND);
        Joint first = new Joint(
                new PinJoint(0.10, OptionalDouble.of(6)),
                Math.toRadians(25),
                Math.toRadians(-10),
                Math.toRadians(110),
                0.010);
        Joint second =
                new Joint(new Flexure(4e6, 0.006, 0.018, 0.005), Math.toRadians(35), 0, Math.toRadians(100), 0.006);
        List<Finger> fingers = new ArrayList<>();
        fingers.add(finger("left", new Vec3(0.035, 0.025, 0), Math.PI, proximal, distal, first, second));
        fingers.add(finger("right", new Vec3(0.035, -0.025, 0), Math.PI, proximal, distal, first, second));
        fingers.add(finger("thumb", new Vec3(-0.035, 0, 0), 0, proximal, distal, first, second));
        Motor motor = new Motor(
                "main",
                new Floating(List.of(
                        new Transmission.Branch(1, new FingerTendon("left")),
                        new Transmission.Branch(1, new FingerTendon("right")),
                        new Transmission.Branch(2, new FingerTendon("thumb")))),
                60,
                20e3,
                0.12,
                Map.of("left", 1.57),
                Motor.WhenOff.LOCKED);
        List<String> all = List.of("left", "right", "thumb");
        List<Grip> grips = List.of(
                new Grip("wrap", Grip.Approach.SIDE, new Grip.PalmToObject(0.02, Double.NaN), 0, Map.of(), all),
                new Grip(
                        "top",
                        Grip.Approach.ABOVE,
                        new Grip.PalmToObject(0.02, Double.NaN),
                        0,
                        Map.of("left", 0.5, "right", -0.5),
                        all),
                new Grip(
                        "pinch",
                        Grip.Approach.ABOVE,
                        new Grip.TipsAboveTable(0.003),
                        0,
                        Map.of(),
                        List.of("left", "thumb")));
        return new Hand(
                "Bench hand, three fingers",
                new Palm(0.090, 0.080, 0.014, new PadLayer(0.060, 0.005, SOFT)),
                fingers,
                List.of(motor),
                new FrictionTable(
                        Map.of("soft", Map.of("glass", new Spread(0.9, 0.2), "cardboard", new Spread(0.6, 0.1))),
                        Spread.exactly(0.2)),
                Optional.empty(),
                grips);
    }

    private static Finger finger(
            String name, Vec3 base, double toward, Phalanx p, Phalanx d, Joint first, Joint second) {
        return new Finger(name, base, toward, List.of(p, d), List.of(first, second));
    }

    /** Fingers all round the palm, alike. */
    static Hand radial(int fingers, int phalanges) {
        List<Finger> all = new ArrayList<>();
        for (int i = 0; i < fingers; i++) {
            double a = 2 * Math.PI * i / fingers;
            List<Phalanx> p = new ArrayList<>();
            List<Joint> j = new ArrayList<>();
            for (int k = 0; k < phalanges; k++) {
                p.add(new Phalanx(0.04, 0.016, 0.010, new PadLayer(0.030, 0.003, SOFT), Phalanx.Tip.ROUND));
                j.add(new Joint(new PinJoint(0.05, OptionalDouble.empty()), 0.3, -0.1, 1.9, 0.008 - 0.001 * k));
            }
            all.add(new Finger(
                    "finger " + (char) ('a' + i),
                    new Vec3(0.04 * Math.cos(a), 0.04 * Math.sin(a), 0),
                    a + Math.PI,
                    p,
                    j));
        }
        Hand three = hand();
        return new Hand("radial", three.palm(), all, List.of(), three.friction(), Optional.empty(), List.of());
    }

    static GraspObject object(String name, Shape shape, double mass, Rotation stance, String... grips) {
        return new GraspObject(
                name,
                shape,
                mass,
                new Spread(mass, 0.05 * mass),
                shape.centroid(),
                "glass",
                stance,
                name.equals("bare bulb") ? OptionalDouble.of(15) : OptionalDouble.empty(),
                OptionalDouble.empty(),
                List.of(grips),
                name.equals("mug") ? 3 : 1);
    }

    static Need need() {
        Rotation up = Rotation.IDENTITY;
        Rotation lying = Rotation.about(Vec3.Y, Math.PI / 2);
        Scatter place = new Scatter(Scatter.Law.NORMAL, 0.012);
        return new Need(
                "Neighbourhood repair bench",
                new Spread(0.35, 0.05),
                new Placement(
                        place,
                        place,
                        new Scatter(Scatter.Law.UNIFORM, Math.toRadians(15)),
                        new Scatter(Scatter.Law.NORMAL, 0.003)),
                0.15,
                3,
                0.9,
                List.of(
                        object("spray can", new Cylinder(0.033, 0.080, 0.004), 0.310, up, "wrap", "top"),
                        object("mug", new Cylinder(0.041, 0.0475, 0.003), 0.330, up, "wrap", "top"),
                        object("bulb in its box", new Box(0.031, 0.031, 0.058, 0.001), 0.062, up, "wrap", "top"),
                        object("bare bulb", new Sphere(0.030), 0.040, up, "top"),
                        object("screwdriver", new Capsule(0.015, 0.087), 0.095, lying, "pinch"),
                        object("tape roll", new Ring(0.046, 0.008), 0.210, up, "top"),
                        object("D cell", new Cylinder(0.0171, 0.03075, 0.001), 0.140, up, "top", "pinch"),
                        object("bracket <L> & \"co\"", new Box(0.040, 0.012, 0.006, 0.001), 1.2, up, "pinch")));
    }

    static Project project() {
        return new Project(
                hand(),
                need(),
                List.of(
                        new Project.Assumption(
                                "hand.yaml: fingers.left.joints[1]",
                                "rate 0.125 N\u00b7m/rad computed from the flexure as a short beam"),
                        new Project.Assumption(
                                "need.yaml: objects.mug", "centre of mass at the middle of the <shape>")));
    }

    /** A hand that closes from above until its pads meet the object; forces rise with tension from there. */
    static ClosingDetail closing(Hand hand, GraspObject object, Outcome outcome, boolean frames) {
        Rotation turn = HandPose.turn(hand.grip("top"));
        double low = -object.shape().extent(object.stance().applyInverse(Vec3.Z.times(-1)));
        double top = object.shape().extent(object.stance().applyInverse(Vec3.Z)) - low;
        Pose palm = new Pose(new Vec3(0, 0, top + 0.025), turn);
        Pose thing = new Pose(new Vec3(0, 0, -low), object.stance());
        List<Frame> all = new ArrayList<>();
        List<Double> force = new ArrayList<>(java.util.Collections.nCopies(7, 0.0));
        double[] angle = {25, 35, 25, 35, 25, 35};
        all.add(frame(
                hand,
                palm.times(new Pose(new Vec3(0, 0, -0.05), Rotation.IDENTITY)),
                thing,
                angle,
                force,
                0,
                Frame.Phase.APPROACH,
                0));
        all.add(frame(hand, palm, thing, angle, force, 0, Frame.Phase.APPROACH, 0));
        List<ClosingDetail.FirstTouch> touches = new ArrayList<>();
        for (int step = 0; step <= 60; step++) {
            double tension = step;
            for (int f = 0; f < 3; f++) {
                for (int j = 0; j < 2; j++) {
                    int body = 1 + 2 * f + j;
                    if (force.get(body) == 0 && angle[2 * f + j] < 100) {
                        angle[2 * f + j] += (j == 0 ? 2.2 : 1.1) * (f == 2 ? 1.25 : 1);
                    }
                    List<Pose> now = poses(hand, palm, angle);
                    Phalanx ph = hand.fingers().get(f).phalanges().get(j);
                    boolean in = false;
                    for (double s = 0.1; s <= 1; s += 0.1) {
                        Vec3 q = thing.applyInverse(now.get(body).apply(new Vec3(s * ph.length(), ph.padHeight(), 0)));
                        in |= object.shape().distance(q.x(), q.y(), q.z()) < 0;
                    }
                    if (in && force.get(body) == 0) {
                        touches.add(new ClosingDetail.FirstTouch(body, tension, Frame.Phase.CLOSE));
                    }
                    if (in || force.get(body) > 0) {
                        force.set(body, force.get(body) + (f == 2 ? 0.42 : 0.21) * (j == 0 ? 1 : 0.7));
                        if (j == 1) {
                            force.set(body - 1, force.get(body - 1) + 1e-6);
                        }
                    }
                }
            }
            all.add(frame(hand, palm, thing, angle, force, tension, Frame.Phase.CLOSE, 0));
        }
        if (outcome == Outcome.HELD || outcome == Outcome.DROPPED) {
            all.add(frame(hand, palm, thing, angle, force, 60, Frame.Phase.LIFT, -0.020));
        }
        List<ContactForce> contacts = new ArrayList<>();
        List<Pose> end = poses(hand, palm, angle);
        for (int body = 1; body < 7; body++) {
            if (force.get(body) > 0.1) {
                Phalanx ph = hand.fingers().get((body - 1) / 2).phalanges().get((body - 1) % 2);
                Vec3 n = end.get(body).rotation().column(1);
                contacts.add(new ContactForce(
                        ContactForce.Kind.PAD_ON_OBJECT,
                        bodies(hand).get(body),
                        "object",
                        end.get(body).apply(new Vec3(0.6 * ph.length(), ph.padHeight(), 0)),
                        n,
                        force.get(body),
                        Vec3.Z.times(0.1 * force.get(body)),
                        0.9,
                        2e4));
            }
        }
        return new ClosingDetail(
                summary(outcome, 0.002, 0.001),
                Conditions.at(0.003, -0.002, 0),
                Criteria.DEFAULT,
                Numerics.DEFAULT.recording(),
                "The " + object.name() + " ends " + outcome.words()
                        + ": the thumb touches first and pushes it 2.2 mm before the others arrive; after the lift of"
                        + " 20 mm it has sunk 0.4 mm against the hand & tilted <1 deg.",
                List.of("A pad was pressed in by 20 % of its thickness & more."),
                bodies(hand),
                List.of(),
                List.of(new ClosingDetail.MotorState("main", 60, 0.03)),
                contacts,
                end,
                thing,
                thing.position(),
                new Vec3(0, 0, -9.80665 * object.mass()),
                0,
                touches,
                List.of(),
                frames ? all : List.of());
    }

    static List<String> bodies(Hand hand) {
        List<String> names = new ArrayList<>(List.of("palm"));
        for (Finger f : hand.fingers()) {
            for (int i = 1; i <= f.phalanges().size(); i++) {
                names.add(f.name() + " " + i);
            }
        }
        return names;
    }

    private static List<Pose> poses(Hand hand, Pose palm, double[] angle) {
        int[] next = {0};
        return HandPose.of(hand, Map.of(), j -> Math.toRadians(angle[next[0]++])).stream()
                .map(palm::times)
                .toList();
    }

    private static Frame frame(
            Hand hand,
            Pose palm,
            Pose object,
            double[] angle,
            List<Double> force,
            double tension,
            Frame.Phase phase,
            double table) {
        List<Double> angles = new ArrayList<>();
        for (double a : angle) {
            angles.add(Math.toRadians(a));
        }
        return new Frame(phase, List.of(tension), angles, poses(hand, palm, angle), object, force, new float[0], table);
    }

    static ClosingSummary summary(Outcome outcome, double dx, double dy) {
        return new ClosingSummary(outcome, Math.hypot(dx, dy), dx, dy, 0.01, 0, 0.1, 12, 2e4, 4, 1e-6, 1e-8, 40, 120);
    }

    static MapResult map(String object, String grip, int cells, double centreX) {
        double span = 0.060;
        List<ClosingSummary> runs = new ArrayList<>();
        double nearest = Double.POSITIVE_INFINITY;
        int held = 0;
        for (int row = 0; row < cells; row++) {
            for (int column = 0; column < cells; column++) {
                double x = -span + 2 * span * column / (cells - 1);
                double y = -span + 2 * span * row / (cells - 1);
                Outcome o = invented(x - centreX, y, row * cells + column);
                if (o != Outcome.HELD) {
                    nearest = Math.min(nearest, Math.hypot(x, y));
                } else {
                    held++;
                }
                runs.add(summary(o, x, y));
            }
        }
        double radius = Math.max(0, nearest - span / (cells - 1));
        double pitch = 2 * span / (cells - 1);
        return new MapResult(object, grip, span, cells, runs, radius, radius * 1.3, 0.9, held * pitch * pitch);
    }

    private static Outcome invented(double x, double y, int index) {
        double r = Math.hypot(x / 0.026, y / 0.031);
        double wobble = 0.06 * Math.sin(7 * Math.atan2(y, x));
        if (index % 419 == 7) {
            return Outcome.UNDECIDED;
        }
        if (r + wobble < 1) {
            return Outcome.HELD;
        }
        if (r + wobble < 1.2) {
            return Outcome.DROPPED;
        }
        if (x < -0.045) {
            return Math.abs(y) < 0.03 ? Outcome.SQUEEZED : Outcome.LANDED_ON_IT;
        }
        if (r > 2.1 && x > 0) {
            return Outcome.MISSED;
        }
        if (x > 0.024 && Math.abs(y) < 0.03) {
            return Outcome.THROWN_OUT;
        }
        return y > 0 ? Outcome.KNOCKED_OVER : Outcome.PUSHED_AWAY;
    }

    static TrialsResult trials(Need need) {
        List<TrialsResult.Pair> pairs = new ArrayList<>();
        List<TrialsResult.Best> best = new ArrayList<>();
        int k = 0;
        for (GraspObject o : need.objects()) {
            TrialsResult.Best chosen = null;
            for (String grip : o.grips()) {
                k++;
                int held = 100 + (k * 37) % 101;
                Map<Outcome, Integer> outcomes = new EnumMap<>(Outcome.class);
                int failed = 200 - held;
                outcomes.put(Marks.ORDER.get(1 + k % 7), failed - failed / 3);
                outcomes.put(Marks.ORDER.get(1 + (k + 2) % 7), failed / 3);
                if (k == 3) {
                    outcomes.put(Outcome.UNDECIDED, 2);
                }
                Proportion p = Proportion.of(held, 200, k == 3 ? 2 : 0);
                pairs.add(new TrialsResult.Pair(
                        o.name(),
                        grip,
                        p,
                        outcomes,
                        List.of(
                                new TrialsResult.Influence("x", 0.1 + (k * 13 % 70) / 100.0),
                                new TrialsResult.Influence("y", 0.05 + (k * 7 % 30) / 100.0),
                                new TrialsResult.Influence("pad friction", 0.2),
                                new TrialsResult.Influence("mass", 0.02)),
                        Map.of()));
                if (chosen == null || p.share() > chosen.success().share()) {
                    chosen = new TrialsResult.Best(o.name(), grip, p);
                }
            }
            if (chosen != null) {
                best.add(chosen);
            }
        }
        return new TrialsResult(1, 200, pairs, best, new TrialsResult.Weighted(0.84, 0.81, 0.87));
    }
}
