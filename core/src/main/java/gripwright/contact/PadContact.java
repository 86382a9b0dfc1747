package gripwright.contact;

import gripwright.math.Memory;
import gripwright.shape.Shape;
import java.util.Arrays;

/**
 * Pads and bones of the hand against the object, with friction that remembers where each point sticks.
 *
 * <p>Everything is computed in the object's frame from y, the point's place there. Per point: a normal force by
 * {@link NormalLaw} with a toe of {@link #TOE}, along the gradient of the shape's distance, and {@link PadFriction}.
 * Points that cannot have come near since the last commit are left out ({@link Clearance}). Workspace of one thread and
 * one object.
 */
public final class PadContact {
    /** Penetration over which a point's stiffness builds up [m]; makes the energy twice differentiable. */
    static final double TOE = 1e-4;

    private final PadPoints points;
    private final Shape shape;
    private final double[] place;
    private final double[] radius;
    private final double[] normalStiffness;
    private final PadFriction friction;
    private final double[] force;
    private final double[] area;
    private final double[] bodyForce;
    private double peakPressure;
    private final Clearance clearance;
    private final NearPoints near;
    private final boolean[] rowRemembers;
    private final PointTerms terms = new PointTerms();
    private final double[] gradient = new double[3];
    private final double[] hessian = new double[6];

    public PadContact(PadPoints points, Shape shape) {
        this.points = points;
        this.shape = shape;
        int n = points.points().size();
        place = points.place;
        radius = points.radius;
        normalStiffness = new double[n];
        friction = new PadFriction(n);
        force = new double[n];
        area = points.points().stream().mapToDouble(PadPoints.Point::area).toArray();
        bodyForce = new double[points.bodies];
        clearance = new Clearance(points);
        near = new NearPoints(points, clearance);
        rowRemembers = new boolean[points.rows];
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
            friction.reset(i, coefficient[points.surfaceOf[i]], p.shearStiffness() * factor);
            force[i] = 0;
        }
        Arrays.fill(rowRemembers, false);
        clearance.reset();
    }

    private void forget(int point) {
        friction.forget(point);
        force[point] = 0;
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
        return friction.coefficient(point);
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
        double energy = 0;
        int n = near.locate(body, r, t);
        for (int i = 0; i < n; i++) {
            int p = near.point[i];
            double depth = depth(i);
            double k = normalStiffness[p];
            if (renew) {
                friction.press(p, depth > 0 ? NormalLaw.force(k, TOE, depth) : 0);
            }
            energy += (depth > 0 ? NormalLaw.energy(k, TOE, depth) : 0)
                    + friction.energy(p, near.x[i], near.y[i], near.z[i]);
        }
        return energy;
    }

    /** How deep the i-th of the near points lies in the object [m]; 0 or less = apart. */
    private double depth(int i) {
        return radius[near.point[i]] - shape.distance(near.x[i], near.y[i], near.z[i]);
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
        double energy = 0;
        int n = near.locate(body, r, t);
        for (int i = 0; i < n; i++) {
            int p = near.point[i];
            double depth = depth(i);
            if (depth <= 0) {
                if (renew) {
                    friction.press(p, 0);
                }
                if (!friction.holds(p)) {
                    continue;
                }
            }
            energy += addPoint(p, near.x[i], near.y[i], near.z[i], depth, renew, wantHessian, out);
        }
        return energy;
    }

    /** One active point: normal law, then friction. */
    private double addPoint(
            int p, double x, double y, double z, double depth, boolean renew, boolean wantHessian, Block out) {
        if (!out.active) {
            out.start(wantHessian);
        }
        double energy = 0;
        double k = 0;
        if (depth > 0) {
            k = NormalLaw.stiffness(normalStiffness[p], TOE, depth);
            double f = NormalLaw.force(normalStiffness[p], TOE, depth);
            energy = NormalLaw.energy(normalStiffness[p], TOE, depth);
            if (renew) {
                friction.press(p, f);
            }
            shape.derivatives(x, y, z, gradient, hessian);
            terms.press(f, k, gradient, hessian, wantHessian);
        } else {
            terms.clear();
        }
        energy += friction.add(p, x, y, z, wantHessian, terms);
        out.addForce(x, y, z, terms.gx, terms.gy, terms.gz);
        if (wantHessian) {
            out.addStiffness(x, y, z, terms.sxx, terms.sxy, terms.sxz, terms.syy, terms.syz, terms.szz);
            if (friction.slid && depth > 0) {
                // the friction limit falls as the point backs off: d(mu f)/dy = -mu k n
                double c = -friction.coefficient(p) * k;
                double tx = c * friction.tx;
                double ty = c * friction.ty;
                double tz = c * friction.tz;
                out.addSlip(x, y, z, tx, ty, tz, x, y, z, gradient[0], gradient[1], gradient[2]);
            }
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
        double worst = 0;
        int n = near.list(body, r, t);
        for (int i = 0; i < n; i++) {
            int p = near.point[i];
            double room = clearance.point[p];
            double moved = clearance.centreMotion(body, r, t, place[3 * p], place[3 * p + 1], place[3 * p + 2]);
            if (room <= 0) {
                worst = Math.max(worst, moved / slide);
            } else if (moved > room) {
                near.place(i, body, r, t);
                worst = Math.max(worst, Math.max(depth(i) / sink, (moved - room) / (4 * slide)));
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
        double clear = room(body, r, t, points.bodyCentre, points.bodyRadius, body);
        if (clear > Clearance.NEAR) {
            clearance.body[body] = clear;
            for (int row = points.bodyRow[body]; row < points.bodyRow[body + 1]; row++) {
                clearRow(row, clear);
            }
            return;
        }
        double least = Double.POSITIVE_INFINITY;
        for (int row = points.bodyRow[body]; row < points.bodyRow[body + 1]; row++) {
            double room = room(body, r, t, points.rowCentre, points.rowRadius, row);
            if (room > Clearance.NEAR) {
                clearRow(row, room);
            } else {
                room = commitRow(body, row, r, t);
            }
            least = Math.min(least, room);
        }
        clearance.body[body] = least;
    }

    /** Room between the object and the i-th of some spheres in a body's frame [m]. */
    private double room(int body, double[] r, double[] t, double[] centre, double[] sphere, int i) {
        int b9 = 9 * body;
        int b3 = 3 * body;
        double px = centre[3 * i];
        double py = centre[3 * i + 1];
        double pz = centre[3 * i + 2];
        return shape.distance(
                        r[b9] * px + r[b9 + 1] * py + r[b9 + 2] * pz + t[b3],
                        r[b9 + 3] * px + r[b9 + 4] * py + r[b9 + 5] * pz + t[b3 + 1],
                        r[b9 + 6] * px + r[b9 + 7] * py + r[b9 + 8] * pz + t[b3 + 2])
                - sphere[i];
    }

    /** A row that is far from the object; its points forget, if there is anything to forget. */
    private void clearRow(int row, double room) {
        if (rowRemembers[row]) {
            for (int p = points.rowPoint[row]; p < points.rowPoint[row + 1]; p++) {
                forget(p);
            }
            rowRemembers[row] = false;
        }
        clearance.setRow(row, room);
    }

    private double commitRow(int body, int row, double[] r, double[] t) {
        double least = Double.POSITIVE_INFINITY;
        boolean remembers = false;
        int n = near.locateRow(body, row, r, t);
        for (int i = 0; i < n; i++) {
            int p = near.point[i];
            double depth = depth(i);
            clearance.point[p] = -depth;
            least = Math.min(least, -depth);
            if (depth <= 0) {
                forget(p);
            } else {
                force[p] = NormalLaw.force(normalStiffness[p], TOE, depth);
                shape.derivatives(near.x[i], near.y[i], near.z[i], gradient, hessian);
                friction.remember(p, near.x[i], near.y[i], near.z[i], force[p], gradient);
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

    /**
     * Force of a point on the object after a commit, in the object's frame.
     *
     * @param out shape 6: normal direction into the object (3), tangential force on the object [N] (3)
     */
    public void forceOnObject(int p, double[] r, double[] t, int body, double[] out) {
        double[] y = new double[3];
        for (int i = 0; i < 3; i++) {
            int row = 9 * body + 3 * i;
            y[i] = r[row] * place[3 * p]
                    + r[row + 1] * place[3 * p + 1]
                    + r[row + 2] * place[3 * p + 2]
                    + t[3 * body + i];
        }
        friction.onObject(p, y, out);
    }

    /**
     * Normal forces of a body's points at a pose within a step that is not ended.
     *
     * @param r and
     * @param t as in {@link #accumulate}
     * @param out force of each of the body's points [N], from index 0
     * @return false if none touches; out is of no use then
     */
    public boolean forcesAt(int body, double[] r, double[] t, double[] out) {
        int n = near.locate(body, r, t);
        if (n == 0) {
            return false;
        }
        int first = points.firstPoint(body);
        Arrays.fill(out, 0, points.firstPoint(body + 1) - first, 0);
        boolean any = false;
        for (int i = 0; i < n; i++) {
            double depth = depth(i);
            if (depth > 0) {
                int p = near.point[i];
                out[p - first] = NormalLaw.force(normalStiffness[p], TOE, depth);
                any = true;
            }
        }
        return any;
    }

    /** True if a pressed point has no friction left: its shear is at the limit, at the last commit. */
    public boolean slides(int p, double[] r, double[] t, int body) {
        double[] f = new double[6];
        forceOnObject(p, r, t, body, f);
        double limit = friction.coefficient(p) * force[p];
        return f[3] * f[3] + f[4] * f[4] + f[5] * f[5] >= limit * limit * (1 - 1e-6);
    }

    /** Changes every coefficient of friction by a factor [-] until the next {@link #recall} or {@link #reset}. */
    public void scaleFriction(double factor) {
        friction.scale(factor);
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
        double[][] rub = friction.numbers();
        return new double[][] {
            {peakPressure}, rub[0], rub[1], force, bodyForce, room[0], room[1], room[2], room[3], room[4]
        };
    }

    private boolean[][] flags() {
        return new boolean[][] {friction.flags(), rowRemembers};
    }
}
