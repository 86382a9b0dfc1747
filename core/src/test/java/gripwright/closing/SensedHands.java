package gripwright.closing;

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
import gripwright.model.Spread;
import gripwright.model.Transmission;
import gripwright.pad.Bus;
import gripwright.pad.Chip;
import gripwright.pad.PadDesign;
import gripwright.pad.PadPlace;
import gripwright.pad.PadSetup;
import gripwright.pad.TouchStop;
import gripwright.shape.Cylinder;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Two equal fingers against one another, chips under both; all numbers invented. */
final class SensedHands {
    private SensedHands() {}

    static final TouchStop TOUCH = new TouchStop(0.05, 1, 0, 1e-3, 0.05, 0.010, 5, 1000);
    static final TouchStop AT_ONCE = new TouchStop(0.05, 1, 0, 1e-3, 0.05, 0, 1e9, 1000);

    private static Motor motor(String name, Transmission pulls) {
        return new Motor(name, pulls, 40, 2e4, 0, Map.of(), Motor.WhenOff.LOCKED);
    }

    static Hand oneMotor() {
        return hand(List.of(motor(
                "main",
                new Floating(List.of(
                        new Transmission.Branch(1, new FingerTendon("plus")),
                        new Transmission.Branch(1, new FingerTendon("minus")))))));
    }

    static Hand twoMotors() {
        return hand(List.of(motor("p", new FingerTendon("plus")), motor("m", new FingerTendon("minus"))));
    }

    private static Hand hand(List<Motor> motors) {
        PadLayer pad = new PadLayer(0.055, 0.004, BenchHands.SOFT);
        Phalanx proximal = new Phalanx(0.065, 0.018, 0.010, pad, Phalanx.Tip.SQUARE);
        Phalanx distal =
                new Phalanx(0.045, 0.018, 0.010, new PadLayer(0.040, 0.004, BenchHands.SOFT), Phalanx.Tip.ROUND);
        double quarter = Math.PI / 2;
        List<Joint> joints = List.of(
                new Joint(
                        new PinJoint(0.06, OptionalDouble.empty()),
                        quarter - 0.45,
                        quarter - 0.5,
                        quarter + 1.4,
                        0.015),
                new Joint(new PinJoint(0.05, OptionalDouble.empty()), 0.25, 0, 1.6, 0.0065));
        return new Hand(
                "sensed",
                new Palm(0.09, 0.06, 0.006, new PadLayer(0.07, 0.004, BenchHands.SOFT)),
                List.of(
                        new Finger("plus", new Vec3(0.040, 0, 0), Math.PI, List.of(proximal, distal), joints),
                        new Finger("minus", new Vec3(-0.040, 0, 0), 0, List.of(proximal, distal), joints)),
                motors,
                new FrictionTable(Map.of("soft", Map.of("plain", new Spread(0.8, 0.1))), Spread.exactly(0.3)),
                Optional.empty(),
                List.of(grip()));
    }

    static Grip grip() {
        return new Grip(
                "top", Grip.Approach.SIDE, new Grip.PalmToObject(0.040, 0.05), 0, Map.of(), List.of("plus", "minus"));
    }

    static GraspObject can(double mass) {
        return BenchHands.object("can", new Cylinder(0.033, 0.10, 0.002), mass);
    }

    /** @param noise [Pa] */
    static Chip chip(double noise, double greatest, double resolution) {
        return new Chip(
                "c",
                2.5e-3,
                2e-3,
                0.95e-3,
                0.25e-3,
                0.12e-3,
                0.8e-3,
                0.3e-3,
                noise,
                30e3,
                greatest,
                0.6e-3,
                29,
                66,
                0,
                0,
                0,
                Double.NaN,
                resolution);
    }

    private static final Bus BUS = new Bus(false, 400e3, 20e-6, 64, true, true, 0, 0, 3.3);

    /** Reads all chips within a millisecond. */
    static final Bus FAST = new Bus(true, 1e8, 0, 64, false, false, 0, 0, 3.3);

    static Sensing sensing(Chip chip, TouchStop touch, String... fingers) {
        return sensing(chip, touch, BUS, fingers);
    }

    static Sensing sensing(Chip chip, TouchStop touch, Bus bus, String... fingers) {
        List<PadPlace> places = java.util.stream.Stream.of(fingers)
                .flatMap(f -> java.util.stream.Stream.of(new PadPlace(f, 0), new PadPlace(f, 1)))
                .toList();
        List<PadDesign> pads = places.stream()
                .map(p -> new PadDesign(
                        p.on() + " " + p.phalanx(),
                        chip,
                        4e-3,
                        BenchHands.SOFT.modulus(),
                        1.5e9,
                        8,
                        4e-3,
                        1,
                        4e-3,
                        0,
                        0.018))
                .toList();
        return Sensing.of(
                new PadSetup(
                        pads,
                        bus,
                        1,
                        touch,
                        new PadSetup.Casting(3100, 3, 1800, 0.05),
                        new PadSetup.Judging(0.05, 0.05, 100, 0.05, 0.5),
                        places,
                        Optional.empty()),
                1);
    }

    static ClosingSimulator simulator(Hand hand, GraspObject object, Policy policy, Sensing sensing) {
        return new ClosingSimulator(
                hand, grip(), object, Spread.exactly(0.3), Numerics.DEFAULT, Criteria.DEFAULT, policy, sensing);
    }
}
