package gripwright.contact;

import gripwright.math.Memory;
import gripwright.math.Vec3;
import gripwright.shape.TableSupport;
import java.util.ArrayList;
import java.util.List;

/**
 * The object on the table: a set of sites, each a small sphere that may press on the plane, with anchored friction.
 *
 * <p>Corners and ball ends are sites fixed in the object. The circular edge of a standing body carries many fixed
 * sites; once it is tilted or lies, its single lowest place takes over, which moves round the circle as the body rolls,
 * so there are no facets. An ellipsoid has one moving site. Same normal law and friction as the pads, with a stiffer
 * spring. Everything is in the object's frame, the up direction being m = R^T e_z. Workspace.
 */
public final class TableContact {
    /** Stiffness of a site [N/m]; a 300 g object sinks 15 um. */
    static final double STIFFNESS = 2e5;

    private static final double SHEAR = 1e5;
    private static final double TOE = 2e-5;

    /** Fixed sites on a circular edge that stands. */
    private static final int RIM_SITES = 24;

    /** cos 15 degrees: an edge stands while its axis is nearer to the vertical than that. */
    private static final double STANDING = 0.9659258262890683;

    private enum Kind {
        FIXED,
        ON_RIM,
        RIM_LOWEST,
        ELLIPSOID
    }

    private record Site(Kind kind, Vec3 centre, double radius, int feature) {}

    private final int n;
    private final Kind[] kind;
    private final int[] feature;
    private final double[] centre;
    private final double[] radius;
    private final TableSupport support;
    private final boolean[] rimStands;
    private final double[] stickX;
    private final double[] stickY;
    private final double[] material;
    private final double[] limitForce;
    private final double[] force;
    private final boolean[] sticks;
    private double friction;
    /** The site being worked on: its centre, and its curvature term -(curve matrix). */
    private double sx;

    private double sy;
    private double sz;
    private int touching;

    public TableContact(TableSupport support) {
        this.support = support;
        List<Site> sites = new ArrayList<>();
        support.balls().forEach(b -> sites.add(new Site(Kind.FIXED, b.centre(), b.radius(), -1)));
        for (int i = 0; i < support.rims().size(); i++) {
            addRim(support.rims().get(i), i, sites);
        }
        for (int i = 0; i < support.ellipsoids().size(); i++) {
            sites.add(new Site(Kind.ELLIPSOID, support.ellipsoids().get(i).centre(), 0, i));
        }
        n = sites.size();
        kind = new Kind[n];
        feature = new int[n];
        centre = new double[3 * n];
        radius = new double[n];
        for (int i = 0; i < n; i++) {
            Site s = sites.get(i);
            kind[i] = s.kind;
            feature[i] = s.feature;
            radius[i] = s.radius;
            centre[3 * i] = s.centre.x();
            centre[3 * i + 1] = s.centre.y();
            centre[3 * i + 2] = s.centre.z();
        }
        rimStands = new boolean[support.rims().size()];
        stickX = new double[n];
        stickY = new double[n];
        material = new double[3 * n];
        limitForce = new double[n];
        force = new double[n];
        sticks = new boolean[n];
    }

    private static void addRim(TableSupport.Rim rim, int index, List<Site> out) {
        Vec3 a = rim.axis().unit();
        Vec3 u = (Math.abs(a.z()) < 0.9 ? a.cross(Vec3.Z) : a.cross(Vec3.X)).unit();
        Vec3 v = a.cross(u);
        for (int k = 0; k < RIM_SITES; k++) {
            double angle = 2 * Math.PI * k / RIM_SITES;
            Vec3 place = rim.centre()
                    .plus(u.times(rim.radius() * StrictMath.cos(angle)))
                    .plus(v.times(rim.radius() * StrictMath.sin(angle)));
            out.add(new Site(Kind.ON_RIM, place, rim.tube(), index));
        }
        out.add(new Site(Kind.RIM_LOWEST, rim.centre(), rim.tube(), index));
    }

    /** Forgets all contact. @param coefficient of friction with the table [-] */
    public void reset(double coefficient) {
        friction = coefficient;
        for (int i = 0; i < n; i++) {
            sticks[i] = false;
            limitForce[i] = 0;
            force[i] = 0;
        }
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
        chooseRims(r);
        double most = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < n; i++) {
            if (inUse(i)) {
                place(i, r[6], r[7], r[8]);
                most = Math.max(most, table + radius[i] - (pz + r[6] * sx + r[7] * sy + r[8] * sz));
            }
        }
        return most;
    }

    private void chooseRims(double[] r) {
        for (int i = 0; i < rimStands.length; i++) {
            Vec3 a = support.rims().get(i).axis();
            rimStands[i] = Math.abs(r[6] * a.x() + r[7] * a.y() + r[8] * a.z()) > STANDING;
        }
    }

    private boolean inUse(int i) {
        return switch (kind[i]) {
            case ON_RIM -> rimStands[feature[i]];
            case RIM_LOWEST -> !rimStands[feature[i]];
            default -> true;
        };
    }

    /** Centre of the site's small sphere for the up direction (mx, my, mz), into sx, sy, sz. */
    private void place(int i, double mx, double my, double mz) {
        sx = centre[3 * i];
        sy = centre[3 * i + 1];
        sz = centre[3 * i + 2];
        if (kind[i] == Kind.RIM_LOWEST) {
            TableSupport.Rim rim = support.rims().get(feature[i]);
            Vec3 a = rim.axis();
            double ma = mx * a.x() + my * a.y() + mz * a.z();
            double across = Math.sqrt(Math.max(1e-12, 1 - ma * ma));
            double b = rim.radius() / across;
            sx -= b * (mx - ma * a.x());
            sy -= b * (my - ma * a.y());
            sz -= b * (mz - ma * a.z());
        } else if (kind[i] == Kind.ELLIPSOID) {
            TableSupport.Ellipsoidal e = support.ellipsoids().get(feature[i]);
            double dx = spread(e, 0, mx, my, mz);
            double dy = spread(e, 1, mx, my, mz);
            double dz = spread(e, 2, mx, my, mz);
            double size = Math.sqrt(mx * dx + my * dy + mz * dz);
            sx -= dx / size;
            sy -= dy / size;
            sz -= dz / size;
        }
    }

    /** Row {@code row} of A diag(semi-axes^2) A^T times m. */
    private static double spread(TableSupport.Ellipsoidal e, int row, double mx, double my, double mz) {
        gripwright.math.Rotation a = e.axes();
        double px = e.semiAxes().x() * e.semiAxes().x() * (a.xx() * mx + a.yx() * my + a.zx() * mz);
        double py = e.semiAxes().y() * e.semiAxes().y() * (a.xy() * mx + a.yy() * my + a.zy() * mz);
        double pz = e.semiAxes().z() * e.semiAxes().z() * (a.xz() * mx + a.yz() * my + a.zz() * mz);
        return switch (row) {
            case 0 -> a.xx() * px + a.xy() * py + a.xz() * pz;
            case 1 -> a.yx() * px + a.yy() * py + a.yz() * pz;
            default -> a.zx() * px + a.zy() * py + a.zz() * pz;
        };
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
            double[] r,
            double[] p,
            double table,
            boolean renew,
            boolean wantHessian,
            @org.jspecify.annotations.Nullable Block out) {
        if (out != null) {
            out.clear();
        }
        touching = 0;
        double energy = 0;
        double mx = r[6];
        double my = r[7];
        double mz = r[8];
        for (int i = 0; i < n; i++) {
            if (!inUse(i)) {
                continue;
            }
            if (kind[i] == Kind.FIXED || kind[i] == Kind.ON_RIM) {
                sx = centre[3 * i];
                sy = centre[3 * i + 1];
                sz = centre[3 * i + 2];
            } else {
                place(i, mx, my, mz);
            }
            double depth = table + radius[i] - (p[2] + mx * sx + my * sy + mz * sz);
            if (depth <= 0) {
                if (renew) {
                    limitForce[i] = 0;
                }
                if (!sticks[i] || limitForce[i] <= 0) {
                    continue;
                }
            }
            energy += site(i, r, p, depth, renew, wantHessian, out);
        }
        return energy;
    }

    private double site(
            int i,
            double[] r,
            double[] p,
            double depth,
            boolean renew,
            boolean wantHessian,
            @org.jspecify.annotations.Nullable Block out) {
        double mx = r[6];
        double my = r[7];
        double mz = r[8];
        double energy = 0;
        double k = 0;
        if (out != null && !out.active) {
            out.start(wantHessian);
        }
        if (depth > 0) {
            touching++;
            double f;
            if (depth < TOE) {
                f = 0.5 * STIFFNESS * depth * depth / TOE;
                energy = f * depth / 3;
                k = STIFFNESS * depth / TOE;
            } else {
                f = STIFFNESS * (depth - 0.5 * TOE);
                energy = STIFFNESS * (0.5 * depth * depth - 0.5 * depth * TOE + TOE * TOE / 6);
                k = STIFFNESS;
            }
            if (renew) {
                limitForce[i] = f;
            }
            if (out != null) {
                out.addForce(sx, sy, sz, -f * mx, -f * my, -f * mz);
                if (wantHessian) {
                    out.addStiffness(
                            sx, sy, sz, k * mx * mx, k * mx * my, k * mx * mz, k * my * my, k * my * mz, k * mz * mz);
                    if (kind[i] == Kind.RIM_LOWEST) {
                        addRimCurvature(i, f, mx, my, mz, out);
                    } else if (kind[i] == Kind.ELLIPSOID) {
                        addEllipsoidCurvature(i, f, mx, my, mz, out);
                    }
                }
            }
        }
        double limit = friction * limitForce[i];
        if (!sticks[i] || limit <= 0) {
            return energy;
        }
        double ax = material[3 * i];
        double ay = material[3 * i + 1];
        double az = material[3 * i + 2];
        double ux = p[0] + r[0] * ax + r[1] * ay + r[2] * az - stickX[i];
        double uy = p[1] + r[3] * ax + r[4] * ay + r[5] * az - stickY[i];
        double u2 = ux * ux + uy * uy;
        double gx;
        double gy;
        double hxx;
        double hxy;
        double hyy;
        if (SHEAR * SHEAR * u2 <= limit * limit) {
            energy += 0.5 * SHEAR * u2;
            gx = SHEAR * ux;
            gy = SHEAR * uy;
            hxx = SHEAR;
            hyy = SHEAR;
            hxy = 0;
        } else {
            double u = Math.sqrt(u2);
            energy += limit * u - 0.5 * limit * limit / SHEAR;
            double tx = ux / u;
            double ty = uy / u;
            gx = limit * tx;
            gy = limit * ty;
            double w = limit / u;
            hxx = w * (1 - tx * tx);
            hxy = -w * tx * ty;
            hyy = w * (1 - ty * ty);
            if (out != null && wantHessian && depth > 0) {
                addSlip(r, ax, ay, az, -friction * k, tx, ty, out);
            }
        }
        if (out != null) {
            // world x and y axes seen from the object: rows 0 and 1 of R
            out.addForce(ax, ay, az, r[0] * gx + r[3] * gy, r[1] * gx + r[4] * gy, r[2] * gx + r[5] * gy);
            if (wantHessian) {
                addShear(r, ax, ay, az, hxx, hxy, hyy, out);
            }
        }
        return energy;
    }

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
        if (!out.slipping) {
            out.slipping = true;
            java.util.Arrays.fill(out.c, 0);
        }
        double ox = factor * (r[0] * tx + r[3] * ty);
        double oy = factor * (r[1] * tx + r[4] * ty);
        double oz = factor * (r[2] * tx + r[5] * ty);
        double nx = r[6];
        double ny = r[7];
        double nz = r[8];
        double n3 = sy * nz - sz * ny;
        double n4 = sz * nx - sx * nz;
        double n5 = sx * ny - sy * nx;
        addRow(out.c, 0, ox, nx, ny, nz, n3, n4, n5);
        addRow(out.c, 6, oy, nx, ny, nz, n3, n4, n5);
        addRow(out.c, 12, oz, nx, ny, nz, n3, n4, n5);
        addRow(out.c, 18, ay * oz - az * oy, nx, ny, nz, n3, n4, n5);
        addRow(out.c, 24, az * ox - ax * oz, nx, ny, nz, n3, n4, n5);
        addRow(out.c, 30, ax * oy - ay * ox, nx, ny, nz, n3, n4, n5);
    }

    private static void addRow(
            double[] c, int at, double t, double n0, double n1, double n2, double n3, double n4, double n5) {
        c[at] += t * n0;
        c[at + 1] += t * n1;
        c[at + 2] += t * n2;
        c[at + 3] += t * n3;
        c[at + 4] += t * n4;
        c[at + 5] += t * n5;
    }

    /**
     * A site that moves over the surface as the object turns flattens the energy less than a fixed point would: with
     * D = ds/dm the extra term is -f (m x w)^T D (m x w). For the lowest place of a circle D = -(b/across) t t^T.
     */
    private void addRimCurvature(int i, double f, double mx, double my, double mz, Block out) {
        TableSupport.Rim rim = support.rims().get(feature[i]);
        Vec3 a = rim.axis();
        double ma = mx * a.x() + my * a.y() + mz * a.z();
        double across = Math.sqrt(Math.max(1e-12, 1 - ma * ma));
        double ux = (mx - ma * a.x()) / across;
        double uy = (my - ma * a.y()) / across;
        double uz = (mz - ma * a.z()) / across;
        double tx = a.y() * uz - a.z() * uy;
        double ty = a.z() * ux - a.x() * uz;
        double tz = a.x() * uy - a.y() * ux;
        // t . (m x w) = w . (t x m)
        double vx = ty * mz - tz * my;
        double vy = tz * mx - tx * mz;
        double vz = tx * my - ty * mx;
        addTurn(f * rim.radius() / across, vx, vy, vz, out);
    }

    /** D = -(1/size) (Q - Q m m^T Q / size^2), Q = A diag(semi-axes^2) A^T, as three rank-one terms of Q. */
    private void addEllipsoidCurvature(int i, double f, double mx, double my, double mz, Block out) {
        TableSupport.Ellipsoidal e = support.ellipsoids().get(feature[i]);
        double dx = spread(e, 0, mx, my, mz);
        double dy = spread(e, 1, mx, my, mz);
        double dz = spread(e, 2, mx, my, mz);
        double size2 = mx * dx + my * dy + mz * dz;
        double size = Math.sqrt(size2);
        for (int c = 0; c < 3; c++) {
            Vec3 q = e.axes().column(c);
            double semi = c == 0
                    ? e.semiAxes().x()
                    : c == 1 ? e.semiAxes().y() : e.semiAxes().z();
            addTurn(
                    f * semi * semi / size,
                    q.y() * mz - q.z() * my,
                    q.z() * mx - q.x() * mz,
                    q.x() * my - q.y() * mx,
                    out);
        }
        addTurn(-f / (size * size2), dy * mz - dz * my, dz * mx - dx * mz, dx * my - dy * mx, out);
    }

    /** Adds factor v v^T to the rotation block of G (upper triangle). */
    private static void addTurn(double factor, double vx, double vy, double vz, Block out) {
        out.g[21] += factor * vx * vx;
        out.g[22] += factor * vx * vy;
        out.g[23] += factor * vx * vz;
        out.g[28] += factor * vy * vy;
        out.g[29] += factor * vy * vz;
        out.g[35] += factor * vz * vz;
    }

    /** Ends a step: return mapping of the anchors, choice of the sites for the next step. */
    public void commit(double[] r, double[] p, double table) {
        chooseRims(r);
        for (int i = 0; i < n; i++) {
            if (!inUse(i)) {
                sticks[i] = false;
                limitForce[i] = 0;
                force[i] = 0;
                continue;
            }
            place(i, r[6], r[7], r[8]);
            double depth = table + radius[i] - (p[2] + r[6] * sx + r[7] * sy + r[8] * sz);
            if (depth <= 0) {
                sticks[i] = false;
                limitForce[i] = 0;
                force[i] = 0;
                continue;
            }
            double f = depth < TOE ? 0.5 * STIFFNESS * depth * depth / TOE : STIFFNESS * (depth - 0.5 * TOE);
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
            double bx = sx - radius[i] * r[6];
            double by = sy - radius[i] * r[7];
            double bz = sz - radius[i] * r[8];
            material[3 * i] = bx;
            material[3 * i + 1] = by;
            material[3 * i + 2] = bz;
            stickX[i] = p[0] + r[0] * bx + r[1] * by + r[2] * bz - ux;
            stickY[i] = p[1] + r[3] * bx + r[4] * by + r[5] * bz - uy;
            sticks[i] = true;
            force[i] = f;
            limitForce[i] = f;
        }
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
        return new boolean[][] {rimStands, sticks};
    }
}
