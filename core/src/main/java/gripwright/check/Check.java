package gripwright.check;

/** Argument checks whose messages carry the name, the value, the unit and the rule. */
public final class Check {
    private Check() {}

    /** Returns {@code value} if it is finite and above 0; NaN is refused. */
    public static double positive(double value, String name, String unit) {
        if (!(value > 0) || Double.isInfinite(value)) {
            throw new IllegalArgumentException(
                    name + " is " + value + " " + unit + "; it must be finite and above 0 " + unit);
        }
        return value;
    }

    /** Returns {@code value} if it is finite and 0 or more; NaN is refused. */
    public static double notNegative(double value, String name, String unit) {
        if (!(value >= 0) || Double.isInfinite(value)) {
            throw new IllegalArgumentException(
                    name + " is " + value + " " + unit + "; it must be finite and 0 " + unit + " or more");
        }
        return value;
    }

    /** Returns {@code value} if it is neither NaN nor infinite. */
    public static double finite(double value, String name, String unit) {
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException(name + " is " + value + " " + unit + "; it must be finite");
        }
        return value;
    }

    /** Refuses a wrong count; {@code because} says where the expected count comes from. */
    public static void count(int found, int expected, String name, String because) {
        if (found != expected) {
            throw new IllegalArgumentException(
                    name + " has " + found + " entries; expected " + expected + " (" + because + ")");
        }
    }

    /** Refuses with {@code message} unless {@code holds}. */
    public static void that(boolean holds, String message) {
        if (!holds) {
            throw new IllegalArgumentException(message);
        }
    }
}
