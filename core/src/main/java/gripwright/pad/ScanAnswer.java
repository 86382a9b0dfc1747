package gripwright.pad;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * How fast all chips of a hand are read.
 *
 * @param chip whose times are taken for all: the slowest to convert and read
 * @param limits of the pull-up; empty on SPI or if the capacitance is not known
 */
public record ScanAnswer(
        Bus bus, Chip chip, int chips, int addresses, List<Bus.Plan> plans, Optional<Bus.PullUp> limits) {
    public ScanAnswer {
        plans = List.copyOf(plans);
    }

    public static ScanAnswer of(PadSetup setup) {
        Bus bus = setup.bus();
        int chips = setup.pads().stream().mapToInt(PadDesign::cells).sum();
        Chip slowest = setup.pads().stream()
                .map(PadDesign::chip)
                .max(Comparator.comparingDouble(c -> c.ready() + bus.read(c) + bus.start(c)))
                .orElseThrow();
        return new ScanAnswer(
                bus,
                slowest,
                chips,
                setup.addresses(),
                bus.plans(slowest, chips, setup.addresses()),
                bus.spi() || bus.capacitance() == 0
                        ? Optional.empty()
                        : Optional.of(Bus.pullUp(bus.clock(), bus.capacitance(), bus.supply())));
    }

    /** The possible scheme with the shortest period. */
    public Optional<Bus.Plan> fastest() {
        return plans.stream().filter(Bus.Plan::possible).min(Comparator.comparingDouble(Bus.Plan::period));
    }

    /** What is wrong with the lines; empty if nothing is known to be. */
    public String electrical() {
        if (limits.isEmpty()) {
            return "";
        }
        Bus.PullUp limit = limits.get();
        if (bus.capacitance() > limit.mostCapacitance()) {
            return "the line's capacitance is above what this speed allows; shorter wires, fewer chips a branch, or a slower"
                    + " clock";
        }
        if (!limit.feasible()) {
            return "no pull-up fits: one that lets the line rise in time is too strong for the chips; less capacitance (fewer"
                    + " chips a branch, shorter wires), or a slower clock";
        }
        if (bus.pullUp() > limit.greatest()) {
            return "the pull-up is too weak: the line rises too slowly";
        }
        return bus.pullUp() > 0 && bus.pullUp() < limit.least()
                ? "the pull-up is too strong: the chips cannot pull the line low"
                : "";
    }
}
