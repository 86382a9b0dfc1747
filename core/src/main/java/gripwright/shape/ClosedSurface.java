package gripwright.shape;

import gripwright.check.Check;
import gripwright.math.Vec3;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * A closed triangle surface with shared corners, outward normals of faces, edges and corners. Built once per mesh;
 * refuses anything that does not bound a solid, naming the place.
 */
final class ClosedSurface {
    /** Corners nearer than this part of the mesh's diagonal are one corner. */
    private static final double WELD = 1e-6;

    final List<Vec3> corners;
    /** Three corner numbers per triangle. */
    final int[] faces;
    /** Triangle across the edge from corner k to corner k + 1 of a triangle, at 3 * triangle + k. */
    final int[] across;

    final Vec3[] faceNormals;
    /** Sum of the face normals about each corner weighted by their angle: it tells inside from outside there. */
    final Vec3[] cornerNormals;

    final double volume;
    final Vec3 centroid;

    static ClosedSurface of(List<Triangle> triangles) {
        Check.that(
                triangles.size() >= 4,
                "the mesh has " + triangles.size() + " triangles; a closed surface needs at least 4");
        for (int i = 0; i < triangles.size(); i++) {
            Triangle t = triangles.get(i);
            double sum = t.a().length() + t.b().length() + t.c().length();
            Check.that(
                    Double.isFinite(sum),
                    "triangle " + (i + 1) + " of the mesh has a coordinate that is not a finite number");
        }
        Vec3 low = corner(triangles, -1);
        Vec3 high = corner(triangles, 1);
        double tolerance = WELD * high.minus(low).length();
        List<Vec3> corners = new ArrayList<>();
        int[] faces = weld(triangles, low, tolerance, corners);
        for (int t = 0; t < triangles.size(); t++) {
            Triangle triangle = triangles.get(t);
            boolean collapsed = faces[3 * t] == faces[3 * t + 1]
                    || faces[3 * t + 1] == faces[3 * t + 2]
                    || faces[3 * t + 2] == faces[3 * t];
            Check.that(
                    !collapsed && triangle.areaVector().length() > tolerance * tolerance,
                    "triangle " + (t + 1) + " of the mesh has no area (corners " + millimetres(triangle.a()) + ", "
                            + millimetres(triangle.b()) + ", " + millimetres(triangle.c())
                            + "): remove degenerate triangles in the program that made the mesh and save it again");
        }
        int[] across = neighbours(faces, corners);
        ClosedSurface surface = new ClosedSurface(corners, faces, across);
        if (surface.volume < 0) {
            surface = surface.flipped();
        }
        Bodies.check(surface);
        return surface;
    }

    private ClosedSurface(List<Vec3> corners, int[] faces, int[] across) {
        this.corners = corners;
        this.faces = faces;
        this.across = across;
        faceNormals = new Vec3[faces.length / 3];
        cornerNormals = new Vec3[corners.size()];
        Arrays.fill(cornerNormals, Vec3.ZERO);
        // Volumes of tetrahedra from one corner of the mesh, not from the origin: a far origin would cost digits.
        Vec3 apex = corners.get(0);
        double sum = 0;
        Vec3 moment = Vec3.ZERO;
        for (int t = 0; t < faceNormals.length; t++) {
            Vec3 a = corners.get(faces[3 * t]);
            Vec3 b = corners.get(faces[3 * t + 1]);
            Vec3 c = corners.get(faces[3 * t + 2]);
            faceNormals[t] = new Triangle(a, b, c).areaVector().unit();
            addCornerNormal(t, 0, b.minus(a), c.minus(a));
            addCornerNormal(t, 1, c.minus(b), a.minus(b));
            addCornerNormal(t, 2, a.minus(c), b.minus(c));
            double six = a.minus(apex).dot(b.minus(apex).cross(c.minus(apex)));
            sum += six;
            moment = moment.plus(a.plus(b).plus(c).minus(apex.times(3)).times(six / 4));
        }
        volume = sum / 6;
        centroid = sum == 0 ? apex : apex.plus(moment.times(1 / sum));
    }

    private void addCornerNormal(int face, int k, Vec3 toNext, Vec3 toPrevious) {
        double angle = StrictMath.atan2(toNext.cross(toPrevious).length(), toNext.dot(toPrevious));
        int corner = faces[3 * face + k];
        cornerNormals[corner] = cornerNormals[corner].plus(faceNormals[face].times(angle));
    }

    private ClosedSurface flipped() {
        int[] turned = faces.clone();
        for (int t = 0; t < turned.length; t += 3) {
            turned[t + 1] = faces[t + 2];
            turned[t + 2] = faces[t + 1];
        }
        return new ClosedSurface(corners, turned, neighbours(turned, corners));
    }

    /** Least (-1) or greatest (+1) coordinates of all corners. */
    private static Vec3 corner(List<Triangle> triangles, int sign) {
        double x = Double.NEGATIVE_INFINITY;
        double y = Double.NEGATIVE_INFINITY;
        double z = Double.NEGATIVE_INFINITY;
        for (Triangle t : triangles) {
            x = Math.max(x, Math.max(sign * t.a().x(), Math.max(sign * t.b().x(), sign * t.c().x())));
            y = Math.max(y, Math.max(sign * t.a().y(), Math.max(sign * t.b().y(), sign * t.c().y())));
            z = Math.max(z, Math.max(sign * t.a().z(), Math.max(sign * t.b().z(), sign * t.c().z())));
        }
        return new Vec3(sign * x, sign * y, sign * z);
    }

    private record Cell(long x, long y, long z) {}

    private static int[] weld(List<Triangle> triangles, Vec3 low, double tolerance, List<Vec3> corners) {
        Check.that(tolerance > 0, "all corners of the mesh lie at one point: " + millimetres(low));
        Map<Cell, List<Integer>> found = new HashMap<>();
        int[] faces = new int[3 * triangles.size()];
        for (int t = 0; t < triangles.size(); t++) {
            Triangle triangle = triangles.get(t);
            faces[3 * t] = weld(triangle.a(), low, tolerance, found, corners);
            faces[3 * t + 1] = weld(triangle.b(), low, tolerance, found, corners);
            faces[3 * t + 2] = weld(triangle.c(), low, tolerance, found, corners);
        }
        return faces;
    }

    private static int weld(
            Vec3 point, Vec3 low, double tolerance, Map<Cell, List<Integer>> found, List<Vec3> corners) {
        long x = (long) Math.floor((point.x() - low.x()) / tolerance);
        long y = (long) Math.floor((point.y() - low.y()) / tolerance);
        long z = (long) Math.floor((point.z() - low.z()) / tolerance);
        for (long i = x - 1; i <= x + 1; i++) {
            for (long j = y - 1; j <= y + 1; j++) {
                for (long k = z - 1; k <= z + 1; k++) {
                    for (int known : found.getOrDefault(new Cell(i, j, k), List.of())) {
                        if (corners.get(known).minus(point).length() <= tolerance) {
                            return known;
                        }
                    }
                }
            }
        }
        corners.add(point);
        found.computeIfAbsent(new Cell(x, y, z), cell -> new ArrayList<>()).add(corners.size() - 1);
        return corners.size() - 1;
    }

    /** Which triangle lies across each edge; refuses open, doubled and wrongly turned edges. */
    private static int[] neighbours(int[] faces, List<Vec3> corners) {
        long n = corners.size();
        Map<Long, Integer> edges = new HashMap<>();
        for (int at = 0; at < faces.length; at++) {
            int from = faces[at];
            int to = faces[next(at)];
            Integer other = edges.put(from * n + to, at);
            if (other != null) {
                throw new IllegalArgumentException("triangles " + (other / 3 + 1) + " and " + (at / 3 + 1)
                        + " of the mesh both run along the edge " + edge(from, to, corners)
                        + " in the same direction: either one of them is turned inside out (recalculate the normals) or"
                        + " more than two triangles meet there (separate the parts) in the program that made the mesh");
            }
        }
        int[] across = new int[faces.length];
        int open = 0;
        int first = -1;
        for (int at = 0; at < faces.length; at++) {
            Integer other = edges.get(faces[next(at)] * n + faces[at]);
            if (other == null) {
                open++;
                first = first < 0 ? at : first;
            } else {
                across[at] = other / 3;
            }
        }
        if (open > 0) {
            throw new IllegalArgumentException("the mesh has a hole: " + open
                    + " edges belong to one triangle only, the first is "
                    + edge(faces[first], faces[next(first)], corners)
                    + " of triangle " + (first / 3 + 1) + "; fill the holes in the program that made the mesh");
        }
        return across;
    }

    /** The place after {@code at} within the same triangle. */
    static int next(int at) {
        return at % 3 == 2 ? at - 2 : at + 1;
    }

    private static String edge(int from, int to, List<Vec3> corners) {
        return "from " + millimetres(corners.get(from)) + " to " + millimetres(corners.get(to));
    }

    private static String millimetres(Vec3 p) {
        return "(" + rounded(p.x()) + ", " + rounded(p.y()) + ", " + rounded(p.z()) + ") mm";
    }

    private static double rounded(double metres) {
        return Math.round(metres * 1e6) / 1e3;
    }
}
