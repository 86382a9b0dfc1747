package gripwright.mechanics;

import gripwright.math.Pose;
import gripwright.math.Rotation;
import gripwright.math.Trig;
import gripwright.math.Vec3;

/**
 * World poses of all frames of a {@link HandTree} for given coordinate values. Workspace of one thread; nothing is
 * allocated by {@link #update}.
 */
public final class Kinematics {
    private final int n;
    private final int[] parent;
    private final boolean[] slides;
    private final double[] offset;
    private final double[] mounting;
    private final double[] localAxis;
    private final double[] rotation;
    private final double[] position;
    private final double[] axis;
    /** Most frames are mounted without a turn, and most axes are an axis of the frame: then most products are with 0 and 1. */
    private final boolean[] plainMounting;

    private static final int SLANTED = 3;
    private final int[] axisKind;
    private final double[] sinCos = new double[2];
    private final double[] lastQ;
    private boolean stale = true;
    /** Counts changes of the frames, so that others can tell whether theirs are still good. */
    private int version;

    public Kinematics(HandTree tree) {
        n = tree.size();
        parent = new int[n];
        slides = new boolean[n];
        offset = new double[3 * n];
        mounting = new double[9 * n];
        localAxis = new double[3 * n];
        rotation = new double[9 * (n + 1)];
        position = new double[3 * (n + 1)];
        axis = new double[3 * n];
        for (int j = 0; j < n; j++) {
            HandTree.Coordinate c = tree.coordinates().get(j);
            parent[j] = c.parent() < 0 ? n : c.parent();
            slides[j] = c.slides();
            put(c.offset(), offset, j);
            put(c.axis(), localAxis, j);
            System.arraycopy(c.mounting().toArray(), 0, mounting, 9 * j, 9);
        }
        plainMounting = new boolean[n];
        axisKind = new int[n];
        lastQ = new double[n];
        for (int j = 0; j < n; j++) {
            plainMounting[j] = true;
            for (int i = 0; i < 9; i++) {
                plainMounting[j] &= mounting[9 * j + i] == (i % 4 == 0 ? 1 : 0);
            }
            axisKind[j] = SLANTED;
            for (int k = 0; k < 3; k++) {
                if (localAxis[3 * j + k] == 1
                        && localAxis[3 * j + (k + 1) % 3] == 0
                        && localAxis[3 * j + (k + 2) % 3] == 0) {
                    axisKind[j] = k;
                }
            }
        }
        setBase(Pose.IDENTITY);
    }

    private static void put(Vec3 v, double[] array, int index) {
        array[3 * index] = v.x();
        array[3 * index + 1] = v.y();
        array[3 * index + 2] = v.z();
    }

    /** Places the base (the hand frame before any give of the arm) in the world. */
    public void setBase(Pose base) {
        setBase(
                base.rotation().toArray(),
                base.position().x(),
                base.position().y(),
                base.position().z());
    }

    /** As {@link #setBase(Pose)}; rotation row-major, shape 9, copied. */
    public void setBase(double[] baseRotation, double x, double y, double z) {
        System.arraycopy(baseRotation, 0, rotation, 9 * n, 9);
        position[3 * n] = x;
        position[3 * n + 1] = y;
        position[3 * n + 2] = z;
        stale = true;
    }

    /** Grows whenever {@link #update} changes frames. */
    public int version() {
        return version;
    }

    /**
     * Recomputes all frames, unless nothing has changed since the last time.
     *
     * @param q coordinate values [rad or m], shape size; not modified
     */
    public void update(double[] q) {
        if (!stale && same(q)) {
            return;
        }
        stale = false;
        version++;
        System.arraycopy(q, 0, lastQ, 0, n);
        for (int j = 0; j < n; j++) {
            place(j, q[j]);
        }
    }

    private boolean same(double[] q) {
        for (int j = 0; j < n; j++) {
            if (q[j] != lastQ[j]) {
                return false;
            }
        }
        return true;
    }

    private void place(int j, double value) {
        int p3 = 3 * parent[j];
        int p9 = 9 * parent[j];
        int j3 = 3 * j;
        int j9 = 9 * j;
        double[] r = rotation;
        double a0 = r[p9];
        double a1 = r[p9 + 1];
        double a2 = r[p9 + 2];
        double a3 = r[p9 + 3];
        double a4 = r[p9 + 4];
        double a5 = r[p9 + 5];
        double a6 = r[p9 + 6];
        double a7 = r[p9 + 7];
        double a8 = r[p9 + 8];
        double ox = offset[j3];
        double oy = offset[j3 + 1];
        double oz = offset[j3 + 2];
        double px = position[p3] + a0 * ox + a1 * oy + a2 * oz;
        double py = position[p3 + 1] + a3 * ox + a4 * oy + a5 * oz;
        double pz = position[p3 + 2] + a6 * ox + a7 * oy + a8 * oz;
        if (!plainMounting[j]) {
            // turned mounting A = R_parent * mounting
            double[] m = mounting;
            a0 = r[p9] * m[j9] + r[p9 + 1] * m[j9 + 3] + r[p9 + 2] * m[j9 + 6];
            a1 = r[p9] * m[j9 + 1] + r[p9 + 1] * m[j9 + 4] + r[p9 + 2] * m[j9 + 7];
            a2 = r[p9] * m[j9 + 2] + r[p9 + 1] * m[j9 + 5] + r[p9 + 2] * m[j9 + 8];
            a3 = r[p9 + 3] * m[j9] + r[p9 + 4] * m[j9 + 3] + r[p9 + 5] * m[j9 + 6];
            a4 = r[p9 + 3] * m[j9 + 1] + r[p9 + 4] * m[j9 + 4] + r[p9 + 5] * m[j9 + 7];
            a5 = r[p9 + 3] * m[j9 + 2] + r[p9 + 4] * m[j9 + 5] + r[p9 + 5] * m[j9 + 8];
            a6 = r[p9 + 6] * m[j9] + r[p9 + 7] * m[j9 + 3] + r[p9 + 8] * m[j9 + 6];
            a7 = r[p9 + 6] * m[j9 + 1] + r[p9 + 7] * m[j9 + 4] + r[p9 + 8] * m[j9 + 7];
            a8 = r[p9 + 6] * m[j9 + 2] + r[p9 + 7] * m[j9 + 5] + r[p9 + 8] * m[j9 + 8];
        }
        double lx = localAxis[j3];
        double ly = localAxis[j3 + 1];
        double lz = localAxis[j3 + 2];
        double wx = a0 * lx + a1 * ly + a2 * lz;
        double wy = a3 * lx + a4 * ly + a5 * lz;
        double wz = a6 * lx + a7 * ly + a8 * lz;
        axis[j3] = wx;
        axis[j3 + 1] = wy;
        axis[j3 + 2] = wz;
        if (slides[j]) {
            position[j3] = px + value * wx;
            position[j3 + 1] = py + value * wy;
            position[j3 + 2] = pz + value * wz;
            store(j9, a0, a1, a2, a3, a4, a5, a6, a7, a8);
            return;
        }
        position[j3] = px;
        position[j3 + 1] = py;
        position[j3 + 2] = pz;
        Trig.sinCos(value, sinCos);
        double s = sinCos[0];
        double c = sinCos[1];
        double v = 1 - c;
        double one = c + v;
        // frame = A * turn about the local axis
        switch (axisKind[j]) {
            case 0 ->
                store(
                        j9,
                        a0 * one,
                        a1 * c + a2 * s,
                        a2 * c - a1 * s,
                        a3 * one,
                        a4 * c + a5 * s,
                        a5 * c - a4 * s,
                        a6 * one,
                        a7 * c + a8 * s,
                        a8 * c - a7 * s);
            case 1 ->
                store(
                        j9,
                        a0 * c - a2 * s,
                        a1 * one,
                        a0 * s + a2 * c,
                        a3 * c - a5 * s,
                        a4 * one,
                        a3 * s + a5 * c,
                        a6 * c - a8 * s,
                        a7 * one,
                        a6 * s + a8 * c);
            case 2 ->
                store(
                        j9,
                        a0 * c + a1 * s,
                        a1 * c - a0 * s,
                        a2 * one,
                        a3 * c + a4 * s,
                        a4 * c - a3 * s,
                        a5 * one,
                        a6 * c + a7 * s,
                        a7 * c - a6 * s,
                        a8 * one);
            default -> turnAboutSlantedAxis(j9, lx, ly, lz, c, s, a0, a1, a2, a3, a4, a5, a6, a7, a8);
        }
    }

    /** Rodrigues. */
    private void turnAboutSlantedAxis(
            int j9,
            double lx,
            double ly,
            double lz,
            double c,
            double s,
            double a0,
            double a1,
            double a2,
            double a3,
            double a4,
            double a5,
            double a6,
            double a7,
            double a8) {
        double v = 1 - c;
        double t0 = c + lx * lx * v;
        double t1 = lx * ly * v - lz * s;
        double t2 = lx * lz * v + ly * s;
        double t3 = lx * ly * v + lz * s;
        double t4 = c + ly * ly * v;
        double t5 = ly * lz * v - lx * s;
        double t6 = lx * lz * v - ly * s;
        double t7 = ly * lz * v + lx * s;
        double t8 = c + lz * lz * v;
        store(
                j9,
                a0 * t0 + a1 * t3 + a2 * t6,
                a0 * t1 + a1 * t4 + a2 * t7,
                a0 * t2 + a1 * t5 + a2 * t8,
                a3 * t0 + a4 * t3 + a5 * t6,
                a3 * t1 + a4 * t4 + a5 * t7,
                a3 * t2 + a4 * t5 + a5 * t8,
                a6 * t0 + a7 * t3 + a8 * t6,
                a6 * t1 + a7 * t4 + a8 * t7,
                a6 * t2 + a7 * t5 + a8 * t8);
    }

    private void store(
            int at, double r0, double r1, double r2, double r3, double r4, double r5, double r6, double r7, double r8) {
        double[] r = rotation;
        r[at] = r0;
        r[at + 1] = r1;
        r[at + 2] = r2;
        r[at + 3] = r3;
        r[at + 4] = r4;
        r[at + 5] = r5;
        r[at + 6] = r6;
        r[at + 7] = r7;
        r[at + 8] = r8;
    }

    /** Frame rotations, row-major, 9 per frame; frame {@code size} is the base. Live, read only. */
    public double[] rotation() {
        return rotation;
    }

    /** Frame origins [m], 3 per frame. Live, read only. */
    public double[] position() {
        return position;
    }

    /** Coordinate axes in the world, 3 per coordinate; a turning axis passes through its frame's origin. Live, read only. */
    public double[] axis() {
        return axis;
    }

    /** Pose of a frame in the world; frame -1 or {@code size} is the base. */
    public Pose pose(int frame) {
        int f = frame < 0 ? n : frame;
        return new Pose(
                new Vec3(position[3 * f], position[3 * f + 1], position[3 * f + 2]), Rotation.of(rotation, 9 * f));
    }
}
