package gripwright.files.json;

import gripwright.closing.Criteria;
import gripwright.study.DesignChange;
import gripwright.study.TrialsResult;
import gripwright.study.VaryResult;
import gripwright.study.VaryResult.Difference;
import java.util.List;
import java.util.Optional;

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
            json.objects("effects", vary.effects(), VaryJson::effect);
            json.text("best", vary.best().map(VaryResult.Effect::words).orElse(""));
            vary.again()
                    .ifPresentOrElse(e -> json.object("best_again", j -> effect(j, e)), () -> json.none("best_again"));
            origin.writeAssumptions(json);
        });
    }

    /**
     * Reads what {@link #of} wrote.
     *
     * @param inputs hash of the project's files now
     * @return empty if it was made from other inputs
     * @throws IllegalArgumentException if it is no such result
     */
    public static Optional<VaryResult> read(String text, String inputs) {
        JsonTree json = JsonTree.of(text);
        if (!json.text("kind").equals("gripwright vary 1")) {
            throw new IllegalArgumentException("its kind is '" + json.text("kind") + "'; expected 'gripwright vary 1'");
        }
        if (!json.text("inputs_sha256").equals(inputs)) {
            return Optional.empty();
        }
        JsonTree now = json.in("as_it_is");
        List<VaryResult.Effect> effects =
                json.all("effects").stream().map(VaryJson::effect).toList();
        return Optional.of(new VaryResult(
                (long) json.number("seed"),
                (int) json.number("runs_per_object"),
                (int) json.number("places_per_object"),
                json.number("span_m"),
                json.all("objects").stream()
                        .map(o -> new VaryResult.Tried(o.text("object"), o.text("grip")))
                        .toList(),
                new TrialsResult.Weighted(now.number("success"), now.number("success_low"), now.number("success_high")),
                (int) now.number("undecided"),
                difference(now, "area", "_m2"),
                effects,
                // how many there would have been is only kept as whether all are there
                json.truth("complete") ? effects.size() : effects.size() + 1,
                json.find("best_again").map(VaryJson::effect)));
    }

    private static VaryResult.Effect effect(JsonTree json) {
        return new VaryResult.Effect(
                json.text("quantity"),
                json.text("change"),
                json.text("kind").equals(DesignChange.Kind.DESIGN.words())
                        ? DesignChange.Kind.DESIGN
                        : DesignChange.Kind.FAULT,
                difference(json, "success", ""),
                difference(json, "area", "_m2"),
                (int) json.number("undecided"),
                json.text("impossible"));
    }

    private static Difference difference(JsonTree json, String name, String unit) {
        return new Difference(
                json.number(name + unit), json.number(name + "_low" + unit), json.number(name + "_high" + unit));
    }

    private static void effect(JsonText json, VaryResult.Effect effect) {
        json.text("quantity", effect.quantity())
                .text("change", effect.change())
                .text("kind", effect.kind().words())
                .truth("possible", effect.possible())
                .text("impossible", effect.impossible());
        difference(json, "success", "", effect.success());
        difference(json, "area", "_m2", effect.area());
        json.whole("undecided", effect.undecided());
    }

    private static void difference(JsonText json, String name, String unit, Difference d) {
        json.number(name + unit, d.value())
                .number(name + "_low" + unit, d.low())
                .number(name + "_high" + unit, d.high());
    }
}
