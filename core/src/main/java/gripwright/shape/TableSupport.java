package gripwright.shape;

import gripwright.math.Rotation;
import gripwright.math.Vec3;
import java.util.ArrayList;
import java.util.List;

/**
 * The features of a shape that can touch a plane, in the shape's frame: together their convex hull is the shape's own.
 *
 * @param balls spheres (radius 0 = a corner)
 * @param rims circles swept by a small sphere: the edge of a cylinder, the rim of a cup, a ring
 * @param ellipsoids whole ellipsoids
 */
public record TableSupport(List<Ball> balls, List<Rim> rims, List<Ellipsoidal> ellipsoids) {
    /** A sphere: centre and radius [m]. */
    public record Ball(Vec3 centre, double radius) {}

    /** A circle of {@code radius} about {@code axis} (length 1) through {@code centre}, thickened by {@code tube} [m]. */
    public record Rim(Vec3 centre, Vec3 axis, double radius, double tube) {}

    /** An ellipsoid with semi-axes [m] along the columns of {@code axes}. */
    public record Ellipsoidal(Vec3 centre, Rotation axes, Vec3 semiAxes) {}

    public TableSupport {
        balls = List.copyOf(balls);
        rims = List.copyOf(rims);
        ellipsoids = List.copyOf(ellipsoids);
    }

    public static TableSupport ofBalls(List<Ball> balls) {
        return new TableSupport(balls, List.of(), List.of());
    }

    public static TableSupport ofRims(List<Rim> rims) {
        return new TableSupport(List.of(), rims, List.of());
    }

    /** Both sets of features. */
    public TableSupport and(TableSupport other) {
        return new TableSupport(
                joined(balls, other.balls), joined(rims, other.rims), joined(ellipsoids, other.ellipsoids));
    }

    /** The same features moved by a turn and then a shift [m]. */
    public TableSupport moved(Rotation turn, Vec3 shift) {
        return new TableSupport(
                balls.stream()
                        .map(b -> new Ball(turn.apply(b.centre).plus(shift), b.radius))
                        .toList(),
                rims.stream()
                        .map(r -> new Rim(turn.apply(r.centre).plus(shift), turn.apply(r.axis), r.radius, r.tube))
                        .toList(),
                ellipsoids.stream()
                        .map(e -> new Ellipsoidal(turn.apply(e.centre).plus(shift), turn.times(e.axes), e.semiAxes))
                        .toList());
    }

    /** Largest coordinate of any feature along a direction of length 1 [m]; minus infinity without features. */
    public double extent(Vec3 direction) {
        double most = Double.NEGATIVE_INFINITY;
        for (Ball b : balls) {
            most = Math.max(most, direction.dot(b.centre) + b.radius);
        }
        for (Rim r : rims) {
            // Not sqrt(1 - cos^2), which loses half of the digits for a rim that lies nearly flat.
            double across = direction.cross(r.axis).length();
            most = Math.max(most, direction.dot(r.centre) + r.radius * across + r.tube);
        }
        for (Ellipsoidal e : ellipsoids) {
            Vec3 d = e.axes.applyInverse(direction);
            Vec3 scaled = new Vec3(d.x() * e.semiAxes.x(), d.y() * e.semiAxes.y(), d.z() * e.semiAxes.z());
            most = Math.max(most, direction.dot(e.centre) + scaled.length());
        }
        return most;
    }

    private static <T> List<T> joined(List<T> first, List<T> second) {
        List<T> all = new ArrayList<>(first);
        all.addAll(second);
        return all;
    }
}
