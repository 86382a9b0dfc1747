package gripwright.units;

import org.jspecify.annotations.Nullable;

/**
 * Reads a unit: symbols joined by {@code *} and {@code /}, with whole powers ({@code m/s^2}) and brackets.
 *
 * <p>{@code a/b*c} is refused, as in the SI Brochure (section 5.4.6: never without brackets), since people read it both
 * ways.
 */
final class UnitParser {
    private static final String GRAMMAR = "unit symbols joined by * and /, such as N*m/rad or m/s^2";
    private static final int DEEPEST = 8;
    private static final int GREATEST_POWER = 9;

    private final String text;
    private final int from;
    private final int end;
    private int at;
    private int depth;

    private UnitParser(String text, int start, int end) {
        this.text = text;
        this.from = start;
        this.at = start;
        this.end = end;
    }

    /** The unit in {@code text} from {@code start} up to {@code end}. */
    static Unit parse(String text, int start, int end) {
        UnitParser parser = new UnitParser(text, start, end);
        Unit unit = parser.product();
        if (parser.at < end) {
            throw parser.unexpected();
        }
        return unit;
    }

    static Unit parse(String text) {
        return parse(text, 0, text.length());
    }

    private Unit product() {
        Unit unit = factor();
        boolean divided = false;
        while (true) {
            char c = peek();
            if (c == '*' || c == '\u00b7' || c == '\u22c5') {
                if (divided) {
                    throw new UnitFault(
                            "a product after a division can be read in two ways",
                            at,
                            "brackets, as in N/(m*rad), or the product first, as in N*m/rad",
                            null);
                }
                at++;
                unit = unit.times(factor());
            } else if (c == '/') {
                at++;
                divided = true;
                unit = unit.dividedBy(factor());
            } else {
                return unit;
            }
        }
    }

    private Unit factor() {
        char c = peek();
        Unit unit;
        if (c == '(') {
            if (++depth > DEEPEST) {
                throw new UnitFault("too many brackets", at, GRAMMAR, null);
            }
            at++;
            unit = product();
            if (peek() != ')') {
                throw new UnitFault("a bracket is not closed", at, ")", null);
            }
            at++;
            depth--;
        } else if (c == '1' && at + 1 < end && text.charAt(at + 1) == '/') {
            at++;
            unit = Unit.ONE;
        } else {
            unit = symbol();
        }
        return unit.power(exponent());
    }

    private Unit symbol() {
        int start = at;
        while (at < end && isSymbolPart(text.charAt(at))) {
            at++;
        }
        if (text.startsWith("Shore A", start)) {
            at = start + "Shore A".length();
        }
        if (at == start) {
            throw unexpected();
        }
        String symbol = text.substring(start, at);
        return Unit.symbol(symbol)
                .orElseThrow(() ->
                        new UnitFault("'" + clip(symbol) + "' is not a known unit", start, GRAMMAR, nearest(symbol)));
    }

    private int exponent() {
        char c = peek();
        if (c == '\u00b2' || c == '\u00b3') {
            at++;
            return c == '\u00b2' ? 2 : 3;
        }
        if (c != '^') {
            return 1;
        }
        at++;
        int sign = 1;
        if (peek() == '-') {
            sign = -1;
            at++;
        }
        char digit = peek();
        boolean longer = at + 1 < end && Character.isDigit(text.charAt(at + 1));
        if (digit < '1' || digit > '9' || longer) {
            throw new UnitFault("a power is missing or too high", at, "a whole power of 1 to " + GREATEST_POWER, null);
        }
        at++;
        return sign * (digit - '0');
    }

    private UnitFault unexpected() {
        if (at >= end) {
            return new UnitFault("the unit ends too early", end, GRAMMAR, null);
        }
        if (text.charAt(at) == ' ') {
            return new UnitFault(
                    "a blank inside a unit",
                    at,
                    GRAMMAR,
                    text.substring(from, end).strip().replaceAll(" +", "*"));
        }
        return new UnitFault("'" + text.charAt(at) + "' does not belong here", at, GRAMMAR, null);
    }

    private char peek() {
        return at < end ? text.charAt(at) : '\0';
    }

    private static boolean isSymbolPart(char c) {
        return Character.isLetter(c) || c == '%' || c == '\u00b0' || c == '\u00b5';
    }

    static @Nullable String nearest(String symbol) {
        String habit = Unit.HABITS.get(symbol);
        return habit != null ? habit : Nearest.to(symbol, Unit.usualSymbols()).orElse(null);
    }

    static String clip(String text) {
        return text.length() <= 40 ? text : text.substring(0, 37) + "...";
    }
}
