package gripwright.report;

import gripwright.math.Pose;
import gripwright.math.Vec3;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;

/** A prism with flat and curved sides, drawn in the three tones of the look with its visible edges. */
record Solid(List<Face> faces, Vec3 middle) {
    /**
     * One flat face.
     *
     * @param points corners in order, in the world [m]
     * @param beyond for each corner, the normal of the face beyond the side from it to the next, where the two run on
     *     smoothly: that side is drawn only if the other face cannot be seen; zero = a sharp edge, always drawn
     * @param fill style class, or empty for a tone by its turn to the light
     */
    private record Face(List<Vec3> points, Vec3 normal, List<Vec3> beyond, String fill) {}

    /** A corner of a profile [m]; sharp ones show an edge. */
    record Corner(double x, double y, boolean sharp) {}

    /**
     * A profile in the x-y plane of a body (counter-clockwise), swept along z from -half to +half.
     *
     * @param fill style class, or empty for a tone
     */
    static Solid prism(Pose pose, List<Corner> profile, double half, String fill) {
        int n = profile.size();
        List<Face> faces = new ArrayList<>();
        Vec3 sum = Vec3.ZERO;
        for (int side = -1; side <= 1; side += 2) {
            List<Vec3> points = new ArrayList<>();
            for (Corner c : profile) {
                points.add(pose.apply(new Vec3(c.x, c.y, side * half)));
                sum = sum.plus(points.get(points.size() - 1));
            }
            List<Vec3> sharp = Collections.nCopies(n, Vec3.ZERO);
            faces.add(new Face(points, pose.rotation().apply(new Vec3(0, 0, side)), sharp, fill));
        }
        for (int i = 0; i < n; i++) {
            Corner a = profile.get(i);
            Corner b = profile.get((i + 1) % n);
            List<Vec3> points = List.of(
                    pose.apply(new Vec3(a.x, a.y, -half)),
                    pose.apply(new Vec3(b.x, b.y, -half)),
                    pose.apply(new Vec3(b.x, b.y, half)),
                    pose.apply(new Vec3(a.x, a.y, half)));
            Vec3 next = b.sharp ? Vec3.ZERO : outward(pose, b, profile.get((i + 2) % n));
            Vec3 before = a.sharp ? Vec3.ZERO : outward(pose, profile.get((i + n - 1) % n), a);
            faces.add(new Face(points, outward(pose, a, b), List.of(Vec3.ZERO, next, Vec3.ZERO, before), fill));
        }
        return new Solid(faces, sum.times(1.0 / (2 * n)));
    }

    private static Vec3 outward(Pose pose, Corner a, Corner b) {
        return pose.rotation().apply(new Vec3(b.y - a.y, a.x - b.x, 0).unit());
    }

    /** @param outline whether the border of the whole is drawn heavily; only right for convex profiles */
    void draw(Svg svg, View.Scaled view, boolean outline) {
        Vec3 near = view.view().near;
        List<Face> seen = faces.stream()
                .filter(f -> f.normal.dot(near) > 1e-6)
                .sorted(Comparator.comparingDouble(f -> depth(f, near)))
                .toList();
        StringBuilder edges = new StringBuilder();
        for (Face face : seen) {
            List<Svg.P> p = face.points.stream().map(view::at).toList();
            if (area(p) < 0.4) {
                continue;
            }
            svg.polygon(p, face.fill.isEmpty() ? tone(face.normal, view.view()) : face.fill);
            for (int i = 0; i < p.size(); i++) {
                if (!(face.beyond.get(i).dot(near) > 1e-6)) {
                    edges.append(Svg.data(List.of(p.get(i), p.get((i + 1) % p.size()))));
                }
            }
        }
        if (edges.length() > 0) {
            svg.path(edges.toString(), "t");
        }
        if (outline) {
            outline(svg, view, "o");
        }
    }

    /** The border of the whole; only right for convex profiles. */
    void outline(Svg svg, View.Scaled view, String style) {
        svg.polygon(
                Hull.of(faces.stream()
                        .flatMap(f -> f.points.stream())
                        .map(view::at)
                        .toList()),
                style);
    }

    /** The rectangle it fills in a view [m]. */
    Box2 bounds(View view) {
        Box2 box = Box2.NOTHING;
        for (Face face : faces) {
            for (Vec3 p : face.points) {
                box = box.with(view.right.dot(p), view.up.dot(p));
            }
        }
        return box;
    }

    private static double depth(Face face, Vec3 near) {
        return face.points.stream().mapToDouble(near::dot).average().orElse(0);
    }

    private static double area(List<Svg.P> p) {
        double sum = 0;
        for (int i = 0; i < p.size(); i++) {
            Svg.P a = p.get(i);
            Svg.P b = p.get((i + 1) % p.size());
            sum += a.x() * b.y() - b.x() * a.y();
        }
        return Math.abs(sum) / 2;
    }

    /** Light from the viewer's upper left. */
    private static String tone(Vec3 normal, View view) {
        double d = normal.dot(view.near) * 0.8 + normal.dot(view.up) * 0.5 - normal.dot(view.right) * 0.33;
        return d > 0.6 ? "m1" : d > 0.15 ? "m2" : "m3";
    }
}
