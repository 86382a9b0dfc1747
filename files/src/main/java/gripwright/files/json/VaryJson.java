package gripwright.files.json;

import gripwright.closing.Criteria;
import gripwright.study.VaryResult;
import gripwright.study.VaryResult.Difference;

/** What changes of a hand do. Schema: docs/schema/vary.schema.json. */
public final class VaryJson {
    private VaryJson() {}

    public static String of(Origin origin, Criteria criteria, VaryResult vary) {
        return JsonText.of(json -> {
            origin.write(json, "vary");
            json.whole("seed", vary.seed())
                    .whole("runs_per_object", vary.runs())
                    .whole("places_per_object", vary.places())
                    .number("span_m", vary.span())
                    .truth("complete", !vary.stopped());
            json.object("criteria", j -> RunJson.criteria(j, criteria));
            json.objects(
                    "objects",
                    vary.objects(),
                    (j, tried) -> j.text("object", tried.object()).text("grip", tried.grip()));
            json.object("as_it_is", j -> {
                j.number("success", vary.success().share())
                        .number("success_low", vary.success().low())
                        .number("success_high", vary.success().high());
                difference(j, "area", "_m2", vary.area());
                j.whole("undecided", vary.undecided());
            });
            json.objects("effects", vary.effects(), (j, effect) -> {
                j.text("quantity", effect.quantity())
                        .text("change", effect.change())
                        .text("kind", effect.kind().words())
                        .truth("possible", effect.possible())
                        .text("impossible", effect.impossible());
                difference(j, "success", "", effect.success());
                difference(j, "area", "_m2", effect.area());
                j.whole("undecided", effect.undecided());
            });
            json.text("best", vary.best().map(VaryResult.Effect::words).orElse(""));
            origin.writeAssumptions(json);
        });
    }

    private static void difference(JsonText json, String name, String unit, Difference d) {
        json.number(name + unit, d.value())
                .number(name + "_low" + unit, d.low())
                .number(name + "_high" + unit, d.high());
    }
}
