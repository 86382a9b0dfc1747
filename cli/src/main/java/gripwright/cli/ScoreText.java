package gripwright.cli;

import gripwright.files.AssumptionEdit;
import gripwright.study.Explain;
import gripwright.study.ExplainResult;
import gripwright.study.ExplainResult.Estimate;
import gripwright.study.ExplainResult.Foretold;
import gripwright.study.HeldSurface;
import gripwright.study.Scoring;
import gripwright.study.SheetScore;
import gripwright.study.SheetScore.Comparison;
import gripwright.study.SheetScore.Rate;
import gripwright.units.QuantityText;
import java.util.Optional;

/** Scored trials as tables. */
final class ScoreText {
    private ScoreText() {}

    static String of(SheetScore score, Optional<ExplainResult> explained, boolean foretold) {
        StringBuilder text = new StringBuilder(rates(score).toString());
        if (!score.comparisons().isEmpty()) {
            text.append("\n\n").append(comparisons(score));
        }
        text.append("\n\n").append(Words.wrapped(Scoring.RULES));
        explained.filter(e -> !e.stopped()).ifPresent(e -> {
            if (foretold) {
                text.append("\n\n").append(foretold(e));
            }
            text.append("\n\n").append(estimates(e));
        });
        return text.toString();
    }

    private static Table rates(SheetScore score) {
        Table table = new Table(
                "lllrrrrl", "hand", "object", "grip", "held", "of", "95 % interval", "not counted", "mostly fails by");
        for (Rate r : score.rates()) {
            table.row(
                    r.hand(),
                    r.object().isEmpty() ? "all" : r.object(),
                    r.grip().isEmpty() ? "all" : r.grip(),
                    "" + r.held(),
                    "" + r.decided(),
                    Say.interval(r.interval().low(), r.interval().high()) + (r.exact() ? " exact" : "      "),
                    "" + r.undecided(),
                    r.outcomes().entrySet().stream()
                            .filter(e -> e.getKey().decided())
                            .max(java.util.Map.Entry.comparingByValue())
                            .map(e -> Say.outcome(e.getKey()) + " (" + e.getValue() + ")")
                            .orElse("-"));
        }
        return table;
    }

    private static Table comparisons(SheetScore score) {
        Table table = new Table(
                "lllrrrrr",
                "second less first",
                "object, grip",
                "trials",
                "points",
                "95 % interval",
                "luck",
                "corrected",
                "still needed");
        for (Comparison c : score.comparisons()) {
            table.row(
                    c.second() + " less " + c.first(),
                    c.all() ? "all" : c.object() + ", " + c.grip(),
                    c.pairs()
                            .map(p -> p.all() + " pairs: +" + p.gained() + " -" + p.lost())
                            .orElse(c.secondHeld() + "/" + c.secondOf() + " and " + c.held() + "/" + c.of()),
                    points(c.difference()),
                    points(c.interval().low()) + " to " + points(c.interval().high()),
                    chance(c.luck()),
                    chance(c.corrected()),
                    c.needed().isPresent() ? "" + c.needed().getAsInt() : "-");
        }
        return table;
    }

    private static Table foretold(ExplainResult e) {
        Table table = new Table(
                "llrrrrrl", "object", "grip", "predicted", "chance gives", "seen", "luck", "corrected", "prediction");
        for (Foretold f : e.foretold()) {
            table.row(
                    f.object(),
                    f.grip(),
                    Say.percent(f.share()),
                    Say.interval(f.low(), f.high()),
                    f.held() + " of " + f.decided(),
                    chance(f.luck()),
                    chance(f.corrected()),
                    f.off() ? "off by more than chance" : "within chance");
        }
        return table;
    }

    private static Table estimates(ExplainResult e) {
        Table table =
                new Table("lrrrrrl", "assumption", "trials", "times", "95 % interval", "luck", "corrected", "so it is");
        for (Estimate one : e.estimates()) {
            table.row(
                    one.words(),
                    "" + one.trials(),
                    number(one.value()),
                    (one.openLow() ? "< " : "") + number(one.low()) + " to " + (one.openHigh() ? "> " : "")
                            + number(one.high()),
                    chance(one.luck()),
                    chance(one.corrected()),
                    one.silent() ? "not told" : one.off() ? "refuted" : one.allows(1) ? "supported" : "in doubt");
        }
        return table;
    }

    /** What is offered, and how far to trust it. */
    static String offered(ExplainResult e, Optional<AssumptionEdit.Edit> edit) {
        if (e.stopped()) {
            return "stopped  after " + e.closings() + " of " + e.wanted()
                    + " closings: no prediction and no update yet; the same command goes on from there";
        }
        String diff = edit.map(AssumptionEdit.Edit::diff).orElse("");
        double worst = e.surfaces().stream()
                .mapToDouble(HeldSurface.Quality::bias)
                .map(Math::abs)
                .max()
                .orElse(0);
        return (diff.isEmpty()
                        ? "No edit is offered: these trials refute none of the assumptions above."
                        : "Offered, not applied:\n\n" + diff.stripTrailing())
                + "\n\n"
                + Words.wrapped(Explain.MODEL + " " + e.closings()
                        + " closings were made; on closings it was not fitted to, the fitted chance of an object and grip"
                        + " is off by at most " + QuantityText.number(100 * worst, 2) + " points on average.");
    }

    private static String number(double value) {
        return QuantityText.number(value, 2);
    }

    private static String points(double share) {
        return Double.isNaN(share) ? "-" : "" + Math.round(100 * share);
    }

    private static String chance(double p) {
        return p < 1e-4 ? "<0.0001" : QuantityText.number(p, 2);
    }
}
