package gripwright.shape;

import gripwright.check.Check;

/** Arithmetic shared by the shapes: rounded corners, and planar outlines turned about the z axis. */
final class Profile {
    /**
     * Rounding of an edge that was given as sharper than this [m], so that every surface point has one normal. A
     * hundredth of a millimetre is far below anything a pad can feel.
     */
    static final double SHARPEST = 1e-5;

    /** Distances below this from an axis or a centre have no direction [m]. */
    static final double TINY = 1e-12;

    private Profile() {}

    /** The rounding in use for an edge radius that was asked for [m]. */
    static double rounding(double edge) {
        return Math.max(edge, SHARPEST);
    }

    /** Refuses an edge radius that does not fit into {@code room} [m]. */
    static void checkEdge(double edge, double room, String shape) {
        Check.notNegative(edge, "edge radius of the " + shape, "m");
        Check.that(
                rounding(edge) <= room,
                "edge radius of the " + shape + " is " + edge + " m; at most " + room
                        + " m fits (half of its smallest size): make the edge smaller or the " + shape + " larger");
    }

    /** Distance to a rectangle from the corner-relative place of a point: both negative inside [m]. */
    static double corner(double qr, double qz) {
        if (qr > 0 && qz > 0) {
            return Math.sqrt(qr * qr + qz * qz);
        }
        return Math.max(qr, qz);
    }

    /** {@link #turned} for the outline of {@link #corner}; {@code sr}, {@code sz} = signs that mirror it [-]. */
    static void turnedCorner(
            double x, double y, double rho, double qr, double qz, double sr, double sz, double[] g, double[] h) {
        if (qr > 0 && qz > 0) {
            double d = Math.sqrt(qr * qr + qz * qz);
            turned(x, y, rho, sr * qr / d, sz * qz / d, 1 / d, g, h);
        } else if (qr > qz) {
            turned(x, y, rho, sr, 0, 0, g, h);
        } else {
            turned(x, y, rho, 0, sz, 0, g, h);
        }
    }

    /**
     * Gradient and Hessian in 3D of a distance that depends on rho = sqrt(x^2 + y^2) and z only.
     *
     * @param nr normal in the (rho, z) plane, radial part [-]
     * @param nz the same, axial part [-]
     * @param curvature of the offset outline in that plane, positive if it bulges [1/m]
     */
    static void turned(double x, double y, double rho, double nr, double nz, double curvature, double[] g, double[] h) {
        double cx = 1;
        double cy = 0;
        double hoop = 0;
        if (rho > TINY) {
            cx = x / rho;
            cy = y / rho;
            hoop = nr / rho;
        }
        // The distance is linear along its normal, so the planar Hessian is curvature * t t^T with t = (-nz, nr).
        double rr = curvature * nz * nz;
        double rz = -curvature * nr * nz;
        g[0] = nr * cx;
        g[1] = nr * cy;
        g[2] = nz;
        h[0] = rr * cx * cx + hoop * cy * cy;
        h[1] = (rr - hoop) * cx * cy;
        h[2] = rz * cx;
        h[3] = rr * cy * cy + hoop * cx * cx;
        h[4] = rz * cy;
        h[5] = curvature * nr * nr;
    }

    /** Gradient and Hessian of the distance to a point that lies at minus (x, y, z); straight up if that is 0. */
    static void fromPoint(double x, double y, double z, double[] g, double[] h) {
        double d = Math.sqrt(x * x + y * y + z * z);
        if (d < TINY) {
            plane(0, 0, 1, g, h);
            return;
        }
        double k = 1 / d;
        double nx = x * k;
        double ny = y * k;
        double nz = z * k;
        g[0] = nx;
        g[1] = ny;
        g[2] = nz;
        h[0] = k * (1 - nx * nx);
        h[1] = -k * nx * ny;
        h[2] = -k * nx * nz;
        h[3] = k * (1 - ny * ny);
        h[4] = -k * ny * nz;
        h[5] = k * (1 - nz * nz);
    }

    /** Gradient and Hessian of the distance to a plane. */
    static void plane(double nx, double ny, double nz, double[] g, double[] h) {
        g[0] = nx;
        g[1] = ny;
        g[2] = nz;
        h[0] = 0;
        h[1] = 0;
        h[2] = 0;
        h[3] = 0;
        h[4] = 0;
        h[5] = 0;
    }
}
