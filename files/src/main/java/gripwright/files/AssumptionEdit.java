package gripwright.files;

import gripwright.model.Placement;
import gripwright.model.Project;
import gripwright.model.Scatter;
import gripwright.model.Spread;
import gripwright.study.ExplainResult;
import gripwright.study.ExplainResult.Estimate;
import gripwright.units.Measure;
import gripwright.units.QuantityText;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * Edits of the project files that a score sheet suggests, as a unified diff without context lines. Nothing is applied:
 * the owner of the files decides ({@code patch -p0 -d DIR < edit.diff} does it).
 */
public final class AssumptionEdit {
    /** Width of a 95 % interval over one standard deviation (normal law). */
    private static final double DEVIATIONS = 2 * 1.959963984540054;

    private static final int DIGITS = 2;

    private AssumptionEdit() {}

    /**
     * One value to be replaced.
     *
     * @param file within the project folder
     * @param line from 1 on
     * @param key such as "friction.soft.glass"
     * @param before the value as it stands and
     * @param after as it would
     */
    public record Change(String file, int line, String key, String before, String after) {}

    /**
     * @param changes in the order of the files
     * @param diff of all changes; empty if there are none
     * @param notes estimates that are off but whose value stands nowhere in the files, or lies at the end of what was tried
     */
    public record Edit(List<Change> changes, String diff, List<String> notes) {
        public Edit {
            changes = List.copyOf(changes);
            notes = List.copyOf(notes);
        }
    }

    private record Wanted(String file, String key, String text) {}

    /** Edits for those estimates of the result that refute what the files say. */
    public static Edit of(Path folder, ProjectReader.Marked marked, ExplainResult result) throws IOException {
        List<Wanted> wanted = new ArrayList<>();
        Project project = marked.project();
        for (Estimate e : result.refuted()) {
            if (result.scatter().filter(e::equals).isPresent()) {
                scatter(project.need().placement(), e, wanted);
            } else if (result.friction().contains(e)) {
                friction(project, e.subject(), e, wanted);
            } else {
                result.friction().forEach(surface -> friction(project, surface.subject(), e, wanted));
            }
        }
        List<Change> changes = new ArrayList<>();
        List<String> notes = new ArrayList<>();
        result.refuted().stream()
                .filter(e -> !e.beyond().isEmpty())
                .map(e -> "The edit offered for " + e.words() + " is the end of what was tried, "
                        + QuantityText.number(e.value(), DIGITS) + " times; it may be even"
                        + e.beyond().replace(" or", "") + ". Measure it.")
                .forEach(notes::add);
        if (result.friction().size() > 1
                && result.refuted().stream().anyMatch(e -> result.common().equals(Optional.of(e)))) {
            notes.add("One factor explains the trials on every surface, so the edit offers it for all "
                    + result.friction().size() + " of them.");
        }
        Map<String, List<String>> lines = new TreeMap<>();
        Map<String, Map<Integer, String>> edited = new TreeMap<>();
        List<Wanted> backwards = wanted.stream()
                .filter(w -> {
                    boolean there = marked.places().containsKey(w.file + ": " + w.key);
                    if (!there) {
                        notes.add(w.file + " does not hold " + w.key + "; " + w.text + " would explain the trials");
                    }
                    return there;
                })
                .sorted(Comparator.comparing((Wanted w) -> place(marked, w).line())
                        .thenComparing(w -> -place(marked, w).column()))
                .toList();
        for (Wanted w : backwards) { // the last value of a line first, so that columns stay true
            Place p = place(marked, w);
            if (!lines.containsKey(w.file)) {
                lines.put(w.file, Files.readAllLines(folder.resolve(w.file)));
            }
            String whole = lines.getOrDefault(w.file, List.of()).get(p.line() - 1);
            String line = edited.computeIfAbsent(w.file, f -> new TreeMap<>()).getOrDefault(p.line(), whole);
            String before = line.substring(p.column() - 1, p.endColumn() - 1);
            edited.getOrDefault(w.file, new TreeMap<>())
                    .put(p.line(), line.substring(0, p.column() - 1) + w.text + line.substring(p.endColumn() - 1));
            changes.add(new Change(w.file, p.line(), w.key, before, w.text));
        }
        changes.sort(Comparator.comparing(Change::file).thenComparing(Change::line));
        return new Edit(changes, diff(lines, edited), notes);
    }

    private static Place place(ProjectReader.Marked marked, Wanted w) {
        return marked.places().getOrDefault(w.file + ": " + w.key, Place.START);
    }

    private static void friction(Project project, String surface, Estimate e, List<Wanted> wanted) {
        new TreeMap<>(project.hand().friction().byRubber()).forEach((rubber, surfaces) -> {
            Spread mu = surfaces.get(surface);
            if (mu != null) {
                double deviation = (e.high() - e.low()) / DEVIATIONS * mu.mean();
                boolean open = e.openLow() || e.openHigh();
                wanted.add(new Wanted(
                        ProjectReader.HAND,
                        Kind.pathOf(Kind.pathOf("friction", rubber), surface),
                        QuantityText.number(e.value() * mu.mean(), DIGITS) + " +- "
                                + QuantityText.number(open ? Math.max(deviation, mu.deviation()) : deviation, DIGITS)));
            }
        });
    }

    private static void scatter(Placement p, Estimate e, List<Wanted> wanted) {
        scatter("placement.x", p.x(), Measure.LENGTH, e, wanted);
        scatter("placement.y", p.y(), Measure.LENGTH, e, wanted);
        scatter("placement.turn", p.turn(), Measure.ANGLE, e, wanted);
        scatter("placement.height", p.height(), Measure.LENGTH, e, wanted);
    }

    private static void scatter(String key, Scatter scatter, Measure measure, Estimate e, List<Wanted> wanted) {
        if (scatter.size() > 0) {
            wanted.add(new Wanted(
                    ProjectReader.NEED,
                    key,
                    QuantityText.format(e.value() * scatter.size(), measure, DIGITS)
                            + (scatter.law() == Scatter.Law.UNIFORM ? " uniform" : " sd")));
        }
    }

    private static String diff(Map<String, List<String>> lines, Map<String, Map<Integer, String>> edited) {
        StringBuilder text = new StringBuilder();
        edited.forEach((file, changes) -> {
            text.append("--- ").append(file).append("\n+++ ").append(file).append('\n');
            changes.forEach((line, after) -> text.append("@@ -")
                    .append(line)
                    .append(" +")
                    .append(line)
                    .append(" @@\n-")
                    .append(lines.getOrDefault(file, List.of()).get(line - 1))
                    .append("\n+")
                    .append(after)
                    .append('\n'));
        });
        return text.toString();
    }
}
