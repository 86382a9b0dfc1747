package gripwright.pad;

/**
 * Linear, axisymmetric finite element model of a pad.
 *
 * <p>By reciprocity (Betti), one solve for the die's reading as a load gives the reading for a point load of any
 * direction anywhere on the surface. Valid for small strain; chips are taken as round with the area of their outline,
 * which a three-dimensional model of a small chip confirmed to 0.5 % alone, 3 % in a dense row and 4 % in a strip only
 * 4 mm wide (own computation). No pad was measured.
 */
public final class PadModel {
    private PadModel() {}

    /**
     * A pad whose cavity is filled with the same rubber.
     *
     * @param modulus Young's modulus [Pa]
     * @param bulk bulk modulus [Pa]; a Poisson's ratio of 0.5 would be an infinite one, and 0.49 makes the cavity far
     *     too soft
     */
    public static PadResponse filled(PadGeometry geometry, double modulus, double bulk) {
        return filled(geometry, modulus, bulk, PadMesh.FINENESS);
    }

    /** As {@link #filled(PadGeometry, double, double)}, with so many cells per port radius. */
    public static PadResponse filled(PadGeometry geometry, double modulus, double bulk, int fineness) {
        PadSystem system = new PadSystem(new PadMesh(geometry, fineness, true), modulus, bulk, PadSystem.Top.FREE);
        double[] die = system.solved(system.dieReading());
        double[] offsets = system.offsets();
        Curve normal = new Curve(offsets, negated(system.atTop(die, 1)), true);
        Curve tangential = new Curve(offsets, system.atTop(die, 0), false);
        double perExpansion = PadSystem.dot(die, system.swelling()) + bulk;
        double ambient = PadSystem.dot(die, system.ambient());
        return new PadResponse(geometry, normal, tangential, perExpansion, ambient, system.unknowns());
    }

    /** The same pad with air in port and cavity, rubber flush with the lid's outer face. */
    public static Membrane unfilled(PadGeometry geometry, double modulus, double bulk) {
        return unfilled(geometry, modulus, bulk, PadMesh.FINENESS);
    }

    static Membrane unfilled(PadGeometry geometry, double modulus, double bulk, int fineness) {
        PadSystem system = new PadSystem(new PadMesh(geometry, fineness, false), modulus, bulk, PadSystem.Top.FREE);
        double[] load = system.bulge();
        double[] field = system.solved(load);
        Curve curve = new Curve(system.offsets(), negated(system.atTop(field, 1)), true);
        return new Membrane(PadSystem.dot(load, field), offset -> curve.at(Math.abs(offset)));
    }

    private static double[] negated(double[] values) {
        double[] out = new double[values.length];
        for (int i = 0; i < values.length; i++) {
            out[i] = -values[i];
        }
        return out;
    }
}
