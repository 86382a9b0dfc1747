package gripwright.benchmarks;

import gripwright.model.GraspObject;
import gripwright.model.Project;
import gripwright.study.CaptureMap;
import gripwright.study.Jobs;
import gripwright.study.MapResult;
import gripwright.study.ThreadJobs;
import gripwright.study.Trials;
import gripwright.study.TrialsResult;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** Whole studies by wall clock, on one thread and on two. */
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@State(Scope.Benchmark)
@Fork(1)
@Warmup(iterations = 2, time = 3)
@Measurement(iterations = 3, time = 3)
public class StudyBenchmark {
    @Param({"1", "2"})
    public int threads = 1;

    private final Project demo = DemoCase.project();

    /** 441 closings of the bench hand on the sphere. */
    @Benchmark
    public MapResult benchMap() {
        BenchCase c = BenchCase.SPHERE;
        return new CaptureMap(BenchCase.SPAN, 21, 0.9)
                .run(
                        c.object(),
                        c.grip(),
                        (object, grip) -> c.simulator(),
                        new ThreadJobs(threads),
                        CaptureMap.Listener.NONE,
                        Jobs.Progress.NONE);
    }

    /** 441 closings of the demo's hand on its spray can from the side. */
    @Benchmark
    public MapResult demoMap() {
        GraspObject can = demo.need().object("spray can");
        return new CaptureMap(0.045, 21, 0.9)
                .run(
                        can,
                        demo.hand().grip("wrap"),
                        DemoCase.closings(demo),
                        new ThreadJobs(threads),
                        CaptureMap.Listener.NONE,
                        Jobs.Progress.NONE);
    }

    /** Every object of the demo with each of its grips, 5 runs a set. */
    @Benchmark
    public TrialsResult demoTrials() {
        return Trials.run(demo, DemoCase.closings(demo), 5, 1, new ThreadJobs(threads), Jobs.Progress.NONE);
    }
}
