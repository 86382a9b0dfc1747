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
    NUMBER("a plain number", Dimension.NONE, 1e-9, 1e9, ""),
    SHARE("a share", Dimension.NONE, 1e-9, 1e3, "%"),
    LENGTH("a length", new Dimension(1, 0, 0, 0, 0), 1e-7, 100, "mm", "um", "m"),
    ANGLE("an angle", new Dimension(0, 0, 0, 1, 0), 1e-9, 100, "deg"),
    MASS("a mass", new Dimension(0, 1, 0, 0, 0), 1e-8, 1e4, "g", "mg", "kg"),
    TIME("a time", new Dimension(0, 0, 1, 0, 0), 1e-9, 1e6, "s", "ms"),
    FORCE("a force", new Dimension(1, 1, -2, 0, 0), 1e-9, 1e6, "N", "mN", "kN"),
    PRESSURE("a pressure or modulus", new Dimension(-1, 1, -2, 0, 0), 1e-3, 1e13, "kPa", "Pa", "MPa", "GPa"),
    TORQUE("a torque", new Dimension(2, 1, -2, 0, 0), 1e-12, 1e6, "N*m", "N*mm"),
    STIFFNESS("a stiffness", new Dimension(0, 1, -2, 0, 0), 1e-6, 1e12, "N/mm", "N/m", "kN/mm"),
    TURNING_STIFFNESS("a turning stiffness", new Dimension(2, 1, -2, -1, 0), 1e-9, 1e9, "N*m/rad", "N*mm/rad"),
    SPEED("a speed", new Dimension(1, 0, -1, 0, 0), 1e-9, 1e4, "m/s", "mm/s"),
    TURNING_SPEED("a turning speed", new Dimension(0, 0, -1, 1, 0), 1e-9, 1e6, "rad/s"),
    ACCELERATION("an acceleration", new Dimension(1, 0, -2, 0, 0), 1e-6, 1e5, "m/s^2"),
    HARDNESS("a hardness", new Dimension(0, 0, 0, 0, 1), 1e-3, 1e3, "Shore A");

    private final String words;
    private final Dimension dimension;
    private final double least;
    private final double greatest;
    private final List<String> units;

    Measure(String words, Dimension dimension, double least, double greatest, String... units) {
        this.words = words;
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

    /** An example with the usual unit, such as {@code 12 mm}. */
    public String example() {
        return usualUnit().isEmpty() ? "0.5" : "12 " + usualUnit();
    }

    /** The first measure of that dimension. */
    public static Optional<Measure> of(Dimension dimension) {
        return Arrays.stream(values())
                .filter(m -> m.dimension.equals(dimension))
                .findFirst();
    }
}
