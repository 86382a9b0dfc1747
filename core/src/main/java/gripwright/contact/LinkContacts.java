package gripwright.contact;

import gripwright.contact.LinkShapes.Sphere;
import gripwright.math.Memory;
import gripwright.model.Hand;
import org.jspecify.annotations.Nullable;

/**
 * Fingers against the table and against each other, with friction that remembers.
 *
 * <p>Table: the end of each phalanx is two spheres (left and right edge), the palm's plate four. Finger on finger: every
 * phalanx is a capsule round the line through its joints; pairs of different fingers meet at their closest points
 * ({@link LinkShapes}, {@link SegmentPair}). Springs of {@link #STIFFNESS} and {@link LinkFriction}. Poses are in the
 * world. Workspace.
 */
public final class LinkContacts {
    /** Rubber on table or rubber on rubber at a finger's end [N/m] (common practice, no source). */
    static final double STIFFNESS = 2e4;

    /** Motion that a step may have here, over that allowed on a pad: no pressure is spread over these contacts. */
    private static final double FARTHER = 2;

    private final LinkShapes shapes;
    private final int bodies;
    /** Possible contacts: the spheres on the table first, then the pairs of capsules. */
    private final int contacts;

    private final int onTable;
    private final int[] bodyA;
    private final int[] bodyB;
    private final LinkFriction friction;
    private final double[] force;
    private final double[] gap;
    private final PointPair pair = new PointPair();
    private final SegmentPair segments = new SegmentPair();
    private final double[] startRotation;
    private final double[] startPosition;
    private double startTable;
    private final double[] moved;

    /** Receives each active contact. */
    public interface Sink {
        void take(PointPair pair, boolean wantHessian);
    }

    private LinkContacts(LinkShapes shapes) {
        this.shapes = shapes;
        bodies = shapes.bodies;
        onTable = shapes.spheres.length;
        contacts = onTable + shapes.pairA.length;
        bodyA = new int[contacts];
        bodyB = new int[contacts];
        for (int i = 0; i < contacts; i++) {
            bodyA[i] = i < onTable ? shapes.spheres[i].body() : shapes.pairA[i - onTable];
            bodyB[i] = i < onTable ? -1 : shapes.pairB[i - onTable];
        }
        friction = new LinkFriction(bodyA, bodyB);
        force = new double[contacts];
        gap = new double[contacts];
        startRotation = new double[9 * bodies];
        startPosition = new double[3 * bodies];
        moved = new double[bodies];
    }

    /** Contacts of a hand: bodies in the order palm, phalanges finger by finger. */
    public static LinkContacts of(Hand hand) {
        return new LinkContacts(LinkShapes.of(hand));
    }

    /** No contacts at all: for bare test rigs. */
    public static LinkContacts none(int bodies) {
        return new LinkContacts(LinkShapes.none(bodies));
    }

    /** Forgets all contact. @param coefficient of bone or rubber on finger and table [-] */
    public void reset(double coefficient) {
        friction.setCoefficient(coefficient);
        for (int i = 0; i < contacts; i++) {
            forget(i);
            gap[i] = -1;
        }
    }

    private void forget(int i) {
        friction.forget(i);
        force[i] = 0;
    }

    public int contacts() {
        return contacts;
    }

    public boolean onTable(int contact) {
        return contact < onTable;
    }

    public double force(int contact) {
        return force[contact];
    }

    public double friction() {
        return friction.coefficient();
    }

    public int bodyA(int contact) {
        return bodyA[contact];
    }

    /** -1 = the table. */
    public int bodyB(int contact) {
        return bodyB[contact];
    }

    /** Total normal force of the hand on the table at the last commit [N]. */
    public double tableForce() {
        double sum = 0;
        for (int i = 0; i < onTable; i++) {
            sum += force[i];
        }
        return sum;
    }

    /** True if anything of the hand presses on the table at the last commit. */
    public boolean touchesTable() {
        return tableForce() > 0;
    }

    /** Clearance of the tightest pair of fingers at the last commit [m]. */
    public double leastFingerGap() {
        double least = Double.POSITIVE_INFINITY;
        for (int i = onTable; i < contacts; i++) {
            least = Math.min(least, gap[i]);
        }
        return least;
    }

    /** Fills {@link #moved}: once per body, because each has several contacts. */
    private void updateMoved(double[] r, double[] t) {
        for (int b = 0; b < bodies; b++) {
            moved[b] = movedOf(b, r, t);
        }
    }

    /** How far any point of a body may have moved since the last commit [m]; coarse upper bound for skipping. */
    private double movedOf(int body, double[] r, double[] t) {
        int b3 = 3 * body;
        int b9 = 9 * body;
        double dx = t[b3] - startPosition[b3];
        double dy = t[b3 + 1] - startPosition[b3 + 1];
        double dz = t[b3 + 2] - startPosition[b3 + 2];
        double turn = 0;
        for (int i = 0; i < 9; i++) {
            double d = r[b9 + i] - startRotation[b9 + i];
            turn += d * d;
        }
        double reach = shapes.reach[body];
        return Math.sqrt(dx * dx + dy * dy + dz * dz) + Math.sqrt(0.5 * turn) * reach;
    }

    /**
     * Energy of all contacts; each active one is handed to {@code sink} with its derivatives.
     *
     * @param r rotations of the bodies in the world, row-major, 9 per body
     * @param t origins of the bodies in the world [m], 3 per body
     * @param sink null = energy only
     */
    public double accumulate(
            double[] r, double[] t, double table, boolean renew, boolean wantHessian, @Nullable Sink sink) {
        updateMoved(r, t);
        double energy = 0;
        for (int i = 0; i < contacts; i++) {
            double room = gap[i];
            if (room > 0) {
                double most = moved[bodyA[i]] + (i < onTable ? Math.abs(table - startTable) : moved[bodyB[i]]);
                if (most < room) {
                    continue;
                }
            }
            double depth = place(i, r, t, table);
            if (depth <= 0) {
                if (renew) {
                    friction.press(i, 0);
                }
                if (!friction.holds(i)) {
                    continue;
                }
            }
            energy += contact(i, depth, r, t, renew, wantHessian, sink);
        }
        return energy;
    }

    /** Fills the pair's points and its normal, towards A; returns the depth [m]. */
    private double place(int i, double[] r, double[] t, double table) {
        return i < onTable
                ? placeSphere(shapes.spheres[i], r, t, table)
                : placePair(shapes.pairA[i - onTable], shapes.pairB[i - onTable], r, t);
    }

    private double placeSphere(Sphere s, double[] r, double[] t, double table) {
        int b9 = 9 * s.body();
        int b3 = 3 * s.body();
        double x = t[b3] + r[b9] * s.x() + r[b9 + 1] * s.y() + r[b9 + 2] * s.z();
        double y = t[b3 + 1] + r[b9 + 3] * s.x() + r[b9 + 4] * s.y() + r[b9 + 5] * s.z();
        double z = t[b3 + 2] + r[b9 + 6] * s.x() + r[b9 + 7] * s.y() + r[b9 + 8] * s.z();
        pair.bodyA = s.body();
        pair.bodyB = -1;
        pair.a[0] = x;
        pair.a[1] = y;
        // one place for both sides, half-way into each other, so that friction leaves no couple between them
        pair.a[2] = 0.5 * (z - s.radius() + table);
        System.arraycopy(pair.a, 0, pair.b, 0, 3);
        pair.n[0] = 0;
        pair.n[1] = 0;
        pair.n[2] = 1;
        return table + s.radius() - z;
    }

    private double placePair(int a, int b, double[] r, double[] t) {
        double[] length = shapes.length;
        int a3 = 3 * a;
        int b3 = 3 * b;
        int a9 = 9 * a;
        int b9 = 9 * b;
        double ux = r[a9] * length[a];
        double uy = r[a9 + 3] * length[a];
        double uz = r[a9 + 6] * length[a];
        double d = segments.distance(
                ux,
                uy,
                uz,
                length[a] * length[a],
                r[b9] * length[b],
                r[b9 + 3] * length[b],
                r[b9 + 6] * length[b],
                length[b] * length[b],
                t[a3] - t[b3],
                t[a3 + 1] - t[b3 + 1],
                t[a3 + 2] - t[b3 + 2]);
        double inverse = d < 1e-9 ? 0 : 1 / d;
        pair.bodyA = a;
        pair.bodyB = b;
        pair.n[0] = segments.dx * inverse;
        pair.n[1] = segments.dy * inverse;
        pair.n[2] = d < 1e-9 ? 1 : segments.dz * inverse;
        double depth = shapes.radius[a] + shapes.radius[b] - d;
        // one place for both sides here too
        double inside = shapes.radius[a] - 0.5 * depth;
        pair.a[0] = t[a3] + segments.s * ux - inside * pair.n[0];
        pair.a[1] = t[a3 + 1] + segments.s * uy - inside * pair.n[1];
        pair.a[2] = t[a3 + 2] + segments.s * uz - inside * pair.n[2];
        System.arraycopy(pair.a, 0, pair.b, 0, 3);
        return depth;
    }

    /** One active contact: normal spring, then friction. */
    private double contact(
            int i, double depth, double[] r, double[] t, boolean renew, boolean wantHessian, @Nullable Sink sink) {
        double kn = depth > 0 ? STIFFNESS : 0;
        double f = depth > 0 ? STIFFNESS * depth : 0;
        double energy = depth > 0 ? 0.5 * f * depth : 0;
        if (depth > 0 && renew) {
            friction.press(i, f);
        }
        double[] n = pair.n;
        for (int k = 0; k < 3; k++) {
            pair.g[k] = -f * n[k];
        }
        if (wantHessian) {
            for (int k = 0; k < 9; k++) {
                pair.s[k] = kn * n[k / 3] * n[k % 3];
            }
        }
        energy += friction.add(i, kn, r, t, wantHessian, pair);
        if (sink != null) {
            sink.take(pair, wantHessian);
        }
        return energy;
    }

    /** How much too far the step went: above 1 it should be shorter. @param slide motion allowed at a contact [m] */
    public double stepRatio(double[] r, double[] t, double slide) {
        updateMoved(r, t);
        double worst = 0;
        for (int i = 0; i < contacts; i++) {
            double room = Math.max(gap[i], 0) + FARTHER * slide;
            double bound = moved[bodyA[i]] + (i < onTable ? 0 : moved[bodyB[i]]);
            if (bound > worst * room) {
                double m = gap[i] < 0 && friction.sticks(i)
                        ? friction.slid(i, r, t)
                        : i < onTable ? sphereMoved(shapes.spheres[i], r, t) : bound;
                worst = Math.max(worst, m / room);
            }
        }
        return worst;
    }

    /** Motion of a sphere's middle since the last commit [m]. */
    private double sphereMoved(Sphere s, double[] r, double[] t) {
        int b9 = 9 * s.body();
        int b3 = 3 * s.body();
        double[] r0 = startRotation;
        double sum = 0;
        for (int k = 0; k < 3; k++) {
            int row = b9 + 3 * k;
            double d = t[b3 + k]
                    - startPosition[b3 + k]
                    + (r[row] - r0[row]) * s.x()
                    + (r[row + 1] - r0[row + 1]) * s.y()
                    + (r[row + 2] - r0[row + 2]) * s.z();
            sum += d * d;
        }
        return Math.sqrt(sum);
    }

    /** Ends a step at the given poses. */
    public void commit(double[] r, double[] t, double table) {
        for (int i = 0; i < contacts; i++) {
            double depth = place(i, r, t, table);
            gap[i] = -depth;
            if (depth > 0) {
                force[i] = STIFFNESS * depth;
                friction.remember(i, force[i], pair, r, t);
            } else if (friction.sticks(i)) {
                forget(i);
            }
        }
        System.arraycopy(r, 0, startRotation, 0, 9 * bodies);
        System.arraycopy(t, 0, startPosition, 0, 3 * bodies);
        startTable = table;
    }

    /**
     * A contact after a commit: its point in the world, the normal from A into B (down into the table), the tangential
     * force on B.
     *
     * @param out shape 9
     */
    public void describe(int i, double[] r, double[] t, double table, double[] out) {
        place(i, r, t, table);
        for (int k = 0; k < 3; k++) {
            out[k] = pair.a[k];
            out[3 + k] = -pair.n[k];
            out[6 + k] = friction.onB(i, k);
        }
    }

    /** A copy of everything remembered since the last commit. */
    public Memory keep() {
        return Memory.of(numbers(), new boolean[][] {friction.flags()});
    }

    /** Puts back what {@link #keep} copied. */
    public void recall(Memory kept) {
        kept.into(numbers(), new boolean[][] {friction.flags()});
        startTable = kept.single(0);
    }

    private double[][] numbers() {
        double[][] rub = friction.numbers();
        return new double[][] {{startTable}, rub[0], rub[1], rub[2], force, gap, startRotation, startPosition};
    }
}
