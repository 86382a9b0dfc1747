package gripwright.files;

import gripwright.model.ArmCompliance;
import gripwright.model.Finger;
import gripwright.model.FrictionTable;
import gripwright.model.Grip;
import gripwright.model.Hand;
import gripwright.model.Motor;
import gripwright.model.Palm;
import gripwright.model.Rubber;
import gripwright.model.Spread;
import gripwright.units.Measure;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** The table of hand.yaml; keys are read in this order, so that names are known before they are used. */
final class HandKeys {
    static final String SURFACE_FAMILY = "surface";

    /** Rubber on clean glass exceeds 2 (handbook ranges); 10 keeps slips of the keyboard out. */
    static final Range FRICTION_RANGE = Range.from0(Measure.NUMBER).upTo(10);

    private HandKeys() {}

    private static final Key<String> NAME =
            Key.required("name", new Kinds.Line(), "What the hand is called in reports.");
    private static final Key<Map<String, Rubber>> RUBBERS = Key.required(
            "rubbers",
            Kinds.Named.defining(PalmKeys.RUBBER, 1, 50, "rubbers", PalmKeys.RUBBER_FAMILY),
            "The rubbers of this hand, by name.");
    private static final Key<Map<String, Map<String, Spread>>> FRICTION = Key.required(
            "friction",
            Kinds.Named.per(
                    PalmKeys.RUBBER_FAMILY,
                    new Kinds.Named<>(
                            new Quantities.WithSpread(FRICTION_RANGE),
                            1,
                            200,
                            "surfaces with coefficients",
                            null,
                            null),
                    "rubbers with surfaces"),
            "Friction coefficient of each rubber on each surface; a spread is one standard deviation.");
    private static final Key<Spread> BONE_FRICTION = Key.byDefault(
            "bone friction",
            new Quantities.WithSpread(FRICTION_RANGE),
            "0.2",
            "smooth plastic or metal on most things; common practice, no source",
            "Friction coefficient of bare bone on any object; its mean is also taken for fingers on the table and on each"
                    + " other.");
    private static final Key<Palm> PALM = Key.required("palm", PalmKeys.PALM, "The palm.");
    private static final Key<Map<String, Finger>> FINGERS = Key.required(
            "fingers",
            Kinds.Named.defining(FingerKeys.FINGER, 1, Hand.MOST_FINGERS, "fingers", FingerKeys.FAMILY),
            "The fingers, by name.");
    private static final Key<Map<String, Motor>> DRIVE = Key.required(
            "drive",
            new Kinds.Named<>(DriveKeys.MOTOR, 1, 10, "motors", null, null),
            "The motors, by name, and what each pulls.");

    private static final Key<List<Double>> ARM_STIFFNESS = Key.required(
            "stiffness",
            new Quantities.Several(3, Range.above0(Measure.STIFFNESS), "along x, y, z of the hand"),
            "Stiffness of the arm at the palm along x, y and z of the hand.");
    private static final Key<List<Double>> ARM_TURNING = Key.required(
            "turning",
            new Quantities.Several(3, Range.above0(Measure.TURNING_STIFFNESS), "about x, y, z of the hand"),
            "Stiffness of the arm against turning about x, y and z of the hand.");
    private static final Section<ArmCompliance> ARM_SECTION = Section.of(
            "arm",
            "How much the arm gives at the palm: a stiff arm shoves harder than a soft one.",
            List.of(ARM_STIFFNESS, ARM_TURNING),
            b -> new ArmCompliance(Quantities.vec(b.get(ARM_STIFFNESS)), Quantities.vec(b.get(ARM_TURNING))));
    private static final Key<ArmCompliance> ARM =
            Key.optional("arm", ARM_SECTION, "the arm is taken as rigid", "How much the arm gives.");

    private static final Key<Map<String, Grip>> GRIPS = Key.required(
            "grips",
            Kinds.Named.defining(GripKeys.GRIP, 1, 30, "grips", GripKeys.FAMILY),
            "The preshapes this hand can take, by name.");

    static final Section<Hand> HAND = Section.of(
                    "hand",
                    "hand.yaml: the hand, what it is made of, what drives it, and how it takes hold.",
                    List.of(NAME, RUBBERS, FRICTION, BONE_FRICTION, PALM, FINGERS, DRIVE, ARM, GRIPS),
                    b -> new Hand(
                            b.get(NAME),
                            b.get(PALM),
                            List.copyOf(b.get(FINGERS).values()),
                            List.copyOf(b.get(DRIVE).values()),
                            new FrictionTable(b.get(FRICTION), b.get(BONE_FRICTION)),
                            b.find(ARM),
                            List.copyOf(b.get(GRIPS).values())))
            .checked(HandKeys::nameSurfaces)
            .checked(HandKeys::checkAllPulled);

    /** Makes the surfaces known for the objects, and notes coefficients of 0, which are physical but rarely meant. */
    private static void nameSurfaces(Bound b) {
        if (b.tree(FRICTION).orElse(null) instanceof Tree.Entries rubbers) {
            for (Tree.Entry rubber : rubbers.entries()) {
                if (rubber.value() instanceof Tree.Entries surfaces) {
                    for (Tree.Entry surface : surfaces.entries()) {
                        b.reading().define(SURFACE_FAMILY, surface.key().value(), null);
                        b.reading()
                                .define(
                                        frictionOf(rubber.key().value()),
                                        surface.key().value(),
                                        null);
                    }
                }
            }
        }
        b.find(FRICTION)
                .ifPresent(table -> table.forEach((rubber, surfaces) -> surfaces.forEach(
                        (surface, mu) -> noteZero(b.reading(), b.path(FRICTION) + "." + rubber + "." + surface, mu))));
        b.find(BONE_FRICTION).ifPresent(mu -> noteZero(b.reading(), b.path(BONE_FRICTION), mu));
    }

    static String frictionOf(String rubber) {
        return "friction of " + rubber;
    }

    static void noteZero(Reading reading, String path, Spread friction) {
        if (friction.mean() == 0) {
            reading.assume(path, "friction 0, as written: nothing is held by friction here");
        }
    }

    private static void checkAllPulled(Bound b) {
        Set<String> pulled = b.reading().names(DriveKeys.PULLED);
        if (pulled.isEmpty() || !(b.tree(FINGERS).orElse(null) instanceof Tree.Entries fingers)) {
            return; // the drive as a whole is faulty, which has been said
        }
        for (Tree.Entry finger : fingers.entries()) {
            String name = finger.key().value();
            if (!pulled.contains(name)) {
                b.reading()
                        .fault(
                                finger.key().place(),
                                "finger '" + Words.clip(name) + "' is pulled by no motor",
                                "its name in the `pulls` of a motor under `drive`");
            }
        }
    }
}
