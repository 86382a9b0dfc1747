package gripwright.benchmarks;

import gripwright.closing.ClosingSimulator;
import gripwright.closing.Conditions;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** Mean time of one closing with its lift over 9 x 9 starts of +-60 mm, 14 x 6 pad points, one thread. */
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@State(Scope.Thread)
@Fork(1)
@Warmup(iterations = 4, time = 2)
@Measurement(iterations = 5, time = 2)
public class ClosingBenchmark {
    @Param({"SPHERE", "CYLINDER", "BOX"})
    public BenchCase object = BenchCase.SPHERE;

    private final List<Conditions> starts = BenchCase.starts(9);
    private ClosingSimulator simulator = BenchCase.SPHERE.simulator();

    @Setup
    public void make() {
        simulator = object.simulator();
    }

    @Benchmark
    @OperationsPerInvocation(81)
    public int closing() {
        int held = 0;
        for (Conditions start : starts) {
            held += simulator.run(start).held() ? 1 : 0;
        }
        return held;
    }
}
