package gripwright.closing;

import gripwright.math.Vec3;
import gripwright.model.ArmCompliance;
import gripwright.model.Finger;
import gripwright.model.Hand;
import gripwright.model.Joint;
import gripwright.model.Motor;
import gripwright.model.PadLayer;
import gripwright.model.Palm;
import gripwright.model.Phalanx;
import gripwright.model.PinJoint;
import gripwright.model.Rubber;
import gripwright.model.Spread;
import gripwright.shape.Box;
import gripwright.shape.Cylinder;
import gripwright.shape.Shape;
import gripwright.shape.Sphere;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;

/** Hands, objects and places to start from for tests of whole runs; all numbers invented. */
final class Starts {
    private Starts() {}

    record Start(String name, Shape shape, double height, double mass) {}

    static final List<Start> OBJECTS = List.of(
            new Start("sphere 70", new Sphere(0.035), 0.07, 0.18),
            new Start("cylinder 60 x 100", new Cylinder(0.03, 0.05, 0.003), 0.10, 0.3),
            new Start("box 60", new Box(0.03, 0.03, 0.03, 0.003), 0.06, 0.2));

    static ClosingSimulator simulator(Hand hand, Start start, Numerics numerics) {
        return new ClosingSimulator(
                hand,
                BenchHands.above(0.13 - start.height),
                BenchHands.object(start.name, start.shape, start.mass),
                Spread.exactly(0.4),
                numerics,
                Criteria.DEFAULT);
    }

    static Hand someHand(long seed) {
        Hand plain = BenchHands.threeFinger(
                seed % 3 == 0 ? OptionalDouble.empty() : OptionalDouble.of(2), seed % 2 == 0 ? 0 : 0.12);
        if (seed % 4 != 1) {
            return plain;
        }
        return new Hand(
                plain.name(),
                plain.palm(),
                plain.fingers(),
                plain.motors(),
                plain.friction(),
                Optional.of(new ArmCompliance(new Vec3(6e3, 5e3, 9e3), new Vec3(40, 40, 20))),
                plain.grips());
    }

    static Conditions somewhere(Random random, double span) {
        return Conditions.at(
                span * (2 * random.nextDouble() - 1),
                span * (2 * random.nextDouble() - 1),
                0.6 * (2 * random.nextDouble() - 1));
    }

    static Hand turned(Hand hand, double by) {
        List<Finger> fingers = hand.fingers().stream()
                .map(f -> new Finger(
                        f.name(),
                        new Vec3(
                                f.base().x() * Math.cos(by) - f.base().y() * Math.sin(by),
                                f.base().x() * Math.sin(by) + f.base().y() * Math.cos(by),
                                f.base().z()),
                        f.closesToward() + by,
                        f.phalanges(),
                        f.joints()))
                .toList();
        return new Hand(hand.name(), hand.palm(), fingers, hand.motors(), hand.friction(), hand.arm(), hand.grips());
    }
    /** The same hand with rubbers and springs, greatest tension times a factor, and another tendon. */
    static Hand scaled(Hand hand, double stiffness, double tension, double tendon) {
        Rubber rubber = new Rubber("soft", 0.4e6 * stiffness, "given", 2.5);
        List<Finger> fingers = new ArrayList<>();
        for (Finger f : hand.fingers()) {
            fingers.add(new Finger(
                    f.name(),
                    f.base(),
                    f.closesToward(),
                    f.phalanges().stream()
                            .map(p -> new Phalanx(
                                    p.length(),
                                    p.width(),
                                    p.bone(),
                                    new PadLayer(p.pad().length(), p.pad().thickness(), rubber),
                                    p.tip()))
                            .toList(),
                    f.joints().stream()
                            .map(j -> new Joint(
                                    new PinJoint(
                                            j.kind().bendingRate() * stiffness,
                                            j.kind().sidewaysRate()),
                                    j.rest(),
                                    j.lower(),
                                    j.upper(),
                                    j.momentArm()))
                            .toList()));
        }
        Palm palm = hand.palm();
        Motor m = hand.motors().get(0);
        return new Hand(
                hand.name(),
                new Palm(
                        palm.sizeX(),
                        palm.sizeY(),
                        palm.bone(),
                        new PadLayer(palm.pad().length(), palm.pad().thickness(), rubber)),
                fingers,
                List.of(new Motor(
                        m.name(),
                        m.pulls(),
                        tension * m.greatestTension(),
                        tendon,
                        m.sheathFriction(),
                        m.wrap(),
                        m.whenOff())),
                hand.friction(),
                hand.arm(),
                hand.grips());
    }
}
