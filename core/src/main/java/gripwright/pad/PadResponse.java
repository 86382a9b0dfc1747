package gripwright.pad;

/** What the die of one filled pad reads; made by {@link PadModel#filled}. */
public final class PadResponse {
    private final PadGeometry geometry;
    private final Curve normal;
    private final Curve tangential;
    private final double perExpansion;
    private final double ambient;
    private final int unknowns;

    PadResponse(
            PadGeometry geometry, Curve normal, Curve tangential, double perExpansion, double ambient, int unknowns) {
        this.geometry = geometry;
        this.normal = normal;
        this.tangential = tangential;
        this.perExpansion = perExpansion;
        this.ambient = ambient;
        this.unknowns = unknowns;
    }

    public PadGeometry geometry() {
        return geometry;
    }

    /** Die pressure per newton of a point load at that distance from the chip's axis [Pa/N]. */
    public double at(double offset) {
        return normal.at(Math.abs(offset));
    }

    /** Change of {@link #at} along the offset [Pa/(N m)]. */
    public double slope(double offset) {
        return Math.signum(offset) * normal.slope(Math.abs(offset));
    }

    /** Die pressure per newton of a load along the surface, positive away from the chip's axis [Pa/N]. */
    public double tangential(double offset) {
        return Math.signum(offset) * tangential.at(Math.abs(offset));
    }

    /** Straight over the chip [Pa/N]. */
    public double peak() {
        return normal.at(0);
    }

    /** Nearest offset at which the reading has fallen to that share of the peak [m]. */
    public double radius(double share) {
        double goal = share * peak();
        double step = geometry.overChip() / 200;
        double x = 0;
        while (x < normal.end() && normal.at(x) > goal) {
            x += step;
        }
        double low = Math.max(0, x - step);
        double high = x;
        for (int i = 0; i < 50; i++) {
            double middle = (low + high) / 2;
            if (normal.at(middle) > goal) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return (low + high) / 2;
    }

    /** Largest tangential response over the peak, and where [-, m]. */
    public double[] greatestTangential() {
        double best = 0;
        double where = 0;
        double step = geometry.overChip() / 400;
        for (double x = 0; x < 2.5 * geometry.overChip(); x += step) {
            double share = Math.abs(tangential.at(x)) / peak();
            if (share > best) {
                best = share;
                where = x;
            }
        }
        return new double[] {best, where};
    }

    /**
     * How far friction shifts the pattern's peak when a normal load comes with a tangential one [m].
     *
     * @param ratio tangential over normal load
     */
    public double frictionShift(double ratio) {
        double t = geometry.overChip();
        double best = Double.NEGATIVE_INFINITY;
        double where = 0;
        // The load stands still; a chip at x to its right sees the tangential load come towards its axis.
        for (double x = -t; x <= t; x += t / 2000) {
            double reading = at(x) - ratio * tangential(x);
            if (reading > best) {
                best = reading;
                where = x;
            }
        }
        return where;
    }

    /** Die pressure per kelvin of a filled, bonded cavity [Pa/K]; {@code expansion} is of volume [1/K]. */
    public double perKelvin(double expansion) {
        return perExpansion * expansion;
    }

    /** Change of the reading per change of the air's pressure [-]; near 1 if the cavity is filled. */
    public double ambientRatio() {
        return ambient;
    }

    /** Unknowns of the model. */
    public int unknowns() {
        return unknowns;
    }
}
