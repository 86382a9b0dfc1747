package gripwright.closing;

import gripwright.math.Rotation;
import gripwright.math.Vec3;
import gripwright.model.Finger;
import gripwright.model.FingerTendon;
import gripwright.model.Floating;
import gripwright.model.FrictionTable;
import gripwright.model.GraspObject;
import gripwright.model.Grip;
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
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Hands and objects for tests; all numbers invented. */
public final class BenchHands {
    private BenchHands() {}

    public static final Rubber SOFT = new Rubber("soft", 0.4e6, "given", 2.5);

    /** Two fingers side by side at +x against a thumb at -x, one motor over a floating differential. */
    public static Hand threeFinger() {
        return threeFinger(OptionalDouble.empty(), 0);
    }

    public static Hand threeFinger(OptionalDouble sideways, double sheathFriction) {
        return threeFinger(sideways, sheathFriction, SOFT);
    }

    /** The rubber must be called "soft": friction is given for that name. */
    public static Hand threeFinger(OptionalDouble sideways, double sheathFriction, Rubber rubber) {
        PadLayer pad = new PadLayer(0.055, 0.004, rubber);
        Phalanx proximal = new Phalanx(0.065, 0.018, 0.010, pad, Phalanx.Tip.SQUARE);
        Phalanx distal = new Phalanx(0.045, 0.018, 0.010, new PadLayer(0.040, 0.004, rubber), Phalanx.Tip.ROUND);
        double quarter = Math.PI / 2;
        List<Joint> joints = List.of(
                new Joint(new PinJoint(0.06, sideways), quarter - 0.45, quarter - 0.5, quarter + 1.4, 0.015),
                new Joint(new PinJoint(0.05, sideways), 0.25, 0, 1.6, 0.0065));
        List<Finger> fingers = List.of(
                new Finger("left", new Vec3(0.040, 0.0225, 0), Math.PI, List.of(proximal, distal), joints),
                new Finger("right", new Vec3(0.040, -0.0225, 0), Math.PI, List.of(proximal, distal), joints),
                new Finger("thumb", new Vec3(-0.040, 0, 0), 0, List.of(proximal, distal), joints));
        Motor motor = new Motor(
                "main",
                new Floating(List.of(
                        new Branch(0.5, new FingerTendon("left")),
                        new Branch(0.5, new FingerTendon("right")),
                        new Branch(1, new FingerTendon("thumb")))),
                60,
                2e4,
                sheathFriction,
                Map.of(),
                Motor.WhenOff.LOCKED);
        return new Hand(
                "bench",
                new Palm(0.07, 0.06, 0.006, new PadLayer(0.07, 0.004, rubber)),
                fingers,
                List.of(motor),
                new FrictionTable(Map.of("soft", Map.of("plain", new Spread(0.8, 0.1))), Spread.exactly(0.3)),
                Optional.empty(),
                List.of(above(0.13)));
    }

    /** From above, the palm's pad this high over the table for an object 70 mm high. */
    public static Grip above(double palmHeight) {
        return new Grip(
                "top",
                Grip.Approach.ABOVE,
                new Grip.PalmToObject(palmHeight, Double.NaN),
                0,
                Map.of(),
                List.of("left", "right", "thumb"));
    }

    public static GraspObject object(String name, Shape shape, double mass) {
        return new GraspObject(
                name,
                shape,
                mass,
                Spread.exactly(mass),
                Vec3.ZERO,
                "plain",
                Rotation.IDENTITY,
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                List.of("top"),
                1);
    }
}
