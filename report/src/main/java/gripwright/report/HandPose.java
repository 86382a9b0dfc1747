package gripwright.report;

import gripwright.math.Pose;
import gripwright.math.Rotation;
import gripwright.math.Vec3;
import gripwright.mechanics.HandTree;
import gripwright.mechanics.Kinematics;
import gripwright.model.Finger;
import gripwright.model.Grip;
import gripwright.model.Hand;
import gripwright.model.Joint;
import gripwright.model.Phalanx;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;

/** Where the bodies of a hand are for given joint angles, for drawing it without a run. */
final class HandPose {
    private HandPose() {}

    /**
     * Poses in the hand frame: the palm, then the phalanges finger by finger, proximal first; frames as in
     * {@link gripwright.closing.Frame}.
     *
     * @param turned turn of finger bases about the palm normal by finger [rad]
     * @param angle flexion of a joint [rad]
     */
    static List<Pose> of(Hand hand, Map<String, Double> turned, ToDoubleFunction<Joint> angle) {
        HandTree tree = HandTree.of(hand, turned);
        double[] q = new double[tree.size()];
        for (int i = 0; i < q.length; i++) {
            HandTree.Coordinate c = tree.coordinates().get(i);
            if (c.flexion()) {
                q[i] = angle.applyAsDouble(
                        hand.fingers().get(c.finger()).joints().get(c.phalanx()));
            }
        }
        Kinematics kinematics = new Kinematics(tree);
        kinematics.update(q);
        return tree.bodies().stream().map(body -> kinematics.pose(body.frame())).toList();
    }

    /** The hand at rest, as drawn when nothing is asked of it. */
    static List<Pose> atRest(Hand hand) {
        return of(hand, Map.of(), Joint::rest);
    }

    /** How the hand is turned in the world for a grip. */
    static Rotation turn(Grip grip) {
        Rotation coming = switch (grip.approach()) {
            case ABOVE -> Rotation.ofColumns(Vec3.X, Vec3.Y.times(-1), Vec3.Z.times(-1));
            case SIDE -> Rotation.ofColumns(Vec3.X, Vec3.Z, Vec3.Y.times(-1));
        };
        return coming.times(Rotation.about(Vec3.X, grip.tilt()));
    }

    /** End of the last phalanx of each finger of {@code poses}, in their frame. */
    static List<Vec3> tips(Hand hand, List<Pose> poses) {
        List<Vec3> tips = new ArrayList<>();
        int body = 0;
        for (Finger finger : hand.fingers()) {
            body += finger.phalanges().size();
            Phalanx last = finger.phalanges().get(finger.phalanges().size() - 1);
            tips.add(poses.get(body).apply(new Vec3(last.length(), 0, 0)));
        }
        return tips;
    }
}
