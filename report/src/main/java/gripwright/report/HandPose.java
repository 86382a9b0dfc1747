package gripwright.report;

import gripwright.math.Pose;
import gripwright.math.Rotation;
import gripwright.math.Vec3;
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
        List<Pose> out = new ArrayList<>();
        out.add(Pose.IDENTITY);
        for (Finger finger : hand.fingers()) {
            double heading = finger.closesToward() + turned.getOrDefault(finger.name(), 0.0);
            Vec3 toward = new Vec3(Math.cos(heading), Math.sin(heading), 0);
            Vec3 at = finger.base();
            double bend = 0;
            for (int i = 0; i < finger.phalanges().size(); i++) {
                bend += angle.applyAsDouble(finger.joints().get(i));
                Vec3 along = toward.times(-Math.cos(bend)).plus(Vec3.Z.times(Math.sin(bend)));
                Vec3 padSide = toward.times(Math.sin(bend)).plus(Vec3.Z.times(Math.cos(bend)));
                out.add(new Pose(at, Rotation.ofColumns(along, padSide, along.cross(padSide))));
                at = at.plus(along.times(finger.phalanges().get(i).length()));
            }
        }
        return out;
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
