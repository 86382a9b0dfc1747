package gripwright.crosscheck;

import gripwright.closing.BenchHands;
import gripwright.closing.ClosingSimulator;
import gripwright.closing.ClosingSummary;
import gripwright.closing.Conditions;
import gripwright.closing.Convergence;
import gripwright.closing.Convergence.Point;
import gripwright.closing.Criteria;
import gripwright.closing.Numerics;
import gripwright.crosscheck.LogPlot.Line;
import gripwright.crosscheck.LogPlot.Panel;
import gripwright.model.Rubber;
import gripwright.model.Spread;
import gripwright.shape.Box;
import gripwright.shape.Cylinder;
import gripwright.shape.Shape;
import gripwright.shape.Sphere;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** Measures what the choices of the calculation are worth and writes docs/accuracy.md; run by ./check accuracy. */
class AccuracyPage {
    private static final Path PAGE = Path.of("..", "docs", "accuracy.md");
    private static final Path PICTURE = Path.of("..", "docs", "accuracy.svg");
    private static final int HALF = 4;
    private static final double PITCH = 0.015;

    private record Start(String name, Shape shape, double height, double mass) {}

    private record Change(String name, Numerics numerics, Rubber rubber) {
        Change(String name, Numerics numerics) {
            this(name, numerics, BenchHands.SOFT);
        }
    }

    private static final List<Start> STARTS = List.of(
            new Start("sphere 70", new Sphere(0.035), 0.07, 0.18),
            new Start("cylinder 60 x 100", new Cylinder(0.03, 0.05, 0.003), 0.10, 0.3),
            new Start("box 60", new Box(0.03, 0.03, 0.03, 0.003), 0.06, 0.2));

    private static final Change BASE = new Change("as delivered", Numerics.DEFAULT);

    /** Half the shear modulus at the same normal stiffness: modulus halved, foundation factor doubled. */
    private static final Rubber HALF_SHEAR = new Rubber(
            "soft", BenchHands.SOFT.modulus() / 2, "half the shear stiffness", 2 * BenchHands.SOFT.foundationFactor());

    private static final List<Change> CHANGES = List.of(
            new Change("step / 2", Numerics.DEFAULT.withStepScale(0.5)),
            new Change("step / 4", Numerics.DEFAULT.withStepScale(0.25)),
            new Change("step x 2", Numerics.DEFAULT.withStepScale(2)),
            new Change("pad points 28 x 12", Numerics.DEFAULT.withPadPoints(28, 12)),
            new Change("pad points 7 x 3", Numerics.DEFAULT.withPadPoints(7, 3)),
            new Change("viscosity / 2", Numerics.DEFAULT.withViscosityScale(0.5)),
            new Change("pad shear stiffness / 2 (physical)", Numerics.DEFAULT, HALF_SHEAR));

    @Test
    void measureAndWrite() throws IOException {
        List<Line> pitch = List.of(new Line("", Convergence.pitch(0.01, 0.005, 0.0025, 0.00125, 0.000625)));
        double[] scales = {4, 2, 1, 0.5, 0.25, 0.125};
        List<Line> step = List.of(
                new Line("sphere", Convergence.step("sphere70-side-equal", 1.0 / 64, scales)),
                new Line("cylinder", Convergence.step("cylinder60x120-side-equal", 1.0 / 64, scales)),
                new Line("box", Convergence.step("box60x60x100-above-equal", 1.0 / 64, scales)));
        List<Line> tolerance =
                List.of(new Line("", Convergence.tolerance(1e-10, 1e-1, 1e-2, 1e-3, 1e-4, 1e-5, 1e-6, 1e-7)));
        List<Panel> panels = List.of(
                new Panel("pad pitch", "pitch [m]", "error of a link's force [-]", pitch),
                new Panel("step", "motion allowed, 1 = as delivered", "change of a joint [rad]", step),
                new Panel("tolerance", "residual of a step [N]", "change of a joint [rad]", tolerance));
        Files.writeString(PICTURE, LogPlot.svg(panels));
        StringBuilder text = new StringBuilder(INTRODUCTION);
        text.append(maps());
        text.append(CONVERGENCE);
        for (Panel panel : panels) {
            text.append("\n**")
                    .append(panel.title())
                    .append("** (")
                    .append(panel.up())
                    .append(")\n\n");
            text.append(table(panel));
        }
        text.append(READING);
        Files.writeString(PAGE, text);
        System.out.println(text);
    }

    private static final String INTRODUCTION = """
            # What the choices of the calculation are worth

            Measured and written by `./check accuracy`; do not edit by hand. No number here is a comparison with the world: for
            that see [truth.md](truth.md). This page says how far an answer moves when the calculation is made finer,
            coarser or less damped, and so which differences between two designs mean anything.

            ## Maps

            The bench hand of the tests (three fingers, one motor, pads 14 x 6 points; invented) from above, 9 x 9 starts
            of +-60 mm, closing and lift. Of 81 cells: *held* with the defaults; *changed*: held became not held or the
            other way (in brackets: any change of the outcome). *moved*: how far apart the two runs leave an object that
            both hold, median and nine tenths of them [mm].

            """;

    private static final String CONVERGENCE = """

            ## Orders

            ![errors against pitch, step and tolerance](accuracy.svg)

            - *Pad pitch*: a disc between two fingers with beds of springs; the force of a link along its normal against the
              balance of moments at the pose found (closed form, Birglen, Laliberte, Gosselin 2008, from memory).
            - *Step*: the closings with friction of the engine cases; the joint that changes most against 1/64 of the step.
              Each curve ends in the stick and slip of its own path.
            - *Tolerance*: a disc between two fingers without friction; the joint that changes most against 1e-10 N. The
              program solves steps on the way to 1e-2 N and states of rest to 1e-6 N.

            The order is the slope of the straight line of least squares through all points shown.
            """;

    private static final String READING = """

            ## How to read it

            A single cell near a border of a map is worth little: the changes above are what a border of finite width gives.
            Between two designs, differences of the held share below those changes are not differences. Pads coarser than
            the default are not offered for answers (7 x 3 is shown as a warning); finer ones cost in proportion. Damping
            and the pads' shear stiffness choose the way a snap goes: where they change a cell, a test on the bench decides,
            not this program.
            """;

    private static String maps() {
        StringBuilder text = new StringBuilder("| change |");
        STARTS.forEach(s -> text.append(' ').append(s.name).append(": changed | moved |"));
        text.append(" all: changed |\n|---|")
                .append("---:|---:|".repeat(STARTS.size()))
                .append("---:|\n");
        List<List<ClosingSummary>> base = STARTS.stream().map(s -> map(s, BASE)).toList();
        text.append("| ").append(BASE.name).append(" |");
        base.forEach(map ->
                text.append(" held " + map.stream().filter(ClosingSummary::held).count() + " | |"));
        text.append('\n');
        for (Change change : CHANGES) {
            text.append("| ").append(change.name).append(" |");
            int changed = 0;
            int cells = 0;
            for (int i = 0; i < STARTS.size(); i++) {
                List<ClosingSummary> map = map(STARTS.get(i), change);
                text.append(compared(base.get(i), map));
                changed += changed(base.get(i), map);
                cells += map.size();
            }
            text.append(String.format(Locale.ROOT, " %d of %d, %.1f %% |%n", changed, cells, 100.0 * changed / cells));
        }
        return text.toString();
    }

    private static long held(List<ClosingSummary> map) {
        return map.stream().filter(ClosingSummary::held).count();
    }

    private static int changed(List<ClosingSummary> a, List<ClosingSummary> b) {
        int changed = 0;
        for (int i = 0; i < a.size(); i++) {
            changed += a.get(i).held() == b.get(i).held() ? 0 : 1;
        }
        return changed;
    }

    private static String compared(List<ClosingSummary> a, List<ClosingSummary> b) {
        int outcome = 0;
        List<Double> moved = new ArrayList<>();
        for (int i = 0; i < a.size(); i++) {
            outcome += a.get(i).outcome() == b.get(i).outcome() ? 0 : 1;
            if (a.get(i).held() && b.get(i).held()) {
                moved.add(1e3
                        * Math.hypot(
                                a.get(i).travelX() - b.get(i).travelX(),
                                a.get(i).travelY() - b.get(i).travelY()));
            }
        }
        Collections.sort(moved);
        return " " + changed(a, b) + " (" + outcome + ") | " + share(moved, 0.5) + " / " + share(moved, 0.9) + " |";
    }

    private static String share(List<Double> sorted, double share) {
        return sorted.isEmpty()
                ? "-"
                : String.format(Locale.ROOT, "%.2f", sorted.get((int) Math.floor(share * (sorted.size() - 1))));
    }

    private static List<ClosingSummary> map(Start start, Change change) {
        ClosingSimulator simulator = new ClosingSimulator(
                BenchHands.threeFinger(OptionalDouble.empty(), 0, change.rubber),
                BenchHands.above(0.13 - start.height),
                BenchHands.object(start.name, start.shape, start.mass),
                Spread.exactly(0.4),
                change.numerics,
                Criteria.DEFAULT);
        List<ClosingSummary> runs = new ArrayList<>();
        for (int row = -HALF; row <= HALF; row++) {
            for (int column = -HALF; column <= HALF; column++) {
                runs.add(simulator.run(Conditions.at(PITCH * column, PITCH * row, 0)));
            }
        }
        return runs;
    }

    private static String table(Panel panel) {
        StringBuilder text = new StringBuilder("| " + panel.across() + " |");
        panel.lines()
                .forEach(l -> text.append(' ')
                        .append(l.name().isEmpty() ? "error" : l.name())
                        .append(" |"));
        text.append("\n|---:|").append("---:|".repeat(panel.lines().size())).append('\n');
        List<Point> first = panel.lines().get(0).points();
        for (int i = 0; i < first.size(); i++) {
            text.append("| ").append(number(first.get(i).size())).append(" |");
            for (Line line : panel.lines()) {
                text.append(' ').append(number(line.points().get(i).error())).append(" |");
            }
            text.append('\n');
        }
        text.append("| order |");
        panel.lines().forEach(l -> text.append(String.format(Locale.ROOT, " %.2f |", LogPlot.order(l.points()))));
        return text.append('\n').toString();
    }

    private static String number(double value) {
        return String.format(Locale.ROOT, "%.2g", value);
    }
}
