package gripwright.files;

import gripwright.pad.Chip;
import gripwright.units.Measure;
import gripwright.units.QuantityText;
import java.util.List;

/** The table of a barometer chip in pads.yaml. */
final class ChipKeys {
    static final String FAMILY = "chip";

    private ChipKeys() {}

    private static final Key<List<Double>> OUTLINE = Key.required(
            "outline",
            new Quantities.Several(2, Range.above0(Measure.LENGTH), "along and across the strip"),
            "Size of the chip along and across the strip.");
    private static final Key<Double> HEIGHT = PadKinds.length("height", "From the board to the outer face of the lid.");
    private static final Key<Double> PORT =
            PadKinds.length("port radius", "Of the hole in the lid. The wider, the better it fills.");
    private static final Key<Double> LID = PadKinds.length("lid", "Thickness of the lid.");
    private static final Key<Double> CAVITY_RADIUS = PadKinds.length("cavity radius", "Of the room under the lid.");
    private static final Key<Double> CAVITY_HEIGHT =
            PadKinds.length("cavity height", "Of the room under the lid, over the die.");
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
            new PadKinds.Whole(0, 16),
            "the chip converts by itself",
            "Data bytes of the transfer that starts a conversion, the register not counted.");
    private static final Key<Integer> RESULT = Key.required(
            "result bytes", new PadKinds.Whole(1, 64), "Data bytes of the register read that fetches the result.");
    private static final Key<Integer> ADDRESSES = PadKinds.whole(
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
    private static final Key<Integer> TEMPERATURE_EVERY = PadKinds.whole(
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

    record ChipAndAddresses(Chip chip, int addresses) {}

    private static final int WRITE_BITS = 20;
    private static final int READ_BITS = 30;
    private static final int BYTE_BITS = 9;

    static final Section<ChipAndAddresses> CHIP = Section.of(
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
                    ChipKeys::chip)
            .checked(ChipKeys::checkChip);

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

    private static void checkChip(Bound b) {
        b.find(OUTLINE).ifPresent(outline -> {
            double radius = Math.min(outline.get(0), outline.get(1)) / 2;
            b.find(PORT)
                    .filter(port -> port >= radius)
                    .ifPresent(port -> b.fault(
                            PORT,
                            "the port's radius " + PadKinds.mm(port)
                                    + " is wider than the lid, whose shorter side is twice " + PadKinds.mm(radius),
                            "a port radius below " + PadKinds.mm(radius)));
            b.find(CAVITY_RADIUS)
                    .filter(cavity -> cavity >= radius)
                    .ifPresent(cavity -> b.fault(
                            CAVITY_RADIUS,
                            "the cavity's radius " + PadKinds.mm(cavity)
                                    + " reaches beyond the chip, whose shorter side is twice "
                                    + PadKinds.mm(radius),
                            "a cavity radius below " + PadKinds.mm(radius)));
        });
        double half = b.find(OUTLINE).map(o -> Math.min(o.get(0), o.get(1)) / 2).orElse(Double.POSITIVE_INFINITY);
        if (b.find(PORT).filter(p -> p < half).isPresent()
                && b.find(CAVITY_RADIUS).isPresent()
                && b.get(PORT) >= b.get(CAVITY_RADIUS)) {
            b.fault(
                    PORT,
                    "the port's radius " + PadKinds.mm(b.get(PORT)) + " is not below the cavity's, "
                            + PadKinds.mm(b.get(CAVITY_RADIUS)),
                    "a port radius below the cavity radius");
        }
        if (b.find(HEIGHT).isPresent()
                && b.find(LID).isPresent()
                && b.find(CAVITY_HEIGHT).isPresent()
                && b.get(LID) + b.get(CAVITY_HEIGHT) >= b.get(HEIGHT)) {
            b.fault(
                    CAVITY_HEIGHT,
                    "lid and cavity are " + PadKinds.mm(b.get(LID) + b.get(CAVITY_HEIGHT)) + " high in a chip of "
                            + PadKinds.mm(b.get(HEIGHT)),
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
}
