package gripwright.report;

import gripwright.closing.Outcome;
import gripwright.study.TrialPlan;
import gripwright.study.TrialPlan.Planned;
import gripwright.study.TrialReason;
import java.util.List;
import java.util.stream.Collectors;

/** The score sheet of a plan of trials for the clipboard: lines to fill in by hand, the words to use, the rules. */
public final class TrialSheetPage {
    private static final String STYLE = """
            h2.plain{display:block}
            table.fill{border-collapse:separate;border-spacing:0}
            table.fill td,table.fill th{padding:0 8px 0 0;height:34px;vertical-align:middle;border-bottom:1px solid var(--rule)}
            table.fill td.w{border-left:1px solid var(--rule)}table.fill td.w3{border-right:1px solid var(--rule)}
            table.fill th.w{padding-left:10px}table.fill td.turn,table.fill th.turn{padding-right:14px}
            table.fill td.w1{min-width:150px}table.fill td.w2{min-width:190px}table.fill td.w3{min-width:120px}
            table.fill td.same{color:var(--quiet)}
            table.fill tr.new td,table.fill tr.new th{border-top:2px solid var(--ink)}
            .blanks{display:flex;gap:20px;margin:0 0 14px;font-size:13px}
            .blanks span{flex:1;border-bottom:1px solid var(--ink);padding-bottom:18px;white-space:nowrap}
            .blanks span:last-child{flex:2.4}
            .words{columns:2;column-gap:32px;list-style:none;margin:0 0 20px;padding:0;font-size:13px}
            .words li{break-inside:avoid;padding:3px 0 5px}.words b{font-weight:600}
            @media print{thead{display:table-header-group}table.fill tr{break-inside:avoid}table.fill{font-size:15px}table.fill td,table.fill th{height:40px}}
            """;

    private TrialSheetPage() {}

    /**
     * The whole HTML file.
     *
     * @param name of the need
     * @param file the CSV to type the sheet into
     */
    public static String write(TrialPlan plan, String name, String file) {
        PageFrame frame = new PageFrame("Score sheet: " + name, STYLE);
        Html page = frame.section("Score sheet: " + name);
        page.say(HtmlHand.counted(plan.trials().size(), "trial") + " in "
                + HtmlHand.counted(plan.blocks(), "block") + " over " + HtmlHand.counted(plan.days(), "day")
                + ", seed " + plan.seed() + ". Type it into " + file + " afterwards.");
        page.heading("Mind");
        page.raw("<ul class=\"cautions\">");
        for (String caution : cautions()) {
            page.element("li", "", caution);
        }
        page.raw("</ul>").heading("How");
        page.raw("<ol class=\"cautions\">");
        for (String step : steps(plan)) {
            page.element("li", "", Num.sentence(step));
        }
        page.raw("</ol>").heading("Words for outcome and reason");
        words(page);
        frame.end();
        for (int day = 1; day <= plan.days(); day++) {
            int today = day;
            List<Planned> trials =
                    plan.trials().stream().filter(t -> t.day() == today).toList();
            page = frame.section("Day " + day + ": trials " + trials.get(0).number() + " to "
                    + trials.get(trials.size() - 1).number());
            page.raw("<div class=\"blanks\">");
            for (String blank : List.of("Date", "Operator", "Room temperature", "New since last time")) {
                page.element("span", "", blank);
            }
            page.raw("</div>");
            lines(page, trials, plan.hands().size() > 1);
            frame.end();
        }
        return frame.done();
    }

    private static List<String> cautions() {
        return List.of(
                "Closing fingers pinch and do not feel a hand. Take yours away before the motor starts; put the object down"
                        + " with the drive switched off or held by its emergency stop, never while it is winding.",
                "Stretched tendons and springs can let go: eyes protected, faces out of line.",
                "Glass and full cans fall. Work low over a soft edge, shoes on; an object that broke or leaked ends the"
                        + " trials with it.",
                "Stop when something of the hand fails; note it, and do not count the trial (outcome: "
                        + Outcome.UNDECIDED.words() + ").");
    }

    private static List<String> steps(TrialPlan plan) {
        boolean places = plan.trials().stream().anyMatch(t -> t.placed().isPresent());
        return List.of(
                "Keep the order. It was drawn by lot, so that wear, light and practice meet all alike; a trial that cannot be"
                        + " made now is left empty, not moved.",
                places
                        ? "Draw the nominal place of each object on the table as a cross. Put the object off the cross by x"
                                + " (along the closing direction), y (across) and the turn (counter-clockwise seen from"
                                + " above), within 2 mm and 2 deg. The hand comes to the cross."
                        : "Put the object down as it comes in use and let the camera find it. Do not measure where it stands.",
                "Start the hand, let it close and lift by 20 mm at least, wait 2 s, and look.",
                "Write one outcome. Held: off the table after the lift, and it stays. The first of these in the list that is"
                        + " true counts: landed on it, squeezed too hard, missed, thrown out, knocked over, pushed away,"
                        + " dropped in the lift.",
                "Wipe pads and object between trials if the plan is about clean ones, and always in the same way.");
    }

    private static void words(Html page) {
        page.raw("<ul class=\"words\">");
        for (Outcome outcome : Marks.ORDER) {
            page.raw("<li>" + Marks.inText(outcome, 14) + " ").element("b", "", outcome.words());
            if (outcome == Outcome.UNDECIDED) {
                page.text(" (says nothing about the hand)");
            }
            List<TrialReason> reasons = TrialReason.of(outcome).stream()
                    .filter(r -> r != TrialReason.OTHER)
                    .toList();
            if (!reasons.isEmpty()) {
                page.text(": " + reasons.stream().map(TrialReason::words).collect(Collectors.joining("; ")));
            }
            page.raw("</li>");
        }
        page.raw("</ul>").small("Whatever else it was: \"" + TrialReason.OTHER.words() + "\".");
    }

    private static void lines(Html page, List<Planned> trials, boolean hands) {
        page.raw("<div class=\"scroll\"><table class=\"fill\"><thead><tr><th class=\"num\">trial</th>");
        page.raw(hands ? "<th>hand</th>" : "").raw("<th>object</th><th>grip</th>");
        page.raw("<th class=\"num\">x, mm</th><th class=\"num\">y, mm</th><th class=\"num turn\">turn</th>");
        page.raw(
                "<th class=\"w\">outcome</th><th class=\"w\">reason</th><th class=\"w\">note</th></tr></thead><tbody>");
        String before = "";
        for (Planned t : trials) {
            String now = t.block() + " " + t.hand();
            page.raw(now.equals(before) ? "<tr>" : "<tr class=\"new\">").element("th", "num", "" + t.number());
            if (hands) {
                page.element("td", now.equals(before) ? "same" : "", t.hand());
            }
            page.element("td", "", t.object()).element("td", "", t.grip());
            page.element(
                    "td", "num", t.placed().map(p -> Num.text(1e3 * p.x(), 0)).orElse("in use"));
            page.element(
                    "td", "num", t.placed().map(p -> Num.text(1e3 * p.y(), 0)).orElse(""));
            page.element(
                    "td",
                    "num turn",
                    t.placed()
                            .map(p -> Num.text(Math.toDegrees(p.turn()), 0) + "\u00b0")
                            .orElse(""));
            page.raw("<td class=\"w w1\"></td><td class=\"w w2\"></td><td class=\"w w3\"></td></tr>");
            before = now;
        }
        page.raw("</tbody></table></div>");
    }
}
