package gripwright.files;

import gripwright.model.Finger;
import gripwright.model.PadLayer;
import gripwright.model.Palm;
import gripwright.model.Phalanx;
import gripwright.model.Rubber;
import gripwright.pad.Bus;
import gripwright.pad.Chip;
import gripwright.pad.PadDesign;
import gripwright.pad.PadPlace;
import gripwright.pad.PadSetup;
import gripwright.pad.Readings;
import gripwright.pad.TouchStop;
import gripwright.units.Measure;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** The table of pads.yaml; the hand has been read before it, rubber and cover thickness stand there and nowhere else. */
final class PadKeys {
    static final String PALM = PadPlace.PALM;
    private static final int MOST_CHIPS = 64;

    private PadKeys() {}

    /** A key that is there to say why it is not taken. */
    private record Refused(String why, String instead) implements Kind<Double> {
        @Override
        public @Nullable Double read(Tree tree, String path, Reading reading) {
            reading.fault(tree.place(), Kind.lastOf(path) + " is " + tree.words() + ": " + why, instead);
            return null;
        }

        @Override
        public Map<String, Object> schema(Map<String, Object> definitions) {
            return Json.object("not", Map.of());
        }

        @Override
        public String words() {
            return "never taken: " + why + "; give " + instead;
        }
    }

    // ---- pads

    private static final Key<ChipKeys.ChipAndAddresses> PAD_CHIP =
            Key.required("chip", new OfChip(), "The chip under it: one of the chips of this file.");

    private record OfChip() implements Kind<ChipKeys.ChipAndAddresses> {
        private static final Kinds.Name NAME = new Kinds.Name(ChipKeys.FAMILY);

        @Override
        public ChipKeys.@Nullable ChipAndAddresses read(Tree tree, String path, Reading reading) {
            String name = NAME.read(tree, path, reading);
            return name == null ? null : (ChipKeys.ChipAndAddresses) reading.named(ChipKeys.FAMILY, name);
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

    private static final Key<String> ON = Key.required(
            "on",
            new Kinds.WordOr<>(PALM, PALM, new Kinds.Name(FingerKeys.FAMILY)),
            "Whose pad it is: a finger of hand.yaml, or palm. Rubber and cover thickness are taken from there.");
    private static final Key<Integer> PHALANX = PadKinds.whole(
            "phalanx", 1, Finger.MOST_PHALANGES, "1", "the one next to the palm", "Which phalanx, 1 next to the palm.");
    private static final Key<Double> BOARD = Key.byDefault(
            "board",
            new Quantities.Value(Range.from0(Measure.LENGTH)),
            "0 mm",
            "let into the bone",
            "How far the board stands out of the bone; the rubber over the board is the pad's thickness less this.");
    private static final Key<Integer> COUNT =
            Key.required("chips", new PadKinds.Whole(1, MOST_CHIPS), "Chips in one row.");
    private static final Key<Double> PITCH = PadKinds.length("pitch", "From chip to chip along the row.");
    private static final Key<Integer> ROWS = PadKinds.whole("rows", 1, 8, "1", "one row", "Rows side by side.");
    private static final Key<Double> ROW_PITCH = Key.derived(
            "row pitch",
            new Quantities.Value(Range.above0(Measure.LENGTH)),
            "as the pitch",
            "From row to row across the strip.");
    private static final Key<Double> SHIFT = Key.byDefault(
            "shift",
            new Quantities.Value(Range.any(Measure.LENGTH)),
            "0 mm",
            "in the middle",
            "Of the strip's middle from the pad's, towards the tip; round a round tip along the rubber's surface, where the"
                    + " pad is computed as if it were flat.");
    private static final Key<Double> STAGGER = Key.byDefault(
            "stagger",
            new Quantities.Value(Range.from0(Measure.LENGTH)),
            "0 mm",
            "rows side by side",
            "How far every second row is shifted along the strip.");
    private static final Key<Double> BULK = Key.byDefault(
            "bulk modulus",
            new Quantities.Value(Range.above0(Measure.PRESSURE)),
            "1500 MPa",
            "silicone is said to lie between 1 and 2 GPa; from memory",
            "Bulk modulus of the rubber.");
    private static final Key<Double> POISSON = Key.maybe(
            "poisson ratio",
            new Refused(
                    "rubber hardly changes its volume, and the digits that matter lie behind 0.499; 0.5 would be an"
                            + " infinite bulk modulus, 0.49 one so soft that the cavity swallows most of the signal",
                    "the bulk modulus, such as 1500 MPa"),
            "Not taken.");

    private record PadText(PadDesign design, int addresses, PadPlace place) {}

    private static final Section<PadText> PAD_SECTION = Section.of(
                    "sensing pad",
                    "A strip of equal chips under one pad of the hand.",
                    List.of(PAD_CHIP, ON, PHALANX, BOARD, COUNT, PITCH, ROWS, ROW_PITCH, STAGGER, SHIFT, BULK, POISSON),
                    PadKeys::pad)
            .checked(PadKeys::checkPad);

    /** @param beyond how far the pad goes on round a round tip, along its surface, past half its length [m] */
    private record Carrier(PadLayer layer, double width, double beyond) {}

    private static @Nullable Carrier carrier(Bound b) {
        if (b.find(ON).isEmpty() || b.find(PHALANX).isEmpty()) {
            return null;
        }
        Object named = b.get(ON).equals(PALM)
                ? b.reading().named(PALM, PALM)
                : b.reading().named(FingerKeys.FAMILY, b.get(ON));
        if (named instanceof Palm palm) {
            return new Carrier(palm.pad(), palm.sizeY(), 0);
        }
        if (!(named instanceof Finger finger)
                || b.get(PHALANX) > finger.phalanges().size()) {
            return null;
        }
        Phalanx phalanx = finger.phalanges().get(b.get(PHALANX) - 1);
        double round = phalanx.tip() == Phalanx.Tip.ROUND
                ? (phalanx.length() - phalanx.pad().length()) / 2 + phalanx.padHeight() * Math.PI / 2
                : 0;
        return new Carrier(phalanx.pad(), phalanx.width(), round);
    }

    private static PadText pad(Bound b) {
        Carrier carrier = carrier(b);
        if (carrier == null) {
            throw new IllegalStateException("a pad without carrier was not refused");
        }
        Rubber rubber = carrier.layer().rubber();
        double over = carrier.layer().thickness() - b.get(BOARD);
        Chip chip = b.get(PAD_CHIP).chip();
        b.assume(
                ON,
                "rubber " + rubber.name() + " and thickness "
                        + PadKinds.mm(carrier.layer().thickness()) + " from hand.yaml: " + PadKinds.mm(over)
                        + " over the board, "
                        + PadKinds.mm(over - chip.height()) + " over the chip");
        return new PadText(
                new PadDesign(
                        b.name(),
                        chip,
                        over,
                        rubber.modulus(),
                        b.get(BULK),
                        b.get(COUNT),
                        b.get(PITCH),
                        b.get(ROWS),
                        b.find(ROW_PITCH).orElse(b.get(PITCH)),
                        b.get(STAGGER),
                        carrier.width()),
                b.get(PAD_CHIP).addresses(),
                new PadPlace(b.get(ON), b.get(PHALANX) - 1, b.get(SHIFT)));
    }

    private static void checkPad(Bound b) {
        Carrier carrier = carrier(b);
        if (carrier == null) {
            if (b.find(ON).isPresent() && b.find(PHALANX).isPresent()) {
                b.fault(
                        b.isGiven(PHALANX) ? PHALANX : ON,
                        "'" + Words.clip(b.get(ON)) + "' has no phalanx " + b.get(PHALANX),
                        "a phalanx that hand.yaml gives this finger, counted from the palm");
            }
            return;
        }
        if (b.find(PAD_CHIP).isEmpty() || b.find(BOARD).isEmpty()) {
            return;
        }
        Chip chip = b.get(PAD_CHIP).chip();
        double over = carrier.layer().thickness() - b.get(BOARD);
        if (over <= chip.height()) {
            b.fault(
                    b.isGiven(BOARD) ? BOARD : PAD_CHIP,
                    "the chip is " + PadKinds.mm(chip.height()) + " high and the rubber over the board only "
                            + PadKinds.mm(over) + " ("
                            + PadKinds.mm(carrier.layer().thickness()) + " in hand.yaml less the board)",
                    "a pad thicker than board and chip together, or a lower chip");
        }
        if (b.find(COUNT).isEmpty() || b.find(PITCH).isEmpty() || b.find(ROWS).isEmpty()) {
            return;
        }
        if (b.get(COUNT) > 1 && b.get(PITCH) < chip.sizeX()) {
            b.fault(
                    PITCH,
                    "chips " + PadKinds.mm(chip.sizeX()) + " long overlap at a pitch of " + PadKinds.mm(b.get(PITCH)),
                    "a pitch of at least " + PadKinds.mm(chip.sizeX()));
        }
        double rowPitch = b.find(ROW_PITCH).orElse(b.get(PITCH));
        if (b.get(ROWS) > 1 && rowPitch < chip.sizeY()) {
            b.fault(
                    b.isGiven(ROW_PITCH) ? ROW_PITCH : ROWS,
                    "rows of chips " + PadKinds.mm(chip.sizeY()) + " wide overlap at " + PadKinds.mm(rowPitch),
                    "a row pitch of at least " + PadKinds.mm(chip.sizeY()));
        }
        checkShift(b, carrier, chip);
        double shift = b.find(STAGGER).orElse(0.0);
        if (shift > 0 && (b.get(ROWS) < 2 || shift >= b.get(PITCH))) {
            b.fault(
                    STAGGER,
                    b.get(ROWS) < 2
                            ? "a single row has none to be shifted against"
                            : "rows shifted by " + PadKinds.mm(shift) + " at a pitch of " + PadKinds.mm(b.get(PITCH)),
                    b.get(ROWS) < 2 ? "rows: 2, or no stagger" : "less than the pitch; half of it is best");
        }
        double strip = (b.get(COUNT) - 1) * b.get(PITCH) + chip.sizeX() + (b.get(ROWS) > 1 ? shift : 0);
        if (strip > carrier.layer().length() * (1 + 1e-9)) {
            b.fault(
                    COUNT,
                    b.get(COUNT) + " chips take " + PadKinds.mm(strip) + " along a pad of "
                            + PadKinds.mm(carrier.layer().length()),
                    "fewer chips, a smaller pitch or a longer pad");
        }
    }

    private static void checkShift(Bound b, Carrier carrier, Chip chip) {
        if (b.find(SHIFT).isEmpty() || !b.isGiven(SHIFT)) {
            return;
        }
        double staggered = b.get(ROWS) > 1 ? b.find(STAGGER).orElse(0.0) : 0;
        double half = ((b.get(COUNT) - 1) * b.get(PITCH) + chip.sizeX() + staggered) / 2;
        double most = carrier.layer().length() / 2 + carrier.beyond() - half;
        double least = half - carrier.layer().length() / 2;
        if (least <= most && (b.get(SHIFT) > most * (1 + 1e-9) || b.get(SHIFT) < least * (1 + 1e-9))) {
            b.fault(
                    SHIFT,
                    "a strip of " + PadKinds.mm(2 * half) + " shifted by " + PadKinds.mm(b.get(SHIFT))
                            + " leaves its pad",
                    "a shift from " + PadKinds.mm(least) + " to " + PadKinds.mm(most));
        }
    }

    // ---- file

    private static final Key<Map<String, ChipKeys.ChipAndAddresses>> CHIPS = Key.required(
            "chips",
            Kinds.Named.defining(ChipKeys.CHIP, 1, 20, "chips", ChipKeys.FAMILY),
            "The kinds of chips, by name.");
    private static final Key<Map<String, PadText>> PADS = Key.required(
            "pads",
            Kinds.Named.defining(PAD_SECTION, 1, 20, "sensing pads", ReadingKeys.PAD_FAMILY),
            "The pads with chips, by name.");
    private static final Key<Bus> BUS = Key.required("bus", BusKeys.SECTION, "How the chips are read.");
    private static final Key<TouchStop> TOUCH =
            Key.required("touch", TouchKeys.TOUCH_SECTION, "How a finger stops on touch.");
    private static final Key<PadSetup.Casting> CASTING =
            Key.required("casting", TouchKeys.CASTING_SECTION, "How the rubber is poured.");
    private static final Key<PadSetup.Judging> WANTED =
            Key.required("wanted", TouchKeys.WANTED_SECTION, "What the pads should feel.");

    private static final Key<Readings> READINGS =
            Key.maybe("readings", ReadingKeys.READINGS, "Which column of a log holds what.");

    static final Section<PadSetup> FILE = Section.of(
                    "pads",
                    "pads.yaml (optional): barometer chips under the hand's pads, the bus that reads them, how they are cast, how"
                            + " a finger stops on touch, and the columns of a log of their readings.",
                    List.of(CHIPS, PADS, BUS, TOUCH, CASTING, WANTED, READINGS),
                    b -> new PadSetup(
                            b.get(PADS).values().stream().map(PadText::design).toList(),
                            b.get(BUS),
                            b.get(PADS).values().stream()
                                    .mapToInt(PadText::addresses)
                                    .min()
                                    .orElse(1),
                            b.get(TOUCH),
                            b.get(CASTING),
                            b.get(WANTED),
                            b.get(PADS).values().stream().map(PadText::place).toList(),
                            b.find(READINGS)))
            .checked(b -> b.find(PADS).ifPresent(pads -> {
                Map<String, Integer> chips = new LinkedHashMap<>();
                pads.forEach((name, pad) -> chips.put(name, pad.design().cells()));
                ReadingKeys.checkCounts(b, READINGS, chips);
            }));
}
