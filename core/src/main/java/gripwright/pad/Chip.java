package gripwright.pad;

import gripwright.check.Check;

/**
 * A barometer chip: a die in a can whose lid has a port.
 *
 * @param sizeX outline along the strip [m]
 * @param sizeY outline across the strip [m]
 * @param height of the lid's outer face over the board [m]
 * @param portRadius hole in the lid [m]
 * @param lid its thickness [m]
 * @param cavityRadius room under the lid [m]
 * @param cavityHeight room under the lid [m]
 * @param noise standard deviation of one reading [Pa]
 * @param least lowest pressure it reads [Pa]
 * @param greatest highest pressure it reads [Pa]
 * @param conversion time of one reading [s]
 * @param startBits bit times of the transfer that starts a conversion; 0 if the chip runs freely
 * @param readBits bit times of the transfer that reads the result
 * @param wakeUp from the start to the first conversion [s]
 * @param temperatureEvery scans from one reading of the die's temperature to the next; 0 if it comes with every result
 * @param temperatureConversion time of one reading of the temperature [s]
 * @param heat measured reading per kelvin of a poured cell [Pa/K]; NaN if nobody measured it
 * @param resolution step between two readings next to one another [Pa]
 */
public record Chip(
        String name,
        double sizeX,
        double sizeY,
        double height,
        double portRadius,
        double lid,
        double cavityRadius,
        double cavityHeight,
        double noise,
        double least,
        double greatest,
        double conversion,
        int startBits,
        int readBits,
        double wakeUp,
        int temperatureEvery,
        double temperatureConversion,
        double heat,
        double resolution) {
    /** The noise given is that of whole readings, their steps included, so a finer step than that changes nothing. */
    private static final double STEP_OF_NOISE = 0.1;

    public Chip {
        Check.positive(sizeX, "outline of " + name + " along the strip", "m");
        Check.positive(sizeY, "outline of " + name + " across the strip", "m");
        Check.positive(height, "height of " + name, "m");
        Check.positive(noise, "noise of " + name, "Pa");
        Check.notNegative(conversion, "conversion time of " + name, "s");
        Check.notNegative(wakeUp, "wake-up time of " + name, "s");
        Check.notNegative(temperatureConversion, "temperature conversion of " + name, "s");
        Check.that(temperatureEvery >= 0, "temperature of " + name + " is read every " + temperatureEvery + " scans");
        Check.positive(resolution, "resolution of " + name, "Pa");
        Check.that(greatest > least, "the range of " + name + " ends at " + greatest + " Pa, not above its start");
    }

    /** Step taken where nobody stated one. @param noise [Pa] */
    public static double assumedResolution(double noise) {
        return STEP_OF_NOISE * noise;
    }

    /** From the start to a result that can be read [s]. */
    public double ready() {
        return wakeUp + conversion;
    }

    /** Of the circle with the area of the outline [m]. */
    public double equalAreaRadius() {
        return Math.sqrt(sizeX * sizeY / Math.PI);
    }

    /** Of cavity and port together [m^3]: what must be filled. */
    public double volume() {
        return Math.PI * (cavityRadius * cavityRadius * cavityHeight + portRadius * portRadius * lid);
    }
}
