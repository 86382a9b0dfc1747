package gripwright.files.json;

import gripwright.closing.ClosingSummary;
import gripwright.closing.Conditions;
import gripwright.closing.Criteria;

/** The parts of a result that say what one run was and how it ended. */
final class RunJson {
    private RunJson() {}

    static void conditions(JsonText json, Conditions c) {
        json.number("x_m", c.x())
                .number("y_m", c.y())
                .number("turn_rad", c.turn())
                .number("height_m", c.height())
                .number("pad_friction_sd", c.padFriction())
                .number("table_friction_sd", c.tableFriction())
                .number("mass_sd", c.mass())
                .number("pad_stiffness_factor", c.padStiffness())
                .number("spring_rate_factor", c.springRate());
    }

    static void criteria(JsonText json, Criteria c) {
        json.number("landing_force_N", c.landingForce())
                .number("touch_force_N", c.touchForce())
                .number("lift_m", c.lift())
                .number("sink_m", c.sink())
                .number("thrown_m", c.thrown())
                .number("tilt_rad", c.tilt())
                .number("pushed_m", c.pushed());
    }

    static void summary(JsonText json, ClosingSummary s) {
        json.text("outcome", s.outcome().words())
                .number("travel_m", s.travel())
                .number("travel_x_m", s.travelX())
                .number("travel_y_m", s.travelY())
                .number("tilt_rad", s.tilt())
                .number("sink_m", s.sink())
                .number("landing_force_N", s.landingForce())
                .number("peak_force_N", s.peakForce())
                .number("peak_pressure_Pa", s.peakPressure())
                .whole("links", s.links())
                .number("object_residual_N", s.objectResidual())
                .number("joint_residual_Nm", s.jointResidual())
                .whole("steps", s.steps())
                .whole("iterations", s.iterations());
    }
}
