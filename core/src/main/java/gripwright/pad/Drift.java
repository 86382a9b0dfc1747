package gripwright.pad;

import gripwright.check.Check;

/**
 * What moves a reading during a closing though nothing touches the pad. Heat is a range: a cavity that is full and bonded
 * everywhere is a thermometer, one where the rubber has let go is none, and nobody sees from outside which it is.
 *
 * @param time since the zero [s]
 * @param heatLeast reading [Pa]; above 0 only if the chip's heat was measured
 * @param heatMost reading [Pa]
 * @param weather reading, as far as the cell follows the air [Pa]
 * @param door reading when a door closes or a fan starts [Pa]
 */
public record Drift(double time, double heatLeast, double heatMost, double weather, double door) {
    /** Of the air on a day of change, 1 hPa/h; common practice, no source [Pa/s]. */
    public static final double WEATHER = 100 / 3600.0;

    /** Of a door or a fan; common practice, no source [Pa]. */
    public static final double DOOR = 20;

    /** Of the air over height near the ground, International Standard Atmosphere: density times gravity [Pa/m]. */
    public static final double PER_METRE = 12.01;

    /**
     * @param time since the zero [s]
     * @param warming of the rubber meanwhile [K/s]
     */
    public static Drift over(double time, double warming, PadResponse response, Chip chip) {
        Check.positive(time, "time", "s");
        Check.notNegative(warming, "warming", "K/s");
        boolean measured = !Double.isNaN(chip.heat());
        double most = (measured ? chip.heat() : response.perKelvin(Cavity.EXPANSION)) * warming * time;
        double follows = response.ambientRatio();
        return new Drift(time, measured ? most : 0, most, follows * WEATHER * time, follows * DOOR);
    }

    /** All of it at its worst and with one sign [Pa]. */
    public double most() {
        return heatMost + weather + door;
    }

    /** What goes on while one waits, a door left out [Pa/s]. */
    public double rate() {
        return (heatMost + weather) / time;
    }
}
