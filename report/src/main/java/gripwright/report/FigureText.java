package gripwright.report;

import gripwright.signal.Calibration;
import gripwright.signal.Figure;
import gripwright.signal.FigureKind;
import java.math.BigDecimal;
import java.math.RoundingMode;

/** Figures of a calibration as people read them: the value and half its 95 % interval, to the digits that these bear. */
public final class FigureText {
    private FigureText() {}

    /** Unit of a kind of figure. */
    public static String unit(FigureKind kind, String reading) {
        return switch (kind.unit()) {
            case READING -> reading;
            case PER_NEWTON -> reading + "/N";
            case PER_SQUARE_NEWTON -> reading + "/N²";
            case PER_KELVIN -> reading + "/K";
            case PER_PASCAL -> reading + "/Pa";
            case SHARE -> "% of full scale";
            case SHARE_OF_STEP -> "% of the step";
            case SECOND -> "s";
            case NEWTON -> "N";
        };
    }

    private static double factor(FigureKind kind) {
        return switch (kind.unit()) {
            case SHARE, SHARE_OF_STEP -> 100;
            default -> 1;
        };
    }

    /** Such as {@code 95.04 ± 0.08}, without the unit. */
    public static String of(Figure figure) {
        double factor = factor(figure.kind());
        return figure.known()
                ? withHalf(
                        factor * figure.value(),
                        factor
                                * 0.5
                                * (figure.interval().high() - figure.interval().low()))
                : "–";
    }

    /** A value and the half width of its interval; two digits of the latter. */
    public static String withHalf(double value, double half) {
        if (!Double.isFinite(value) || !(half > 0) || !Double.isFinite(half)) {
            return Num.digits(value, 4);
        }
        int decimals = Math.max(0, 1 - (int) Math.floor(Math.log10(half)));
        if (decimals > 9) {
            return Num.digits(value, 4);
        }
        return plain(value, decimals) + " ± " + plain(half, decimals);
    }

    /** How late the reference is, or what its own clock shows; the start of a sentence, without its capital. */
    public static String lag(Calibration c) {
        double half = 0.5 * (c.lag().interval().high() - c.lag().interval().low());
        boolean seconds = c.ownClock() && Math.abs(c.lag().value()) >= 10;
        String value =
                withHalf((seconds ? 1 : 1e3) * c.lag().value(), (seconds ? 1 : 1e3) * half) + (seconds ? " s" : " ms");
        String unknown = "an unknown time (" + c.lag().refusal().orElse("") + ")";
        String told = c.lag().refusal().isPresent() ? unknown : value;
        return c.ownClock()
                ? "at the log's start the reference's own clock shows " + told + " more than the device's"
                : "the reference is late by " + told + " at the log's start";
    }

    /** How fast the reference's clock is; the start of a sentence, without its capital. */
    public static String skew(Calibration c) {
        double half = 0.5 * (c.skew().interval().high() - c.skew().interval().low());
        return "its clock is fast by "
                + c.skew()
                        .refusal()
                        .map(why -> "an unknown amount (" + why + ")")
                        .orElse(withHalf(1e6 * c.skew().value(), 1e6 * half) + " millionths");
    }

    private static String plain(double value, int decimals) {
        return BigDecimal.valueOf(value)
                .setScale(decimals, RoundingMode.HALF_EVEN)
                .toPlainString();
    }
}
