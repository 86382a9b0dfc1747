package gripwright.cli;

import gripwright.closing.Outcome;
import gripwright.study.Proportion;
import gripwright.units.Measure;
import gripwright.units.QuantityText;
import java.util.Locale;

/** Numbers and words as the command line shows them: three digits, always with the unit. */
final class Say {
    private static final int DIGITS = 3;
    private static final double HAIR = 1e-9;

    private Say() {}

    static String length(double metres) {
        return QuantityText.format(settled(metres, 1e-7), Measure.LENGTH, DIGITS);
    }

    static String angle(double radians) {
        return QuantityText.format(settled(radians, 1e-5), Measure.ANGLE, DIGITS);
    }

    static String force(double newtons) {
        return QuantityText.format(settled(newtons, 1e-6), Measure.FORCE, DIGITS);
    }

    static String pressure(double pascals) {
        return QuantityText.format(pascals, Measure.PRESSURE, DIGITS);
    }

    static String time(double seconds) {
        return seconds < 120
                ? QuantityText.format(seconds, Measure.TIME, 3)
                : QuantityText.number(seconds / 60, 3) + " min";
    }

    static String torque(double newtonMetres) {
        return QuantityText.format(settled(newtonMetres, 1e-9), Measure.TORQUE, DIGITS);
    }

    static String acceleration(double metresPerSquareSecond) {
        return QuantityText.format(metresPerSquareSecond, Measure.ACCELERATION, DIGITS);
    }

    static String mass(double kilograms) {
        return QuantityText.format(kilograms, Measure.MASS, DIGITS);
    }

    /** What is left over of a balance, as a power of ten. */
    static String residual(double value, String unit) {
        return Double.isFinite(value) ? String.format(Locale.ROOT, "%.1e %s", value, unit) : value + " " + unit;
    }

    static String outcome(Outcome outcome) {
        return outcome.mark() + " " + outcome.words();
    }

    /** A share found by counting, to the nearest percent, but never "100 %" or "0 %" for what is not. */
    static String percent(double share) {
        if (Double.isNaN(share)) {
            return "-";
        }
        long rounded = Math.round(100 * share);
        if (rounded == 100 && share < 1) {
            return "over 99 %";
        }
        return rounded == 0 && share > 0 ? "under 1 %" : rounded + " %";
    }

    /** A share that was given, as given. */
    static String exactly(double share) {
        return QuantityText.number(100 * share, 6) + " %";
    }

    /** "92 to 98 %", rounded outwards so that it never looks narrower than it is. */
    static String interval(double low, double high) {
        // The hair keeps 0.29 * 100 = 28.999999999999996 at 29.
        return (long) Math.floor(100 * low + HAIR) + " to " + (long) Math.ceil(100 * high - HAIR) + " %";
    }

    static String interval(Proportion p) {
        return interval(p.low(), p.high());
    }

    /** A length that is promised: rounded down, to 0.1 mm below 10 mm and to 1 mm from there on. */
    static String atLeast(double metres) {
        double scale = 1e3 * metres < 10 ? 10 : 1;
        return QuantityText.number(Math.floor(1e3 * metres * scale + HAIR) / scale, 6) + " mm";
    }

    static String count(int number, String one, String many) {
        return number + " " + (number == 1 ? one : many);
    }

    /** Noise of the solver far below what matters reads as 0. */
    private static double settled(double value, double noise) {
        return Math.abs(value) < noise ? 0 : value;
    }
}
