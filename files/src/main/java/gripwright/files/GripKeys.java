package gripwright.files;

import gripwright.math.Vec3;
import gripwright.model.Grip;
import gripwright.units.Measure;
import java.util.HashSet;
import java.util.List;
import java.util.Map;

/** The table of grips. */
final class GripKeys {
    static final String FAMILY = "grip";

    private static final double QUARTER_TURN = Math.PI / 2;

    private GripKeys() {}

    private static final Key<Grip.Approach> APPROACH = Key.required(
            "approach",
            Kinds.Choice.of("above", Grip.Approach.ABOVE, "side", Grip.Approach.SIDE),
            "Where the hand comes from: above (palm facing down) or side (palm upright, coming along -y).");
    private static final Key<Double> PALM_TO_OBJECT = Key.maybe(
            "palm to object",
            new Quantities.Value(Range.from0(Measure.LENGTH)),
            "Gap between the palm's pad and the nearest surface of the object at its nominal place.");
    private static final Key<Double> TIPS_ABOVE_TABLE = Key.maybe(
            "tips above table",
            new Quantities.Value(Range.from0(Measure.LENGTH)),
            "Gap between the lowest fingertip of the open hand and the table; from above only.");
    private static final Key<Double> HEIGHT = Key.derived(
            "height",
            new Kinds.WordOr<>("middle", Double.NaN, new Quantities.Value(Range.above0(Measure.LENGTH))),
            "middle, for a side approach",
            "Height of the palm's middle above the table, for a side approach: a length, or middle (half the object's"
                    + " height).");
    private static final Key<Double> TILT = Key.byDefault(
            "tilt",
            new Quantities.Value(Range.within(Measure.ANGLE, -QUARTER_TURN, QUARTER_TURN)),
            "0 deg",
            "the palm squarely over the object",
            "Turn of the hand about its own x axis at the object.");
    private static final Key<List<Double>> AIM = Key.optional(
            "aim",
            new Quantities.Several(2, Range.within(Measure.LENGTH, -1, 1), "along x and y of the table"),
            "the hand aims at the origin of the object's shape",
            "Where the middle of the hand aims, from the origin of the object's shape; from the side only x counts.");
    private static final Key<Map<String, Double>> TURNED = Key.optional(
            "turned",
            Kinds.Named.per(
                    FingerKeys.FAMILY,
                    new Quantities.Value(Range.within(Measure.ANGLE, -2 * QUARTER_TURN, 2 * QUARTER_TURN)),
                    "fingers with angles"),
            "no finger base is turned",
            "Turn of finger bases about the palm's normal (adduction), by finger, right-handed about hand z.");
    private static final Key<List<String>> FINGERS = Key.optional(
            "fingers",
            new Kinds.Many<>(new Kinds.Name(FingerKeys.FAMILY), 1, 5, "finger names"),
            "all fingers take part",
            "The fingers that take part; the others stay at rest.");

    static final Section<Grip> GRIP = Section.of(
                    "grip",
                    "A named preshape and how the hand comes to the object.",
                    List.of(APPROACH, PALM_TO_OBJECT, TIPS_ABOVE_TABLE, HEIGHT, TILT, AIM, TURNED, FINGERS),
                    GripKeys::grip)
            .oneOf(List.of(PALM_TO_OBJECT, TIPS_ABOVE_TABLE))
            .checked(GripKeys::check);

    private static void check(Bound b) {
        boolean side = b.find(APPROACH).filter(Grip.Approach.SIDE::equals).isPresent();
        boolean above = b.find(APPROACH).filter(Grip.Approach.ABOVE::equals).isPresent();
        if (side && b.isGiven(TIPS_ABOVE_TABLE)) {
            b.reading()
                    .fault(
                            b.keyPlace(TIPS_ABOVE_TABLE),
                            "'tips above table' in a grip from the side",
                            "'palm to object' and 'height' for a side approach");
        }
        if (above && b.isGiven(HEIGHT)) {
            b.reading()
                    .fault(
                            b.keyPlace(HEIGHT),
                            "'height' in a grip from above",
                            "'palm to object' or 'tips above table' alone; they set the height");
        }
        b.find(FINGERS)
                .filter(names -> new HashSet<>(names).size() < names.size())
                .ifPresent(names -> b.fault(FINGERS, "a finger is named twice", "each finger once"));
    }

    private static Grip grip(Bound b) {
        boolean side = b.get(APPROACH) == Grip.Approach.SIDE;
        if (side && !b.isGiven(HEIGHT)) {
            b.assume(HEIGHT, "not given; taken as middle (half the object's height)");
        }
        Grip.Stand stand = b.find(PALM_TO_OBJECT)
                .<Grip.Stand>map(
                        gap -> new Grip.PalmToObject(gap, b.find(HEIGHT).orElse(Double.NaN)))
                .orElseGet(() -> new Grip.TipsAboveTable(b.get(TIPS_ABOVE_TABLE)));
        Vec3 aim = b.find(AIM).map(a -> new Vec3(a.get(0), a.get(1), 0)).orElse(Vec3.ZERO);
        List<String> all = List.copyOf(b.reading().names(FingerKeys.FAMILY));
        return new Grip(
                b.name(),
                b.get(APPROACH),
                stand,
                b.get(TILT),
                aim,
                b.find(TURNED).orElse(Map.of()),
                b.find(FINGERS).orElse(all));
    }
}
