package gripwright.model;

import gripwright.check.Check;

/**
 * How one component of the placement scatters about 0, in the unit of the component.
 *
 * @param size one standard deviation (normal) or the half width (uniform); 0 = always exact
 */
public record Scatter(Law law, double size) {
    public static final Scatter NONE = new Scatter(Law.NORMAL, 0);

    public enum Law {
        NORMAL,
        UNIFORM
    }

    public Scatter {
        Check.notNegative(size, "scatter", "");
    }
}
