package gripwright.units;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * What a number measures: its dimension, the magnitudes that make sense for a hand on a bench, and the units in which
 * people read it.
 *
 * <p>The limits only keep slips of the keyboard out (1e300 mm); they are far outside anything a hand is made of (common
 * practice, no source).
 */
public enum Measure {
    NUMBER("a plain number", "0.5", Dimension.NONE, 1e-9, 1e9, ""),
    SHARE("a share", "90 %", Dimension.NONE, 1e-9, 1e3, "%"),
    LENGTH("a length", "12 mm", new Dimension(1, 0, 0, 0, 0), 1e-7, 100, "mm", "um", "m"),
    ANGLE("an angle", "25 deg", new Dimension(0, 0, 0, 1, 0), 1e-9, 100, "deg"),
    MASS("a mass", "180 g", new Dimension(0, 1, 0, 0, 0), 1e-8, 1e4, "g", "mg", "kg"),
    TIME("a time", "2 s", new Dimension(0, 0, 1, 0, 0), 1e-9, 1e6, "s", "ms"),
    FORCE("a force", "15 N", new Dimension(1, 1, -2, 0, 0), 1e-9, 1e6, "N", "mN", "kN"),
    PRESSURE("a pressure or modulus", "0.7 MPa", new Dimension(-1, 1, -2, 0, 0), 1e-3, 1e13, "kPa", "Pa", "MPa", "GPa"),
    TORQUE("a torque", "0.3 N*m", new Dimension(2, 1, -2, 0, 0), 1e-12, 1e6, "N*m", "N*mm"),
    STIFFNESS("a stiffness", "20 N/mm", new Dimension(0, 1, -2, 0, 0), 1e-6, 1e12, "N/mm", "N/m", "kN/mm"),
    TURNING_STIFFNESS(
            "a turning stiffness", "0.12 N*m/rad", new Dimension(2, 1, -2, -1, 0), 1e-9, 1e9, "N*m/rad", "N*mm/rad"),
    SPEED("a speed", "0.2 m/s", new Dimension(1, 0, -1, 0, 0), 1e-9, 1e4, "m/s", "mm/s"),
    TURNING_SPEED("a turning speed", "3 rad/s", new Dimension(0, 0, -1, 1, 0), 1e-9, 1e6, "rad/s"),
    ACCELERATION("an acceleration", "3 m/s^2", new Dimension(1, 0, -2, 0, 0), 1e-6, 1e5, "m/s^2"),
    HARDNESS("a hardness", "20 Shore A", new Dimension(0, 0, 0, 0, 1), 1e-3, 1e3, "Shore A"),
    FREQUENCY("a frequency", "400 kHz", new Dimension(0, 0, -1, 0, 0), 1e-6, 1e12, "kHz", "Hz", "MHz"),
    VOLUME("a volume", "2.4 mm^3", new Dimension(3, 0, 0, 0, 0), 1e-18, 1e3, "mm^3", "cm^3"),
    VISCOSITY("a viscosity", "3 Pa*s", new Dimension(-1, 1, -1, 0, 0), 1e-6, 1e6, "Pa*s"),
    VOLTAGE("a voltage", "3.3 V", new Dimension(2, 1, -3, 0, 0, -1), 1e-6, 1e6, "V", "mV"),
    RESISTANCE("a resistance", "2.2 kohm", new Dimension(2, 1, -3, 0, 0, -2), 1e-6, 1e12, "kohm", "ohm"),
    CAPACITANCE("a capacitance", "150 pF", new Dimension(-2, -1, 4, 0, 0, 2), 1e-15, 1, "pF", "nF"),
    WARMING("a speed of warming", "0.6 K/min", new Dimension(0, 0, -1, 0, 0, 0, 1), 1e-9, 1e3, "K/min", "K/s"),
    HEAT_RESPONSE(
            "a pressure per kelvin", "2 kPa/K", new Dimension(-1, 1, -2, 0, 0, 0, -1), 1e-6, 1e9, "kPa/K", "Pa/K");

    private final String words;
    private final String example;
    private final Dimension dimension;
    private final double least;
    private final double greatest;
    private final List<String> units;

    Measure(String words, String example, Dimension dimension, double least, double greatest, String... units) {
        this.words = words;
        this.example = example;
        this.dimension = dimension;
        this.least = least;
        this.greatest = greatest;
        this.units = List.of(units);
    }

    /** Such as "a length". */
    public String words() {
        return words;
    }

    public Dimension dimension() {
        return dimension;
    }

    /** Smallest magnitude other than 0 that is accepted [SI]. */
    public double least() {
        return least;
    }

    /** Greatest magnitude that is accepted [SI]. */
    public double greatest() {
        return greatest;
    }

    /** Units to show it in, the usual one first; "" = none. */
    public List<String> units() {
        return units;
    }

    public String usualUnit() {
        return units.get(0);
    }

    /** An example with a usual unit, such as {@code 12 mm}. */
    public String example() {
        return example;
    }

    /** The first measure of that dimension. */
    public static Optional<Measure> of(Dimension dimension) {
        return Arrays.stream(values())
                .filter(m -> m.dimension.equals(dimension))
                .findFirst();
    }
}
