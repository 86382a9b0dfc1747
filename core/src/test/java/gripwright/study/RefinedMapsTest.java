package gripwright.study;

import static org.assertj.core.api.Assertions.assertThat;

import gripwright.closing.BenchHands;
import gripwright.closing.ClosingSimulator;
import gripwright.closing.ClosingSummary;
import gripwright.closing.Criteria;
import gripwright.closing.Numerics;
import gripwright.model.GraspObject;
import gripwright.model.Grip;
import gripwright.model.Spread;
import gripwright.shape.Box;
import gripwright.shape.Cylinder;
import gripwright.study.CellShare.Basis;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Maps that spend their runs at borders, against maps that compute every cell, on real closings. */
@Tag("slow")
class RefinedMapsTest {
    private static final CaptureMap GRID = new CaptureMap(0.045, 25, 0.9);

    private static void assertSameAsEveryCell(GraspObject object) {
        Grip grip = new Grip(
                "top",
                Grip.Approach.ABOVE,
                new Grip.PalmToObject(0.05, Double.NaN),
                0,
                Map.of(),
                List.of("left", "right", "thumb"));
        RunnerFactory closings = (o, g) -> new ClosingSimulator(
                BenchHands.threeFinger(), g, o, new Spread(0.4, 0.05), Numerics.DEFAULT, Criteria.DEFAULT);
        ThreadJobs jobs = new ThreadJobs(2);
        MapResult every = GRID.run(object, grip, closings, jobs, CaptureMap.Listener.NONE, Jobs.Progress.NONE);
        // Ensembles do not change outcomes; without them the test takes half the time.
        MapResult refined = new ShareMap(GRID, Uncertain.seeded(1)).outcomes(object, grip, closings, jobs);
        int other = 0;
        for (int i = 0; i < GRID.cells() * GRID.cells(); i++) {
            ClosingSummary a = every.runs().get(i);
            ClosingSummary b = refined.runs().get(i);
            other += a != null && b != null && a.outcome() == b.outcome() ? 0 : 1;
        }
        int spared = refined.count(s -> s.basis() == Basis.NEIGHBOURS);
        System.out.println(object.name() + ": " + other + " of " + GRID.cells() * GRID.cells()
                + " cells end otherwise, " + spared + " runs spared");
        assertThat(other).isLessThanOrEqualTo(GRID.cells() * GRID.cells() / 100);
        assertThat(spared).isPositive();
    }

    @Test
    void refinedMapOfACylinderHasTheOutcomesOfEveryCell() {
        assertSameAsEveryCell(BenchHands.object("cylinder", new Cylinder(0.03, 0.04, 0.002), 0.2));
    }

    @Test
    void refinedMapOfABoxHasTheOutcomesOfEveryCell() {
        assertSameAsEveryCell(BenchHands.object("box", new Box(0.03, 0.03, 0.04, 0.002), 0.2));
    }
}
