package gripwright.benchmarks;

import gripwright.closing.ClosingSimulator;
import gripwright.closing.Conditions;
import gripwright.closing.Criteria;
import gripwright.closing.Numerics;
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
import gripwright.shape.Box;
import gripwright.shape.Cylinder;
import gripwright.shape.Shape;
import gripwright.shape.Sphere;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The standard hand and objects by which speed is measured: two fingers and a thumb, 12 unknowns, no friction in the
 * tendon. All numbers invented; they never change, else the history compares nothing.
 */
public enum BenchCase {
    SPHERE(new Sphere(0.035), 0.070, 0.18),
    CYLINDER(new Cylinder(0.030, 0.050, 0.003), 0.100, 0.30),
    BOX(new Box(0.030, 0.030, 0.030, 0.003), 0.060, 0.20);

    /** Half width of the square of starts [m]. */
    public static final double SPAN = 0.060;

    private static final Rubber SOFT = new Rubber("soft", 0.4e6, "given", 2.5);

    private final Shape shape;
    private final double height;
    private final double mass;

    BenchCase(Shape shape, double height, double mass) {
        this.shape = shape;
        this.height = height;
        this.mass = mass;
    }

    public Grip grip() {
        return new Grip(
                "top",
                Grip.Approach.ABOVE,
                new Grip.PalmToObject(0.13 - height, Double.NaN),
                0,
                Map.of(),
                List.of("left", "right", "thumb"));
    }

    public GraspObject object() {
        return new GraspObject(
                name(),
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

    /** The closing of the bench hand at 14 x 6 pad points. */
    public ClosingSimulator simulator() {
        return new ClosingSimulator(hand(), grip(), object(), Spread.exactly(0.4), Numerics.DEFAULT, Criteria.DEFAULT);
    }

    /** A square of starts, row by row, over {@link #SPAN} on both sides. */
    public static List<Conditions> starts(int perSide) {
        List<Conditions> out = new ArrayList<>();
        for (int row = 0; row < perSide; row++) {
            for (int column = 0; column < perSide; column++) {
                out.add(Conditions.at(at(column, perSide), at(row, perSide), 0));
            }
        }
        return out;
    }

    private static double at(int i, int perSide) {
        return SPAN * (2.0 * i / (perSide - 1) - 1);
    }

    private Hand hand() {
        PadLayer pad = new PadLayer(0.055, 0.004, SOFT);
        Phalanx proximal = new Phalanx(0.065, 0.018, 0.010, pad, Phalanx.Tip.SQUARE);
        Phalanx distal = new Phalanx(0.045, 0.018, 0.010, new PadLayer(0.040, 0.004, SOFT), Phalanx.Tip.ROUND);
        double quarter = Math.PI / 2;
        OptionalDouble stiff = OptionalDouble.empty();
        List<Joint> joints = List.of(
                new Joint(new PinJoint(0.06, stiff), quarter - 0.45, quarter - 0.5, quarter + 1.4, 0.015),
                new Joint(new PinJoint(0.05, stiff), 0.25, 0, 1.6, 0.0065));
        List<Phalanx> phalanges = List.of(proximal, distal);
        List<Finger> fingers = List.of(
                new Finger("left", new Vec3(0.040, 0.0225, 0), Math.PI, phalanges, joints),
                new Finger("right", new Vec3(0.040, -0.0225, 0), Math.PI, phalanges, joints),
                new Finger("thumb", new Vec3(-0.040, 0, 0), 0, phalanges, joints));
        Motor motor = new Motor(
                "main",
                new Floating(List.of(
                        new Branch(0.5, new FingerTendon("left")),
                        new Branch(0.5, new FingerTendon("right")),
                        new Branch(1, new FingerTendon("thumb")))),
                60,
                2e4,
                0,
                Map.of(),
                Motor.WhenOff.LOCKED);
        return new Hand(
                "bench",
                new Palm(0.07, 0.06, 0.006, new PadLayer(0.07, 0.004, SOFT)),
                fingers,
                List.of(motor),
                new FrictionTable(Map.of("soft", Map.of("plain", new Spread(0.8, 0.1))), Spread.exactly(0.3)),
                Optional.empty(),
                List.of(grip()));
    }
}
