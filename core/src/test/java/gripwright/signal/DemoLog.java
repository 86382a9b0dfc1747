package gripwright.signal;

import java.io.IOException;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.zip.GZIPOutputStream;

/** Makes the demo's calibration log, which is invented: {@code main} writes it to the file named. */
public final class DemoLog {
    private static final String HEAD = """
            # gripwright log 1
            # project: demo
            # hand: bench helper
            # pads: left strip
            # invented: all of it, by a program; no pad was measured
            # started: 2026-11-25T10:00:00.000Z
            # clock: arrival in seconds since the start (monotonic), wall is UTC milliseconds
            # units: arrival s, wall ms, t s, %s, temp degC, F N, ambient Pa
            """;

    private DemoLog() {}

    /** Eight taxels under a plate; the sixth has trapped air, the third was squeezed by shrinking rubber. */
    public static InventedLog make() {
        InventedLog.Plan plan = new InventedLog.Plan(
                40, 0.0372, 60e-6, 5, 0.001, 0.004, 0.004, 10, 6.5, 1500, true, true, true, 0.08, 0.35);
        List<InventedLog.Truth> taxels = new ArrayList<>();
        for (int k = 0; k < 8; k++) {
            double gain = 1700 + 40 * ((k * 5) % 7 - 3);
            double zero = 101600 + 90 * ((k * 3) % 5) + (k == 2 ? 2600 : 0);
            InventedLog.Truth t = new InventedLog.Truth(
                    zero, gain, -18, 180 + 6 * k, 0.97, 0.045, 0.025, 7, 150, 4, Double.POSITIVE_INFINITY, false);
            // A bubble takes most of the signal, and of what the chip follows of heat and weather.
            InventedLog.Truth bubble = new InventedLog.Truth(
                    zero, gain / 12, -1.5, 40, 0.08, 0.045, 0.025, 7, 150, 4, Double.POSITIVE_INFINITY, false);
            taxels.add(k == 5 ? bubble : t);
        }
        return new InventedLog(plan, taxels, 2026);
    }

    public static void main(String[] args) throws IOException {
        InventedLog log = make();
        List<String> units = new ArrayList<>();
        log.log.channels().forEach(c -> units.add(c.column() + " Pa"));
        try (Writer out = new OutputStreamWriter(
                new GZIPOutputStream(Files.newOutputStream(Path.of(args[0]))) {
                    {
                        def.setLevel(9);
                    }
                },
                StandardCharsets.UTF_8)) {
            log.write(out, HEAD.formatted(String.join(", ", units)));
        }
    }
}
