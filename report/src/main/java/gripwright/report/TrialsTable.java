package gripwright.report;

import gripwright.closing.Outcome;
import gripwright.model.Need;
import gripwright.study.Proportion;
import gripwright.study.TrialsResult;
import gripwright.study.Verdict;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Objects by grips: share held with interval and aim, the main failures, and the best grip. */
final class TrialsTable {
    private static final double WIDTH = 960;
    private static final double NAMES = 150;
    private static final double VERDICT = 116;
    private static final double LONGEST_BAR = 108;
    private static final double ROW = 66;
    private static final int REASONS = 2;

    private final TrialsResult trials;
    private final double wanted;
    private final Need need;
    private final List<String> grips;
    private final double column;
    private final double bar;
    private final Svg svg = new Svg();

    TrialsTable(TrialsResult trials, Need need) {
        this.trials = trials;
        this.need = need;
        this.wanted = need.wantedSuccess();
        Set<String> names = new LinkedHashSet<>();
        trials.pairs().forEach(p -> names.add(p.grip()));
        this.grips = new ArrayList<>(names);
        this.column = (WIDTH - NAMES - VERDICT) / Math.max(1, grips.size());
        this.bar = Math.max(20, Math.min(LONGEST_BAR, column - 66));
    }

    Picture picture() {
        svg.text(0, 14, "object", "lq");
        for (int g = 0; g < grips.size(); g++) {
            svg.text(NAMES + g * column, 14, Wrap.shortened(grips.get(g), (int) (column / 8)), "n");
        }
        svg.text(WIDTH - VERDICT, 14, "best grip", "lq").line(0, 24, WIDTH, 24, "t");
        double y = 24;
        for (Map.Entry<String, List<TrialsResult.Pair>> row : byObject().entrySet()) {
            row(row.getKey(), row.getValue(), y);
            y += ROW;
            svg.line(0, y, WIDTH, y, "rule");
        }
        svg.line(0, y, WIDTH, y, "o");
        total(y);
        double end = legend(y + 62);
        return new Picture("Share of trials held, by object and grip", WIDTH, end, svg.body());
    }

    private Map<String, List<TrialsResult.Pair>> byObject() {
        Map<String, List<TrialsResult.Pair>> rows = new LinkedHashMap<>();
        trials.pairs()
                .forEach(p ->
                        rows.computeIfAbsent(p.object(), k -> new ArrayList<>()).add(p));
        return rows;
    }

    private void row(String object, List<TrialsResult.Pair> pairs, double y) {
        double line = y + 22;
        for (String part : Wrap.lines(Wrap.shortened(object, 36), 19)) {
            svg.text(0, line, part, "n");
            line += 15;
        }
        svg.text(0, line + 1, "weight " + Num.text(need.object(object).weight(), 2), "lq");
        TrialsResult.Best best = trials.best().stream()
                .filter(b -> b.object().equals(object))
                .findFirst()
                .orElse(null);
        String chosen = best == null ? "" : best.grip();
        for (int g = 0; g < grips.size(); g++) {
            String grip = grips.get(g);
            cell(
                    pairs.stream()
                            .filter(p -> p.grip().equals(grip))
                            .findFirst()
                            .orElse(null),
                    grip.equals(chosen),
                    NAMES + g * column,
                    y);
        }
        if (best != null) {
            svg.text(WIDTH - VERDICT, y + 22, Wrap.shortened(chosen, 14), "n");
            svg.text(WIDTH - VERDICT, y + 38, ShareBar.verdict(Verdict.of(best.success(), wanted), wanted), "lq");
        }
    }

    private void cell(TrialsResult.@Nullable Pair pair, boolean best, double x, double y) {
        if (pair == null) {
            svg.text(x, y + 22, "not tried", "lq");
            return;
        }
        Proportion s = pair.success();
        boolean wide = column > bar + 160;
        if (s.trials() == 0) {
            svg.text(x, y + 22, "no decided run", "lq");
        } else {
            ShareBar.draw(svg, x, y + 8, bar, s.share(), s.low(), s.high(), wanted, best);
            svg.text(x + bar + 10, y + 23, Num.share(s.share()), "n");
            svg.text(wide ? x + bar + 56 : x, wide ? y + 23 : y + 40, Num.interval(s.low(), s.high()), "lq");
        }
        reasons(pair, x, y + (wide ? 44 : 56));
    }

    /** The most frequent failures side by side, as far as they fit. */
    private void reasons(TrialsResult.Pair pair, double x, double y) {
        double at = x;
        int shown = 0;
        for (Map.Entry<Outcome, Integer> e : TrialsPicture.byCount(pair.outcomes())) {
            String words = e.getKey().words() + " " + e.getValue();
            double needed = 18 + Svg.textWidth(words, 12);
            if (shown >= REASONS || (shown > 0 && at + needed > x + column)) {
                break;
            }
            svg.mark(e.getKey(), at, y - 11, 13).text(at + 17, y, words, "l");
            at += needed + 12;
            shown++;
        }
    }

    private void total(double y) {
        svg.text(0, y + 26, "all, weighted", "n");
        TrialsResult.Weighted w = trials.weighted();
        if (Double.isNaN(w.share())) {
            svg.text(NAMES, y + 28, "not known: no decided run", "lq");
            return;
        }
        ShareBar.draw(svg, NAMES, y + 12, LONGEST_BAR, w.share(), w.low(), w.high(), wanted, true);
        svg.text(NAMES + LONGEST_BAR + 10, y + 28, Num.share(w.share()), "n");
        String words = Num.interval(w.low(), w.high()) + ", best grip of each object";
        svg.text(NAMES + LONGEST_BAR + 62, y + 28, words, "lq");
        svg.text(WIDTH - VERDICT, y + 28, ShareBar.verdict(Verdict.of(w, wanted), wanted), "lq");
    }

    private double legend(double y) {
        svg.rect(0, y + 5, 30, 12, "bf best").text(38, y + 15, "share held, best grip", "l");
        svg.rect(190, y + 5, 30, 12, "bf").text(228, y + 15, "other grips", "l");
        svg.path("M330 " + Num.coord(y + 7) + "v8m0 -4h30m0 -4v8", "wh");
        svg.text(370, y + 15, "95 % interval (Wilson)".replace(" %", "\u00a0%"), "l");
        svg.line(540, y, 540, y + 22, "aim").text(550, y + 15, "wanted: " + Num.percent(wanted), "l");
        svg.text(660, y + 15, "undecided runs count in neither number", "l");
        return y + 28;
    }
}
