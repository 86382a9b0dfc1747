package gripwright.report;

import gripwright.closing.HoldDetail;
import gripwright.closing.HoldPlan;
import gripwright.closing.PullResult;
import gripwright.model.GraspObject;
import gripwright.study.HoldFindings;
import gripwright.study.PressFindings;
import java.util.ArrayList;
import java.util.List;

/** The section on how hard the hand holds. */
final class HtmlHold {
    private HtmlHold() {}

    static String section(ReportInput input) {
        Html page = new Html();
        if (input.holds().isEmpty()) {
            return page.small("No hold was tested. 'gripwright hold' tests one.")
                    .done();
        }
        page.say(
                "Each object, held with its best grip at its nominal place (and with those of its tasks), was pulled, turned,"
                        + " shaken and put down again.");
        List<List<String>> rows = new ArrayList<>();
        for (ReportInput.Hold h : input.holds()) {
            rows.add(row(h));
        }
        page.table(
                "Least pull and turn, greatest acceleration in the worst direction, force at the first "
                        + Num.mm(HoldPlan.FIRST_GIVE) + " of the weakest pull.",
                List.of(
                        "object",
                        "grip",
                        "#weight",
                        "#least pull",
                        "#at " + Num.mm(HoldPlan.FIRST_GIVE),
                        "it",
                        "#least turn",
                        "#accelerated",
                        "put down"),
                rows);
        tasks(page, input.holds());
        input.holds().stream().filter(h -> h.detail().tested()).findFirst().ifPresent(h -> {
            GraspObject object = input.project().need().object(h.object());
            page.figure(HoldPicture.draw(input.project().hand(), object, h.detail()));
            page.raw("<div class=\"finding\">").heading(h.object()).raw("<ul>");
            HoldFindings.of(h.object(), h.detail()).forEach(line -> page.element("li", "", Num.sentence(line)));
            page.raw("</ul></div>");
        });
        page.raw("<div class=\"notes\"><b>How to read it.</b> ")
                .text("Slips: the peak came well before "
                        + Num.mm(input.holds().get(0).detail().plan().travel())
                        + " of displacement. Yields: the load still rose there. " + HoldFindings.CAUTION)
                .raw("</div>");
        return page.done();
    }

    /** What free fingers can do meanwhile; nothing if none has a task. */
    private static void tasks(Html page, List<ReportInput.Hold> holds) {
        for (ReportInput.Hold h : holds) {
            if (!h.detail().presses().isEmpty()) {
                page.raw("<div class=\"finding\">")
                        .heading(h.object() + ", held with " + h.grip() + ": a free finger at work")
                        .raw("<ul>");
                h.detail().presses().forEach(p -> page.element("li", "", Num.sentence(PressFindings.of(p))));
                page.raw("</ul></div>");
            }
        }
    }

    private static List<String> row(ReportInput.Hold h) {
        HoldDetail d = h.detail();
        if (!d.tested()) {
            return List.of(
                    h.object(),
                    h.grip(),
                    "\u2013",
                    "\u2013",
                    "\u2013",
                    d.closing().summary().outcome().words(),
                    "\u2013",
                    "\u2013",
                    "\u2013");
        }
        PullResult pull = least(d.pulls());
        PullResult turn = least(d.turns());
        String shaken = d.endurance().stream()
                .min(java.util.Comparator.comparingDouble(gripwright.closing.Endurance::survived))
                .map(e -> (Double.isInfinite(e.failed()) ? "over " : "")
                        + Num.unit(Num.digits(e.survived(), 2), "m/s\u00b2"))
                .orElse("\u2013");
        return List.of(
                h.object(),
                h.grip(),
                Num.newtons(d.closing().weight().length()),
                pull == null ? "undecided" : Num.newtons(pull.peak()) + " " + HoldFindings.axis(pull.axis()),
                pull == null || Double.isNaN(pull.loadAt(HoldPlan.FIRST_GIVE))
                        ? "\u2013"
                        : Num.newtons(pull.loadAt(HoldPlan.FIRST_GIVE)),
                pull == null ? "\u2013" : pull.kind().words(),
                turn == null
                        ? "undecided"
                        : Num.unit(Num.digits(turn.peak(), 2), "N\u00b7m") + " " + HoldFindings.axis(turn.axis()),
                shaken,
                d.release().map(r -> r.how().words()).orElse("\u2013"));
    }

    private static @org.jspecify.annotations.Nullable PullResult least(List<PullResult> tests) {
        return tests.stream()
                .filter(p -> p.kind() != PullResult.Kind.UNDECIDED)
                .min(java.util.Comparator.comparingDouble(PullResult::peak))
                .orElse(null);
    }
}
