package gripwright.cli;

import gripwright.closing.ClosingDetail;
import gripwright.closing.ClosingDetail.FirstTouch;
import gripwright.closing.ClosingDetail.JointState;
import gripwright.closing.ClosingDetail.MotorState;
import gripwright.closing.ClosingRunner;
import gripwright.closing.ClosingSummary;
import gripwright.closing.Conditions;
import gripwright.closing.ContactForce;
import gripwright.closing.Criteria;
import gripwright.closing.Frame;
import gripwright.closing.HoldDetail;
import gripwright.closing.HoldPlan;
import gripwright.closing.Numerics;
import gripwright.closing.Outcome;
import gripwright.closing.PadPoint;
import gripwright.math.Pose;
import gripwright.math.Rotation;
import gripwright.math.Vec3;
import gripwright.model.Finger;
import gripwright.model.GraspObject;
import gripwright.model.Hand;
import gripwright.model.Project;
import gripwright.study.RunnerFactory;
import java.util.ArrayList;
import java.util.List;

/**
 * Stands in for the closing, so that commands can be tested without it: held within 20 mm of the nominal place, pushed
 * away within 40 mm, undecided on the far side of x, missed elsewhere. Its forces balance a resting object.
 */
final class FakeClosings implements Surroundings.Closings {
    private static final double GRAVITY = 9.81;

    /** Called at each run, to interrupt a study from inside. */
    Runnable atEachRun = () -> {};

    @Override
    public RunnerFactory of(Project project, Numerics numerics) {
        return (object, grip) -> new ClosingRunner() {
            @Override
            public ClosingSummary run(Conditions conditions) {
                atEachRun.run();
                return summary(conditions);
            }

            @Override
            public ClosingDetail detail(Conditions conditions) {
                return FakeClosings.detail(project.hand(), object, conditions, numerics);
            }

            @Override
            public HoldDetail hold(Conditions conditions, HoldPlan plan) {
                return FakeHolds.hold(detail(conditions), plan);
            }
        };
    }

    static Outcome outcome(double x, double y) {
        double off = Math.hypot(x, y);
        if (x > 0.05) {
            return Outcome.UNDECIDED;
        }
        return off < 0.0201 ? Outcome.HELD : off < 0.0401 ? Outcome.PUSHED_AWAY : Outcome.MISSED;
    }

    private static ClosingSummary summary(Conditions c) {
        return new ClosingSummary(
                outcome(c.x(), c.y()), 0.0031, 0.003, 0.001, 0.02, 0.0004, 0.1, 12.3, 23e3, 2, 3e-6, 2e-8, 120, 310);
    }

    private static ClosingDetail detail(Hand hand, GraspObject object, Conditions c, Numerics numerics) {
        List<String> bodies = new ArrayList<>(List.of("palm"));
        List<JointState> joints = new ArrayList<>();
        for (Finger finger : hand.fingers()) {
            for (int i = 0; i < finger.phalanges().size(); i++) {
                bodies.add(finger.name() + " " + (i + 1));
                joints.add(new JointState(
                        finger.name() + " " + (i + 1),
                        bodies.size() - 1,
                        0.75,
                        new Vec3(0.03, 0, 0.1),
                        Vec3.Y,
                        false,
                        0.1,
                        0.3,
                        -0.2,
                        1.8,
                        -0.045,
                        0.008,
                        5.625,
                        1e-9));
            }
        }
        List<Pose> poses = bodies.stream()
                .map(b -> new Pose(new Vec3(0, 0, 0.1), Rotation.about(Vec3.X, Math.PI)))
                .toList();
        double weight = object.mass() * GRAVITY;
        Vec3 centre = new Vec3(c.x(), c.y(), 0.035);
        List<ContactForce> contacts = List.of(
                squeeze(bodies.get(1), centre, new Vec3(-0.03, 0, 0), weight),
                squeeze(bodies.get(bodies.size() - 1), centre, new Vec3(0.03, 0, 0), weight));
        boolean record = numerics.record();
        List<Frame> frames = record ? List.of(frame(hand, poses, centre, bodies.size())) : List.of();
        List<PadPoint> points = record ? List.of(new PadPoint(0, Vec3.ZERO, Vec3.Z, 1e-5)) : List.of();
        return new ClosingDetail(
                summary(c),
                c,
                Criteria.DEFAULT,
                numerics,
                "It is off the table after the lift.",
                List.of(),
                bodies,
                joints,
                List.of(new MotorState(hand.motors().get(0).name(), 40, 0.023)),
                contacts,
                poses,
                new Pose(centre, Rotation.IDENTITY),
                centre,
                new Vec3(0, 0, -weight),
                -0.02,
                List.of(new FirstTouch(1, 8, Frame.Phase.CLOSE)),
                points,
                frames);
    }

    /** One of two opposite pads, each of which bears half the weight. */
    private static ContactForce squeeze(String body, Vec3 centre, Vec3 arm, double weight) {
        return new ContactForce(
                ContactForce.Kind.PAD_ON_OBJECT,
                body,
                "object",
                centre.plus(arm),
                arm.unit().times(-1),
                3,
                new Vec3(0, 0, weight / 2),
                0.8,
                20e3);
    }

    private static Frame frame(Hand hand, List<Pose> poses, Vec3 centre, int bodies) {
        int joints = hand.fingers().stream().mapToInt(f -> f.phalanges().size()).sum();
        return new Frame(
                Frame.Phase.CLOSE,
                List.of(40.0),
                java.util.Collections.nCopies(joints, 0.75),
                poses,
                new Pose(centre, Rotation.IDENTITY),
                java.util.Collections.nCopies(bodies, 1.0),
                new float[] {20e3f},
                0);
    }
}
