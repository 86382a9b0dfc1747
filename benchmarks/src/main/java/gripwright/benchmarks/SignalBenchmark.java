package gripwright.benchmarks;

import gripwright.files.ForceTable;
import gripwright.files.PadLog;
import gripwright.pad.Readings;
import gripwright.signal.Calibration;
import gripwright.signal.Calibrator;
import gripwright.signal.Decoder;
import gripwright.signal.Decoding;
import gripwright.signal.InventedLog;
import gripwright.signal.Rates;
import gripwright.signal.SensorLog;
import java.io.IOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;
import org.openjdk.jmh.annotations.Warmup;

/** 64 taxels over about ten minutes at 200 Hz: calibrating from the file, and decoding it to a table. */
@BenchmarkMode(Mode.SingleShotTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@State(Scope.Benchmark)
@Fork(
        value = 1,
        jvmArgsAppend = {"-Xmx900m", "-XX:+UseSerialGC"})
@Warmup(iterations = 0)
@Measurement(iterations = 2)
public class SignalBenchmark {
    private static final int TAXELS = 64;
    private static final double RATE = 200;

    private Path file = Path.of("");
    private Readings names = names();
    private Decoding decoding = new Decoding("Pa", true, List.of(), Map.of());

    private static Readings names() {
        List<String> columns = new ArrayList<>();
        for (int k = 0; k < TAXELS; k++) {
            columns.add("p0" + k);
        }
        return new Readings(
                "t",
                1,
                Optional.of("seq"),
                Map.of("strip", columns),
                Readings.Scale.PA,
                Map.of("strip", "temp"),
                Optional.of("ambient"),
                Optional.of("F"),
                Optional.empty(),
                Optional.of("pressed"));
    }

    @Setup
    public void make() throws IOException {
        file = Files.createTempFile("gripwright", ".csv");
        InventedLog.Plan plan = new InventedLog.Plan(
                RATE, 0.0372, 60e-6, 5, 0.001, 0.002, 0.002, 1, 6.5, 120, true, true, false, 0, 1.4);
        try (Writer out = Files.newBufferedWriter(file, StandardCharsets.UTF_8)) {
            InventedLog.alike(plan, TAXELS, 1).write(out, "");
        }
        decoding = Decoding.of(calibrate());
    }

    @TearDown
    public void remove() throws IOException {
        Files.deleteIfExists(file);
    }

    @Benchmark
    public Calibration calibrate() throws IOException {
        SensorLog log;
        try (PadLog source = PadLog.toCalibrate(file, names, PadLog.Against.column("F"))) {
            log = source.all();
        }
        return Calibrator.of(log, new Rates(0.05, 0.05, 100));
    }

    /** Seconds of the log decoded; divide by the time taken for how many times faster than it came. */
    @Benchmark
    public double decode() throws IOException {
        double[] along = new double[TAXELS];
        Arrays.setAll(along, i -> 0.004 * i);
        List<Decoder.PadPlace> pads = List.of(new Decoder.PadPlace("strip", 0, along, 0.004));
        Decoder decoder = new Decoder(decoding, pads, 0.9, 100);
        List<Decoder.Event> events = new ArrayList<>();
        double[] reading = new double[TAXELS];
        double[] temperature = new double[TAXELS];
        double time = 0;
        try (PadLog log = PadLog.toDecode(file, names);
                ForceTable table = new ForceTable(Writer.nullWriter(), decoding, pads)) {
            while (log.next()) {
                for (int k = 0; k < TAXELS; k++) {
                    reading[k] = log.reading(k);
                    temperature[k] = log.temperature(k);
                }
                time = log.time();
                if (decoder.step(time, reading, temperature, log.ambient(), events)) {
                    table.row(time, decoder);
                }
                events.clear();
            }
        }
        return time;
    }
}
