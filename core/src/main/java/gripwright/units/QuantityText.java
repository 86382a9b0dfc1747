package gripwright.units;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Quantities as people write them: a number, a blank, a unit ({@code 62 mm}, {@code 0.12 N*m/rad}).
 *
 * <p>{@code 0.7 +- 0.15} is a value with one standard deviation. {@code 12 mm sd} is a scatter about 0 by its standard
 * deviation, {@code 12 mm uniform} by its half width. Numbers have a decimal point whatever the locale.
 */
public final class QuantityText {
    /** A digit other than 0 before any exponent. */
    private static final Pattern NOT_ZERO = Pattern.compile("[^eE]*[1-9]");

    private static final Pattern NUMBER = Pattern.compile("[-+\u2212]?(?:\\d+\\.?\\d*|\\.\\d+)(?:[eE][-+]?\\d+)?");
    private static final Pattern PLUS_MINUS = Pattern.compile("\\s*(?:\\+-|\\+/-|\u00b1)\\s*");
    private static final Pattern NOT_FINITE = Pattern.compile("(?i)[-+]?\\.?(nan|inf|infinity)\\b.*");
    private static final int LONGEST = 200;
    private static final int DIGITS = 4;

    /**
     * A value and how well it is known.
     *
     * @param value [SI]
     * @param deviation one standard deviation [SI], 0 if none was written
     */
    public record Measured(double value, double deviation) {}

    /**
     * A scatter about 0.
     *
     * @param uniform true: {@code size} is the half width; false: one standard deviation
     * @param size [SI]
     */
    public record Scattering(boolean uniform, double size) {}

    /** A value whose dimension is not known beforehand [SI]. */
    public record Quantity(double value, Dimension dimension) {}

    private QuantityText() {}

    /**
     * The value [SI] of a text such as {@code 62 mm}.
     *
     * @throws UnitFault if it is not a quantity of that measure, or is absurdly large or small
     */
    public static double value(String text, Measure measure) {
        return value(text, 0, text.length(), measure);
    }

    /** A text such as {@code 310 g +- 5 g}; without {@code +-} the deviation is 0. */
    public static Measured measured(String text, Measure measure) {
        Matcher sign = PLUS_MINUS.matcher(text);
        // A sign at the very start is a scatter, not a value with its deviation.
        if (!sign.find() || sign.start() == 0) {
            return new Measured(value(text, measure), 0);
        }
        double mean = value(text, 0, sign.start(), measure);
        double deviation = value(text, sign.end(), text.length(), measure);
        if (deviation < 0) {
            throw new UnitFault(
                    "the deviation after +- is negative", sign.end(), "one standard deviation, 0 or more", null);
        }
        return new Measured(mean, deviation);
    }

    /** A text such as {@code 12 mm sd} or {@code 12 mm uniform}. */
    public static Scattering scattering(String text, Measure measure) {
        String expected = measure.words() + " with its law, such as " + measure.example() + " sd or "
                + measure.example() + " uniform";
        int cut = text.lastIndexOf(' ');
        String law = text.substring(cut + 1);
        if (cut < 0 || !(law.equals("sd") || law.equals("uniform"))) {
            value(text, measure); // other faults of the text come first
            throw new UnitFault(
                    "'" + UnitParser.clip(text) + "' does not say how it scatters",
                    text.length(),
                    expected,
                    text.strip() + " sd");
        }
        double size = value(text, 0, cut, measure);
        if (size < 0) {
            throw new UnitFault("the scatter is negative", 0, expected, null);
        }
        return new Scattering(law.equals("uniform"), size);
    }

    /** A number with any unit. */
    public static Quantity quantity(String text) {
        int[] numberEnd = new int[1];
        double number = number(text, 0, text.length(), numberEnd, "a number with its unit");
        int from = skipBlanks(text, numberEnd[0], text.length());
        Unit unit = from == text.length() ? Unit.ONE : UnitParser.parse(text, from, trimmed(text, from, text.length()));
        double value = number * unit.factor();
        if (Double.isInfinite(value) || (value == 0 && number != 0)) {
            throw new UnitFault(
                    "the quantity is too " + (value == 0 ? "small" : "large") + " to compute with",
                    0,
                    "a number with its unit",
                    null);
        }
        return new Quantity(value, unit.dimension());
    }

    /** The factor and dimension of a unit alone, such as {@code N*m/rad}. */
    public static Unit unit(String text) {
        return UnitParser.parse(text);
    }

    private static double value(String text, int start, int end, Measure measure) {
        int from = skipBlanks(text, start, end);
        int to = trimmed(text, from, end);
        String expected = measure.words() + ", such as " + measure.example();
        int[] numberEnd = new int[1];
        double number = number(text, from, to, numberEnd, expected);
        int unitStart = skipBlanks(text, numberEnd[0], to);
        Unit unit = Unit.ONE;
        if (unitStart < to) {
            unit = unit(text, unitStart, to, measure, expected);
        }
        String written = text.substring(from, numberEnd[0]);
        if (!unit.dimension().equals(measure.dimension())) {
            throw wrongDimension(text.substring(from, to), written, unit, unitStart, measure, expected);
        }
        return limited(number * unit.factor(), text.substring(from, to), from, measure);
    }

    private static Unit unit(String text, int start, int end, Measure measure, String expected) {
        try {
            return UnitParser.parse(text, start, end);
        } catch (UnitFault fault) {
            String nearest = Nearest.to(text.substring(start, end), measure.units())
                    .orElse(fault.suggestion().orElse(null));
            throw new UnitFault(String.valueOf(fault.getMessage()), fault.column(), expected, nearest);
        }
    }

    private static UnitFault wrongDimension(
            String text, String number, Unit unit, int unitStart, Measure measure, String expected) {
        if (unit.dimension().equals(Dimension.NONE)) {
            return new UnitFault(
                    "'" + UnitParser.clip(text) + "' has no unit",
                    unitStart,
                    expected,
                    number + " " + measure.usualUnit());
        }
        String is = Measure.of(unit.dimension()).map(Measure::words).orElse("something else");
        return new UnitFault(
                "'" + UnitParser.clip(text) + "' is " + is + ", not " + measure.words(), unitStart, expected, null);
    }

    private static double number(String text, int start, int end, int[] numberEnd, String expected) {
        if (end - start > LONGEST) {
            throw new UnitFault(
                    "a quantity of " + (end - start) + " characters",
                    start,
                    "at most " + LONGEST + " characters",
                    null);
        }
        if (start >= end) {
            throw new UnitFault("nothing where a quantity should be", start, expected, null);
        }
        if (NOT_FINITE.matcher(text.substring(start, end)).matches()) {
            throw new UnitFault(
                    "'" + text.substring(start, end) + "' is not a number one can compute with", start, expected, null);
        }
        Matcher matcher = NUMBER.matcher(text).region(start, end);
        if (!matcher.lookingAt()) {
            throw new UnitFault(
                    "'" + UnitParser.clip(text.substring(start, end)) + "' does not start with a number",
                    start,
                    expected,
                    null);
        }
        numberEnd[0] = matcher.end();
        if (matcher.end() < end && text.charAt(matcher.end()) == ',') {
            throw new UnitFault(
                    "a comma in a number",
                    matcher.end(),
                    "a decimal point",
                    text.substring(start, end).replace(',', '.'));
        }
        double value = Double.parseDouble(matcher.group().replace('\u2212', '-'));
        // Too large is refused by the limits of the measure or by quantity(), with the whole text.
        if (value == 0 && NOT_ZERO.matcher(matcher.group()).lookingAt()) {
            throw new UnitFault(
                    "'" + UnitParser.clip(matcher.group()) + "' is too small a number to compute with",
                    start,
                    expected,
                    null);
        }
        return value;
    }

    private static double limited(double value, String text, int column, Measure measure) {
        double size = Math.abs(value);
        if (!(size <= measure.greatest()) || (size != 0 && size < measure.least())) {
            throw new UnitFault(
                    "'" + UnitParser.clip(text) + "' is far too " + (size < measure.least() ? "small" : "large"),
                    column,
                    measure.words() + " of 0 or of " + format(measure.least(), measure) + " to "
                            + format(measure.greatest(), measure),
                    null);
        }
        return value;
    }

    /** A value [SI] in the unit in which it reads best, with 4 digits: {@code 62 mm}. */
    public static String format(double value, Measure measure) {
        return format(value, measure, DIGITS);
    }

    /**
     * A value [SI] in the unit in which it reads best: the first unit of the measure in which the number has one to
     * four digits before the point, else the nearest one.
     *
     * @param digits significant digits, trailing zeros dropped
     */
    public static String format(double value, Measure measure, int digits) {
        String best = measure.usualUnit();
        double worst = Double.POSITIVE_INFINITY;
        for (String unit : measure.units()) {
            double size = Math.abs(value) / factor(unit);
            double off = size == 0 || (size >= 0.1 && size < 2000) ? 0 : Math.abs(StrictMath.log10(size / 10));
            if (off < worst) {
                worst = off;
                best = unit;
            }
        }
        String number = number(value / factor(best), digits);
        return best.isEmpty() ? number : number + " " + best;
    }

    /** A number as plain text with that many significant digits, whatever the locale; trailing zeros dropped. */
    public static String number(double value, int digits) {
        if (!Double.isFinite(value)) {
            return String.valueOf(value);
        }
        BigDecimal rounded =
                new BigDecimal(value).round(new MathContext(digits)).stripTrailingZeros();
        boolean tooLong = rounded.signum() != 0 && Math.abs(rounded.precision() - rounded.scale()) > 12;
        return tooLong ? rounded.toString() : rounded.toPlainString();
    }

    private static double factor(@Nullable String unit) {
        return unit == null || unit.isEmpty() ? 1 : UnitParser.parse(unit).factor();
    }

    private static int skipBlanks(String text, int from, int end) {
        int at = from;
        while (at < end && text.charAt(at) == ' ') {
            at++;
        }
        return at;
    }

    private static int trimmed(String text, int from, int end) {
        int to = end;
        while (to > from && text.charAt(to - 1) == ' ') {
            to--;
        }
        return to;
    }
}
