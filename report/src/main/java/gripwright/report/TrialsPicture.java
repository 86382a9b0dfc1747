package gripwright.report;

import gripwright.closing.Outcome;
import gripwright.model.Need;
import gripwright.study.TrialsResult;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Virtual trials: share held by object and grip with its interval and the aim, what failed, and what it hangs on. */
public final class TrialsPicture {
    private static final double WIDTH = 960;
    private static final double NAMES = 150;

    private TrialsPicture() {}

    /** The table of objects by grips. */
    public static Picture table(TrialsResult trials, Need need) {
        return new TrialsTable(trials, need).picture();
    }

    static List<Map.Entry<Outcome, Integer>> byCount(Map<Outcome, Integer> outcomes) {
        return Marks.ORDER.stream()
                .filter(o -> o != Outcome.HELD && outcomes.getOrDefault(o, 0) > 0)
                .map(o -> Map.entry(o, outcomes.get(o)))
                .sorted(Comparator.comparing((Map.Entry<Outcome, Integer> e) -> -e.getValue()))
                .toList();
    }

    /** Outcomes other than held over all pairs, most frequent first. */
    static List<Map.Entry<Outcome, Integer>> failuresByCount(TrialsResult trials) {
        Map<Outcome, Integer> all = new EnumMap<>(Outcome.class);
        trials.pairs().forEach(p -> p.outcomes().forEach((o, n) -> all.merge(o, n, Integer::sum)));
        return byCount(all);
    }

    /** All failures of all pairs, as bars by reason. */
    public static Picture failures(TrialsResult trials) {
        int runs = trials.scoredRuns();
        List<Map.Entry<Outcome, Integer>> rows = failuresByCount(trials);
        Svg svg = new Svg();
        double most = rows.stream().mapToInt(Map.Entry::getValue).max().orElse(1);
        double y = 0;
        for (Map.Entry<Outcome, Integer> e : rows) {
            svg.mark(e.getKey(), 0, y + 1, 16).text(26, y + 14, e.getKey().words(), "v");
            double length = 560 * e.getValue() / most;
            svg.rect(160, y + 3, length, 13, Look.ground(e.getKey())).rect(160, y + 3, length, 13, "t");
            svg.text(160 + length + 8, y + 14, Integer.toString(e.getValue()), "v b");
            y += 24;
        }
        String note = rows.isEmpty()
                ? "no failure in " + runs + " runs"
                : "runs that failed or stayed undecided, of " + runs + " over all objects and grips";
        svg.text(0, y + 16, note, "lq");
        return new Picture("Failures of all trials by reason", WIDTH, y + 22, svg.body());
    }

    /** For each object with its best grip: how much each sampled input decides. */
    public static Picture influence(TrialsResult trials) {
        Set<String> names = new LinkedHashSet<>();
        double most = 1e-9;
        for (TrialsResult.Pair p : trials.pairs()) {
            for (TrialsResult.Influence i : p.influence()) {
                most = Math.max(most, i.strength());
            }
        }
        trials.pairs().forEach(p -> p.influence().forEach(i -> names.add(i.input())));
        names.removeIf(n -> trials.pairs().stream().allMatch(p -> strength(p, n) == 0));
        Svg svg = new Svg();
        double column = (WIDTH - NAMES) / Math.max(1, names.size());
        int k = 0;
        for (String name : names) {
            svg.text(NAMES + column * k++, 14, name, "n");
        }
        svg.line(0, 24, WIDTH, 24, "t");
        double y = 24;
        for (TrialsResult.Best best : trials.best()) {
            TrialsResult.Pair pair = trials.pairs().stream()
                    .filter(p -> p.object().equals(best.object()) && p.grip().equals(best.grip()))
                    .findFirst()
                    .orElse(null);
            if (pair == null) {
                continue;
            }
            svg.text(0, y + 17, Wrap.shortened(best.object(), 19), "n").text(0, y + 32, best.grip(), "lq");
            k = 0;
            for (String name : names) {
                double s = strength(pair, name);
                double room = column - 46;
                svg.rect(NAMES + column * k, y + 11, Math.max(0.8, room * s / most), 12, "bf");
                svg.text(NAMES + column * k + Math.max(0.8, room * s / most) + 5, y + 21, Num.text(s, 2), "l");
                k++;
            }
            y += 42;
            svg.line(0, y, WIDTH, y, "rule");
        }
        return new Picture("How much each sampled input decides between held and not", WIDTH, y + 4, svg.body());
    }

    private static double strength(TrialsResult.Pair pair, String input) {
        return pair.influence().stream()
                .filter(i -> i.input().equals(input))
                .mapToDouble(TrialsResult.Influence::strength)
                .filter(s -> s > 0)
                .findFirst()
                .orElse(0);
    }
}
