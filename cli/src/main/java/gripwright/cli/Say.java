package gripwright.cli;

import gripwright.closing.Outcome;
import gripwright.study.Proportion;
import gripwright.units.Measure;
import gripwright.units.QuantityText;
import java.util.Locale;

/** Numbers and words as the command line shows them: three digits, always with the unit. */
final class Say {
    private static final int DIGITS = 3;

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

    static String torque(double newtonMetres) {
        return QuantityText.format(settled(newtonMetres, 1e-9), Measure.TORQUE, DIGITS);
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

    static String percent(double share) {
        return Double.isNaN(share) ? "-" : QuantityText.number(100 * share, DIGITS) + " %";
    }

    /** "92 to 98 %". */
    static String interval(double low, double high) {
        return QuantityText.number(Math.rint(1000 * low) / 10, DIGITS) + " to "
                + QuantityText.number(Math.rint(1000 * high) / 10, DIGITS) + " %";
    }

    static String interval(Proportion p) {
        return interval(p.low(), p.high());
    }

    static String count(int number, String one, String many) {
        return number + " " + (number == 1 ? one : many);
    }

    /** Noise of the solver far below what matters reads as 0. */
    private static double settled(double value, double noise) {
        return Math.abs(value) < noise ? 0 : value;
    }
}
