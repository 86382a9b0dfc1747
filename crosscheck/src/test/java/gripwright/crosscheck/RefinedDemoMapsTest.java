package gripwright.crosscheck;

import static org.assertj.core.api.Assertions.assertThat;

import gripwright.closing.ClosingDetail;
import gripwright.closing.ClosingRunner;
import gripwright.closing.ClosingSimulator;
import gripwright.closing.ClosingSummary;
import gripwright.closing.Conditions;
import gripwright.closing.Criteria;
import gripwright.closing.Numerics;
import gripwright.model.GraspObject;
import gripwright.model.Grip;
import gripwright.model.Project;
import gripwright.study.CaptureMap;
import gripwright.study.Jobs;
import gripwright.study.MapResult;
import gripwright.study.RunnerFactory;
import gripwright.study.ShareMap;
import gripwright.study.ThreadJobs;
import gripwright.study.Uncertain;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Maps of the demonstration that follow borders, 41 x 41 cells with held shares, against the run of every cell. */
@Tag("slow")
class RefinedDemoMapsTest {
    private static final int CELLS = 41;

    /** Cells that may end otherwise, of all [-]: the bar set for the project. */
    private static final double OTHER = 0.01;

    @ParameterizedTest
    @CsvSource({"tape roll,low", "spray can,wrap"})
    void refinedMapHasTheOutcomesOfEveryCell(String objectName, String gripName, @TempDir Path folder)
            throws IOException {
        Project project = CaptureFactTest.demonstration(folder);
        GraspObject object = project.need().object(objectName);
        Grip grip = project.hand().grip(gripName);
        CaptureMap grid = new CaptureMap(0.06, CELLS, 0.9);
        // The nominal runs of both maps are the same ones: made once.
        Map<Conditions, ClosingSummary> made = new ConcurrentHashMap<>();
        RunnerFactory usual = (o, g) -> remembering(runner(project, o, g, Numerics.DEFAULT), made);
        ThreadJobs jobs = new ThreadJobs(2);
        MapResult every = grid.run(object, grip, usual, jobs, CaptureMap.Listener.NONE, Jobs.Progress.NONE);
        MapResult refined = new ShareMap(grid, Uncertain.seeded(1))
                .run(
                        object,
                        grip,
                        new ShareMap.Runners(
                                usual,
                                (o, g) -> runner(project, o, g, Numerics.DEFAULT.withStepScale(0.5)),
                                (o, g) -> runner(project, o, g, Numerics.DEFAULT.withViscosityScale(0.5))),
                        jobs,
                        Jobs.Progress.NONE);
        int other = 0;
        for (int row = 0; row < CELLS; row++) {
            for (int column = 0; column < CELLS; column++) {
                other += every.outcome(row, column) == refined.outcome(row, column) ? 0 : 1;
            }
        }
        System.out.println(objectName + " with " + gripName + ": " + other + " of " + CELLS * CELLS
                + " cells end otherwise; " + refined.closings() + " closings");
        assertThat(other).isLessThanOrEqualTo((int) (OTHER * CELLS * CELLS));
    }

    private static ClosingRunner runner(Project project, GraspObject object, Grip grip, Numerics numerics) {
        return new ClosingSimulator(
                project.hand(), grip, object, project.need().tableFriction(), numerics, Criteria.DEFAULT);
    }

    private static ClosingRunner remembering(ClosingRunner runner, Map<Conditions, ClosingSummary> made) {
        return new ClosingRunner() {
            @Override
            public ClosingSummary run(Conditions conditions) {
                ClosingSummary known = made.get(conditions);
                if (known == null) {
                    known = runner.run(conditions);
                    made.put(conditions, known);
                }
                return known;
            }

            @Override
            public ClosingDetail detail(Conditions conditions) {
                return runner.detail(conditions);
            }
        };
    }
}
