package gripwright.closing;

import gripwright.math.Vec3;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.DoubleStream;
import tools.jackson.databind.JsonNode;

/** How errors fall as the choices of the calculation get finer; for docs/accuracy.md. */
public final class Convergence {
    /** A bed of springs under the links: 18 mm of rubber 4 mm thick at 1 MPa [N/m per m of link]. */
    private static final double BED = 4.5e6;

    private Convergence() {}

    /**
     * One run.
     *
     * @param size of what was made finer
     * @param error against the source named with the study
     */
    public record Point(double size, double error) {}

    /**
     * A free disc between two fingers on beds of springs: force of a link along its own normal against the balance of
     * moments at the pose found, f2 = tau2 / k2 and f1 = (tau1 - (k2 + l1 cos q2) f2) / k1 (Birglen, Laliberte,
     * Gosselin 2008, from memory), largest relative error.
     *
     * @param pitches of the springs [m]
     */
    public static List<Point> pitch(double... pitches) {
        JsonNode c = PlanarClosing.cases()
                .filter(x -> x.get("case").asInt() == 1 && PlanarClosing.free(x))
                .findFirst()
                .orElseThrow();
        List<Point> points = new ArrayList<>();
        for (double pitch : pitches) {
            BareScene scene = PlanarClosing.scene(c).chains(0.008, pitch, BED * pitch, false);
            scene.longestStep = 0.01;
            scene.close(0.05, 20_000);
            points.add(new Point(pitch, worstForceError(scene, c)));
        }
        return points;
    }

    private static double worstForceError(BareScene scene, JsonNode c) {
        JsonNode hand = PlanarClosing.DATA.get("hand");
        double l1 = hand.get("link_length_m").get(0).asDouble();
        double r1 = hand.get("r1_m").asDouble();
        double k1 = hand.get("k1_Nm_per_rad").asDouble();
        double tension = c.get("tension_N").asDouble();
        double worst = 0;
        for (int side = 0; side < 2; side++) {
            double sign = side == 0 ? -1 : 1;
            double q1 = scene.q[2 * side];
            double q2 = scene.q[2 * side + 1];
            Vec3 base = new Vec3(sign * hand.get("half_spacing_m").asDouble(), 0, 0);
            Vec3 along1 = along(sign, q1);
            Vec3 along2 = along(sign, q1 + q2);
            Vec3 centre = new Vec3(scene.p[0], 0, scene.p[2]);
            double foot1 = centre.minus(base).dot(along1);
            double foot2 = centre.minus(base.plus(along1.times(l1))).dot(along2);
            double tau1 = tension * r1 - k1 * (q1 - Math.toRadians(25));
            double tau2 = tension * r1 * c.get("r2_over_r1").asDouble()
                    - k1 * c.get("k2_over_k1").asDouble() * (q2 - Math.toRadians(45));
            double f2 = tau2 / foot2;
            double f1 = (tau1 - (foot2 + l1 * Math.cos(q2)) * f2) / foot1;
            double found1 = normal(scene.forceOnObject(1 + 2 * side, 2 + 2 * side), along1);
            double found2 = normal(scene.forceOnObject(2 + 2 * side, 3 + 2 * side), along2);
            worst = Math.max(worst, Math.max(Math.abs(found1 / f1 - 1), Math.abs(found2 / f2 - 1)));
        }
        return worst;
    }

    private static Vec3 along(double sign, double angle) {
        return new Vec3(sign * Math.cos(angle), 0, Math.sin(angle));
    }

    private static double normal(Vec3 force, Vec3 along) {
        return force.minus(along.times(force.dot(along))).length();
    }

    /**
     * A closing with friction in space (engine_case.json): largest change of a joint [rad] against the finest step.
     *
     * @param scales of the motion allowed in a step [-]
     */
    public static List<Point> step(String name, double finest, double... scales) {
        double[] fine = EngineClosing.beads(name, finest).angles();
        return DoubleStream.of(scales)
                .mapToObj(scale ->
                        new Point(scale, apart(EngineClosing.beads(name, scale).angles(), fine)))
                .toList();
    }

    /**
     * A free disc between two fingers, contacts of 2e4 N/m: largest change of a joint [rad] against the finest residual.
     *
     * @param residuals at which Newton's method stops [N]
     */
    public static List<Point> tolerance(double finest, double... residuals) {
        double[] fine = angles(finest);
        return DoubleStream.of(residuals)
                .mapToObj(residual -> new Point(residual, apart(angles(residual), fine)))
                .toList();
    }

    private static double[] angles(double residual) {
        JsonNode c =
                PlanarClosing.cases().filter(PlanarClosing::free).findFirst().orElseThrow();
        BareScene scene = PlanarClosing.scene(c).capsules(0.008, 2e4, true);
        scene.tolerance = residual;
        scene.close(0.05, 20_000);
        return scene.q.clone();
    }

    private static double apart(double[] a, double[] b) {
        double worst = 0;
        for (int i = 0; i < a.length; i++) {
            worst = Math.max(worst, Math.abs(a[i] - b[i]));
        }
        return worst;
    }
}
