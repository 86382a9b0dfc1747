package gripwright.study;

import gripwright.closing.ClosingDetail;
import gripwright.closing.ClosingRunner;
import gripwright.closing.Conditions;
import gripwright.closing.ContactForce;
import gripwright.closing.HoldDetail;
import gripwright.closing.HoldPlan;
import gripwright.closing.Outcome;
import gripwright.closing.PullResult;
import gripwright.math.Rotation;
import gripwright.math.Vec3;
import gripwright.model.GraspObject;
import gripwright.model.Grip;
import gripwright.model.Hand;
import gripwright.model.Spread;
import gripwright.shape.Cylinder;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Figures that a lab can measure on pipes standing upright: grasp strength on a split cylinder, slip resistance, finger
 * strength. The words are those of published work on hand tests; the procedures here are our own.
 */
public final class GripStrength {
    /** A pipe too heavy for any finger stands in for a sensor that does not move [kg]. */
    private static final double RIGID = 30;

    private static final double HEIGHT = 0.16;
    private static final double EDGE = 0.001;
    /** Density of PVC [kg/m^3] (common practice, no source). */
    private static final double DENSITY = 1400;

    private static final int SPLITS = 18;

    /**
     * Sizes of PVC pipe, schedule 40: outside diameter and least wall [m]. Source: ASTM D1785, as given on a size chart
     * and a listing of the standard.
     */
    public enum Pipe {
        INCH_1("1 in", 0.0334, 0.00338),
        INCH_1_HALF("1-1/2 in", 0.04826, 0.00368),
        INCH_2("2 in", 0.06032, 0.00391),
        INCH_2_HALF("2-1/2 in", 0.07302, 0.00516),
        INCH_3("3 in", 0.0889, 0.00549);

        private final String size;
        private final double diameter;
        private final double wall;

        Pipe(String size, double diameter, double wall) {
            this.size = size;
            this.diameter = diameter;
            this.wall = wall;
        }

        /** Nominal size, in the trade's inches. */
        public String size() {
            return size;
        }

        /** Outside diameter [m]. */
        public double diameter() {
            return diameter;
        }

        double mass() {
            return Math.PI * (diameter - wall) * wall * HEIGHT * DENSITY;
        }
    }

    /**
     * @param outcome of picking the pipe up
     * @param squeeze greatest force between the halves of the pipe over all planes through its axis [N]; NaN if not held
     * @param splitNormal angle of that plane's normal from the closing direction [rad]
     * @param pull least of the two pulls along the axis; empty if not held
     * @param twist least of the two turns about the axis; empty if not held
     */
    public record OnPipe(
            Pipe pipe,
            Outcome outcome,
            double squeeze,
            double splitNormal,
            java.util.Optional<PullResult> pull,
            java.util.Optional<PullResult> twist) {}

    /**
     * @param finger its name
     * @param force it presses with on a pipe that does not move [N]; NaN if it does not reach it or the run is undecided
     */
    public record OfFinger(String finger, Outcome outcome, double force) {}

    /**
     * All figures of one grip.
     *
     * @param fingerPipe on which the fingers were tried
     */
    public record Figures(String grip, String surface, List<OnPipe> pipes, Pipe fingerPipe, List<OfFinger> fingers) {
        public Figures {
            pipes = List.copyOf(pipes);
            fingers = List.copyOf(fingers);
        }
    }

    private final Hand hand;
    private final RunnerFactory runners;
    private final Grip grip;
    private final String surface;

    /** @param surface of the pipes, as in the hand's friction table */
    public GripStrength(Hand hand, RunnerFactory runners, Grip grip, String surface) {
        this.hand = hand;
        this.runners = runners;
        this.grip = grip;
        this.surface = surface;
    }

    /** On all pipes; the fingers on the middle one. */
    public Figures all() {
        Pipe middle = Pipe.INCH_2;
        return new Figures(
                grip.name(),
                surface,
                java.util.Arrays.stream(Pipe.values()).map(this::on).toList(),
                middle,
                fingers(middle));
    }

    /** Picks a pipe up, weighs the squeeze by planes through its axis, pulls and twists it. */
    public OnPipe on(Pipe pipe) {
        HoldDetail hold = runners.create(pipe(pipe, pipe.mass()), grip).hold(Conditions.NOMINAL, HoldPlan.DEFAULT);
        Outcome outcome = hold.closing().summary().outcome();
        if (!hold.tested()) {
            return new OnPipe(
                    pipe, outcome, Double.NaN, Double.NaN, java.util.Optional.empty(), java.util.Optional.empty());
        }
        double most = 0;
        double at = 0;
        for (int i = 0; i < SPLITS; i++) {
            double angle = Math.PI * i / SPLITS;
            double force = between(hold.closing(), angle);
            if (force > most) {
                most = force;
                at = angle;
            }
        }
        return new OnPipe(pipe, outcome, most, at, least(hold.pulls()), least(hold.turns()));
    }

    private static java.util.Optional<PullResult> least(List<PullResult> tests) {
        return tests.stream()
                .filter(p -> Math.abs(p.axis().z()) > 0.5)
                .min(java.util.Comparator.comparingDouble(PullResult::peak));
    }

    /**
     * Force that a plane through the axis carries: what the hand presses on one half along its normal. Both halves give
     * the same but for the weight of a tilted pipe.
     *
     * @param angle of the plane's normal from x about the vertical [rad]
     */
    static double between(ClosingDetail closing, double angle) {
        Vec3 normal = new Vec3(StrictMath.cos(angle), StrictMath.sin(angle), 0);
        double sum = 0;
        for (ContactForce c : closing.contacts()) {
            boolean onHalf = c.point().minus(closing.object().position()).dot(normal) > 0;
            if (c.other().equals("object") && onHalf) {
                sum -= c.normal()
                        .times(c.normalForce())
                        .plus(c.tangentialForce())
                        .dot(normal);
            }
        }
        return sum;
    }

    /** What each finger of the grip presses with, alone, on a pipe of that size that does not move. */
    public List<OfFinger> fingers(Pipe pipe) {
        List<OfFinger> out = new ArrayList<>();
        for (String finger : grip.fingers()) {
            Grip alone = new Grip(
                    grip.name(),
                    grip.approach(),
                    grip.stand(),
                    grip.tilt(),
                    grip.aim(),
                    grip.turned(),
                    List.of(finger));
            ClosingRunner runner = runners.create(pipe(pipe, RIGID), alone);
            ClosingDetail detail = runner.detail(Conditions.NOMINAL);
            double force = 0;
            for (ContactForce c : detail.contacts()) {
                if (c.other().equals("object") && c.body().startsWith(finger + " ")) {
                    force += c.normalForce();
                }
            }
            Outcome outcome = detail.summary().outcome();
            out.add(new OfFinger(finger, outcome, force > 0 && outcome.decided() ? force : Double.NaN));
        }
        return out;
    }

    private GraspObject pipe(Pipe pipe, double mass) {
        return new GraspObject(
                pipe.size() + " pipe",
                new Cylinder(pipe.diameter() / 2, HEIGHT / 2, EDGE),
                mass,
                Spread.exactly(mass),
                Vec3.ZERO,
                surface,
                Rotation.IDENTITY,
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                List.of(grip.name()),
                1);
    }

    /** Surfaces that the hand's friction table knows. */
    public List<String> surfaces() {
        return hand.friction().byRubber().values().stream()
                .flatMap(m -> m.keySet().stream())
                .distinct()
                .sorted()
                .toList();
    }
}
