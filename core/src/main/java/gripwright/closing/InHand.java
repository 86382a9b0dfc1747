package gripwright.closing;

import gripwright.math.Pose;
import gripwright.math.Rotation;
import gripwright.math.Vec3;

/** Where the object has gone in the hand since it was held: what the arm gives does not count. World axes. */
final class InHand {
    private final StepSystem system;
    /** Poses of palm and object, and the object's centre of mass, in the held state. */
    final Pose palm;

    final Pose object;
    final Vec3 centre;

    /** Takes the system's present state, with its poses up to date, as the held one. */
    InHand(StepSystem system) {
        this.system = system;
        palm = system.bodyPose(0);
        object = objectPose();
        centre = centreOfMass();
    }

    private Pose objectPose() {
        return new Pose(new Vec3(system.p[0], system.p[1], system.p[2]), Rotation.of(system.r, 0));
    }

    private Vec3 centreOfMass() {
        double[] c = system.object.centreOfMass;
        return objectPose().apply(new Vec3(c[0], c[1], c[2]));
    }

    /** Displacement of the centre of mass [m]. */
    Vec3 moved() {
        Pose now = system.bodyPose(0);
        return centreOfMass().minus(now.apply(palm.applyInverse(centre)));
    }

    /** Turn of the object [rad]. */
    double turned() {
        Rotation own = objectPose().rotation().times(object.rotation().inverse());
        Rotation q = palmTurn().inverse().times(own);
        return StrictMath.acos(Math.max(-1, Math.min(1, 0.5 * (q.xx() + q.yy() + q.zz() - 1))));
    }

    /** Turn of the palm itself about an axis of length 1 [rad]. */
    double palmTwist(Vec3 axis) {
        return twist(palmTurn(), axis);
    }

    private Rotation palmTurn() {
        return system.bodyPose(0).rotation().times(palm.rotation().inverse());
    }

    /** The part of a rotation that is about the axis n: its swing across n taken off (closed form, from the quaternion). */
    static double twist(Rotation q, Vec3 n) {
        double sine = 0.5 * (n.x() * (q.zy() - q.yz()) + n.y() * (q.xz() - q.zx()) + n.z() * (q.yx() - q.xy()));
        double cosine = 0.5 * (q.xx() + q.yy() + q.zz() - n.dot(q.apply(n)));
        return StrictMath.atan2(sine, cosine);
    }
}
