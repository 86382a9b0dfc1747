package gripwright.study;

import gripwright.check.Check;

/**
 * Where an object stood, off its nominal place, in table axes.
 *
 * @param x along the closing direction [m]
 * @param y across [m]
 * @param turn about the vertical [rad]
 */
public record Placed(double x, double y, double turn) {
    public Placed {
        Check.finite(x, "x", "m");
        Check.finite(y, "y", "m");
        Check.finite(turn, "turn", "rad");
    }
}
