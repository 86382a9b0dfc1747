package gripwright.closing;

import gripwright.math.Pose;
import gripwright.math.Rotation;
import gripwright.math.Vec3;
import gripwright.mechanics.HandTree;
import gripwright.mechanics.Kinematics;
import gripwright.model.Finger;
import gripwright.model.GraspObject;
import gripwright.model.Grip;
import gripwright.model.Hand;
import gripwright.model.Phalanx;

/**
 * Where the hand stands for a grip, and from where it comes.
 *
 * @param hand pose of the hand frame at the grip, nominal, in the world
 * @param direction in which the hand comes [-], world
 * @param retreat how far back along it the way starts [m]
 */
record GripPose(Pose hand, Vec3 direction, double retreat) {
    private static final double MARGIN = 0.02;

    /**
     * @param rest pose of the object's shape at rest at its nominal place
     * @param open coordinate values of the open hand
     */
    static GripPose of(Hand hand, Grip grip, GraspObject object, Pose rest, HandTree tree, double[] open) {
        boolean above = grip.approach() == Grip.Approach.ABOVE;
        // columns: hand x, y, z in the world
        Rotation level = above
                ? Rotation.ofColumns(Vec3.X, Vec3.Y.times(-1), Vec3.Z.times(-1))
                : Rotation.ofColumns(Vec3.X, Vec3.Z, Vec3.Y.times(-1));
        Rotation turn = level.times(Rotation.about(Vec3.X, grip.tilt()));
        Vec3 direction = level.column(2);
        double top = extent(object, rest, Vec3.Z);
        double forward = forwardReach(hand, tree, open, turn, direction);
        Vec3 place;
        double gap;
        if (grip.stand() instanceof Grip.PalmToObject stand) {
            gap = stand.gap();
            if (above) {
                place = new Vec3(grip.aim().x(), grip.aim().y(), top + gap);
            } else {
                double height = Double.isNaN(stand.heightAboveTable()) ? top / 2 : stand.heightAboveTable();
                place = new Vec3(grip.aim().x(), extent(object, rest, Vec3.Y) + gap, height);
            }
        } else if (grip.stand() instanceof Grip.TipsAboveTable stand) {
            place = new Vec3(grip.aim().x(), grip.aim().y(), forward + stand.gap());
            gap = forward + stand.gap() - top;
        } else {
            throw new IllegalStateException("unknown way to stand: " + grip.stand());
        }
        double retreat = Math.max(MARGIN, forward - gap + MARGIN);
        return new GripPose(new Pose(place, turn), direction, retreat);
    }

    /** Largest coordinate of the resting object along a direction [m]. */
    private static double extent(GraspObject object, Pose rest, Vec3 direction) {
        return rest.position().dot(direction)
                + object.shape().extent(rest.rotation().applyInverse(direction));
    }

    /** How far the open hand reaches along the approach beyond the origin of its frame [m]. */
    private static double forwardReach(Hand hand, HandTree tree, double[] open, Rotation turn, Vec3 direction) {
        Kinematics kinematics = new Kinematics(tree);
        kinematics.setBase(new Pose(Vec3.ZERO, turn));
        kinematics.update(open);
        double most = 0;
        for (HandTree.Body body : tree.bodies()) {
            if (body.finger() < 0) {
                continue;
            }
            Finger finger = hand.fingers().get(body.finger());
            Phalanx phalanx = finger.phalanges().get(body.phalanx());
            Pose pose = kinematics.pose(body.frame());
            double round = phalanx.tip() == Phalanx.Tip.ROUND ? phalanx.padHeight() : phalanx.bone() / 2;
            most = Math.max(most, pose.apply(new Vec3(phalanx.length(), 0, 0)).dot(direction) + round);
            most = Math.max(
                    most,
                    pose.apply(new Vec3(phalanx.length() / 2, phalanx.padHeight(), 0))
                            .dot(direction));
        }
        return most;
    }
}
