package gripwright.report;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.regex.Pattern;

/** Numbers as text, the same on every machine: a point, a true minus in text, a no-break space before the unit. */
final class Num {
    private static final String NBSP = "\u00a0";
    private static final String MINUS = "\u2212";

    private Num() {}

    /** A picture coordinate with at most two decimals. */
    static String coord(double value) {
        return plain(value, 2);
    }

    /** At most {@code decimals} decimals, no trailing zeros, ASCII minus; what is not finite is drawn at 0. */
    static String plain(double value, int decimals) {
        if (!Double.isFinite(value)) {
            return "0";
        }
        BigDecimal d = BigDecimal.valueOf(value)
                .setScale(decimals, RoundingMode.HALF_EVEN)
                .stripTrailingZeros();
        return d.signum() == 0 ? "0" : d.toPlainString();
    }

    /** For people: at most {@code decimals} decimals, a true minus; what is not a number is a dash. */
    static String text(double value, int decimals) {
        if (Double.isNaN(value)) {
            return "\u2013";
        }
        if (Double.isInfinite(value)) {
            return value > 0 ? "\u221e" : MINUS + "\u221e";
        }
        return plain(value, decimals).replace("-", MINUS);
    }

    /** For people: so many significant digits, a power of ten where the number is very small or large. */
    static String digits(double value, int significant) {
        if (!Double.isFinite(value) || value == 0) {
            return text(value, 0);
        }
        int exponent = (int) Math.floor(Math.log10(Math.abs(value)));
        if (exponent >= -3 && exponent < 6) {
            BigDecimal d = new BigDecimal(value)
                    .round(new MathContext(significant, RoundingMode.HALF_EVEN))
                    .stripTrailingZeros();
            return d.toPlainString().replace("-", MINUS);
        }
        return text(value / Math.pow(10, exponent), Math.max(0, significant - 1)) + "\u00b710" + superscript(exponent);
    }

    private static String superscript(int exponent) {
        StringBuilder out = new StringBuilder(exponent < 0 ? "\u207b" : "");
        for (char c : Integer.toString(Math.abs(exponent)).toCharArray()) {
            out.append("\u2070\u00b9\u00b2\u00b3\u2074\u2075\u2076\u2077\u2078\u2079".charAt(c - '0'));
        }
        return out.toString();
    }

    static String unit(String number, String unit) {
        return number + NBSP + unit;
    }

    /** Metres as millimetres with their unit. */
    static String mm(double metres) {
        return unit(millimetres(metres), "mm");
    }

    /** Metres as millimetres without a unit. */
    static String millimetres(double metres) {
        return text(metres * 1e3, 1);
    }

    static String degrees(double radians) {
        return text(Math.toDegrees(radians), 1) + "\u00b0";
    }

    static String newtons(double force) {
        return unit(Math.abs(force) < 10 ? digits(force, 2) : text(force, Math.abs(force) < 100 ? 1 : 0), "N");
    }

    static String grams(double kilograms) {
        return kilograms < 1 ? unit(digits(kilograms * 1e3, 3), "g") : unit(digits(kilograms, 3), "kg");
    }

    static String percent(double share) {
        return unit(text(100 * share, 0), "%");
    }

    /** A counted share in whole percents; never 100 or 0 where one run went the other way. */
    static String share(double share) {
        long rounded = Math.round(100 * share);
        if (rounded == 100 && share < 1) {
            return "over " + unit("99", "%");
        }
        return rounded == 0 && share > 0 ? "under " + unit("1", "%") : percent(share);
    }

    /** An interval of shares in whole percents, rounded outwards so that it never looks narrower than it is. */
    static String interval(double low, double high) {
        // The hair keeps 0.29 * 100 = 28.999999999999996 at 29.
        return text(Math.floor(100 * low + 1e-9), 0) + " to " + unit(text(Math.ceil(100 * high - 1e-9), 0), "%");
    }

    /** A radius within which something is promised, in millimetres, rounded down. */
    static double promised(double metres) {
        double unit = metres < 0.010 ? 0.1 : 1;
        return Math.floor((1e3 * metres + 1e-9) / unit) * unit / 1e3;
    }

    static String area(double squareMetres) {
        return unit(text(squareMetres * 1e4, 1), "cm\u00b2");
    }

    /** 1, 2 or 5 times a power of ten, the greatest not above {@code most}. */
    static double nice(double most) {
        double power = Math.pow(10, Math.floor(Math.log10(most) + 1e-9));
        double lead = most / power;
        return (lead >= 5 ? 5 : lead >= 2 ? 2 : 1) * power;
    }

    private static final Pattern VALUE = Pattern.compile("([0-9]) (mm|cm2|cm\u00b2|deg|N|g|kg|kPa|%|s)(?![A-Za-z0-9])");

    /** A sentence with every value tied to its unit and squares as such. */
    static String sentence(String text) {
        return VALUE.matcher(text).replaceAll("$1" + NBSP + "$2").replace(NBSP + "cm2", NBSP + "cm\u00b2");
    }

    /** The text as it may stand in XML and HTML, in an element or in an attribute. Characters XML forbids become U+FFFD. */
    static String escape(String text) {
        StringBuilder out = new StringBuilder(text.length() + 16);
        text.codePoints().forEach(c -> {
            switch (c) {
                case '&' -> out.append("&amp;");
                case '<' -> out.append("&lt;");
                case '>' -> out.append("&gt;");
                case '"' -> out.append("&quot;");
                case '\'' -> out.append("&#39;");
                default -> {
                    boolean allowed = c == '\t'
                            || c == '\n'
                            || (c >= 0x20 && c < 0xd800 && c != 0x7f)
                            || (c > 0xdfff && c != 0xfffe && c != 0xffff);
                    if (allowed) {
                        out.appendCodePoint(c);
                    } else {
                        out.append('\ufffd');
                    }
                }
            }
        });
        return out.toString();
    }
}
