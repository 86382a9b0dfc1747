package gripwright.shape;

import gripwright.math.Vec3;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Triangle meshes of known solids, for tests. */
final class Meshes {
    private Meshes() {}

    /** Twelve triangles about the origin, half sizes [m]. */
    static List<Triangle> box(double a, double b, double c) {
        Vec3[] p = new Vec3[8];
        for (int i = 0; i < 8; i++) {
            p[i] = new Vec3((i & 1) == 0 ? -a : a, (i & 2) == 0 ? -b : b, (i & 4) == 0 ? -c : c);
        }
        int[][] quads = {{0, 2, 3, 1}, {4, 5, 7, 6}, {0, 1, 5, 4}, {2, 6, 7, 3}, {0, 4, 6, 2}, {1, 3, 7, 5}};
        List<Triangle> all = new ArrayList<>();
        for (int[] q : quads) {
            all.add(new Triangle(p[q[0]], p[q[1]], p[q[2]]));
            all.add(new Triangle(p[q[0]], p[q[2]], p[q[3]]));
        }
        return all;
    }

    /** An octahedron whose triangles are split {@code levels} times and pushed out to the sphere. */
    static List<Triangle> sphere(double radius, int levels) {
        Vec3[] axes = {Vec3.X, Vec3.Y, Vec3.X.times(-1), Vec3.Y.times(-1)};
        List<Triangle> all = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            Vec3 a = axes[i];
            Vec3 b = axes[(i + 1) % 4];
            all.add(new Triangle(a, b, Vec3.Z));
            all.add(new Triangle(b, a, Vec3.Z.times(-1)));
        }
        for (int level = 0; level < levels; level++) {
            Map<List<Vec3>, Vec3> middles = new HashMap<>();
            List<Triangle> finer = new ArrayList<>();
            for (Triangle t : all) {
                Vec3 ab = middle(t.a(), t.b(), middles);
                Vec3 bc = middle(t.b(), t.c(), middles);
                Vec3 ca = middle(t.c(), t.a(), middles);
                finer.add(new Triangle(t.a(), ab, ca));
                finer.add(new Triangle(ab, t.b(), bc));
                finer.add(new Triangle(ca, bc, t.c()));
                finer.add(new Triangle(ab, bc, ca));
            }
            all = finer;
        }
        return all.stream()
                .map(t -> new Triangle(t.a().times(radius), t.b().times(radius), t.c().times(radius)))
                .toList();
    }

    private static Vec3 middle(Vec3 a, Vec3 b, Map<List<Vec3>, Vec3> known) {
        Vec3 found = known.get(List.of(b, a));
        return found != null
                ? found
                : known.computeIfAbsent(List.of(a, b), pair -> a.plus(b).unit());
    }

    /** The same triangles turned inside out. */
    static List<Triangle> flipped(List<Triangle> triangles) {
        return triangles.stream().map(t -> new Triangle(t.a(), t.c(), t.b())).toList();
    }
}
