package gripwright.model;

import gripwright.check.Check;

/**
 * A rubber as linear, isotropic and incompressible.
 *
 * @param name what the project folder calls it
 * @param modulus Young's modulus at small strain [Pa]
 * @param origin where the modulus comes from, in words: "given", or the hardness relation used
 * @param foundationFactor normal stiffness of a pad as a bed of springs, over modulus / thickness [-]
 */
public record Rubber(String name, double modulus, String origin, double foundationFactor) {
    /**
     * A rigid sphere pressed into a bonded incompressible layer is met, to about 10 %, by independent springs of 2.5
     * times E / thickness, for indentations of 3 to 15 % of the thickness and layers 2 to 5 mm thick under a sphere of
     * radius 10 mm. Source: own ring-collocation solution of the layer, linear elasticity; no measured pad.
     */
    public static final double FOUNDATION_FACTOR = 2.5;

    public Rubber {
        Check.positive(modulus, "modulus of " + name, "Pa");
        Check.positive(foundationFactor, "foundation factor of " + name, "");
    }

    public Rubber(String name, double modulus, String origin) {
        this(name, modulus, origin, FOUNDATION_FACTOR);
    }

    /** Shear modulus [Pa]: E / 3 for an incompressible solid. */
    public double shearModulus() {
        return modulus / 3;
    }

    /**
     * Young's modulus [Pa] from Shore A hardness by A. N. Gent, "On the relation between indentation hardness and
     * Young's modulus", Rubber Chem. Technol. 31 (1958) 896 (form from memory; values agree with two public codes).
     * Best between 40 and 60; below 35 it is an estimate.
     *
     * @param shoreA hardness [Shore A], above 0 and below 100
     */
    public static double modulusFromShoreA(double shoreA) {
        Check.that(
                shoreA > 0 && shoreA < 100,
                "hardness is " + shoreA + " Shore A; it must lie between 0 and 100, both excluded");
        return 1e6 * 0.0981 * (56 + 7.62336 * shoreA) / (0.137505 * (254 - 2.54 * shoreA));
    }
}
