package gripwright.contact;

import gripwright.check.Check;
import gripwright.math.Vec3;
import java.util.ArrayList;
import java.util.List;

/**
 * The points at which bodies of the hand can touch an object: pad points (springs under the rubber's surface) and bone
 * points (stiff spheres beneath), grouped in rows, rows grouped by body. Immutable.
 */
public final class PadPoints {
    /**
     * One point.
     *
     * @param place in the body's frame [m]
     * @param normal outward [-], for drawing
     * @param radius of the sphere about it that touches [m]; 0 for pads
     * @param normalStiffness [N/m]
     * @param shearStiffness [N/m]
     * @param area it stands for [m^2]; 0 for bone
     * @param surface name of the rubber, or {@link #BONE}
     */
    public record Point(
            Vec3 place,
            Vec3 normal,
            double radius,
            double normalStiffness,
            double shearStiffness,
            double area,
            String surface) {
        public Point {
            Check.notNegative(radius, "point radius", "m");
            Check.positive(normalStiffness, "normal stiffness", "N/m");
            Check.positive(shearStiffness, "shear stiffness", "N/m");
        }

        public boolean pad() {
            return area > 0;
        }
    }

    /** Surface name of bare bone. */
    public static final String BONE = "bone";

    private final List<Point> points;
    private final List<String> surfaces;
    final int bodies;
    final int rows;
    /** First row of each body, one more at the end. */
    final int[] bodyRow;
    /** First point of each row, one more at the end. */
    final int[] rowPoint;

    final double[] place;
    final double[] radius;
    final double[] rowCentre;
    final double[] rowRadius;
    final double[] bodyCentre;
    final double[] bodyRadius;
    final int[] surfaceOf;

    private PadPoints(List<List<List<Point>>> byBodyAndRow) {
        bodies = byBodyAndRow.size();
        points = byBodyAndRow.stream()
                .flatMap(List::stream)
                .flatMap(List::stream)
                .toList();
        surfaces = points.stream().map(Point::surface).distinct().sorted().toList();
        rows = byBodyAndRow.stream().mapToInt(List::size).sum();
        bodyRow = new int[bodies + 1];
        rowPoint = new int[rows + 1];
        place = new double[3 * points.size()];
        radius = new double[points.size()];
        surfaceOf = new int[points.size()];
        rowCentre = new double[3 * rows];
        rowRadius = new double[rows];
        bodyCentre = new double[3 * bodies];
        bodyRadius = new double[bodies];
        int row = 0;
        int point = 0;
        for (int body = 0; body < bodies; body++) {
            bodyRow[body] = row;
            for (List<Point> group : byBodyAndRow.get(body)) {
                rowPoint[row] = point;
                rowRadius[row] = enclose(group, rowCentre, row);
                for (Point p : group) {
                    place[3 * point] = p.place().x();
                    place[3 * point + 1] = p.place().y();
                    place[3 * point + 2] = p.place().z();
                    radius[point] = p.radius();
                    surfaceOf[point] = surfaces.indexOf(p.surface());
                    point++;
                }
                row++;
            }
            bodyRadius[body] = enclose(
                    byBodyAndRow.get(body).stream().flatMap(List::stream).toList(), bodyCentre, body);
        }
        bodyRow[bodies] = row;
        rowPoint[rows] = point;
    }

    /** Centre (mean) into {@code centres} and the radius about it that holds all points with their spheres. */
    private static double enclose(List<Point> group, double[] centres, int index) {
        Vec3 sum = Vec3.ZERO;
        for (Point p : group) {
            sum = sum.plus(p.place());
        }
        Vec3 centre = group.isEmpty() ? Vec3.ZERO : sum.times(1.0 / group.size());
        centres[3 * index] = centre.x();
        centres[3 * index + 1] = centre.y();
        centres[3 * index + 2] = centre.z();
        double reach = 0;
        for (Point p : group) {
            reach = Math.max(reach, p.place().minus(centre).length() + p.radius());
        }
        return reach;
    }

    /** All points, body by body, row by row. */
    public List<Point> points() {
        return points;
    }

    /** Different surface names, sorted; friction coefficients are given in this order. */
    public List<String> surfaces() {
        return surfaces;
    }

    public int bodies() {
        return bodies;
    }

    /** First point of a body; with {@code bodies()} the number of points. */
    public int firstPoint(int body) {
        return rowPoint[bodyRow[body]];
    }

    /** Collects rows body by body. */
    public static final class Builder {
        private final List<List<List<Point>>> bodies = new ArrayList<>();

        /** Starts the next body (the palm first, then the phalanges in the order of the hand). */
        public Builder body() {
            bodies.add(new ArrayList<>());
            return this;
        }

        /** Adds a row of neighbouring points to the present body; an empty row is left out. */
        public Builder row(List<Point> points) {
            if (!points.isEmpty()) {
                bodies.get(bodies.size() - 1).add(List.copyOf(points));
            }
            return this;
        }

        public PadPoints build() {
            return new PadPoints(bodies);
        }
    }
}
