package gripwright.benchmarks;

import gripwright.closing.ClosingSimulator;
import gripwright.closing.Conditions;
import gripwright.closing.Criteria;
import gripwright.closing.Numerics;
import gripwright.closing.Policies;
import gripwright.closing.Sensing;
import gripwright.model.Project;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.DoubleStream;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** What reading 30 chips through a closing costs: the demo's mug with wrap from 9 starts within 12 mm, one thread. */
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@State(Scope.Thread)
@Fork(1)
@Warmup(iterations = 4, time = 2)
@Measurement(iterations = 5, time = 2)
public class SensedBenchmark {
    private final List<Conditions> starts = DoubleStream.of(-0.012, 0, 0.012)
            .boxed()
            .flatMap(x -> DoubleStream.of(-0.012, 0, 0.012).mapToObj(y -> Conditions.at(x, y, 0)))
            .toList();
    private ClosingSimulator plain = BenchCase.SPHERE.simulator();
    private ClosingSimulator sensed = plain;

    @Setup
    public void make() {
        Project demo = DemoCase.project();
        plain = simulator(demo);
        sensed = simulator(demo);
    }

    private static ClosingSimulator simulator(Project demo) {
        return new ClosingSimulator(
                demo.hand(),
                demo.hand().grip("wrap"),
                demo.need().object("mug"),
                demo.need().tableFriction(),
                Numerics.DEFAULT,
                Criteria.DEFAULT,
                Policies.BLIND,
                Sensing.of(DemoCase.chips(), 1));
    }

    @Benchmark
    @OperationsPerInvocation(9)
    public int closing() {
        int held = 0;
        for (Conditions start : starts) {
            held += plain.detail(start).summary().held() ? 1 : 0;
        }
        return held;
    }

    @Benchmark
    @OperationsPerInvocation(9)
    public int closingWithReadings() {
        int held = 0;
        for (Conditions start : starts) {
            held += sensed.sensed(start).closing().summary().held() ? 1 : 0;
        }
        return held;
    }
}
