package gripwright.contact;

/**
 * What the laws at one contact point add up to: g = dE/dy and S = d2E/dy2 for its place y in the object's frame.
 * Workspace.
 */
final class PointTerms {
    /** g [N]. */
    double gx;

    double gy;
    double gz;
    /** S [N/m], upper triangle. */
    double sxx;

    double sxy;
    double sxz;
    double syy;
    double syz;
    double szz;

    void clear() {
        gx = 0;
        gy = 0;
        gz = 0;
        sxx = 0;
        sxy = 0;
        sxz = 0;
        syy = 0;
        syz = 0;
        szz = 0;
    }

    /**
     * The normal force: g = -f n and S = k n n^T - f H, because the depth falls as the distance grows.
     *
     * @param f force [N]
     * @param k its stiffness [N/m]
     * @param n gradient of the distance [-]
     * @param h its second derivative H [1/m], upper triangle
     */
    void press(double f, double k, double[] n, double[] h, boolean wantHessian) {
        double nx = n[0];
        double ny = n[1];
        double nz = n[2];
        gx = -f * nx;
        gy = -f * ny;
        gz = -f * nz;
        if (wantHessian) {
            sxx = k * nx * nx - f * h[0];
            sxy = k * nx * ny - f * h[1];
            sxz = k * nx * nz - f * h[2];
            syy = k * ny * ny - f * h[3];
            syz = k * ny * nz - f * h[4];
            szz = k * nz * nz - f * h[5];
        }
    }

    /** g += w v. */
    void addForce(double w, double x, double y, double z) {
        gx += w * x;
        gy += w * y;
        gz += w * z;
    }

    /** S += w (1 - m m^T): a spring in the plane across m. */
    void addSticking(double w, double mx, double my, double mz) {
        sxx += w - w * mx * mx;
        sxy -= w * mx * my;
        sxz -= w * mx * mz;
        syy += w - w * my * my;
        syz -= w * my * mz;
        szz += w - w * mz * mz;
    }

    /** S += w (1 - m m^T - t t^T): a constant force along t in that plane turns with its direction only. */
    void addSliding(double w, double mx, double my, double mz, double tx, double ty, double tz) {
        sxx += w * (1 - mx * mx - tx * tx);
        sxy -= w * (mx * my + tx * ty);
        sxz -= w * (mx * mz + tx * tz);
        syy += w * (1 - my * my - ty * ty);
        syz -= w * (my * mz + ty * tz);
        szz += w * (1 - mz * mz - tz * tz);
    }
}
