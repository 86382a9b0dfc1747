package gripwright.closing;

import static org.assertj.core.api.Assertions.assertThat;

import gripwright.closing.BareScene.Bead;
import gripwright.closing.BareScene.Chain;
import gripwright.closing.BareScene.Link;
import gripwright.math.Pose;
import gripwright.math.Rotation;
import gripwright.math.Vec3;
import gripwright.shape.Composite;
import gripwright.shape.Shape;
import gripwright.shape.Sphere;
import gripwright.truth.Reference;
import gripwright.truth.Reference.Row;
import gripwright.truth.Truth;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Contact forces of a finger on fixed supports, found by the step solver as an equilibrium.
 *
 * <p>Source: moment balance of serial links (L. Birglen, T. Laliberte, C. Gosselin, "Underactuated Robotic Hands",
 * 2008, from memory), reference/statics/finger_statics.csv. Worked outside: closed form and virtual work agree to 1e-15.
 * Units: N, mm, degrees in the table. Tolerance: a support of stiffness k gives by d = sqrt(2e-4 m f / k), which turns
 * the links by d / arm; at 1e11 N/m that is up to 4e-4 of the largest force, on balls of 3 mm radius. Valid for rigid links, one point contact each.
 *
 * <p>A negative force is a pull, which no contact gives. Such a row is tested twice: with the support moved behind the
 * link (the same line of action, so the same statics, force = -f), and in front, where the contact must open.
 */
class FingerStaticsTest {
    private static final String SOURCE = "moment balance of serial links (Birglen et al. 2008, from memory)";
    private static final double BALL = 0.003;
    private static final double STIFF = 1e11;
    private static final double MM = 1e-3;
    /** The uniform-pressure rows are so light that the solver's tolerance shows; without springs forces scale. */
    private static final double LOADED = 100;

    /** A planar finger with its supports; SI. */
    private record Case(
            double[] length, double[] at, double[] angle, double[] torque, double[] rate, double height, double tilt) {
        int n() {
            return at.length;
        }
    }

    private record Found(double[] force, BareScene scene) {}

    static Stream<String> ids() {
        return Reference.rows("statics/finger_statics.csv").stream()
                .map(Row::id)
                .filter(id -> id.matches("F[23].*|HU[234]|FR.*"))
                .distinct();
    }

    /** HU5 is left out: a finger has at most four phalanges. */
    @ParameterizedTest
    @MethodSource("ids")
    void referenceForcesOnFixedSupports(String id) {
        List<Row> rows = rows(id);
        Case c = caseOf(rows.get(0));
        double[] expected = rows.stream().mapToDouble(Row::expected).toArray();
        double[] found = solve(c, signs(expected), STIFF).force;
        if (id.startsWith("HU")) {
            found = Arrays.stream(found).map(f -> f / LOADED).toArray();
        }
        double largest = Arrays.stream(expected).map(Math::abs).max().orElseThrow();
        for (int i = 0; i < expected.length; i++) {
            Truth.record(
                    "finger statics",
                    id + " f" + (i + 1) + " [N]",
                    rows.get(i).inputsText(),
                    SOURCE,
                    expected[i],
                    found[i],
                    "4e-4 of the largest",
                    "give of the supports at 1e11 N/m");
            assertThat(found[i]).as(id + " f" + (i + 1)).isCloseTo(expected[i], Offset.offset(4e-4 * largest));
        }
    }

    @ParameterizedTest
    @MethodSource("ids")
    void referenceAContactThatWouldHaveToPullOpens(String id) {
        double[] expected = rows(id).stream().mapToDouble(Row::expected).toArray();
        if (Arrays.stream(expected).noneMatch(f -> f < 0)) {
            return;
        }
        Case c = caseOf(rows(id).get(0));
        BareScene scene = scene(c, ones(c.n()), STIFF);
        scene.close(0, 40);
        for (int i = 0; i < expected.length; i++) {
            if (expected[i] < 0) {
                assertThat(scene.force(i + 1)).as(id + " f" + (i + 1)).isZero();
                assertThat(scene.q).isNotEqualTo(c.angle);
            }
        }
    }

    /** The error falls with the root of the stiffness, as the toe of the contact law makes it. */
    @Test
    void referenceForcesCloseInAsSupportsGetStiffer() {
        List<Row> rows = rows("F2f");
        double[] expected = rows.stream().mapToDouble(Row::expected).toArray();
        List<Double> errors = new ArrayList<>();
        for (double k : new double[] {1e7, 1e9, 1e11}) {
            double[] found = solve(caseOf(rows.get(0)), signs(expected), k).force;
            double worst = IntStream.range(0, 2)
                    .mapToDouble(i -> Math.abs(found[i] - expected[i]))
                    .max()
                    .orElseThrow();
            errors.add(worst);
            Truth.record(
                    "finger statics",
                    "F2f worst error at stiffness " + k + " N/m [N]",
                    SOURCE,
                    0,
                    worst,
                    "falls tenfold per hundredfold stiffness",
                    "d = sqrt(2e-4 m f / k)");
        }
        assertThat(errors.get(0) / errors.get(1)).isBetween(8.0, 12.5);
        assertThat(errors.get(1) / errors.get(2)).isBetween(8.0, 12.5);
    }

    static Stream<Row> rollOff() {
        return Reference.rows("statics/finger_statics.csv").stream().filter(r -> r.id().startsWith("EQ"));
    }

    /** Just beyond the stated distance the proximal link presses, just before it would have to pull. */
    @ParameterizedTest
    @MethodSource("rollOff")
    void referenceProximalForceChangesSignAtTheRollOffDistance(Row row) {
        double l1 = row.input("l1") * MM;
        double k2 = row.expected() * MM;
        double[] angle = {Math.toRadians(60), Math.toRadians(row.input("th2"))};
        double[] torque = {2 * row.input("r1") * MM, 2 * row.input("r2") * MM};
        double[] f1 = new double[2];
        double[] at = {k2 * 0.999, k2 * 1.001};
        for (int i = 0; i < 2; i++) {
            Case c = new Case(new double[] {l1, 0.1}, new double[] {0.025, at[i]}, angle, torque, new double[2], 0, 0);
            f1[i] = solve(c, new int[] {i == 0 ? -1 : 1, 1}, STIFF).force[0];
        }
        assertThat(f1[0]).isNegative();
        assertThat(f1[1]).isPositive();
        double root = at[0] + (at[1] - at[0]) * -f1[0] / (f1[1] - f1[0]);
        Truth.record(
                "roll-off",
                row + " [mm]",
                SOURCE,
                row.expected(),
                root / MM,
                "3e-5 of it",
                "straight line between 0.999 and 1.001 of it");
        assertThat(root).isCloseTo(k2, Offset.offset(3e-5 * k2));
    }

    /** T = 10 N, r = 10 and 6 mm, K = 100 and 120 N mm/rad, nothing touched: angles T r / K. */
    @Test
    void referenceFreeClosing() {
        double[] expected = Reference.rows("statics/finger_statics.csv").stream()
                .filter(r -> r.quantity().equals("free_joint_angle"))
                .mapToDouble(Row::expected)
                .toArray();
        BareScene scene = new BareScene(
                List.of(new Chain(
                        Vec3.ZERO,
                        0,
                        List.of(new Link(0.05, 0.010, 0.1, 0, -9, 9), new Link(0.05, 0.006, 0.12, 0, -9, 9)))),
                new Sphere(0.001));
        scene.fixed = true;
        scene.p[2] = 1;
        scene.tension = 10;
        scene.longestStep = 1;
        scene.reach = 1;
        scene.close(0, 300);
        for (int i = 0; i < 2; i++) {
            Truth.record(
                    "free closing",
                    "joint " + (i + 1) + " [rad]",
                    "T r / K",
                    expected[i],
                    scene.q[i],
                    "1e-7",
                    "where the solver calls it still");
            assertThat(scene.q[i]).isCloseTo(expected[i], Offset.offset(1e-7));
        }
        assertThat(scene.q[1] / scene.q[0]).isCloseTo(0.5, Offset.offset(1e-7));
    }

    /** Travel r1 th1 + r2 th2 = 9.8 mm at 0.5 and 0.8 rad: a winch that took in that much is just taut. */
    @Test
    void referenceTendonExcursion() {
        double expected = Reference.rows("statics/finger_statics.csv").stream()
                        .filter(r -> r.quantity().equals("tendon_excursion"))
                        .findFirst()
                        .orElseThrow()
                        .expected()
                * MM;
        BareScene scene = new BareScene(
                List.of(new Chain(
                        Vec3.ZERO,
                        0,
                        List.of(new Link(0.05, 0.010, 0.1, 0, -9, 9), new Link(0.05, 0.006, 0.12, 0, -9, 9)))),
                new Sphere(0.001));
        StepSystem s = scene.last;
        s.q[0] = 0.5;
        s.q[1] = 0.8;
        s.rig.drive().wind(0, expected - 1e-12);
        s.evaluate(false);
        assertThat(s.rig.drive().tension(0)).isZero();
        // taut: what the tendon of 1e4 N/m stretches is beyond the travel (the bare drive stalls at 1e-9 N)
        double low = 0;
        double high = 0.02;
        for (int i = 0; i < 50; i++) {
            double middle = 0.5 * (low + high);
            s.rig.drive().wind(0, middle);
            s.evaluate(false);
            if (s.rig.drive().tension(0) > 0) {
                high = middle;
            } else {
                low = middle;
            }
        }
        Truth.record("free closing", "tendon travel [mm]", "sum r th", expected / MM, high / MM, "1e-9", "halving");
        assertThat(high).isCloseTo(expected, Offset.offset(1e-11));
    }

    // ------------------------------------------------------------------ the supports

    private static List<Row> rows(String id) {
        return Reference.rows("statics/finger_statics.csv").stream()
                .filter(r -> r.id().equals(id))
                .toList();
    }

    private static Case caseOf(Row row) {
        Map<String, String> in = row.inputs();
        if (row.id().startsWith("HU")) {
            int n = (int) row.input("n");
            double[] torque = IntStream.range(0, n)
                    .mapToDouble(i -> (n - i) * (n - i) * MM * LOADED)
                    .toArray();
            return new Case(same(n, 0.040), same(n, 0.020), new double[n], torque, new double[n], 0, 0);
        }
        if (row.id().startsWith("FR")) {
            double[] angle = {Math.toRadians(45), Math.toRadians(45)};
            return new Case(
                    new double[] {0.05, 0.05},
                    new double[] {0.025, 0.020},
                    angle,
                    new double[] {0.2, 0.12},
                    new double[2],
                    0.008,
                    row.input("mu"));
        }
        int n = in.containsKey("r3") ? 3 : 2;
        double[] length = same(n, 0.05);
        double[] at = new double[n];
        double[] angle = new double[n];
        double[] torque = new double[n];
        double[] rate = new double[n];
        for (int i = 0; i < n; i++) {
            String j = String.valueOf(i + 1);
            if (i < n - 1) {
                length[i] = row.input("l" + j) * MM;
            }
            at[i] = row.input("k" + j) * MM;
            angle[i] = Math.toRadians(row.input("th" + j));
            torque[i] = row.input("T") * row.input("r" + j) * MM;
            rate[i] = row.input(n == 3 ? "K" + j : "K" + j + "_Nmm_rad") * MM;
        }
        return new Case(length, at, angle, torque, rate, 0, 0);
    }

    private static double[] same(int n, double value) {
        double[] out = new double[n];
        Arrays.fill(out, value);
        return out;
    }

    private static int[] signs(double[] forces) {
        return Arrays.stream(forces).mapToInt(f -> f < 0 ? -1 : 1).toArray();
    }

    private static int[] ones(int n) {
        int[] out = new int[n];
        Arrays.fill(out, 1);
        return out;
    }

    /** One ball per link, touching its bead from the front (+1) or from behind (-1), normals leaning by the tilt. */
    private static BareScene scene(Case c, int[] side, double stiffness) {
        List<Composite.Part> balls = new ArrayList<>();
        List<Bead> beads = new ArrayList<>();
        List<Link> links = new ArrayList<>();
        double a = 0;
        double u = 0;
        double w = 0;
        for (int i = 0; i < c.n(); i++) {
            a += c.angle[i];
            double cos = StrictMath.cos(a);
            double sin = StrictMath.sin(a);
            // the force on the object leans towards the tip by tilt times f
            double nu = -sin + c.tilt * cos;
            double nw = cos + c.tilt * sin;
            double size = Math.hypot(nu, nw);
            double ball = side[i] * BALL;
            balls.add(new Composite.Part(
                    new Sphere(BALL),
                    new Pose(
                            new Vec3(
                                    -(u + c.at[i] * cos - c.height * sin + ball * nu / size),
                                    0,
                                    w + c.at[i] * sin + c.height * cos + ball * nw / size),
                            Rotation.IDENTITY)));
            beads.add(new Bead(i + 1, new Vec3(c.at[i], c.height, 0)));
            links.add(new Link(c.length[i], c.torque[i], c.rate[i], 0, -9, 9));
            u += c.length[i] * cos;
            w += c.length[i] * sin;
        }
        Shape supports = new Composite(balls);
        BareScene scene = new BareScene(List.of(new Chain(Vec3.ZERO, 0, links)), supports).beads(beads, stiffness);
        scene.fixed = true;
        scene.tension = 1;
        scene.q = c.angle.clone();
        return scene;
    }

    private static Found solve(Case c, int[] side, double stiffness) {
        BareScene scene = scene(c, side, stiffness);
        scene.longestStep = 1;
        scene.close(0, 300);
        double[] force = IntStream.range(0, c.n())
                .mapToDouble(i -> side[i] * scene.force(i + 1) / Math.hypot(1, c.tilt))
                .toArray();
        return new Found(force, scene);
    }
}
