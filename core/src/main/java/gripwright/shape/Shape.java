package gripwright.shape;

import gripwright.math.Vec3;

/**
 * A rigid shape as a signed distance in its own frame: negative inside, 0 on the surface, positive outside [m].
 *
 * <p>Implementations are immutable, shared between threads, and allocate nothing in {@link #distance} and
 * {@link #derivatives}. A new shape is one file that implements this and one line in the project reader.
 */
public interface Shape {
    /** Signed distance of a point [m]; exact outside, at least a lower bound of the depth inside. */
    double distance(double x, double y, double z);

    /**
     * First and second derivatives of exactly what {@link #distance} returns: normal and curvature.
     *
     * @param gradient out, shape 3: outward normal [-]; of length 1 but in blends and at edges, where it is shorter
     * @param hessian out, shape 6: second derivatives [1/m] in the order xx, xy, xz, yy, yz, zz
     */
    void derivatives(double x, double y, double z, double[] gradient, double[] hessian);

    /** Where the shape can touch a plane. */
    TableSupport support();

    /** Radius of the smallest sphere about the shape's origin that is sure to hold it [m]. */
    double boundingRadius();

    /** Largest coordinate along a direction: max over the shape of direction . point [m]; direction has length 1. */
    double extent(Vec3 direction);

    /** Volume [m^3]; for a composite with overlaps the sum of the parts. */
    double volume();

    /** Centre of the volume [m]. */
    Vec3 centroid();

    /** Turns that leave the shape as it is; used to tell rolling from being knocked over. */
    default Symmetry symmetry() {
        return Symmetry.NONE;
    }

    /** What turns leave a shape unchanged. */
    enum Symmetry {
        NONE,
        /** Any turn about the shape's own z axis. */
        ABOUT_Z,
        /** Any turn about the origin. */
        FULL
    }
}
