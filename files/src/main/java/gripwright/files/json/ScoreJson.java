package gripwright.files.json;

import gripwright.closing.Outcome;
import gripwright.files.AssumptionEdit;
import gripwright.study.ExplainResult;
import gripwright.study.ExplainResult.Estimate;
import gripwright.study.Scoring;
import gripwright.study.SheetScore;
import gripwright.study.SheetScore.Comparison;
import gripwright.study.SheetScore.Rate;
import gripwright.study.TrialReason;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** Scored trials. Schema: docs/schema/score.schema.json. */
public final class ScoreJson {
    private ScoreJson() {}

    /**
     * The whole document.
     *
     * @param sheets names of the files scored
     * @param explained what the closing model says, if it was asked
     * @param edit offered; empty if the model was not asked
     */
    public static String of(
            Origin origin,
            List<String> sheets,
            double wantedSuccess,
            SheetScore score,
            Optional<ExplainResult> explained,
            Optional<AssumptionEdit.Edit> edit) {
        return JsonText.of(json -> {
            origin.write(json, "score");
            json.texts("sheets", sheets)
                    .text("conventions", Scoring.RULES)
                    .number("wanted_success", wantedSuccess)
                    .texts("hands", score.hands());
            json.objects("rates", score.rates(), ScoreJson::rate);
            json.objects("comparisons", score.comparisons(), ScoreJson::comparison);
            if (explained.isPresent()) {
                json.object("explained", e -> explained(e, explained.get()));
            } else {
                json.none("explained");
            }
            json.array(
                    "edits",
                    () -> edit.ifPresent(e -> e.changes()
                            .forEach(c -> json.object(() -> json.text("file", c.file())
                                    .whole("line", c.line())
                                    .text("key", c.key())
                                    .text("before", c.before())
                                    .text("after", c.after())))));
            json.text("diff", edit.map(AssumptionEdit.Edit::diff).orElse(""));
            origin.writeAssumptions(json);
        });
    }

    private static void rate(JsonText json, Rate r) {
        json.text("scope", r.scope().name().toLowerCase(Locale.ROOT))
                .text("hand", r.hand())
                .text("object", r.object())
                .text("grip", r.grip())
                .whole("held", r.held())
                .whole("decided", r.decided())
                .whole("undecided", r.undecided())
                .number("share", r.share())
                .number("low", r.interval().low())
                .number("high", r.interval().high())
                .text("interval", r.exact() ? "Clopper-Pearson" : "Wilson");
        json.object("outcomes", o -> {
            for (Map.Entry<Outcome, Integer> e : r.outcomes().entrySet()) {
                o.whole(e.getKey().words(), e.getValue());
            }
        });
        json.object("reasons", o -> {
            for (Map.Entry<TrialReason, Integer> e : r.reasons().entrySet()) {
                o.whole(e.getKey().words(), e.getValue());
            }
        });
    }

    private static void comparison(JsonText json, Comparison c) {
        json.text("first", c.first())
                .text("second", c.second())
                .text("object", c.object())
                .text("grip", c.grip())
                .text("test", c.pairs().isPresent() ? "McNemar exact" : "Fisher exact")
                .whole("first_held", c.held())
                .whole("first_decided", c.of())
                .whole("second_held", c.secondHeld())
                .whole("second_decided", c.secondOf());
        if (c.pairs().isPresent()) {
            SheetScore.Pairs p = c.pairs().get();
            json.object(
                    "pairs",
                    j -> j.whole("both", p.both())
                            .whole("gained", p.gained())
                            .whole("lost", p.lost())
                            .whole("neither", p.neither())
                            .number("mid_p", p.midP()));
        } else {
            json.none("pairs");
        }
        json.number("difference", c.difference())
                .number("low", c.interval().low())
                .number("high", c.interval().high())
                .number("p", c.luck())
                .number("p_holm", c.corrected())
                .whole("left_out", c.left());
        if (c.needed().isPresent()) {
            json.whole("still_needed", c.needed().getAsInt());
        } else {
            json.none("still_needed");
        }
        json.text("note", c.note());
    }

    private static void explained(JsonText json, ExplainResult e) {
        json.text("hand", e.hand())
                .whole("trials", e.trials())
                .truth("complete", !e.stopped())
                .whole("closings", e.closings())
                .number("placing_shift_m", e.placing().shift())
                .number("placing_turn_rad", e.placing().turn());
        json.objects(
                "foretold",
                e.foretold(),
                (j, f) -> j.text("object", f.object())
                        .text("grip", f.grip())
                        .number("predicted", f.share())
                        .number("chance_low", f.low())
                        .number("chance_high", f.high())
                        .whole("held", f.held())
                        .whole("decided", f.decided())
                        .number("seen_low", f.seen().low())
                        .number("seen_high", f.seen().high())
                        .number("p", f.luck())
                        .number("p_holm", f.corrected())
                        .truth("off", f.off()));
        json.objects("friction", e.friction(), ScoreJson::estimate);
        e.common()
                .ifPresentOrElse(
                        c -> json.object("friction_all", j -> estimate(j, c)), () -> json.none("friction_all"));
        e.scatter().ifPresentOrElse(c -> json.object("scatter", j -> estimate(j, c)), () -> json.none("scatter"));
        json.numbers("friction_factors", e.factors()).numbers("scatter_factors", e.scatters());
        json.array("log_likelihood", () -> {
            for (double[] row : e.support()) {
                for (double v : row) {
                    json.number(v);
                }
            }
        });
        json.objects(
                "surfaces",
                e.surfaces(),
                (j, q) -> j.text("object", q.object())
                        .text("grip", q.grip())
                        .whole("closings", q.closings())
                        .whole("undecided", q.undecided())
                        .number("held", q.held())
                        .number("bias", q.bias())
                        .number("bias_error", q.biasError())
                        .number("brier", q.sharpness()));
    }

    private static void estimate(JsonText json, Estimate e) {
        json.text("of", e.subject())
                .number("factor", e.value())
                .number("low", e.low())
                .number("high", e.high())
                .truth("open_low", e.openLow())
                .truth("open_high", e.openHigh())
                .whole("trials", e.trials())
                .number("p", e.luck())
                .number("p_holm", e.corrected())
                .truth("off", e.off());
    }
}
