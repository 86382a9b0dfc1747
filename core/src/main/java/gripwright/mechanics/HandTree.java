package gripwright.mechanics;

import gripwright.math.Rotation;
import gripwright.math.Vec3;
import gripwright.model.ArmCompliance;
import gripwright.model.Finger;
import gripwright.model.Hand;
import gripwright.model.Joint;
import gripwright.model.Phalanx;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/**
 * The hand as a tree of single degrees of freedom ("coordinates") that carry bodies.
 *
 * <p>Body 0 is the palm; then the phalanges, finger by finger, proximal first. Coordinates: the arm's six (only with a
 * compliant arm: three slides, three turns), then per joint its flexion and, if it is compliant sideways, a second turn
 * about the pad normal. Immutable.
 */
public final class HandTree {
    /** Turning beyond this out of the finger's plane is stopped [rad]. */
    private static final double SIDEWAYS_LIMIT = 0.8;

    /** Slides and turns of the arm are stopped here [m, rad]. */
    private static final double ARM_LIMIT = 0.3;

    /**
     * One coordinate.
     *
     * @param parent coordinate it is mounted on, -1 = the base
     * @param mounting turn of its zero frame in the parent's frame
     * @param offset of its origin in the parent's frame [m]
     * @param axis in its own frame, length 1
     * @param finger index, -1 for the arm
     * @param phalanx index within the finger, -1 for the arm
     * @param momentArm of the tendon [m]; 0 for passive coordinates
     */
    public record Coordinate(
            String name,
            int parent,
            boolean slides,
            Vec3 offset,
            Rotation mounting,
            Vec3 axis,
            double rate,
            double rest,
            double lower,
            double upper,
            int finger,
            int phalanx,
            double momentArm) {
        /** Flexion joints are driven; sideways and arm coordinates are not. */
        public boolean flexion() {
            return finger >= 0 && !name.endsWith("sideways");
        }
    }

    /** A body: the coordinate whose frame it moves with, -1 = the base. */
    public record Body(String name, int frame, int finger, int phalanx) {}

    private final List<Coordinate> coordinates;
    private final List<Body> bodies;
    private final int[][] chains;

    HandTree(List<Coordinate> coordinates, List<Body> bodies) {
        this.coordinates = List.copyOf(coordinates);
        this.bodies = List.copyOf(bodies);
        chains = new int[coordinates.size() + 1][];
        chains[coordinates.size()] = new int[0];
        for (int j = 0; j < coordinates.size(); j++) {
            int parent = coordinates.get(j).parent();
            int[] before = parent < 0 ? new int[0] : chains[parent];
            int[] chain = java.util.Arrays.copyOf(before, before.length + 1);
            chain[before.length] = j;
            chains[j] = chain;
        }
    }

    /** No hand: no coordinates, no bodies. */
    public static HandTree empty() {
        return new HandTree(List.of(), List.of());
    }

    /**
     * The tree of a hand with its finger bases turned.
     *
     * @param turned by finger name, about the palm normal [rad]; missing = 0
     */
    public static HandTree of(Hand hand, Map<String, Double> turned) {
        List<Coordinate> coordinates = new ArrayList<>();
        List<Body> bodies = new ArrayList<>();
        hand.arm().ifPresent(arm -> addArm(arm, coordinates));
        int palmFrame = coordinates.size() - 1;
        bodies.add(new Body("palm", palmFrame, -1, -1));
        for (int f = 0; f < hand.fingers().size(); f++) {
            Finger finger = hand.fingers().get(f);
            addFinger(finger, f, palmFrame, turned.getOrDefault(finger.name(), 0.0), coordinates, bodies);
        }
        return new HandTree(coordinates, bodies);
    }

    private static void addArm(ArmCompliance arm, List<Coordinate> out) {
        String[] letter = {"x", "y", "z"};
        Vec3[] axes = {Vec3.X, Vec3.Y, Vec3.Z};
        double[] slide = {
            arm.stiffness().x(), arm.stiffness().y(), arm.stiffness().z()
        };
        double[] turn = {arm.turning().x(), arm.turning().y(), arm.turning().z()};
        for (int i = 0; i < 6; i++) {
            boolean slides = i < 3;
            out.add(new Coordinate(
                    "arm " + (slides ? "" : "about ") + letter[i % 3],
                    out.size() - 1,
                    slides,
                    Vec3.ZERO,
                    Rotation.IDENTITY,
                    axes[i % 3],
                    slides ? slide[i] : turn[i - 3],
                    0,
                    -ARM_LIMIT,
                    ARM_LIMIT,
                    -1,
                    -1,
                    0));
        }
    }

    private static void addFinger(
            Finger finger, int index, int palmFrame, double turn, List<Coordinate> coordinates, List<Body> bodies) {
        int parent = palmFrame;
        Vec3 offset = finger.base();
        Rotation mounting = baseFrame(finger.closesToward() + turn);
        for (int i = 0; i < finger.phalanges().size(); i++) {
            Phalanx phalanx = finger.phalanges().get(i);
            Joint joint = finger.joints().get(i);
            String name = finger.name() + " " + (i + 1);
            coordinates.add(new Coordinate(
                    name,
                    parent,
                    false,
                    offset,
                    mounting,
                    Vec3.Z,
                    joint.kind().bendingRate(),
                    joint.rest(),
                    joint.lower(),
                    joint.upper(),
                    index,
                    i,
                    joint.momentArm()));
            parent = coordinates.size() - 1;
            OptionalDouble sideways = joint.kind().sidewaysRate();
            if (sideways.isPresent()) {
                coordinates.add(new Coordinate(
                        name + " sideways",
                        parent,
                        false,
                        Vec3.ZERO,
                        Rotation.IDENTITY,
                        Vec3.Y,
                        sideways.getAsDouble(),
                        0,
                        -SIDEWAYS_LIMIT,
                        SIDEWAYS_LIMIT,
                        index,
                        i,
                        0));
                parent = coordinates.size() - 1;
            }
            bodies.add(new Body(name, parent, index, i));
            offset = new Vec3(phalanx.length(), 0, 0);
            mounting = Rotation.IDENTITY;
        }
    }

    /**
     * Frame of the first joint at angle 0: x away from the closing direction (the phalanx lies in the palm plane,
     * pointing outward), y out of the palm (the pad side), z the joint axis; a positive turn about z closes.
     */
    private static Rotation baseFrame(double closesToward) {
        Vec3 outward = new Vec3(-StrictMath.cos(closesToward), -StrictMath.sin(closesToward), 0);
        return Rotation.ofColumns(outward, Vec3.Z, outward.cross(Vec3.Z));
    }

    public List<Coordinate> coordinates() {
        return coordinates;
    }

    public List<Body> bodies() {
        return bodies;
    }

    public int size() {
        return coordinates.size();
    }

    /** Of each coordinate whether it slides, else it turns; newly allocated. */
    public boolean[] slides() {
        boolean[] out = new boolean[size()];
        for (int j = 0; j < out.length; j++) {
            out[j] = coordinates.get(j).slides();
        }
        return out;
    }

    /**
     * Coordinates from the base to a frame, in order.
     *
     * @param frame a coordinate, or {@link #size()} for the base
     * @return live array, not to be modified
     */
    public int[] chain(int frame) {
        return chains[frame];
    }
}
