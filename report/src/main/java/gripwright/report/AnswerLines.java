package gripwright.report;

import gripwright.closing.Outcome;
import gripwright.study.MapResult;
import gripwright.study.TrialsResult;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** The summary written from the numbers: what it picks up, how far off, what fails most. */
final class AnswerLines {
    private AnswerLines() {}

    static List<String> of(ReportInput input) {
        List<String> lines = new ArrayList<>();
        input.trials().ifPresent(t -> trials(lines, t, input.project().need().wantedSuccess()));
        for (MapResult map : input.maps()) {
            lines.add(range(map));
        }
        input.trials().ifPresent(t -> failures(lines, t));
        if (lines.isEmpty()) {
            lines.add("No trials and no maps were made, so this report does not answer what the hand picks up.");
        }
        return lines;
    }

    private static void trials(List<String> lines, TrialsResult t, double wanted) {
        List<String> good = new ArrayList<>();
        List<String> open = new ArrayList<>();
        List<String> bad = new ArrayList<>();
        for (TrialsResult.Best b : t.best()) {
            List<String> list = b.success().trials() == 0
                            || b.success().high() >= wanted && b.success().low() < wanted
                    ? open
                    : b.success().low() >= wanted ? good : bad;
            String share = b.success().trials() == 0
                    ? "no decided run"
                    : Num.percent(b.success().share());
            list.add(b.object() + " (" + b.grip() + ", " + share + ")");
        }
        String aim = Num.percent(wanted);
        lines.add("Reaches the wanted " + aim + " on " + good.size() + " of "
                + t.best().size() + " objects" + listed(good));
        if (!open.isEmpty()) {
            lines.add("May reach " + aim + " on " + open.size() + " (the interval holds the aim)" + listed(open));
        }
        if (!bad.isEmpty()) {
            lines.add("Stays below " + aim + " on " + bad.size() + listed(bad));
        }
        lines.add("Weighted over all objects with the best grip of each, "
                + Num.percent(t.weighted().share())
                + " of the pick-ups work (95\u00a0% interval "
                + Num.text(100 * t.weighted().low(), 0) + " to "
                + Num.percent(t.weighted().high()) + ").");
    }

    private static String listed(List<String> names) {
        return names.isEmpty() ? "." : ": " + String.join(", ", names) + ".";
    }

    private static String range(MapResult map) {
        String what = "The " + map.object() + " with the grip " + map.grip();
        if (map.captureRadius() <= 0) {
            return what + " fails already at its nominal place.";
        }
        return what + " may be off by " + (map.captureLimitedBySpan() ? "at least " : "") + Num.mm(map.captureRadius())
                + " in any direction; it is held over " + Num.area(map.heldArea()) + ".";
    }

    private static void failures(List<String> lines, TrialsResult t) {
        Map<Outcome, Integer> all = new EnumMap<>(Outcome.class);
        t.pairs().forEach(p -> p.outcomes().forEach((o, n) -> all.merge(o, n, Integer::sum)));
        int undecided = all.getOrDefault(Outcome.UNDECIDED, 0);
        all.remove(Outcome.UNDECIDED);
        all.remove(Outcome.HELD);
        all.entrySet().stream()
                .filter(e -> e.getValue() > 0)
                .sorted(Comparator.comparing((Map.Entry<Outcome, Integer> e) -> -e.getValue()))
                .limit(1)
                .forEach(e -> lines.add("The most frequent failure over all grips is '"
                        + e.getKey().words() + "', " + e.getValue() + " times."));
        if (undecided > 0) {
            lines.add(undecided + " runs stayed undecided (the solver did not converge); they count neither way.");
        }
    }
}
