package gripwright.contact;

import gripwright.math.Memory;
import gripwright.shape.Shape;

/**
 * Pads and bones of the hand against the object, with friction that remembers where each point sticks.
 *
 * <p>Everything is computed in the object's frame from y, the point's place there. Normal force per point: elastic
 * foundation f = k d with a quadratic toe of {@link #TOE} (f = k d^2 / (2 toe) below it, k (d - toe/2) above). Friction:
 * shear spring of stiffness kt from a remembered anchor, limited to mu f (elastic-plastic with return mapping, as in
 * J. C. Simo, T. J. R. Hughes, "Computational Inelasticity", 1998, from memory). Workspace of one thread and one object.
 */
public final class PadContact {
    /** Penetration over which a point's stiffness builds up [m]; makes the energy twice differentiable. */
    static final double TOE = 1e-4;

    private static final int MEMORY = 7;

    private final PadPoints points;
    private final Shape shape;
    private final double[] place;
    private final double[] radius;
    private final double[] normalStiffness;
    private final double[] shearStiffness;
    private final double[] friction;
    /** Per point: anchor (3), tangent normal (3), normal force the friction limit is taken from (1). */
    private final double[] memory;

    private final boolean[] sticks;
    private final double[] force;
    private final double[] area;
    private final double[] bodyForce;
    private double peakPressure;
    private final Clearance clearance;
    private final boolean[] rowRemembers;
    private final boolean[] bodyRemembers;
    private final double[] gradient = new double[3];
    private final double[] hessian = new double[6];

    public PadContact(PadPoints points, Shape shape) {
        this.points = points;
        this.shape = shape;
        int n = points.points().size();
        place = points.place;
        radius = points.radius;
        normalStiffness = new double[n];
        shearStiffness = new double[n];
        friction = new double[n];
        memory = new double[MEMORY * n];
        sticks = new boolean[n];
        force = new double[n];
        area = points.points().stream().mapToDouble(PadPoints.Point::area).toArray();
        bodyForce = new double[points.bodies];
        clearance = new Clearance(points);
        rowRemembers = new boolean[points.rows];
        bodyRemembers = new boolean[points.bodies];
    }

    /**
     * Forgets all contact and sets what differs from run to run.
     *
     * @param coefficient friction coefficient [-] of each surface, in the order of {@link PadPoints#surfaces()}
     * @param stiffnessFactor on the pads' normal and shear stiffness [-]
     */
    public void reset(double[] coefficient, double stiffnessFactor) {
        for (int i = 0; i < force.length; i++) {
            PadPoints.Point p = points.points().get(i);
            double factor = p.pad() ? stiffnessFactor : 1;
            normalStiffness[i] = p.normalStiffness() * factor;
            shearStiffness[i] = p.shearStiffness() * factor;
            friction[i] = coefficient[points.surfaceOf[i]];
            forget(i);
        }
        java.util.Arrays.fill(rowRemembers, false);
        java.util.Arrays.fill(bodyRemembers, false);
        clearance.reset();
    }

    private void forget(int point) {
        sticks[point] = false;
        force[point] = 0;
        memory[MEMORY * point + 6] = 0;
    }

    /** Normal force of a point at the last commit [N]. */
    public double force(int point) {
        return force[point];
    }

    /** Total normal force of a body at the last commit [N]. */
    public double bodyForce(int body) {
        return bodyForce[body];
    }

    /** Greatest pressure under any pad point at the last commit [Pa]. */
    public double peakPressure() {
        return peakPressure;
    }

    /** Friction coefficient used at a point [-]. */
    public double friction(int point) {
        return friction[point];
    }

    /** Normal stiffness used at a point [N/m]. */
    public double normalStiffness(int point) {
        return normalStiffness[point];
    }

    // ------------------------------------------------------------------ one step

    /**
     * Energy of a body's contacts alone, with the friction limits frozen (for a line search) or taken anew.
     *
     * @param r rotation of all bodies in the object's frame, row-major, 9 per body
     * @param t origin of all bodies in the object's frame [m], 3 per body
     */
    public double energy(int body, double[] r, double[] t, boolean renew) {
        double motion = clearance.bodyMotion(body, r, t);
        if (motion < clearance.body[body]) {
            return 0;
        }
        double turn = clearance.turnMotion(body, r);
        double energy = 0;
        int b9 = 9 * body;
        int b3 = 3 * body;
        double[] x = place;
        for (int row = points.bodyRow[body]; row < points.bodyRow[body + 1]; row++) {
            if (clearance.rowIsClear(body, row, motion, turn, r, t)) {
                continue;
            }
            for (int p = points.rowPoint[row]; p < points.rowPoint[row + 1]; p++) {
                double px = x[3 * p];
                double py = x[3 * p + 1];
                double pz = x[3 * p + 2];
                double yx = r[b9] * px + r[b9 + 1] * py + r[b9 + 2] * pz + t[b3];
                double yy = r[b9 + 3] * px + r[b9 + 4] * py + r[b9 + 5] * pz + t[b3 + 1];
                double yz = r[b9 + 6] * px + r[b9 + 7] * py + r[b9 + 8] * pz + t[b3 + 2];
                energy += pointEnergy(p, yx, yy, yz, renew);
            }
        }
        return energy;
    }

    private double pointEnergy(int p, double yx, double yy, double yz, boolean renew) {
        int m = MEMORY * p;
        double energy = 0;
        double depth = radius[p] - shape.distance(yx, yy, yz);
        if (depth > 0) {
            double k = normalStiffness[p];
            double f;
            if (depth < TOE) {
                f = 0.5 * k * depth * depth / TOE;
                energy = f * depth / 3;
            } else {
                f = k * (depth - 0.5 * TOE);
                energy = k * (0.5 * depth * depth - 0.5 * depth * TOE + TOE * TOE / 6);
            }
            if (renew) {
                memory[m + 6] = f;
            }
        } else if (renew) {
            memory[m + 6] = 0;
        }
        double limit = friction[p] * memory[m + 6];
        if (!sticks[p] || limit <= 0) {
            return energy;
        }
        double ux = yx - memory[m];
        double uy = yy - memory[m + 1];
        double uz = yz - memory[m + 2];
        double un = ux * memory[m + 3] + uy * memory[m + 4] + uz * memory[m + 5];
        double u2 = Math.max(0, ux * ux + uy * uy + uz * uz - un * un);
        double kt = shearStiffness[p];
        if (kt * kt * u2 <= limit * limit) {
            return energy + 0.5 * kt * u2;
        }
        return energy + limit * Math.sqrt(u2) - 0.5 * limit * limit / kt;
    }

    /**
     * Energy, gradient and second derivative of a body's contacts, summed into {@code out}.
     *
     * @param r as in {@link #energy}
     * @param renew take the friction limits from the present normal forces
     * @param wantHessian also G and the slip coupling C
     */
    public double accumulate(int body, double[] r, double[] t, boolean renew, boolean wantHessian, Block out) {
        out.clear();
        double motion = clearance.bodyMotion(body, r, t);
        if (motion < clearance.body[body]) {
            return 0;
        }
        double turn = clearance.turnMotion(body, r);
        double energy = 0;
        int b9 = 9 * body;
        int b3 = 3 * body;
        double[] x = place;
        for (int row = points.bodyRow[body]; row < points.bodyRow[body + 1]; row++) {
            if (clearance.rowIsClear(body, row, motion, turn, r, t)) {
                continue;
            }
            for (int p = points.rowPoint[row]; p < points.rowPoint[row + 1]; p++) {
                double px = x[3 * p];
                double py = x[3 * p + 1];
                double pz = x[3 * p + 2];
                double yx = r[b9] * px + r[b9 + 1] * py + r[b9 + 2] * pz + t[b3];
                double yy = r[b9 + 3] * px + r[b9 + 4] * py + r[b9 + 5] * pz + t[b3 + 1];
                double yz = r[b9 + 6] * px + r[b9 + 7] * py + r[b9 + 8] * pz + t[b3 + 2];
                double depth = radius[p] - shape.distance(yx, yy, yz);
                if (depth <= 0) {
                    if (renew) {
                        memory[MEMORY * p + 6] = 0;
                    }
                    if (!sticks[p] || memory[MEMORY * p + 6] <= 0) {
                        continue;
                    }
                }
                energy += addPoint(p, yx, yy, yz, depth, renew, wantHessian, out);
            }
        }
        return energy;
    }

    /** One active point: normal law, then friction; S = [hxx hxy hxz; . hyy hyz; . . hzz]. */
    private double addPoint(
            int p, double yx, double yy, double yz, double depth, boolean renew, boolean wantHessian, Block out) {
        if (!out.active) {
            out.start(wantHessian);
        }
        int m = MEMORY * p;
        double energy = 0;
        double gx = 0;
        double gy = 0;
        double gz = 0;
        double hxx = 0;
        double hxy = 0;
        double hxz = 0;
        double hyy = 0;
        double hyz = 0;
        double hzz = 0;
        double nx = 0;
        double ny = 0;
        double nz = 0;
        double k = 0;
        if (depth > 0) {
            k = normalStiffness[p];
            double f;
            if (depth < TOE) {
                f = 0.5 * k * depth * depth / TOE;
                energy = f * depth / 3;
                k *= depth / TOE;
            } else {
                f = k * (depth - 0.5 * TOE);
                energy = k * (0.5 * depth * depth - 0.5 * depth * TOE + TOE * TOE / 6);
            }
            if (renew) {
                memory[m + 6] = f;
            }
            shape.derivatives(yx, yy, yz, gradient, hessian);
            nx = gradient[0];
            ny = gradient[1];
            nz = gradient[2];
            gx = -f * nx;
            gy = -f * ny;
            gz = -f * nz;
            if (wantHessian) {
                hxx = k * nx * nx - f * hessian[0];
                hxy = k * nx * ny - f * hessian[1];
                hxz = k * nx * nz - f * hessian[2];
                hyy = k * ny * ny - f * hessian[3];
                hyz = k * ny * nz - f * hessian[4];
                hzz = k * nz * nz - f * hessian[5];
            }
        }
        double limit = friction[p] * memory[m + 6];
        if (sticks[p] && limit > 0) {
            double mx = memory[m + 3];
            double my = memory[m + 4];
            double mz = memory[m + 5];
            double ux = yx - memory[m];
            double uy = yy - memory[m + 1];
            double uz = yz - memory[m + 2];
            double un = ux * mx + uy * my + uz * mz;
            ux -= un * mx;
            uy -= un * my;
            uz -= un * mz;
            double u2 = ux * ux + uy * uy + uz * uz;
            double kt = shearStiffness[p];
            if (kt * kt * u2 <= limit * limit) {
                energy += 0.5 * kt * u2;
                gx += kt * ux;
                gy += kt * uy;
                gz += kt * uz;
                if (wantHessian) {
                    hxx += kt - kt * mx * mx;
                    hxy -= kt * mx * my;
                    hxz -= kt * mx * mz;
                    hyy += kt - kt * my * my;
                    hyz -= kt * my * mz;
                    hzz += kt - kt * mz * mz;
                }
            } else {
                double u = Math.sqrt(u2);
                energy += limit * u - 0.5 * limit * limit / kt;
                double tx = ux / u;
                double ty = uy / u;
                double tz = uz / u;
                gx += limit * tx;
                gy += limit * ty;
                gz += limit * tz;
                if (wantHessian) {
                    double w = limit / u;
                    hxx += w * (1 - mx * mx - tx * tx);
                    hxy -= w * (mx * my + tx * ty);
                    hxz -= w * (mx * mz + tx * tz);
                    hyy += w * (1 - my * my - ty * ty);
                    hyz -= w * (my * mz + ty * tz);
                    hzz += w * (1 - mz * mz - tz * tz);
                    if (depth > 0) {
                        // the friction limit falls as the point backs off: d(mu f)/dy = -mu k n
                        double c = -friction[p] * k;
                        out.addSlip(yx, yy, yz, c * tx, c * ty, c * tz, nx, ny, nz);
                    }
                }
            }
        }
        out.addForce(yx, yy, yz, gx, gy, gz);
        if (wantHessian) {
            out.addStiffness(yx, yy, yz, hxx, hxy, hxz, hyy, hyz, hzz);
        }
        return energy;
    }

    // ------------------------------------------------------------------ step control and memory

    /**
     * How much too far the step went for the worst point of a body: above 1 it should be shorter.
     *
     * @param slide motion allowed to a point in contact [m]
     * @param sink penetration allowed to a point that was free [m]
     */
    public double stepRatio(int body, double[] r, double[] t, double slide, double sink) {
        double motion = clearance.bodyMotion(body, r, t);
        if (motion < clearance.body[body]) {
            return 0;
        }
        double turn = clearance.turnMotion(body, r);
        double worst = 0;
        int b9 = 9 * body;
        int b3 = 3 * body;
        for (int row = points.bodyRow[body]; row < points.bodyRow[body + 1]; row++) {
            if (clearance.rowIsClear(body, row, motion, turn, r, t)) {
                continue;
            }
            for (int p = points.rowPoint[row]; p < points.rowPoint[row + 1]; p++) {
                double px = place[3 * p];
                double py = place[3 * p + 1];
                double pz = place[3 * p + 2];
                double moved = clearance.centreMotion(body, r, t, px, py, pz);
                if (clearance.point[p] <= 0) {
                    worst = Math.max(worst, moved / slide);
                } else if (moved > clearance.point[p]) {
                    double yx = r[b9] * px + r[b9 + 1] * py + r[b9 + 2] * pz + t[b3];
                    double yy = r[b9 + 3] * px + r[b9 + 4] * py + r[b9 + 5] * pz + t[b3 + 1];
                    double yz = r[b9 + 6] * px + r[b9 + 7] * py + r[b9 + 8] * pz + t[b3 + 2];
                    double depth = radius[p] - shape.distance(yx, yy, yz);
                    worst = Math.max(worst, Math.max(depth / sink, (moved - clearance.point[p]) / (4 * slide)));
                }
            }
        }
        return worst;
    }

    /** Ends a step at the given poses: return mapping of the anchors, forces, clearances for the next step. */
    public void commit(double[] r, double[] t) {
        clearance.start(r, t);
        peakPressure = 0;
        for (int body = 0; body < points.bodies; body++) {
            bodyForce[body] = 0;
            if (points.bodyRow[body] == points.bodyRow[body + 1]) {
                clearance.body[body] = Double.POSITIVE_INFINITY;
                continue;
            }
            commitBody(body, r, t);
        }
    }

    private void commitBody(int body, double[] r, double[] t) {
        double[] c = points.bodyCentre;
        double clear = distanceOf(body, r, t, c[3 * body], c[3 * body + 1], c[3 * body + 2]) - points.bodyRadius[body];
        if (clear > Clearance.NEAR) {
            clearance.body[body] = clear;
            if (bodyRemembers[body]) {
                for (int row = points.bodyRow[body]; row < points.bodyRow[body + 1]; row++) {
                    clearRow(row, clear);
                }
                bodyRemembers[body] = false;
            }
            for (int row = points.bodyRow[body]; row < points.bodyRow[body + 1]; row++) {
                clearance.setRow(row, clear);
            }
            return;
        }
        double least = Double.POSITIVE_INFINITY;
        boolean remembers = false;
        for (int row = points.bodyRow[body]; row < points.bodyRow[body + 1]; row++) {
            double[] rc = points.rowCentre;
            double room = distanceOf(body, r, t, rc[3 * row], rc[3 * row + 1], rc[3 * row + 2]) - points.rowRadius[row];
            if (room > Clearance.NEAR) {
                if (rowRemembers[row]) {
                    clearRow(row, room);
                }
                clearance.setRow(row, room);
            } else {
                room = commitRow(body, row, r, t);
            }
            remembers |= rowRemembers[row];
            least = Math.min(least, room);
        }
        clearance.body[body] = least;
        bodyRemembers[body] = remembers;
    }

    private double distanceOf(int body, double[] r, double[] t, double px, double py, double pz) {
        int b9 = 9 * body;
        int b3 = 3 * body;
        return shape.distance(
                r[b9] * px + r[b9 + 1] * py + r[b9 + 2] * pz + t[b3],
                r[b9 + 3] * px + r[b9 + 4] * py + r[b9 + 5] * pz + t[b3 + 1],
                r[b9 + 6] * px + r[b9 + 7] * py + r[b9 + 8] * pz + t[b3 + 2]);
    }

    private void clearRow(int row, double room) {
        for (int p = points.rowPoint[row]; p < points.rowPoint[row + 1]; p++) {
            forget(p);
        }
        rowRemembers[row] = false;
        clearance.row[row] = room;
    }

    private double commitRow(int body, int row, double[] r, double[] t) {
        int b9 = 9 * body;
        int b3 = 3 * body;
        double least = Double.POSITIVE_INFINITY;
        boolean remembers = false;
        for (int p = points.rowPoint[row]; p < points.rowPoint[row + 1]; p++) {
            double px = place[3 * p];
            double py = place[3 * p + 1];
            double pz = place[3 * p + 2];
            double yx = r[b9] * px + r[b9 + 1] * py + r[b9 + 2] * pz + t[b3];
            double yy = r[b9 + 3] * px + r[b9 + 4] * py + r[b9 + 5] * pz + t[b3 + 1];
            double yz = r[b9 + 6] * px + r[b9 + 7] * py + r[b9 + 8] * pz + t[b3 + 2];
            double depth = radius[p] - shape.distance(yx, yy, yz);
            clearance.point[p] = -depth;
            least = Math.min(least, -depth);
            if (depth <= 0) {
                forget(p);
            } else {
                remember(p, yx, yy, yz, depth);
                bodyForce[body] += force[p];
                if (area[p] > 0 && force[p] > peakPressure * area[p]) {
                    peakPressure = force[p] / area[p];
                }
                remembers = true;
            }
        }
        clearance.row[row] = least;
        rowRemembers[row] = remembers;
        return least;
    }

    /** The tangent plane needs a normal of length 1; the gradient is shorter in blends and at edges. */
    private void unitNormal() {
        double[] g = gradient;
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

    /** Return mapping: the elastic slip is turned into the new tangent plane and cut to the friction limit. */
    private void remember(int p, double yx, double yy, double yz, double depth) {
        int m = MEMORY * p;
        double k = normalStiffness[p];
        double f = depth < TOE ? 0.5 * k * depth * depth / TOE : k * (depth - 0.5 * TOE);
        force[p] = f;
        memory[m + 6] = f;
        shape.derivatives(yx, yy, yz, gradient, hessian);
        unitNormal();
        double ux = 0;
        double uy = 0;
        double uz = 0;
        if (sticks[p]) {
            ux = yx - memory[m];
            uy = yy - memory[m + 1];
            uz = yz - memory[m + 2];
            double un = ux * gradient[0] + uy * gradient[1] + uz * gradient[2];
            ux -= un * gradient[0];
            uy -= un * gradient[1];
            uz -= un * gradient[2];
            double u = Math.sqrt(ux * ux + uy * uy + uz * uz);
            double most = friction[p] * f / shearStiffness[p];
            if (u > most) {
                double cut = most / u;
                ux *= cut;
                uy *= cut;
                uz *= cut;
            }
        }
        memory[m] = yx - ux;
        memory[m + 1] = yy - uy;
        memory[m + 2] = yz - uz;
        memory[m + 3] = gradient[0];
        memory[m + 4] = gradient[1];
        memory[m + 5] = gradient[2];
        sticks[p] = true;
    }

    /**
     * Force of a point on the object after a commit, in the object's frame.
     *
     * @param out shape 6: normal direction into the object (3), tangential force on the object [N] (3)
     */
    public void forceOnObject(int p, double[] r, double[] t, int body, double[] out) {
        int b9 = 9 * body;
        int b3 = 3 * body;
        double px = place[3 * p];
        double py = place[3 * p + 1];
        double pz = place[3 * p + 2];
        double[] y = {
            r[b9] * px + r[b9 + 1] * py + r[b9 + 2] * pz + t[b3],
            r[b9 + 3] * px + r[b9 + 4] * py + r[b9 + 5] * pz + t[b3 + 1],
            r[b9 + 6] * px + r[b9 + 7] * py + r[b9 + 8] * pz + t[b3 + 2]
        };
        for (int i = 0; i < 3; i++) {
            out[i] = -memory[MEMORY * p + 3 + i];
            // the gradient on the point is +kt u, so the object is dragged along by the same amount
            out[3 + i] = shearStiffness[p] * (y[i] - memory[MEMORY * p + i]);
        }
    }

    /**
     * Normal forces of a body's points at a pose within a step that is not ended.
     *
     * @param r and
     * @param t as in {@link #accumulate}
     * @param out force of each of the body's points [N], from index 0
     * @return false if none touches; out is untouched then
     */
    public boolean forcesAt(int body, double[] r, double[] t, double[] out) {
        double motion = clearance.bodyMotion(body, r, t);
        if (motion < clearance.body[body]) {
            return false;
        }
        double turn = clearance.turnMotion(body, r);
        int first = points.firstPoint(body);
        boolean any = false;
        for (int row = points.bodyRow[body]; row < points.bodyRow[body + 1]; row++) {
            boolean clear = clearance.rowIsClear(body, row, motion, turn, r, t);
            for (int p = points.rowPoint[row]; p < points.rowPoint[row + 1]; p++) {
                double depth = clear
                        ? 0
                        : radius[p] - distanceOf(body, r, t, place[3 * p], place[3 * p + 1], place[3 * p + 2]);
                double k = normalStiffness[p];
                out[p - first] = depth <= 0 ? 0 : depth < TOE ? 0.5 * k * depth * depth / TOE : k * (depth - 0.5 * TOE);
                any |= depth > 0;
            }
        }
        return any;
    }

    /** True if a pressed point has no friction left: its shear is at the limit, at the last commit. */
    public boolean slides(int p, double[] r, double[] t, int body) {
        double[] f = new double[6];
        forceOnObject(p, r, t, body, f);
        double limit = friction[p] * force[p];
        return f[3] * f[3] + f[4] * f[4] + f[5] * f[5] >= limit * limit * (1 - 1e-6);
    }

    /** Changes every coefficient of friction by a factor [-] until the next {@link #recall} or {@link #reset}. */
    public void scaleFriction(double factor) {
        for (int i = 0; i < friction.length; i++) {
            friction[i] *= factor;
        }
    }

    /** A copy of everything remembered since the last commit. */
    public Memory keep() {
        return Memory.of(numbers(), flags());
    }

    /** Puts back what {@link #keep} copied; stiffnesses stay as they are. */
    public void recall(Memory kept) {
        kept.into(numbers(), flags());
        peakPressure = kept.single(0);
    }

    private double[][] numbers() {
        double[][] room = clearance.numbers();
        return new double[][] {
            {peakPressure}, memory, force, bodyForce, friction, room[0], room[1], room[2], room[3], room[4]
        };
    }

    private boolean[][] flags() {
        return new boolean[][] {sticks, rowRemembers, bodyRemembers};
    }
}
