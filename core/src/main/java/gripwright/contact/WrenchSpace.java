package gripwright.contact;

import gripwright.math.SymmetricEigen;
import gripwright.math.Vec3;
import java.util.ArrayList;
import java.util.List;

/**
 * What a set of contacts could resist if each could press as it liked: the wrenches of unit total normal force, torque
 * divided by a length. Quality: radius of the largest ball round the origin inside their convex hull (C. Ferrari, J.
 * Canny, ICRA 1992, from memory). A hand with fewer motors than joints cannot choose its contact forces, so this only
 * ranks contact sets; it says nothing about strength.
 *
 * <p>With g = u_force + u_torque x r / length, contact i reaches h_i(u) = g . n + mu sqrt(|g_t|^2 + (e u_torque . n /
 * length)^2) in the direction u, e the radius of a soft contact that can also twist. The quality is the least of max_i
 * h_i over directions of length 1.
 */
public final class WrenchSpace {
    /** Edges by which a cone is replaced in the linearised bound. */
    public static final int EDGES = 8;

    private static final int MOST_ROUNDS = 60;
    private static final int CANDIDATES = 24;
    private static final double CONVERGED = 1e-11;

    /**
     * @param place from the reference point (the object's centre of mass) [m]
     * @param normal into the object, length 1
     * @param friction coefficient [-]
     * @param soft radius that turns normal force and friction into a twisting moment [m]; 0 = a point
     */
    public record Contact(Vec3 place, Vec3 normal, double friction, double soft) {}

    /**
     * @param length by which torques are divided [m]
     * @param exact quality with round friction cones [-]; 0 = not closed
     * @param linearised the same with cones of {@link #EDGES} edges, never above {@code exact}
     * @param edges of those cones
     * @param closed true if every small load in any direction can be resisted: force closure
     * @param contacts points counted
     * @param rank of the space of wrenches, 6 = all
     */
    public record Quality(
            double length, double exact, double linearised, int edges, boolean closed, int contacts, int rank) {}

    private final List<Contact> contacts;
    private final double length;

    /** @param length by which torques are divided, above 0 [m] */
    public WrenchSpace(List<Contact> contacts, double length) {
        this.contacts = List.copyOf(contacts);
        this.length = gripwright.check.Check.positive(length, "length that scales torques", "m");
    }

    public Quality quality() {
        if (contacts.isEmpty()) {
            return new Quality(length, 0, 0, EDGES, false, 0, 0);
        }
        int rank = rank();
        List<double[]> pool = edges(EDGES);
        WrenchHull hull = new WrenchHull(pool, 6);
        double linearised = rank < 6 ? 0 : hull.largestBall();
        double exact = rank < 6 ? 0 : refined(hull);
        return new Quality(length, exact, linearised, EDGES, exact > 0, contacts.size(), rank);
    }

    /** Quality with cones of so many edges. */
    public double linearised(int edgesPerCone) {
        return new WrenchHull(edges(edgesPerCone), 6).largestBall();
    }

    /**
     * From facet to facet: where a facet of the linearised hull is nearest, the true cones' own points in its direction are
     * added until they lie on it. A hull of points is inside the true one, the reach in any direction outside it, so both
     * enclose the answer.
     */
    private double refined(WrenchHull hull) {
        double best = Double.POSITIVE_INFINITY;
        for (double[] start : hull.nearestDirections(CANDIDATES)) {
            double[] u = start;
            double value = reach(u);
            for (int round = 0; round < MOST_ROUNDS; round++) {
                boolean added = false;
                double facet = hull.distance(u);
                for (Contact c : contacts) {
                    added |= hull.addIfBeyond(facet, support(c, u), u);
                }
                double[] next = hull.descend(u);
                double there = reach(next);
                boolean done = !added || Math.abs(there - hull.distance(next)) < CONVERGED;
                if (there < value) {
                    value = there;
                }
                u = next;
                if (done) {
                    break;
                }
            }
            best = Math.min(best, value);
        }
        return best > WrenchHull.NOT_CLOSED ? best : 0;
    }

    /** max_i h_i(u). */
    private double reach(double[] u) {
        double most = Double.NEGATIVE_INFINITY;
        for (Contact c : contacts) {
            double[] w = support(c, u);
            double dot = 0;
            for (int i = 0; i < 6; i++) {
                dot += w[i] * u[i];
            }
            most = Math.max(most, dot);
        }
        return most;
    }

    /** The wrench of one contact, unit normal force, that reaches farthest in the direction u. */
    private double[] support(Contact c, double[] u) {
        Vec3 force = new Vec3(u[0], u[1], u[2]);
        Vec3 torque = new Vec3(u[3], u[4], u[5]);
        Vec3 g = force.plus(torque.cross(c.place).times(1 / length));
        Vec3 n = c.normal;
        Vec3 gt = g.minus(n.times(g.dot(n)));
        double twist = c.soft * torque.dot(n) / length;
        double size = Math.sqrt(gt.dot(gt) + twist * twist);
        if (!(size > 1e-300)) {
            return wrench(c, n, 0);
        }
        return wrench(c, n.plus(gt.times(c.friction / size)), c.friction * c.soft * twist / size);
    }

    /** @param spin moment about the normal [m, of unit normal force] */
    private double[] wrench(Contact c, Vec3 force, double spin) {
        Vec3 torque = c.place.cross(force).plus(c.normal.times(spin)).times(1 / length);
        return new double[] {force.x(), force.y(), force.z(), torque.x(), torque.y(), torque.z()};
    }

    /** First edge along n x z (n x x if the normal is nearly vertical), the others evenly round; soft ones twist too. */
    private List<double[]> edges(int count) {
        List<double[]> out = new ArrayList<>();
        for (Contact c : contacts) {
            Vec3 n = c.normal;
            Vec3 t1 = n.cross(Math.abs(n.z()) >= 0.9 ? Vec3.X : Vec3.Z).unit();
            Vec3 t2 = n.cross(t1);
            for (int k = 0; k < count; k++) {
                double angle = 2 * Math.PI * k / count;
                Vec3 t = t1.times(StrictMath.cos(angle)).plus(t2.times(StrictMath.sin(angle)));
                out.add(wrench(c, n.plus(t.times(c.friction)), 0));
            }
            if (c.soft > 0) {
                out.add(wrench(c, n, c.friction * c.soft));
                out.add(wrench(c, n, -c.friction * c.soft));
            }
        }
        return out;
    }

    /** Dimension of the space that the contacts' wrenches span. */
    private int rank() {
        double[] sum = new double[36];
        for (double[] w : edges(4)) {
            for (int i = 0; i < 36; i++) {
                sum[i] += w[i / 6] * w[i % 6];
            }
        }
        double[] values = SymmetricEigen.of(sum, 6).values();
        int rank = 0;
        for (double v : values) {
            if (v > 1e-12 * values[5]) {
                rank++;
            }
        }
        return rank;
    }
}
