package gripwright.closing;

import gripwright.benchmarks.BenchCase;
import gripwright.benchmarks.DemoCase;
import gripwright.math.DenseSolver;
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

/**
 * The parts of one Newton iteration, at the state in which a held run ended. The same parts take up to 1.4 times as
 * long inside a closing, where states and branches change.
 */
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@State(Scope.Thread)
@Fork(1)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 3, time = 1)
public class StepBenchmark {
    /** The bench hand on its cylinder (12 unknowns); the demo's hand on its spray can (24). */
    @Param({"BENCH", "DEMO"})
    public String hand = "BENCH";

    private StepSystem system = BenchCase.CYLINDER.simulator().system;
    private DenseSolver solver = new DenseSolver(system.scale);
    private double[] direction = new double[system.size];

    @Setup
    public void close() {
        ClosingSimulator simulator = hand.equals("DEMO") ? demo() : BenchCase.CYLINDER.simulator();
        if (!simulator.run(Conditions.NOMINAL).held()) {
            throw new IllegalStateException("the run that should end in a hold did not");
        }
        system = simulator.system;
        solver = new DenseSolver(system.scale);
        direction = new double[system.size];
        system.evaluate(true);
    }

    private static ClosingSimulator demo() {
        Project demo = DemoCase.project();
        return (ClosingSimulator) DemoCase.closings(demo)
                .create(demo.need().object("spray can"), demo.hand().grip("wrap"));
    }

    @Benchmark
    public double evaluation() {
        return system.evaluate(true);
    }

    @Benchmark
    public double gradient() {
        return system.evaluate(false);
    }

    @Benchmark
    public double energy() {
        return system.energy();
    }

    @Benchmark
    public boolean elimination() {
        return solver.luSolve(system.hessian, system.skew, system.gradient, direction);
    }

    @Benchmark
    public boolean cholesky() {
        return solver.choleskySolve(system.hessian, 1, system.gradient, direction);
    }
}
