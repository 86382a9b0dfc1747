package gripwright.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gripwright.math.Rotation;
import gripwright.math.Vec3;
import gripwright.shape.Box;
import gripwright.shape.Cylinder;
import gripwright.shape.Ring;
import gripwright.shape.Sphere;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Areas of outlines against elementary plane geometry. */
class SilhouetteTest {
    private static double area(Silhouette s) {
        double sum = 0;
        for (List<Svg.P> loop : s.loops()) {
            for (int i = 0; i < loop.size(); i++) {
                Svg.P a = loop.get(i);
                Svg.P b = loop.get((i + 1) % loop.size());
                sum += (a.x() * b.y() - b.x() * a.y()) / 2;
            }
        }
        return sum;
    }

    @Test
    void referenceASphereIsACircleFromEverySide() {
        for (View view : View.values()) {
            Silhouette s = Silhouette.of(new Sphere(0.03), Rotation.IDENTITY, view);
            assertThat(area(s)).isCloseTo(Math.PI * 0.03 * 0.03, within(2e-5));
            assertThat(s.round(0.02)).isTrue();
        }
    }

    @Test
    void referenceABoxTurnedBy45DegreesIsAsWideAsItsDiagonal() {
        Silhouette s =
                Silhouette.of(new Box(0.03, 0.03, 0.05, 0.0005), Rotation.about(Vec3.Z, Math.PI / 4), View.FRONT);
        assertThat(s.bounds().width()).isCloseTo(0.06 * Math.sqrt(2), within(1e-3));
        assertThat(area(s)).isCloseTo(0.06 * Math.sqrt(2) * 0.10, within(1e-4));
    }

    @Test
    void referenceALyingCylinderIsARectangleFromAboveAndACircleAlongItsAxis() {
        Rotation lying = Rotation.about(Vec3.Y, Math.PI / 2);
        Cylinder c = new Cylinder(0.02, 0.05, 0.0005);
        assertThat(area(Silhouette.of(c, lying, View.TOP))).isCloseTo(0.04 * 0.10, within(5e-5));
        assertThat(Silhouette.of(c, lying, View.SIDE).round(0.03)).isTrue();
    }

    @Test
    void referenceOneCanLookThroughARing() {
        Silhouette s = Silhouette.of(new Ring(0.046, 0.008), Rotation.IDENTITY, View.TOP);
        assertThat(s.loops()).hasSize(2);
        assertThat(area(s)).isCloseTo(Math.PI * (0.054 * 0.054 - 0.038 * 0.038), within(5e-5));
    }
}
