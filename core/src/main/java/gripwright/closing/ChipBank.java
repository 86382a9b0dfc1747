package gripwright.closing;

import gripwright.contact.PadPoints;
import gripwright.math.Vec3;
import gripwright.mechanics.HandTree;
import gripwright.model.Finger;
import gripwright.model.Hand;
import gripwright.model.Phalanx;
import java.util.Arrays;
import java.util.stream.IntStream;

/** Die pressure of every chip from the forces of its body's pad points. Workspace of one thread. */
final class ChipBank {
    private final StepSystem system;
    private final int[] body;
    private final double[][] weight;
    private final boolean[] felt;
    /** Chips of each body. */
    private final int[][] chipsOf;

    private final double[] force;

    ChipBank(Sensing sensing, Hand hand, StepSystem system) {
        this.system = system;
        body = new int[sensing.chips()];
        weight = new double[sensing.chips()][];
        PadPoints points = system.rig.points();
        felt = new boolean[points.bodies()];
        int chip = 0;
        int most = 0;
        for (Sensing.Strip strip : sensing.strips()) {
            int b = bodyOf(strip, hand, system.rig.tree());
            felt[b] = true;
            int first = points.firstPoint(b);
            int count = points.firstPoint(b + 1) - first;
            most = Math.max(most, count);
            for (int i = 0; i < strip.design().cells(); i++) {
                body[chip] = b;
                weight[chip] = new double[count];
                for (int k = 0; k < count; k++) {
                    weight[chip][k] = weight(
                            strip,
                            i,
                            points.points().get(first + k),
                            hand,
                            system.rig.tree().bodies().get(b));
                }
                chip++;
            }
        }
        force = new double[most];
        chipsOf = new int[points.bodies()][];
        for (int b = 0; b < chipsOf.length; b++) {
            int here = b;
            chipsOf[b] =
                    IntStream.range(0, body.length).filter(c -> body[c] == here).toArray();
        }
    }

    private static int bodyOf(Sensing.Strip strip, Hand hand, HandTree tree) {
        for (int b = 0; b < tree.bodies().size(); b++) {
            HandTree.Body body = tree.bodies().get(b);
            boolean here = body.finger() < 0
                    ? strip.place().palm()
                    : hand.fingers()
                                    .get(body.finger())
                                    .name()
                                    .equals(strip.place().on())
                            && body.phalanx() == strip.place().phalanx();
            if (here) {
                return b;
            }
        }
        throw new IllegalArgumentException("the sensing pad " + strip.design().name() + " lies on phalanx "
                + (strip.place().phalanx() + 1) + " of '" + strip.place().on() + "', which the hand does not have");
    }

    /** Response over the distance along the pad's surface, round a round tip unrolled [Pa/N]. */
    private static double weight(Sensing.Strip strip, int chip, PadPoints.Point point, Hand hand, HandTree.Body body) {
        if (!point.pad()) {
            return 0;
        }
        Vec3 p = point.place();
        double along = p.x();
        double across = p.y();
        if (body.finger() >= 0) {
            Finger finger = hand.fingers().get(body.finger());
            Phalanx phalanx = finger.phalanges().get(body.phalanx());
            across = p.z();
            if (p.x() > phalanx.length() && point.normal().x() > 0) {
                double angle =
                        StrictMath.atan2(point.normal().x(), point.normal().y());
                along = phalanx.length() + phalanx.padHeight() * angle;
            }
            along -= phalanx.length() / 2;
        }
        return strip.response()
                .at(StrictMath.hypot(along - strip.place().shift() - strip.along(chip), across - strip.across(chip)));
    }

    int body(int chip) {
        return body[chip];
    }

    /** After a commit [Pa]. */
    void committed(double[] out) {
        Arrays.fill(out, 0);
        PadPoints points = system.rig.points();
        for (int b = 0; b < felt.length; b++) {
            if (felt[b] && system.pads.bodyForce(b) > 0) {
                int first = points.firstPoint(b);
                int count = points.firstPoint(b + 1) - first;
                for (int i = 0; i < count; i++) {
                    force[i] = system.pads.force(first + i);
                }
                spread(b, count, out);
            }
        }
    }

    /** At the present state within a step [Pa]. */
    void present(double[] out) {
        Arrays.fill(out, 0);
        system.updatePoses();
        PadPoints points = system.rig.points();
        for (int b = 0; b < felt.length; b++) {
            if (felt[b] && system.pads.forcesAt(b, system.objectRotation, system.objectPosition, force)) {
                spread(b, points.firstPoint(b + 1) - points.firstPoint(b), out);
            }
        }
    }

    private void spread(int b, int count, double[] out) {
        for (int i = 0; i < count; i++) {
            double f = force[i];
            if (f > 0) {
                for (int c : chipsOf[b]) {
                    out[c] += f * weight[c][i];
                }
            }
        }
    }
}
