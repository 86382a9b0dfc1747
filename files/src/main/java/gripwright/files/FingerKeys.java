package gripwright.files;

import gripwright.math.Vec3;
import gripwright.model.Finger;
import gripwright.model.Flexure;
import gripwright.model.Joint;
import gripwright.model.JointKind;
import gripwright.model.Phalanx;
import gripwright.model.PinJoint;
import gripwright.units.Measure;
import gripwright.units.QuantityText;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** The tables of phalanges, joints and fingers. */
final class FingerKeys {
    static final String FAMILY = "finger";

    private static final double HALF_TURN = Math.PI;

    private FingerKeys() {}

    // ---- phalanx

    private static final Key<Double> LENGTH = Key.required(
            "length",
            new Quantities.Value(Range.above0(Measure.LENGTH)),
            "From its joint to the next joint; for the last phalanx to the start of its tip.");
    private static final Key<Double> WIDTH =
            Key.required("width", new Quantities.Value(Range.above0(Measure.LENGTH)), "Across the finger.");
    private static final Key<Double> BONE = Key.required(
            "bone",
            new Quantities.Value(Range.above0(Measure.LENGTH)),
            "Thickness of the hard part, centred on the line through the joints.");
    private static final Key<PalmKeys.Pad> PAD =
            Key.required("pad", PalmKeys.PAD, "The rubber on the inner side of the phalanx.");
    private static final Key<Phalanx.Tip> TIP = Key.derived(
            "tip",
            Kinds.Choice.of("square", Phalanx.Tip.SQUARE, "round", Phalanx.Tip.ROUND),
            "square",
            "How the last phalanx ends: square, or round with the pad carried over the end.");

    private static final Section<Phalanx> PHALANX = Section.of(
                    "phalanx",
                    "One rigid bone of a finger with its pad.",
                    List.of(LENGTH, WIDTH, BONE, PAD, TIP),
                    b -> new Phalanx(
                            b.get(LENGTH),
                            b.get(WIDTH),
                            b.get(BONE),
                            b.get(PAD).layer(b.get(LENGTH)),
                            b.find(TIP).orElse(Phalanx.Tip.SQUARE)))
            .checked(b -> b.find(LENGTH).ifPresent(length -> PalmKeys.checkLength(b, PAD, length)));

    // ---- joint

    private static final Key<Double> SPRING = Key.required(
            "spring", new Quantities.Value(Range.from0(Measure.TURNING_STIFFNESS)), "Rate of the torsion spring.");
    private static final Key<Double> SIDEWAYS = Key.optional(
            "sideways",
            new Quantities.Value(Range.above0(Measure.TURNING_STIFFNESS)),
            "rigid out of the finger's plane",
            "How much the pin gives when the finger is bent sideways, out of its plane.");
    private static final Section<PinJoint> PIN = Section.of(
            "pin",
            "A pin with a torsion spring.",
            List.of(SPRING, SIDEWAYS),
            b -> new PinJoint(
                    b.get(SPRING), b.find(SIDEWAYS).map(OptionalDouble::of).orElse(OptionalDouble.empty())));

    private static final Key<Double> FLEXURE_MODULUS = Key.required(
            "modulus", new Quantities.Value(Range.above0(Measure.PRESSURE)), "Young's modulus of the strip.");
    private static final Key<Double> FLEXURE_LENGTH = Key.required(
            "length", new Quantities.Value(Range.above0(Measure.LENGTH)), "Free length between the bones.");
    private static final Key<Double> FLEXURE_WIDTH =
            Key.required("width", new Quantities.Value(Range.above0(Measure.LENGTH)), "Across the finger.");
    private static final Key<Double> FLEXURE_THICKNESS = Key.required(
            "thickness", new Quantities.Value(Range.above0(Measure.LENGTH)), "In the direction in which it bends.");
    private static final Section<Flexure> FLEXURE = Section.of(
            "flexure",
            "An elastomer strip that bends; its rates are computed as a short beam, E I / L.",
            List.of(FLEXURE_MODULUS, FLEXURE_LENGTH, FLEXURE_WIDTH, FLEXURE_THICKNESS),
            FingerKeys::flexure);

    private static Flexure flexure(Bound b) {
        Flexure flexure = new Flexure(
                b.get(FLEXURE_MODULUS), b.get(FLEXURE_LENGTH), b.get(FLEXURE_WIDTH), b.get(FLEXURE_THICKNESS));
        b.assume(
                FLEXURE_MODULUS,
                "bending rate " + QuantityText.format(flexure.bendingRate(), Measure.TURNING_STIFFNESS)
                        + ", sideways "
                        + QuantityText.format(flexure.sidewaysRate().orElseThrow(), Measure.TURNING_STIFFNESS) + ": "
                        + flexure.origin());
        return flexure;
    }

    private static final Key<PinJoint> JOINT_PIN = Key.maybe("pin", PIN, "A pin with a torsion spring.");
    private static final Key<Flexure> JOINT_FLEXURE = Key.maybe("flexure", FLEXURE, "An elastomer strip that bends.");

    /** A new kind of joint is one line here and the record it makes. */
    private static final List<Key<? extends JointKind>> JOINT_KINDS = List.of(JOINT_PIN, JOINT_FLEXURE);

    private static final Key<Double> REST = Key.required(
            "rest",
            new Quantities.Value(Range.within(Measure.ANGLE, -2 * HALF_TURN, 2 * HALF_TURN)),
            "Angle at which the spring is free; outside the limits it presses on a stop.");
    private static final Key<List<Double>> LIMITS = Key.required(
            "limits",
            new Quantities.Several(2, Range.within(Measure.ANGLE, -HALF_TURN, HALF_TURN), "lower and upper hard stop"),
            "Lower and upper hard stop. First joint: 0 deg lies in the palm plane pointing outward, 90 deg stands straight"
                    + " out of the palm; further joints: relative to the phalanx before. Flexion is positive.");
    private static final Key<Double> MOMENT_ARM = Key.required(
            "moment arm",
            new Quantities.Value(Range.from0(Measure.LENGTH)),
            "Distance of the tendon from the joint's axis.");

    private static final Section<Joint> JOINT = Section.of(
                    "joint",
                    "One joint of a finger.",
                    List.of(JOINT_PIN, JOINT_FLEXURE, REST, LIMITS, MOMENT_ARM),
                    b -> new Joint(
                            kind(b),
                            b.get(REST),
                            b.get(LIMITS).get(0),
                            b.get(LIMITS).get(1),
                            b.get(MOMENT_ARM)))
            .oneOf(JOINT_KINDS)
            .checked(FingerKeys::checkLimits);

    private static JointKind kind(Bound b) {
        return JOINT_KINDS.stream()
                .map(b::find)
                .flatMap(Optional::stream)
                .findFirst()
                .map(JointKind.class::cast)
                .orElseThrow();
    }

    private static void checkLimits(Bound b) {
        b.find(LIMITS)
                .filter(limits -> limits.get(0) >= limits.get(1))
                .ifPresent(limits -> b.fault(
                        LIMITS,
                        "the limits are reversed: " + QuantityText.format(limits.get(0), Measure.ANGLE)
                                + " is not below " + QuantityText.format(limits.get(1), Measure.ANGLE),
                        "[lower stop, upper stop]"));
    }

    // ---- finger

    private record Base(Vec3 at, double closesToward) {}

    private static final Key<List<Double>> AT = Key.required(
            "at",
            new Quantities.Several(3, Range.any(Measure.LENGTH), "x, y, z in the hand frame"),
            "Where the first joint sits: x (closing direction), y (across) and z (out of the palm) from the middle of the"
                    + " palm's pad surface.");
    private static final Key<Double> CLOSES_TOWARD = Key.required(
            "closes toward",
            new Quantities.Value(Range.within(Measure.ANGLE, -2 * HALF_TURN, 2 * HALF_TURN)),
            "Direction in the palm plane towards which the finger flexes: 0 deg is +x, 90 deg is +y.");
    private static final Section<Base> BASE = Section.of(
            "base",
            "Where a finger starts and which way it closes.",
            List.of(AT, CLOSES_TOWARD),
            b -> new Base(Quantities.vec(b.get(AT)), b.get(CLOSES_TOWARD)));

    private static final Key<String> LIKE = Key.maybe(
            "like",
            new Kinds.Line(),
            "Name of another finger, of which everything is copied; a key given beside it replaces all of the copied one.");
    private static final Key<Base> FINGER_BASE = Key.required("base", BASE, "Its place and direction on the palm.");
    private static final Key<List<Phalanx>> PHALANGES = Key.required(
            "phalanges",
            new Kinds.Many<>(PHALANX, 1, Finger.MOST_PHALANGES, "phalanges"),
            "Its bones, from the palm outward.");
    private static final Key<List<Joint>> JOINTS = Key.required(
            "joints",
            new Kinds.Many<>(JOINT, 1, Finger.MOST_PHALANGES, "joints"),
            "Its joints, from the palm outward, one for each phalanx.");

    static final Section<Finger> FINGER = Section.of(
                    "finger",
                    "One finger.",
                    List.of(LIKE, FINGER_BASE, PHALANGES, JOINTS),
                    b -> new Finger(
                            b.name(),
                            b.get(FINGER_BASE).at(),
                            b.get(FINGER_BASE).closesToward(),
                            tipsNoted(b),
                            b.get(JOINTS)))
            .checked(FingerKeys::checkCounts);

    private static List<Phalanx> tipsNoted(Bound b) {
        List<Phalanx> phalanges = b.get(PHALANGES);
        int last = phalanges.size() - 1;
        String path = b.path(PHALANGES) + "[" + last + "].tip";
        if (!b.reading().places().containsKey(b.reading().file() + ": " + path)) {
            b.reading().assumeOnce(b.place(PHALANGES), "tip", path, "not given; taken as square");
        }
        return phalanges;
    }

    private static void checkCounts(Bound b) {
        Optional<List<Phalanx>> phalanges = b.find(PHALANGES);
        Optional<List<Joint>> joints = b.find(JOINTS);
        if (phalanges.isPresent()
                && joints.isPresent()
                && phalanges.get().size() != joints.get().size()) {
            b.fault(
                    JOINTS,
                    "finger '" + b.name() + "' has " + joints.get().size() + " joints for "
                            + phalanges.get().size() + " phalanges",
                    "one joint for each phalanx");
        }
        for (int i = 0; i + 1 < phalanges.map(List::size).orElse(0); i++) {
            if (phalanges.get().get(i).tip() == Phalanx.Tip.ROUND) {
                String path = b.path(PHALANGES) + "[" + i + "].tip";
                b.reading()
                        .fault(
                                b.reading().placeOf(path, b.place(PHALANGES)),
                                "phalanx " + (i + 1) + " of " + phalanges.get().size() + " has a round tip",
                                "a round tip on the last phalanx only");
            }
        }
    }
}
