package gripwright.math;

/** Where a body is and how it is turned, seen from an outer frame: outer = position [m] + rotation(body). */
public record Pose(Vec3 position, Rotation rotation) {
    public static final Pose IDENTITY = new Pose(Vec3.ZERO, Rotation.IDENTITY);

    /** A point of the body in the outer frame [m]. */
    public Vec3 apply(Vec3 point) {
        return position.plus(rotation.apply(point));
    }

    /** A point of the outer frame in the body frame [m]. */
    public Vec3 applyInverse(Vec3 point) {
        return rotation.applyInverse(point.minus(position));
    }

    /** The pose of a body placed by {@code inner} inside this frame. */
    public Pose times(Pose inner) {
        return new Pose(apply(inner.position), rotation.times(inner.rotation));
    }
}
