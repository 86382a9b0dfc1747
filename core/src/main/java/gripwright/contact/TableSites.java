package gripwright.contact;

import gripwright.math.Rotation;
import gripwright.math.Vec3;
import gripwright.shape.TableSupport;
import java.util.ArrayList;
import java.util.List;

/**
 * Where an object can stand on a plane: sites, each a small sphere in the object's frame.
 *
 * <p>Corners and ball ends are sites fixed in the object. The circular edge of a standing body carries many fixed
 * sites; once it is tilted or lies, its single lowest place takes over, which moves round the circle as the body rolls,
 * so there are no facets. An ellipsoid has one moving site. The up direction in the object's frame is m = R^T e_z, the
 * third row of its rotation. Workspace.
 */
final class TableSites {
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

    /** Number of sites, in use or not. */
    final int n;

    private final Kind[] kind;
    private final boolean[] moves;
    private final int[] feature;
    private final double[] centre;
    /** Of each site's small sphere [m]. */
    final double[] radius;

    private final TableSupport support;
    private final boolean[] rimStands;
    /** Centre of the small sphere that {@link #place} found [m]. */
    double sx;

    double sy;
    double sz;

    TableSites(TableSupport support) {
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
        moves = new boolean[n];
        feature = new int[n];
        centre = new double[3 * n];
        radius = new double[n];
        for (int i = 0; i < n; i++) {
            Site s = sites.get(i);
            kind[i] = s.kind;
            moves[i] = s.kind == Kind.RIM_LOWEST || s.kind == Kind.ELLIPSOID;
            feature[i] = s.feature;
            radius[i] = s.radius;
            centre[3 * i] = s.centre.x();
            centre[3 * i + 1] = s.centre.y();
            centre[3 * i + 2] = s.centre.z();
        }
        rimStands = new boolean[support.rims().size()];
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

    /** Which circular edges stand at this rotation: their fixed sites are used then, else their lowest place. */
    void chooseRims(double[] r) {
        for (int i = 0; i < rimStands.length; i++) {
            Vec3 a = support.rims().get(i).axis();
            rimStands[i] = Math.abs(r[6] * a.x() + r[7] * a.y() + r[8] * a.z()) > STANDING;
        }
    }

    boolean inUse(int i) {
        return switch (kind[i]) {
            case ON_RIM -> rimStands[feature[i]];
            case RIM_LOWEST -> !rimStands[feature[i]];
            default -> true;
        };
    }

    /** Centre of the site's small sphere for the up direction (mx, my, mz), into sx, sy, sz. */
    void place(int i, double mx, double my, double mz) {
        sx = centre[3 * i];
        sy = centre[3 * i + 1];
        sz = centre[3 * i + 2];
        if (moves[i]) {
            move(i, mx, my, mz);
        }
    }

    private void move(int i, double mx, double my, double mz) {
        if (kind[i] == Kind.RIM_LOWEST) {
            TableSupport.Rim rim = support.rims().get(feature[i]);
            Vec3 a = rim.axis();
            double ma = mx * a.x() + my * a.y() + mz * a.z();
            double across = Math.sqrt(Math.max(1e-12, 1 - ma * ma));
            double b = rim.radius() / across;
            sx -= b * (mx - ma * a.x());
            sy -= b * (my - ma * a.y());
            sz -= b * (mz - ma * a.z());
        } else {
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
        Rotation a = e.axes();
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
     * A site that moves over the surface as the object turns flattens the energy less than a fixed point would: with
     * D = ds/dm the extra second derivative for turns w is -f (m x w)^T D (m x w).
     *
     * @param f force on the site [N]
     * @param out its G gets the term
     */
    void addCurvature(int i, double f, double mx, double my, double mz, Block out) {
        if (kind[i] == Kind.RIM_LOWEST) {
            addRimCurvature(support.rims().get(feature[i]), f, mx, my, mz, out);
        } else if (kind[i] == Kind.ELLIPSOID) {
            addEllipsoidCurvature(support.ellipsoids().get(feature[i]), f, mx, my, mz, out);
        }
    }

    /** For the lowest place of a circle D = -(b/across) t t^T. */
    private static void addRimCurvature(TableSupport.Rim rim, double f, double mx, double my, double mz, Block out) {
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
    private static void addEllipsoidCurvature(
            TableSupport.Ellipsoidal e, double f, double mx, double my, double mz, Block out) {
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

    /** Which edges stand, for a snapshot. */
    boolean[] flags() {
        return rimStands;
    }
}
