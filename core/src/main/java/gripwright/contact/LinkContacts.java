package gripwright.contact;

import gripwright.math.Memory;
import gripwright.model.Finger;
import gripwright.model.Hand;
import gripwright.model.Palm;
import gripwright.model.Phalanx;
import java.util.ArrayList;
import java.util.List;

/**
 * Fingers against the table and against each other, with anchored friction.
 *
 * <p>Table: the end of each phalanx is two spheres (left and right edge), the palm's plate four. Finger on finger: every
 * phalanx is a capsule round the line through its joints; pairs of different fingers meet at their closest points
 * (C. Ericson, "Real-Time Collision Detection", 2005, from memory). Springs of {@link #STIFFNESS}; the friction anchor
 * is the tangential displacement remembered since the contact began. Poses are in the world. Workspace.
 */
public final class LinkContacts {
    /** Rubber on table or rubber on rubber at a finger's end [N/m] (common practice, no source). */
    static final double STIFFNESS = 2e4;

    private static final double SHEAR = 1e4;

    /** Motion that a step may have here, over that allowed on a pad: no pressure is spread over these contacts. */
    private static final double FARTHER = 2;

    /** Capsules leave out the corners of a phalanx: this share of the pad's height is the radius. */
    private static final double CAPSULE = 0.85;

    private record Sphere(int body, double x, double y, double z, double radius) {}

    private final int bodies;
    private final Sphere[] spheres;
    private final int[] pairA;
    private final int[] pairB;
    private final double[] length;
    private final double[] capsule;
    /** Farthest place of any contact from the origin of its body [m]. */
    private final double[] reachOf;

    private final int contacts;
    /** Per possible contact: memory of the elastic tangential displacement (3), normal (3), limit force (1). */
    private final double[] memory;

    private static final int MEMORY = 7;
    private final boolean[] sticks;
    private final double[] force;
    private final double[] gap;
    /** Points of A and B at the last commit, in their bodies' frames: A (3), B (3). */
    private final double[] local;

    private final double[] start;
    private double friction;
    private final PointPair pair = new PointPair();
    private final double[] startRotation;
    private final double[] startPosition;
    private final double[] moved;

    /** Receives each active contact. */
    public interface Sink {
        void take(PointPair pair, boolean wantHessian);
    }

    private LinkContacts(int bodies, List<Sphere> spheres, double[] length, double[] capsule, int[] fingerOf) {
        this.bodies = bodies;
        this.spheres = spheres.toArray(new Sphere[0]);
        this.length = length;
        this.capsule = capsule;
        reachOf = new double[bodies];
        for (int b = 0; b < bodies; b++) {
            reachOf[b] = length[b] + capsule[b];
        }
        for (Sphere s : spheres) {
            double far = Math.sqrt(s.x * s.x + s.y * s.y + s.z * s.z) + s.radius;
            reachOf[s.body] = Math.max(reachOf[s.body], far);
        }
        List<int[]> pairs = new ArrayList<>();
        for (int a = 1; a < bodies; a++) {
            for (int b = a + 1; b < bodies; b++) {
                if (fingerOf[a] != fingerOf[b]) {
                    pairs.add(new int[] {a, b});
                }
            }
        }
        pairA = pairs.stream().mapToInt(p -> p[0]).toArray();
        pairB = pairs.stream().mapToInt(p -> p[1]).toArray();
        contacts = this.spheres.length + pairA.length;
        memory = new double[MEMORY * contacts];
        sticks = new boolean[contacts];
        force = new double[contacts];
        gap = new double[contacts];
        local = new double[6 * contacts];
        start = new double[6 * contacts];
        startRotation = new double[9 * bodies];
        startPosition = new double[3 * bodies];
        moved = new double[bodies];
    }

    /** Contacts of a hand: bodies in the order palm, phalanges finger by finger. */
    public static LinkContacts of(Hand hand) {
        List<Sphere> spheres = new ArrayList<>();
        Palm palm = hand.palm();
        double edge = palm.bone() / 2;
        double px = Math.max(0, palm.sizeX() / 2 - edge);
        double py = Math.max(0, palm.sizeY() / 2 - edge);
        for (int i = 0; i < 4; i++) {
            spheres.add(new Sphere(
                    0,
                    (i & 1) == 0 ? px : -px,
                    (i & 2) == 0 ? py : -py,
                    -palm.pad().thickness() - edge,
                    edge));
        }
        List<Double> length = new ArrayList<>(List.of(0.0));
        List<Double> capsule = new ArrayList<>(List.of(0.0));
        List<Integer> fingerOf = new ArrayList<>(List.of(-1));
        int body = 1;
        for (int f = 0; f < hand.fingers().size(); f++) {
            Finger finger = hand.fingers().get(f);
            for (Phalanx phalanx : finger.phalanges()) {
                double r = phalanx.tip() == Phalanx.Tip.ROUND ? phalanx.padHeight() : phalanx.bone() / 2;
                double side = Math.max(0, phalanx.width() / 2 - r);
                spheres.add(new Sphere(body, phalanx.length(), 0, side, r));
                spheres.add(new Sphere(body, phalanx.length(), 0, -side, r));
                length.add(phalanx.length());
                capsule.add(Math.min(CAPSULE * phalanx.padHeight(), phalanx.width() / 2));
                fingerOf.add(f);
                body++;
            }
        }
        return new LinkContacts(
                body,
                spheres,
                length.stream().mapToDouble(Double::doubleValue).toArray(),
                capsule.stream().mapToDouble(Double::doubleValue).toArray(),
                fingerOf.stream().mapToInt(Integer::intValue).toArray());
    }

    /** No contacts at all: for bare test rigs. */
    public static LinkContacts none(int bodies) {
        return new LinkContacts(bodies, List.of(), new double[bodies], new double[bodies], new int[bodies]);
    }

    /** Forgets all contact. @param coefficient of bone or rubber on finger and table [-] */
    public void reset(double coefficient) {
        friction = coefficient;
        for (int i = 0; i < contacts; i++) {
            forget(i);
            gap[i] = -1;
        }
    }

    private void forget(int i) {
        sticks[i] = false;
        force[i] = 0;
        java.util.Arrays.fill(memory, MEMORY * i, MEMORY * i + MEMORY, 0);
    }

    public int contacts() {
        return contacts;
    }

    public boolean onTable(int contact) {
        return contact < spheres.length;
    }

    public double force(int contact) {
        return force[contact];
    }

    public double friction() {
        return friction;
    }

    public int bodyA(int contact) {
        return onTable(contact) ? spheres[contact].body : pairA[contact - spheres.length];
    }

    public int bodyB(int contact) {
        return onTable(contact) ? -1 : pairB[contact - spheres.length];
    }

    /** Total normal force of the hand on the table at the last commit [N]. */
    public double tableForce() {
        double sum = 0;
        for (int i = 0; i < spheres.length; i++) {
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
        for (int i = spheres.length; i < contacts; i++) {
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
        double reach = reachOf[body];
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
            double[] r,
            double[] t,
            double table,
            boolean renew,
            boolean wantHessian,
            @org.jspecify.annotations.Nullable Sink sink) {
        updateMoved(r, t);
        double energy = 0;
        for (int i = 0; i < contacts; i++) {
            boolean table1 = i < spheres.length;
            double room = gap[i];
            if (room > 0) {
                double m = moved[bodyA(i)];
                if (!table1) {
                    m += moved[bodyB(i)];
                } else {
                    m += Math.abs(table - startTable);
                }
                if (m < room) {
                    continue;
                }
            }
            double depth = table1 ? spherePlace(spheres[i], r, t, table) : pairPlace(i, r, t);
            if (depth <= 0) {
                if (renew) {
                    memory[MEMORY * i + 6] = 0;
                }
                if (!sticks[i] || memory[MEMORY * i + 6] <= 0) {
                    continue;
                }
            }
            energy += contact(i, depth, r, t, renew, wantHessian, sink);
        }
        return energy;
    }

    private double startTable;

    /** Fills pair.a, pair.n (towards A) for a sphere on the table; returns the depth [m]. */
    private double spherePlace(Sphere s, double[] r, double[] t, double table) {
        int b9 = 9 * s.body;
        int b3 = 3 * s.body;
        double x = t[b3] + r[b9] * s.x + r[b9 + 1] * s.y + r[b9 + 2] * s.z;
        double y = t[b3 + 1] + r[b9 + 3] * s.x + r[b9 + 4] * s.y + r[b9 + 5] * s.z;
        double z = t[b3 + 2] + r[b9 + 6] * s.x + r[b9 + 7] * s.y + r[b9 + 8] * s.z;
        pair.bodyA = s.body;
        pair.bodyB = -1;
        pair.a[0] = x;
        pair.a[1] = y;
        // one place for both sides, half-way into each other, so that friction leaves no couple between them
        pair.a[2] = 0.5 * (z - s.radius + table);
        System.arraycopy(pair.a, 0, pair.b, 0, 3);
        pair.n[0] = 0;
        pair.n[1] = 0;
        pair.n[2] = 1;
        return table + s.radius - z;
    }

    /** Fills pair.a = pair.b (half-way into each other), pair.n (from B towards A) for two capsules; returns the depth [m]. */
    private double pairPlace(int i, double[] r, double[] t) {
        int a = pairA[i - spheres.length];
        int b = pairB[i - spheres.length];
        int a3 = 3 * a;
        int b3 = 3 * b;
        int a9 = 9 * a;
        int b9 = 9 * b;
        double ux = r[a9] * length[a];
        double uy = r[a9 + 3] * length[a];
        double uz = r[a9 + 6] * length[a];
        double vx = r[b9] * length[b];
        double vy = r[b9 + 3] * length[b];
        double vz = r[b9 + 6] * length[b];
        double wx = t[a3] - t[b3];
        double wy = t[a3 + 1] - t[b3 + 1];
        double wz = t[a3 + 2] - t[b3 + 2];
        double uu = length[a] * length[a];
        double vv = length[b] * length[b];
        double uv = ux * vx + uy * vy + uz * vz;
        double uw = ux * wx + uy * wy + uz * wz;
        double vw = vx * wx + vy * wy + vz * wz;
        double det = uu * vv - uv * uv;
        double s = det > 1e-12 * uu * vv ? clamp((uv * vw - uw * vv) / det) : 0.5;
        double q = (uv * s + vw) / vv;
        if (q < 0) {
            q = 0;
            s = clamp(-uw / uu);
        } else if (q > 1) {
            q = 1;
            s = clamp((uv - uw) / uu);
        }
        double dx = wx + s * ux - q * vx;
        double dy = wy + s * uy - q * vy;
        double dz = wz + s * uz - q * vz;
        double d = Math.sqrt(dx * dx + dy * dy + dz * dz);
        double inverse = d < 1e-9 ? 0 : 1 / d;
        pair.bodyA = a;
        pair.bodyB = b;
        pair.n[0] = dx * inverse;
        pair.n[1] = dy * inverse;
        pair.n[2] = d < 1e-9 ? 1 : dz * inverse;
        double depth = capsule[a] + capsule[b] - d;
        for (int k = 0; k < 3; k++) {
            double u = k == 0 ? ux : k == 1 ? uy : uz;
            pair.a[k] = t[a3 + k] + s * u - (capsule[a] - 0.5 * depth) * pair.n[k];
            pair.b[k] = pair.a[k];
        }
        return depth;
    }

    private static double clamp(double v) {
        return v < 0 ? 0 : v > 1 ? 1 : v;
    }

    private double contact(
            int i,
            double depth,
            double[] r,
            double[] t,
            boolean renew,
            boolean wantHessian,
            @org.jspecify.annotations.Nullable Sink sink) {
        int m = MEMORY * i;
        double energy = 0;
        double f = 0;
        if (depth > 0) {
            f = STIFFNESS * depth;
            energy = 0.5 * f * depth;
            if (renew) {
                memory[m + 6] = f;
            }
        }
        double[] n = pair.n;
        for (int k = 0; k < 3; k++) {
            pair.g[k] = -f * n[k];
        }
        if (wantHessian) {
            double kn = depth > 0 ? STIFFNESS : 0;
            for (int k = 0; k < 9; k++) {
                pair.s[k] = kn * n[k / 3] * n[k % 3];
            }
        }
        pair.slipping = false;
        double limit = friction * memory[m + 6];
        if (sticks[i] && limit > 0) {
            energy += frictionOf(i, limit, depth > 0, r, t, wantHessian);
        }
        if (sink != null) {
            sink.take(pair, wantHessian);
        }
        return energy;
    }

    /** Tangential displacement: what is remembered plus the motion of the start points since the last commit. */
    private double frictionOf(int i, double limit, boolean pressed, double[] r, double[] t, boolean wantHessian) {
        int m = MEMORY * i;
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
        double[] s = pair.s;
        if (SHEAR * SHEAR * u2 <= limit * limit) {
            g[0] += SHEAR * ux;
            g[1] += SHEAR * uy;
            g[2] += SHEAR * uz;
            if (wantHessian) {
                addProjector(s, SHEAR, mx, my, mz, 0, 0, 0);
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
            addProjector(s, limit / u, mx, my, mz, tx, ty, tz);
            if (pressed) {
                pair.slipping = true;
                double c = -friction * STIFFNESS;
                pair.t[0] = c * tx;
                pair.t[1] = c * ty;
                pair.t[2] = c * tz;
            }
        }
        return limit * u - 0.5 * limit * limit / SHEAR;
    }

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
        return world(bodyA(i), 6 * i, r, t, k) - (onTable(i) ? 0 : world(bodyB(i), 6 * i + 3, r, t, k));
    }

    private double world(int body, int at, double[] r, double[] t, int k) {
        int row = 9 * body + 3 * k;
        return t[3 * body + k] + r[row] * local[at] + r[row + 1] * local[at + 1] + r[row + 2] * local[at + 2];
    }

    /** How much too far the step went: above 1 it should be shorter. @param slide motion allowed at a contact [m] */
    public double stepRatio(double[] r, double[] t, double slide) {
        updateMoved(r, t);
        double worst = 0;
        for (int i = 0; i < contacts; i++) {
            double room = Math.max(gap[i], 0) + FARTHER * slide;
            double bound = moved[bodyA(i)] + (onTable(i) ? 0 : moved[bodyB(i)]);
            if (bound > worst * room) {
                double m = gap[i] < 0 && sticks[i] ? slid(i, r, t) : onTable(i) ? sphereMoved(spheres[i], r, t) : bound;
                worst = Math.max(worst, m / room);
            }
        }
        return worst;
    }

    /** Motion of one side of a contact against the other since the last commit [m]. */
    private double slid(int i, double[] r, double[] t) {
        double sum = 0;
        for (int k = 0; k < 3; k++) {
            double d = relative(i, r, t, k) - start[6 * i + k];
            sum += d * d;
        }
        return Math.sqrt(sum);
    }

    /** Motion of a sphere's middle since the last commit [m]. */
    private double sphereMoved(Sphere s, double[] r, double[] t) {
        int b9 = 9 * s.body;
        int b3 = 3 * s.body;
        double[] r0 = startRotation;
        double sum = 0;
        for (int k = 0; k < 3; k++) {
            int row = b9 + 3 * k;
            double d = t[b3 + k]
                    - startPosition[b3 + k]
                    + (r[row] - r0[row]) * s.x
                    + (r[row + 1] - r0[row + 1]) * s.y
                    + (r[row + 2] - r0[row + 2]) * s.z;
            sum += d * d;
        }
        return Math.sqrt(sum);
    }

    /** Ends a step at the given poses. */
    public void commit(double[] r, double[] t, double table) {
        for (int i = 0; i < contacts; i++) {
            double depth = onTable(i) ? spherePlace(spheres[i], r, t, table) : pairPlace(i, r, t);
            gap[i] = -depth;
            if (depth <= 0) {
                if (sticks[i]) {
                    forget(i);
                }
                continue;
            }
            remember(i, depth, r, t);
        }
        System.arraycopy(r, 0, startRotation, 0, 9 * bodies);
        System.arraycopy(t, 0, startPosition, 0, 3 * bodies);
        startTable = table;
    }

    private void remember(int i, double depth, double[] r, double[] t) {
        int m = MEMORY * i;
        double f = STIFFNESS * depth;
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
            double most = friction * f / SHEAR;
            if (u2 > most * most) {
                double cut = most / Math.sqrt(u2);
                for (int k = 0; k < 3; k++) {
                    memory[m + k] *= cut;
                }
            }
        }
        for (int k = 0; k < 3; k++) {
            memory[m + 3 + k] = n[k];
        }
        memory[m + 6] = f;
        force[i] = f;
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

    /**
     * A contact after a commit: its point in the world, the normal from A into B (down into the table), the tangential
     * force on B.
     *
     * @param out shape 9
     */
    public void describe(int i, double[] r, double[] t, double table, double[] out) {
        if (onTable(i)) {
            spherePlace(spheres[i], r, t, table);
        } else {
            pairPlace(i, r, t);
        }
        for (int k = 0; k < 3; k++) {
            out[k] = pair.a[k];
            out[3 + k] = -pair.n[k];
            out[6 + k] = SHEAR * memory[MEMORY * i + k];
        }
    }

    /** A copy of everything remembered since the last commit. */
    public Memory keep() {
        return Memory.of(numbers(), new boolean[][] {sticks});
    }

    /** Puts back what {@link #keep} copied. */
    public void recall(Memory kept) {
        kept.into(numbers(), new boolean[][] {sticks});
        startTable = kept.single(0);
    }

    private double[][] numbers() {
        return new double[][] {{startTable}, memory, force, gap, local, start, startRotation, startPosition};
    }
}
