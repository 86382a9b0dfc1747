package gripwright.files.json;

import gripwright.pad.Averaging;
import gripwright.pad.Bus;
import gripwright.pad.PadAnswer;
import gripwright.pad.ScanAnswer;
import gripwright.pad.TouchAnswer;
import java.util.List;

/** Results about pads with chips. Schemas: pad, scan and touch in docs/schema. */
public final class PadJson {
    private static final int POINTS = 41;

    private PadJson() {}

    public static String pads(Origin origin, List<PadAnswer> pads) {
        return JsonText.of(json -> {
            origin.write(json, "pad");
            json.objects("pads", pads, PadJson::pad);
            origin.writeAssumptions(json);
        });
    }

    private static void pad(JsonText json, PadAnswer a) {
        double t = a.design().overChip();
        json.text("name", a.design().name())
                .text("chip", a.design().chip().name())
                .number("over_board_m", a.design().overBoard())
                .number("over_chip_m", t)
                .number("pitch_m", a.design().pitch())
                .whole("chips_in_a_row", a.design().count())
                .number("peak_Pa_per_N", a.response().peak())
                .number("between_chips_Pa_per_N", a.strip().worst())
                .number("half_width_m", 2 * a.response().radius(0.5))
                .number("cross_talk", a.strip().crossTalk())
                .number("recommended_pitch_m", a.strip().recommendedPitch())
                .number("widest_pitch_m", a.strip().widestPitch())
                .objects(
                        "blind_gaps",
                        a.strip().gaps(),
                        (j, gap) -> j.number("from_m", gap.from()).number("to_m", gap.to()))
                .number("limit_best_N", a.limitBest())
                .number("limit_worst_N", a.limitWorst())
                .number("saturation_N", a.saturation())
                .number("blunt_saturation_N", a.bluntSaturation())
                .number("dynamic_range_dB", a.dynamicRange())
                .number("thinnest_over_chip_m", a.thinnest())
                .number("place_bound_m", a.bounds().place())
                .number("force_bound", a.bounds().force())
                .number(
                        "place_bound_without_gain_error_m",
                        a.boundsWithoutError().place())
                .number("friction_shift_m", a.frictionShift())
                .number("unfilled_Pa_per_N", a.unfilled())
                .number("bubble_for_tenth_m3", a.bubble())
                .number("share_left_after_one_pull", a.left())
                .number("ambient_ratio", a.response().ambientRatio())
                .number("filled_cavity_Pa_per_K", a.perKelvin())
                .truth("heat_measured", !Double.isNaN(a.design().chip().heat()))
                .object(
                        "drift_over_closing",
                        j -> j.number("time_s", a.drift().time())
                                .number("heat_least_Pa", a.drift().heatLeast())
                                .number("heat_most_Pa", a.drift().heatMost())
                                .number("weather_Pa", a.drift().weather())
                                .number("door_Pa", a.drift().door()))
                .objects("averaging", a.averaging(), PadJson::averaging)
                .object("best_averaging", j -> averaging(j, a.best()))
                .object(
                        "area_bounds",
                        j -> j.number("along_m", a.area().along())
                                .number("across_m", a.area().across())
                                .number("force", a.area().force()))
                .number("pouring_takes_s", a.casting().total())
                .number("pot_life_s", a.casting().potLife())
                .number("pad_stiffness_N_per_m", a.padStiffness())
                .array("curve", () -> {
                    for (int i = 0; i < POINTS; i++) {
                        double x = 2.5 * t * i / (POINTS - 1);
                        json.object(() -> json.number("offset_m", x)
                                .number("normal_Pa_per_N", a.response().at(x))
                                .number("tangential_Pa_per_N", a.response().tangential(x)));
                    }
                })
                .objects(
                        "over_thickness",
                        a.thicknesses(),
                        (j, p) -> j.number("over_chip_m", p.overChip())
                                .number("peak_Pa_per_N", p.peak())
                                .number("recommended_pitch_m", p.recommendedPitch())
                                .number("widest_pitch_m", p.widestPitch()))
                .objects(
                        "over_hardness",
                        a.hardnesses(),
                        (j, p) -> j.number("modulus_Pa", p.modulus()).number("peak_Pa_per_N", p.peak()))
                .objects(
                        "round_probe",
                        a.probes(),
                        (j, p) -> j.number("indentation_m", p.indentation())
                                .number("force_N", p.force())
                                .number("contact_radius_m", p.radius())
                                .number("board_pressure_Pa", p.boardPressure()))
                .texts("warnings", a.warnings());
    }

    private static void averaging(JsonText json, Averaging a) {
        json.whole("readings", a.readings())
                .number("time_s", a.time())
                .number("noise_limit_N", a.noise())
                .number("drift_at_most_N", a.drift());
    }

    public static String scan(Origin origin, ScanAnswer scan) {
        return JsonText.of(json -> {
            origin.write(json, "scan");
            json.whole("chips", scan.chips()).text("timed_as", scan.chip().name());
            json.objects("schemes", scan.plans(), PadJson::plan);
            json.object("pull_up", j -> {
                j.number("least_ohm", scan.limits().map(Bus.PullUp::least).orElse(Double.NaN));
                j.number("greatest_ohm", scan.limits().map(Bus.PullUp::greatest).orElse(Double.NaN));
                j.text("fault", scan.electrical());
            });
            origin.writeAssumptions(json);
        });
    }

    private static void plan(JsonText json, Bus.Plan plan) {
        json.text("name", plan.scheme().label())
                .truth("possible", plan.possible())
                .number("period_s", plan.period())
                .number("age_s", plan.age())
                .number("with_temperature_s", plan.withTemperature())
                .number("mean_period_s", plan.mean())
                .text("obstacle", plan.obstacle());
    }

    public static String touch(Origin origin, double period, List<TouchAnswer> pads) {
        return JsonText.of(json -> {
            origin.write(json, "touch");
            json.number("scan_period_s", period);
            json.objects(
                    "pads",
                    pads,
                    (j, pad) -> j.text("name", pad.pad().name())
                            .number("threshold_deviations", pad.forces().deviations())
                            .number("threshold_N", pad.forces().threshold())
                            .number("detection_N", pad.forces().detection())
                            .number("delay_s", pad.forces().delay())
                            .number("stiffness_N_per_m", pad.forces().stiffness())
                            .number("peak_on_a_fixed_object_N", pad.forces().peak())
                            .number("threshold_over_a_chip_N", pad.overChip().threshold())
                            .number("detection_over_a_chip_N", pad.overChip().detection())
                            .number(
                                    "peak_on_a_fixed_object_over_a_chip_N",
                                    pad.overChip().peak())
                            .number("best_running_mean", pad.averaging())
                            .objects(
                                    "objects",
                                    pad.objects(),
                                    (k, o) -> k.text("name", o.name())
                                            .number("table_friction_N", o.friction())
                                            .truth("noticed", o.result().noticed())
                                            .number("moved_m", o.result().moved())
                                            .number("peak_N", o.result().peak())
                                            .number(
                                                    "moved_over_a_chip_m",
                                                    o.overChip().moved())
                                            .number(
                                                    "peak_over_a_chip_N",
                                                    o.overChip().peak())
                                            .truth("knocked_away", o.knocked())));
            origin.writeAssumptions(json);
        });
    }
}
