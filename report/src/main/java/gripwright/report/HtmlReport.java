package gripwright.report;

import gripwright.closing.Outcome;
import gripwright.model.Hand;
import gripwright.pad.PadAnswer;
import gripwright.study.MapResult;
import java.util.ArrayList;
import java.util.List;

/**
 * A report as one HTML file that needs nothing else: no scripts, no fonts, no network. It follows the system's light or
 * dark setting and prints on paper.
 */
public final class HtmlReport {
    /** So many sections at the end share printed pages. */
    private static final int SHORT = 3;

    private HtmlReport() {}

    /**
     * One question of the report.
     *
     * @param brief the answer in a few words for the list at the left edge, as HTML
     * @param body HTML
     */
    private record Section(String question, String brief, String body) {}

    /** The whole file; the same input gives the same text. */
    public static String write(ReportInput input) {
        List<Section> sections = sections(input);
        Html page = new Html();
        page.raw("<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"/>"
                + "<meta name=\"viewport\" content=\"width=device-width,initial-scale=1\"/>"
                + "<meta name=\"color-scheme\" content=\"light dark\"/>\n");
        page.element("title", "", "Gripwright: " + input.project().need().name());
        page.raw("\n<style>\n" + style() + "</style></head>\n<body>");
        page.raw("<a class=\"skip\" href=\"#q1\">Skip to the report</a>");
        page.raw("<svg width=\"0\" height=\"0\" class=\"defs\" aria-hidden=\"true\">" + Look.definitions() + "</svg>");
        page.raw("<div class=\"bench\">");
        contents(page, input, sections);
        page.raw("\n<main><div class=\"sheet\">");
        title(page, input);
        for (int i = 0; i < sections.size(); i++) {
            Section s = sections.get(i);
            page.raw("\n<section id=\"q" + (i + 1) + "\"" + (i >= sections.size() - SHORT ? " class=\"flow\"" : "")
                            + "><h2><span class=\"no\">" + (i + 1) + "</span><span>")
                    .text(s.question)
                    .raw("</span></h2>")
                    .raw(s.body)
                    .raw("</section>");
        }
        return page.raw("</div></main></div></body></html>\n").done();
    }

    private static List<Section> sections(ReportInput input) {
        Hand hand = input.project().hand();
        int objects = input.project().need().objects().size();
        List<Section> out = new ArrayList<>();
        out.add(new Section("What does this hand pick up?", "", answer(input)));
        out.add(new Section(
                "What must it pick up, and how far off may it be placed?",
                plain(HtmlHand.counted(objects, "object")),
                HtmlNeed.section(input.project().need())));
        out.add(new Section(
                "What is the hand?",
                plain(HtmlHand.counted(hand.fingers().size(), "finger") + ", "
                        + HtmlHand.counted(hand.motors().size(), "motor")),
                HtmlHand.section(hand)));
        out.add(new Section("Does it get hold?", closingsBrief(input), HtmlResults.closings(input)));
        if (!input.holds().isEmpty()) {
            out.add(new Section("How hard does it hold?", "", HtmlHold.section(input)));
        }
        out.add(new Section("How far off may it be?", mapsBrief(input), HtmlResults.maps(input)));
        out.add(new Section(
                "How often will it work?",
                input.trials()
                        .map(t -> plain(Num.share(t.weighted().share()) + ", weighted"))
                        .orElse(""),
                HtmlResults.trials(input)));
        input.pads()
                .ifPresent(p -> out.add(new Section(
                        "What do the pads feel?",
                        plain(HtmlHand.counted(
                                        (int) p.answers().stream()
                                                .filter(PadAnswer::blind)
                                                .count(),
                                        "pad") + " with blind gaps"),
                        HtmlPads.section(p))));
        out.add(new Section("What fails, and why?", failuresBrief(input), HtmlResults.failures(input)));
        out.add(new Section("What is worth changing?", plain(HtmlVary.brief(input)), HtmlVary.section(input)));
        out.add(new Section(
                "How far can the numbers be believed?", plain(HtmlCertain.brief(input)), HtmlCertain.section(input)));
        out.add(new Section(
                "What was assumed?",
                plain(HtmlHand.counted(input.project().assumptions().size(), "assumption")),
                HtmlBasis.assumptions(input.project())));
        out.add(new Section(
                "By what limits, and how was it calculated?", "", HtmlBasis.rules(input.criteria(), input.numerics())));
        out.add(new Section("What was it made from?", "", HtmlBasis.provenance(input.provenance())));
        out.add(new Section("What must you mind?", "", HtmlBasis.cautions()));
        return out;
    }

    private static String plain(String text) {
        return Num.escape(text);
    }

    private static String closingsBrief(ReportInput input) {
        StringBuilder out = new StringBuilder();
        for (ReportInput.Closing c : input.closings().stream().limit(3).toList()) {
            Outcome o = c.detail().summary().outcome();
            out.append(out.length() == 0 ? "" : "<br/>")
                    .append(Marks.inText(o, 13))
                    .append(' ');
            out.append(plain(c.object() + ": " + o.words()));
        }
        return out.toString();
    }

    private static String mapsBrief(ReportInput input) {
        StringBuilder out = new StringBuilder();
        for (MapResult m : input.maps().stream().limit(3).toList()) {
            out.append(out.length() == 0 ? "" : "<br/>").append(plain(m.object() + ": " + MapLegend.radius(m)));
        }
        return out.toString();
    }

    private static String failuresBrief(ReportInput input) {
        return input.trials().stream()
                .flatMap(t -> TrialsPicture.failuresByCount(t).stream())
                .limit(1)
                .map(e -> Marks.inText(e.getKey(), 13) + " "
                        + plain("most: " + e.getKey().words()))
                .findFirst()
                .orElse("");
    }

    private static String answer(ReportInput input) {
        Html page = new Html().figure(GlancePicture.draw(input));
        page.raw("<ul class=\"answer\">");
        Answer.lines(input.project(), input.trials(), input.maps())
                .forEach(l -> page.element("li", "", Num.sentence(l)));
        return page.raw("</ul>").done();
    }

    private static void contents(Html page, ReportInput input, List<Section> sections) {
        page.raw("<nav class=\"strip\" aria-label=\"Questions\"><div class=\"brand\">Gripwright</div>");
        page.element("div", "proj", input.project().need().name()).raw("<ol>");
        for (int i = 0; i < sections.size(); i++) {
            Section s = sections.get(i);
            page.raw("<li><a href=\"#q" + (i + 1) + "\"><span class=\"no\">" + (i + 1) + "</span><span class=\"q\">")
                    .text(s.question)
                    .raw("</span>");
            if (!s.brief.isEmpty()) {
                page.raw("<span class=\"ans\">" + s.brief + "</span>");
            }
            page.raw("</a></li>");
        }
        page.raw("</ol></nav>");
    }

    private static void title(Html page, ReportInput input) {
        ReportInput.Provenance p = input.provenance();
        page.raw("<header class=\"block\"><div>")
                .element("b", "", input.project().hand().name());
        page.element("span", "", String.join(", ", p.files())).raw("</div><div>");
        page.element("b", "", input.project().need().name());
        page.element(
                        "span",
                        "",
                        HtmlHand.counted(input.project().need().objects().size(), "object") + ", "
                                + HtmlHand.counted(
                                        input.project().hand().grips().size(), "grip"))
                .raw("</div><div>");
        page.element("b", "", "Version " + p.version() + ", seed " + p.seed());
        page.element("span", "", p.date() + ", inputs " + shortened(p.inputHash()))
                .raw("</div></header>");
    }

    private static String shortened(String hash) {
        return hash.length() > 12 ? hash.substring(0, 12) : hash;
    }

    /** Style sheet of a page. */
    static String style() {
        String faces = "--sans:-apple-system," + Look.SANS + ";--serif:\"Iowan Old Style\"," + Look.SERIF
                + ";--mono:ui-monospace,\"Noto Sans Mono\",\"DejaVu Sans Mono\",monospace;";
        return ":root{color-scheme:light dark;" + Look.variables(Look.LIGHT) + faces + "--strip:252px;--pad:44px}\n"
                + "@media screen and (prefers-color-scheme:dark){:root{" + Look.variables(Look.DARK) + "}}\n"
                + Look.resource("page.css") + Look.pictureStyle()
                + "@media print{:root{color-scheme:light;--paper:#fff;--desk:#fff;--pad:0px}}\n";
    }
}
