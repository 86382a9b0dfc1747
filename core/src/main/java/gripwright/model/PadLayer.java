package gripwright.model;

import gripwright.check.Check;

/**
 * A strip of rubber over a bone.
 *
 * @param length along the phalanx [m] (on the palm: along x)
 * @param thickness rubber over the bone [m]
 */
public record PadLayer(double length, double thickness, Rubber rubber) {
    public PadLayer {
        Check.positive(length, "pad length", "m");
        Check.positive(thickness, "pad thickness", "m");
    }

    /** Normal stiffness per area of the pad as a bed of springs [Pa/m]. */
    public double normalBedding() {
        return rubber.foundationFactor() * rubber.modulus() / thickness;
    }

    /** Shear stiffness per area [Pa/m]: G / thickness, a layer sheared without bending. */
    public double shearBedding() {
        return rubber.shearModulus() / thickness;
    }
}
