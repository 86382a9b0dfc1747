package gripwright.shape;

import gripwright.math.Vec3;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Deque;
import java.util.List;

/** The separate closed shells of a surface. A shell that bounds a cavity is inside out, but then it lies in another. */
final class Bodies {
    private record Shell(int firstFace, double volume, Vec3 low, Vec3 high) {
        boolean holds(Shell other) {
            return low.x() <= other.low.x()
                    && low.y() <= other.low.y()
                    && low.z() <= other.low.z()
                    && high.x() >= other.high.x()
                    && high.y() >= other.high.y()
                    && high.z() >= other.high.z();
        }
    }

    private Bodies() {}

    /** Refuses a shell that is inside out without lying in the box of one that is not. */
    static void check(ClosedSurface surface) {
        List<Shell> shells = shells(surface);
        for (Shell shell : shells) {
            boolean fits =
                    shell.volume >= 0 || shells.stream().anyMatch(outer -> outer.volume > 0 && outer.holds(shell));
            if (!fits) {
                throw new IllegalArgumentException("the mesh has " + shells.size()
                        + " separate bodies; the one with triangle " + (shell.firstFace + 1)
                        + " is turned inside out against the others: recalculate the normals in the program that made"
                        + " the mesh");
            }
        }
    }

    private static List<Shell> shells(ClosedSurface surface) {
        boolean[] seen = new boolean[surface.faces.length / 3];
        List<Shell> shells = new ArrayList<>();
        for (int face = 0; face < seen.length; face++) {
            if (!seen[face]) {
                shells.add(shell(surface, face, seen));
            }
        }
        return shells;
    }

    private static Shell shell(ClosedSurface surface, int first, boolean[] seen) {
        Vec3 apex = surface.corners.get(surface.faces[3 * first]);
        double six = 0;
        double[] box = new double[6];
        Arrays.fill(box, Double.NEGATIVE_INFINITY);
        Deque<Integer> open = new ArrayDeque<>(List.of(first));
        seen[first] = true;
        while (!open.isEmpty()) {
            int face = open.pop();
            Vec3[] p = new Vec3[3];
            for (int k = 0; k < 3; k++) {
                Vec3 corner = surface.corners.get(surface.faces[3 * face + k]);
                p[k] = corner.minus(apex);
                double[] both = {corner.x(), corner.y(), corner.z(), -corner.x(), -corner.y(), -corner.z()};
                Arrays.setAll(box, i -> Math.max(box[i], both[i]));
                int beside = surface.across[3 * face + k];
                if (!seen[beside]) {
                    seen[beside] = true;
                    open.push(beside);
                }
            }
            six += p[0].dot(p[1].cross(p[2]));
        }
        return new Shell(first, six / 6, new Vec3(-box[3], -box[4], -box[5]), new Vec3(box[0], box[1], box[2]));
    }
}
