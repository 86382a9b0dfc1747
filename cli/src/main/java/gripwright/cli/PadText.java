package gripwright.cli;

import gripwright.pad.Averaging;
import gripwright.pad.Bus;
import gripwright.pad.CastingTimes;
import gripwright.pad.Drift;
import gripwright.pad.PadAnswer;
import gripwright.pad.PadDesign;
import gripwright.pad.PadSetup;
import gripwright.pad.Push;
import gripwright.pad.ScanAnswer;
import gripwright.pad.Strip;
import gripwright.pad.TouchAnswer;
import gripwright.pad.TouchStop;
import gripwright.units.Measure;
import gripwright.units.QuantityText;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** Answers about pads in words. */
final class PadText {
    private static final double GRAM = 9.80665e-3;

    private PadText() {}

    static String of(PadAnswer a, PadSetup.Judging j) {
        PadDesign d = a.design();
        StringBuilder out = new StringBuilder();
        out.append("pad      ").append(d.name()).append(": ").append(Say.count(d.cells(), "chip", "chips"));
        out.append(" (").append(d.chip().name()).append(") every ").append(Say.length(d.pitch()));
        out.append(" under ").append(Say.length(d.overBoard())).append(" of rubber over the board, ");
        out.append(Say.length(d.overChip())).append(" over the chips\n\n");
        out.append(Words.wrapped(strip(a))).append('\n');
        out.append(Words.wrapped(force(a, j))).append('\n');
        out.append(Words.wrapped(cavity(a))).append('\n');
        out.append(Words.wrapped(heat(a))).append('\n');
        out.append(Words.wrapped(drift(a))).append('\n');
        out.append(Words.wrapped(averaging(a))).append('\n');
        out.append(Words.wrapped(pouring(a))).append('\n');
        a.warnings().forEach(w -> out.append(Words.wrapped("Mind: " + w)).append('\n'));
        return out.append('\n').append(table(a)).toString();
    }

    private static String strip(PadAnswer a) {
        Strip s = a.strip();
        if (a.design().count() < 2) {
            return "A single chip: it feels a load within "
                    + Say.length(a.response().radius(Strip.BLIND)) + " of its middle.";
        }
        String widest = Say.length(s.widestPitch());
        String good = Say.length(s.recommendedPitch());
        double needed = a.design().pitch() / (s.widestPitch() / a.design().overChip());
        if (!a.blind()) {
            return "No blind gaps: half-way between two chips a load still reads "
                    + Say.percent(s.worst() / a.response().peak())
                    + " of what it reads over a chip. The widest pitch without"
                    + " gaps is " + widest + "; recommended is " + good + ".";
        }
        String shorter = a.design().chip().sizeX() > s.widestPitch()
                ? "The chips themselves are longer than the widest pitch without gaps, " + widest + ", so"
                : "A pitch of " + widest + " closes them (recommended: " + good + "); or";
        return "Blind gaps: between every two chips "
                + Say.length(s.gaps().get(0).length())
                + " of the strip feels less than a fifth of what is felt over a chip (half-way: "
                + Say.percent(s.worst() / a.response().peak()) + "). " + shorter + " about " + Say.length(needed)
                + " of rubber over the chips closes them at this pitch.";
    }

    private static String grams(double newtons) {
        return QuantityText.number(newtons / GRAM, 2) + " gf";
    }

    private static String force(PadAnswer a, PadSetup.Judging j) {
        return "It feels " + grams(a.limitBest()) + " over a chip and " + grams(a.limitWorst())
                + " between two (false alarms " + Say.exactly(j.falseAlarm()) + ", misses " + Say.exactly(j.miss())
                + ", noise alone). A point load clips at " + Say.force(a.saturation())
                + (Double.isNaN(a.bluntSaturation())
                        ? ""
                        : ", a sphere of radius 10 mm at " + Say.force(a.bluntSaturation()))
                + "; to bear " + Say.force(j.force()) + " at a point it takes " + Say.length(a.thinnest())
                + " of rubber over the chip.";
    }

    private static String cavity(PadAnswer a) {
        return "Poured without vacuum it would read "
                + QuantityText.number(a.response().peak() / a.unfilled(), 2)
                + " times less. A bubble of " + QuantityText.format(a.bubble(), Measure.VOLUME, 2)
                + " costs a tenth; after one pull to the vacuum given, at least " + Say.percent(a.left())
                + " of the sensitivity is left (nothing dissolved: the pessimistic bound).";
    }

    private static String heat(PadAnswer a) {
        if (!Double.isNaN(a.design().chip().heat())) {
            return "Heat: " + Say.pressure(a.perKelvin()) + " per kelvin as measured (pads.yaml), or "
                    + Say.force(a.heatForce()) + " per kelvin as force. "
                    + QuantityText.number(1e3 * a.warmingLikeLimit(), 2)
                    + " mK would look like the smallest force felt: zero just before each closing.";
        }
        return "Heat: up to " + Say.pressure(a.perKelvin())
                + " per kelvin if the cavity is filled and the rubber bonded"
                + " everywhere, or " + Say.force(a.heatForce())
                + " per kelvin as force; less, down to nearly nothing, where"
                + " rubber lets go or air is left. No pad was measured, and the upper end would be hard to live with: zero"
                + " just before each closing. " + QuantityText.number(1e3 * a.warmingLikeLimit(), 2)
                + " mK would look like the smallest force felt.";
    }

    /** Equal pads are told once. */
    static String of(List<PadAnswer> pads, PadSetup.Judging j) {
        StringBuilder out = new StringBuilder();
        Map<String, String> told = new HashMap<>();
        for (PadAnswer pad : pads) {
            String twin = told.putIfAbsent(of(pad.named(""), j), pad.design().name());
            out.append(
                    twin == null
                            ? of(pad, j)
                            : "pad      " + pad.design().name() + ": as " + twin + ", so the same holds");
            out.append("\n\n");
        }
        return out.toString().stripTrailing() + "\n";
    }

    private static String drift(PadAnswer a) {
        Drift d = a.drift();
        double per = a.response().peak();
        return "Drift over a closing of " + Say.time(d.time()) + ": heat "
                + (d.heatLeast() == d.heatMost() ? "" : "0 to ")
                + Say.pressure(d.heatMost()) + " (" + (d.heatLeast() == d.heatMost() ? "measured" : "computed range")
                + "), weather " + Say.pressure(d.weather()) + ", a door or a fan up to " + Say.pressure(d.door())
                + "; together up to " + grams(d.most() / per)
                + " over a chip. A bare chip beside the pads tells weather and doors, not heat; raising the hand by a"
                + " metre is " + Say.pressure(Drift.PER_METRE) + " more.";
    }

    private static String averaging(PadAnswer a) {
        Averaging one = a.averaging().get(0);
        Averaging best = a.best();
        return "Averaging: one reading tells " + grams(one.noise()) + "; "
                + a.averaging().stream()
                        .skip(1)
                        .limit(3)
                        .map(n -> n.readings() + " tell " + grams(n.noise()) + " in " + Say.time(n.time()))
                        .collect(Collectors.joining(", "))
                + (best.readings() == 1
                        ? ". With the greatest drift above more than one only loses."
                        : ". With the greatest drift above it ends at " + best.readings() + " readings, "
                                + Say.time(best.time()) + ": " + grams(best.together())
                                + " with what heat fakes meanwhile.")
                + " Readings are taken as independent; a chip that filters gains less.";
    }

    private static String pouring(PadAnswer a) {
        CastingTimes c = a.casting();
        return "Pouring takes about " + Say.time(c.total()) + " of a pot life of " + Say.time(c.potLife())
                + (c.fits()
                        ? " (--casting-sheet says how)."
                        : ": too long. A slower resin, a better vacuum, a smaller batch or thinner rubber would do it.");
    }

    private static String table(PadAnswer a) {
        Table t = new Table("lr", "of one cell", "");
        t.row("pressure per newton over the chip", kPaPerN(a.response().peak()));
        t.row("half-way between two chips", kPaPerN(a.strip().worst()));
        t.row("width felt at half or more", Say.length(2 * a.response().radius(0.5)));
        t.row("a neighbour's share (cross-talk)", Say.percent(a.strip().crossTalk()));
        t.row("saturation over smallest force", QuantityText.number(a.dynamicRange(), 3) + " dB");
        t.row("place of a load, at best (with gain error)", bound(a.bounds().place()));
        if (a.design().rows() > 1) {
            t.row("the same with place across unknown, along", bound(a.area().along()));
            t.row("place across the rows", bound(a.area().across()));
            t.row(
                    "force, both places unknown",
                    Double.isInfinite(a.area().force())
                            ? "not to be told"
                            : "+-" + Say.percent(a.area().force()));
        }
        t.row("friction of 0.3 fakes a place by", Say.length(a.frictionShift()));
        t.row("stiffness under a light round touch", QuantityText.format(a.padStiffness(), Measure.STIFFNESS, 3));
        t.row("follows the air's pressure by", QuantityText.number(a.response().ambientRatio(), 3));
        Table over = new Table("rrrr", "rubber over chip", "per newton", "recommended pitch", "widest pitch");
        a.thicknesses()
                .forEach(p -> over.row(
                        Say.length(p.overChip()),
                        kPaPerN(p.peak()),
                        Say.length(p.recommendedPitch()),
                        Say.length(p.widestPitch())));
        String hard = a.hardnesses().stream()
                .map(h -> Say.pressure(h.modulus()) + ": " + kPaPerN(h.peak()))
                .collect(Collectors.joining(", "));
        return t + "\n\n" + over + "\n\n" + Words.wrapped("Hardness matters little: " + hard + ".");
    }

    private static String bound(double place) {
        return Double.isInfinite(place) ? "not to be told" : "+-" + Say.length(place);
    }

    private static String kPaPerN(double value) {
        return QuantityText.number(value / 1e3, 3) + " kPa/N";
    }

    private static String ms(double seconds) {
        return Double.isNaN(seconds) ? "-" : QuantityText.number(1e3 * seconds, 3) + " ms";
    }

    static String of(ScanAnswer scan) {
        StringBuilder out = new StringBuilder();
        out.append("bus      ").append(scan.bus().spi() ? "SPI" : "I2C").append(" at ");
        out.append(QuantityText.format(scan.bus().clock(), Measure.FREQUENCY)).append(", ");
        out.append(Say.count(scan.chips(), "chip", "chips"))
                .append(", timed as '")
                .append(scan.chip().name());
        out.append("'\n\n");
        Table t = new Table("lrrrl", "scheme", "scan", "scans per second", "age at most", "");
        for (Bus.Plan p : scan.plans()) {
            t.row(
                    p.scheme().label(),
                    ms(p.period()),
                    p.possible() ? QuantityText.number(1 / p.period(), 3) : "-",
                    ms(p.age()),
                    p.possible() ? p.scheme().meaning() : "not possible");
        }
        out.append(t).append("\n\n");
        List<String> obstacles = scan.plans().stream()
                .map(Bus.Plan::obstacle)
                .filter(o -> !o.isEmpty())
                .distinct()
                .toList();
        obstacles.forEach(
                o -> out.append(Words.wrapped("Not possible: " + o + ".")).append('\n'));
        scan.fastest()
                .ifPresent(
                        p -> out.append(Words.wrapped("Fastest: " + p.scheme().label() + ", all "
                                        + scan.chips() + " chips in " + ms(p.period())
                                        + ". Real drivers add gaps: take it as an"
                                        + " upper bound of the speed."))
                                .append('\n'));
        scan.fastest()
                .filter(plan -> scan.chip().temperatureEvery() > 0)
                .ifPresent(
                        plan -> out.append(Words.wrapped("Every " + scan.chip().temperatureEvery()
                                        + " scans the temperatures are read too: that scan takes "
                                        + ms(plan.withTemperature()) + ", and the mean period is " + ms(plan.mean())
                                        + "."))
                                .append('\n'));
        scan.limits()
                .ifPresent(l -> out.append(Words.wrapped("Pull-up: "
                                + (l.feasible()
                                        ? "between " + ohm(l.least()) + " and " + ohm(l.greatest())
                                        : "at least " + ohm(l.least()) + ", but at most " + ohm(l.greatest()))
                                + " (UM10204, section 7.1)"
                                + (scan.electrical().isEmpty() ? "." : ": " + scan.electrical() + ".")))
                        .append('\n'));
        return out.toString().stripTrailing();
    }

    private static String ohm(double value) {
        return QuantityText.format(value, Measure.RESISTANCE, 3);
    }

    private static String pushed(Push.Result result) {
        return Double.isInfinite(result.moved()) ? "for good" : Say.length(result.moved());
    }

    static String of(TouchAnswer touch, TouchStop stop, double period) {
        TouchStop.Forces f = touch.forces();
        StringBuilder out = new StringBuilder();
        out.append("pad      ")
                .append(touch.pad().name())
                .append(", read every ")
                .append(ms(period))
                .append('\n');
        out.append(Words.wrapped("touch    threshold " + QuantityText.number(f.deviations(), 3) + " times the noise, "
                        + Say.force(f.threshold()) + " between two chips; noticed at " + Say.force(f.detection())
                        + "; halts " + ms(f.delay()) + " later, on a fixed object at " + Say.force(f.peak())))
                .append('\n');
        TouchStop.Forces b = touch.overChip();
        out.append(Words.wrapped("Met over a chip the threshold is " + Say.force(b.threshold()) + ", noticed at "
                        + Say.force(b.detection()) + ", on a fixed object at " + Say.force(b.peak()) + "; "
                        + (touch.averaging() < 2
                                ? "averaging while the finger moves only makes it worse"
                                : "a running mean of " + Math.round(touch.averaging())
                                        + " readings gives the least force there")
                        + "."))
                .append("\n\n");
        Table t = new Table(
                "lrrrrl", "object", "table holds it by", "met over a chip", "met between two", "greatest force", "");
        for (TouchAnswer.Touched o : touch.objects()) {
            t.row(
                    o.name(),
                    Say.force(o.friction()),
                    pushed(o.overChip()),
                    pushed(o.result()),
                    Say.force(o.result().peak()),
                    !o.result().noticed()
                            ? "never felt"
                            : o.knocked() ? "knocked away" : o.result().moved() > 0 ? "nudged" : "stays");
        }
        out.append(t).append("\n\n");
        List<String> away = touch.objects().stream()
                .filter(TouchAnswer.Touched::knocked)
                .map(TouchAnswer.Touched::name)
                .toList();
        double glide = stop.speed() * f.delay();
        out.append(Words.wrapped(
                away.isEmpty()
                        ? "Nothing is pushed further than " + Say.length(TouchAnswer.KNOCKED)
                                + " before the finger has stopped."
                        : "Pushed further than " + Say.length(TouchAnswer.KNOCKED) + ": " + String.join(", ", away)
                                + (touch.objects().stream()
                                                .anyMatch(o -> !o.result().noticed())
                                        ? ". Some are never felt between two chips, where the pad is too deaf: close its"
                                                + " gaps first ('gripwright pad')"
                                        : "")
                                + ". After it is felt the finger still goes " + Say.length(glide)
                                + ": a slower finger, a quicker scan, harder braking or a softer pad help; more sensitive"
                                + " chips only where the object is felt late."));
        return out.toString();
    }
}
