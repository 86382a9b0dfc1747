package gripwright.benchmarks;

import gripwright.closing.ClosingSimulator;
import gripwright.closing.Conditions;
import gripwright.closing.HoldDetail;
import gripwright.closing.HoldPlan;
import gripwright.closing.Outcome;
import gripwright.model.Project;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** Closing and all tests of the hold at the nominal place: pulls, turns, gravity all round, stiffness, letting go. */
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@State(Scope.Thread)
@Fork(1)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 3, time = 2)
public class HoldBenchmark {
    /** The bench hand on its cylinder; the demo's hand on its spray can from the side. */
    @Param({"BENCH", "DEMO"})
    public String hand = "BENCH";

    private ClosingSimulator simulator = BenchCase.CYLINDER.simulator();

    @Setup
    public void make() {
        if (hand.equals("DEMO")) {
            Project demo = DemoCase.project();
            simulator = (ClosingSimulator) DemoCase.closings(demo)
                    .create(demo.need().object("spray can"), demo.hand().grip("wrap"));
        } else {
            simulator = BenchCase.CYLINDER.simulator();
        }
        if (simulator.run(Conditions.NOMINAL).outcome() != Outcome.HELD) {
            throw new IllegalStateException("the run that should end in a hold did not");
        }
    }

    @Benchmark
    public HoldDetail hold() {
        return simulator.hold(Conditions.NOMINAL, HoldPlan.DEFAULT);
    }
}
