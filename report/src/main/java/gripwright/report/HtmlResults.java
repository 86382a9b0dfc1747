package gripwright.report;

import gripwright.closing.Outcome;
import gripwright.model.GraspObject;
import gripwright.model.Project;
import gripwright.study.Finding;
import gripwright.study.Findings;
import gripwright.study.Influences;
import gripwright.study.MapResult;
import gripwright.study.TrialsResult;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/** Film strips, maps, trials and what fails. */
final class HtmlResults {
    private HtmlResults() {}

    static String closings(ReportInput input) {
        Html page = new Html();
        if (input.closings().isEmpty()) {
            return page.small("No closing was asked for.").done();
        }
        Project project = input.project();
        page.raw("<ul class=\"jump\">");
        for (int i = 0; i < input.closings().size(); i++) {
            ReportInput.Closing c = input.closings().get(i);
            page.raw("<li><a href=\"#run" + (i + 1) + "\">"
                            + Marks.inText(c.detail().summary().outcome(), 13) + " ")
                    .text(c.object() + ", " + c.grip() + ": "
                            + c.detail().summary().outcome().words())
                    .raw("</a></li>");
        }
        page.raw("</ul>");
        Set<String> shown = new HashSet<>();
        for (int i = 0; i < input.closings().size(); i++) {
            ReportInput.Closing c = input.closings().get(i);
            GraspObject object = project.need().object(c.object());
            page.raw("<div class=\"strip-of\" id=\"run" + (i + 1) + "\">").heading(c.object() + ", grip " + c.grip());
            if (!c.note().isEmpty()) {
                page.small(c.note());
            }
            // Graphs for the first run of each object only: the page is long enough.
            page.figure(
                            shown.add(c.object())
                                    ? ClosingPicture.draw(project.hand(), object, c.detail())
                                    : ClosingPicture.strip(project.hand(), object, c.detail()))
                    .raw("</div>");
        }
        return page.raw("<div class=\"notes\">")
                .raw("<b>How to read it.</b> ")
                .text("Time is tendon tension. The hand comes along its approach, closes until the motor stalls or its"
                        + " tension is reached, and lifts (drawn as the table sinking). Arrows in the last moment are the"
                        + " forces on the object, gathered by body and to the scale given. Fingers of the hand have one"
                        + " line style each; 1 is the joint or phalanx at the palm.")
                .raw("</div>")
                .done();
    }

    static String maps(ReportInput input) {
        Html page = new Html();
        if (input.maps().isEmpty()) {
            return page.small("No capture map was asked for.").done();
        }
        for (MapResult m : input.maps()) {
            page.raw("<div class=\"map-of\">").heading(m.object() + ", grip " + m.grip());
            page.say(Findings.of(input.project(), m).stream()
                    .filter(f -> f.topic() == Finding.Topic.ANSWER)
                    .map(f -> Num.sentence(f.text()))
                    .collect(Collectors.joining(" ")));
            page.figure(MapPicture.draw(
                            m, input.project().hand(), input.project().need().object(m.object())))
                    .raw("</div>");
        }
        return page.raw("<div class=\"notes\"><b>How to read it.</b> ")
                .text(
                        "Each cell is one placement: the object is shifted by x and y, the hand goes to the nominal place."
                                + " Capture range: the largest circle about the nominal place in which every cell is held"
                                + " (paper-coloured circle). Broken oval or outline: the object itself, to the same scale. Short"
                                + " arrows point where the object was pushed. Cells with a question mark did not converge and"
                                + " count neither way.")
                .raw("</div>")
                .done();
    }

    static String trials(ReportInput input) {
        Html page = new Html();
        if (input.trials().isEmpty()) {
            return page.small("No trials were made.").done();
        }
        TrialsResult t = input.trials().get();
        page.say("With the best grip for each object, " + Num.share(t.weighted().share())
                + " of the weighted pick-ups end held ("
                + Num.interval(t.weighted().low(), t.weighted().high())
                + ", 95\u00a0% interval). The wish is "
                + Num.percent(input.project().need().wantedSuccess()) + ".");
        if (t.stopped()) {
            page.small("The trials were stopped after " + t.scoredRuns() + " of " + t.wantedRuns()
                    + " runs; what was finished is shown.");
        }
        page.figure(TrialsPicture.table(t, input.project().need()));
        page.heading("What it hangs on").figure(TrialsPicture.influence(t));
        return page.raw("<div class=\"notes\"><b>How to read it.</b> ")
                .text("Each pair of object and grip ran " + t.runsPerPair() + " times with sampled placement, friction,"
                        + " mass and pad stiffness, the same samples for every pair. The best grip was chosen on one set"
                        + " of samples and scored on a fresh one. Intervals are Wilson's, 95\u00a0%. "
                        + Influences.DEFINITION)
                .raw("</div>")
                .done();
    }

    static String failures(ReportInput input) {
        Html page = new Html();
        List<Finding> findings = new ArrayList<>();
        input.trials().ifPresent(t -> findings.addAll(Findings.of(input.project(), t)));
        input.maps().forEach(m -> findings.addAll(Findings.of(input.project(), m)));
        input.trials()
                .ifPresent(
                        t -> page.heading("Failures of all trials, by reason").figure(TrialsPicture.failures(t)));
        Set<String> objects = new LinkedHashSet<>();
        findings.stream().filter(HtmlResults::explains).forEach(f -> objects.add(f.object()));
        for (String object : objects) {
            page.raw("<div class=\"finding\">")
                    .heading(object.isEmpty() ? "In general" : object)
                    .raw("<ul>");
            findings.stream()
                    .filter(f -> explains(f) && f.object().equals(object))
                    .forEach(f -> page.element("li", "", Num.sentence(f.text())));
            page.raw("</ul></div>");
        }
        if (objects.isEmpty()) {
            page.small("Nothing was run that could fail.");
        }
        page.heading("The outcomes and their marks").raw("<ul class=\"leg\">");
        for (Outcome o : Marks.ORDER) {
            page.raw("<li>" + Marks.inText(o, 18))
                    .element("b", "", o.words())
                    .element("span", "", meaning(o))
                    .raw("</li>");
        }
        return page.raw("</ul>").done();
    }

    /** What the first section of the report does not say already. */
    private static boolean explains(Finding f) {
        return f.topic() != Finding.Topic.ANSWER && f.topic() != Finding.Topic.OBJECTS;
    }

    /** One line on each outcome; the limits stand with the criteria. */
    private static String meaning(Outcome o) {
        return switch (o) {
            case HELD -> "off the table after the lift";
            case DROPPED -> "stayed on the table, or sank out of the hand in the lift";
            case PUSHED_AWAY -> "not held, and displaced past the limit";
            case KNOCKED_OVER -> "not held, and tilted past the limit";
            case THROWN_OUT -> "left the working space of the hand";
            case SQUEEZED -> "its own limit of force or pressure was passed at some time";
            case LANDED_ON_IT -> "the open hand pressed on the object or the table on its way in";
            case MISSED -> "never touched";
            case UNDECIDED -> "the solver did not converge; neither a success nor a failure";
        };
    }
}
