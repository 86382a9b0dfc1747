package gripwright.report;

import gripwright.closing.Criteria;
import gripwright.closing.Numerics;
import gripwright.model.Project;
import gripwright.model.SharedAssumption;
import java.util.ArrayList;
import java.util.List;

/** What the answer rests on: assumptions, limits, calculation, origin, and what it does not replace. */
final class HtmlBasis {
    private HtmlBasis() {}

    static String assumptions(Project project) {
        if (project.assumptions().isEmpty()) {
            return new Html()
                    .small("The project files state everything; nothing was assumed.")
                    .done();
        }
        List<List<String>> rows = new ArrayList<>();
        for (SharedAssumption a : SharedAssumption.of(project.assumptions())) {
            rows.add(List.of(a.where(), a.text()));
        }
        return new Html()
                .small("Every default used and every estimate made while reading the project files.")
                .table("", List.of("where", "what was assumed"), rows)
                .done();
    }

    static String rules(Criteria c, Numerics n) {
        Html page = new Html();
        page.table(
                "A run ends in the first of these that applies",
                List.of("outcome", "limit", "#value"),
                List.of(
                        List.of("landed on it", "force on the way in, more than", Num.newtons(c.landingForce())),
                        List.of("missed", "no pad force ever as large as", Num.newtons(c.touchForce())),
                        List.of("thrown out", "travel of the object, more than", Num.mm(c.thrown())),
                        List.of("knocked over", "not held, tilt more than", Num.degrees(c.tilt())),
                        List.of("pushed away", "not held, displaced more than", Num.mm(c.pushed())),
                        List.of("dropped in the lift", "sinks against the hand more than", Num.mm(c.sink())),
                        List.of("held", "still in the hand after a lift of", Num.mm(c.lift()))));
        page.small(
                "Tested in the order undecided, landed on it, squeezed too hard (the object's own limit), missed,"
                        + " thrown out, then, for what is not held, knocked over, pushed away, dropped in the lift; else held.");
        page.table(
                "The calculation",
                List.of("choice", "#value"),
                List.of(
                        List.of("pad points along a phalanx", Integer.toString(n.padRows())),
                        List.of("pad points across a phalanx", Integer.toString(n.padColumns())),
                        List.of("factor on the motion allowed in a step", Num.digits(n.stepScale(), 3)),
                        List.of("factor on the damping of a step", Num.digits(n.viscosityScale(), 3))));
        page.small(
                "The hand closes slowly: each state is an equilibrium of springs, tendons, pads and friction, without"
                        + " inertia. Objects are rigid; pads are beds of springs with friction.");
        return page.done();
    }

    static String provenance(ReportInput.Provenance p) {
        return new Html()
                .table(
                        "",
                        List.of("this report", ""),
                        List.of(
                                List.of("made by", "Gripwright " + p.version()),
                                List.of("date", p.date()),
                                List.of("command", p.command()),
                                List.of("files read", String.join(", ", p.files())),
                                List.of("hash of the inputs", p.inputHash()),
                                List.of("seed", Long.toString(p.seed()))))
                .small("The same files, version and seed give the same report, byte for byte, except for the date.")
                .done();
    }

    private static final List<String> CAUTIONS = List.of(
            "Closing fingers pinch. Keep hands away while the motor has power, and give the hand a stop within reach.",
            "A tendon under tension stores energy; so do springs. Release both before taking the hand apart.",
            "Batteries (cells, packs, phones) can be punctured or crushed and burn. Set a squeeze limit for them and"
                    + " test with dummies first.",
            "Glass, blades and hot parts need limits and guards that this calculation does not know.",
            "Machine-safety standards, such as ISO 10218 for robots and ISO/TS 15066 for work side by side with people,"
                    + " and local codes govern. This report does not show that any of them is met.",
            "These are calculated closings of a model, not measurements of a built hand. A licensed engineer decides"
                    + " whether a machine is safe to use.");

    static String cautions() {
        Html page = new Html().raw("<ul class=\"cautions\">");
        CAUTIONS.forEach(c -> page.element("li", "", c));
        return page.raw("</ul>").done();
    }
}
