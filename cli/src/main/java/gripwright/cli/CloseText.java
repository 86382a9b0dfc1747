package gripwright.cli;

import gripwright.closing.ClosingDetail;
import gripwright.closing.ClosingSummary;
import gripwright.closing.Conditions;
import gripwright.closing.ContactForce;
import gripwright.closing.Criteria;
import java.util.List;

/** One closing in words and small tables. */
final class CloseText {
    private CloseText() {}

    static String of(String object, String grip, ClosingDetail detail) {
        ClosingSummary s = detail.summary();
        StringBuilder text = new StringBuilder();
        text.append(Say.outcome(s.outcome()))
                .append(": ")
                .append(object)
                .append(" with ")
                .append(grip);
        text.append(", ").append(place(detail.conditions())).append('\n');
        text.append(detail.reason()).append("\n\n");
        text.append("object   moved ")
                .append(Say.length(s.travel()))
                .append(" (x ")
                .append(Say.length(s.travelX()));
        text.append(", y ").append(Say.length(s.travelY())).append("), tilted ").append(Say.angle(s.tilt()));
        text.append(" while the hand closed; sank ")
                .append(Say.length(s.sink()))
                .append(" in the lift\n");
        text.append("force    at most ").append(Say.force(s.peakForce())).append(" of one phalanx or the palm, ");
        text.append(Say.force(s.landingForce())).append(" on the way in; pressure at most ");
        text.append(Say.pressure(s.peakPressure())).append('\n');
        text.append(motors(detail)).append('\n');
        for (String caution : detail.cautions()) {
            text.append(Words.wrapped("caution  " + caution)).append('\n');
        }
        Table links = links(detail);
        if (!links.isEmpty()) {
            text.append(links).append("\n\n");
        }
        text.append(joints(detail)).append("\n\n");
        text.append("solver   ")
                .append(s.steps())
                .append(" steps, ")
                .append(s.iterations())
                .append(" iterations; ");
        if (Double.isNaN(s.objectResidual())) {
            text.append("the run ended before it came to rest\n");
        } else {
            text.append("out of balance when last at rest: ").append(Say.residual(s.objectResidual(), "N"));
            text.append(" on the object, ")
                    .append(Say.residual(s.jointResidual(), "N*m"))
                    .append(" at a joint\n");
        }
        text.append(judged(detail.criteria()));
        return text.toString();
    }

    static String place(Conditions c) {
        if (c.equals(Conditions.NOMINAL)) {
            return "at its nominal place";
        }
        String turn = c.turn() == 0 ? "" : ", turned " + Say.angle(c.turn());
        return "shifted x " + Say.length(c.x()) + ", y " + Say.length(c.y()) + turn;
    }

    /** The limits by which runs are judged. */
    static String judged(Criteria c) {
        return Words.wrapped("judged   by landing force " + Say.force(c.landingForce()) + ", touch "
                + Say.force(c.touchForce()) + ", lift "
                + Say.length(c.lift()) + ", dropped past " + Say.length(c.sink()) + ", thrown past "
                + Say.length(c.thrown()) + ", knocked over past " + Say.angle(c.tilt()) + ", pushed past "
                + Say.length(c.pushed()));
    }

    private static String motors(ClosingDetail detail) {
        StringBuilder text = new StringBuilder();
        for (ClosingDetail.MotorState motor : detail.motors()) {
            text.append("motor    ").append(motor.name()).append(" pulls ").append(Say.force(motor.tension()));
            text.append(", wound in ").append(Say.length(motor.wound())).append('\n');
        }
        return text.toString();
    }

    /** Bodies that press on the object at the end or touched it on the way. */
    private static Table links(ClosingDetail detail) {
        Table table = new Table("lrrr", "on the object", "force", "pressure", "first touch at");
        List<String> bodies = detail.bodies();
        for (int body = 0; body < bodies.size(); body++) {
            String name = bodies.get(body);
            double force = 0;
            double pressure = 0;
            for (ContactForce contact : detail.contacts()) {
                if (contact.body().equals(name) && contact.other().equals("object")) {
                    force += contact.normalForce();
                    pressure = Math.max(pressure, contact.pressure());
                }
            }
            int index = body;
            String touch = detail.firstTouches().stream()
                    .filter(t -> t.body() == index)
                    .findFirst()
                    .map(t -> "tension " + Say.force(t.tension()))
                    .orElse("-");
            if (force > 0 || !touch.equals("-")) {
                table.row(name, Say.force(force), pressure > 0 ? Say.pressure(pressure) : "-", touch);
            }
        }
        return table;
    }

    private static Table joints(ClosingDetail detail) {
        Table table = new Table("lrrrrr", "joint", "at", "tendon", "moment arm", "spring and stops", "out of balance");
        for (ClosingDetail.JointState j : detail.joints()) {
            table.row(
                    j.name(),
                    j.slides() ? Say.length(j.value()) : Say.angle(j.value()),
                    j.momentArm() == 0 ? "-" : Say.force(j.tension()),
                    j.momentArm() == 0 ? "-" : Say.length(j.momentArm()),
                    j.slides() ? Say.force(j.springMoment()) : Say.torque(j.springMoment()),
                    Say.residual(j.residual(), j.slides() ? "N" : "N*m"));
        }
        return table;
    }
}
