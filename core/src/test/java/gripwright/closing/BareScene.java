package gripwright.closing;

import gripwright.contact.LinkContacts;
import gripwright.contact.PadPoints;
import gripwright.contact.PadPoints.Point;
import gripwright.drive.TendonDrive;
import gripwright.math.Pose;
import gripwright.math.Rotation;
import gripwright.math.Vec3;
import gripwright.mechanics.HandTree;
import gripwright.mechanics.Kinematics;
import gripwright.model.Finger;
import gripwright.model.FingerTendon;
import gripwright.model.Floating;
import gripwright.model.FrictionTable;
import gripwright.model.Hand;
import gripwright.model.Joint;
import gripwright.model.Motor;
import gripwright.model.PadLayer;
import gripwright.model.Palm;
import gripwright.model.Phalanx;
import gripwright.model.PinJoint;
import gripwright.model.Rubber;
import gripwright.model.Spread;
import gripwright.model.Transmission.Branch;
import gripwright.shape.Shape;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * Bare links on pins, closed on a shape by a constant tension, solved with the product's own step system: what textbook
 * statics describes. A contact is one bead per link. It either sits at a stated place, or follows the place where the
 * link comes nearest to the shape: then a single spring acts there, as on a smooth capsule. Because the bead moves only
 * between the (short, damped) steps, its state of rest is that of the capsule.
 */
final class BareScene {
    /** Half of the penetration over which a contact's stiffness builds up [m]: a linear spring starts that far out. */
    static final double HALF_TOE = 5e-5;

    record Link(double length, double arm, double rate, double rest, double lower, double upper) {}

    record Chain(Vec3 base, double closesToward, List<Link> links) {}

    /** A bead at a stated place in the frame of a body (0 = palm). */
    record Bead(int body, Vec3 place) {}

    private final List<Chain> chains;
    private final Shape shape;
    private final List<Bead> beads = new ArrayList<>();
    private boolean follow;
    private boolean palm;
    private double stiffness = 1e9;
    private double radius;
    double friction;
    double tension;
    double mass;
    boolean table;
    boolean fixed;
    boolean turnLocked = true;
    boolean weightless = true;
    Pose base = Pose.IDENTITY;
    double longestStep = 5e-4;
    /** Residual at which a step is solved [N]; 0 = fine enough for the contacts' stiffness. */
    double tolerance;
    /** Motion allowed in a step [m]. */
    double reach = 5e-4;

    double[] q;
    final double[] p = new double[3];
    final double[] r = Rotation.IDENTITY.toArray();
    final Hand shell;
    private final HandTree tree;

    /** The system of the last step taken. */
    StepSystem last;

    BareScene(List<Chain> chains, Shape shape) {
        this.chains = chains;
        this.shape = shape;
        shell = hand(chains, 1);
        tree = HandTree.of(shell, Map.of());
        q = Rig.openAngles(tree);
        last = build(q, 0);
    }

    BareScene beads(List<Bead> fixedBeads, double beadStiffness) {
        beads.addAll(fixedBeads);
        stiffness = beadStiffness;
        return this;
    }

    /** One bead per link (and one on the palm's plane) at the place nearest to the shape. */
    BareScene capsules(double linkRadius, double contactStiffness, boolean withPalm) {
        follow = true;
        radius = linkRadius;
        stiffness = contactStiffness;
        palm = withPalm;
        return this;
    }

    /** Links as chains of beads of a fixed pitch, the way bones are laid; friction is remembered from step to step. */
    BareScene chains(double linkRadius, double pitch, double beadStiffness, boolean withPalm) {
        radius = linkRadius;
        stiffness = beadStiffness;
        for (int b = withPalm ? 0 : 1; b < tree.bodies().size(); b++) {
            HandTree.Body body = tree.bodies().get(b);
            double length = b == 0 ? 0 : chains.get(body.finger()).links.get(body.phalanx()).length;
            int n = (int) Math.round(length / pitch);
            for (int i = 0; i <= n && b > 0; i++) {
                beads.add(new Bead(b, new Vec3(length * i / n, 0, 0)));
            }
        }
        return this;
    }

    static Hand hand(List<Chain> chains, double tension) {
        Rubber none = new Rubber("none", 1e6, "invented");
        PadLayer pad = new PadLayer(0.01, 0.001, none);
        List<Finger> fingers = new ArrayList<>();
        List<Branch> branches = new ArrayList<>();
        for (Chain chain : chains) {
            String name = "f" + fingers.size();
            fingers.add(new Finger(
                    name,
                    chain.base,
                    chain.closesToward,
                    chain.links.stream()
                            .map(l -> new Phalanx(l.length, 0.01, 0.002, pad, Phalanx.Tip.SQUARE))
                            .toList(),
                    chain.links.stream()
                            .map(l -> new Joint(
                                    new PinJoint(l.rate, OptionalDouble.empty()), l.rest, l.lower, l.upper, l.arm))
                            .toList()));
            branches.add(new Branch(1, new FingerTendon(name)));
        }
        Motor motor = new Motor("m", new Floating(branches), tension, 1e4, 0, Map.of(), Motor.WhenOff.POWERED);
        return new Hand(
                "bare",
                new Palm(0.01, 0.01, 0.001, pad),
                fingers,
                List.of(motor),
                new FrictionTable(Map.of(), Spread.exactly(0)),
                Optional.empty(),
                List.of());
    }

    private StepSystem build(double[] at, double pull) {
        int bodies = tree.bodies().size();
        PadPoints.Builder points = new PadPoints.Builder();
        for (int b = 0; b < bodies; b++) {
            points.body();
            for (Bead bead : beads) {
                if (bead.body == b) {
                    points.row(List.of(bead(bead.place, b == 0 && follow ? 0 : radius)));
                }
            }
        }
        Hand pulled = hand(chains, Math.max(pull, 1e-9));
        TendonDrive drive = new TendonDrive(
                pulled.fingers(),
                pulled.motors(),
                Rig.flexions(tree, chains.size()),
                Rig.openAngles(tree),
                Set.copyOf(pulled.fingers().stream().map(Finger::name).toList()));
        StepSystem s =
                new StepSystem(new Rig(tree, points.build(), LinkContacts.none(bodies), drive, at.clone()), shape);
        s.objectFixed = fixed;
        s.turnLocked = turnLocked;
        s.tableThere = table;
        s.object.mass = mass;
        s.object.push[2] = weightless ? mass * FreeObject.GRAVITY : 0;
        s.pads.reset(points.build().surfaces().isEmpty() ? new double[0] : new double[] {friction}, 1);
        s.table.reset(friction);
        s.kinematics.setBase(base);
        System.arraycopy(at, 0, s.q, 0, at.length);
        System.arraycopy(p, 0, s.p, 0, 3);
        System.arraycopy(r, 0, s.r, 0, 9);
        drive.reset(s.q);
        drive.wind(0, 10);
        s.commit();
        return s;
    }

    private Point bead(Vec3 place, double beadRadius) {
        // as stiff as asked for beyond the toe; a bead that stands for a linear spring starts half a toe earlier
        double lift = follow && stiffness < 1e6 ? HALF_TOE : 0;
        return new Point(place, Vec3.Y, beadRadius + lift, stiffness, stiffness, 0, PadPoints.BONE);
    }

    /** Where each link comes nearest to the shape; the palm's bead is the foot of the shape's origin. */
    private void placeBeads() {
        beads.clear();
        Kinematics k = new Kinematics(tree);
        k.setBase(base);
        k.update(q);
        Pose object = new Pose(new Vec3(p[0], p[1], p[2]), Rotation.of(r, 0));
        if (palm) {
            Vec3 foot = base.applyInverse(object.position());
            beads.add(new Bead(0, new Vec3(foot.x(), foot.y(), 0)));
        }
        for (int b = 1; b < tree.bodies().size(); b++) {
            HandTree.Body body = tree.bodies().get(b);
            double length = chains.get(body.finger()).links.get(body.phalanx()).length;
            beads.add(new Bead(b, new Vec3(nearest(k.pose(body.frame()), object, length), 0, 0)));
        }
    }

    private double nearest(Pose link, Pose object, double length) {
        double[] gradient = new double[3];
        double[] hessian = new double[6];
        Vec3 along = object.rotation().applyInverse(link.rotation().column(0));
        double low = 0;
        double high = length;
        for (int i = 0; i < 60; i++) {
            double middle = 0.5 * (low + high);
            Vec3 y = object.applyInverse(link.apply(new Vec3(middle, 0, 0)));
            shape.derivatives(y.x(), y.y(), y.z(), gradient, hessian);
            if (along.dot(new Vec3(gradient[0], gradient[1], gradient[2])) < 0) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return 0.5 * (low + high);
    }

    /**
     * Raises the tension over {@code ramp} seconds and waits until nothing moves.
     *
     * @return steps taken
     */
    int close(double ramp, int mostSteps) {
        double time = 0;
        double h = 1e-4;
        int still = 0;
        for (int i = 0; i < mostSteps; i++) {
            if (follow) {
                placeBeads();
            }
            double pull = ramp <= 0 ? tension : tension * Math.min(1, (time + h) / ramp);
            StepSystem s = build(q, pull);
            s.stepTime = h;
            Newton.End end = new Newton(s).solve(tolerance > 0 ? tolerance : 1e-9 + 3e-17 * stiffness, () -> false);
            double motion = s.objectFixed ? 0 : s.objectMotion();
            for (int j = 0; j < q.length; j++) {
                motion = Math.max(motion, StepSystem.JOINT_LENGTH * Math.abs(s.q[j] - q[j]));
            }
            if (end != Newton.End.CONVERGED || motion > reach) {
                h *= 0.4;
                if (h < 1e-12) {
                    throw new AssertionError("no step short enough: " + end + ", motion " + motion);
                }
                continue;
            }
            s.evaluate(false);
            s.commit();
            time += h;
            last = s;
            System.arraycopy(s.q, 0, q, 0, q.length);
            System.arraycopy(s.p, 0, p, 0, 3);
            System.arraycopy(s.r, 0, r, 0, 9);
            still = time > ramp && motion / h < 1e-8 ? still + 1 : 0;
            if (still > 3) {
                return i;
            }
            h = Math.min(longestStep, 1.5 * h);
        }
        return mostSteps;
    }

    /** One system with its memory of friction, tendons unwound: for runs with the product's own stepping. */
    StepSystem once() {
        StepSystem s = build(q, tension);
        s.rig.drive().reset(s.q);
        s.commit();
        return s;
    }

    /** Normal force on a body [N]. */
    double force(int body) {
        return last.pads.bodyForce(body);
    }

    /** Place of the first bead on a body along its link [m]; NaN without one. */
    double beadAt(int body) {
        return beads.stream()
                .filter(b -> b.body == body)
                .mapToDouble(b -> b.place.x())
                .findFirst()
                .orElse(Double.NaN);
    }

    /** Sum of the contact forces of the hand on the object [N], world. */
    Vec3 forceOnObject() {
        return forceOnObject(0, last.rig.points().bodies());
    }

    /** Sum of those of the bodies from {@code first} to before {@code end}. */
    Vec3 forceOnObject(int first, int end) {
        double[] f = new double[6];
        Vec3 sum = Vec3.ZERO;
        PadPoints points = last.rig.points();
        for (int b = first; b < end; b++) {
            for (int i = points.firstPoint(b); i < points.firstPoint(b + 1); i++) {
                if (last.pads.force(i) > 0) {
                    last.pads.forceOnObject(i, last.objectRotation, last.objectPosition, b, f);
                    sum = sum.plus(new Vec3(f[0], f[1], f[2]).times(last.pads.force(i)))
                            .plus(new Vec3(f[3], f[4], f[5]));
                }
            }
        }
        return Rotation.of(r, 0).apply(sum);
    }
}
