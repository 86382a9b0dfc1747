package gripwright.model;

import gripwright.check.Check;

/** A value that is known only so well: mean and one standard deviation, both in the unit of the quantity. */
public record Spread(double mean, double deviation) {
    public Spread {
        Check.finite(mean, "mean", "");
        Check.notNegative(deviation, "standard deviation", "");
    }

    public static Spread exactly(double value) {
        return new Spread(value, 0);
    }
}
