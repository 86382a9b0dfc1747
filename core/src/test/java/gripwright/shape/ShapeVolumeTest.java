package gripwright.shape;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import gripwright.math.Pose;
import gripwright.math.Rotation;
import gripwright.math.Vec3;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Closed forms of mensuration (any engineering handbook; from memory) and solids that are the same by two names. */
class ShapeVolumeTest {
    @Test
    void referenceVolumesOfSharpSolids() {
        // An edge of 0 is rounded by 0.01 mm, which costs less than 1e-5 of these volumes.
        assertThat(new Cylinder(0.03, 0.05, 0).volume()).isCloseTo(Math.PI * 9e-4 * 0.1, withinPercentage(1e-3));
        assertThat(new Box(0.03, 0.02, 0.04, 0).volume()).isCloseTo(0.06 * 0.04 * 0.08, withinPercentage(1e-3));
        double frustum = Math.PI * 0.1 / 3 * (0.03 * 0.03 + 0.03 * 0.04 + 0.04 * 0.04);
        assertThat(new Cup(0.03, 0.04, 0.05, 0).volume()).isCloseTo(frustum, withinPercentage(1e-3));
        double pipe = Math.PI * (0.03 * 0.03 - 0.02 * 0.02) * 0.1;
        assertThat(new Tube(0.03, 0.02, 0.05, 0).volume()).isCloseTo(pipe, withinPercentage(1e-3));
    }

    @Test
    void referenceVolumesOfRoundSolids() {
        assertThat(new Sphere(0.03).volume()).isCloseTo(4 * Math.PI / 3 * 2.7e-5, withinPercentage(1e-9));
        assertThat(new Capsule(0.03, 0.05).volume())
                .isCloseTo(4 * Math.PI / 3 * 2.7e-5 + Math.PI * 9e-4 * 0.1, withinPercentage(1e-9));
        assertThat(new Ring(0.03, 0.01).volume())
                .isCloseTo(2 * Math.PI * Math.PI * 0.03 * 1e-4, withinPercentage(1e-9));
        assertThat(new Ellipsoid(0.01, 0.02, 0.03).volume()).isCloseTo(4 * Math.PI / 3 * 6e-6, withinPercentage(1e-9));
    }

    @Test
    void referenceCentroidOfAFrustum() {
        // Height above the lower base: h/4 (R1^2 + 2 R1 R2 + 3 R2^2)/(R1^2 + R1 R2 + R2^2); from memory.
        double r1 = 0.03;
        double r2 = 0.04;
        double above = 0.1 / 4 * (r1 * r1 + 2 * r1 * r2 + 3 * r2 * r2) / (r1 * r1 + r1 * r2 + r2 * r2);
        assertThat(new Cup(r1, r2, 0.05, 0).centroid().z()).isCloseTo(above - 0.05, within(1e-7));
    }

    @Test
    void fullyRoundedSolidsAreSpheresAndCapsules() {
        double ball = new Sphere(0.03).volume();
        assertThat(new Cylinder(0.03, 0.03, 0.03).volume()).isCloseTo(ball, withinPercentage(1e-9));
        assertThat(new Box(0.03, 0.03, 0.03, 0.03).volume()).isCloseTo(ball, withinPercentage(1e-9));
        assertThat(new Cylinder(0.03, 0.05, 0.03).volume())
                .isCloseTo(new Capsule(0.03, 0.02).volume(), withinPercentage(1e-9));
        assertThat(new Cup(0.03, 0.03, 0.05, 0.004).volume())
                .isCloseTo(new Cylinder(0.03, 0.05, 0.004).volume(), withinPercentage(1e-9));
    }

    @Test
    void compositeAddsItsParts() {
        Composite two = new Composite(List.of(
                new Composite.Part(new Sphere(0.02), new Pose(new Vec3(0.1, 0, 0), Rotation.IDENTITY)),
                new Composite.Part(new Sphere(0.01), Pose.IDENTITY)));
        assertThat(two.volume()).isCloseTo(4 * Math.PI / 3 * 9e-6, withinPercentage(1e-9));
        assertThat(two.centroid().x()).isCloseTo(0.1 * 8 / 9, within(1e-12));
    }

    @Test
    void impossibleSizesAreRefusedWithTheValueAndTheRemedy() {
        assertThatThrownBy(() -> new Sphere(-0.01)).hasMessageContaining("radius of the sphere is -0.01 m");
        assertThatThrownBy(() -> new Sphere(Double.NaN)).hasMessageContaining("NaN");
        assertThatThrownBy(() -> new Box(0.01, 0.02, 0.03, 0.02))
                .hasMessageContaining("edge radius of the box is 0.02 m; at most 0.01 m fits");
        assertThatThrownBy(() -> new Cup(0.01, 0.03, 0.02, 0.019)).hasMessageContaining("make the edge smaller");
        assertThatThrownBy(() -> new Ring(0.01, 0.02)).hasMessageContaining("to leave a hole");
        assertThatThrownBy(() -> new Tube(0.01, 0.02, 0.01, 0)).hasMessageContaining("to leave a wall");
        assertThatThrownBy(() -> new Composite(List.of())).hasMessageContaining("give at least one");
    }
}
