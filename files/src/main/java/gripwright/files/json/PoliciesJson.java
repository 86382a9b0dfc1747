package gripwright.files.json;

import gripwright.closing.Criteria;
import gripwright.study.PolicyResult;

/** What a drive policy is worth. Schema: docs/schema/policies.schema.json. */
public final class PoliciesJson {
    private PoliciesJson() {}

    public static String of(Origin origin, Criteria criteria, PolicyResult r) {
        return JsonText.of(json -> {
            origin.write(json, "policies");
            json.text("policy", r.policy())
                    .text("against", r.against())
                    .whole("seed", r.seed())
                    .whole("noise_seed", r.noiseSeed())
                    .whole("runs_per_row", r.wanted())
                    .truth("complete", !r.stopped())
                    .text("conventions", PolicyResult.DEFINITION);
            json.object("criteria", j -> RunJson.criteria(j, criteria));
            json.objects("rows", r.rows(), PoliciesJson::row);
            origin.writeAssumptions(json);
        });
    }

    private static void row(JsonText json, PolicyResult.Row row) {
        json.text("object", row.object())
                .text("grip", row.grip())
                .truth("possible", row.possible())
                .text("impossible", row.impossible())
                .whole("pairs", row.pairs())
                .whole("held_with_both", row.both())
                .whole("held_with_the_policy_only", row.gained())
                .whole("held_with_the_other_only", row.lost())
                .whole("undecided", row.undecided())
                .number("success_change", row.successChange())
                .number("success_low", row.success().low())
                .number("success_high", row.success().high())
                .number("moved_m", row.moved())
                .number("moved_against_m", row.movedAgainst())
                .number("moved_change_m", row.change())
                .number("moved_low_m", finite(row.changeInterval().low()))
                .number("moved_high_m", finite(row.changeInterval().high()))
                .number("placed_off_m", row.fromStart());
    }

    /** An interval without an end is written as null. */
    private static double finite(double value) {
        return Double.isFinite(value) ? value : Double.NaN;
    }
}
