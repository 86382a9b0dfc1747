package gripwright.contact;

/**
 * Friction of the pads' points: a shear spring from a remembered anchor that yields at its limit.
 *
 * <p>With u the slip of the point from its anchor, in the tangent plane of the remembered normal m: E = kt u^2 / 2 while
 * kt u stays below the limit mu f, else mu f u - (mu f)^2 / (2 kt), which meets it with the same slope. The limit is
 * frozen within an iteration; at the end of a step the anchor follows (elastic-plastic with return mapping, as in J. C.
 * Simo, T. J. R. Hughes, "Computational Inelasticity", 1998, from memory). Places are in the object's frame. Workspace.
 */
final class PadFriction {
    private static final int MEMORY = 7;
    private static final int FORCE = 6;

    private final double[] coefficient;
    private final double[] shearStiffness;
    /** Per point: anchor (3), tangent normal (3), normal force the friction limit is taken from (1). */
    private final double[] memory;

    private final boolean[] sticks;

    /** True if the last point added slid, then with the direction of its slip. */
    boolean slid;

    double tx;
    double ty;
    double tz;

    PadFriction(int points) {
        coefficient = new double[points];
        shearStiffness = new double[points];
        memory = new double[MEMORY * points];
        sticks = new boolean[points];
    }

    /** Forgets a point's anchor and sets its coefficient [-] and shear stiffness [N/m]. */
    void reset(int p, double mu, double kt) {
        coefficient[p] = mu;
        shearStiffness[p] = kt;
        forget(p);
    }

    void forget(int p) {
        sticks[p] = false;
        memory[MEMORY * p + FORCE] = 0;
    }

    double coefficient(int p) {
        return coefficient[p];
    }

    void scale(double factor) {
        for (int p = 0; p < coefficient.length; p++) {
            coefficient[p] *= factor;
        }
    }

    /** Takes a point's limit from a normal force [N]. */
    void press(int p, double normalForce) {
        memory[MEMORY * p + FORCE] = normalForce;
    }

    /** True if a point has an anchor and was pressed when its limit was taken. */
    boolean holds(int p) {
        return sticks[p] && memory[MEMORY * p + FORCE] > 0;
    }

    /** Greatest shear of a point [N]. */
    private double limit(int p) {
        return coefficient[p] * memory[MEMORY * p + FORCE];
    }

    /** Energy of a point at (x, y, z) [N m]. */
    double energy(int p, double x, double y, double z) {
        double limit = limit(p);
        if (!sticks[p] || limit <= 0) {
            return 0;
        }
        int m = MEMORY * p;
        double ux = x - memory[m];
        double uy = y - memory[m + 1];
        double uz = z - memory[m + 2];
        double un = ux * memory[m + 3] + uy * memory[m + 4] + uz * memory[m + 5];
        double u2 = Math.max(0, ux * ux + uy * uy + uz * uz - un * un);
        double kt = shearStiffness[p];
        return kt * kt * u2 <= limit * limit ? 0.5 * kt * u2 : limit * Math.sqrt(u2) - 0.5 * limit * limit / kt;
    }

    /** The same with its derivatives, added to those of the normal force; notes whether the point slid. */
    double add(int p, double x, double y, double z, boolean wantHessian, PointTerms to) {
        slid = false;
        double limit = limit(p);
        if (!sticks[p] || limit <= 0) {
            return 0;
        }
        int m = MEMORY * p;
        double mx = memory[m + 3];
        double my = memory[m + 4];
        double mz = memory[m + 5];
        double ux = x - memory[m];
        double uy = y - memory[m + 1];
        double uz = z - memory[m + 2];
        double un = ux * mx + uy * my + uz * mz;
        ux -= un * mx;
        uy -= un * my;
        uz -= un * mz;
        double u2 = ux * ux + uy * uy + uz * uz;
        double kt = shearStiffness[p];
        if (kt * kt * u2 <= limit * limit) {
            to.addForce(kt, ux, uy, uz);
            if (wantHessian) {
                to.addSticking(kt, mx, my, mz);
            }
            return 0.5 * kt * u2;
        }
        double u = Math.sqrt(u2);
        slid = true;
        tx = ux / u;
        ty = uy / u;
        tz = uz / u;
        to.addForce(limit, tx, ty, tz);
        if (wantHessian) {
            to.addSliding(limit / u, mx, my, mz, tx, ty, tz);
        }
        return limit * u - 0.5 * limit * limit / kt;
    }

    /**
     * Return mapping: the elastic slip is turned into the new tangent plane and cut to the friction limit.
     *
     * @param n gradient of the distance at the point; changed to length 1
     */
    void remember(int p, double x, double y, double z, double normalForce, double[] n) {
        makeUnit(n);
        int m = MEMORY * p;
        memory[m + FORCE] = normalForce;
        double ux = 0;
        double uy = 0;
        double uz = 0;
        if (sticks[p]) {
            ux = x - memory[m];
            uy = y - memory[m + 1];
            uz = z - memory[m + 2];
            double un = ux * n[0] + uy * n[1] + uz * n[2];
            ux -= un * n[0];
            uy -= un * n[1];
            uz -= un * n[2];
            double u = Math.sqrt(ux * ux + uy * uy + uz * uz);
            double most = coefficient[p] * normalForce / shearStiffness[p];
            if (u > most) {
                double cut = most / u;
                ux *= cut;
                uy *= cut;
                uz *= cut;
            }
        }
        memory[m] = x - ux;
        memory[m + 1] = y - uy;
        memory[m + 2] = z - uz;
        System.arraycopy(n, 0, memory, m + 3, 3);
        sticks[p] = true;
    }

    /** The tangent plane needs a normal of length 1; the gradient is shorter in blends and at edges. */
    private static void makeUnit(double[] g) {
        double length = Math.sqrt(g[0] * g[0] + g[1] * g[1] + g[2] * g[2]);
        if (length < 1e-9) {
            g[0] = 0;
            g[1] = 0;
            g[2] = 1;
            return;
        }
        for (int i = 0; i < 3; i++) {
            g[i] /= length;
        }
    }

    /**
     * Normal and shear of a point at {@code y} after {@link #remember}.
     *
     * @param out shape 6: direction of the normal force on the object (3), tangential force on the object [N] (3)
     */
    void onObject(int p, double[] y, double[] out) {
        for (int i = 0; i < 3; i++) {
            out[i] = -memory[MEMORY * p + 3 + i];
            // the gradient on the point is +kt u, so the object is dragged along by the same amount
            out[3 + i] = shearStiffness[p] * (y[i] - memory[MEMORY * p + i]);
        }
    }

    /** Everything that is remembered, for a snapshot. */
    double[][] numbers() {
        return new double[][] {memory, coefficient};
    }

    boolean[] flags() {
        return sticks;
    }
}
