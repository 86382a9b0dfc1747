package gripwright.closing;

import java.util.List;

/**
 * What the chips of a hand said while it closed. Times count from the start of winding; see {@link Sensing#TIME}.
 *
 * @param policy the word of the drive policy
 * @param period of the scan [s]
 * @param end of the closing [s]; one more round of the scan, at rest, stands after it
 * @param moved how far the arm moved the hand to the side before it tightened [m], along x
 */
public record ChipReadings(
        String policy, double period, double end, double moved, List<Chip> chips, List<Stop> stops, String story) {
    /**
     * One chip.
     *
     * @param strip name of the pad
     * @param index within its strip
     * @param body the pad's
     * @param along and
     * @param across place from the middle of the strip [m]
     * @param zero its mean reading before the hand came in [Pa]
     * @param threshold above the zero [Pa]
     * @param greatest end of its range [Pa]
     */
    public record Chip(
            String strip,
            int index,
            String body,
            double along,
            double across,
            double zero,
            double threshold,
            double greatest,
            List<Value> values) {
        public Chip {
            values = List.copyOf(values);
        }
    }

    /**
     * One reading.
     *
     * @param sampled when the pressure was taken [s]
     * @param arrived when the controller had it [s]
     * @param pressure absolute, as read [Pa]
     * @param rise of the pressure on the die above the air's, without noise, steps and end of range [Pa]
     * @param saturated the chip was at an end of its range
     */
    public record Value(double sampled, double arrived, double pressure, double rise, boolean saturated) {}

    /**
     * Something stopped because a chip felt something.
     *
     * @param what a motor's name, or "arm", or "all motors"
     * @param chip index among all chips
     * @param arrived time of the value that did it [s]
     * @param stopped [s]
     */
    public record Stop(String what, int chip, double arrived, double stopped) {}

    public ChipReadings {
        chips = List.copyOf(chips);
        stops = List.copyOf(stops);
    }
}
