package gripwright.crosscheck;

import de.siegmar.fastcsv.writer.CsvWriter;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/** Writes docs/truth.md and docs/truth.csv from what the tests measured. */
final class TruthPage {
    /** Modules whose tests record, from the bottom up. */
    static final List<Path> RECORDED = List.of(
            Path.of("..", "core", "target", "truth.csv"),
            Path.of("..", "files", "target", "truth.csv"),
            Path.of("..", "report", "target", "truth.csv"),
            Path.of("..", "cli", "target", "truth.csv"),
            Path.of("target", "truth.csv"));

    static final Path PAGE = Path.of("..", "docs", "truth.md");
    static final Path TABLE = Path.of("..", "docs", "truth.csv");
    /** A group of more rows than this is summarised. */
    private static final int SHORT = 6;
    /** Shown row by row although there are many: the exceptions are the point. */
    private static final String WHOLE = "capture";

    /** A section of the page and the families of records that belong there. */
    private record Section(String title, String about, List<String> families) {}

    private static final List<Section> SECTIONS = List.of(
            new Section(
                    "Finger statics",
                    "Tendon-driven links on fixed supports: forces from the balance of moments; where the finger rolls"
                            + " off; free closing.",
                    List.of("finger statics", "roll-off", "free closing")),
            new Section(
                    "Planar equilibria",
                    "Two fingers on a disc: against an independent energy minimisation, and against the engine dyn4j run"
                            + " beside it. Engines have inertia and impulses; the states of rest are compared.",
                    List.of(
                            "planar closing, rigid",
                            "planar closing, soft",
                            "planar closing, chains of beads",
                            "dyn4j beside us")),
            new Section(
                    "3D balance",
                    "Three fingers on a free object: against three rigid-body engines (stored numbers) and against ode4j"
                            + " run beside it; balance, symmetry and scaling of whole runs; objects on the table. What the"
                            + " models differ in is explained in `engines.md`.",
                    List.of(
                            "closing in space, frictionless",
                            "ode4j beside us, frictionless",
                            "closing in space, friction",
                            "ode4j beside us, friction",
                            "invariants",
                            "table")),
            new Section(
                    "Cone and slip",
                    "Coulomb friction: where it lets go, and that it does not creep.",
                    List.of("slip")),
            new Section(
                    "Pull-out and stiffness of the grasp",
                    "A disc in two fingers, pulled away from the palm: forces at a height, greatest force, where it is"
                            + " lost.",
                    List.of("disc in two fingers", "pull-out", "grasp stiffness")),
            new Section(
                    "Wrench-space quality",
                    "Largest ball of wrenches, exact examples.",
                    List.of("wrench-space quality", "wrench space", "grasp quality")),
            new Section(
                    "Contact laws", "Pads as beds of springs; moduli and rates.", List.of("pads", "rates and moduli")),
            new Section("Differentials and capstan", "Tendons over joints, levers, spools.", List.of("drive")),
            new Section(
                    "Statistics of the trials table",
                    "Intervals of shares, differences, and tests of groups.",
                    List.of("intervals of shares", "tests of groups")),
            new Section(
                    "Trials of the built hand",
                    "Exact tests, how many trials it takes, and the formulas of the bench measurements.",
                    List.of("trials of the built hand", "bench measurements")),
            new Section(
                    "A fact of the trade",
                    "A hand of this size and kind still picks up most objects when the placement is 25 mm off and up to about"
                            + " 75 mm at best. Found: the radius of the circle as large as the held area of the best grip's"
                            + " map (+-90 mm, 19 x 19). More than half of the objects must lie in that range; those that do"
                            + " not stay in the table. Above it lie things that the side grip takes or that are long: likely (no test shows"
                            + " it) because the bare table of the model lets the hand push what stands in its way along with it,"
                            + " and because a shift along a long object changes little. A real bench is less patient.",
                    List.of("capture")));

    private TruthPage() {}

    static String markdown(List<TruthRow> rows) {
        StringBuilder text = new StringBuilder("""
                # The truth table

                What the tests compare with numbers from outside this program, and what they found. Written by
                `./check truth` from the tests' own records; a test of `./check` holds the page to them. Do not edit by hand.

                One row per check. Where there are many of a kind, the row that uses most of its tolerance stands for them,
                with their number; all rows are in [truth.csv](truth.csv). Numbers are printed to a hundredth of the
                tolerance or to five digits. *From memory*: a formula whose source was not open when it was written.

                """);
        text.append(rows.size()).append(" checks in all.\n");
        Set<String> known = SECTIONS.stream().flatMap(s -> s.families.stream()).collect(Collectors.toSet());
        List<Section> sections = new ArrayList<>(SECTIONS);
        rows.stream()
                .map(TruthRow::family)
                .filter(f -> !known.contains(f))
                .distinct()
                .forEach(f -> sections.add(new Section(
                        f.substring(0, 1).toUpperCase(java.util.Locale.ROOT) + f.substring(1), "", List.of(f))));
        for (Section section : sections) {
            text.append("\n## ").append(section.title).append("\n\n");
            if (!section.about.isEmpty()) {
                text.append(section.about).append("\n\n");
            }
            List<TruthRow> here = rows.stream()
                    .filter(r -> section.families.contains(r.family()))
                    .toList();
            text.append(here.isEmpty() ? "No test records here yet.\n" : table(section, here));
        }
        return text.toString();
    }

    private static String table(Section section, List<TruthRow> rows) {
        StringBuilder text = new StringBuilder();
        text.append("| what | inputs | source | expected | found | error | tolerance | why that tolerance |\n");
        text.append("|---|---|---|---:|---:|---:|---|---|\n");
        for (String family : section.families) {
            Map<String, List<TruthRow>> groups = rows.stream()
                    .filter(r -> r.family().equals(family))
                    .collect(Collectors.groupingBy(
                            r -> r.source() + r.unit() + r.why(), LinkedHashMap::new, Collectors.toList()));
            for (List<TruthRow> group : groups.values()) {
                if (group.size() <= SHORT || family.equals(WHOLE)) {
                    group.forEach(r -> text.append(line(r, "")));
                } else {
                    TruthRow worst = group.stream()
                            .max(Comparator.comparingDouble(TruthRow::used))
                            .orElseThrow();
                    text.append(line(worst, "**" + family + ", worst of " + group.size() + ":** "));
                }
            }
        }
        return text.toString();
    }

    private static String line(TruthRow r, String before) {
        return "| "
                + String.join(
                        " | ",
                        before + cell(r.what()),
                        cell(r.inputs()),
                        cell(r.source()),
                        r.print(r.expected()),
                        r.print(r.found()),
                        r.printError(),
                        cell(r.tolerance()),
                        cell(r.why()))
                + " |\n";
    }

    private static String cell(String text) {
        return text.replace("|", "\\|").replace("<", "&lt;").replace("*", "\\*");
    }

    /** Numbers as printed, so that the file does not change with the last bits. */
    static void writeTable(List<TruthRow> rows) throws IOException {
        try (CsvWriter csv = CsvWriter.builder().build(TABLE)) {
            csv.writeRecord(TruthRow.COLUMNS);
            for (TruthRow r : rows) {
                csv.writeRecord(
                        r.family(),
                        r.what(),
                        r.inputs(),
                        r.source(),
                        r.print(r.expected()),
                        r.print(r.found()),
                        r.printError(),
                        r.tolerance(),
                        r.why());
            }
        } catch (UncheckedIOException e) {
            throw e.getCause();
        }
    }

    static void write(List<TruthRow> rows) throws IOException {
        Files.writeString(PAGE, markdown(rows));
        writeTable(rows);
    }
}
