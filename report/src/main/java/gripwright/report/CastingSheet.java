package gripwright.report;

import gripwright.pad.CastingTimes;
import gripwright.pad.Cavity;
import gripwright.pad.Drift;
import gripwright.pad.PadAnswer;
import gripwright.pad.PadSetup;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** A sheet for the workshop: how to pour the pads, and how to test without a force that the cavities are full. */
public final class CastingSheet {
    private static final double STAIRS = 10;

    private CastingSheet() {}

    /** The whole HTML file. */
    public static String write(List<PadAnswer> pads, PadSetup.Casting casting) {
        Html page = new Html();
        page.raw("<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"/>"
                + "<meta name=\"viewport\" content=\"width=device-width,initial-scale=1\"/>"
                + "<meta name=\"color-scheme\" content=\"light dark\"/>\n");
        page.element("title", "", "Gripwright: casting sheet");
        page.raw("\n<style>\n" + HtmlReport.style() + "</style></head>\n<body>");
        page.raw("<svg width=\"0\" height=\"0\" class=\"defs\" aria-hidden=\"true\">" + Look.definitions() + "</svg>");
        page.raw("<main><div class=\"sheet\"><section><h2>Casting sheet</h2>");
        page.say("The resin maker's sheet and the rules of your workshop come first; where they say otherwise, they are"
                + " right. Numbers below are computed or common practice, and none was tried on a pad.");
        page.heading("Mind");
        list(page, "ul", cautions());
        page.heading("Steps");
        list(page, "ol", steps(pads, casting));
        page.heading("Time");
        pads.stream()
                .map(PadAnswer::casting)
                .max(Comparator.comparingDouble(CastingTimes::total))
                .ifPresent(times -> times(page, times));
        page.heading("Fill test without a force");
        page.say("Change the air's pressure quickly: close the pad in a jar and press a syringe, or carry it up "
                + Num.text(STAIRS, 0) + " m of stairs (about " + Num.text(STAIRS * Drift.PER_METRE, 0)
                + " Pa). Compare with a bare chip of the same kind. Be quick: within hours gas creeps through silicone and an"
                + " empty cell follows too (from memory).");
        page.table("", List.of("pad", "#full: follows by", "#full of air: by about"), fillTest(pads));
        Map<String, String> drawn = new HashMap<>();
        for (PadAnswer pad : pads) {
            page.heading(pad.design().name());
            Picture picture = PadPicture.draw(pad);
            String twin = drawn.putIfAbsent(picture.body(), pad.design().name());
            if (twin == null) {
                page.figure(picture);
            } else {
                page.say("Drawn like " + twin + ".");
            }
        }
        return page.raw("</section></div></main></body></html>\n").done();
    }

    private static void times(Html page, CastingTimes times) {
        List<List<String>> rows = new ArrayList<>();
        double clock = 0;
        for (CastingTimes.Step step : times.steps()) {
            clock += step.time();
            rows.add(List.of(step.name(), minutes(step.time()), minutes(clock), step.why()));
        }
        page.table("", List.of("step", "#takes", "#clock", "from"), rows);
        page.say(
                "The clock starts when the hardener goes in. All together " + minutes(times.total())
                        + " of a pot life of "
                        + minutes(times.potLife())
                        + (times.fits()
                                ? "."
                                : ": too long. A slower resin, a better vacuum, a smaller batch or thinner rubber would do it."));
    }

    private static String minutes(double seconds) {
        return Num.text(seconds / 60, 1) + " min";
    }

    private static void list(Html page, String tag, List<String> items) {
        page.raw("<" + tag + ">");
        items.forEach(i -> page.element("li", "", Num.sentence(i)));
        page.raw("</" + tag + ">");
    }

    private static List<String> cautions() {
        return List.of(
                "Vacuum: only a vessel made for it, without scratches or cracks, its shield in place, eyes protected. Glass"
                        + " jars and food boxes can burst inwards.",
                "Uncured resin, hardener and isocyanate: gloves, ventilation, nothing on skin. A few people become allergic"
                        + " for life.",
                "Sulphur, tin and some latex gloves keep platinum silicone from curing: try a drop first.",
                "Ovens: only one never used for food; below the temperature that chips, board and resin bear; never"
                        + " unattended with solvents near.",
                "Let air in slowly. Pump oil and resin vapour belong in a fume hood or out of the window.");
    }

    private static List<String> steps(List<PadAnswer> pads, PadSetup.Casting c) {
        double foam = Cavity.foam(c.stirredAir(), c.vacuum());
        double deepest =
                pads.stream().mapToDouble(p -> p.design().overBoard()).max().orElse(0);
        double rise = Cavity.rise(CastingTimes.BUBBLE, c.vacuum(), c.viscosity(), Cavity.DENSITY, deepest);
        List<String> out = new ArrayList<>();
        out.add(
                "Warm resin and boards to the temperature the pad will work at. Weigh, and stir slowly for the time the resin"
                        + " maker gives.");
        out.add("Choose a pot of " + Num.text(Math.ceil(Math.max(3, 1.3 * foam)), 0)
                + " times the resin's volume: with " + Num.percent(c.stirredAir())
                + " of air stirred in it foams up to "
                + Num.digits(foam, 2) + " times. Suppliers' guides say 3 to 5.");
        out.add("Pull to " + Num.digits(c.vacuum() / 1e3, 2) + " kPa absolute"
                + (c.vacuum() > 6500
                        ? "; this is weak: bubbles do not break below about 28 inHg on the gauge, 6.5 kPa absolute (a"
                                + " supplier's guide)."
                        : ". Wait for the foam to crest and fall, then 3 to 5 minutes more, and let air in."));
        out.add("Pour over the board, ports up, from one side.");
        out.add("Pull again with the board in the pot until no bubbles leave the ports. A bubble of "
                + Num.mm(CastingTimes.BUBBLE) + " rises through " + Num.mm(deepest) + " of this resin in about "
                + Num.text(rise, 0) + " s.");
        for (PadAnswer p : pads) {
            Cavity cavity = new Cavity(
                    p.design().chip(), p.design().modulus(), p.design().bulk());
            out.add(p.design().name() + ": the port holds a bubble by " + Num.text(cavity.capillary(), 0)
                    + " Pa, so a vacuum better than about that gains nothing; at the vacuum above at least "
                    + Num.percent(p.left()) + " of the sensitivity is left.");
        }
        out.add(
                "Let air in slowly, over a minute, and leave it at atmosphere (or in a pressure pot) some minutes before it"
                        + " gels: degassed resin dissolves what air is left.");
        out.add("All of this within the pot life of " + Num.text(c.potLife() / 60, 0)
                + " min; stop when the resin has become twice as thick (common practice, no source).");
        out.add(
                "Cure at the temperature the pad will work at: a full cavity is a thermometer, and cooling down after a hot"
                        + " cure can tear the rubber off the die.");
        return out;
    }

    private static List<List<String>> fillTest(List<PadAnswer> pads) {
        List<List<String>> rows = new ArrayList<>();
        for (PadAnswer p : pads) {
            rows.add(List.of(
                    p.design().name(),
                    Num.percent(p.response().ambientRatio()),
                    Num.digits(100 * p.unfilled() / p.response().peak(), 2) + " %"));
        }
        return rows;
    }
}
