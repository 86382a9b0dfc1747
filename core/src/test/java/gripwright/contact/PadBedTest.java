package gripwright.contact;

import static org.assertj.core.api.Assertions.assertThat;

import gripwright.contact.PadPoints.Point;
import gripwright.math.Vec3;
import gripwright.shape.Cylinder;
import gripwright.shape.Shape;
import gripwright.shape.Sphere;
import gripwright.truth.Reference;
import gripwright.truth.Truth;
import java.util.ArrayList;
import java.util.List;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;

/**
 * A sphere and a roller pressed into a bed of springs, against the elastic foundation of K. L. Johnson, "Contact
 * Mechanics", 1985, section 4.3 (from memory); reference/contact/contact.csv, WKS and WKL.
 *
 * <p>Our springs act along the sphere's normal and build up over a toe of t = 0.1 mm. Both are known in closed form: the
 * load is pi (K/h) (R - d) ((d - t/2)^2 + t^2/12) instead of pi (K/h) R d^2, worked by hand. Units: SI. Tolerance:
 * 0.1 % of that for a bed of 0.1 mm pitch; against the textbook form the difference is what these two terms say. Valid
 * for indentations small against the radius and larger than the toe.
 */
class PadBedTest {
    private static final double BED = 2e6 / 0.004;
    private static final double TOE = 1e-4;

    @Test
    void referenceSphereOnABedOfSprings() {
        Reference.rows("contact/contact.csv").stream()
                .filter(r -> r.id().equals("WKS") && r.quantity().equals("load"))
                .forEach(row -> {
                    double d = row.input("delta");
                    double found = pressed(new Sphere(0.01), 0.01, d, 1e-4, 0.006, 0.006);
                    double ours = Math.PI * BED * (0.01 - d) * ((d - TOE / 2) * (d - TOE / 2) + TOE * TOE / 12);
                    Truth.record(
                            "pads",
                            "sphere on a bed, ours, d = " + d + " [N]",
                            "closed form by hand",
                            ours,
                            found,
                            "1e-3",
                            "pitch of the bed");
                    Truth.record(
                            "pads",
                            "sphere on a bed, textbook, d = " + d + " [N]",
                            "Johnson 1985, from memory",
                            row.expected(),
                            found,
                            "-(d/R + t/d)",
                            "springs along the normal, toe of 0.1 mm");
                    assertThat(found).isCloseTo(ours, Offset.offset(1e-3 * ours));
                    assertThat(found / row.expected()).isBetween(1 - d / 0.01 - TOE / d, 1.0);
                });
    }

    /** Where the indentation is large against the toe and small against the radius, the textbook form comes out. */
    @Test
    void referenceTendsToTheTextbookLoad() {
        double before = 1;
        for (double size : new double[] {1, 10, 100}) {
            double radius = 0.1 * size;
            double d = 0.005 * radius;
            double a = Math.sqrt(2 * radius * d);
            double expected = Math.PI * BED * radius * d * d;
            double found = pressed(new Sphere(radius), radius, d, a / 40, 1.05 * a, 1.05 * a);
            double error = Math.abs(found / expected - 1);
            Truth.record(
                    "pads",
                    "sphere of " + radius + " m on a bed, load over textbook",
                    "Johnson 1985, from memory",
                    1,
                    found / expected,
                    "d/R + t/d",
                    "toe of 0.1 mm against the indentation");
            assertThat(error).isLessThan(before);
            assertThat(error).isLessThan(d / radius + TOE / d + 2e-3);
            before = error;
        }
        assertThat(before).isLessThan(0.01);
    }

    /**
     * Load of the bed over Hertz's at the same contact radius is (K/h) a / E* times 3 pi / 16 for a sphere and 8 / (3 pi)
     * for a roller (rows WKL hold the inverses), whatever the load.
     */
    @Test
    void referenceMatchingLoadOfSphereAndRoller() {
        double radius = 10;
        double d = 0.05;
        double a = Math.sqrt(2 * radius * d);
        double hertzPerModulus = 4 * a * a * a / (3 * radius);
        double sphere = pressed(new Sphere(radius), radius, d, a / 50, 1.05 * a, 1.05 * a);
        matches("match_circle_(K/h)a/E*", BED * a * hertzPerModulus / sphere);
        double half = 0.2;
        double linePerModulus = Math.PI * a * a / (4 * radius);
        double roller = pressed(new Cylinder(radius, 5, 0), radius, d, a / 200, 1.05 * a, half) / (2 * half);
        matches("match_line_(K/h)a/E*", BED * a * linePerModulus / roller);
    }

    private static void matches(String quantity, double found) {
        double expected = Reference.rows("contact/contact.csv").stream()
                .filter(r -> r.quantity().equals(quantity))
                .findFirst()
                .orElseThrow()
                .expected();
        Truth.record(
                "pads",
                quantity,
                "Johnson 1985, from memory",
                expected,
                found,
                "1.2 %",
                "d/R = 0.5 %, toe 0.2 %, pitch");
        assertThat(found).isCloseTo(expected, Offset.offset(0.012 * expected));
    }

    /** Load along z of a shape whose lowest point lies {@code depth} under a level bed; a roller's axis is along y. */
    private static double pressed(Shape shape, double radius, double depth, double pitch, double halfX, double halfY) {
        PadPoints.Builder builder = new PadPoints.Builder().body();
        int nx = (int) Math.round(2 * halfX / pitch);
        int ny = (int) Math.max(1, Math.round(2 * halfY / pitch));
        double dx = 2 * halfX / nx;
        double dy = 2 * halfY / ny;
        for (int i = 0; i < nx; i++) {
            List<Point> row = new ArrayList<>();
            for (int k = 0; k < ny; k++) {
                Vec3 place = new Vec3(-halfX + (i + 0.5) * dx, -halfY + (k + 0.5) * dy, 0);
                row.add(new Point(place, Vec3.Z, 0, BED * dx * dy, BED * dx * dy, dx * dy, "rubber"));
            }
            builder.row(row);
        }
        PadContact contact = new PadContact(builder.build(), shape);
        contact.reset(new double[] {0}, 1);
        boolean roller = shape instanceof Cylinder;
        // the bed in the object's frame: up is z for a sphere, x for a roller about z (bed y along its axis)
        double[] r = roller ? new double[] {0, 0, 1, 1, 0, 0, 0, 1, 0} : new double[] {1, 0, 0, 0, 1, 0, 0, 0, 1};
        double low = depth - radius;
        double[] t = roller ? new double[] {low, 0, 0} : new double[] {0, 0, low};
        contact.commit(r, t);
        Block block = new Block();
        contact.accumulate(0, r, t, true, false, block);
        return roller ? block.fx : block.fz;
    }
}
