package gripwright.files.json;

import gripwright.closing.Conditions;
import gripwright.closing.Criteria;
import gripwright.closing.Outcome;
import gripwright.closing.Policies;
import gripwright.study.Proportion;
import gripwright.study.TrialsResult;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalLong;

/** Virtual trials. Schema: docs/schema/trials.schema.json. */
public final class TrialsJson {
    private TrialsJson() {}

    /** Of a hand that pulls blind. */
    public static String of(Origin origin, Criteria criteria, double wantedSuccess, TrialsResult trials) {
        return of(origin, criteria, wantedSuccess, trials, Policies.BLIND.word(), OptionalLong.empty());
    }

    /**
     * @param policy word of the drive policy
     * @param noiseSeed of the chips, if they were asked
     */
    public static String of(
            Origin origin,
            Criteria criteria,
            double wantedSuccess,
            TrialsResult trials,
            String policy,
            OptionalLong noiseSeed) {
        return JsonText.of(json -> {
            origin.write(json, "trials");
            json.text("policy", policy);
            noiseSeed.ifPresent(seed -> json.whole("noise_seed", seed));
            json.whole("seed", trials.seed())
                    .whole("runs_per_pair", trials.runsPerPair())
                    .truth("complete", !trials.stopped())
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
            for (Map.Entry<Outcome, Integer> entry : pair.outcomes().entrySet()) {
                o.whole(entry.getKey().words(), entry.getValue());
            }
        });
        json.objects(
                "influence",
                pair.influence(),
                (j, influence) -> j.text("input", influence.input()).number("strength", influence.strength()));
        json.objects(
                "splits",
                pair.splits(),
                (j, split) -> j.text("input", split.input())
                        .text("side", split.side().name().toLowerCase(Locale.ROOT))
                        .number("threshold", split.threshold())
                        .whole("failed", split.failed())
                        .whole("runs", split.runs())
                        .whole("failed_elsewhere", split.failedElsewhere())
                        .whole("runs_elsewhere", split.runsElsewhere()));
        json.array("examples", () -> {
            for (Map.Entry<Outcome, Conditions> entry : pair.examples().entrySet()) {
                json.object(() -> {
                    json.text("outcome", entry.getKey().words());
                    RunJson.conditions(json, entry.getValue());
                });
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
