package gripwright.crosscheck;

import static org.assertj.core.api.Assertions.assertThat;

import gripwright.closing.EngineClosing;
import gripwright.truth.Reference;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.function.Supplier;
import org.junit.jupiter.api.Test;

/**
 * Who is faster: this program or ode4j's quick solver, on the closings with friction of engine_case.json, in the same
 * run. This program runs at its default step; the engine at the largest step at which its answer still agreed with its
 * own fine one (largest_ok_step_ms of the file), with a stated number of sweeps. Run by {@code ./check race}, which
 * writes docs/engines.md; not part of {@code ./check}, because a time is not a fact about the program alone.
 *
 * <p>Times are of the thread's processor, medians of {@value #ROUNDS} closings taken in turn after warming up. Each
 * closing builds its scene anew on both sides.
 */
class EngineRace {
    private static final int ROUNDS = 9;
    private static final int WARM = 8;
    /** At least this many times faster, by the geometric mean over the cases. */
    private static final double WANTED = 15;
    /** The engine counts as accurate if no joint is farther from its own fine run [deg]. */
    private static final double ACCURATE = 0.5;

    private static final int[] SWEEPS = {20, 40, 70, 100};
    private static final Path PAGE = Path.of("..", "docs", "engines.md");

    private record Row(
            String name, int sweeps, double step, double engine, double own, double engineError, double ownError) {
        double ratio() {
            return engine / own;
        }
    }

    @Test
    void ownClosingIsFasterThanTheEngine() throws IOException {
        List<String> names = EngineClosing.names(true).toList();
        List<Row> hundred = names.stream().map(name -> race(name, 100)).toList();
        List<Row> fewest =
                names.stream().map(name -> race(name, fewestSweeps(name))).toList();
        List<Row> twenty = names.stream().map(name -> race(name, 20)).toList();
        String page = String.join(
                "\n",
                "# Beside a general rigid-body engine",
                "",
                "Written by `./check race` on " + machine() + ".",
                "",
                "ode4j 0.5.3, quick solver, at the largest step with which it agrees with its own fine run (by the file",
                "`engine_case.json`, found there with 100 sweeps of the solver). Processor time of one closing and",
                "hanging, median of " + ROUNDS + ", both in the same run. *off*: the joint farthest from the same",
                "program's fine run (ode4j: 0.25 ms and 100 sweeps; here: half the step). Wanted: at least "
                        + (int) WANTED,
                "times faster by the geometric mean, at comparable accuracy.",
                "",
                table("100 sweeps, with which the file's steps were found", hundred),
                table("Fewest sweeps of 20, 40, 70, 100 within " + ACCURATE + " degrees, case by case", fewest),
                table("20 sweeps (the engine's default): less accurate than ours, for completeness", twenty),
                EXPLANATION);
        System.out.println(page);
        Files.writeString(PAGE, page);
        assertThat(mean(hundred)).as("times faster, 100 sweeps").isGreaterThan(WANTED);
        assertThat(mean(fewest)).as("times faster, fewest sweeps").isGreaterThan(WANTED);
    }

    private static final String EXPLANATION = """
            ## Why the two differ

            The end states are compared by the tests (rows *ode4j beside us* of `truth.md`). Without friction they agree
            to a few hundredths of a degree. With friction they differ by what they model:

            | | ode4j | here |
            |---|---|---|
            | inertia | masses, time steps; a snap overshoots | none; every step is a balance of forces with a little damping |
            | friction | a four-sided pyramid per contact, regularised: held objects creep | a cone with an anchor and the pad's shear spring: no creep |
            | contact points | one or two from the collision search, new in every step | beads 2 mm apart along each link that remember their anchor |
            | contact force | damper beside the spring, by a relaxation that stops after its sweeps | spring only, solved to 1e-6 N |
            | penetration | force and speed of the last step | force of the depth alone |

            The heavy object is let fall by both: there the engine needs its finest step to be sure, and a run that ends
            early costs this program little. Means without that case stand beside the others.
            """;

    private static String machine() {
        return "Java " + System.getProperty("java.version") + ", "
                + Runtime.getRuntime().availableProcessors() + " processors (" + System.getProperty("os.arch") + ")";
    }

    private static double mean(List<Row> rows) {
        return Math.exp(
                rows.stream().mapToDouble(r -> Math.log(r.ratio())).average().orElseThrow());
    }

    private static String table(String title, List<Row> rows) {
        StringBuilder text = new StringBuilder("## " + title + "\n\n");
        text.append(
                "| case | step [ms] | sweeps | ode4j [ms] | here [ms] | ratio | ode4j off [deg] | here off [deg] |\n");
        text.append("|---|---:|---:|---:|---:|---:|---:|---:|\n");
        for (Row r : rows) {
            text.append(
                    "| " + r.name + " | " + number(r.step * 1e3) + " | " + r.sweeps + " | " + number(r.engine) + " | "
                            + number(r.own) + " | " + number(r.ratio()) + " | " + number(r.engineError) + " | "
                            + number(r.ownError) + " |\n");
        }
        List<Row> held = rows.stream().filter(r -> !Double.isNaN(r.ownError)).toList();
        return text.append("\nGeometric mean of the ratios: **" + number(mean(rows))
                        + "** (without the one that falls: " + number(mean(held)) + ").\n")
                .toString();
    }

    private static int fewestSweeps(String name) {
        EngineClosing.End fine = fine(name);
        for (int sweeps : SWEEPS) {
            EngineClosing.End end = new OdeHand(name, largestStep(name), OdeHand.Solver.QUICK, sweeps).close();
            boolean same = end.held() == fine.held();
            if (same && !(apart(end, fine) > ACCURATE)) {
                return sweeps;
            }
        }
        return SWEEPS[SWEEPS.length - 1];
    }

    private static EngineClosing.End fine(String name) {
        return new OdeHand(name, 2.5e-4, OdeHand.Solver.QUICK, 100).close();
    }

    private static Row race(String name, int sweeps) {
        double step = largestStep(name);
        Supplier<EngineClosing.End> engine = () -> new OdeHand(name, step, OdeHand.Solver.QUICK, sweeps).close();
        Supplier<EngineClosing.End> own = () -> EngineClosing.beads(name);
        for (int i = 0; i < WARM; i++) {
            time(engine);
            time(own);
            time(own);
            time(own);
        }
        double[] engineTimes = new double[ROUNDS];
        double[] ownTimes = new double[ROUNDS];
        for (int i = 0; i < ROUNDS; i++) {
            engineTimes[i] = time(engine);
            ownTimes[i] = time(own);
        }
        return new Row(
                name,
                sweeps,
                step,
                median(engineTimes),
                median(ownTimes),
                apart(engine.get(), fine(name)),
                apart(own.get(), EngineClosing.beads(name, 0.5)));
    }

    private static double largestStep(String name) {
        return Reference.elements(EngineClosing.DATA.get("results"))
                        .filter(r -> r.get("case").asString().equals(name)
                                && r.get("engine").asString().equals("ode4j_quick"))
                        .mapToDouble(r ->
                                Double.parseDouble(r.get("largest_ok_step_ms").asString()))
                        .findFirst()
                        .orElseThrow()
                / 1e3;
    }

    /** Largest difference of a joint angle [deg]; NaN unless both hold. */
    private static double apart(EngineClosing.End a, EngineClosing.End b) {
        double worst = 0;
        for (int j = 0; j < a.angles().length; j++) {
            worst = Math.max(worst, Math.abs(a.angles()[j] - b.angles()[j]));
        }
        return a.held() && b.held() ? Math.toDegrees(worst) : Double.NaN;
    }

    /** Processor time of this thread [ms]. */
    private static double time(Supplier<EngineClosing.End> closing) {
        long before = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
        EngineClosing.End end = closing.get();
        long after = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
        assertThat(end.solved()).isTrue();
        return (after - before) / 1e6;
    }

    private static double median(double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        return sorted[sorted.length / 2];
    }

    private static String number(double value) {
        return Double.isNaN(value) ? "falls" : String.format(Locale.ROOT, "%.2f", value);
    }
}
