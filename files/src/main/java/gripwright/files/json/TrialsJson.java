package gripwright.files.json;

import gripwright.closing.Criteria;
import gripwright.closing.Outcome;
import gripwright.study.Proportion;
import gripwright.study.TrialsResult;

/** Virtual trials. Schema: docs/schema/trials.schema.json. */
public final class TrialsJson {
    private TrialsJson() {}

    /** @param complete false if the trials were stopped before their end */
    public static String of(
            Origin origin, Criteria criteria, double wantedSuccess, TrialsResult trials, boolean complete) {
        return JsonText.of(json -> {
            origin.write(json, "trials");
            json.whole("seed", trials.seed())
                    .whole("runs_per_pair", trials.runsPerPair())
                    .truth("complete", complete)
                    .text(
                            "conventions",
                            "shares from 0 to 1 with 95 % Wilson score intervals; undecided runs are in neither held "
                                    + "nor decided; null = no decided run");
            json.object("criteria", j -> RunJson.criteria(j, criteria));
            json.number("wanted_success", wantedSuccess);
            json.object(
                    "weighted",
                    j -> j.number("share", trials.weighted().share())
                            .number("low", trials.weighted().low())
                            .number("high", trials.weighted().high()));
            json.objects(
                    "best",
                    trials.best(),
                    (j, best) -> j.text("object", best.object())
                            .text("grip", best.grip())
                            .object("success", s -> share(s, best.success())));
            json.objects("pairs", trials.pairs(), TrialsJson::pair);
            origin.writeAssumptions(json);
        });
    }

    private static void pair(JsonText json, TrialsResult.Pair pair) {
        json.text("object", pair.object()).text("grip", pair.grip());
        json.object("success", s -> share(s, pair.success()));
        json.object("outcomes", o -> {
            for (Outcome outcome : Outcome.values()) { // the map's own order is not fixed
                Integer count = pair.outcomes().get(outcome);
                if (count != null && count > 0) {
                    o.whole(outcome.words(), count);
                }
            }
        });
        json.objects(
                "influence",
                pair.influence(),
                (j, influence) -> j.text("input", influence.input()).number("strength", influence.strength()));
        json.array("examples", () -> {
            for (Outcome outcome : Outcome.values()) {
                if (pair.examples().containsKey(outcome)) {
                    json.object(() -> {
                        json.text("outcome", outcome.words());
                        RunJson.conditions(
                                json,
                                java.util.Objects.requireNonNull(pair.examples().get(outcome)));
                    });
                }
            }
        });
    }

    private static void share(JsonText json, Proportion p) {
        json.whole("held", p.successes())
                .whole("decided", p.trials())
                .whole("undecided", p.undecided())
                .number("share", p.share())
                .number("low", p.low())
                .number("high", p.high());
    }
}
