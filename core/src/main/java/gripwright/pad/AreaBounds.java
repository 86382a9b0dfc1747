package gripwright.pad;

/**
 * Standard deviations that no unbiased estimate of a point load beats when place along, place across and force are all
 * unknown (Cramer-Rao), for a pad with several rows. A single row cannot tell a load beside its middle line from a weaker
 * one on it.
 *
 * @param along the rows [m]
 * @param across the rows [m]
 * @param force over force [-]
 */
public record AreaBounds(double along, double across, double force) {
    private static final AreaBounds NONE =
            new AreaBounds(Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY);

    private static final int STEPS = 12;

    /** Determinant over the product of the diagonal below which the three cannot be told apart. */
    private static final double SINGULAR = 1e-10;

    /**
     * Of a load at (x, y) from the pad's middle [m].
     *
     * @param noise [Pa]
     * @param modelError relative error of each cell's gain [-]
     */
    public static AreaBounds at(
            PadDesign pad, PadResponse response, double x, double y, double force, double noise, double modelError) {
        double[][] fisher = new double[3][3];
        for (int cell = 0; cell < pad.cells(); cell++) {
            double dx = x - pad.along(cell);
            double dy = y - pad.across(cell);
            double r = Math.hypot(dx, dy);
            double reading = response.at(r);
            double slope = r > 0 ? force * response.slope(r) / r : 0;
            double[] d = {slope * dx, slope * dy, reading};
            double error = modelError * force * reading;
            double weight = 1 / (noise * noise + error * error);
            for (int a = 0; a < 3; a++) {
                for (int b = 0; b < 3; b++) {
                    fisher[a][b] += weight * d[a] * d[b];
                }
            }
        }
        return inverse(fisher, force);
    }

    /** The worst over the pitch nearest to the middle, between the two rows nearest to it. */
    public static AreaBounds worst(PadDesign pad, PadResponse response, double force, double noise, double modelError) {
        double along = 0;
        double across = 0;
        double share = 0;
        int row = Math.max(0, pad.rows() / 2 - 1);
        double startX = pad.along((pad.count() - 1) / 2);
        double startY = pad.across(row * pad.count());
        double height = pad.rows() > 1 ? pad.rowPitch() : 0;
        for (int k = 0; k <= STEPS; k++) {
            for (int m = 0; m <= STEPS; m++) {
                AreaBounds b = at(
                        pad,
                        response,
                        startX + pad.pitch() * k / STEPS,
                        startY + height * m / STEPS,
                        force,
                        noise,
                        modelError);
                along = Math.max(along, b.along);
                across = Math.max(across, b.across);
                share = Math.max(share, b.force);
            }
        }
        return new AreaBounds(along, across, share);
    }

    /** Roots of the diagonal of the inverse of a symmetric 3 x 3 matrix, by cofactors. */
    private static AreaBounds inverse(double[][] m, double force) {
        double c00 = m[1][1] * m[2][2] - m[1][2] * m[1][2];
        double c11 = m[0][0] * m[2][2] - m[0][2] * m[0][2];
        double c22 = m[0][0] * m[1][1] - m[0][1] * m[0][1];
        double det = m[0][0] * c00
                - m[0][1] * (m[0][1] * m[2][2] - m[1][2] * m[0][2])
                + m[0][2] * (m[0][1] * m[1][2] - m[1][1] * m[0][2]);
        return det > SINGULAR * m[0][0] * m[1][1] * m[2][2]
                ? new AreaBounds(Math.sqrt(c00 / det), Math.sqrt(c11 / det), Math.sqrt(c22 / det) / force)
                : NONE;
    }
}
