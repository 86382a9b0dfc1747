package gripwright.report;

import gripwright.closing.Outcome;
import gripwright.study.SheetScore;
import gripwright.study.SheetScore.Comparison;
import gripwright.study.SheetScore.Rate;
import gripwright.study.SheetScore.Scope;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Trials of built hands: share held by object and grip for each hand, and with two hands their difference. */
public final class ScorePicture {
    private static final double WIDTH = 960;
    private static final double NAMES = 150;
    private static final double DIFFERENCE = 230;
    private static final double ROW = 64;
    private static final int MOST_HANDS = 3;

    private final Svg svg = new Svg();
    private final SheetScore score;
    private final double wanted;
    private final List<String> hands;
    private final boolean two;
    private final double column;
    private final double bar;

    private ScorePicture(SheetScore score, double wanted) {
        this.score = score;
        this.wanted = wanted;
        this.hands = score.hands().stream().limit(MOST_HANDS).toList();
        this.two = score.hands().size() == 2;
        this.column = (WIDTH - NAMES - (two ? DIFFERENCE : 0)) / hands.size();
        this.bar = Math.max(20, Math.min(150, column - 150));
    }

    /** @param wanted share of pick-ups that must work [-] */
    public static Picture draw(SheetScore score, double wanted) {
        return new ScorePicture(score, wanted).picture();
    }

    private Picture picture() {
        svg.text(0, 14, "object, grip", "lq");
        for (int h = 0; h < hands.size(); h++) {
            svg.text(NAMES + h * column, 14, Wrap.shortened(hands.get(h), (int) (column / 8)), "n");
        }
        double middle = WIDTH - DIFFERENCE / 2;
        if (two) {
            svg.text(middle, 14, "second less first, points", "lq", Svg.Anchor.MIDDLE);
        }
        svg.line(0, 24, WIDTH, 24, "t");
        Set<List<String>> parts = new LinkedHashSet<>();
        score.rates().stream()
                .filter(r -> r.scope() == Scope.PART)
                .forEach(r -> parts.add(List.of(r.object(), r.grip())));
        double y = 24;
        for (List<String> part : parts) {
            row(part.get(0), part.get(1), y, middle);
            y += ROW;
            svg.line(0, y, WIDTH, y, "rule");
        }
        svg.line(0, y, WIDTH, y, "o");
        row("", "", y, middle);
        y += ROW;
        if (two) {
            svg.line(middle, 24, middle, y, "t");
            for (int points = -100; points <= 100; points += 50) {
                double x = middle + points / 100.0 * (DIFFERENCE / 2 - 16);
                svg.line(x, y, x, y + 4, "t");
                svg.text(x, y + 17, Num.text(points, 0), "l", Svg.Anchor.MIDDLE);
            }
        }
        return new Picture(
                "Share of trials on the bench held, by object, grip and hand", WIDTH, legend(y + 26), svg.body());
    }

    private void row(String object, String grip, double y, double middle) {
        if (object.isEmpty()) {
            svg.text(0, y + 22, "all", "n");
        } else {
            svg.text(0, y + 22, Wrap.shortened(object, 20), "n").text(0, y + 38, Wrap.shortened(grip, 22), "lq");
        }
        for (int h = 0; h < hands.size(); h++) {
            cell(rate(hands.get(h), object, grip), NAMES + h * column, y, object.isEmpty());
        }
        if (two) {
            score.comparisons().stream()
                    .filter(c -> c.object().equals(object) && c.grip().equals(grip))
                    .findFirst()
                    .ifPresent(c -> difference(c, middle, y + 19));
        }
    }

    private @Nullable Rate rate(String hand, String object, String grip) {
        return score.rates().stream()
                .filter(r -> r.scope() == (object.isEmpty() ? Scope.ALL : Scope.PART))
                .filter(r -> r.hand().equals(hand))
                .filter(r -> r.object().equals(object) && r.grip().equals(grip))
                .findFirst()
                .orElse(null);
    }

    private void cell(@Nullable Rate rate, double x, double y, boolean strong) {
        if (rate == null) {
            svg.text(x, y + 22, "not tried", "lq");
            return;
        }
        if (rate.decided() == 0) {
            svg.text(x, y + 22, "no decided trial", "lq");
            return;
        }
        ShareBar.draw(
                svg,
                x,
                y + 8,
                bar,
                rate.share(),
                rate.interval().low(),
                rate.interval().high(),
                wanted,
                strong);
        svg.text(x + bar + 10, y + 18, rate.held() + " of " + rate.decided(), "n");
        String interval = Num.interval(rate.interval().low(), rate.interval().high());
        svg.text(x + bar + 10, y + 34, interval + (rate.exact() ? " exact" : ""), "lq");
        failures(rate.outcomes(), x, y + 53);
    }

    private void failures(Map<Outcome, Integer> outcomes, double x, double y) {
        double at = x;
        for (Map.Entry<Outcome, Integer> e : TrialsPicture.byCount(outcomes)) {
            String words = e.getKey().words() + " " + e.getValue();
            double needed = 18 + Svg.textWidth(words, 12);
            if (at + needed > x + column - 4) {
                return;
            }
            svg.mark(e.getKey(), at, y - 11, 13).text(at + 17, y, words, "l");
            at += needed + 6;
        }
    }

    private void difference(Comparison c, double middle, double y) {
        if (Double.isNaN(c.difference())) {
            return;
        }
        double per = DIFFERENCE / 2 - 16;
        svg.line(
                middle + per * c.interval().low(),
                y,
                middle + per * c.interval().high(),
                y,
                "wh");
        svg.circle(middle + per * c.difference(), y, 4, c.settled() ? "mf" : "und");
        String words = c.pairs().isPresent() ? c.pairs().get().all() + " pairs" : "";
        svg.text(middle + 6, y + 22, words, "lq");
    }

    private double legend(double y) {
        svg.path("M0 " + Num.coord(y + 7) + "v8m0 -4h30m0 -4v8", "wh");
        svg.text(40, y + 15, Num.sentence("95 % interval: exact below 30 trials, else Wilson"), "l");
        svg.line(360, y, 360, y + 22, "aim").text(370, y + 15, "wanted: " + Num.percent(wanted), "l");
        if (two) {
            svg.circle(500, y + 11, 4, "und").text(512, y + 15, "can be luck, all questions counted (Holm)", "l");
            svg.circle(780, y + 11, 4, "mf").text(792, y + 15, "is more than luck", "l");
        }
        int left = score.hands().size() - hands.size();
        if (left > 0) {
            svg.text(
                    0,
                    y + 40,
                    "not drawn: " + left + " more, "
                            + Wrap.shortened(
                                    String.join(
                                            ", ",
                                            score.hands()
                                                    .subList(
                                                            MOST_HANDS,
                                                            score.hands().size())),
                                    110),
                    "lq");
        }
        return y + (left > 0 ? 48 : 28);
    }
}
