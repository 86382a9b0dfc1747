package gripwright.report;

import gripwright.math.Pose;
import gripwright.math.Vec3;
import gripwright.model.Hand;
import gripwright.model.Phalanx;
import java.util.Comparator;
import java.util.List;

/** A hand at its rest angles, for its side and top views. */
final class RestingHand {
    final Hand hand;
    private final List<Pose> rest;
    private final List<HandBodies.Body> bodies;

    RestingHand(Hand hand) {
        this.hand = hand;
        this.rest = HandPose.atRest(hand);
        this.bodies = HandBodies.of(hand, rest, HandBodies.FINE);
    }

    Box2 bounds(View view) {
        Box2 box = Box2.NOTHING;
        for (HandBodies.Body b : bodies) {
            box = box.with(b.bone().bounds(view)).with(b.pad().bounds(view));
        }
        return box;
    }

    void draw(Svg svg, View.Scaled v) {
        Vec3 near = v.view().near;
        bodies.stream()
                .sorted(Comparator.comparingDouble(b -> near.dot(b.middle())))
                .forEach(b -> b.draw(svg, v));
    }

    /** Poses of the phalanges of a finger. */
    List<Pose> poses(int finger) {
        int first = 1;
        for (int i = 0; i < finger; i++) {
            first += hand.fingers().get(i).phalanges().size();
        }
        return rest.subList(
                first, first + hand.fingers().get(finger).phalanges().size());
    }

    /** End of the last phalanx of a finger, in the hand frame. */
    Vec3 tip(int finger) {
        List<Pose> p = poses(finger);
        Phalanx last = hand.fingers().get(finger).phalanges().get(p.size() - 1);
        return p.get(p.size() - 1).apply(new Vec3(last.length(), 0, 0));
    }
}
