package gripwright.closing;

import static org.assertj.core.api.Assertions.assertThat;

import gripwright.closing.BareScene.Chain;
import gripwright.closing.BareScene.Link;
import gripwright.math.Rotation;
import gripwright.math.Vec3;
import gripwright.shape.Cylinder;
import gripwright.truth.Reference;
import gripwright.truth.Reference.Row;
import gripwright.truth.Truth;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Two mirrored fingers without springs or thickness round a disc that is held at a height.
 *
 * <p>Source: moment balance of both fingers, reference/statics/finger_statics.csv (DISC, HOLD, GRASP). Worked outside:
 * statics, and again by the greatest tendon travel under non-penetration, equal to five decimals. Units: N, mm.
 * Tolerance: the give of a contact of 1e10 N/m, below 1e-6 m, over the lever arms; it falls with the root of the
 * stiffness. Valid for thin rigid links without friction.
 */
class DiscTest {
    private static final String SOURCE = "moment balance and greatest tendon travel, computed apart";
    private static final double MM = 1e-3;

    static Stream<String> ids() {
        return Reference.rows("statics/finger_statics.csv").stream()
                .map(Row::id)
                .filter(id -> id.startsWith("DISC"))
                .distinct();
    }

    @ParameterizedTest
    @MethodSource("ids")
    void referenceForcesAtAHeight(String id) {
        List<Row> rows = Reference.rows("statics/finger_statics.csv").stream()
                .filter(r -> r.id().equals(id))
                .toList();
        BareScene scene = held(25, rows.get(0).input("y"), 1e10);
        String quantities = rows.stream().map(Row::quantity).collect(Collectors.joining(" "));
        if (!quantities.contains("f1")) {
            assertThat(scene.force(1)).as("proximal link is off").isZero();
            assertThat(scene.force(3)).as("proximal link is off").isZero();
        }
        for (Row row : rows) {
            double found = switch (row.quantity()) {
                case "f1" -> scene.force(1);
                case "f2" -> scene.force(2);
                case "Fy" -> scene.forceOnObject().z();
                case "k1" -> scene.beadAt(1) / MM;
                case "k2" -> scene.beadAt(2) / MM;
                case "a1" -> Math.toDegrees(scene.q[0]);
                case "th2" -> Math.toDegrees(scene.q[1]);
                default -> throw new AssertionError(row);
            };
            double tolerance = 3e-4 * Math.max(1, Math.abs(row.expected()));
            Truth.record(
                    "disc in two fingers",
                    row + " [" + row.unit() + "]",
                    row.inputsText(),
                    SOURCE,
                    row.expected(),
                    found,
                    "3e-4 of it, at least 3e-4",
                    "give of contacts at 1e10 N/m");
            assertThat(found).as(row.toString()).isCloseTo(row.expected(), Offset.offset(tolerance));
        }
    }

    @Test
    void referenceForcesCloseInAsContactsGetStiffer() {
        List<Double> errors = new ArrayList<>();
        for (double k : new double[] {1e6, 1e8, 1e10}) {
            double error = Math.abs(held(25, 27, k).forceOnObject().z() - -9.165626305161);
            errors.add(error);
            Truth.record(
                    "disc in two fingers",
                    "error of Fy at 27 mm, stiffness " + k + " [N]",
                    SOURCE,
                    0,
                    error,
                    "falls with the stiffness",
                    "d = sqrt(2e-4 m f / k)");
        }
        assertThat(errors.get(1)).isLessThan(errors.get(0) / 5);
        assertThat(errors.get(2)).isLessThan(errors.get(1) / 5);
    }

    /** The greatest pull-out force is where the proximal links let go. */
    @Test
    void referencePullOutForce() {
        double y = hold("y_where_f1_zero");
        double peak = hold("peak_pull_out_force_both_fingers");
        BareScene scene = held(25, y, 1e10);
        Truth.record(
                "disc in two fingers",
                "pull-out force [N]",
                SOURCE,
                peak,
                -scene.forceOnObject().z(),
                "2e-4 of it",
                "give of contacts at 1e10 N/m");
        assertThat(-scene.forceOnObject().z()).isCloseTo(peak, Offset.offset(2e-4 * peak));
        assertThat(scene.force(1)).isLessThan(2e-3);
        assertThat(-held(25, y - 0.2, 1e10).forceOnObject().z()).isLessThan(peak);
        assertThat(-held(25, y + 0.2, 1e10).forceOnObject().z()).isLessThan(peak);
    }

    /** At this height the contact reaches the end of the distal link: beyond it the disc is lost. */
    @Test
    void referenceContactReachesTheTip() {
        double y = hold("y_where_contact_reaches_tip");
        BareScene scene = held(25, y - 0.01, 1e10);
        Truth.record(
                "disc in two fingers",
                "contact at the tip [mm]",
                SOURCE,
                35,
                scene.beadAt(2) / MM,
                "0.02",
                "asked 0.01 mm before it");
        assertThat(scene.beadAt(2)).isCloseTo(0.035, Offset.offset(2e-5));
        assertThat(-scene.forceOnObject().z()).isCloseTo(hold("force_there"), Offset.offset(3e-3));
    }

    /** The largest disc that sits on the palm with all four links loaded. */
    @Test
    void referenceLargestDiscOnThePalm() {
        double radius = Reference.rows("statics/finger_statics.csv").stream()
                .filter(r -> r.id().equals("GRASP"))
                .findFirst()
                .orElseThrow()
                .expected();
        double inside = held(radius - 0.02, radius - 0.02, 1e10).force(1);
        double outside = held(radius + 0.02, radius + 0.02, 1e10).force(1);
        Truth.record(
                "disc in two fingers",
                "proximal force beyond the largest disc [N]",
                SOURCE,
                0,
                outside,
                "0",
                "0.02 mm beyond it");
        assertThat(inside).isPositive();
        assertThat(outside).isZero();
    }

    private static double hold(String quantity) {
        return Reference.rows("statics/finger_statics.csv").stream()
                .filter(r -> r.id().equals("HOLD") && r.quantity().equals(quantity))
                .findFirst()
                .orElseThrow()
                .expected();
    }

    /** Lengths in mm. */
    private static BareScene held(double radius, double height, double stiffness) {
        List<Link> links =
                List.of(new Link(0.045, 0.010, 0, Math.toRadians(20), -1, 3), new Link(0.035, 0.006, 0, 0, -1, 3));
        BareScene scene = new BareScene(
                        List.of(
                                new Chain(new Vec3(-0.02, 0, 0), 0, links),
                                new Chain(new Vec3(0.02, 0, 0), Math.PI, links)),
                        new Cylinder(radius * MM, 0.05, 0))
                .capsules(0, stiffness, false);
        scene.fixed = true;
        scene.tension = 20;
        scene.p[2] = height * MM;
        System.arraycopy(Rotation.about(Vec3.X, Math.PI / 2).toArray(), 0, scene.r, 0, 9);
        int steps = scene.close(0, 3000);
        assertThat(steps).as("steps to rest").isLessThan(3000);
        return scene;
    }
}
