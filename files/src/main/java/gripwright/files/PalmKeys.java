package gripwright.files;

import gripwright.model.PadLayer;
import gripwright.model.Palm;
import gripwright.model.Rubber;
import gripwright.units.Measure;
import gripwright.units.QuantityText;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** The tables of rubbers, pads and the palm. */
final class PalmKeys {
    static final String RUBBER_FAMILY = "rubber";
    static final String USED_RUBBER = "rubber in use";

    private PalmKeys() {}

    // ---- rubbers

    private static final Key<Double> MODULUS = Key.maybe(
            "modulus",
            new Quantities.Value(Range.above0(Measure.PRESSURE)),
            "Young's modulus of the rubber at small strain.");
    private static final Key<Double> HARDNESS = Key.maybe(
            "hardness",
            new Quantities.Value(Range.within(Measure.HARDNESS, 1, 99)),
            "Shore A hardness, from which the modulus is computed by Gent's relation of 1958.");
    private static final Key<Double> FOUNDATION = Key.byDefault(
            "foundation factor",
            new Quantities.Value(Range.above0(Measure.NUMBER).upTo(1000)),
            String.valueOf(Rubber.FOUNDATION_FACTOR),
            "a rigid sphere on a bonded incompressible layer 2 to 5 mm thick, to about 10 %; own solution of the layer,"
                    + " no measured pad",
            "Normal stiffness of a pad as a bed of springs, as a multiple of modulus over thickness.");

    static final Section<Rubber> RUBBER = Section.of(
                    "rubber",
                    "A rubber, by its modulus or its hardness; taken as linear and incompressible.",
                    List.of(MODULUS, HARDNESS, FOUNDATION),
                    PalmKeys::rubber)
            .oneOf(List.of(MODULUS, HARDNESS));

    private static Rubber rubber(Bound b) {
        Optional<Double> hardness = b.find(HARDNESS);
        if (hardness.isEmpty()) {
            return new Rubber(b.name(), b.get(MODULUS), "given", b.get(FOUNDATION));
        }
        double modulus = Rubber.modulusFromShoreA(hardness.get());
        String shore = QuantityText.format(hardness.get(), Measure.HARDNESS);
        String origin = "from " + shore + " by A. N. Gent, Rubber Chem. Technol. 31 (1958) 896"
                + (hardness.get() < 35 ? " (below 35 Shore A an estimate)" : "");
        b.assume(HARDNESS, "modulus " + QuantityText.format(modulus, Measure.PRESSURE) + " " + origin);
        return new Rubber(b.name(), modulus, origin, b.get(FOUNDATION));
    }

    /** A rubber by its name. */
    private record OfRubber() implements Kind<Rubber> {
        private static final Kinds.Name NAME = new Kinds.Name(RUBBER_FAMILY);

        @Override
        public @Nullable Rubber read(Tree tree, String path, Reading reading) {
            String name = NAME.read(tree, path, reading);
            if (name == null) {
                return null;
            }
            reading.define(USED_RUBBER, name, null);
            return (Rubber) reading.named(RUBBER_FAMILY, name);
        }

        @Override
        public Map<String, Object> schema(Map<String, Object> definitions) {
            return NAME.schema(definitions);
        }

        @Override
        public String words() {
            return NAME.words();
        }
    }

    // ---- pads

    /** A pad as written; where its length is not given, its owner knows it. */
    record Pad(Optional<Double> length, double thickness, Rubber rubber) {
        PadLayer layer(double wholeLength) {
            return new PadLayer(length.orElse(wholeLength), thickness, rubber);
        }
    }

    private static final Key<Double> PAD_LENGTH = Key.optional(
            "length",
            new Quantities.Value(Range.above0(Measure.LENGTH)),
            "as long as what it sits on",
            "Length along the phalanx (on the palm: along x), centred.");
    private static final Key<Double> PAD_THICKNESS =
            Key.required("thickness", new Quantities.Value(Range.above0(Measure.LENGTH)), "Rubber over the bone.");
    private static final Key<Rubber> PAD_RUBBER =
            Key.required("rubber", new OfRubber(), "What it is made of: one of the rubbers of this file.");

    static final Section<Pad> PAD = Section.of(
            "pad",
            "A strip of rubber over a bone, as wide as the bone.",
            List.of(PAD_LENGTH, PAD_THICKNESS, PAD_RUBBER),
            b -> new Pad(b.find(PAD_LENGTH), b.get(PAD_THICKNESS), b.get(PAD_RUBBER)));

    /** Notes a fault if the pad is longer than its owner. */
    static void checkLength(Bound owner, Key<Pad> key, double whole) {
        owner.find(key)
                .flatMap(Pad::length)
                .filter(length -> length > whole)
                .ifPresent(length -> owner.reading()
                        .fault(
                                owner.reading().placeOf(owner.path(key) + ".length", owner.place(key)),
                                "the pad is " + QuantityText.format(length, Measure.LENGTH) + " long, longer than the "
                                        + QuantityText.format(whole, Measure.LENGTH) + " it sits on",
                                "a length of at most " + QuantityText.format(whole, Measure.LENGTH)));
    }

    // ---- palm

    private static final Key<List<Double>> SIZE = Key.required(
            "size",
            new Quantities.Several(2, Range.above0(Measure.LENGTH), "along x (closing direction) and y"),
            "Size of the palm along x (the closing direction) and y.");
    private static final Key<Double> BONE = Key.required(
            "bone", new Quantities.Value(Range.above0(Measure.LENGTH)), "Thickness of the hard plate behind the pad.");
    private static final Key<Pad> PALM_PAD =
            Key.required("pad", PAD, "The rubber on the palm; its surface is the height 0 of the hand.");

    static final Section<Palm> PALM = Section.of(
                    "palm",
                    "The palm: a plate with a pad. Its pad's middle is the origin of the hand, x is the closing direction, z"
                            + " points to the object.",
                    List.of(SIZE, BONE, PALM_PAD),
                    b -> new Palm(
                            b.get(SIZE).get(0),
                            b.get(SIZE).get(1),
                            b.get(BONE),
                            b.get(PALM_PAD).layer(b.get(SIZE).get(0))))
            .checked(b -> b.find(SIZE).ifPresent(size -> checkLength(b, PALM_PAD, size.get(0))));
}
