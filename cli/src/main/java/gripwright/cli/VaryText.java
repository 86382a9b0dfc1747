package gripwright.cli;

import gripwright.study.DesignChange.Kind;
import gripwright.study.DesignChanges;
import gripwright.study.Vary;
import gripwright.study.VaryFindings;
import gripwright.study.VaryResult;
import gripwright.study.VaryResult.Effect;
import gripwright.units.QuantityText;
import java.util.List;

/** What changes of a hand do, ranked. */
final class VaryText {
    private VaryText() {}

    static String of(VaryResult vary) {
        StringBuilder text = new StringBuilder();
        text.append(Say.count(vary.runs(), "run", "runs"))
                .append(" and ")
                .append(Say.count(vary.places(), "place", "places"))
                .append(" for each of ")
                .append(Say.count(vary.objects().size(), "object", "objects"))
                .append(" and each of ")
                .append(Say.count(vary.wanted(), "change", "changes"))
                .append(", seed ")
                .append(vary.seed());
        text.append(vary.stopped() ? "; stopped after " + vary.effects().size() + " changes" : "")
                .append("\n\n");
        text.append("as it is   success ")
                .append(Say.percent(vary.success().share()))
                .append(" (")
                .append(Say.interval(vary.success().low(), vary.success().high()))
                .append("), capture area ")
                .append(area(vary.area().value()))
                .append(" (")
                .append(area(vary.area().low()))
                .append(" to ")
                .append(area(vary.area().high()))
                .append(" cm2), ")
                .append(vary.undecided())
                .append(" undecided\n\n");
        text.append(table("change", vary.ranked(Kind.DESIGN))).append("\n\n");
        text.append(table("fault", vary.ranked(Kind.FAULT))).append("\n\n");
        text.append(Words.wrapped(VaryFindings.best(vary))).append("\n\n");
        text.append(Words.wrapped(DesignChanges.RULE)).append('\n');
        text.append(Words.wrapped(Vary.DEFINITION));
        return text.toString();
    }

    private static Table table(String head, List<Effect> effects) {
        Table table = new Table(
                "lrrrrrl", head, "success", "95 % interval", "capture area", "95 % interval", "undecided", "");
        for (Effect e : effects) {
            if (e.possible()) {
                table.row(
                        e.words(),
                        points(e.success().value()),
                        points(e.success().low()) + " to " + points(e.success().high()),
                        change(e.area().value()) + " cm2",
                        change(e.area().low()) + " to " + change(e.area().high()),
                        "" + e.undecided(),
                        e.success().settled() ? "" : "can be luck");
            } else {
                table.row(e.words(), "-", "-", "-", "-", "-", "not possible: " + e.impossible());
            }
        }
        return table;
    }

    private static String points(double share) {
        return VaryFindings.points(share);
    }

    /** An area in cm2 with a sign. */
    private static String change(double squareMetres) {
        return VaryFindings.signed(1e4 * squareMetres);
    }

    private static String area(double squareMetres) {
        return QuantityText.number(squareMetres * 1e4, 3);
    }
}
