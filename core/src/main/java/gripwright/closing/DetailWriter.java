package gripwright.closing;

import gripwright.closing.ClosingDetail.JointState;
import gripwright.closing.ClosingDetail.MotorState;
import gripwright.closing.ContactForce.Kind;
import gripwright.contact.PadPoints;
import gripwright.math.Pose;
import gripwright.math.Rotation;
import gripwright.math.Vec3;
import gripwright.mechanics.HandTree;
import gripwright.model.GraspObject;
import gripwright.model.Hand;
import java.util.ArrayList;
import java.util.List;

/** Writes down the state at the end of a run. */
final class DetailWriter {
    private final StepSystem system;
    private final RunWatch watch;
    private final GraspObject object;
    private final Criteria criteria;
    private final Numerics numerics;
    private final Hand hand;
    private final List<String> bodies;

    DetailWriter(
            StepSystem system, RunWatch watch, GraspObject object, Criteria criteria, Numerics numerics, Hand hand) {
        this.system = system;
        this.watch = watch;
        this.object = object;
        this.criteria = criteria;
        this.numerics = numerics;
        this.hand = hand;
        bodies = system.rig.tree().bodies().stream().map(HandTree.Body::name).toList();
    }

    ClosingDetail write(ClosingSummary summary, Conditions conditions, String trouble) {
        Pose pose = new Pose(new Vec3(system.p[0], system.p[1], system.p[2]), Rotation.of(system.r, 0));
        List<PadPoint> points = new ArrayList<>();
        List<Pose> poses = new ArrayList<>();
        for (int b = 0; b < bodies.size(); b++) {
            poses.add(system.bodyPose(b));
            for (int i = system.rig.points().firstPoint(b);
                    i < system.rig.points().firstPoint(b + 1);
                    i++) {
                PadPoints.Point p = system.rig.points().points().get(i);
                points.add(new PadPoint(b, p.place(), p.normal(), p.area()));
            }
        }
        return new ClosingDetail(
                summary,
                conditions,
                criteria,
                numerics,
                Reason.of(summary, criteria, object, watch, bodies, trouble),
                Reason.cautions(summary, hand),
                bodies,
                joints(),
                motors(),
                contacts(pose),
                poses,
                pose,
                pose.apply(object.centreOfMass()),
                new Vec3(0, 0, -system.object.mass * FreeObject.GRAVITY),
                system.tableHeight,
                watch.firstTouches(),
                points,
                watch.frames());
    }

    private List<JointState> joints() {
        List<JointState> out = new ArrayList<>();
        double[] fp = system.kinematics.position();
        double[] fa = system.kinematics.axis();
        for (int j = 0; j < system.joints; j++) {
            HandTree.Coordinate c = system.rig.tree().coordinates().get(j);
            int body = bodyOf(j);
            double tension = c.flexion() ? system.rig.drive().jointTension(c.finger(), c.phalanx()) : 0;
            out.add(new JointState(
                    c.name(),
                    body,
                    system.q[j],
                    new Vec3(fp[3 * j], fp[3 * j + 1], fp[3 * j + 2]),
                    new Vec3(fa[3 * j], fa[3 * j + 1], fa[3 * j + 2]),
                    c.slides(),
                    system.springs.rateOf(j),
                    c.rest(),
                    c.lower(),
                    c.upper(),
                    system.springs.moment(j, system.q[j]),
                    c.momentArm(),
                    tension,
                    system.jointResidual(j)));
        }
        return out;
    }

    private int bodyOf(int coordinate) {
        HandTree.Coordinate c = system.rig.tree().coordinates().get(coordinate);
        for (int b = 0; b < bodies.size(); b++) {
            HandTree.Body body = system.rig.tree().bodies().get(b);
            if (body.finger() == c.finger() && body.phalanx() == c.phalanx()) {
                return b;
            }
        }
        return 0;
    }

    private List<MotorState> motors() {
        List<MotorState> out = new ArrayList<>();
        for (int m = 0; m < hand.motors().size(); m++) {
            out.add(new MotorState(
                    hand.motors().get(m).name(),
                    system.rig.drive().tension(m),
                    system.rig.drive().wound(m)));
        }
        return out;
    }

    private List<ContactForce> contacts(Pose pose) {
        List<ContactForce> out = new ArrayList<>();
        double[] f = new double[9];
        for (int b = 0; b < bodies.size(); b++) {
            for (int i = system.rig.points().firstPoint(b);
                    i < system.rig.points().firstPoint(b + 1);
                    i++) {
                if (system.pads.force(i) <= 0) {
                    continue;
                }
                PadPoints.Point p = system.rig.points().points().get(i);
                system.pads.forceOnObject(i, system.objectRotation, system.objectPosition, b, f);
                out.add(new ContactForce(
                        p.pad() ? Kind.PAD_ON_OBJECT : Kind.BONE_ON_OBJECT,
                        bodies.get(b),
                        "object",
                        system.bodyPose(b).apply(p.place()),
                        pose.rotation().apply(new Vec3(f[0], f[1], f[2])),
                        system.pads.force(i),
                        pose.rotation().apply(new Vec3(f[3], f[4], f[5])),
                        system.pads.friction(i),
                        p.pad() ? system.pads.force(i) / p.area() : 0));
            }
        }
        for (int i = 0; i < system.table.sites(); i++) {
            if (system.table.force(i) > 0) {
                system.table.forceOnObject(i, system.r, system.p, f);
                out.add(new ContactForce(
                        Kind.TABLE_ON_OBJECT,
                        "table",
                        "object",
                        new Vec3(f[0], f[1], f[2]),
                        Vec3.Z,
                        system.table.force(i),
                        new Vec3(f[3], f[4], 0),
                        system.table.friction(),
                        0));
            }
        }
        for (int i = 0; i < system.rig.links().contacts(); i++) {
            if (system.rig.links().force(i) > 0) {
                system.rig.links().describe(i, system.worldRotation, system.worldPosition, system.tableHeight, f);
                boolean table = system.rig.links().onTable(i);
                out.add(new ContactForce(
                        table ? Kind.FINGER_ON_TABLE : Kind.FINGER_ON_FINGER,
                        bodies.get(system.rig.links().bodyA(i)),
                        table ? "table" : bodies.get(system.rig.links().bodyB(i)),
                        new Vec3(f[0], f[1], f[2]),
                        new Vec3(f[3], f[4], f[5]),
                        system.rig.links().force(i),
                        new Vec3(f[6], f[7], f[8]),
                        system.rig.links().friction(),
                        0));
            }
        }
        return out;
    }
}
