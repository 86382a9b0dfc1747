package gripwright.contact;

import static org.assertj.core.api.Assertions.assertThat;

import gripwright.contact.WrenchSpace.Contact;
import gripwright.contact.WrenchSpace.Quality;
import gripwright.math.Vec3;
import gripwright.truth.Reference;
import gripwright.truth.Reference.Row;
import gripwright.truth.Truth;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Largest ball in the space of wrenches.
 *
 * <p>Source: reference/grasps/grasp_quality.csv and min_contacts.csv (origin and standing in their first lines). Worked
 * outside: closed forms, and hulls by another program. Units: none; torque divided by rho. Tolerance: 1e-9, and 1e-7
 * for linearised cones.
 */
class WrenchSpaceTest {
    private static final String SOURCE = "grasp_quality.csv, derived apart from the definitions";

    static Stream<Row> rows() {
        return Reference.rows("grasps/grasp_quality.csv").stream();
    }

    @ParameterizedTest
    @MethodSource("rows")
    void referenceQuality(Row row) {
        double found = switch (row.id()) {
            case "D4" -> new WrenchHull(disc(4, row.input("mu")), 3).largestBall();
            case "DI2" -> new WrenchHull(sums(disc(2, row.input("mu")), 2), 3).largestBall();
            case "S6" -> new WrenchSpace(onAxes(row.input("mu")), 1).quality().exact();
            case "S4m8" -> new WrenchSpace(tetrahedral(row.input("mu")), 1).linearised(8);
            case "S4m32" -> new WrenchSpace(tetrahedral(row.input("mu")), 1).linearised(32);
            case "C2" ->
                row.quantity().equals("Q_L1")
                        ? opposite(0).exact()
                        : opposite(0).rank();
            case "C2s" -> opposite(0.2).closed() ? 1 : 0;
            default -> throw new AssertionError(row);
        };
        double tolerance = row.quantity().contains("linearised") ? 1e-7 : 1e-9;
        Truth.record(
                "wrench-space quality",
                row + (row.inputs().containsKey("mu") ? " mu " + row.input("mu") : ""),
                SOURCE,
                row.expected(),
                found,
                Double.toString(tolerance),
                "closed form or a hull computed apart");
        assertThat(found).as(row.toString()).isCloseTo(row.expected(), Offset.offset(tolerance));
    }

    /** Four contacts on a sphere, round cones: mu / sqrt 2 (numeric minimum computed apart, equal to 1e-8). */
    @ParameterizedTest
    @ValueSource(doubles = {0.2, 0.5})
    void referenceRoundConesOfFourContactsOnASphere(double mu) {
        Quality q = new WrenchSpace(tetrahedral(mu), 1).quality();
        Truth.record(
                "wrench-space quality",
                "four on a sphere, round cones, mu " + mu,
                "numeric minimum computed apart; mu / sqrt 2",
                mu / Math.sqrt(2),
                q.exact(),
                "1e-8",
                "agreement of the source's two ways");
        assertThat(q.exact()).isCloseTo(mu / Math.sqrt(2), Offset.offset(1e-8));
        assertThat(q.linearised()).isLessThan(q.exact());
    }

    /** A square of half side 1, two opposed couples off centre by d, no friction: d / sqrt(1 + 4 d^2), derived apart. */
    @ParameterizedTest
    @ValueSource(doubles = {0.25, 0.5, 1})
    void referenceFourContactsWithoutFrictionOnASquare(double d) {
        double[][] right = {{-1, 0, d}, {1, 0, d}, {0, -1, -d}, {0, 1, -d}};
        // couples: x-forces turn one way, y-forces the other
        double[][] pinwheel = {{-1, 0, d}, {1, 0, d}, {0, -1, d}, {0, 1, d}};
        assertThat(new WrenchHull(List.of(right), 3).largestBall())
                .isCloseTo(d / Math.sqrt(1 + 4 * d * d), Offset.offset(1e-9));
        assertThat(new WrenchHull(List.of(pinwheel), 3).largestBall()).isZero();
    }

    /** min_contacts.csv: two with friction in the plane, three in space, two soft ones; at equality not closed. */
    @Test
    void referenceFewestContactsThatClose() {
        assertThat(new WrenchHull(disc(2, 0.3), 3).largestBall()).isPositive();
        assertThat(new WrenchHull(disc(3, 0), 3).largestBall())
                .as("a disc spins")
                .isZero();
        List<Contact> three = new ArrayList<>();
        for (int k = 0; k < 3; k++) {
            double a = 2 * Math.PI * k / 3;
            Vec3 out = new Vec3(Math.cos(a), Math.sin(a), 0);
            three.add(new Contact(out, out.times(-1), 0.4, 0));
        }
        assertThat(new WrenchSpace(three, 1).quality().closed()).isTrue();
        assertThat(new WrenchSpace(three.subList(0, 2), 1).quality().closed()).isFalse();
        assertThat(opposite(0.01).closed()).isTrue();
    }

    /** Faces 40 mm apart, mu 0.3: closed only for an offset below 12 mm (Nguyen 1988: the segment inside both cones). */
    @Test
    void referenceOffsetFacesCloseWithinTheCones() {
        for (double offset : new double[] {0, 11.9, 12, 12.1}) {
            double mu = 0.3;
            List<double[]> w = new ArrayList<>();
            for (int side = -1; side <= 1; side += 2) {
                for (int edge = -1; edge <= 1; edge += 2) {
                    double fx = -side;
                    double fy = edge * mu;
                    double x = 20 * side;
                    double y = side * offset / 2;
                    w.add(new double[] {fx, fy, (x * fy - y * fx) / 20});
                }
            }
            assertThat(new WrenchHull(w, 3).largestBall() > 0)
                    .as("offset " + offset + " mm")
                    .isEqualTo(offset < 12);
        }
    }

    /** Any direction of length 1 reaches at least as far as the quality says; no sampling finds less. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4})
    void propertyNoDirectionReachesLess(long seed) {
        Random random = new Random(seed);
        List<Contact> contacts = new ArrayList<>();
        for (int i = 0; i < 7; i++) {
            Vec3 n = new Vec3(random.nextGaussian(), random.nextGaussian(), random.nextGaussian()).unit();
            contacts.add(new Contact(n.times(-0.03), n, 0.6, 0));
        }
        WrenchSpace space = new WrenchSpace(contacts, 0.03);
        Quality q = space.quality();
        assertThat(q.linearised()).as("seed " + seed).isLessThanOrEqualTo(q.exact() + 1e-12);
        assertThat(space.linearised(64)).isBetween(q.exact() * 0.99 - 1e-9, q.exact() + 1e-9);
    }

    private static Quality opposite(double soft) {
        return new WrenchSpace(
                        List.of(
                                new Contact(Vec3.X, Vec3.X.times(-1), 0.5, soft),
                                new Contact(Vec3.X.times(-1), Vec3.X, 0.5, soft)),
                        1)
                .quality();
    }

    /** Planar wrenches (fx, fy, torque) of n contacts on a disc of radius 1. */
    private static List<double[]> disc(int n, double mu) {
        List<double[]> out = new ArrayList<>();
        for (int k = 0; k < n; k++) {
            double a = 2 * Math.PI * k / n;
            for (int edge = -1; edge <= 1; edge += 2) {
                double t = edge * mu;
                out.add(new double[] {-Math.cos(a) - t * Math.sin(a), -Math.sin(a) + t * Math.cos(a), t});
            }
        }
        return out;
    }

    /** All sums of one edge or nothing of every contact. */
    private static List<double[]> sums(List<double[]> edges, int perContact) {
        List<double[]> out = new ArrayList<>();
        out.add(new double[3]);
        for (int c = 0; c < edges.size(); c += perContact) {
            List<double[]> next = new ArrayList<>(out);
            for (double[] so : out) {
                for (int e = c; e < c + perContact; e++) {
                    double[] w = edges.get(e);
                    next.add(new double[] {so[0] + w[0], so[1] + w[1], so[2] + w[2]});
                }
            }
            out = next;
        }
        return out;
    }

    private static List<Contact> onAxes(double mu) {
        return Stream.of(Vec3.X, Vec3.Y, Vec3.Z)
                .flatMap(a -> Stream.of(a, a.times(-1)))
                .map(a -> new Contact(a, a.times(-1), mu, 0))
                .toList();
    }

    private static List<Contact> tetrahedral(double mu) {
        return Stream.of(new Vec3(1, 1, 1), new Vec3(1, -1, -1), new Vec3(-1, 1, -1), new Vec3(-1, -1, 1))
                .map(Vec3::unit)
                .map(a -> new Contact(a, a.times(-1), mu, 0))
                .toList();
    }
}
