package gripwright.report;

import gripwright.signal.Calibration;
import gripwright.signal.Figure;
import gripwright.signal.FigureKind;
import gripwright.signal.Taxel;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** A calibration on one page: what to recast, figures with their uncertainty, pictures, definitions. */
public final class CalibrationPage {
    private static final int MOST_CROSS = 16;

    private CalibrationPage() {}

    /**
     * The whole HTML file.
     *
     * @param log name of the log
     * @param remarks on the log
     */
    public static String write(Calibration c, String log, List<String> remarks) {
        Html page = new Html();
        page.raw("<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"/>"
                + "<meta name=\"viewport\" content=\"width=device-width,initial-scale=1\"/>"
                + "<meta name=\"color-scheme\" content=\"light dark\"/>\n");
        page.element("title", "", "Gripwright: calibration from " + log);
        page.raw("\n<style>\n" + HtmlReport.style() + "</style></head>\n<body>");
        page.raw("<svg width=\"0\" height=\"0\" class=\"defs\" aria-hidden=\"true\">" + Look.definitions() + "</svg>");
        page.raw("<main><div class=\"sheet\"><section><h2>Calibration</h2>");
        page.say("From " + log + ": " + c.rows() + " rows, "
                + (c.plate() ? "a plate on all taxels" : "a probe on one taxel at a time") + ", up to "
                + Num.newtons(c.top()) + ", " + c.cycles() + " counted cycles.");
        verdicts(page, c);
        page.figure(CalibrationPicture.sensitivities(c));
        clocks(page, c);
        page.heading("Figures");
        page.small(
                "Every value with half its 95 % interval. Percentages are of full-scale output; what each figure means"
                        + " stands below.");
        figures(page, c);
        refusals(page, c);
        page.heading("Loading and unloading");
        page.figure(CalibrationPicture.loops(c));
        page.heading("Noise and drift");
        page.figure(CalibrationPicture.allan(c));
        page.heading("Cross-talk");
        crossTalk(page, c);
        page.heading("What the figures mean");
        List<List<String>> rows = new ArrayList<>();
        for (FigureKind kind : FigureKind.values()) {
            rows.add(List.of(kind.words(), FigureText.unit(kind, c.unit()), kind.definition()));
        }
        page.table("", List.of("figure", "unit", "meaning"), rows);
        page.small(
                "Terms as in IEC 61298-2, ISA 51.1, ISO 11843 and IEEE 952, wording from memory. Detection limits hold"
                        + " for a rate of false alarms of "
                        + Num.digits(100 * c.rates().falseAlarm(), 3)
                        + " % and of misses of " + Num.digits(100 * c.rates().miss(), 3)
                        + " % per reading, the zero being the mean of "
                        + c.rates().zeros()
                        + " readings. A calibration holds for one shape of what presses and for its place.");
        if (!remarks.isEmpty() || !c.notes().isEmpty()) {
            page.heading("About the log");
            remarks.forEach(page::say);
            c.notes().forEach(page::say);
        }
        return page.raw("</section></div></main></body></html>\n").done();
    }

    private static void verdicts(Html page, Calibration c) {
        List<Taxel> named =
                c.taxels().stream().filter(t -> !t.words().isEmpty()).toList();
        if (named.isEmpty()) {
            page.say("No taxel stands out; none needs to be cast anew.");
            return;
        }
        page.raw("<ul>");
        for (Taxel t : named) {
            page.element(
                    "li",
                    "",
                    t.column() + " (" + t.pad() + "): " + (t.recast() ? "recast. It " : "")
                            + (t.state() == Taxel.State.FITTED ? "" : t.state().words() + "; ") + t.words() + ".");
        }
        page.raw("</ul>");
    }

    private static void clocks(Html page, Calibration c) {
        page.heading("Clocks");
        page.say(sentence(FigureText.lag(c)));
        page.say(sentence(FigureText.skew(c)));
    }

    private static String sentence(String text) {
        return Character.toUpperCase(text.charAt(0)) + text.substring(1) + ".";
    }

    private static void figures(Html page, Calibration c) {
        List<Taxel> fitted = c.in(Taxel.State.FITTED);
        List<FigureKind> kinds = new ArrayList<>();
        for (FigureKind kind : FigureKind.values()) {
            if (fitted.stream().anyMatch(t -> known(t, kind))) {
                kinds.add(kind);
            }
        }
        int half = (kinds.size() + 1) / 2;
        for (List<FigureKind> some : List.of(kinds.subList(0, half), kinds.subList(half, kinds.size()))) {
            List<String> heads = new ArrayList<>(List.of("taxel"));
            some.forEach(k -> heads.add(
                    "#" + k.words() + ", " + FigureText.unit(k, c.unit()).replace(" of full scale", "")));
            List<List<String>> rows = new ArrayList<>();
            for (Taxel t : fitted) {
                List<String> row = new ArrayList<>(List.of(t.column()));
                for (FigureKind kind : some) {
                    Figure f = t.figures().get(kind);
                    row.add(f == null ? "–" : FigureText.of(f));
                }
                rows.add(row);
            }
            page.table("", heads, rows);
        }
    }

    private static boolean known(Taxel t, FigureKind kind) {
        Figure f = t.figures().get(kind);
        return f != null && f.known();
    }

    /** Reasons for figures that are not known, each with the taxels it holds for. */
    public static Map<String, Set<String>> reasons(Calibration c) {
        Map<String, Set<String>> reasons = new LinkedHashMap<>();
        for (FigureKind kind : FigureKind.values()) {
            for (Taxel t : c.in(Taxel.State.FITTED)) {
                Figure f = t.figures().get(kind);
                if (f != null && !f.known()) {
                    reasons.computeIfAbsent(kind.words() + ": " + f.refusal().orElse(""), r -> new LinkedHashSet<>())
                            .add(t.column());
                }
            }
        }
        return reasons;
    }

    private static void refusals(Html page, Calibration c) {
        Map<String, Set<String>> reasons = reasons(c);
        if (reasons.isEmpty()) {
            return;
        }
        page.heading("Not known from this log");
        page.raw("<ul>");
        int all = c.in(Taxel.State.FITTED).size();
        reasons.forEach((reason, taxels) -> page.element(
                "li", "", reason + (taxels.size() == all ? "." : " (" + String.join(", ", taxels) + ").")));
        page.raw("</ul>");
    }

    private static void crossTalk(Html page, Calibration c) {
        if (c.crossTalkRefusal().isPresent()) {
            page.say("Not known: " + c.crossTalkRefusal().get() + ".");
            return;
        }
        List<Taxel> shown = c.in(Taxel.State.FITTED).stream().limit(MOST_CROSS).toList();
        page.small(
                "What the taxel in the row reads when the one in the column is pressed, in % of what that one reads.");
        List<String> heads = new ArrayList<>(List.of("reads"));
        shown.forEach(t -> heads.add("#" + t.column()));
        List<List<String>> rows = new ArrayList<>();
        for (Taxel reads : shown) {
            List<String> row = new ArrayList<>(List.of(reads.column()));
            for (Taxel pressed : shown) {
                row.add(c.crossTalk().stream()
                        .filter(s -> s.pressed() == pressed.number() && s.reads() == reads.number())
                        .map(s -> pressed.number() == reads.number()
                                ? "100"
                                : FigureText.withHalf(
                                        100 * s.share(),
                                        50 * (s.interval().high() - s.interval().low())))
                        .findFirst()
                        .orElse("–"));
            }
            rows.add(row);
        }
        page.table("", heads, rows);
    }
}
