package gripwright.units;

import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A unit as its factor to SI and its dimension.
 *
 * <p>Source of the factors: SI Brochure, 9th edition, tables 2, 4, 7 and 8 (SI, accepted units, prefixes); inch, pound,
 * pound-force, gram-force, bar and psi: NIST Special Publication 811, appendix B (from memory).
 *
 * @param factor SI units in one of this unit
 */
public record Unit(double factor, Dimension dimension) {
    static final Unit ONE = new Unit(1, Dimension.NONE);

    private static final double STANDARD_GRAVITY = 9.80665;
    private static final double POUND = 0.45359237;
    private static final double INCH = 0.0254;

    private static final Map<String, Double> PREFIXES = Map.ofEntries(
            Map.entry("G", 1e9),
            Map.entry("M", 1e6),
            Map.entry("k", 1e3),
            Map.entry("h", 1e2),
            Map.entry("d", 1e-1),
            Map.entry("c", 1e-2),
            Map.entry("m", 1e-3),
            Map.entry("u", 1e-6),
            Map.entry("\u00b5", 1e-6),
            Map.entry("\u03bc", 1e-6),
            Map.entry("n", 1e-9),
            Map.entry("p", 1e-12));

    /** Units that take a prefix. */
    private static final Map<String, Unit> SCALED = new LinkedHashMap<>();

    /** Units that take none. */
    private static final Map<String, Unit> PLAIN = new LinkedHashMap<>();

    static {
        Dimension length = Measure.LENGTH.dimension();
        Dimension angle = Measure.ANGLE.dimension();
        SCALED.put("m", new Unit(1, length));
        SCALED.put("g", new Unit(1e-3, Measure.MASS.dimension()));
        SCALED.put("s", new Unit(1, Measure.TIME.dimension()));
        SCALED.put("N", new Unit(1, Measure.FORCE.dimension()));
        SCALED.put("Pa", new Unit(1, Measure.PRESSURE.dimension()));
        SCALED.put("J", new Unit(1, Measure.TORQUE.dimension()));
        SCALED.put("W", new Unit(1, new Dimension(2, 1, -3, 0, 0)));
        SCALED.put("Hz", new Unit(1, Measure.TIME.dimension().power(-1)));
        SCALED.put("V", new Unit(1, Measure.VOLTAGE.dimension()));
        SCALED.put("ohm", new Unit(1, Measure.RESISTANCE.dimension()));
        SCALED.put("F", new Unit(1, Measure.CAPACITANCE.dimension()));
        SCALED.put("rad", new Unit(1, angle));
        SCALED.put("gf", new Unit(1e-3 * STANDARD_GRAVITY, Measure.FORCE.dimension()));
        SCALED.put("bar", new Unit(1e5, Measure.PRESSURE.dimension()));
        SCALED.put("K", new Unit(1, new Dimension(0, 0, 0, 0, 0, 0, 1)));
        PLAIN.put("deg", new Unit(Math.PI / 180, angle));
        PLAIN.put("\u00b0", new Unit(Math.PI / 180, angle));
        PLAIN.put("rev", new Unit(2 * Math.PI, angle));
        PLAIN.put("rpm", new Unit(2 * Math.PI / 60, Measure.TURNING_SPEED.dimension()));
        PLAIN.put("min", new Unit(60, Measure.TIME.dimension()));
        PLAIN.put("h", new Unit(3600, Measure.TIME.dimension()));
        PLAIN.put("%", new Unit(0.01, Dimension.NONE));
        PLAIN.put("Shore A", new Unit(1, Measure.HARDNESS.dimension()));
        PLAIN.put("in", new Unit(INCH, length));
        PLAIN.put("lb", new Unit(POUND, Measure.MASS.dimension()));
        PLAIN.put("oz", new Unit(POUND / 16, Measure.MASS.dimension()));
        PLAIN.put("lbf", new Unit(POUND * STANDARD_GRAVITY, Measure.FORCE.dimension()));
        PLAIN.put("ozf", new Unit(POUND / 16 * STANDARD_GRAVITY, Measure.FORCE.dimension()));
        PLAIN.put("psi", new Unit(POUND * STANDARD_GRAVITY / (INCH * INCH), Measure.PRESSURE.dimension()));
    }

    Unit times(Unit other) {
        return new Unit(factor * other.factor, dimension.times(other.dimension));
    }

    Unit dividedBy(Unit other) {
        return new Unit(factor / other.factor, dimension.times(other.dimension.power(-1)));
    }

    Unit power(int exponent) {
        return new Unit(StrictMath.pow(factor, exponent), dimension.power(exponent));
    }

    /** A single symbol, with or without a prefix. */
    static Optional<Unit> symbol(String symbol) {
        Unit plain = PLAIN.get(symbol);
        if (plain == null) {
            plain = SCALED.get(symbol);
        }
        if (plain != null) {
            return Optional.of(plain);
        }
        if (symbol.length() < 2) {
            return Optional.empty();
        }
        Double prefix = PREFIXES.get(symbol.substring(0, 1));
        Unit scaled = SCALED.get(symbol.substring(1));
        return prefix == null || scaled == null
                ? Optional.empty()
                : Optional.of(new Unit(prefix * scaled.factor, scaled.dimension));
    }

    /** Symbols that people are likely to have meant. */
    static Collection<String> usualSymbols() {
        return USUAL;
    }

    private static final Collection<String> USUAL = List.of(
            "mm",
            "cm",
            "m",
            "um",
            "g",
            "kg",
            "mg",
            "s",
            "ms",
            "N",
            "mN",
            "kN",
            "Pa",
            "kPa",
            "MPa",
            "GPa",
            "N*m",
            "N*mm",
            "N/mm",
            "N/m",
            "N*m/rad",
            "N*mm/rad",
            "N*mm/deg",
            "rad",
            "deg",
            "rpm",
            "rev",
            "Hz",
            "kHz",
            "MHz",
            "V",
            "ohm",
            "kohm",
            "pF",
            "Pa*s",
            "J",
            "W",
            "min",
            "h",
            "%",
            "Shore A",
            "m/s^2",
            "m/s",
            "mm/s",
            "rad/s",
            "in",
            "lb",
            "oz",
            "lbf",
            "psi",
            "bar",
            "gf",
            "kgf",
            "kgf*cm");

    /** What people write that is not a unit here, and what they should write. */
    static final Map<String, String> HABITS = Map.ofEntries(
            Map.entry("Nm", "N*m"),
            Map.entry("Nmm", "N*mm"),
            Map.entry("Nm/rad", "N*m/rad"),
            Map.entry("degree", "deg"),
            Map.entry("degrees", "deg"),
            Map.entry("inch", "in"),
            Map.entry("newton", "N"),
            Map.entry("micron", "um"),
            Map.entry("shore", "Shore A"),
            Map.entry("Shore", "Shore A"),
            Map.entry("ShoreA", "Shore A"),
            Map.entry("kilo", "kg"),
            Map.entry("lbs", "lb"),
            Map.entry("percent", "%"));
}
