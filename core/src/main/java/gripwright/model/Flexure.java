package gripwright.model;

import gripwright.check.Check;
import java.util.OptionalDouble;

/**
 * An elastomer strip that bends, as a short beam under a pure moment: k = E I / L.
 *
 * <p>Source: beam bending, as in any handbook (S. Timoshenko, "Strength of Materials", from memory). Strips this short
 * are only roughly beams: within about 30 % (common practice, no source).
 *
 * @param modulus Young's modulus [Pa]
 * @param length free length between the bones [m]
 * @param width across the finger [m]
 * @param thickness in the bending direction [m]
 */
public record Flexure(double modulus, double length, double width, double thickness) implements JointKind {
    public Flexure {
        Check.positive(modulus, "flexure modulus", "Pa");
        Check.positive(length, "flexure length", "m");
        Check.positive(width, "flexure width", "m");
        Check.positive(thickness, "flexure thickness", "m");
    }

    /** E I / L with I = width thickness^3 / 12. */
    @Override
    public double bendingRate() {
        return modulus * width * thickness * thickness * thickness / 12 / length;
    }

    /** The same beam about its other axis: I = thickness width^3 / 12. */
    @Override
    public OptionalDouble sidewaysRate() {
        return OptionalDouble.of(modulus * thickness * width * width * width / 12 / length);
    }

    @Override
    public String origin() {
        return "rubber flexure as a short beam, k = E I / L; within about 30 % (common practice, no source)";
    }
}
