package gripwright.files.json;

import gripwright.signal.Calibration;
import gripwright.signal.Figure;
import gripwright.signal.FigureKind;
import gripwright.signal.Taxel;
import java.util.List;
import java.util.Locale;

/** A calibration. Schema: calibrate in docs/schema. */
public final class CalibrationJson {
    private CalibrationJson() {}

    public static String of(Origin origin, Calibration c, String log, List<String> remarks) {
        return JsonText.of(json -> {
            origin.write(json, "calibrate");
            json.text("log", log)
                    .text("unit", c.unit())
                    .text("pressed_by", c.plate() ? "plate" : "probe")
                    .whole("rows", c.rows())
                    .number("step_s", c.step())
                    .whole("gaps", c.gaps())
                    .number("top_N", c.top())
                    .whole("cycles", c.cycles())
                    .number("cycle_s", c.cycleTime())
                    .number("false_alarm", c.rates().falseAlarm())
                    .number("miss", c.rates().miss())
                    .whole("zero_readings", c.rates().zeros())
                    .truth("own_clock", c.ownClock());
            told(json, "lag_s", c.lag());
            told(json, "skew", c.skew());
            json.number("reference_temperature_degC", c.temperature0()).number("reference_ambient_Pa", c.ambient0());
            json.objects("taxels", c.taxels(), CalibrationJson::taxel);
            json.objects(
                    "cross_talk",
                    c.crossTalk(),
                    (j, s) -> j.whole("pressed", s.pressed())
                            .whole("reads", s.reads())
                            .number("slope_per_N", s.slope())
                            .number("share", s.share())
                            .number("low", s.interval().low())
                            .number("high", s.interval().high()));
            json.text("cross_talk_refused", c.crossTalkRefusal().orElse(""));
            json.texts("notes", c.notes()).texts("remarks", remarks);
            origin.writeAssumptions(json);
        });
    }

    private static void told(JsonText json, String name, Calibration.Told told) {
        json.object(
                name,
                j -> j.number("value", told.value())
                        .number("low", told.interval().low())
                        .number("high", told.interval().high())
                        .text("refused", told.refusal().orElse("")));
    }

    private static void taxel(JsonText json, Taxel t) {
        json.text("column", t.column())
                .text("pad", t.pad())
                .whole("number", t.number())
                .text("state", t.state().words())
                .text("words", t.words())
                .truth("recast", t.recast())
                .whole("spikes", t.spikes());
        json.object("figures", j -> {
            for (FigureKind kind : FigureKind.values()) {
                Figure f = t.figures().get(kind);
                if (f != null) {
                    j.object(
                            kind.name().toLowerCase(Locale.ROOT),
                            v -> v.number("value", f.value())
                                    .number("low", f.interval().low())
                                    .number("high", f.interval().high())
                                    .text("refused", f.refusal().orElse("")));
                }
            }
        });
        json.objects(
                "allan",
                t.allan(),
                (j, p) -> j.number("time_s", p.time())
                        .number("deviation", p.deviation())
                        .number("low", p.interval().low())
                        .number("high", p.interval().high()));
        json.numbers("loading", t.loading().stream().mapToDouble(d -> d).toArray());
        json.numbers("unloading", t.unloading().stream().mapToDouble(d -> d).toArray());
    }
}
