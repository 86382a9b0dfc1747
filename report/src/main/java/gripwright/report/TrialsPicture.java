package gripwright.report;

import gripwright.closing.Outcome;
import gripwright.model.Need;
import gripwright.study.Proportion;
import gripwright.study.TrialsResult;
import gripwright.study.Verdict;
import java.util.ArrayList;
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
    private static final double VERDICT = 116;
    private static final double BAR = 108;
    private static final double ROW = 66;
    private static final int REASONS = 2;

    private TrialsPicture() {}

    /** The table of objects by grips. */
    public static Picture table(TrialsResult trials, Need need) {
        Svg svg = new Svg();
        List<String> grips = grips(trials);
        double column = (WIDTH - NAMES - VERDICT) / Math.max(1, grips.size());
        svg.text(0, 14, "object", "lq");
        for (int g = 0; g < grips.size(); g++) {
            svg.text(NAMES + g * column, 14, grips.get(g), "n");
        }
        svg.text(WIDTH - VERDICT, 14, "best grip", "lq").line(0, 24, WIDTH, 24, "t");
        double y = 24;
        for (TrialsResult.Best best : trials.best()) {
            double weight = need.object(best.object()).weight();
            svg.text(0, y + 22, best.object(), "n");
            svg.text(0, y + 38, "weight " + Num.text(weight, 2), "lq");
            for (int g = 0; g < grips.size(); g++) {
                cell(svg, trials, best, grips.get(g), need.wantedSuccess(), NAMES + g * column, y, column);
            }
            svg.text(WIDTH - VERDICT, y + 22, best.grip(), "n");
            svg.text(
                    WIDTH - VERDICT,
                    y + 38,
                    verdict(Verdict.of(best.success(), need.wantedSuccess()), need.wantedSuccess()),
                    "lq");
            y += ROW;
            svg.line(0, y, WIDTH, y, "rule");
        }
        svg.line(0, y, WIDTH, y, "o").text(0, y + 26, "all, weighted", "n");
        TrialsResult.Weighted w = trials.weighted();
        bar(svg, NAMES, y + 12, BAR, w.share(), w.low(), w.high(), need.wantedSuccess(), true);
        svg.text(NAMES + BAR + 10, y + 28, Num.percent(w.share()), "n");
        svg.text(NAMES + BAR + 62, y + 28, interval(w.low(), w.high()) + ", best grip of each object", "lq");
        svg.text(WIDTH - VERDICT, y + 28, verdict(Verdict.of(w, need.wantedSuccess()), need.wantedSuccess()), "lq");
        double end = legend(svg, y + 62, need.wantedSuccess());
        return new Picture("Share of trials held, by object and grip", WIDTH, end, svg.body());
    }

    private static List<String> grips(TrialsResult trials) {
        Set<String> names = new LinkedHashSet<>();
        trials.pairs().forEach(p -> names.add(p.grip()));
        return new ArrayList<>(names);
    }

    private static void cell(
            Svg svg,
            TrialsResult trials,
            TrialsResult.Best best,
            String grip,
            double aim,
            double x,
            double y,
            double width) {
        TrialsResult.Pair pair = trials.pairs().stream()
                .filter(p -> p.object().equals(best.object()) && p.grip().equals(grip))
                .findFirst()
                .orElse(null);
        if (pair == null) {
            svg.text(x, y + 22, "not tried", "lq");
            return;
        }
        Proportion s = pair.success();
        if (s.trials() == 0) {
            svg.text(x, y + 22, "no decided run", "lq");
        } else {
            bar(svg, x, y + 8, BAR, s.share(), s.low(), s.high(), aim, grip.equals(best.grip()));
            svg.text(x + BAR + 10, y + 23, Num.percent(s.share()), "n");
            if (width > BAR + 160) {
                svg.text(x + BAR + 56, y + 23, interval(s.low(), s.high()), "lq");
            } else {
                svg.text(x, y + 40, interval(s.low(), s.high()), "lq");
            }
        }
        reasons(svg, pair, x, y + (width > BAR + 160 ? 44 : 56), width);
    }

    /** The most frequent failures side by side, as far as they fit. */
    private static void reasons(Svg svg, TrialsResult.Pair pair, double x, double y, double width) {
        double at = x;
        int shown = 0;
        for (Map.Entry<Outcome, Integer> e : byCount(pair.outcomes())) {
            String words = e.getKey().words() + " " + e.getValue();
            double needed = 18 + Svg.textWidth(words, 12);
            if (shown >= REASONS || (shown > 0 && at + needed > x + width)) {
                break;
            }
            svg.mark(e.getKey(), at, y - 11, 13).text(at + 17, y, words, "l");
            at += needed + 12;
            shown++;
        }
    }

    private static List<Map.Entry<Outcome, Integer>> byCount(Map<Outcome, Integer> outcomes) {
        return Marks.ORDER.stream()
                .filter(o -> o != Outcome.HELD && outcomes.getOrDefault(o, 0) > 0)
                .map(o -> Map.entry(o, outcomes.get(o)))
                .sorted(Comparator.comparing((Map.Entry<Outcome, Integer> e) -> -e.getValue()))
                .toList();
    }

    /** Share, interval and aim on a bar of the given length; {@code strong} fills it with the colour of held. */
    static void bar(
            Svg svg,
            double x,
            double y,
            double length,
            double share,
            double low,
            double high,
            double aim,
            boolean strong) {
        svg.rect(x, y + 5, length, 12, "bt").rect(x, y + 5, length * share, 12, strong ? "bf best" : "bf");
        svg.line(x + length * aim, y, x + length * aim, y + 22, "aim");
        double l = x + length * low;
        double h = x + length * high;
        svg.line(l, y + 11, h, y + 11, "whh");
        svg.path("M" + Num.coord(l) + " " + Num.coord(y + 7) + "v8m0 -4H" + Num.coord(h) + "m0 -4v8", "wh");
    }

    private static String interval(double low, double high) {
        return Num.text(100 * low, 0) + " to " + Num.percent(high);
    }

    static String words(Verdict verdict) {
        return switch (verdict) {
            case REACHES -> "reaches it";
            case MAY_REACH -> "not settled";
            case BELOW -> "below";
            case UNKNOWN -> "unknown";
        };
    }

    private static String verdict(Verdict verdict, double wanted) {
        String aim = Num.percent(wanted);
        return switch (verdict) {
            case REACHES -> "reaches " + aim;
            case MAY_REACH -> aim + " not settled";
            case BELOW -> "below " + aim;
            case UNKNOWN -> "unknown";
        };
    }

    private static double legend(Svg svg, double y, double aim) {
        svg.rect(0, y + 5, 30, 12, "bf best").text(38, y + 15, "share held, best grip", "l");
        svg.rect(190, y + 5, 30, 12, "bf").text(228, y + 15, "other grips", "l");
        svg.path("M330 " + Num.coord(y + 7) + "v8m0 -4h30m0 -4v8", "wh");
        svg.text(370, y + 15, "95 % interval (Wilson)".replace(" %", "\u00a0%"), "l");
        svg.line(540, y, 540, y + 22, "aim").text(550, y + 15, "wanted: " + Num.percent(aim), "l");
        svg.text(660, y + 15, "undecided runs count in neither number", "l");
        return y + 28;
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
            svg.text(0, y + 17, best.object(), "n").text(0, y + 32, best.grip(), "lq");
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
