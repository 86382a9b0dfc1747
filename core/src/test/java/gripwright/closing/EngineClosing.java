package gripwright.closing;

import gripwright.closing.BareScene.Chain;
import gripwright.closing.BareScene.Link;
import gripwright.math.Pose;
import gripwright.math.Rotation;
import gripwright.math.Vec3;
import gripwright.shape.Box;
import gripwright.shape.Cylinder;
import gripwright.shape.Shape;
import gripwright.shape.Sphere;
import gripwright.truth.Reference;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import tools.jackson.databind.JsonNode;

/**
 * The closings of reference/closings/engine_case.json on this program's own equations: three bare two-link fingers on a
 * free object on a table. Public, so that other engines can be run beside it.
 */
public final class EngineClosing {
    public static final JsonNode DATA = Reference.json("closings/engine_case.json");
    /** Bodies in the order of {@link End#forces}, as the file names them. */
    public static final List<String> BODIES = List.of(
            "F_palm_N", "F_f0_prox_N", "F_f0_dist_N", "F_f1_prox_N", "F_f1_dist_N", "F_f2_prox_N", "F_f2_dist_N");

    private static final int MOST_STEPS = 20_000;
    private static final double BEAD_PITCH = 2e-3;
    private static final double BEAD_STIFFNESS = 5e3;

    private EngineClosing() {}

    /**
     * How a closing ended.
     *
     * @param angles of the joints, finger by finger [rad]
     * @param forces normal force of each body on the object [N], palm first
     * @param place of the object's middle [m], world
     * @param handForce sum of the hand's forces on the object [N], world
     * @param drop of the object while it hung without the table [m]
     * @param solved false if the solver gave up
     */
    public record End(
            double[] angles,
            double[] forces,
            double[] place,
            Vec3 handForce,
            double drop,
            boolean held,
            boolean solved,
            String trouble) {}

    public static Stream<String> names(boolean friction) {
        return Reference.elements(DATA.get("cases"))
                .filter(c -> c.get("mu_scale").asDouble() > 0 == friction)
                .map(c -> c.get("name").asString());
    }

    public static JsonNode named(String name) {
        return Reference.elements(DATA.get("cases"))
                .filter(c -> c.get("name").asString().equals(name))
                .findFirst()
                .orElseThrow();
    }

    /** What a case differs in, in words. */
    public static String inputs(String name) {
        JsonNode c = named(name);
        return c.get("object").asString() + " from " + c.get("approach").asString() + ", centre at "
                + c.get("object_centre_mm") + " mm; " + c.get("object_mass_kg").asDouble() + " kg; strengths "
                + c.get("finger_strength") + "; friction x " + c.get("mu_scale").asDouble();
    }

    /** What the three engines of the file found for a quantity, in the file's unit. */
    public static double[] there(String name, String key) {
        return Reference.elements(DATA.get("results"))
                .filter(r -> r.get("case").asString().equals(name))
                .mapToDouble(r -> Double.parseDouble(r.get(key).asString()))
                .toArray();
    }

    /** One spring per link where it comes nearest, as engines have it; without friction, the table stays. */
    public static End smooth(String name) {
        BareScene scene = scene(named(name))
                .capsules(0.008, DATA.get("contact").get("stiffness_N_per_m").asDouble(), true);
        int steps = scene.close(0.3, MOST_STEPS);
        boolean solved = steps < MOST_STEPS;
        return end(scene, scene.q, scene.p, 0, solved, solved, "");
    }

    /** Links as chains of beads with remembered friction, the way the program lays them; the table goes at the end. */
    public static End beads(String name) {
        return beads(name, 1);
    }

    /** @param stepScale factor on the motion allowed in one step [-] */
    public static End beads(String name, double stepScale) {
        BareScene scene = scene(named(name)).chains(0.008, BEAD_PITCH, BEAD_STIFFNESS, true);
        scene.friction = DATA.get("contact").get("mu_pad_object").asDouble();
        StepSystem s = scene.once();
        scene.last = s;
        s.table.reset(DATA.get("contact").get("mu_object_table").asDouble());
        s.commit();
        Stepper stepper = new Stepper(s, Numerics.DEFAULT.withStepScale(stepScale));
        stepper.reset();
        Stepper.End closed = stepper.ramp(t -> s.rig.drive().wind(0, 0.15 * t), 1, 0.001, 0.01, motion -> false);
        if (closed == Stepper.End.DONE) {
            closed = stepper.settle(motion -> false);
        }
        double before = s.p[2];
        s.tableThere = false;
        Stepper.End hung = stepper.settle(motion -> before - s.p[2] > 0.05);
        double drop = before - s.p[2];
        boolean held = closed == Stepper.End.DONE && hung == Stepper.End.DONE && drop < 0.015;
        return end(scene, s.q, s.p, drop, held, closed == Stepper.End.DONE, stepper.trouble);
    }

    private static End end(
            BareScene scene, double[] q, double[] p, double drop, boolean held, boolean solved, String trouble) {
        double[] forces = new double[BODIES.size()];
        Arrays.setAll(forces, scene::force);
        System.arraycopy(scene.last.r, 0, scene.r, 0, 9);
        return new End(q.clone(), forces, p.clone(), scene.forceOnObject(), drop, held, solved, trouble);
    }

    private static BareScene scene(JsonNode c) {
        List<Chain> chains = new ArrayList<>();
        for (int f = 0; f < 3; f++) {
            JsonNode finger = DATA.get("fingers").get(f);
            double strength = c.get("finger_strength").get(f).asDouble();
            List<Link> links = new ArrayList<>();
            for (int i = 0; i < 2; i++) {
                links.add(new Link(
                        finger.get("link_length_mm").get(i).asDouble() / 1e3,
                        finger.get("moment_arm_mm").get(i).asDouble() / 1e3 * strength,
                        finger.get("spring_Nm_per_rad").get(i).asDouble() * strength,
                        Math.toRadians(finger.get("rest_deg").get(i).asDouble()),
                        -5,
                        5));
            }
            double outward = finger.get("outward").get(0).asDouble();
            chains.add(new Chain(vector(finger.get("base_mm"), 1e-3), outward > 0 ? Math.PI : 0, links));
        }
        BareScene scene = new BareScene(chains, shape(c.get("object").asString()));
        JsonNode pose = c.get("hand_pose");
        scene.base = new Pose(
                vector(pose.get("origin_mm"), 1e-3),
                Rotation.ofColumns(column(pose, 0), column(pose, 1), column(pose, 2)));
        Vec3 centre = vector(c.get("object_centre_mm"), 1e-3);
        scene.p[0] = centre.x();
        scene.p[1] = centre.y();
        scene.p[2] = centre.z();
        scene.mass = c.get("object_mass_kg").asDouble();
        scene.tension = DATA.get("schedule").get("tension_N").asDouble();
        scene.weightless = false;
        scene.turnLocked = false;
        scene.table = true;
        return scene;
    }

    private static Shape shape(String name) {
        return switch (name) {
            case "sphere70" -> new Sphere(0.035);
            case "cylinder60x120" -> new Cylinder(0.03, 0.06, 0);
            case "box60x60x100" -> new Box(0.03, 0.03, 0.05, 0);
            default -> throw new AssertionError(name);
        };
    }

    private static Vec3 vector(JsonNode v, double unit) {
        return new Vec3(v.get(0).asDouble(), v.get(1).asDouble(), v.get(2).asDouble()).times(unit);
    }

    private static Vec3 column(JsonNode pose, int i) {
        JsonNode m = pose.get("R");
        return new Vec3(
                m.get(0).get(i).asDouble(),
                m.get(1).get(i).asDouble(),
                m.get(2).get(i).asDouble());
    }
}
