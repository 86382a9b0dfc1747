package gripwright.files.json;

import gripwright.closing.PullResult;
import gripwright.study.GripStrength.Figures;
import gripwright.study.GripStrength.OfFinger;
import gripwright.study.GripStrength.OnPipe;
import java.util.Optional;

/** Grip figures on pipes. Schema: docs/schema/strength.schema.json. */
public final class StrengthJson {
    private StrengthJson() {}

    /** @param how to measure the same, in words */
    public static String of(Origin origin, Figures figures, String how) {
        return JsonText.of(json -> {
            origin.write(json, "strength");
            json.text("grip", figures.grip()).text("surface", figures.surface()).text("how_to_measure", how);
            json.objects("pipes", figures.pipes(), StrengthJson::pipe);
            json.text("finger_pipe", figures.fingerPipe().size());
            json.objects("fingers", figures.fingers(), StrengthJson::finger);
            origin.writeAssumptions(json);
        });
    }

    private static void pipe(JsonText json, OnPipe p) {
        json.text("pipe", p.pipe().size())
                .number("outside_m", p.pipe().diameter())
                .text("outcome", p.outcome().words())
                .number("squeeze_N", p.squeeze())
                .number("cut_normal_rad", p.splitNormal());
        least(json, "pull", "_N", p.pull());
        least(json, "twist", "_Nm", p.twist());
    }

    private static void least(JsonText json, String name, String unit, Optional<PullResult> test) {
        json.number(name + unit, test.map(PullResult::peak).orElse(Double.NaN))
                .text(name + "_gives_way", test.map(r -> r.kind().words()).orElse(""));
    }

    private static void finger(JsonText json, OfFinger f) {
        json.text("finger", f.finger()).text("outcome", f.outcome().words()).number("force_N", f.force());
    }
}
