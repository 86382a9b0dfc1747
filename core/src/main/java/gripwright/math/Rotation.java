package gripwright.math;

/**
 * A rotation as its 3 x 3 matrix [-], row-major: {@code xy} is row x, column y. The columns are the turned axes, so
 * {@code apply} takes a vector from the turned (body) frame to the outer one.
 */
public record Rotation(
        double xx, double xy, double xz, double yx, double yy, double yz, double zx, double zy, double zz) {
    public static final Rotation IDENTITY = new Rotation(1, 0, 0, 0, 1, 0, 0, 0, 1);

    /** The rotation whose columns are three right-handed unit vectors. */
    public static Rotation ofColumns(Vec3 x, Vec3 y, Vec3 z) {
        return new Rotation(x.x(), y.x(), z.x(), x.y(), y.y(), z.y(), x.z(), y.z(), z.z());
    }

    /**
     * Turn about an axis by the right-hand rule (Rodrigues).
     *
     * @param axis direction, any length above 0
     * @param angle [rad]
     */
    public static Rotation about(Vec3 axis, double angle) {
        Vec3 a = axis.unit();
        double c = StrictMath.cos(angle);
        double s = StrictMath.sin(angle);
        double v = 1 - c;
        return new Rotation(
                c + a.x() * a.x() * v,
                a.x() * a.y() * v - a.z() * s,
                a.x() * a.z() * v + a.y() * s,
                a.x() * a.y() * v + a.z() * s,
                c + a.y() * a.y() * v,
                a.y() * a.z() * v - a.x() * s,
                a.x() * a.z() * v - a.y() * s,
                a.y() * a.z() * v + a.x() * s,
                c + a.z() * a.z() * v);
    }

    public Vec3 apply(Vec3 v) {
        return new Vec3(
                xx * v.x() + xy * v.y() + xz * v.z(),
                yx * v.x() + yy * v.y() + yz * v.z(),
                zx * v.x() + zy * v.y() + zz * v.z());
    }

    /** The vector seen from the turned frame: transpose times v. */
    public Vec3 applyInverse(Vec3 v) {
        return inverse().apply(v);
    }

    public Rotation inverse() {
        return new Rotation(xx, yx, zx, xy, yy, zy, xz, yz, zz);
    }

    /** This rotation after {@code first}: (this.times(first)).apply(v) = this.apply(first.apply(v)). */
    public Rotation times(Rotation first) {
        return ofColumns(apply(first.column(0)), apply(first.column(1)), apply(first.column(2)));
    }

    /** Column 0, 1 or 2: where the x, y or z axis points after the turn. */
    public Vec3 column(int index) {
        return switch (index) {
            case 0 -> new Vec3(xx, yx, zx);
            case 1 -> new Vec3(xy, yy, zy);
            case 2 -> new Vec3(xz, yz, zz);
            default -> throw new IndexOutOfBoundsException("column " + index + "; expected 0, 1 or 2");
        };
    }

    /** Row-major copy, 9 entries. */
    public double[] toArray() {
        return new double[] {xx, xy, xz, yx, yy, yz, zx, zy, zz};
    }

    /** From a row-major array of 9 entries starting at {@code offset}. */
    public static Rotation of(double[] m, int offset) {
        return new Rotation(
                m[offset],
                m[offset + 1],
                m[offset + 2],
                m[offset + 3],
                m[offset + 4],
                m[offset + 5],
                m[offset + 6],
                m[offset + 7],
                m[offset + 8]);
    }
}
