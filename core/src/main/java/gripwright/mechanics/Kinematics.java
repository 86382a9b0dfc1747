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
    }

    /**
     * Recomputes all frames.
     *
     * @param q coordinate values [rad or m], shape size; not modified
     */
    public void update(double[] q) {
        for (int j = 0; j < n; j++) {
            int p3 = 3 * parent[j];
            int p9 = 9 * parent[j];
            int j3 = 3 * j;
            int j9 = 9 * j;
            double[] r = rotation;
            double[] m = mounting;
            // turned mounting A = R_parent * mounting
            double a0 = r[p9] * m[j9] + r[p9 + 1] * m[j9 + 3] + r[p9 + 2] * m[j9 + 6];
            double a1 = r[p9] * m[j9 + 1] + r[p9 + 1] * m[j9 + 4] + r[p9 + 2] * m[j9 + 7];
            double a2 = r[p9] * m[j9 + 2] + r[p9 + 1] * m[j9 + 5] + r[p9 + 2] * m[j9 + 8];
            double a3 = r[p9 + 3] * m[j9] + r[p9 + 4] * m[j9 + 3] + r[p9 + 5] * m[j9 + 6];
            double a4 = r[p9 + 3] * m[j9 + 1] + r[p9 + 4] * m[j9 + 4] + r[p9 + 5] * m[j9 + 7];
            double a5 = r[p9 + 3] * m[j9 + 2] + r[p9 + 4] * m[j9 + 5] + r[p9 + 5] * m[j9 + 8];
            double a6 = r[p9 + 6] * m[j9] + r[p9 + 7] * m[j9 + 3] + r[p9 + 8] * m[j9 + 6];
            double a7 = r[p9 + 6] * m[j9 + 1] + r[p9 + 7] * m[j9 + 4] + r[p9 + 8] * m[j9 + 7];
            double a8 = r[p9 + 6] * m[j9 + 2] + r[p9 + 7] * m[j9 + 5] + r[p9 + 8] * m[j9 + 8];
            double lx = localAxis[j3];
            double ly = localAxis[j3 + 1];
            double lz = localAxis[j3 + 2];
            double wx = a0 * lx + a1 * ly + a2 * lz;
            double wy = a3 * lx + a4 * ly + a5 * lz;
            double wz = a6 * lx + a7 * ly + a8 * lz;
            axis[j3] = wx;
            axis[j3 + 1] = wy;
            axis[j3 + 2] = wz;
            for (int i = 0; i < 3; i++) {
                position[j3 + i] = position[p3 + i]
                        + r[p9 + 3 * i] * offset[j3]
                        + r[p9 + 3 * i + 1] * offset[j3 + 1]
                        + r[p9 + 3 * i + 2] * offset[j3 + 2];
            }
            if (slides[j]) {
                position[j3] += q[j] * wx;
                position[j3 + 1] += q[j] * wy;
                position[j3 + 2] += q[j] * wz;
                store(j9, a0, a1, a2, a3, a4, a5, a6, a7, a8);
                continue;
            }
            // turn about the local axis (Rodrigues), frame = A * turn
            double c = Trig.cos(q[j]);
            double s = Trig.sin(q[j]);
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
