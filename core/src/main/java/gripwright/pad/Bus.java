package gripwright.pad;

import gripwright.check.Check;
import java.util.ArrayList;
import java.util.List;

/**
 * The wires between chips and controller.
 *
 * @param spi whether it is SPI; else I2C
 * @param clock [Hz]
 * @param overhead of the controller's driver per transfer [s]
 * @param branches separate buses, or channels of switches, each of which may hold one chip of an address
 * @param switched whether the branches are channels of a switch on one bus
 * @param allOpen whether the switch can open several channels at once
 * @param capacitance of the wires and pins [F]; 0 = not known
 * @param pullUp [ohm]; 0 = not known
 * @param supply [V]
 */
public record Bus(
        boolean spi,
        double clock,
        double overhead,
        int branches,
        boolean switched,
        boolean allOpen,
        double capacitance,
        double pullUp,
        double supply) {
    /** Bit times of writing one byte to a switch. */
    private static final int SELECT_BITS = 20;

    private static final double LOW_LEVEL = 0.4;

    /** The specification's rounding of ln(7/3), from 30 to 70 % of the supply. */
    private static final double RISE_FACTOR = 0.8473;

    /** How the chips are read. */
    public enum Scheme {
        ONE_BY_ONE("one by one", "start, wait and read each chip in turn"),
        START_ALL("start each, then read each", "start every chip in turn, then read every chip"),
        BROADCAST("one start for all", "open all channels, start all chips with one write, then read each"),
        RING("ring", "read a chip's last result and start it again, then the next chip");

        private final String label;
        private final String meaning;

        Scheme(String label, String meaning) {
            this.label = label;
            this.meaning = meaning;
        }

        public String label() {
            return label;
        }

        public String meaning() {
            return meaning;
        }
    }

    /**
     * One way of reading all chips.
     *
     * @param period [s]; NaN if it cannot be done
     * @param age of the newest value when it arrives, at most [s]
     * @param withTemperature period of a scan with another behind it that reads the temperatures [s]; the period itself
     *     if the temperature comes with every result
     * @param mean period, those scans counted in [s]
     * @param obstacle why not, and what would make it possible; empty if it can be done
     */
    public record Plan(Scheme scheme, double period, double age, double withTemperature, double mean, String obstacle) {
        public boolean possible() {
            return obstacle.isEmpty();
        }
    }

    /** Time of one register read or write of so many bit times [s]. */
    public double transfer(int bits, int calls) {
        return bits / clock + calls * overhead;
    }

    /** On SPI a transfer is 8 bits for the register and 8 per byte; {@code head} is what I2C adds to its 9 per byte. */
    private int bits(int onI2c, int head) {
        return spi ? 8 * ((onI2c - head) / 9 + 1) : onI2c;
    }

    public double select() {
        return switched ? transfer(SELECT_BITS, 1) : 0;
    }

    public double start(Chip chip) {
        return chip.startBits() == 0 ? 0 : transfer(bits(chip.startBits(), 20), 1);
    }

    public double read(Chip chip) {
        return transfer(bits(chip.readBits(), 30), spi ? 1 : 2);
    }

    /**
     * All schemes for so many equal chips.
     *
     * @param addresses different addresses the chip can be set to
     */
    public List<Plan> plans(Chip chip, int chips, int addresses) {
        Check.that(chips >= 1 && addresses >= 1, "there are " + chips + " chips with " + addresses + " addresses");
        String conflict = conflict(chips, addresses);
        List<Plan> plans = new ArrayList<>();
        for (Scheme scheme : Scheme.values()) {
            String obstacle = conflict.isEmpty() && scheme == Scheme.BROADCAST ? noBroadcast() : conflict;
            plans.add(plan(scheme, chip, chips, obstacle));
        }
        return plans;
    }

    private Plan plan(Scheme scheme, Chip chip, int chips, String obstacle) {
        if (!obstacle.isEmpty()) {
            return new Plan(scheme, Double.NaN, Double.NaN, Double.NaN, Double.NaN, obstacle);
        }
        double ready = chip.ready();
        double period = period(scheme, chip, chips, ready);
        double age = switch (scheme) {
            case ONE_BY_ONE -> select() + start(chip) + ready + read(chip);
            case START_ALL, BROADCAST -> period;
            case RING -> period + ready;
        };
        double extra = chip.temperatureEvery() == 0
                ? 0
                : period(scheme, chip, chips, chip.wakeUp() + chip.temperatureConversion());
        double mean = period + (extra == 0 ? 0 : extra / chip.temperatureEvery());
        return new Plan(scheme, period, age, period + extra, mean, "");
    }

    /** Of one scan [s] whose values can be read {@code ready} after their start. */
    private double period(Scheme scheme, Chip chip, int chips, double ready) {
        double m = select();
        double s = start(chip);
        double r = read(chip);
        return switch (scheme) {
            case ONE_BY_ONE -> chips * (m + s + ready + r);
            case START_ALL -> Math.max(chips * (2 * m + s + r), m + s + ready + chips * (m + r));
            case BROADCAST -> m + s + ready + chips * (m + r);
            case RING -> Math.max(chips * (m + r + s), ready + m + r + s);
        };
    }

    private String noBroadcast() {
        if (spi) {
            return "SPI chips are started one at a time unless their select lines are tied for the write";
        }
        return allOpen
                ? ""
                : "no switch that opens all channels at once; a switch with one enable bit per channel would do it";
    }

    /** Why the chips cannot be told apart, and what would help; empty if they can. */
    public String conflict(int chips, int addresses) {
        int room = branches * addresses;
        if (spi || chips <= room) {
            return "";
        }
        int needed = (chips + addresses - 1) / addresses;
        return chips + " chips with " + addresses + (addresses == 1 ? " address" : " addresses") + " on " + branches
                + (branches == 1 ? " branch" : " branches") + " would answer at once; it takes " + needed
                + " branches: " + (needed + 7) / 8 + " eight-channel " + (needed > 8 ? "switches" : "switch")
                + ", or separate buses, or chips with more addresses";
    }

    /**
     * Pull-up limits of an I2C bus.
     *
     * @param least below it the chips cannot pull the line low [ohm]
     * @param greatest above it the line rises too slowly [ohm]
     * @param mostCapacitance of the mode [F]
     */
    public record PullUp(double least, double greatest, double mostCapacitance) {
        public boolean feasible() {
            return least <= greatest;
        }
    }

    /**
     * NXP UM10204, "I2C-bus specification and user manual", section 7.1: Rp(max) = tr / (0.8473 Cb), Rp(min) = (VDD -
     * VOL) / IOL, with rise time and sink current of the mode.
     */
    public static PullUp pullUp(double clock, double capacitance, double supply) {
        Check.that(clock <= 1e6, "the clock is " + clock + " Hz; I2C goes to 1 MHz in Fast-mode Plus");
        boolean slow = clock <= 100e3;
        boolean fast = clock <= 400e3;
        double rise = slow ? 1000e-9 : fast ? 300e-9 : 120e-9;
        double sink = fast ? 3e-3 : 20e-3;
        double most = fast ? 400e-12 : 550e-12;
        return new PullUp((supply - LOW_LEVEL) / sink, rise / (RISE_FACTOR * capacitance), most);
    }
}
