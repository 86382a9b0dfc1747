package gripwright.report;

import gripwright.stats.BinomialIntervals;
import gripwright.study.Explain;
import gripwright.study.ExplainResult;
import gripwright.study.HeldSurface;
import gripwright.study.Scoring;
import gripwright.study.SheetScore;
import gripwright.study.SheetScore.Comparison;
import gripwright.study.SheetScore.Rate;
import gripwright.study.TrialReason;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** What score sheets say, on one page: shares, comparison of hands, prediction, assumptions, and the edit offered. */
public final class ScorePage {
    private static final String STYLE = """
            h2.plain{display:block}
            pre{font:13px/1.5 var(--mono);background:var(--face2);border:1px solid var(--rule);padding:10px 14px;overflow-x:auto;margin:0 0 20px}
            @media print{section{break-before:auto!important;padding-top:28px!important}
            h2,h3{break-after:avoid}figure,table,pre{break-inside:avoid}ul.answer{max-width:none}}
            """;

    private ScorePage() {}

    /**
     * Everything the page shows.
     *
     * @param sheets names of the files scored
     * @param foretold true if the prediction was asked for
     * @param diff edit offered; empty if none
     * @param cautions sentences about what was left out
     */
    public record Input(
            String need,
            List<String> sheets,
            SheetScore score,
            double wanted,
            Optional<ExplainResult> explained,
            boolean foretold,
            String diff,
            List<String> answer,
            List<String> cautions) {
        public Input {
            sheets = List.copyOf(sheets);
            answer = List.copyOf(answer);
            cautions = List.copyOf(cautions);
        }
    }

    /** The whole HTML file; the same input gives the same text. */
    public static String write(Input in) {
        PageFrame frame = new PageFrame("Trials on the bench: " + in.need, STYLE);
        Html page = frame.section("Trials on the bench: " + in.need);
        page.raw("<ul class=\"answer\">");
        in.answer.forEach(l -> page.element("li", "", Num.sentence(l)));
        page.raw("</ul>").small("Scored: " + String.join(", ", in.sheets) + ".");
        in.cautions.forEach(c -> page.small(Num.sentence(c)));
        frame.end();
        frame.section("How often did it hold?").figure(ScorePicture.draw(in.score, in.wanted));
        rates(page, in.score);
        comparisons(page, in.score);
        page.small(Num.sentence(Scoring.RULES));
        frame.end();
        in.explained.filter(e -> !e.stopped()).ifPresent(e -> explained(frame, in, e));
        return frame.done();
    }

    private static void rates(Html page, SheetScore score) {
        List<List<String>> rows = new ArrayList<>();
        for (Rate r : score.rates()) {
            rows.add(List.of(
                    r.hand(),
                    r.object().isEmpty() ? "all" : r.object(),
                    r.grip().isEmpty() ? "all" : r.grip(),
                    r.held() + " of " + r.decided(),
                    r.decided() == 0 ? "\u2013" : Num.share(r.share()),
                    Num.interval(r.interval().low(), r.interval().high()) + (r.exact() ? ", exact" : ""),
                    "" + r.undecided(),
                    reasons(r.reasons())));
        }
        page.table(
                "Shares held",
                List.of(
                        "hand",
                        "object",
                        "grip",
                        "#held",
                        "#share",
                        Num.sentence("#95 % interval"),
                        "#not counted",
                        "reasons noted"),
                rows);
    }

    private static String reasons(Map<TrialReason, Integer> reasons) {
        return reasons.isEmpty()
                ? "\u2013"
                : reasons.entrySet().stream()
                        .map(e -> e.getKey().words() + " " + e.getValue())
                        .collect(Collectors.joining(", "));
    }

    private static void comparisons(Html page, SheetScore score) {
        if (score.comparisons().isEmpty()) {
            return;
        }
        List<List<String>> rows = new ArrayList<>();
        for (Comparison c : score.comparisons()) {
            rows.add(List.of(
                    c.second() + " less " + c.first(),
                    c.all() ? "all" : c.object() + ", " + c.grip(),
                    c.pairs()
                            .map(p -> p.all() + " pairs: " + p.gained() + " gained, " + p.lost() + " lost")
                            .orElse(c.secondHeld() + " of " + c.secondOf() + " against " + c.held() + " of " + c.of()),
                    points(c.difference()),
                    points(c.interval().low()) + " to " + points(c.interval().high()),
                    Num.digits(c.luck(), 2),
                    Num.digits(c.corrected(), 2),
                    c.needed().isPresent() ? "" + c.needed().getAsInt() : "\u2013"));
        }
        page.table(
                "Comparison of hands",
                List.of(
                        "hands",
                        "object, grip",
                        "trials",
                        "#difference, points",
                        Num.sentence("#95 % interval"),
                        "#chance of luck",
                        "#corrected",
                        "#still needed"),
                rows);
        page.small(
                Num.sentence(
                        "Still needed: more trials of each hand (pairs, if paired) after which a difference as great as"
                                + " the one seen would be found with a power of 80 % if it were the only question. A dash: found already, or no difference seen."));
        score.comparisons().stream()
                .filter(c -> !c.note().isEmpty())
                .forEach(c -> page.small(c.second() + " less " + c.first() + ": " + c.note() + "."));
    }

    private static String points(double share) {
        return Num.text(100 * share, 0);
    }

    private static void explained(PageFrame frame, Input in, ExplainResult e) {
        if (in.foretold) {
            Html page = frame.section("Was it foretold?").figure(ForetoldPicture.draw(e));
            page.small(Num.sentence(
                    "The prediction knows the places of the sheet, the friction as spread in hand.yaml (the same"
                            + " in all trials), and mass, pads and springs as in virtual trials. Level lines: the range that holds"
                            + " the count in 95 % of cases. Off: chance of luck below 5 %, corrected by Holm for "
                            + HtmlHand.counted(e.foretold().size(), "question") + "."));
            frame.end();
        }
        Html page = frame.section("Which assumptions explain it?").figure(SupportPicture.draw(e));
        if (in.diff.isEmpty()) {
            page.say("No edit is offered: the trials refute none of these assumptions.");
        } else {
            page.say("Offered, not applied:").raw("<pre>").text(in.diff).raw("</pre>");
        }
        page.small(Num.sentence(Explain.MODEL + " Measured places are taken as known to "
                + Num.mm(e.placing().shift()) + " and "
                + Num.text(Math.toDegrees(e.placing().turn()), 1) + " deg (one standard deviation)."));
        page.table(
                "The fitted chance, on closings it was not fitted to",
                List.of("object, grip", "#closings", "#held", "#bias, points", "#Brier score", "#of an ignorant one"),
                e.surfaces().stream().map(ScorePage::quality).toList());
        page.small("Bias: mean chance less share held, with one standard error. "
                + Num.sentence(
                        "Chances: " + Math.round(100 * BinomialIntervals.CONFIDENCE) + " % intervals throughout."));
        frame.end();
    }

    private static List<String> quality(HeldSurface.Quality q) {
        return List.of(
                q.object() + ", " + q.grip(),
                "" + q.closings(),
                Num.share(q.held()),
                Num.text(100 * q.bias(), 1) + " \u00b1 " + Num.text(100 * q.biasError(), 1),
                Num.text(q.sharpness(), 3),
                Num.text(q.held() * (1 - q.held()), 3));
    }
}
