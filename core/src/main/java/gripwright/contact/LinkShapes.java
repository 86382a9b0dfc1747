package gripwright.contact;

import gripwright.model.Finger;
import gripwright.model.Hand;
import gripwright.model.Palm;
import gripwright.model.Phalanx;
import java.util.ArrayList;
import java.util.List;

/**
 * What the links of a hand are to the table and to each other: spheres at their ends, and capsules round the lines through
 * their joints. Bodies in the order palm, phalanges finger by finger. Immutable.
 */
final class LinkShapes {
    /** Capsules leave out the corners of a phalanx: this share of the pad's height is the radius. */
    private static final double CAPSULE = 0.85;

    /** A sphere in the frame of its body [m]. */
    record Sphere(int body, double x, double y, double z, double radius) {}

    /** A phalanx as a capsule from its joint along x [m]; the palm has none: finger -1, length 0. */
    record Capsule(int finger, double length, double radius) {}

    final int bodies;
    final Sphere[] spheres;
    /** Length and radius of each body's capsule [m]. */
    final double[] length;

    final double[] radius;
    /** Bodies of the pairs of capsules that may meet: phalanges of different fingers. */
    final int[] pairA;

    final int[] pairB;
    /** Farthest place of any contact from the origin of its body [m]. */
    final double[] reach;

    private LinkShapes(List<Sphere> spheres, List<Capsule> capsules) {
        bodies = capsules.size();
        this.spheres = spheres.toArray(new Sphere[0]);
        length = capsules.stream().mapToDouble(Capsule::length).toArray();
        radius = capsules.stream().mapToDouble(Capsule::radius).toArray();
        reach = capsules.stream().mapToDouble(c -> c.length + c.radius).toArray();
        for (Sphere s : spheres) {
            double far = Math.sqrt(s.x * s.x + s.y * s.y + s.z * s.z) + s.radius;
            reach[s.body] = Math.max(reach[s.body], far);
        }
        List<int[]> pairs = new ArrayList<>();
        for (int a = 1; a < bodies; a++) {
            for (int b = a + 1; b < bodies; b++) {
                if (capsules.get(a).finger != capsules.get(b).finger) {
                    pairs.add(new int[] {a, b});
                }
            }
        }
        pairA = pairs.stream().mapToInt(p -> p[0]).toArray();
        pairB = pairs.stream().mapToInt(p -> p[1]).toArray();
    }

    static LinkShapes of(Hand hand) {
        List<Sphere> spheres = new ArrayList<>();
        List<Capsule> capsules = new ArrayList<>();
        addPalm(hand.palm(), spheres);
        capsules.add(new Capsule(-1, 0, 0));
        for (int f = 0; f < hand.fingers().size(); f++) {
            Finger finger = hand.fingers().get(f);
            for (Phalanx phalanx : finger.phalanges()) {
                int body = capsules.size();
                double r = phalanx.tip() == Phalanx.Tip.ROUND ? phalanx.padHeight() : phalanx.bone() / 2;
                double side = Math.max(0, phalanx.width() / 2 - r);
                spheres.add(new Sphere(body, phalanx.length(), 0, side, r));
                spheres.add(new Sphere(body, phalanx.length(), 0, -side, r));
                double round = Math.min(CAPSULE * phalanx.padHeight(), phalanx.width() / 2);
                capsules.add(new Capsule(f, phalanx.length(), round));
            }
        }
        return new LinkShapes(spheres, capsules);
    }

    /** The four corners of its plate. */
    private static void addPalm(Palm palm, List<Sphere> spheres) {
        double edge = palm.bone() / 2;
        double px = Math.max(0, palm.sizeX() / 2 - edge);
        double py = Math.max(0, palm.sizeY() / 2 - edge);
        double z = -palm.pad().thickness() - edge;
        for (int i = 0; i < 4; i++) {
            spheres.add(new Sphere(0, (i & 1) == 0 ? px : -px, (i & 2) == 0 ? py : -py, z, edge));
        }
    }

    /** Bodies without any shape. */
    static LinkShapes none(int bodies) {
        List<Capsule> capsules = new ArrayList<>();
        for (int b = 0; b < bodies; b++) {
            capsules.add(new Capsule(-1, 0, 0));
        }
        return new LinkShapes(List.of(), capsules);
    }
}
