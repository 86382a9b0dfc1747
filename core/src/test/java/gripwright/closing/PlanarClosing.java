package gripwright.closing;

import gripwright.closing.BareScene.Chain;
import gripwright.closing.BareScene.Link;
import gripwright.math.Rotation;
import gripwright.math.Vec3;
import gripwright.shape.Cylinder;
import gripwright.truth.Reference;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import tools.jackson.databind.JsonNode;

/**
 * The closings of reference/closings/planar_cases.json on this program's own equations: two bare fingers on a disc in a
 * plane, one spring per link where it comes nearest. Public, so that other engines can be run beside it.
 */
public final class PlanarClosing {
    public static final JsonNode DATA = Reference.json("closings/planar_cases.json");
    /** Bodies in the order of {@link End#forces}, as the file names them. */
    public static final List<String> BODIES = List.of("palm", "L.prox", "L.dist", "R.prox", "R.dist");

    private static final int MOST_STEPS = 20_000;

    private PlanarClosing() {}

    /**
     * How a closing ended.
     *
     * @param angles left proximal, left distal, right proximal, right distal [rad]
     * @param forces normal force of each body on the disc [N], palm first
     * @param x of the disc's middle and
     * @param height of it over the palm [m]
     */
    public record End(double[] angles, double[] forces, double x, double height) {}

    /** Those with an end that does not depend on drag: a fixed disc, or a free one that is held. */
    public static Stream<JsonNode> cases() {
        return Reference.elements(DATA.get("cases"))
                .filter(c -> !free(c) || c.get("rigid").get("captured").asBoolean());
    }

    /** With contacts of this stiffness [N/m]. */
    public static End end(JsonNode c, double stiffness) {
        BareScene scene = closed(c, stiffness);
        double[] forces = new double[BODIES.size()];
        Arrays.setAll(forces, scene::force);
        return new End(scene.q.clone(), forces, scene.p[0], scene.p[2]);
    }

    /** What a case differs in, in words. */
    public static String inputs(JsonNode c) {
        return "disc R = " + millimetres(c, "R_m") + " mm at (" + millimetres(c, "dx_m") + ", " + millimetres(c, "dy_m")
                + ") mm; T = " + c.get("tension_N").asDouble() + " N; k2/k1 = "
                + c.get("k2_over_k1").asDouble() + "; r2/r1 = "
                + c.get("r2_over_r1").asDouble() + "; right arms x "
                + c.get("right_finger_arm_factor").asDouble();
    }

    private static double millimetres(JsonNode c, String name) {
        return Math.rint(c.get(name).asDouble() * 1e7) / 1e4;
    }

    static boolean free(JsonNode c) {
        return c.get("disc").asString().equals("free");
    }

    static BareScene closed(JsonNode c, double stiffness) {
        BareScene scene =
                scene(c).capsules(DATA.get("hand").get("link_radius_m").asDouble(), stiffness, true);
        int steps = scene.close(0.05, MOST_STEPS);
        if (steps >= MOST_STEPS) {
            throw new AssertionError(c.get("case") + " does not come to rest");
        }
        return scene;
    }

    static BareScene scene(JsonNode c) {
        JsonNode hand = DATA.get("hand");
        double a = hand.get("half_spacing_m").asDouble();
        BareScene scene = new BareScene(
                List.of(
                        new Chain(new Vec3(-a, 0, 0), 0, links(c, 1)),
                        new Chain(
                                new Vec3(a, 0, 0),
                                Math.PI,
                                links(c, c.get("right_finger_arm_factor").asDouble()))),
                new Cylinder(c.get("R_m").asDouble(), 0.1, 0));
        scene.fixed = !free(c);
        scene.mass = free(c) ? 0.1 : 0;
        scene.tension = c.get("tension_N").asDouble();
        scene.p[0] = c.get("dx_m").asDouble();
        scene.p[2] = c.get("dy_m").asDouble();
        System.arraycopy(Rotation.about(Vec3.X, Math.PI / 2).toArray(), 0, scene.r, 0, 9);
        return scene;
    }

    private static List<Link> links(JsonNode c, double factor) {
        JsonNode hand = DATA.get("hand");
        double k1 = hand.get("k1_Nm_per_rad").asDouble();
        double r1 = hand.get("r1_m").asDouble() * factor;
        return List.of(
                new Link(
                        hand.get("link_length_m").get(0).asDouble(),
                        r1,
                        k1,
                        Math.toRadians(hand.get("rest_deg").get(0).asDouble()),
                        Math.toRadians(-20),
                        Math.toRadians(140)),
                new Link(
                        hand.get("link_length_m").get(1).asDouble(),
                        r1 * c.get("r2_over_r1").asDouble(),
                        k1 * c.get("k2_over_k1").asDouble(),
                        Math.toRadians(hand.get("rest_deg").get(1).asDouble()),
                        0,
                        Math.toRadians(110)));
    }
}
