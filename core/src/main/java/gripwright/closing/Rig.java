package gripwright.closing;

import gripwright.contact.HandPoints;
import gripwright.contact.LinkContacts;
import gripwright.contact.PadPoints;
import gripwright.drive.TendonDrive;
import gripwright.mechanics.HandTree;
import gripwright.model.Grip;
import gripwright.model.Hand;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * A hand made ready for one grip: its tree, its contact points, its tendons. One rig per simulator, because tendons and
 * link contacts carry the memory of the run.
 */
record Rig(HandTree tree, PadPoints points, LinkContacts links, TendonDrive drive, double[] open) {
    static Rig of(Hand hand, Grip grip, Numerics numerics) {
        List<String> names = hand.fingers().stream().map(f -> f.name()).toList();
        for (String finger : grip.fingers()) {
            if (!names.contains(finger)) {
                throw new IllegalArgumentException(
                        "grip '" + grip.name() + "' names the finger '" + finger + "'; the hand has " + names);
            }
        }
        Set<String> taking = new HashSet<>(grip.fingers());
        HandTree tree = HandTree.of(hand, grip.turned());
        double[] open = openAngles(tree);
        TendonDrive drive = new TendonDrive(
                hand.fingers(), hand.motors(), flexions(tree, hand.fingers().size()), open, taking);
        PadPoints points = HandPoints.of(hand, numerics.padRows(), numerics.padColumns());
        return new Rig(tree, points, LinkContacts.of(hand), drive, open);
    }

    /** No hand at all: for an object alone on the table. */
    static Rig empty() {
        HandTree tree = HandTree.empty();
        return new Rig(
                tree,
                new PadPoints.Builder().build(),
                LinkContacts.none(0),
                new TendonDrive(List.of(), List.of(), List.of(), new double[0], Set.of()),
                new double[0]);
    }

    /** Where the springs hold the open hand: each coordinate at rest, or at the stop that its rest angle lies beyond. */
    static double[] openAngles(HandTree tree) {
        return tree.coordinates().stream()
                .mapToDouble(c -> Math.max(c.lower(), Math.min(c.upper(), c.rest())))
                .toArray();
    }

    /** Per finger its flexion coordinates, proximal first. */
    static List<int[]> flexions(HandTree tree, int fingers) {
        List<int[]> out = new ArrayList<>();
        for (int f = 0; f < fingers; f++) {
            List<Integer> mine = new ArrayList<>();
            for (int j = 0; j < tree.size(); j++) {
                if (tree.coordinates().get(j).finger() == f
                        && tree.coordinates().get(j).flexion()) {
                    mine.add(j);
                }
            }
            out.add(mine.stream().mapToInt(Integer::intValue).toArray());
        }
        return out;
    }
}
