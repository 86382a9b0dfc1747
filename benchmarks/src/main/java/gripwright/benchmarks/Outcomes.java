package gripwright.benchmarks;

import gripwright.closing.ClosingRunner;
import gripwright.closing.ClosingSummary;
import gripwright.closing.Conditions;
import gripwright.closing.Outcome;
import gripwright.model.GraspObject;
import gripwright.model.Project;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Whether a change of the solver left the answers alone: outcomes of the bench cases on 21 x 21 starts and of all
 * objects and grips of the demo on 13 x 13, written to a file or compared with one.
 *
 * <p>Arguments: {@code write FILE [PART]} or {@code compare BEFORE AFTER}; PART is {@code bench} or {@code demo}. The
 * wanted limit is 1 % of cells that change between held and not held; that much moves already when only the rounding
 * changes, because near a border a hair decides.
 */
public final class Outcomes {
    /** Processor time, not wall clock: other work on the machine disturbs it less. */
    private static final ThreadMXBean THREADS = ManagementFactory.getThreadMXBean();

    private Outcomes() {}

    public static void main(String[] args) throws IOException {
        if (args.length >= 2 && args[0].equals("write")) {
            String part = args.length > 2 ? args[2] : "";
            List<String> lines = new ArrayList<>();
            if (!part.equals("demo")) {
                bench(lines);
            }
            if (!part.equals("bench")) {
                demo(lines);
            }
            Files.write(Path.of(args[1]), lines, StandardCharsets.UTF_8);
        } else if (args.length == 3 && args[0].equals("compare")) {
            System.out.print(compare(Files.readAllLines(Path.of(args[1])), Files.readAllLines(Path.of(args[2]))));
        } else {
            throw new IllegalArgumentException("expected: write FILE [bench|demo], or: compare BEFORE AFTER");
        }
    }

    private static void bench(List<String> lines) {
        for (BenchCase c : BenchCase.values()) {
            cells("bench " + c, c.simulator(), BenchCase.starts(21), lines);
        }
    }

    private static void demo(List<String> lines) {
        Project demo = DemoCase.project();
        for (GraspObject object : demo.need().objects()) {
            for (String grip : object.grips()) {
                ClosingRunner runner =
                        DemoCase.closings(demo).create(object, demo.hand().grip(grip));
                cells(object.name() + " / " + grip, runner, BenchCase.starts(13), lines);
            }
        }
    }

    private static void cells(String name, ClosingRunner runner, List<Conditions> starts, List<String> lines) {
        long spent = 0;
        long most = 0;
        int undecided = 0;
        for (Conditions c : starts) { // warm-up, so that the times below compare
            if (starts.indexOf(c) % 3 == 0) {
                runner.run(c);
            }
        }
        for (Conditions c : starts) {
            long before = THREADS.getCurrentThreadCpuTime();
            ClosingSummary run = runner.run(c);
            long took = THREADS.getCurrentThreadCpuTime() - before;
            spent += took;
            most = Math.max(most, took);
            undecided += run.outcome() == Outcome.UNDECIDED ? 1 : 0;
            lines.add(String.join(
                    "\t",
                    name,
                    c.x() + "",
                    c.y() + "",
                    run.outcome().name(),
                    run.travelX() + "",
                    run.travelY() + "",
                    run.objectResidual() + "",
                    run.jointResidual() + "",
                    run.steps() + "",
                    run.iterations() + "",
                    took / 1000 + ""));
        }
        System.out.println(name + ": mean " + spent / starts.size() / 1000 + " us, most " + most / 1000 + " us, "
                + undecided + " undecided");
    }

    /** One line per map: cells, other outcome, other held or not, moved by more than 0.5 mm, iterations, time. */
    static String compare(List<String> before, List<String> after) {
        Map<String, String[]> known = new HashMap<>();
        for (String line : before) {
            String[] cell = line.split("\t", -1);
            known.put(key(cell), cell);
        }
        Map<String, double[]> sums = new LinkedHashMap<>();
        for (String line : after) {
            String[] now = line.split("\t", -1);
            String[] was = known.remove(key(now));
            if (was == null) {
                throw new IllegalArgumentException("only in the second file: " + key(now));
            }
            for (String map : List.of(now[0], "all")) {
                add(sums.computeIfAbsent(map, m -> new double[8]), was, now);
            }
        }
        if (!known.isEmpty()) {
            throw new IllegalArgumentException("only in the first file: " + known.keySet());
        }
        StringBuilder out = new StringBuilder();
        for (Map.Entry<String, double[]> e : sums.entrySet()) {
            double[] s = e.getValue();
            out.append(e.getKey())
                    .append(": cells " + (int) s[0] + ", outcome " + (int) s[1] + ", held " + (int) s[2] + ", moved "
                            + (int) s[3] + ", iterations " + ratio(s[5], s[4]) + ", time " + ratio(s[7], s[6]) + "\n");
        }
        return out.toString();
    }

    private static String key(String[] cell) {
        return cell[0] + " at " + cell[1] + ", " + cell[2];
    }

    private static void add(double[] sums, String[] was, String[] now) {
        sums[0]++;
        sums[1] += was[3].equals(now[3]) ? 0 : 1;
        sums[2] += was[3].equals("HELD") == now[3].equals("HELD") ? 0 : 1;
        double dx = Double.parseDouble(was[4]) - Double.parseDouble(now[4]);
        double dy = Double.parseDouble(was[5]) - Double.parseDouble(now[5]);
        sums[3] += Math.hypot(dx, dy) > 0.5e-3 ? 1 : 0;
        sums[4] += Double.parseDouble(was[9]);
        sums[5] += Double.parseDouble(now[9]);
        sums[6] += Double.parseDouble(was[10]);
        sums[7] += Double.parseDouble(now[10]);
    }

    private static String ratio(double now, double was) {
        return "x" + Math.round(1000 * now / was) / 1000.0;
    }
}
