package gripwright.fuzz;

import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.time.Duration;
import org.junit.jupiter.api.function.Executable;

/**
 * No input may keep a reader busy for more than 5 s, counted in processor time so that a crowded machine is no finding.
 * What hangs without computing is ended after two minutes. The first call of a process also loads and instruments all
 * classes; it may take longer.
 */
public final class Limit {
    private static final ThreadMXBean THREADS = ManagementFactory.getThreadMXBean();
    private static final double MOST = 5;
    private static final Duration HANGS = Duration.ofSeconds(120);
    private static boolean warm;

    private Limit() {}

    public static synchronized void hold(Executable work) {
        double[] spent = new double[1];
        assertTimeoutPreemptively(HANGS, () -> {
            long before = THREADS.getCurrentThreadCpuTime();
            work.execute();
            spent[0] = (THREADS.getCurrentThreadCpuTime() - before) / 1e9;
        });
        if (warm && spent[0] > MOST) {
            throw new AssertionError("took " + spent[0] + " s of processor time; expected at most " + MOST + " s");
        }
        warm = true;
    }
}
