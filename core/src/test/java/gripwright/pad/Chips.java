package gripwright.pad;

/**
 * Two chips for checks: outer sizes as of common parts; port, lid and cavity are assumptions. They are awake and give their
 * temperature with every result; their heat was not measured, their resolution is not known.
 */
final class Chips {
    /** 5 x 3 x 1.2 mm, coarse. */
    static final Chip WIDE = new Chip(
            "wide",
            5e-3,
            3e-3,
            1.2e-3,
            0.5e-3,
            0.2e-3,
            1.2e-3,
            0.5e-3,
            150,
            50e3,
            115e3,
            1.6e-3,
            29,
            66,
            0,
            0,
            0,
            Double.NaN,
            Chip.assumedResolution(150));
    /** 2.5 x 2 x 0.95 mm, fine. */
    static final Chip SMALL = new Chip(
            "small",
            2.5e-3,
            2e-3,
            0.95e-3,
            0.25e-3,
            0.12e-3,
            0.8e-3,
            0.3e-3,
            3,
            30e3,
            110e3,
            0.6e-3,
            20,
            58,
            0,
            0,
            0,
            Double.NaN,
            Chip.assumedResolution(3));

    private Chips() {}

    /** Of measured heat [Pa/K]. */
    static Chip withHeat(Chip c, double heat) {
        return with(c, c.wakeUp(), c.temperatureEvery(), c.temperatureConversion(), heat);
    }

    /** Asleep between scans, its temperature read in scans of their own. All times [s]. */
    static Chip sleepy(Chip c, double wakeUp, int every, double conversion) {
        return with(c, wakeUp, every, conversion, c.heat());
    }

    private static Chip with(Chip c, double wakeUp, int every, double conversion, double heat) {
        return new Chip(
                c.name(),
                c.sizeX(),
                c.sizeY(),
                c.height(),
                c.portRadius(),
                c.lid(),
                c.cavityRadius(),
                c.cavityHeight(),
                c.noise(),
                c.least(),
                c.greatest(),
                c.conversion(),
                c.startBits(),
                c.readBits(),
                wakeUp,
                every,
                conversion,
                heat,
                c.resolution());
    }
}
