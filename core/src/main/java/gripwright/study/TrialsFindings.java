package gripwright.study;

import gripwright.closing.Outcome;
import gripwright.model.Grip.Approach;
import gripwright.model.Need;
import gripwright.model.Project;
import gripwright.stats.BinomialIntervals;
import gripwright.stats.Interval;
import gripwright.study.Finding.Topic;
import gripwright.study.TrialsResult.Best;
import gripwright.study.TrialsResult.Influence;
import gripwright.study.TrialsResult.Pair;
import gripwright.study.TrialsResult.Split;
import gripwright.study.TrialsResult.Weighted;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** Sentences about one set of trials. */
final class TrialsFindings {
    private static final int NAMED = 3;

    private final Project project;
    private final Need need;
    private final TrialsResult result;
    private final List<Finding> findings = new ArrayList<>();

    TrialsFindings(Project project, TrialsResult result) {
        this.project = project;
        this.need = project.need();
        this.result = result;
    }

    List<Finding> all() {
        answer();
        objects(Verdict.REACHES, "Picked up at least as often as wanted");
        objects(Verdict.MAY_REACH, "Not settled by these runs (the wanted share lies inside the interval)");
        objects(Verdict.BELOW, "Picked up less often than wanted");
        objects(Verdict.UNKNOWN, "Not counted (no decided run)");
        costliest();
        List<Best> byCost = result.best().stream()
                .sorted(Comparator.comparingDouble(this::cost).reversed())
                .toList();
        for (Best best : byCost) {
            Pair pair = result.pair(best.object(), best.grip());
            reasons(pair);
            where(pair);
            inputs(pair);
            grips(best);
        }
        cautions();
        return findings;
    }

    private void answer() {
        Weighted total = result.weighted();
        if (Double.isNaN(total.share())) {
            add(Topic.ANSWER, "", "", "No decided run with a weight above 0: the total is unknown.");
            return;
        }
        Verdict verdict = Verdict.of(total, need.wantedSuccess());
        add(
                Topic.ANSWER,
                "",
                "",
                "With the best grip for each object, " + Phrases.percent(total.share())
                        + " of the weighted pick-ups hold (" + Phrases.interval(total.low(), total.high())
                        + ", 95 % interval). Wanted: " + Phrases.percent(need.wantedSuccess()) + ", "
                        + verdict.words() + ".");
    }

    private void objects(Verdict verdict, String title) {
        List<String> names = result.best().stream()
                .filter(best -> Verdict.of(best.success(), need.wantedSuccess()) == verdict)
                .map(best -> best.object() + " with " + best.grip()
                        + (verdict == Verdict.UNKNOWN ? "" : " " + Phrases.counted(best.success())))
                .toList();
        if (!names.isEmpty()) {
            add(Topic.OBJECTS, "", "", title + ": " + String.join("; ", names) + ".");
        }
    }

    // Weight times share failed; 0 where nothing is known.
    private double cost(Best best) {
        double share = best.success().share();
        return Double.isNaN(share) ? 0 : need.object(best.object()).weight() * (1 - share);
    }

    private void costliest() {
        double all = result.best().stream().mapToDouble(this::cost).sum();
        if (!(all > 0) || result.best().size() < 2) {
            return;
        }
        List<String> names = result.best().stream()
                .filter(best -> cost(best) > 0)
                .sorted(Comparator.comparingDouble(this::cost).reversed())
                .map(best -> "the " + best.object() + " " + Phrases.percent(cost(best) / all))
                .toList();
        add(Topic.OBJECTS, "", "", "Weighted failures by object: " + Phrases.list(names) + ".");
    }

    private void reasons(Pair pair) {
        List<Map.Entry<Outcome, Integer>> failures = failures(pair);
        if (failures.isEmpty()) {
            if (pair.success().trials() > 0) {
                add(
                        Topic.REASON,
                        pair.object(),
                        pair.grip(),
                        "The " + pair.object() + " holds in all "
                                + Phrases.runs(pair.success().trials()) + " with "
                                + pair.grip() + " (at least "
                                + (long) Math.floor(100 * pair.success().low()) + " %, 95 % interval).");
            }
            return;
        }
        int trials = pair.success().trials();
        Map.Entry<Outcome, Integer> first = failures.get(0);
        List<String> others = failures.stream()
                .skip(1)
                .map(failure -> failure.getKey().words() + " in " + failure.getValue())
                .toList();
        Interval interval = BinomialIntervals.wilson(first.getValue(), trials);
        add(
                Topic.REASON,
                pair.object(),
                pair.grip(),
                "The " + pair.object() + " " + Phrases.happened(first.getKey()) + " in " + first.getValue() + " of "
                        + Phrases.runs(trials) + " with " + pair.grip() + " ("
                        + Phrases.interval(interval.low(), interval.high()) + ")"
                        + (others.isEmpty() ? "" : ", " + Phrases.list(others)) + "; it holds in "
                        + pair.success().successes() + " ("
                        + Phrases.interval(pair.success().low(), pair.success().high()) + ").");
    }

    private static List<Map.Entry<Outcome, Integer>> failures(Pair pair) {
        return pair.outcomes().entrySet().stream()
                .filter(entry -> entry.getKey().decided() && entry.getKey() != Outcome.HELD && entry.getValue() > 0)
                .sorted(Map.Entry.<Outcome, Integer>comparingByValue().reversed())
                .toList();
    }

    private void where(Pair pair) {
        Approach approach = project.hand().grip(pair.grip()).approach();
        boolean first = true;
        for (Split split : pair.splits()) {
            Interval beyond = BinomialIntervals.wilson(split.failed(), split.runs());
            Interval elsewhere = BinomialIntervals.wilson(split.failedElsewhere(), split.runsElsewhere());
            add(
                    Topic.WHERE,
                    pair.object(),
                    pair.grip(),
                    (first ? "It fails" : "Otherwise it fails") + " more often when "
                            + Directions.when(split, pair.object(), approach) + ": " + split.failed() + " of "
                            + split.runs() + " such runs failed (" + Phrases.interval(beyond.low(), beyond.high())
                            + "), " + split.failedElsewhere() + " of the other " + split.runsElsewhere() + " did ("
                            + Phrases.interval(elsewhere.low(), elsewhere.high()) + ").");
            first = false;
        }
    }

    private void inputs(Pair pair) {
        if (pair.influence().isEmpty()) {
            return;
        }
        double noise = Influences.noise(pair.success(), pair.influence().size());
        List<String> strong = pair.influence().stream()
                .filter(influence -> influence.strength() > noise)
                .limit(NAMED)
                .map(TrialsFindings::rated)
                .toList();
        String luck = " (0 = no bearing, 1 = decides alone; up to " + decimals(noise) + " can be luck).";
        add(
                Topic.INPUTS,
                pair.object(),
                pair.grip(),
                strong.isEmpty()
                        ? "No sampled input stands out for the " + pair.object() + "; the strongest is "
                                + rated(pair.influence().get(0)) + luck
                        : "What decides for the " + pair.object() + ": " + Phrases.list(strong) + luck);
    }

    private static String rated(Influence influence) {
        return influence.input() + " " + decimals(influence.strength());
    }

    private static String decimals(double value) {
        return String.format(Locale.ROOT, "%.2f", value);
    }

    private void grips(Best best) {
        List<Pair> others = result.pairs().stream()
                .filter(pair ->
                        pair.object().equals(best.object()) && !pair.grip().equals(best.grip()))
                .toList();
        if (others.isEmpty() || best.success().trials() == 0) {
            return;
        }
        List<String> words = others.stream()
                .map(pair -> pair.grip() + " " + Phrases.counted(pair.success()) + mainFailure(pair))
                .toList();
        boolean beaten = others.stream()
                .anyMatch(pair -> pair.success().share() > best.success().share());
        add(
                Topic.GRIPS,
                best.object(),
                best.grip(),
                "For the " + best.object() + ", " + best.grip() + " was chosen on separate runs; on the scoring runs it"
                        + " holds in " + Phrases.counted(best.success()) + ", against " + Phrases.list(words) + "."
                        + (beaten ? " The choice is not settled: on these runs another grip does better." : ""));
    }

    private static String mainFailure(Pair pair) {
        List<Map.Entry<Outcome, Integer>> failures = failures(pair);
        return failures.isEmpty()
                ? ""
                : ", most often " + failures.get(0).getKey().words();
    }

    private void cautions() {
        if (result.stopped()) {
            add(
                    Topic.CAUTION,
                    "",
                    "",
                    "The study was stopped: " + result.scoredRuns() + " of " + result.wantedRuns()
                            + " scoring runs are done, and the choice of grips rests on a part of its runs too.");
        }
        int undecided = result.pairs().stream()
                .mapToInt(pair -> pair.success().undecided())
                .sum();
        if (undecided > 0) {
            add(
                    Topic.CAUTION,
                    "",
                    "",
                    undecided + " of " + Phrases.runs(result.scoredRuns())
                            + " undecided (the solver did not converge); they count neither as held nor as failed."
                            + range());
        }
    }

    // What the total would be had the undecided runs all gone one way.
    private String range() {
        double weights = 0;
        double worst = 0;
        double best = 0;
        for (Best b : result.best()) {
            Proportion p = b.success();
            double weight = p.runs() == 0 ? 0 : need.object(b.object()).weight();
            weights += weight;
            worst += p.runs() == 0 ? 0 : weight * p.successes() / p.runs();
            best += p.runs() == 0 ? 0 : weight * (p.successes() + p.undecided()) / p.runs();
        }
        return weights > 0 && best > worst
                ? " Had all of them failed, the total would be " + Phrases.percent(worst / weights) + "; had all held, "
                        + Phrases.percent(best / weights) + "."
                : "";
    }

    private void add(Topic topic, String object, String grip, String text) {
        findings.add(new Finding(topic, object, grip, text));
    }
}
