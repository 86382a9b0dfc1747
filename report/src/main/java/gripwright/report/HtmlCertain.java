package gripwright.report;

import gripwright.closing.Outcome;
import gripwright.study.CellShare;
import gripwright.study.MapResult;
import gripwright.study.Refinement;
import gripwright.study.TrialsResult;
import java.util.ArrayList;
import java.util.List;

/** The section on how far the numbers can be believed. */
final class HtmlCertain {
    private HtmlCertain() {}

    static String section(ReportInput input) {
        Html page = new Html();
        if (input.refined().isEmpty()) {
            page.small("No closing was calculated finer. 'gripwright close --refine' does that for one.");
        } else {
            List<List<String>> rows = new ArrayList<>();
            for (ReportInput.Refined r : input.refined()) {
                r.refinements().forEach(f -> rows.add(row(r, f)));
            }
            page.say("Each object, closed on with its best grip at its nominal place, once more with one choice of the"
                    + " calculation made finer.");
            page.table(
                    "What a finer calculation changes at the end of the closing and lift.",
                    List.of(
                            "object",
                            "finer",
                            "outcome",
                            "#object moves",
                            "#turns",
                            "#a joint turns",
                            "#greatest force"),
                    rows);
        }
        input.trials().ifPresent(t -> page.small(undecided(t)));
        for (MapResult map : input.maps()) {
            if (map.hasShares()) {
                page.small("Map of the " + map.object() + " with " + map.grip() + ": " + map.count(CellShare::mixed)
                        + " of " + map.cells() * map.cells() + " places are held in part of their runs; "
                        + map.count(CellShare::modelLimited) + " depend on step or damping.");
            }
        }
        return page.done();
    }

    /** Objects whose outcome depends on the calculation, for the list of questions. */
    static String brief(ReportInput input) {
        long turned = input.refined().stream()
                .filter(r -> r.refinements().stream().anyMatch(Refinement::turns))
                .count();
        return input.refined().isEmpty()
                ? ""
                : turned + " of " + input.refined().size() + " outcomes change when calculated finer";
    }

    private static List<String> row(ReportInput.Refined r, Refinement f) {
        boolean first = f.equals(r.refinements().get(0));
        Outcome outcome = f.finer().summary().outcome();
        return List.of(
                first ? r.object() + ", " + r.grip() : "",
                f.choice(),
                f.turns()
                        ? outcome.words() + " instead of "
                                + f.usual().summary().outcome().words()
                        : outcome.words(),
                Num.mm(f.moved()),
                Num.degrees(f.turned()),
                Num.degrees(f.joint()),
                (f.force() >= 0.005 ? "+" : "") + Num.unit(Num.text(f.force(), 2), "N"));
    }

    private static String undecided(TrialsResult t) {
        int undecided = t.pairs().stream()
                .mapToInt(p -> p.outcomes().getOrDefault(Outcome.UNDECIDED, 0))
                .sum();
        return "Of the runs of the trials, " + undecided + (undecided == 1 ? " was" : " were")
                + " undecided; such a run counts neither as held nor as failed.";
    }
}
