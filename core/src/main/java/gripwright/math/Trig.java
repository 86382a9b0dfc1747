package gripwright.math;

/**
 * Sine and cosine from plain additions and multiplications, so that every machine and compiler gives the same bits.
 *
 * <p>Taylor sums on |x| up to pi/4 after taking off whole quarter turns; error below 2e-16 there. Large angles go to
 * {@link StrictMath}, which is exact in the same sense but slower.
 */
public final class Trig {
    private static final double QUARTER = Math.PI / 2;
    /** What pi/2 lacks of the true quarter turn. */
    private static final double QUARTER_REST = 6.123233995736766e-17;

    private static final double LARGE = 3.2;

    private Trig() {}

    /** Sine of an angle [rad]. */
    public static double sin(double x) {
        if (!(x <= LARGE && x >= -LARGE)) {
            return StrictMath.sin(x);
        }
        int quarter = quarterOf(x);
        double rest = x - quarter * QUARTER - quarter * QUARTER_REST;
        return switch (quarter & 3) {
            case 0 -> sinSum(rest);
            case 1 -> cosSum(rest);
            case 2 -> -sinSum(rest);
            default -> -cosSum(rest);
        };
    }

    /** Cosine of an angle [rad]. */
    public static double cos(double x) {
        if (!(x <= LARGE && x >= -LARGE)) {
            return StrictMath.cos(x);
        }
        int quarter = quarterOf(x);
        double rest = x - quarter * QUARTER - quarter * QUARTER_REST;
        return switch (quarter & 3) {
            case 0 -> cosSum(rest);
            case 1 -> -sinSum(rest);
            case 2 -> -cosSum(rest);
            default -> sinSum(rest);
        };
    }

    /** Sine into {@code out[0]}, cosine into {@code out[1]}: the same bits as from {@link #sin} and {@link #cos}. */
    public static void sinCos(double x, double[] out) {
        if (!(x <= LARGE && x >= -LARGE)) {
            out[0] = StrictMath.sin(x);
            out[1] = StrictMath.cos(x);
            return;
        }
        int quarter = quarterOf(x);
        double rest = x - quarter * QUARTER - quarter * QUARTER_REST;
        double s = sinSum(rest);
        double c = cosSum(rest);
        int turn = quarter & 3;
        out[0] = turn == 0 ? s : turn == 1 ? c : turn == 2 ? -s : -c;
        out[1] = turn == 0 ? c : turn == 1 ? -s : turn == 2 ? -c : s;
    }

    private static int quarterOf(double x) {
        return (int) Math.rint(x / QUARTER);
    }

    /** x - x^3/3! + ... - x^15/15!, by Horner. */
    private static double sinSum(double x) {
        double z = x * x;
        double sum = 1 / 6227020800.0 - z / 1307674368000.0;
        sum = -1 / 39916800.0 + z * sum;
        sum = 1 / 362880.0 + z * sum;
        sum = -1 / 5040.0 + z * sum;
        sum = 1 / 120.0 + z * sum;
        sum = -1 / 6.0 + z * sum;
        return x + x * z * sum;
    }

    /** 1 - x^2/2! + ... + x^16/16!, by Horner. */
    private static double cosSum(double x) {
        double z = x * x;
        double sum = -1 / 87178291200.0 + z / 20922789888000.0;
        sum = 1 / 479001600.0 + z * sum;
        sum = -1 / 3628800.0 + z * sum;
        sum = 1 / 40320.0 + z * sum;
        sum = -1 / 720.0 + z * sum;
        sum = 1 / 24.0 + z * sum;
        sum = -0.5 + z * sum;
        return 1 + z * sum;
    }
}
