package gripwright.benchmarks;

import gripwright.pad.PadAnswer;
import gripwright.pad.PadDesign;
import gripwright.pad.PadGeometry;
import gripwright.pad.PadModel;
import gripwright.pad.PadResponse;
import gripwright.pad.PadSetup;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** A pad over a barometer chip of the demo: one finite element solve, and all that the command `pad` says of a strip. */
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@State(Scope.Thread)
@Fork(1)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 3, time = 1)
public class PadBenchmark {
    private final PadSetup setup = DemoCase.pads();
    private final PadDesign pad = setup.pads().get(0);

    @Benchmark
    public PadResponse solve() {
        return PadModel.filled(PadGeometry.of(pad.chip(), pad.overBoard()), pad.modulus(), pad.bulk());
    }

    @Benchmark
    public PadAnswer strip() {
        return PadAnswer.of(pad, setup);
    }
}
