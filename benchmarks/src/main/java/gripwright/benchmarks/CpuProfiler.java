package gripwright.benchmarks;

import com.sun.management.OperatingSystemMXBean;
import java.lang.management.ManagementFactory;
import java.util.List;
import org.openjdk.jmh.infra.BenchmarkParams;
import org.openjdk.jmh.infra.IterationParams;
import org.openjdk.jmh.profile.InternalProfiler;
import org.openjdk.jmh.results.AggregationPolicy;
import org.openjdk.jmh.results.IterationResult;
import org.openjdk.jmh.results.Result;
import org.openjdk.jmh.results.ScalarResult;

/** Processor time of the whole process per call: what a benchmark costs whatever else the machine does. */
public final class CpuProfiler implements InternalProfiler {
    static final String NAME = "cpu";

    private final OperatingSystemMXBean system = (OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();
    private long before;

    @Override
    public String getDescription() {
        return "processor time of the process per call";
    }

    @Override
    public void beforeIteration(BenchmarkParams benchmark, IterationParams iteration) {
        before = system.getProcessCpuTime();
    }

    @Override
    public List<? extends Result<?>> afterIteration(
            BenchmarkParams benchmark, IterationParams iteration, IterationResult result) {
        long spent = system.getProcessCpuTime() - before;
        double calls = result.getMetadata().getAllOps();
        return List.of(new ScalarResult(NAME, spent / calls, "ns/op", AggregationPolicy.AVG));
    }

    /** Nanoseconds in the unit of a benchmark's time, such as ms/op. */
    static double in(String unit, double nanoseconds) {
        return switch (unit) {
            case "ms/op" -> nanoseconds / 1e6;
            case "us/op" -> nanoseconds / 1e3;
            default -> throw new IllegalArgumentException("no benchmark is timed in '" + unit + "'");
        };
    }
}
