package gripwright.benchmarks;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import org.openjdk.jmh.profile.GCProfiler;
import org.openjdk.jmh.results.Result;
import org.openjdk.jmh.results.RunResult;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.Options;
import org.openjdk.jmh.runner.options.OptionsBuilder;

/**
 * Runs benchmarks and appends one line each to the history. Arguments: file, commit, pattern of benchmark names.
 *
 * <p>The load of the machine before the start stands in each line: wall-clock figures taken beside other work are upper
 * bounds. Processor time per call stands beside them; that of the compiler is in it.
 */
public final class History {
    static final String HEAD = "date,commit,jdk,machine,load,benchmark,parameters,value,spread,unit,cpu,bytes_per_call";

    private History() {}

    public static void main(String[] args) throws RunnerException, IOException {
        if (args.length != 3) {
            throw new IllegalArgumentException("expected three words: history file, commit, pattern of benchmarks");
        }
        String load = load();
        Options options = new OptionsBuilder()
                .include(args[2])
                .addProfiler(GCProfiler.class)
                .addProfiler(CpuProfiler.class)
                .jvmArgs("-Xmx256m", "-XX:+UseSerialGC")
                .build();
        Collection<RunResult> results = new Runner(options).run();
        append(Path.of(args[0]), lines(results, args[1], load));
    }

    private static List<String> lines(Collection<RunResult> results, String commit, String load) throws IOException {
        List<String> out = new ArrayList<>();
        for (RunResult result : results) {
            Result<?> time = result.getPrimaryResult();
            Result<?> bytes = result.getSecondaryResults().get("gc.alloc.rate.norm");
            Result<?> cpu = result.getSecondaryResults().get(CpuProfiler.NAME);
            String name = result.getParams().getBenchmark();
            List<String> parameters = new ArrayList<>();
            for (String key : result.getParams().getParamsKeys()) {
                parameters.add(key + "=" + result.getParams().getParam(key));
            }
            out.add(String.join(
                    ",",
                    LocalDate.now(java.time.ZoneOffset.UTC).toString(),
                    commit,
                    Runtime.version().toString(),
                    machine(),
                    load,
                    name.substring(name.lastIndexOf('.', name.lastIndexOf('.') - 1) + 1),
                    String.join(" ", parameters),
                    digits(time.getScore()),
                    digits(time.getScoreError()),
                    time.getScoreUnit(),
                    cpu == null ? "" : digits(CpuProfiler.in(time.getScoreUnit(), cpu.getScore())),
                    bytes == null ? "" : String.format(Locale.ROOT, "%.0f", bytes.getScore())));
        }
        return out;
    }

    private static void append(Path file, List<String> lines) throws IOException {
        List<String> all = new ArrayList<>(lines);
        if (!Files.exists(file)) {
            all.add(0, HEAD);
        }
        Files.write(file, all, StandardCharsets.UTF_8, StandardOpenOption.CREATE, StandardOpenOption.APPEND);
    }

    private static String digits(double value) {
        return Double.isNaN(value) ? "" : String.format(Locale.ROOT, "%.4g", value);
    }

    /** Model of the processor and number of them; only what Linux says of itself. */
    private static String machine() throws IOException {
        Path file = Path.of("/proc/cpuinfo");
        String model = System.getProperty("os.arch", "unknown");
        if (Files.isReadable(file)) {
            model = Files.readAllLines(file).stream()
                    .filter(line -> line.startsWith("model name"))
                    .map(line -> line.substring(line.indexOf(':') + 1).strip())
                    .findFirst()
                    .orElse(model);
        }
        return model.replace(',', ' ') + " x " + Runtime.getRuntime().availableProcessors();
    }

    private static String load() {
        double load = java.lang.management.ManagementFactory.getOperatingSystemMXBean()
                .getSystemLoadAverage();
        return load < 0 ? "" : digits(load);
    }
}
