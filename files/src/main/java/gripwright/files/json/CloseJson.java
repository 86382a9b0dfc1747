package gripwright.files.json;

import gripwright.closing.ChipReadings;
import gripwright.closing.ClosingDetail;
import gripwright.closing.Frame;
import gripwright.closing.Sensing;
import gripwright.math.Pose;
import gripwright.model.Finger;
import gripwright.model.GraspObject;
import gripwright.model.Grip;
import gripwright.model.Hand;
import gripwright.model.PadLayer;
import gripwright.model.Phalanx;
import gripwright.study.Sureness;
import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;
import org.jspecify.annotations.Nullable;

/** One closing with everything needed to check its statics with other means. Schema: docs/schema/close.schema.json. */
public final class CloseJson {
    private CloseJson() {}

    /** Without readings of chips. */
    public static String of(
            Origin origin,
            Hand hand,
            Grip grip,
            GraspObject object,
            ClosingDetail detail,
            boolean frames,
            @Nullable Sureness sureness) {
        return of(origin, hand, grip, object, detail, frames, sureness, null);
    }

    /**
     * @param frames also write the recorded moments of the run and the pad points their pressures belong to
     */
    public static String of(
            Origin origin,
            Hand hand,
            Grip grip,
            GraspObject object,
            ClosingDetail detail,
            boolean frames,
            @Nullable Sureness sureness,
            @Nullable ChipReadings readings) {
        return JsonText.of(json -> {
            origin.write(json, "close");
            json.text("grip", grip.name());
            json.object("conventions", CloseJson::conventions);
            json.object("conditions", j -> RunJson.conditions(j, detail.conditions()));
            json.object("criteria", j -> RunJson.criteria(j, detail.criteria()));
            json.object(
                    "numerics",
                    j -> j.whole("pad_rows", detail.numerics().padRows())
                            .whole("pad_columns", detail.numerics().padColumns())
                            .number("step_scale", detail.numerics().stepScale())
                            .number("viscosity_scale", detail.numerics().viscosityScale()));
            json.object("summary", j -> RunJson.summary(j, detail.summary()));
            json.text("reason", detail.reason());
            json.texts("cautions", detail.cautions());
            if (sureness != null) {
                json.object("sureness", j -> sureness(j, sureness));
            }
            json.object("object", j -> object(j, object, detail));
            json.number("table_height_m", detail.tableHeight());
            bodies(json, hand, detail);
            joints(json, detail);
            json.objects(
                    "motors",
                    detail.motors(),
                    (j, motor) -> j.text("name", motor.name())
                            .number("tension_N", motor.tension())
                            .number("wound_m", motor.wound()));
            contacts(json, detail);
            json.objects(
                    "first_touches",
                    detail.firstTouches(),
                    (j, touch) -> j.text("body", detail.bodies().get(touch.body()))
                            .number("tension_N", touch.tension())
                            .text("phase", word(touch.phase())));
            if (readings != null) {
                json.object("sensed", j -> readings(j, readings));
            }
            origin.writeAssumptions(json);
            if (frames) {
                frames(json, detail);
            }
        });
    }

    private static void conventions(JsonText json) {
        json.text("units", "SI; the unit stands at the end of each name, [-] where there is none")
                .text("world", "z up, table top at z = 0 before the lift, x the closing direction at the nominal place")
                .text(
                        "bodies",
                        "the palm, then the phalanges finger by finger, proximal first. Palm frame: origin in the "
                                + "middle of the pad's front, x closing direction, y across, z out of the palm. Phalanx "
                                + "frame: origin at its joint, x along it, y out of the pad, z the joint axis")
                .text("poses", "position of the body's origin; rotation row by row, its columns are the body's axes")
                .text(
                        "contacts",
                        "normal points from body into other; the force on other is normal_force_N * normal + "
                                + "tangential_force_N, on body the opposite")
                .text(
                        "statics",
                        "object: the contact forces on it and weight_N sum to zero, also in moments about any point. "
                                + "Joint: spring_moment + moment_arm_m * tension_N + the moment about its axis (or force "
                                + "along it, if it slides) of all contact forces on its body and the bodies farther out "
                                + "+ residual is zero; the arm's joints carry the whole hand");
    }

    private static void object(JsonText json, GraspObject object, ClosingDetail detail) {
        json.text("name", object.name())
                .number("mass_kg", object.mass())
                .text("surface", object.surface())
                .object("pose", j -> pose(j, detail.object()))
                .vector("centre_of_mass_m", detail.centreOfMass())
                .vector("weight_N", detail.weight());
        json.number("squeeze_force_limit_N", object.squeezeForce().orElse(Double.NaN))
                .number("squeeze_pressure_limit_Pa", object.squeezePressure().orElse(Double.NaN));
    }

    private static void pose(JsonText json, Pose pose) {
        json.vector("position_m", pose.position()).matrix("rotation", pose.rotation());
    }

    private static void bodies(JsonText json, Hand hand, ClosingDetail detail) {
        json.array("bodies", () -> {
            for (int i = 0; i < detail.bodies().size(); i++) {
                int body = i;
                json.object(() -> {
                    json.text("name", detail.bodies().get(body));
                    pose(json, detail.bodyPoses().get(body));
                    geometry(json, hand, detail.bodies().get(body));
                });
            }
        });
    }

    private static void geometry(JsonText json, Hand hand, String body) {
        if (body.equals("palm")) {
            json.number("length_m", hand.palm().sizeX())
                    .number("width_m", hand.palm().sizeY())
                    .number("bone_m", hand.palm().bone());
            pad(json, hand.palm().pad());
            return;
        }
        for (Finger finger : hand.fingers()) {
            for (int i = 0; i < finger.phalanges().size(); i++) {
                if (body.equals(finger.name() + " " + (i + 1))) {
                    Phalanx phalanx = finger.phalanges().get(i);
                    json.number("length_m", phalanx.length())
                            .number("width_m", phalanx.width())
                            .number("bone_m", phalanx.bone());
                    pad(json, phalanx.pad());
                    json.text("tip", word(phalanx.tip()));
                    return;
                }
            }
        }
        throw new IllegalArgumentException("body '" + body + "' is neither the palm nor a phalanx of " + hand.name());
    }

    private static void pad(JsonText json, PadLayer pad) {
        json.number("pad_length_m", pad.length())
                .number("pad_thickness_m", pad.thickness())
                .text("rubber", pad.rubber().name())
                .number("pad_modulus_Pa", pad.rubber().modulus());
    }

    private static void joints(JsonText json, ClosingDetail detail) {
        json.objects(
                "joints",
                detail.joints(),
                (j, joint) -> j.text("name", joint.name())
                        .text("body", detail.bodies().get(joint.body()))
                        .text("motion", joint.slides() ? "slides" : "turns")
                        .number(joint.slides() ? "value_m" : "value_rad", joint.value())
                        .vector("origin_m", joint.origin())
                        .vector("axis", joint.axis())
                        .number(joint.slides() ? "spring_rate_N_m" : "spring_rate_Nm_rad", joint.springRate())
                        .number(joint.slides() ? "rest_m" : "rest_rad", joint.rest())
                        .number(joint.slides() ? "lower_m" : "lower_rad", joint.lower())
                        .number(joint.slides() ? "upper_m" : "upper_rad", joint.upper())
                        .number(joint.slides() ? "spring_force_N" : "spring_moment_Nm", joint.springMoment())
                        .number("moment_arm_m", joint.momentArm())
                        .number("tension_N", joint.tension())
                        .number(joint.slides() ? "residual_N" : "residual_Nm", joint.residual()));
    }

    private static void contacts(JsonText json, ClosingDetail detail) {
        json.objects(
                "contacts",
                detail.contacts(),
                (j, contact) -> j.text("kind", word(contact.kind()))
                        .text("body", contact.body())
                        .text("other", contact.other())
                        .vector("point_m", contact.point())
                        .vector("normal", contact.normal())
                        .number("normal_force_N", contact.normalForce())
                        .vector("tangential_force_N", contact.tangentialForce())
                        .number("friction", contact.friction())
                        .number("pressure_Pa", contact.pressure()));
    }

    private static void readings(JsonText json, ChipReadings r) {
        json.text("policy", r.policy())
                .text("reading", Sensing.READING)
                .text("time", Sensing.TIME)
                .number("period_s", r.period())
                .number("end_s", r.end())
                .number("hand_moved_m", r.moved())
                .text("note", r.story());
        json.objects(
                "stops",
                r.stops(),
                (j, s) -> j.text("what", s.what())
                        .whole("chip", s.chip())
                        .number("arrived_s", s.arrived())
                        .number("stopped_s", s.stopped()));
        json.objects(
                "chips",
                r.chips(),
                (j, c) -> j.text("pad", c.strip())
                        .whole("index", c.index())
                        .text("body", c.body())
                        .number("along_m", c.along())
                        .number("across_m", c.across())
                        .number("zero_Pa", c.zero())
                        .number("threshold_Pa", c.threshold())
                        .number("greatest_Pa", c.greatest())
                        .numbers("sampled_s", of(c, ChipReadings.Value::sampled))
                        .numbers("arrived_s", of(c, ChipReadings.Value::arrived))
                        .numbers("pressure_Pa", of(c, ChipReadings.Value::pressure))
                        .numbers("rise_Pa", of(c, ChipReadings.Value::rise))
                        .numbers("saturated", of(c, v -> v.saturated() ? 1 : 0)));
    }

    private static double[] of(ChipReadings.Chip chip, ToDoubleFunction<ChipReadings.Value> what) {
        return chip.values().stream().mapToDouble(what).toArray();
    }

    private static void frames(JsonText json, ClosingDetail detail) {
        json.objects(
                "pad_points",
                detail.padPoints(),
                (j, point) -> j.text("body", detail.bodies().get(point.body()))
                        .vector("place_m", point.place())
                        .vector("normal", point.normal())
                        .number("area_m2", point.area()));
        json.objects("frames", detail.frames(), (j, frame) -> {
            j.text("phase", word(frame.phase()))
                    .numbers("tension_N", array(frame.tension()))
                    .numbers("joint_angles_rad", array(frame.jointAngles()))
                    .objects("bodies", frame.bodies(), CloseJson::pose)
                    .object("object", o -> pose(o, frame.object()))
                    .numbers("body_force_N", array(frame.bodyForce()))
                    .numbers("pad_pressure_Pa", pressures(frame))
                    .number("table_height_m", frame.table());
        });
    }

    /** Rounded to whole pascals: pressures are kept as floats, and their further digits would say nothing. */
    private static double[] pressures(Frame frame) {
        double[] rounded = new double[frame.padPressure().length];
        for (int i = 0; i < rounded.length; i++) {
            rounded[i] = Math.rint(frame.padPressure()[i]);
        }
        return rounded;
    }

    private static double[] array(List<Double> values) {
        return values.stream().mapToDouble(Double::doubleValue).toArray();
    }

    /** PAD_ON_OBJECT as "pad on object". */
    private static String word(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }

    private static void sureness(JsonText json, Sureness s) {
        json.truth("clear", s.clear())
                .whole("held_runs", s.held().successes())
                .whole("decided_runs", s.held().trials())
                .whole("undecided_runs", s.held().undecided())
                .number("held_low", s.held().low())
                .number("held_high", s.held().high())
                .objects(
                        "turned_by",
                        s.flips(),
                        (j, flip) -> j.text("input", flip.input())
                                .text("change", flip.change())
                                .text("outcome", flip.outcome().words()));
    }
}
