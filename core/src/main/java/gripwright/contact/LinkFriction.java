package gripwright.contact;

import java.util.Arrays;

/**
 * Friction where both sides move: a shear spring stretched by the motion of two material points against each other.
 *
 * <p>The displacement u is what is remembered plus the motion, since the last commit, of the point of A against that of B
 * where they touched then, in the plane across the remembered normal m. E = k u^2 / 2 while k u stays below the limit mu f,
 * else mu f u - (mu f)^2 / (2 k); the limit is frozen within an iteration, u is cut to it at a commit (return mapping as
 * in {@link PadFriction}). Poses are in the world. Workspace.
 */
final class LinkFriction {
    /** Along the surface [N/m]: half of the stiffness across it (common practice, no source). */
    private static final double SHEAR = 1e4;

    private static final int MEMORY = 7;
    private static final int FORCE = 6;

    /** Bodies of each contact; B is -1 for the table. */
    private final int[] bodyA;

    private final int[] bodyB;
    /** Per contact: memory of the elastic tangential displacement (3), normal (3), limit force (1). */
    private final double[] memory;

    private final boolean[] sticks;
    /** Points of A and B at the last commit, in their bodies' frames: A (3), B (3). */
    private final double[] local;
    /** Point of A less point of B at the last commit (3 of 6). */
    private final double[] start;

    private double coefficient;

    LinkFriction(int[] bodyA, int[] bodyB) {
        this.bodyA = bodyA;
        this.bodyB = bodyB;
        int contacts = bodyA.length;
        memory = new double[MEMORY * contacts];
        sticks = new boolean[contacts];
        local = new double[6 * contacts];
        start = new double[6 * contacts];
    }

    /** @param mu coefficient of all contacts [-] */
    void setCoefficient(double mu) {
        coefficient = mu;
    }

    double coefficient() {
        return coefficient;
    }

    void forget(int i) {
        sticks[i] = false;
        Arrays.fill(memory, MEMORY * i, MEMORY * i + MEMORY, 0);
    }

    /** Takes a contact's limit from a normal force [N]. */
    void press(int i, double normalForce) {
        memory[MEMORY * i + FORCE] = normalForce;
    }

    boolean sticks(int i) {
        return sticks[i];
    }

    /** True if a contact remembers where it sticks and was pressed when its limit was taken. */
    boolean holds(int i) {
        return sticks[i] && memory[MEMORY * i + FORCE] > 0;
    }

    /**
     * Adds gradient and second derivative for the point of A to those of the normal force.
     *
     * @param stiffness of the normal force now [N/m], 0 if apart: the limit falls with it
     * @return energy [N m]
     */
    double add(int i, double stiffness, double[] r, double[] t, boolean wantHessian, PointPair pair) {
        int m = MEMORY * i;
        pair.slipping = false;
        double limit = coefficient * memory[m + FORCE];
        if (!sticks[i] || limit <= 0) {
            return 0;
        }
        double mx = memory[m + 3];
        double my = memory[m + 4];
        double mz = memory[m + 5];
        double ux = memory[m] + relative(i, r, t, 0) - start[6 * i];
        double uy = memory[m + 1] + relative(i, r, t, 1) - start[6 * i + 1];
        double uz = memory[m + 2] + relative(i, r, t, 2) - start[6 * i + 2];
        double un = ux * mx + uy * my + uz * mz;
        ux -= un * mx;
        uy -= un * my;
        uz -= un * mz;
        double u2 = ux * ux + uy * uy + uz * uz;
        double[] g = pair.g;
        if (SHEAR * SHEAR * u2 <= limit * limit) {
            g[0] += SHEAR * ux;
            g[1] += SHEAR * uy;
            g[2] += SHEAR * uz;
            if (wantHessian) {
                addProjector(pair.s, SHEAR, mx, my, mz, 0, 0, 0);
            }
            return 0.5 * SHEAR * u2;
        }
        double u = Math.sqrt(u2);
        double tx = ux / u;
        double ty = uy / u;
        double tz = uz / u;
        g[0] += limit * tx;
        g[1] += limit * ty;
        g[2] += limit * tz;
        if (wantHessian) {
            addProjector(pair.s, limit / u, mx, my, mz, tx, ty, tz);
            if (stiffness > 0) {
                pair.slipping = true;
                double c = -coefficient * stiffness;
                pair.t[0] = c * tx;
                pair.t[1] = c * ty;
                pair.t[2] = c * tz;
            }
        }
        return limit * u - 0.5 * limit * limit / SHEAR;
    }

    /** S += w (1 - m m^T - t t^T), row-major 3 x 3. */
    private static void addProjector(
            double[] s, double w, double mx, double my, double mz, double tx, double ty, double tz) {
        s[0] += w * (1 - mx * mx - tx * tx);
        s[1] -= w * (mx * my + tx * ty);
        s[2] -= w * (mx * mz + tx * tz);
        s[3] -= w * (my * mx + ty * tx);
        s[4] += w * (1 - my * my - ty * ty);
        s[5] -= w * (my * mz + ty * tz);
        s[6] -= w * (mz * mx + tz * tx);
        s[7] -= w * (mz * my + tz * ty);
        s[8] += w * (1 - mz * mz - tz * tz);
    }

    /** Component k of (material point of A) - (material point of B) for the points chosen at the last commit. */
    private double relative(int i, double[] r, double[] t, int k) {
        return world(bodyA[i], 6 * i, r, t, k) - (bodyB[i] < 0 ? 0 : world(bodyB[i], 6 * i + 3, r, t, k));
    }

    private double world(int body, int at, double[] r, double[] t, int k) {
        int row = 9 * body + 3 * k;
        return t[3 * body + k] + r[row] * local[at] + r[row + 1] * local[at + 1] + r[row + 2] * local[at + 2];
    }

    /** Motion of one side of a contact against the other since the last commit [m]. */
    double slid(int i, double[] r, double[] t) {
        double sum = 0;
        for (int k = 0; k < 3; k++) {
            double d = relative(i, r, t, k) - start[6 * i + k];
            sum += d * d;
        }
        return Math.sqrt(sum);
    }

    /**
     * Ends a step: the displacement is turned into the new tangent plane and cut to the limit; from now on the motion of
     * the points now touching counts.
     */
    void remember(int i, double normalForce, PointPair pair, double[] r, double[] t) {
        int m = MEMORY * i;
        double[] n = pair.n;
        if (sticks[i]) {
            double un = 0;
            for (int k = 0; k < 3; k++) {
                memory[m + k] += relative(i, r, t, k) - start[6 * i + k];
                un += memory[m + k] * n[k];
            }
            double u2 = 0;
            for (int k = 0; k < 3; k++) {
                memory[m + k] -= un * n[k];
                u2 += memory[m + k] * memory[m + k];
            }
            double most = coefficient * normalForce / SHEAR;
            if (u2 > most * most) {
                double cut = most / Math.sqrt(u2);
                for (int k = 0; k < 3; k++) {
                    memory[m + k] *= cut;
                }
            }
        }
        System.arraycopy(n, 0, memory, m + 3, 3);
        memory[m + FORCE] = normalForce;
        sticks[i] = true;
        toLocal(pair.bodyA, pair.a, 6 * i, r, t);
        if (pair.bodyB >= 0) {
            toLocal(pair.bodyB, pair.b, 6 * i + 3, r, t);
        }
        for (int k = 0; k < 3; k++) {
            start[6 * i + k] = relative(i, r, t, k);
        }
    }

    private void toLocal(int body, double[] point, int at, double[] r, double[] t) {
        for (int k = 0; k < 3; k++) {
            double sum = 0;
            for (int j = 0; j < 3; j++) {
                sum += r[9 * body + 3 * j + k] * (point[j] - t[3 * body + j]);
            }
            local[at + k] = sum;
        }
    }

    /** Component k of the tangential force on B after a commit [N]. */
    double onB(int i, int k) {
        return SHEAR * memory[MEMORY * i + k];
    }

    /** Everything that is remembered, for a snapshot. */
    double[][] numbers() {
        return new double[][] {memory, local, start};
    }

    boolean[] flags() {
        return sticks;
    }
}
