package gripwright.pad;

import gripwright.check.Check;

/**
 * When each chip is read, by one way of reading them all; round k comes k periods after round 0.
 *
 * <p>A reading is taken for the pressure in the middle of its conversion. It has arrived when its read transfer ends.
 * Scans that read the temperature in between are left out.
 *
 * @param period of a round [s]
 * @param sampled per chip [s] after the start of round 0; in a ring before it, since a chip's last result is read
 * @param arrives per chip [s] after the start of round 0
 */
public record ScanClock(Bus.Scheme scheme, double period, double[] sampled, double[] arrives) {
    public ScanClock {
        Check.positive(period, "period of the scan", "s");
        Check.count(arrives.length, sampled.length, "arrival times", "one per chip");
        sampled = sampled.clone();
        arrives = arrives.clone();
    }

    /** @param plan one that is possible on this bus with so many chips */
    public static ScanClock of(Bus bus, Chip chip, int chips, Bus.Plan plan) {
        Check.that(plan.possible(), "the chips cannot be read " + plan.scheme().label() + ": " + plan.obstacle());
        double m = bus.select();
        double s = bus.start(chip);
        double r = bus.read(chip);
        double ready = chip.ready();
        double[] sampled = new double[chips];
        double[] arrives = new double[chips];
        for (int i = 0; i < chips; i++) {
            double started = switch (plan.scheme()) {
                case ONE_BY_ONE -> i * (m + s + ready + r) + m + s;
                case START_ALL -> (i + 1) * (m + s);
                case BROADCAST -> m + s;
                case RING -> (i + 1) * (m + r + s) - plan.period();
            };
            sampled[i] = started + chip.wakeUp() + chip.conversion() / 2;
            arrives[i] = switch (plan.scheme()) {
                case ONE_BY_ONE -> started + ready + r;
                case START_ALL -> Math.max(chips * (m + s), m + s + ready) + (i + 1) * (m + r);
                case BROADCAST -> m + s + ready + (i + 1) * (m + r);
                case RING -> i * (m + r + s) + m + r;
            };
        }
        return new ScanClock(plan.scheme(), plan.period(), sampled, arrives);
    }

    public int chips() {
        return sampled.length;
    }

    /** When the pressure of a reading was taken [s]. */
    public double sampled(int chip, int round) {
        return round * period + sampled[chip];
    }

    /** From that to its arrival [s]. */
    public double lag(int chip) {
        return arrives[chip] - sampled[chip];
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof ScanClock c
                && c.scheme == scheme
                && c.period == period
                && java.util.Arrays.equals(c.sampled, sampled)
                && java.util.Arrays.equals(c.arrives, arrives);
    }

    @Override
    public int hashCode() {
        return java.util.Arrays.hashCode(sampled);
    }
}
