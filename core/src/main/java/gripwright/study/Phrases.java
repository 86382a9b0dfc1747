package gripwright.study;

import gripwright.closing.Outcome;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.List;

/** Numbers and lists as people read them; independent of the locale. */
final class Phrases {
    private Phrases() {}

    /** A share to the nearest percent, but never "100 %" or "0 %" for what is not. */
    static String percent(double share) {
        if (Double.isNaN(share)) {
            return "unknown";
        }
        double percent = 100 * share;
        long rounded = Math.round(percent);
        boolean hidesSomething = (rounded == 100 && share < 1) || (rounded == 0 && share > 0);
        return hidesSomething ? (rounded == 100 ? "over 99 %" : "under 1 %") : rounded + " %";
    }

    /** An interval of shares to whole percents, rounded outwards so that it never looks narrower than it is. */
    static String interval(double low, double high) {
        // The hair keeps 0.29 * 100 = 28.999999999999996 at 29.
        long from = (long) Math.floor(100 * low + 1e-9);
        long to = (long) Math.ceil(100 * high - 1e-9);
        return from + " to " + to + " %";
    }

    /** "96 of 100 (90 to 99 %)". */
    static String counted(Proportion p) {
        return p.successes() + " of " + runs(p.trials()) + " (" + interval(p.low(), p.high()) + ")";
    }

    static String runs(int n) {
        return plural(n, "run");
    }

    static String plural(int n, String noun) {
        return n + " " + noun + (n == 1 ? "" : "s");
    }

    /** A length [m] in mm, to 0.1 mm below 10 mm and to 1 mm from there on; rounded down if it is a promise. */
    static String millimetres(double length, RoundingMode rounding) {
        BigDecimal mm = new BigDecimal(1e3 * length + (rounding == RoundingMode.DOWN ? 1e-9 : 0));
        int digits = Math.abs(1e3 * length) < 10 ? 1 : 0;
        return mm.setScale(digits, rounding).stripTrailingZeros().toPlainString() + " mm";
    }

    static String millimetres(double length) {
        return millimetres(length, RoundingMode.HALF_EVEN);
    }

    /** A length [m] in mm to 0.1 mm, where a whole millimetre could look the same as the one beside it. */
    static String tenths(double length) {
        return new BigDecimal(1e3 * length)
                        .setScale(1, RoundingMode.HALF_EVEN)
                        .stripTrailingZeros()
                        .toPlainString()
                + " mm";
    }

    /** Two digits, as they were chosen by {@link Splits}. */
    static String twoDigits(double value) {
        return new BigDecimal(value)
                .round(new MathContext(2, RoundingMode.HALF_EVEN))
                .stripTrailingZeros()
                .toPlainString();
    }

    /** "a", "a and b", "a, b and c". */
    static String list(List<String> words) {
        int n = words.size();
        return n < 2 ? String.join("", words) : String.join(", ", words.subList(0, n - 1)) + " and " + words.get(n - 1);
    }

    /** What happened to an object, as a predicate: "is thrown out". */
    static String happened(Outcome outcome) {
        return switch (outcome) {
            case UNDECIDED -> "is undecided";
            case LANDED_ON_IT -> "is landed on";
            case HELD -> "is held";
            default -> "is " + outcome.words();
        };
    }

    static String sentenceCase(String text) {
        return text.isEmpty() ? text : Character.toUpperCase(text.charAt(0)) + text.substring(1);
    }
}
