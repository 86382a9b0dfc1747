package gripwright.report;

import gripwright.math.Vec3;

/** Where one looks from, square on. */
@SuppressWarnings("ImmutableEnumChecker") // Vec3 is a record of three doubles
enum View {
    /** Along +y: x to the right, z up. */
    FRONT("front", Vec3.X, Vec3.Z, "x", "z"),
    /** Along -x: y to the right, z up. */
    SIDE("side", Vec3.Y, Vec3.Z, "y", "z"),
    /** Along -z: x to the right, y up. */
    TOP("top", Vec3.X, Vec3.Y, "x", "y");

    final String word;
    /** Directions in space that point to the right, up and at the viewer. */
    final Vec3 right;

    final Vec3 up;
    final Vec3 near;
    /** Names of the axes seen. */
    final String rightAxis;

    final String upAxis;

    View(String word, Vec3 right, Vec3 up, String rightAxis, String upAxis) {
        this.word = word;
        this.right = right;
        this.up = up;
        this.near = right.cross(up);
        this.rightAxis = rightAxis;
        this.upAxis = upAxis;
    }

    /**
     * This view at a scale.
     *
     * @param scale picture units per metre
     * @param x picture place of the origin of space, and
     * @param y its other coordinate
     */
    record Scaled(View view, double scale, double x, double y) {
        Svg.P at(Vec3 point) {
            return new Svg.P(x + scale * view.right.dot(point), y - scale * view.up.dot(point));
        }
    }

    Scaled scaled(double scale, double x, double y) {
        return new Scaled(this, scale, x, y);
    }
}
