package gripwright.cli;

import gripwright.study.PlanGoal;
import gripwright.study.TrialPlan;

/** A plan of trials as text. */
final class PlanText {
    private PlanText() {}

    static String of(TrialPlan plan) {
        Table table = new Table("llr", "object", "grip", plan.hands().size() > 1 ? "trials of each hand" : "trials");
        plan.parts().forEach(p -> table.row(p.object(), p.grip(), "" + p.perHand()));
        int each = plan.parts().stream().mapToInt(TrialPlan.Part::perHand).sum();
        table.row("all", "", "" + each);
        String goal = plan.goal() instanceof PlanGoal.Difference d
                ? "To see a difference of " + Say.exactly(d.points()) + " from an expected "
                        + Say.exactly(plan.expected())
                        + " with power " + Say.exactly(d.power()) + ", each hand needs " + plan.perHand() + " trials"
                        + (d.paired() ? ", in pairs at the same places." : ".")
                : "For a 95 % interval no wider than "
                        + Say.exactly(((PlanGoal.Width) plan.goal()).width())
                        + " at an expected " + Say.exactly(plan.expected()) + ", each hand needs " + plan.perHand()
                        + " trials.";
        String more = each > plan.perHand()
                ? " Planned are " + each + ", so that each object has at least " + gripwright.study.TrialPlanner.FEWEST
                        + "."
                : "";
        return Words.wrapped(goal + more) + "\n\n" + table + "\n\n"
                + Say.count(plan.trials().size(), "trial", "trials") + " of "
                + String.join(" and ", plan.hands()) + " in "
                + Say.count(plan.blocks(), "block", "blocks") + " over " + Say.count(plan.days(), "day", "days")
                + ", order and places by seed " + plan.seed() + "\n"
                + Words.wrapped(plan.goal().method());
    }
}
