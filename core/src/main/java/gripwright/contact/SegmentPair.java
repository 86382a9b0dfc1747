package gripwright.contact;

/**
 * Closest points of two segments (C. Ericson, "Real-Time Collision Detection", 2005, from memory).
 *
 * <p>The first runs from a by the vector u, the second from b by v; w = a - b. The closest points are a + s u and b + q v,
 * s and q in 0..1, and d = w + s u - q v leads from the second to the first. Parallel segments: s = 1/2 is tried. Both must
 * have a length. Workspace.
 */
final class SegmentPair {
    /** Share of the first segment at its closest point [-]. */
    double s;
    /** From the second segment's closest point to that of the first [m]. */
    double dx;

    double dy;
    double dz;

    /**
     * @param uu length of u squared [m^2]
     * @param vv length of v squared [m^2]
     * @return the distance [m]
     */
    double distance(
            double ux,
            double uy,
            double uz,
            double uu,
            double vx,
            double vy,
            double vz,
            double vv,
            double wx,
            double wy,
            double wz) {
        double uv = ux * vx + uy * vy + uz * vz;
        double uw = ux * wx + uy * wy + uz * wz;
        double vw = vx * wx + vy * wy + vz * wz;
        double det = uu * vv - uv * uv;
        s = det > 1e-12 * uu * vv ? clamp((uv * vw - uw * vv) / det) : 0.5;
        double q = (uv * s + vw) / vv;
        if (q < 0) {
            q = 0;
            s = clamp(-uw / uu);
        } else if (q > 1) {
            q = 1;
            s = clamp((uv - uw) / uu);
        }
        dx = wx + s * ux - q * vx;
        dy = wy + s * uy - q * vy;
        dz = wz + s * uz - q * vz;
        return Math.sqrt(dx * dx + dy * dy + dz * dz);
    }

    private static double clamp(double v) {
        return v < 0 ? 0 : v > 1 ? 1 : v;
    }
}
