package gripwright.record;

import java.util.Locale;

/** Numbers as instruments send them. */
final class Numbers {
    private Numbers() {}

    /**
     * True for a decimal number within the range of a double, or for what stands for a missing one: nothing, {@code nan},
     * {@code null}.
     */
    static boolean valid(String text) {
        if (missing(text)) {
            return true;
        }
        return decimal(text.strip()) && Double.isFinite(Double.parseDouble(text));
    }

    /** The number, NaN for a missing one; only of valid text. */
    static double value(String text) {
        return missing(text) ? Double.NaN : Double.parseDouble(text);
    }

    private static boolean missing(String text) {
        if (text.length() > 8) {
            return false;
        }
        String word = text.strip();
        return word.isEmpty()
                || !Character.isDigit(word.charAt(word.length() - 1))
                        && (word.toLowerCase(Locale.ROOT).matches("[+-]?nan|null"));
    }

    /** Only what every program reads as a decimal number: Java itself would take "1d" and "0x1p3". */
    private static boolean decimal(String s) {
        int i = s.startsWith("-") || s.startsWith("+") ? 1 : 0;
        int whole = digits(s, i);
        i += whole;
        int part = 0;
        if (i < s.length() && s.charAt(i) == '.') {
            part = digits(s, i + 1);
            i += 1 + part;
        }
        if (whole + part == 0) {
            return false;
        }
        if (i < s.length() && (s.charAt(i) == 'e' || s.charAt(i) == 'E')) {
            i++;
            i += i < s.length() && (s.charAt(i) == '-' || s.charAt(i) == '+') ? 1 : 0;
            int power = digits(s, i);
            if (power == 0) {
                return false;
            }
            i += power;
        }
        return i == s.length();
    }

    private static int digits(String s, int from) {
        int i = from;
        while (i < s.length() && s.charAt(i) >= '0' && s.charAt(i) <= '9') {
            i++;
        }
        return i - from;
    }
}
