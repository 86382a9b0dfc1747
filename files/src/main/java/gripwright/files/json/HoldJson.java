package gripwright.files.json;

import gripwright.closing.Endurance;
import gripwright.closing.GraspStiffness;
import gripwright.closing.HoldDetail;
import gripwright.closing.HoldPlan;
import gripwright.closing.LoadResult;
import gripwright.closing.PressResult;
import gripwright.closing.PullResult;
import gripwright.closing.Release;
import gripwright.contact.WrenchSpace;
import gripwright.model.GraspObject;
import gripwright.model.Grip;

/** Tests of a hold. Schema: docs/schema/hold.schema.json. */
public final class HoldJson {
    private HoldJson() {}

    public static String of(Origin origin, Grip grip, GraspObject object, HoldDetail hold) {
        return JsonText.of(json -> {
            origin.write(json, "hold");
            json.text("object", object.name()).text("grip", grip.name());
            json.text(
                    "conventions",
                    "SI; axes are those of the world (z up, x the closing direction), length 1; displacements are of the"
                            + " centre of mass in the hand; turns are right-handed. A pull that slips had its peak well"
                            + " before the end of the travel, one that yields was still rising. The stiffness counts all"
                            + " contacts as sticking. The wrench measure assumes contact forces that this hand cannot"
                            + " choose: it ranks contact sets, the pulls decide");
            json.object("conditions", j -> RunJson.conditions(j, hold.closing().conditions()));
            json.object("criteria", j -> RunJson.criteria(j, hold.closing().criteria()));
            json.object("summary", j -> RunJson.summary(j, hold.closing().summary()));
            json.text("reason", hold.closing().reason());
            json.truth("tested", hold.tested());
            json.whole("undecided_tests", hold.undecided());
            json.vector("weight_N", hold.closing().weight());
            json.object(
                    "plan",
                    j -> j.number("travel_m", hold.plan().travel())
                            .number("turn_rad", hold.plan().turn())
                            .number("acceleration_m_s2", hold.plan().acceleration()));
            json.objects("pulls", hold.pulls(), HoldJson::pull);
            json.objects("turns", hold.turns(), HoldJson::turn);
            json.objects("gravity_turned", hold.gravity(), HoldJson::load);
            json.objects("pulses", hold.pulses(), HoldJson::load);
            hold.steadyTurn()
                    .ifPresentOrElse(l -> json.object("steady_turn", j -> load(j, l)), () -> json.none("steady_turn"));
            json.objects("greatest_acceleration", hold.endurance(), HoldJson::endurance);
            hold.stiffness()
                    .ifPresentOrElse(k -> json.object("stiffness", j -> stiffness(j, k)), () -> json.none("stiffness"));
            hold.wrenches()
                    .ifPresentOrElse(
                            q -> json.object("wrench_space", j -> wrenches(j, q)), () -> json.none("wrench_space"));
            hold.release()
                    .ifPresentOrElse(r -> json.object("letting_go", j -> release(j, r)), () -> json.none("letting_go"));
            json.objects("tasks", hold.presses(), HoldJson::press);
            origin.writeAssumptions(json);
        });
    }

    private static void press(JsonText json, PressResult p) {
        json.text("task", p.task().name())
                .text("finger", p.task().finger())
                .text("verdict", p.verdict().words())
                .text("trouble", p.trouble())
                .vector("place_m", p.task().point())
                .vector("toward", p.task().direction())
                .number("wanted_N", p.task().force())
                .number("wanted_travel_m", p.task().travel())
                .number("greatest_tension_N", p.task().greatestTension())
                .number("greatest_N", p.greatest())
                .text("reach", p.reach().words())
                .number("miss_m", p.miss())
                .text("met", p.met())
                .number("touch_tension_N", p.touchTension())
                .numbers(
                        "posture_rad",
                        p.posture().stream().mapToDouble(Double::doubleValue).toArray())
                .number("finger_N", p.fingerForce())
                .number("finger_after_travel_N", p.lastForce())
                .number("needed_tension_N", p.neededTension())
                .number("off_rad", p.off())
                .truth("slides", p.slides())
                .number("followed_m", p.followed())
                .number("hold_N", p.holdForce())
                .number("give_m", p.give())
                .number("turned_rad", p.turned())
                .number("moved_share", p.share());
        json.object("push", j -> pull(j, p.push()));
    }

    private static void pull(JsonText json, PullResult p) {
        json.vector("direction", p.axis())
                .text("gives_way", p.kind().words())
                .number("peak_N", p.peak())
                .number("peak_at_m", p.peakAt())
                .number("nearly_peak_at_m", p.nearlyAt())
                .number("reached_m", p.reached())
                .number("lost_at_m", p.lostAt())
                .number("at_1_mm_N", p.loadAt(HoldPlan.FIRST_GIVE))
                .texts("first_to_give_way", p.first())
                .number("load_then_N", p.firstLoad())
                .text("trouble", p.trouble())
                .objects(
                        "curve",
                        p.curve(),
                        (j, s) -> j.number("moved_m", s.moved()).number("load_N", s.load()));
    }

    private static void turn(JsonText json, PullResult p) {
        json.vector("axis", p.axis())
                .text("gives_way", p.kind().words())
                .number("peak_Nm", p.peak())
                .number("peak_at_rad", p.peakAt())
                .number("nearly_peak_at_rad", p.nearlyAt())
                .number("reached_rad", p.reached())
                .number("lost_at_rad", p.lostAt())
                .texts("first_to_give_way", p.first())
                .number("load_then_Nm", p.firstLoad())
                .text("trouble", p.trouble())
                .objects(
                        "curve",
                        p.curve(),
                        (j, s) -> j.number("turned_rad", s.moved()).number("load_Nm", s.load()));
    }

    private static void load(JsonText json, LoadResult l) {
        json.vector("axis", l.axis())
                .text("kept", l.kept().words())
                .number("moved_m", l.moved())
                .number("turned_rad", l.turned())
                .number("at_rest_m", l.atRest());
    }

    private static void endurance(JsonText json, Endurance e) {
        json.vector("axis", e.axis())
                .number("survived_m_s2", e.survived())
                .number("failed_m_s2", e.failed())
                .truth("undecided", e.undecided());
    }

    private static void stiffness(JsonText json, GraspStiffness k) {
        json.numbers(
                        "matrix",
                        k.matrix().stream().mapToDouble(Double::doubleValue).toArray())
                .vector("softest_push", k.softestPush())
                .number("push_stiffness_N_m", k.pushStiffness())
                .vector("softest_turn", k.softestTurn())
                .number("turn_stiffness_Nm_rad", k.turnStiffness())
                .truth("stable", k.stable());
    }

    private static void wrenches(JsonText json, WrenchSpace.Quality q) {
        json.truth("force_closure", q.closed())
                .number("largest_ball", q.exact())
                .number("largest_ball_linearised", q.linearised())
                .whole("cone_edges", q.edges())
                .number("torque_divided_by_m", q.length())
                .whole("contact_points", q.contacts())
                .whole("rank", q.rank());
    }

    private static void release(JsonText json, Release r) {
        json.text("ended", r.how().words())
                .number("still_wound", r.letGoAt())
                .number("dragged_m", r.dragged())
                .number("palm_force_N", r.palmForce())
                .text("trouble", r.trouble())
                .objects(
                        "fingers",
                        r.fingers(),
                        (j, f) -> j.text("finger", f.finger())
                                .number("angle_rad", f.angle())
                                .number("force_N", f.force())
                                .number("tension_N", f.tension()));
    }
}
