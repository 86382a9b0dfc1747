package gripwright.files.json;

import gripwright.study.PlanGoal;
import gripwright.study.TrialPlan;

/** A plan of trials. Schema: docs/schema/plan.schema.json. */
public final class PlanJson {
    private PlanJson() {}

    public static String of(Origin origin, TrialPlan plan) {
        return JsonText.of(json -> {
            origin.write(json, "plan");
            json.whole("seed", plan.seed()).texts("hands", plan.hands());
            json.object("goal", g -> goal(g, plan));
            json.objects(
                    "parts",
                    plan.parts(),
                    (j, part) -> j.text("object", part.object())
                            .text("grip", part.grip())
                            .whole("per_hand", part.perHand()));
            json.objects("trials", plan.trials(), (j, t) -> {
                j.whole("trial", t.number())
                        .whole("day", t.day())
                        .whole("block", t.block())
                        .text("hand", t.hand())
                        .text("object", t.object())
                        .text("grip", t.grip())
                        .text("pair", t.pair());
                if (t.placed().isPresent()) {
                    j.number("x_m", t.placed().get().x())
                            .number("y_m", t.placed().get().y())
                            .number("turn_rad", t.placed().get().turn());
                } else {
                    j.none("x_m").none("y_m").none("turn_rad");
                }
            });
            origin.writeAssumptions(json);
        });
    }

    private static void goal(JsonText json, TrialPlan plan) {
        json.number("confidence", PlanGoal.CONFIDENCE)
                .number("expected_success", plan.expected())
                .whole("trials_per_hand", plan.perHand())
                .text("method", plan.goal().method());
        if (plan.goal() instanceof PlanGoal.Difference d) {
            json.number("difference", d.points()).number("power", d.power()).truth("paired", d.paired());
            json.none("interval_width");
        } else if (plan.goal() instanceof PlanGoal.Width w) {
            json.none("difference").none("power").truth("paired", false).number("interval_width", w.width());
        }
    }
}
