package gripwright.study;

import gripwright.study.ExplainResult.Estimate;
import gripwright.study.ExplainResult.Foretold;
import gripwright.study.SheetScore.Comparison;
import gripwright.study.SheetScore.Rate;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What score sheets say, in sentences. */
public final class ScoreFindings {
    private ScoreFindings() {}

    /**
     * The answer first.
     *
     * @param wanted share of pick-ups that must work [-]
     * @param foretold true if the prediction was asked for
     */
    public static List<String> of(
            SheetScore score, double wanted, Optional<ExplainResult> explained, boolean foretold) {
        List<String> out = new ArrayList<>();
        score.hands().forEach(hand -> out.add(total(score.total(hand), wanted)));
        score.comparisons().stream().filter(Comparison::all).forEach(c -> out.add(compared(c)));
        score.comparisons().stream()
                .filter(c -> !c.all() && c.settled())
                .forEach(c -> out.add("On " + c.object() + " (" + c.grip() + "), " + c.second() + " against "
                        + c.first()
                        + ": " + more(c) + ", more than luck with all objects and grips counted (chance of luck "
                        + chance(c.corrected()) + ")."));
        if (explained.isPresent() && !explained.get().stopped()) {
            if (foretold) {
                out.add(foretold(explained.get().foretold()));
            }
            explained.get().estimates().forEach(e -> out.add(estimate(Phrases.sentenceCase(e.words()), e)));
        }
        return out;
    }

    private static String total(Rate r, double wanted) {
        if (r.decided() == 0) {
            return Phrases.sentenceCase(r.hand()) + ": no decided trial.";
        }
        double low = r.interval().low();
        double high = r.interval().high();
        String verdict = low >= wanted
                ? "this reaches them"
                : high < wanted ? "this falls short" : "this may reach them, which these trials do not settle";
        return Phrases.sentenceCase(r.hand()) + ": held in " + r.held() + " of " + Phrases.plural(r.decided(), "trial")
                + " (" + Phrases.percent(r.share()) + ", 95 % interval " + Phrases.interval(low, high)
                + "); wanted are "
                + Phrases.percent(wanted) + ", and " + verdict + "."
                + (r.undecided() > 0 ? " Not counted: " + Phrases.plural(r.undecided(), "trial") + "." : "");
    }

    private static String compared(Comparison c) {
        if (Double.isNaN(c.difference())) {
            return Phrases.sentenceCase(c.second()) + " against " + c.first() + ": no object and grip in common.";
        }
        String how = c.pairs().isPresent()
                ? c.pairs().get().all() + " pairs, exact McNemar test"
                : "Fisher's exact test on " + c.secondOf() + " and " + c.of() + " trials";
        String luck = "chance of luck " + chance(c.corrected());
        String start = Phrases.sentenceCase(c.second()) + " against " + c.first() + ": " + more(c);
        if (c.settled()) {
            return start + "; that is more than luck (" + how + ", " + luck + ").";
        }
        String needed = c.needed().isPresent()
                ? " To settle a difference as great as this takes about "
                        + c.needed().getAsInt() + " more " + (c.pairs().isPresent() ? "pairs." : "trials of each.")
                : "";
        return start + "; that can be luck (" + how + ", " + luck + ")." + needed
                + (c.note().isEmpty() ? "" : " Caution: " + c.note() + ".");
    }

    private static String more(Comparison c) {
        long points = Math.round(100 * Math.abs(c.difference()));
        return points + (points == 1 ? " point " : " points ") + (c.difference() < 0 ? "less" : "more") + " held"
                + " (95 % interval of the difference "
                + Math.round(100 * c.interval().low()) + " to "
                + Math.round(100 * c.interval().high()) + ")";
    }

    private static String foretold(List<Foretold> all) {
        List<String> off = all.stream()
                .filter(Foretold::off)
                .map(f -> f.object() + " (" + f.grip() + "; predicted " + Phrases.percent(f.share()) + ", seen "
                        + f.held() + " of " + f.decided() + ")")
                .toList();
        return off.isEmpty()
                ? "All " + Phrases.plural(all.size(), "prediction") + " agree with what was seen, within chance."
                : "The prediction is off by more than chance for " + Phrases.list(off)
                        + others(all.size() - off.size());
    }

    private static String others(int count) {
        return count == 0
                ? "."
                : count == 1
                        ? "; the other one agrees within chance."
                        : "; the other " + count + " agree within chance.";
    }

    private static String estimate(String what, Estimate e) {
        if (e.silent()) {
            return what + ": these " + Phrases.plural(e.trials(), "trial") + " do not tell.";
        }
        String interval =
                (e.openLow() ? "below " : "") + two(e.low()) + " to " + (e.openHigh() ? "over " : "") + two(e.high());
        return what + ": " + Phrases.plural(e.trials(), "trial") + " support " + two(e.value())
                + " times what is assumed" + e.beyond() + " (" + interval + ")"
                + (e.off()
                        ? ", which refutes the assumption (chance of luck " + chance(e.corrected()) + ")."
                        : e.allows(1)
                                ? ", which agrees with it."
                                : ", which alone does not refute it (chance of luck " + chance(e.corrected()) + ").");
    }

    private static String two(double value) {
        return new BigDecimal(value)
                .round(new MathContext(2))
                .stripTrailingZeros()
                .toPlainString();
    }

    /** A chance to two digits, never 0. */
    static String chance(double p) {
        return p < 1e-4 ? "below 0.0001" : two(p);
    }
}
