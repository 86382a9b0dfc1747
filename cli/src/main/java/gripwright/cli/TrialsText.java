package gripwright.cli;

import gripwright.closing.Outcome;
import gripwright.study.Trials;
import gripwright.study.TrialsResult;
import gripwright.study.TrialsResult.Pair;
import gripwright.study.Verdict;
import java.util.Comparator;
import java.util.Map;

/** Virtual trials as tables. */
final class TrialsText {
    private TrialsText() {}

    static String of(TrialsResult trials, double wanted) {
        return pairs(trials) + "\n\n" + best(trials, wanted) + "\n\n" + Words.wrapped(Trials.WEIGHTED_TOTAL);
    }

    private static Table pairs(TrialsResult trials) {
        Table table = new Table(
                "llrrrrll",
                "object",
                "grip",
                "held",
                "of",
                "95 % interval",
                "undecided",
                "mostly fails by",
                "what decides most");
        for (Pair pair : trials.pairs()) {
            table.row(
                    pair.object(),
                    pair.grip(),
                    "" + pair.success().successes(),
                    "" + pair.success().trials(),
                    Say.interval(pair.success()),
                    "" + pair.success().undecided(),
                    mainFailure(pair),
                    pair.influence().stream()
                            .filter(i -> i.strength() > 0)
                            .findFirst()
                            .map(TrialsResult.Influence::input)
                            .orElse("-"));
        }
        return table;
    }

    private static String mainFailure(Pair pair) {
        return pair.outcomes().entrySet().stream()
                .filter(e -> e.getKey() != Outcome.HELD && e.getKey() != Outcome.UNDECIDED && e.getValue() > 0)
                .max(Map.Entry.<Outcome, Integer>comparingByValue()
                        .thenComparing(Map.Entry.comparingByKey(Comparator.reverseOrder())))
                .map(e -> Say.outcome(e.getKey()) + " (" + e.getValue() + ")")
                .orElse("-");
    }

    /** Best grip per object, the total and the answer. */
    static String best(TrialsResult trials, double wanted) {
        Table table = new Table(
                "llrrrl",
                "object",
                "best grip",
                "success",
                "95 % interval",
                "undecided",
                "wanted " + Say.exactly(wanted));
        for (TrialsResult.Best best : trials.best()) {
            table.row(
                    best.object(),
                    best.grip(),
                    Say.percent(best.success().share()),
                    Say.interval(best.success()),
                    "" + best.success().undecided(),
                    Verdict.of(best.success(), wanted).words());
        }
        TrialsResult.Weighted total = trials.weighted();
        table.row(
                "all, weighted",
                "",
                Say.percent(total.share()),
                Say.interval(total.low(), total.high()),
                ""
                        + trials.best().stream()
                                .mapToInt(b -> b.success().undecided())
                                .sum(),
                Verdict.of(total, wanted).words());
        return table.toString();
    }

    /** The answer of the whole: undecided where the undecided runs of the best grips could turn it. */
    static Exit exit(TrialsResult trials, double wanted) {
        double share = trials.weighted().share();
        if (Double.isNaN(share)) {
            return Exit.UNDECIDED;
        }
        int undecided =
                trials.best().stream().mapToInt(b -> b.success().undecided()).sum();
        int decided = trials.best().stream().mapToInt(b -> b.success().trials()).sum();
        double room = (double) undecided / Math.max(1, decided + undecided);
        if (undecided > 0 && Math.abs(share - wanted) <= room) {
            return Exit.UNDECIDED;
        }
        return share >= wanted ? Exit.YES : Exit.NO;
    }
}
