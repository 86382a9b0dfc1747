package gripwright.closing;

import gripwright.contact.Block;
import gripwright.math.Pose;
import gripwright.math.Vec3;

/**
 * Pushes one place of the object along a direction fixed to it, and the palm back: what a finger of the same hand does.
 * Nothing of it reaches the arm.
 *
 * <p>Energy 1/2 k (s + d . (y - y0))^2 with d the direction and y the place of a point of the palm, both in the object's
 * frame, y0 its value in the held state: s - (motion of the object along d) is the stretch.
 */
final class PressSpring {
    private final Vec3 d;
    private final Vec3 ofPalm;
    private final double k;
    private final double start;
    private double s;
    final Block block = new Block();

    /**
     * @param direction in the object's frame, length 1
     * @param stiffness [N/m]
     * @param ofPalm the pushed place in the held state, in the palm's frame
     * @param object held pose and
     * @param place in the world
     */
    PressSpring(Vec3 direction, double stiffness, Vec3 ofPalm, Pose object, Vec3 place) {
        d = direction;
        k = stiffness;
        this.ofPalm = ofPalm;
        start = d.dot(object.applyInverse(place));
    }

    /** Coordinate of the palm's point in the object's frame. @param r rotations and @param t places of all bodies in it */
    private double coordinate(double[] r, double[] t, int i) {
        return r[3 * i] * ofPalm.x() + r[3 * i + 1] * ofPalm.y() + r[3 * i + 2] * ofPalm.z() + t[i];
    }

    void farEnd(double place) {
        s = place;
    }

    /** How far the pushed place has moved along the direction, seen from the palm [m]. */
    double moved(double[] r, double[] t) {
        return start - d.x() * coordinate(r, t, 0) - d.y() * coordinate(r, t, 1) - d.z() * coordinate(r, t, 2);
    }

    /** Force on the object along the direction [N]. */
    double load(double[] r, double[] t) {
        return k * (s - moved(r, t));
    }

    double energy(double[] r, double[] t) {
        double f = load(r, t);
        return 0.5 * f * f / k;
    }

    /** Energy; what acts on palm and object goes into {@link #block}. */
    double accumulate(double[] r, double[] t, boolean wantHessian) {
        double f = load(r, t);
        double x = coordinate(r, t, 0);
        double y = coordinate(r, t, 1);
        double z = coordinate(r, t, 2);
        block.fx = 0;
        block.fy = 0;
        block.fz = 0;
        block.start(wantHessian);
        block.addForce(x, y, z, f * d.x(), f * d.y(), f * d.z());
        if (wantHessian) {
            block.addStiffness(
                    x,
                    y,
                    z,
                    k * d.x() * d.x(),
                    k * d.x() * d.y(),
                    k * d.x() * d.z(),
                    k * d.y() * d.y(),
                    k * d.y() * d.z(),
                    k * d.z() * d.z());
        }
        return 0.5 * f * f / k;
    }
}
