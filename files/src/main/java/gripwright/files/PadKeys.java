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
import gripwright.units.QuantityText;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** The table of pads.yaml; the hand has been read before it, rubber and cover thickness stand there and nowhere else. */
final class PadKeys {
    static final String PALM = PadPlace.PALM;
    private static final String CHIP_FAMILY = "chip";
    private static final int MOST_CHIPS = 64;

    private PadKeys() {}

    private static Key<Double> length(String name, String says) {
        return Key.required(name, new Quantities.Value(Range.above0(Measure.LENGTH)), says);
    }

    private static Key<Integer> whole(String name, int least, int most, String otherwise, String why, String says) {
        return Key.byDefault(name, new Whole(least, most), otherwise, why, says);
    }

    /** A whole number. */
    private record Whole(int least, int most) implements Kind<Integer> {
        @Override
        public @Nullable Integer read(Tree tree, String path, Reading reading) {
            Double value = new Quantities.Value(Range.within(Measure.NUMBER, least, most)).read(tree, path, reading);
            if (value != null && value != Math.rint(value)) {
                reading.fault(tree.place(), Kind.lastOf(path) + " is " + tree.words(), words());
                return null;
            }
            return value == null ? null : (int) Math.round(value);
        }

        @Override
        public Map<String, Object> schema(Map<String, Object> definitions) {
            Map<String, Object> schema = Json.object("type", "integer");
            schema.put("minimum", least);
            schema.put("maximum", most);
            return schema;
        }

        @Override
        public String words() {
            return "a whole number from " + least + " to " + most;
        }
    }

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

    // ---- chips

    private static final Key<List<Double>> OUTLINE = Key.required(
            "outline",
            new Quantities.Several(2, Range.above0(Measure.LENGTH), "along and across the strip"),
            "Size of the chip along and across the strip.");
    private static final Key<Double> HEIGHT = length("height", "From the board to the outer face of the lid.");
    private static final Key<Double> PORT =
            length("port radius", "Of the hole in the lid. The wider, the better it fills.");
    private static final Key<Double> LID = length("lid", "Thickness of the lid.");
    private static final Key<Double> CAVITY_RADIUS = length("cavity radius", "Of the room under the lid.");
    private static final Key<Double> CAVITY_HEIGHT =
            length("cavity height", "Of the room under the lid, over the die.");
    private static final Key<Double> NOISE = Key.required(
            "noise",
            new Quantities.Value(Range.above0(Measure.PRESSURE)),
            "Standard deviation (rms) of one reading, at the conversion time given.");
    private static final Key<List<Double>> RANGE = Key.required(
            "range",
            new Quantities.Several(2, Range.from0(Measure.PRESSURE), "lowest and highest absolute pressure"),
            "Lowest and highest absolute pressure the chip reads.");
    private static final Key<Double> CONVERSION =
            Key.required("conversion", new Quantities.Value(Range.from0(Measure.TIME)), "Time of one conversion.");
    private static final Key<Integer> START = Key.derived(
            "start bytes",
            new Whole(0, 16),
            "the chip converts by itself",
            "Data bytes of the transfer that starts a conversion, the register not counted.");
    private static final Key<Integer> RESULT =
            Key.required("result bytes", new Whole(1, 64), "Data bytes of the register read that fetches the result.");
    private static final Key<Integer> ADDRESSES = whole(
            "addresses",
            1,
            128,
            "1",
            "many such chips have one fixed address",
            "How many different addresses the chip can be set to.");

    private static final Key<Double> WAKE_UP = Key.byDefault(
            "wake-up",
            new Quantities.Value(Range.from0(Measure.TIME)),
            "0 ms",
            "the chip stays awake between readings",
            "From the start of a reading to its conversion, for chips that sleep in between.");
    private static final Key<Integer> TEMPERATURE_EVERY = whole(
            "temperature every",
            0,
            100_000,
            "0",
            "the die's temperature comes with every result",
            "Scans from one reading of the temperature to the next, for chips that convert it on its own; 0 if it comes"
                    + " with every result.");
    private static final Key<Double> TEMPERATURE_TIME = Key.byDefault(
            "temperature conversion",
            new Quantities.Value(Range.from0(Measure.TIME)),
            "0 ms",
            "the temperature comes with every result",
            "Time of one conversion of the temperature.");
    private static final Key<Double> HEAT = Key.maybe(
            "heat",
            new Quantities.Value(Range.from0(Measure.HEAT_RESPONSE)),
            "Measured reading per kelvin of a poured cell; if it is not given, a range is computed.");
    private static final Key<Double> RESOLUTION = Key.derived(
            "resolution",
            new Quantities.Value(Range.above0(Measure.PRESSURE)),
            "a tenth of the noise",
            "Step from one reading to the next.");

    private record ChipAndAddresses(Chip chip, int addresses) {}

    private static final int WRITE_BITS = 20;
    private static final int READ_BITS = 30;
    private static final int BYTE_BITS = 9;

    private static final Section<ChipAndAddresses> CHIP = Section.of(
                    "chip",
                    "A barometer chip.",
                    List.of(
                            OUTLINE,
                            HEIGHT,
                            PORT,
                            LID,
                            CAVITY_RADIUS,
                            CAVITY_HEIGHT,
                            NOISE,
                            RANGE,
                            CONVERSION,
                            START,
                            RESULT,
                            ADDRESSES,
                            WAKE_UP,
                            TEMPERATURE_EVERY,
                            TEMPERATURE_TIME,
                            HEAT,
                            RESOLUTION),
                    PadKeys::chip)
            .checked(PadKeys::checkChip);

    private static ChipAndAddresses chip(Bound b) {
        Chip chip = new Chip(
                b.name(),
                b.get(OUTLINE).get(0),
                b.get(OUTLINE).get(1),
                b.get(HEIGHT),
                b.get(PORT),
                b.get(LID),
                b.get(CAVITY_RADIUS),
                b.get(CAVITY_HEIGHT),
                b.get(NOISE),
                b.get(RANGE).get(0),
                b.get(RANGE).get(1),
                b.get(CONVERSION),
                b.find(START).map(n -> WRITE_BITS + BYTE_BITS * n).orElse(0),
                READ_BITS + BYTE_BITS * b.get(RESULT),
                b.get(WAKE_UP),
                b.get(TEMPERATURE_EVERY),
                b.get(TEMPERATURE_TIME),
                b.find(HEAT).orElse(Double.NaN),
                b.find(RESOLUTION).orElse(Chip.assumedResolution(b.get(NOISE))));
        if (!b.isGiven(RESOLUTION)) {
            b.assume(
                    RESOLUTION,
                    "a tenth of the noise, " + QuantityText.format(chip.resolution(), Measure.PRESSURE)
                            + ": the noise given is that of whole readings, steps included");
        }
        if (!b.isGiven(START)) {
            b.assume(START, "not given: the chip converts by itself");
        }
        return new ChipAndAddresses(chip, b.get(ADDRESSES));
    }

    private static String mm(double metres) {
        return QuantityText.format(metres, Measure.LENGTH);
    }

    private static void checkChip(Bound b) {
        b.find(OUTLINE).ifPresent(outline -> {
            double radius = Math.min(outline.get(0), outline.get(1)) / 2;
            b.find(PORT)
                    .filter(port -> port >= radius)
                    .ifPresent(port -> b.fault(
                            PORT,
                            "the port's radius " + mm(port) + " is wider than the lid, whose shorter side is twice "
                                    + mm(radius),
                            "a port radius below " + mm(radius)));
            b.find(CAVITY_RADIUS)
                    .filter(cavity -> cavity >= radius)
                    .ifPresent(cavity -> b.fault(
                            CAVITY_RADIUS,
                            "the cavity's radius " + mm(cavity)
                                    + " reaches beyond the chip, whose shorter side is twice "
                                    + mm(radius),
                            "a cavity radius below " + mm(radius)));
        });
        double half = b.find(OUTLINE).map(o -> Math.min(o.get(0), o.get(1)) / 2).orElse(Double.POSITIVE_INFINITY);
        if (b.find(PORT).filter(p -> p < half).isPresent()
                && b.find(CAVITY_RADIUS).isPresent()
                && b.get(PORT) >= b.get(CAVITY_RADIUS)) {
            b.fault(
                    PORT,
                    "the port's radius " + mm(b.get(PORT)) + " is not below the cavity's, " + mm(b.get(CAVITY_RADIUS)),
                    "a port radius below the cavity radius");
        }
        if (b.find(HEIGHT).isPresent()
                && b.find(LID).isPresent()
                && b.find(CAVITY_HEIGHT).isPresent()
                && b.get(LID) + b.get(CAVITY_HEIGHT) >= b.get(HEIGHT)) {
            b.fault(
                    CAVITY_HEIGHT,
                    "lid and cavity are " + mm(b.get(LID) + b.get(CAVITY_HEIGHT)) + " high in a chip of "
                            + mm(b.get(HEIGHT)),
                    "lid and cavity height together below the chip's height");
        }
        if (b.find(TEMPERATURE_EVERY).isPresent()
                && b.find(TEMPERATURE_TIME).isPresent()
                && (b.get(TEMPERATURE_EVERY) > 0) != (b.get(TEMPERATURE_TIME) > 0)) {
            b.fault(
                    b.isGiven(TEMPERATURE_TIME) ? TEMPERATURE_TIME : TEMPERATURE_EVERY,
                    "the temperature is read every " + b.get(TEMPERATURE_EVERY) + " scans and takes "
                            + QuantityText.format(b.get(TEMPERATURE_TIME), Measure.TIME),
                    "both above 0, or neither");
        }
        b.find(RANGE)
                .filter(r -> r.get(0) >= r.get(1) || r.get(1) <= 101325)
                .ifPresent(r -> b.fault(
                        RANGE,
                        "the range from " + QuantityText.format(r.get(0), Measure.PRESSURE) + " to "
                                + QuantityText.format(r.get(1), Measure.PRESSURE)
                                + " leaves no room above the air's pressure",
                        "[lowest, highest] absolute pressure, the highest above 101.3 kPa"));
    }

    // ---- pads

    private static final Key<ChipAndAddresses> PAD_CHIP =
            Key.required("chip", new OfChip(), "The chip under it: one of the chips of this file.");

    private record OfChip() implements Kind<ChipAndAddresses> {
        private static final Kinds.Name NAME = new Kinds.Name(CHIP_FAMILY);

        @Override
        public @Nullable ChipAndAddresses read(Tree tree, String path, Reading reading) {
            String name = NAME.read(tree, path, reading);
            return name == null ? null : (ChipAndAddresses) reading.named(CHIP_FAMILY, name);
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
    private static final Key<Integer> PHALANX = whole(
            "phalanx", 1, Finger.MOST_PHALANGES, "1", "the one next to the palm", "Which phalanx, 1 next to the palm.");
    private static final Key<Double> BOARD = Key.byDefault(
            "board",
            new Quantities.Value(Range.from0(Measure.LENGTH)),
            "0 mm",
            "let into the bone",
            "How far the board stands out of the bone; the rubber over the board is the pad's thickness less this.");
    private static final Key<Integer> COUNT = Key.required("chips", new Whole(1, MOST_CHIPS), "Chips in one row.");
    private static final Key<Double> PITCH = length("pitch", "From chip to chip along the row.");
    private static final Key<Integer> ROWS = whole("rows", 1, 8, "1", "one row", "Rows side by side.");
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
                        + mm(carrier.layer().thickness()) + " from hand.yaml: " + mm(over) + " over the board, "
                        + mm(over - chip.height()) + " over the chip");
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
                    "the chip is " + mm(chip.height()) + " high and the rubber over the board only " + mm(over) + " ("
                            + mm(carrier.layer().thickness()) + " in hand.yaml less the board)",
                    "a pad thicker than board and chip together, or a lower chip");
        }
        if (b.find(COUNT).isEmpty() || b.find(PITCH).isEmpty() || b.find(ROWS).isEmpty()) {
            return;
        }
        if (b.get(COUNT) > 1 && b.get(PITCH) < chip.sizeX()) {
            b.fault(
                    PITCH,
                    "chips " + mm(chip.sizeX()) + " long overlap at a pitch of " + mm(b.get(PITCH)),
                    "a pitch of at least " + mm(chip.sizeX()));
        }
        double rowPitch = b.find(ROW_PITCH).orElse(b.get(PITCH));
        if (b.get(ROWS) > 1 && rowPitch < chip.sizeY()) {
            b.fault(
                    b.isGiven(ROW_PITCH) ? ROW_PITCH : ROWS,
                    "rows of chips " + mm(chip.sizeY()) + " wide overlap at " + mm(rowPitch),
                    "a row pitch of at least " + mm(chip.sizeY()));
        }
        checkShift(b, carrier, chip);
        double shift = b.find(STAGGER).orElse(0.0);
        if (shift > 0 && (b.get(ROWS) < 2 || shift >= b.get(PITCH))) {
            b.fault(
                    STAGGER,
                    b.get(ROWS) < 2
                            ? "a single row has none to be shifted against"
                            : "rows shifted by " + mm(shift) + " at a pitch of " + mm(b.get(PITCH)),
                    b.get(ROWS) < 2 ? "rows: 2, or no stagger" : "less than the pitch; half of it is best");
        }
        double strip = (b.get(COUNT) - 1) * b.get(PITCH) + chip.sizeX() + (b.get(ROWS) > 1 ? shift : 0);
        if (strip > carrier.layer().length() * (1 + 1e-9)) {
            b.fault(
                    COUNT,
                    b.get(COUNT) + " chips take " + mm(strip) + " along a pad of "
                            + mm(carrier.layer().length()),
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
                    "a strip of " + mm(2 * half) + " shifted by " + mm(b.get(SHIFT)) + " leaves its pad",
                    "a shift from " + mm(least) + " to " + mm(most));
        }
    }

    // ---- bus

    private static final Key<Boolean> KIND =
            Key.required("kind", Kinds.Choice.of("i2c", false, "spi", true), "The bus between chips and controller.");
    private static final Key<Double> CLOCK =
            Key.required("clock", new Quantities.Value(Range.above0(Measure.FREQUENCY)), "Clock of the bus.");
    private static final Key<Double> OVERHEAD = Key.byDefault(
            "overhead",
            new Quantities.Value(Range.from0(Measure.TIME)),
            "20 us",
            "an assumption; measure yours with a logic analyser",
            "Time the controller's driver loses per transfer.");
    private static final Key<Integer> BRANCHES = whole(
            "branches",
            1,
            128,
            "1",
            "one bus",
            "Separate buses, or channels of the switches, that chips are spread over.");

    private record Switch(boolean fitted, boolean several) {}

    private static final Key<Switch> SWITCH = Key.byDefault(
            "switch",
            new Kinds.Choice<>(switches()),
            "none",
            "no switch",
            "Whether branches are channels of a switch, and whether it can open several channels at once.");

    private static Map<String, Switch> switches() {
        Map<String, Switch> out = new LinkedHashMap<>();
        out.put("none", new Switch(false, false));
        out.put("one at a time", new Switch(true, false));
        out.put("several at once", new Switch(true, true));
        return out;
    }

    private static final Key<Double> CAPACITANCE = Key.optional(
            "capacitance",
            new Quantities.Value(Range.above0(Measure.CAPACITANCE)),
            "the rise of the lines is not checked",
            "Of one line with all that hangs on it at once.");
    private static final Key<Double> PULL_UP = Key.optional(
            "pull-up",
            new Quantities.Value(Range.above0(Measure.RESISTANCE)),
            "only the limits of the pull-up are printed",
            "Pull-up resistor of each line, all in parallel.");
    private static final Key<Double> SUPPLY = Key.byDefault(
            "supply",
            new Quantities.Value(Range.above0(Measure.VOLTAGE)),
            "3.3 V",
            "usual for such chips; common practice, no source",
            "Supply of the bus.");
    private static final Section<Bus> BUS_SECTION = Section.of(
                    "bus",
                    "The wires between chips and controller.",
                    List.of(KIND, CLOCK, OVERHEAD, BRANCHES, SWITCH, CAPACITANCE, PULL_UP, SUPPLY),
                    b -> new Bus(
                            b.get(KIND),
                            b.get(CLOCK),
                            b.get(OVERHEAD),
                            b.get(BRANCHES),
                            b.get(SWITCH).fitted(),
                            b.get(SWITCH).several(),
                            b.find(CAPACITANCE).orElse(0.0),
                            b.find(PULL_UP).orElse(0.0),
                            b.get(SUPPLY)))
            .checked(b -> b.find(CLOCK)
                    .filter(clock -> clock > 1e6 && !b.find(KIND).orElse(true))
                    .ifPresent(clock -> b.fault(
                            CLOCK,
                            "the clock is " + QuantityText.format(clock, Measure.FREQUENCY),
                            "at most 1 MHz on I2C (Fast-mode Plus), or kind: spi")));

    // ---- touch, casting, judging

    private static final Key<Double> SPEED = Key.required(
            "speed", new Quantities.Value(Range.above0(Measure.SPEED)), "Speed of the pad when it meets the object.");
    private static final Key<Double> CLOSING =
            Key.required("closing", new Quantities.Value(Range.above0(Measure.TIME)), "Time of one closing.");
    private static final Key<Double> WARMING = Key.byDefault(
            "warming",
            new Quantities.Value(Range.from0(Measure.WARMING)),
            "0.6 K/min",
            "an assumption; log a pad at rest while the motor works",
            "How fast the rubber warms while a closing lasts, from chips, motor or room.");
    private static final Range RATE = Range.within(Measure.SHARE, 1e-9, 0.5);
    private static final Key<Double> ALARMS = Key.required(
            "false alarms", new Quantities.Value(RATE), "Wanted rate of false alarms per closing, over all chips.");
    private static final Key<Double> TOUCH_MISSES = Key.byDefault(
            "misses",
            new Quantities.Value(RATE),
            "5 %",
            "usual for detection limits",
            "Rate of misses at which the force at detection is stated.");
    private static final Key<Double> DELAY = Key.required(
            "delay", new Quantities.Value(Range.from0(Measure.TIME)), "From a value in the controller to the motor.");
    private static final Key<Double> DECELERATION = Key.required(
            "deceleration",
            new Quantities.Value(Range.above0(Measure.ACCELERATION)),
            "Of the pad once the motor brakes.");
    private static final Key<Double> FINGER_STIFFNESS = Key.required(
            "finger stiffness",
            new Quantities.Value(Range.above0(Measure.STIFFNESS)),
            "Of finger and drive at the pad, the pad's own rubber not counted.");
    private static final Section<TouchStop> TOUCH_SECTION = Section.of(
            "touch",
            "How a finger stops when it feels something.",
            List.of(SPEED, CLOSING, WARMING, ALARMS, TOUCH_MISSES, DELAY, DECELERATION, FINGER_STIFFNESS),
            b -> new TouchStop(
                    b.get(SPEED),
                    b.get(CLOSING),
                    b.get(WARMING),
                    b.get(ALARMS),
                    b.get(TOUCH_MISSES),
                    b.get(DELAY),
                    b.get(DECELERATION),
                    b.get(FINGER_STIFFNESS)));

    private static final Key<Double> VACUUM = Key.required(
            "vacuum",
            new Quantities.Value(Range.above0(Measure.PRESSURE).upTo(101325)),
            "Absolute pressure the pot is pulled to (29 inHg on a gauge is about 31 hPa absolute).");
    private static final Key<Double> VISCOSITY =
            Key.required("viscosity", new Quantities.Value(Range.above0(Measure.VISCOSITY)), "Of the mixed resin.");
    private static final Key<Double> POT_LIFE =
            Key.required("pot life", new Quantities.Value(Range.above0(Measure.TIME)), "From the resin maker's sheet.");
    private static final Key<Double> STIRRED = Key.byDefault(
            "stirred air",
            new Quantities.Value(Range.within(Measure.SHARE, 0, 0.5)),
            "5 %",
            "gives the 3 to 5 times the resin's volume that pots are commonly chosen for; common practice, no source",
            "Volume of air stirred in, as a share of the resin's.");
    private static final Section<PadSetup.Casting> CASTING_SECTION = Section.of(
            "casting",
            "How the rubber is poured.",
            List.of(VACUUM, VISCOSITY, POT_LIFE, STIRRED),
            b -> new PadSetup.Casting(b.get(VACUUM), b.get(VISCOSITY), b.get(POT_LIFE), b.get(STIRRED)));

    private static final Key<Double> FORCE = Key.required(
            "force",
            new Quantities.Value(Range.above0(Measure.FORCE)),
            "Contact force a cell should bear without clipping, and at which its sense of place is judged.");
    private static final Key<Double> FALSE_ALARM = Key.byDefault(
            "false alarm", new Quantities.Value(RATE), "5 %", "usual for detection limits", "Of a detection limit.");
    private static final Key<Double> MISS = Key.byDefault(
            "miss", new Quantities.Value(RATE), "5 %", "usual for detection limits", "Of a detection limit.");
    private static final Key<Integer> ZEROS = whole(
            "zero readings",
            1,
            1_000_000,
            "100",
            "a zero taken just before each closing",
            "Readings averaged for the zero.");
    private static final Key<Double> GAIN_ERROR = Key.byDefault(
            "gain error",
            new Quantities.Value(Range.within(Measure.SHARE, 0, 1)),
            "5 %",
            "a guess; without it the sense of place comes out absurdly fine",
            "How far each cell's real gain is off the model's.");
    private static final Section<PadSetup.Judging> WANTED_SECTION = Section.of(
            "wanted sense",
            "What the pads should feel, and how it is judged.",
            List.of(FORCE, FALSE_ALARM, MISS, ZEROS, GAIN_ERROR),
            b -> new PadSetup.Judging(b.get(FALSE_ALARM), b.get(MISS), b.get(ZEROS), b.get(GAIN_ERROR), b.get(FORCE)));

    // ---- file

    private static final Key<Map<String, ChipAndAddresses>> CHIPS = Key.required(
            "chips", Kinds.Named.defining(CHIP, 1, 20, "chips", CHIP_FAMILY), "The kinds of chips, by name.");
    private static final Key<Map<String, PadText>> PADS = Key.required(
            "pads",
            Kinds.Named.defining(PAD_SECTION, 1, 20, "sensing pads", ReadingKeys.PAD_FAMILY),
            "The pads with chips, by name.");
    private static final Key<Bus> BUS = Key.required("bus", BUS_SECTION, "How the chips are read.");
    private static final Key<TouchStop> TOUCH = Key.required("touch", TOUCH_SECTION, "How a finger stops on touch.");
    private static final Key<PadSetup.Casting> CASTING =
            Key.required("casting", CASTING_SECTION, "How the rubber is poured.");
    private static final Key<PadSetup.Judging> WANTED =
            Key.required("wanted", WANTED_SECTION, "What the pads should feel.");

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
