package gripwright.closing;

import gripwright.check.Check;

/**
 * Choices of the calculation, not of the hand. The defaults are measured in docs/accuracy.md.
 *
 * @param padRows pad points along a phalanx
 * @param padColumns pad points across a phalanx
 * @param stepScale factor on the motion allowed in one step [-]
 * @param viscosityScale factor on the damping that makes each step solvable [-]
 * @param record keep frames of the run for drawing
 */
public record Numerics(int padRows, int padColumns, double stepScale, double viscosityScale, boolean record) {
    public static final Numerics DEFAULT = new Numerics(14, 6, 1, 1, false);

    public Numerics {
        Check.that(
                padRows >= 2 && padRows <= 400 && padColumns >= 1 && padColumns <= 100,
                "pad points are " + padRows + " x " + padColumns + "; expected 2..400 along and 1..100 across");
        Check.positive(stepScale, "step scale", "");
        Check.positive(viscosityScale, "viscosity scale", "");
    }

    public Numerics recording() {
        return new Numerics(padRows, padColumns, stepScale, viscosityScale, true);
    }

    public Numerics withPadPoints(int rows, int columns) {
        return new Numerics(rows, columns, stepScale, viscosityScale, record);
    }

    public Numerics withStepScale(double scale) {
        return new Numerics(padRows, padColumns, scale, viscosityScale, record);
    }

    public Numerics withViscosityScale(double scale) {
        return new Numerics(padRows, padColumns, stepScale, scale, record);
    }
}
