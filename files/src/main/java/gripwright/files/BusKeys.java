package gripwright.files;

import gripwright.pad.Bus;
import gripwright.units.Measure;
import gripwright.units.QuantityText;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The table of the wires between chips and controller in pads.yaml. */
final class BusKeys {
    private BusKeys() {}

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
    private static final Key<Integer> BRANCHES = PadKinds.whole(
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
    static final Section<Bus> SECTION = Section.of(
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
}
