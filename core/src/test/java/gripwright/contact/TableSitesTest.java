package gripwright.contact;

import static org.assertj.core.api.Assertions.assertThat;

import gripwright.math.Rotation;
import gripwright.math.Vec3;
import gripwright.shape.Cylinder;
import gripwright.shape.Ellipsoid;
import gripwright.shape.Shape;
import gripwright.shape.TableSupport;
import java.util.List;
import java.util.Random;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Sites on which an object stands. Source: the shape's greatest extent downwards, a closed form of its own
 * ({@link TableSupport#extent}), and the definition of the derivative, by second differences over 1e-4 rad. Units: m, rad.
 * Tolerance: 1e-9 for places, 1e-6 for differences. Valid for any turn; on a standing edge for the 24 places it has.
 */
class TableSitesTest {
    private static final double TURN = 1e-4;
    private static final List<Shape> SHAPES = List.of(new Cylinder(0.03, 0.05, 0.003), new Ellipsoid(0.02, 0.03, 0.04));

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6})
    void propertyLowestSiteIsTheLowestPlaceOfTheShape(long seed) {
        Rotation turn = tilted(new Random(seed));
        for (Shape shape : SHAPES) {
            TableSites sites = new TableSites(shape.support());
            Vec3 up = turn.applyInverse(Vec3.Z);
            sites.chooseRims(turn.toArray());
            double lowest = Double.POSITIVE_INFINITY;
            for (int i = 0; i < sites.n; i++) {
                if (sites.inUse(i)) {
                    lowest = Math.min(lowest, height(sites, i, up) - sites.radius[i]);
                }
            }
            assertThat(lowest)
                    .as(shape + ", seed " + seed)
                    .isCloseTo(-shape.support().extent(up.times(-1)), Offset.offset(1e-9));
        }
    }

    /** Height m . s over a turn by w: its second derivative less that of a point fixed in the body is what moving adds. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6})
    void propertyCurvatureIsWhatTheMotionOfTheSiteAdds(long seed) {
        Random random = new Random(seed);
        Rotation turn = tilted(random);
        Vec3 w = direction(random);
        for (Shape shape : SHAPES) {
            TableSites sites = new TableSites(shape.support());
            Vec3 up = turn.applyInverse(Vec3.Z);
            sites.chooseRims(turn.toArray());
            for (int i = 0; i < sites.n; i++) {
                if (!sites.inUse(i)) {
                    continue;
                }
                double bend = height(sites, i, Rotation.about(w, -TURN).apply(up))
                        + height(sites, i, Rotation.about(w, TURN).apply(up));
                bend = (bend - 2 * height(sites, i, up)) / (TURN * TURN);
                sites.place(i, up.x(), up.y(), up.z());
                double fixed = new Vec3(sites.sx, sites.sy, sites.sz)
                        .dot(w.times(w.dot(up)).minus(up));
                Block block = new Block();
                sites.addCurvature(i, 1, up.x(), up.y(), up.z(), block);
                assertThat(turned(block.g, w))
                        .as(shape + ", seed " + seed + ", site " + i)
                        .isCloseTo(fixed - bend, Offset.offset(1e-6));
            }
        }
    }

    @Test
    void referenceAStandingCylinderHasTwentyFourPlacesOnEachEdge() {
        TableSites sites = new TableSites(new Cylinder(0.03, 0.05, 0.003).support());
        sites.chooseRims(Rotation.IDENTITY.toArray());
        int used = 0;
        for (int i = 0; i < sites.n; i++) {
            used += sites.inUse(i) ? 1 : 0;
        }
        assertThat(used).isEqualTo(48);
        sites.chooseRims(Rotation.about(Vec3.X, 0.5).toArray());
        used = 0;
        for (int i = 0; i < sites.n; i++) {
            used += sites.inUse(i) ? 1 : 0;
        }
        assertThat(used).isEqualTo(2);
    }

    private static double height(TableSites sites, int i, Vec3 up) {
        sites.place(i, up.x(), up.y(), up.z());
        return up.x() * sites.sx + up.y() * sites.sy + up.z() * sites.sz;
    }

    /** w^T G w over the turning block. */
    private static double turned(double[] g, Vec3 w) {
        return g[21] * w.x() * w.x()
                + g[28] * w.y() * w.y()
                + g[35] * w.z() * w.z()
                + 2 * (g[22] * w.x() * w.y() + g[23] * w.x() * w.z() + g[29] * w.y() * w.z());
    }

    /** By 20 to 80 degrees from upright, so that no edge stands. */
    private static Rotation tilted(Random random) {
        Vec3 about = new Vec3(random.nextGaussian(), random.nextGaussian(), 0).unit();
        return Rotation.about(about, Math.toRadians(20 + 60 * random.nextDouble()));
    }

    private static Vec3 direction(Random random) {
        return new Vec3(random.nextGaussian(), random.nextGaussian(), random.nextGaussian()).unit();
    }
}
