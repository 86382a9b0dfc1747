package gripwright.pad;

import gripwright.check.Check;

/**
 * Air, heat and filling of a chip's cavity as a chain of springs (volume per pressure), where the finite element model
 * is not asked: bubbles, vacuum, foam. Within 16 % of the model where both can be had.
 */
public record Cavity(Chip chip, double modulus, double bulk) {
    /** Standard atmosphere [Pa]. */
    public static final double AMBIENT = 101325;

    /** Surface tension of liquid silicone [N/m]; from memory. */
    public static final double SURFACE_TENSION = 0.021;

    /** Volume expansion of silicone [1/K]; from memory. */
    public static final double EXPANSION = 9e-4;

    public static final double DENSITY = 1070;

    private static final double GRAVITY = 9.80665;

    /** Pressure per volume of the rubber in the port, ends included [Pa/m^3]. */
    public double portResistance() {
        double a = chip.portRadius();
        return modulus / (a * a * a) + 8 * modulus * chip.lid() / (3 * Math.PI * Math.pow(a, 4));
    }

    /** Figure of merit: port resistance times volume [Pa]; the less, the less air, heat and squeeze of rubber matter. */
    public double merit() {
        return portResistance() * chip.volume();
    }

    /** Sensitivity with a bubble over that without one [-]; a formula, not checked against the model in between. */
    public double withBubble(double bubble) {
        double solid = portResistance() * chip.volume() / bulk;
        return (1 + solid) / (1 + solid + portResistance() * Check.notNegative(bubble, "bubble", "m^3") / stiffAir());
    }

    /** The bubble that costs that share of the sensitivity [m^3]. */
    public double bubbleFor(double loss) {
        Check.that(loss > 0 && loss < 1, "the loss is " + loss + "; it must be above 0 and below 1");
        double solid = 1 + portResistance() * chip.volume() / bulk;
        return stiffAir() / portResistance() * solid * loss / (1 - loss);
    }

    private double stiffAir() {
        return AMBIENT + 4 * modulus / 9; // 4 G / 3 with G a third of Young's modulus
    }

    /**
     * Air left in the cavity after one pull to {@code vacuum} (absolute) [m^3]: what stays at that pressure plus the
     * head of liquid and the port's capillary pressure shrinks to atmosphere. Nothing dissolves: the pessimistic bound.
     */
    public double leftAfter(double vacuum, double depth) {
        double inside = Check.positive(vacuum, "vacuum", "Pa") + DENSITY * GRAVITY * depth + capillary();
        return Math.min(1, inside / AMBIENT) * chip.volume();
    }

    /** Pressure by which the liquid's surface in the port holds a bubble [Pa]; a better pump than this gains nothing. */
    public double capillary() {
        return 2 * SURFACE_TENSION / chip.portRadius();
    }

    /** Reading per kelvin of a filled, bonded cavity [Pa/K]. */
    public double perKelvin(double expansion) {
        return expansion * chip.volume() / (1 / portResistance() + chip.volume() / bulk);
    }

    /** Volume of foam over that of the liquid: air of share phi at atmosphere swells under vacuum [-]. */
    public static double foam(double share, double vacuum) {
        return 1 + share * (AMBIENT / vacuum - 1);
    }

    /** Time for a bubble to rise, stiff-skinned (Stokes), swollen by the vacuum [s]. */
    public static double rise(double radiusAtAmbient, double vacuum, double viscosity, double density, double depth) {
        double r = radiusAtAmbient * Math.cbrt(AMBIENT / vacuum);
        return depth * 9 * viscosity / (2 * r * r * density * GRAVITY);
    }
}
