package gripwright.closing;

import static org.assertj.core.api.Assertions.assertThat;

import gripwright.math.Pose;
import gripwright.math.Rotation;
import gripwright.math.Vec3;
import gripwright.shape.Capsule;
import gripwright.shape.Composite;
import gripwright.shape.Cup;
import gripwright.shape.Cylinder;
import gripwright.shape.Ellipsoid;
import gripwright.shape.Mesh;
import gripwright.shape.Ring;
import gripwright.shape.Shape;
import gripwright.shape.Triangle;
import gripwright.truth.Truth;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** Objects alone on the table: rolling, tipping, coming to rest. */
class OnTheTableTest {
    private static final double MASS = 0.3;

    /**
     * A lying cylinder pushed by 0.02 N rolls a full turn at constant height. Source: geometry, a circle rolls level.
     * Units: m. Tolerance: 1e-7 m, a facet of a 24-sided prism of this radius would raise it by 2.6e-4 m. Valid for a
     * smooth cylinder.
     */
    @Test
    void referenceALyingCylinderRollsWithoutFacets() {
        StepSystem s = alone(new Cylinder(0.03, 0.05, 0.002), Rotation.about(Vec3.X, Math.PI / 2), 0.5);
        Stepper stepper = new Stepper(s, Numerics.DEFAULT);
        stepper.reset();
        assertThat(stepper.settle(motion -> false)).isEqualTo(Stepper.End.DONE);
        double height = s.p[2];
        double x0 = s.p[0];
        double[] worst = new double[2];
        s.object.push[0] = 0.02;
        Stepper.End end = stepper.ramp(t -> {}, 1000, 1e-6, 1e-2, motion -> {
            worst[0] = Math.max(worst[0], Math.abs(s.p[2] - height));
            worst[1] += motion;
            return s.p[0] - x0 > 2 * Math.PI * 0.03;
        });
        assertThat(end).isEqualTo(Stepper.End.STOPPED);
        Truth.record(
                "table",
                "lying cylinder, change of height over a turn [m]",
                "geometry",
                0,
                worst[0],
                "1e-7",
                "no facets");
        assertThat(worst[0]).isLessThan(1e-7);
        assertThat(Math.abs(s.p[1])).as("rolls straight").isLessThan(1e-7);
        // it rolled: the body turned by travel / radius, here one full turn
        Rotation turned = Rotation.of(s.r, 0);
        double rolled = (s.p[0] - x0) / 0.03;
        Rotation expected = Rotation.about(Vec3.Y, rolled).times(Rotation.about(Vec3.X, Math.PI / 2));
        double off = turned.column(0).minus(expected.column(0)).length();
        Truth.record(
                "table",
                "lying cylinder, turn against travel / radius [rad]",
                "geometry",
                0,
                off,
                "0.01",
                "the anchor's elastic give at each step");
        assertThat(off).isLessThan(0.01);
    }

    /**
     * A standing cylinder pushed at its centre tips when push / weight passes radius / height of the centre. Source:
     * moment about the edge. Worked outside: by hand. Units: 1. Tolerance: it tips early, by at most 6 %, never late:
     * under 3 N the table's sites give 15 um, so that the load spreads along the rim and its middle stays inside the
     * edge; lighter ones come closer (0.05 kg: 2.5 %). Valid for friction above the ratio.
     */
    @ParameterizedTest
    @CsvSource({"0.05, 0", "0.3, 0", "0.3, 7.5", "0.3, 100", "1, 0"})
    void referenceACylinderTipsAtTheAngleOfItsEdge(double mass, double direction) {
        double low = 0.9;
        double high = 1.05;
        assertThat(tips(mass, direction, low)).isFalse();
        assertThat(tips(mass, direction, high)).isTrue();
        while (high - low > 2e-3) {
            double middle = 0.5 * (low + high);
            if (tips(mass, direction, middle)) {
                high = middle;
            } else {
                low = middle;
            }
        }
        double found = 0.5 * (low + high);
        Truth.record(
                "table",
                "cylinder of " + mass + " kg pushed towards " + direction + " deg: tipping push / weight over r / h",
                "moment about the edge",
                1,
                found,
                "-6 % to 0",
                "give of the table's sites");
        assertThat(found).isBetween(0.94, 1.001);
    }

    private static boolean tips(double mass, double direction, double share) {
        double radius = 0.02;
        double half = 0.06;
        double a = Math.toRadians(direction);
        StepSystem s = alone(new Cylinder(radius, half, 0), Rotation.IDENTITY, 1);
        s.object.mass = mass;
        Stepper stepper = new Stepper(s, Numerics.DEFAULT);
        stepper.reset();
        assertThat(stepper.settle(motion -> false)).isEqualTo(Stepper.End.DONE);
        double push = share * radius / half * mass * FreeObject.GRAVITY;
        Stepper.Watch fallen = motion -> s.r[8] < Math.cos(Math.toRadians(20));
        Stepper.End end = stepper.ramp(
                t -> {
                    s.object.push[0] = push * t * Math.cos(a);
                    s.object.push[1] = push * t * Math.sin(a);
                },
                1,
                0.01,
                0.05,
                fallen);
        if (end == Stepper.End.DONE) {
            end = stepper.settle(fallen);
        }
        return end == Stepper.End.STOPPED;
    }

    static Stream<Arguments> tilted() {
        Rotation lean = Rotation.about(new Vec3(0.6, 0.8, 0), 0.15);
        Shape mug = new Composite(List.of(
                new Composite.Part(new Cylinder(0.04, 0.05, 0.002), Pose.IDENTITY),
                new Composite.Part(
                        new Ring(0.025, 0.005), new Pose(new Vec3(0.05, 0, 0), Rotation.about(Vec3.X, Math.PI / 2)))));
        return Stream.of(
                Arguments.of("cup", new Cup(0.03, 0.04, 0.05, 0.002), lean),
                Arguments.of(
                        "cup upside down",
                        new Cup(0.03, 0.04, 0.05, 0.002),
                        Rotation.about(Vec3.X, Math.PI).times(lean)),
                Arguments.of("lying cup", new Cup(0.03, 0.04, 0.05, 0.002), Rotation.about(Vec3.X, 1.5)),
                Arguments.of("ellipsoid", new Ellipsoid(0.05, 0.04, 0.03), lean),
                Arguments.of("capsule", new Capsule(0.02, 0.03), Rotation.about(Vec3.X, 1.4)),
                Arguments.of("mug on its handle", mug, Rotation.about(Vec3.Y, 1.7)),
                Arguments.of("mesh of a block", block(), lean));
    }

    /**
     * Set down tilted, each comes to rest with the table carrying its weight. Source: Newton's third law. Units: N.
     * Tolerance: 1e-4 N, the demand on every end state. Valid at rest.
     */
    @ParameterizedTest(name = "{0}")
    @MethodSource("tilted")
    void referenceATiltedObjectComesToRestOnTheTable(String name, Shape shape, Rotation stance) {
        StepSystem s = alone(shape, stance, 0.4);
        Vec3 com = shape.centroid();
        s.object.centreOfMass[0] = com.x();
        s.object.centreOfMass[1] = com.y();
        s.object.centreOfMass[2] = com.z();
        Stepper stepper = new Stepper(s, Numerics.DEFAULT);
        stepper.reset();
        assertThat(stepper.settle(motion -> false)).as(stepper.trouble).isEqualTo(Stepper.End.DONE);
        double carried = 0;
        double px = 0;
        double py = 0;
        double[] f = new double[5];
        for (int i = 0; i < s.table.sites(); i++) {
            s.table.forceOnObject(i, s.r, s.p, f);
            carried += s.table.force(i);
            px += f[0] * s.table.force(i);
            py += f[1] * s.table.force(i);
        }
        Vec3 centre = new Pose(new Vec3(s.p[0], s.p[1], s.p[2]), Rotation.of(s.r, 0)).apply(com);
        double weight = MASS * FreeObject.GRAVITY;
        Truth.record(
                "table",
                name + " at rest: carried weight [N]",
                "Newton's third law",
                weight,
                carried,
                "1e-4",
                "balance of the end state");
        assertThat(carried).isCloseTo(weight, Offset.offset(1e-4));
        assertThat(px / carried).as("support under the centre").isCloseTo(centre.x(), Offset.offset(1e-5));
        assertThat(py / carried).as("support under the centre").isCloseTo(centre.y(), Offset.offset(1e-5));
    }

    private static StepSystem alone(Shape shape, Rotation stance, double friction) {
        StepSystem s = new StepSystem(Rig.empty(), shape);
        s.object.mass = MASS;
        System.arraycopy(stance.toArray(), 0, s.r, 0, 9);
        s.p[2] = shape.extent(stance.applyInverse(Vec3.Z.times(-1)));
        s.table.reset(friction);
        s.commit();
        return s;
    }

    private static Mesh block() {
        List<Triangle> out = new ArrayList<>();
        double a = 0.03;
        double b = 0.02;
        double c = 0.05;
        Vec3[] v = new Vec3[8];
        for (int i = 0; i < 8; i++) {
            v[i] = new Vec3((i & 1) == 0 ? -a : a, (i & 2) == 0 ? -b : b, (i & 4) == 0 ? -c : c);
        }
        int[][] quads = {{0, 2, 3, 1}, {4, 5, 7, 6}, {0, 1, 5, 4}, {2, 6, 7, 3}, {0, 4, 6, 2}, {1, 3, 7, 5}};
        for (int[] q : quads) {
            out.add(new Triangle(v[q[0]], v[q[1]], v[q[2]]));
            out.add(new Triangle(v[q[0]], v[q[2]], v[q[3]]));
        }
        return Mesh.of(out, 20_000);
    }
}
