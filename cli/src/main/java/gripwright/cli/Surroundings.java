package gripwright.cli;

import gripwright.closing.ClosingSimulator;
import gripwright.closing.Numerics;
import gripwright.closing.Policy;
import gripwright.closing.Sensing;
import gripwright.model.Project;
import gripwright.study.RunnerFactory;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.function.LongSupplier;
import java.util.function.Supplier;

/**
 * Everything outside the program that commands touch; tests hand in their own.
 *
 * @param folder that relative paths start from
 * @param out results
 * @param err progress and what went wrong
 * @param terminal true if {@code err} is a terminal that can redraw a line
 * @param clock [ns]
 * @param today for the date on a report
 */
record Surroundings(
        Path folder,
        PrintWriter out,
        PrintWriter err,
        boolean terminal,
        LongSupplier clock,
        Supplier<LocalDate> today,
        Interruption interruption,
        Closings closings) {
    /** Makes what closes a project's hand. */
    interface Closings {
        RunnerFactory of(Project project, Numerics numerics);

        /** With chips under its pads. */
        default RunnerFactory of(Project project, Numerics numerics, Policy policy, Sensing sensing) {
            throw new UnsupportedOperationException(getClass().getName() + " has no chips");
        }
    }

    /** The real thing. */
    static final Closings SIMULATION = new Closings() {
        @Override
        public RunnerFactory of(Project project, Numerics numerics) {
            return (object, grip) -> new ClosingSimulator(
                    project.hand(), grip, object, project.need().tableFriction(), numerics, OpenProject.CRITERIA);
        }

        @Override
        public RunnerFactory of(Project project, Numerics numerics, Policy policy, Sensing sensing) {
            return (object, grip) -> new ClosingSimulator(
                    project.hand(),
                    grip,
                    object,
                    project.need().tableFriction(),
                    numerics,
                    OpenProject.CRITERIA,
                    policy,
                    sensing);
        }
    };

    static Surroundings real() {
        String kind = System.getenv("TERM");
        return new Surroundings(
                Path.of(""),
                new PrintWriter(System.out, false, StandardCharsets.UTF_8),
                new PrintWriter(System.err, true, StandardCharsets.UTF_8),
                System.console() != null && kind != null && !kind.equals("dumb"),
                System::nanoTime,
                LocalDate::now,
                new Interruption(),
                SIMULATION);
    }

    Path path(Path given) {
        return folder.resolve(given);
    }

    ProgressLine progress(String what) {
        return new ProgressLine(what, err, terminal, clock, interruption);
    }
}
