package gripwright.contact;

import gripwright.math.Memory;
import gripwright.shape.TableSupport;
import org.jspecify.annotations.Nullable;

/**
 * The object on the table: each of its {@link TableSites} may press on the plane, with friction that remembers where it
 * sticks. {@link NormalLaw} as for the pads, with a stiffer spring; friction as theirs ({@link PadFriction}), in the plane
 * of the table. Everything is in the object's frame, the up direction being m = R^T e_z. Workspace.
 */
public final class TableContact {
    /** Stiffness of a site [N/m]; a 300 g object sinks 15 um. */
    static final double STIFFNESS = 2e5;

    private static final double SHEAR = 1e5;
    private static final double TOE = 2e-5;

    private final TableSites sites;
    private final int n;
    /** Anchor of each site on the table [m], the point of the object that sticks there. */
    private final double[] stickX;

    private final double[] stickY;
    private final double[] material;
    private final double[] limitForce;
    private final double[] force;
    private final boolean[] sticks;
    private double friction;
    private int touching;

    public TableContact(TableSupport support) {
        sites = new TableSites(support);
        n = sites.n;
        stickX = new double[n];
        stickY = new double[n];
        material = new double[3 * n];
        limitForce = new double[n];
        force = new double[n];
        sticks = new boolean[n];
    }

    /** Forgets all contact. @param coefficient of friction with the table [-] */
    public void reset(double coefficient) {
        friction = coefficient;
        for (int i = 0; i < n; i++) {
            forget(i);
        }
    }

    private void forget(int i) {
        sticks[i] = false;
        limitForce[i] = 0;
        force[i] = 0;
    }

    /** Friction coefficient of the run [-]. */
    public double friction() {
        return friction;
    }

    /** Sites pressed at the last evaluation. */
    public int touching() {
        return touching;
    }

    /** Greatest lowering of the lowest site below the table in the given pose [m]; negative = clear of it. */
    public double depth(double[] r, double pz, double table) {
        sites.chooseRims(r);
        double most = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < n; i++) {
            if (sites.inUse(i)) {
                most = Math.max(most, placed(i, r, pz, table));
            }
        }
        return most;
    }

    /** Finds the place of a site; returns how deep it lies below the table [m]. */
    private double placed(int i, double[] r, double pz, double table) {
        sites.place(i, r[6], r[7], r[8]);
        return table + sites.radius[i] - (pz + r[6] * sites.sx + r[7] * sites.sy + r[8] * sites.sz);
    }

    /**
     * Energy, and if wanted the gradient and second derivative for the object's six unknowns.
     *
     * @param r rotation of the object, row-major (object to world)
     * @param p origin of the object in the world [m]
     * @param table height of the table [m]
     * @param renew take the friction limits from the present normal forces
     * @param out with V, G, C; the sign convention is that of a load ON the object: gradient += [F; M], the caller adds
     *     the second-order terms of a world-fixed load. Null = energy only
     */
    public double accumulate(
            double[] r, double[] p, double table, boolean renew, boolean wantHessian, @Nullable Block out) {
        if (out != null) {
            out.clear();
        }
        touching = 0;
        double energy = 0;
        for (int i = 0; i < n; i++) {
            if (!sites.inUse(i)) {
                continue;
            }
            double depth = placed(i, r, p[2], table);
            if (depth <= 0) {
                if (renew) {
                    limitForce[i] = 0;
                }
                if (!sticks[i] || limitForce[i] <= 0) {
                    continue;
                }
            }
            if (out != null && !out.active) {
                out.start(wantHessian);
            }
            energy += (depth > 0 ? press(i, r, depth, renew, wantHessian, out) : 0)
                    + rub(i, r, p, depth, wantHessian, out);
        }
        return energy;
    }

    /** The normal force of a site and its curvature; returns its energy. */
    private double press(int i, double[] r, double depth, boolean renew, boolean wantHessian, @Nullable Block out) {
        touching++;
        double f = NormalLaw.force(STIFFNESS, TOE, depth);
        if (renew) {
            limitForce[i] = f;
        }
        if (out != null) {
            double mx = r[6];
            double my = r[7];
            double mz = r[8];
            double x = sites.sx;
            double y = sites.sy;
            double z = sites.sz;
            out.addForce(x, y, z, -f * mx, -f * my, -f * mz);
            if (wantHessian) {
                double k = stiffness(depth);
                out.addStiffness(x, y, z, k * mx * mx, k * mx * my, k * mx * mz, k * my * my, k * my * mz, k * mz * mz);
                sites.addCurvature(i, f, mx, my, mz, out);
            }
        }
        return NormalLaw.energy(STIFFNESS, TOE, depth);
    }

    /** {@link NormalLaw#stiffness} but for the last digit, on which stored results hang. */
    private static double stiffness(double depth) {
        return depth < TOE ? STIFFNESS * depth / TOE : STIFFNESS;
    }

    /** Friction of a site that remembers where it sticks; returns its energy. */
    private double rub(int i, double[] r, double[] p, double depth, boolean wantHessian, @Nullable Block out) {
        double limit = friction * limitForce[i];
        if (!sticks[i] || limit <= 0) {
            return 0;
        }
        double ax = material[3 * i];
        double ay = material[3 * i + 1];
        double az = material[3 * i + 2];
        double ux = p[0] + r[0] * ax + r[1] * ay + r[2] * az - stickX[i];
        double uy = p[1] + r[3] * ax + r[4] * ay + r[5] * az - stickY[i];
        double u2 = ux * ux + uy * uy;
        boolean holds = SHEAR * SHEAR * u2 <= limit * limit;
        double u = holds ? 0 : Math.sqrt(u2);
        if (out != null) {
            double tx = holds ? 0 : ux / u;
            double ty = holds ? 0 : uy / u;
            double gx = holds ? SHEAR * ux : limit * tx;
            double gy = holds ? SHEAR * uy : limit * ty;
            // world x and y axes seen from the object: rows 0 and 1 of R
            out.addForce(ax, ay, az, r[0] * gx + r[3] * gy, r[1] * gx + r[4] * gy, r[2] * gx + r[5] * gy);
            if (wantHessian) {
                // w (1 - t t^T)
                double w = holds ? SHEAR : limit / u;
                addShear(r, ax, ay, az, w * (1 - tx * tx), -w * tx * ty, w * (1 - ty * ty), out);
                if (!holds && depth > 0) {
                    addSlip(r, ax, ay, az, -friction * stiffness(depth), tx, ty, out);
                }
            }
        }
        return holds ? 0.5 * SHEAR * u2 : limit * u - 0.5 * limit * limit / SHEAR;
    }

    /** A stiffness along the table, at a point of the object: rows and columns turned into the object's frame. */
    private static void addShear(
            double[] r, double ax, double ay, double az, double hxx, double hxy, double hyy, Block out) {
        double px = hxx * r[0] + hxy * r[3];
        double py = hxx * r[1] + hxy * r[4];
        double pz = hxx * r[2] + hxy * r[5];
        double qx = hxy * r[0] + hyy * r[3];
        double qy = hxy * r[1] + hyy * r[4];
        double qz = hxy * r[2] + hyy * r[5];
        out.addStiffness(
                ax,
                ay,
                az,
                px * r[0] + qx * r[3],
                px * r[1] + qx * r[4],
                px * r[2] + qx * r[5],
                py * r[1] + qy * r[4],
                py * r[2] + qy * r[5],
                pz * r[2] + qz * r[5]);
    }

    /** Rows along the sliding direction at the material point, columns along the normal at the site. */
    private void addSlip(double[] r, double ax, double ay, double az, double factor, double tx, double ty, Block out) {
        double ox = factor * (r[0] * tx + r[3] * ty);
        double oy = factor * (r[1] * tx + r[4] * ty);
        double oz = factor * (r[2] * tx + r[5] * ty);
        out.addSlip(ax, ay, az, ox, oy, oz, sites.sx, sites.sy, sites.sz, r[6], r[7], r[8]);
    }

    /** Ends a step: return mapping of the anchors, choice of the sites for the next step. */
    public void commit(double[] r, double[] p, double table) {
        sites.chooseRims(r);
        for (int i = 0; i < n; i++) {
            double depth = sites.inUse(i) ? placed(i, r, p[2], table) : 0;
            if (depth <= 0) {
                forget(i);
            } else {
                remember(i, NormalLaw.force(STIFFNESS, TOE, depth), r, p);
            }
        }
    }

    private void remember(int i, double f, double[] r, double[] p) {
        double ux = 0;
        double uy = 0;
        if (sticks[i]) {
            double ax = material[3 * i];
            double ay = material[3 * i + 1];
            double az = material[3 * i + 2];
            ux = p[0] + r[0] * ax + r[1] * ay + r[2] * az - stickX[i];
            uy = p[1] + r[3] * ax + r[4] * ay + r[5] * az - stickY[i];
            double u = Math.sqrt(ux * ux + uy * uy);
            double most = friction * f / SHEAR;
            if (u > most) {
                ux *= most / u;
                uy *= most / u;
            }
        }
        double bx = sites.sx - sites.radius[i] * r[6];
        double by = sites.sy - sites.radius[i] * r[7];
        double bz = sites.sz - sites.radius[i] * r[8];
        material[3 * i] = bx;
        material[3 * i + 1] = by;
        material[3 * i + 2] = bz;
        stickX[i] = p[0] + r[0] * bx + r[1] * by + r[2] * bz - ux;
        stickY[i] = p[1] + r[3] * bx + r[4] * by + r[5] * bz - uy;
        sticks[i] = true;
        force[i] = f;
        limitForce[i] = f;
    }

    public int sites() {
        return n;
    }

    /** Normal force of a site at the last commit [N]. */
    public double force(int site) {
        return force[site];
    }

    /**
     * Place and tangential force of a site after a commit.
     *
     * @param out shape 5: place in the world [m] (3), force on the object along world x and y [N] (2)
     */
    public void forceOnObject(int i, double[] r, double[] p, double[] out) {
        double ax = material[3 * i];
        double ay = material[3 * i + 1];
        double az = material[3 * i + 2];
        out[0] = p[0] + r[0] * ax + r[1] * ay + r[2] * az;
        out[1] = p[1] + r[3] * ax + r[4] * ay + r[5] * az;
        out[2] = p[2] + r[6] * ax + r[7] * ay + r[8] * az;
        out[3] = -SHEAR * (out[0] - stickX[i]);
        out[4] = -SHEAR * (out[1] - stickY[i]);
    }

    /** A copy of everything remembered since the last commit. */
    public Memory keep() {
        return Memory.of(numbers(), flags());
    }

    /** Puts back what {@link #keep} copied. */
    public void recall(Memory kept) {
        kept.into(numbers(), flags());
    }

    private double[][] numbers() {
        return new double[][] {stickX, stickY, material, limitForce, force};
    }

    private boolean[][] flags() {
        return new boolean[][] {sites.flags(), sticks};
    }
}
