package gripwright.cli;

import gripwright.closing.Outcome;
import gripwright.study.Refinement;
import gripwright.study.Sureness;
import gripwright.study.Uncertain;
import java.util.List;
import java.util.stream.Collectors;

/** How sure one closing is, and what a finer calculation changes. */
final class SureText {
    private SureText() {}

    static String of(Sureness s, Outcome outcome) {
        int runs = s.held().runs();
        if (s.clear()) {
            return Words.wrapped("sure     all " + runs + " runs with friction, mass, pads and springs as uncertain as"
                    + " stated are " + (outcome == Outcome.HELD ? "held" : "not held"));
        }
        String flips = s.flips().isEmpty()
                ? "no single one of them turns it by one deviation; they act together"
                : "what turns it alone: "
                        + s.flips().stream()
                                .map(f -> f.input() + " " + f.change() + " ("
                                        + f.outcome().words() + ")")
                                .collect(Collectors.joining(", "));
        return Words.wrapped("sure     not clear-cut: held in " + s.held().successes() + " of "
                        + s.held().trials()
                        + " runs with friction, mass, pads and springs as uncertain as stated (95 % interval "
                        + Say.interval(s.held()) + "), " + s.held().undecided() + " undecided; " + flips)
                + "\n" + Words.wrapped(Uncertain.RULE);
    }

    static String of(List<Refinement> all) {
        Table table = new Table(
                "llrrrrr", "calculated with", "outcome", "object moves", "turns", "a joint", "force", "pressure");
        for (Refinement r : all) {
            table.row(
                    r.choice(),
                    Say.outcome(r.finer().summary().outcome()) + (r.turns() ? " (turned)" : ""),
                    Say.length(r.moved()),
                    Say.angle(r.turned()),
                    Say.angle(r.joint()),
                    Say.force(r.force()),
                    Say.pressure(r.pressure()));
        }
        boolean turns = all.stream().anyMatch(Refinement::turns);
        return table + "\n"
                + Words.wrapped(
                        turns
                                ? "The outcome here depends on the calculation: believe neither answer."
                                : "Changes at the end of the run against the usual calculation; the outcome stays.");
    }
}
