package gripwright.cli;

import gripwright.closing.Policy;
import gripwright.study.PolicyResult;
import gripwright.study.PolicyResult.Row;
import gripwright.units.QuantityText;
import java.util.List;
import java.util.function.Predicate;
import java.util.stream.Collectors;

/** What one policy is worth beside another. */
final class PolicyText {
    private PolicyText() {}

    static String of(Policy policy, Policy against, PolicyResult r) {
        StringBuilder text = new StringBuilder();
        text.append(Words.wrapped(policy.word() + ": " + policy.says())).append('\n');
        text.append(Words.wrapped(against.word() + ": " + against.says())).append('\n');
        text.append(Say.count(r.wanted(), "run", "runs"))
                .append(" of both for each object and grip, seed ")
                .append(r.seed())
                .append(", noise seed ")
                .append(r.noiseSeed())
                .append(r.stopped() ? "; stopped before the end" : "")
                .append("\n\n");
        text.append(table(r)).append("\n\n");
        r.rows().stream()
                .filter(row -> !row.possible())
                .map(row -> Words.wrapped(
                        "not possible: " + row.object() + " with " + row.grip() + ": " + row.impossible()))
                .forEach(line -> text.append(line).append('\n'));
        for (String line : worth(r)) {
            text.append(Words.wrapped(line)).append('\n');
        }
        text.append('\n').append(Words.wrapped(PolicyResult.DEFINITION));
        return text.toString();
    }

    private static Table table(PolicyResult r) {
        Table table = new Table(
                "llrrrrrrrr",
                "object",
                "grip",
                r.policy(),
                r.against(),
                "success",
                "95 % interval",
                "moved",
                r.against(),
                "change",
                "95 % interval, mm");
        for (Row row : r.rows()) {
            if (row.possible()) {
                table.row(
                        row.object(),
                        row.grip(),
                        (row.both() + row.gained()) + "/" + row.pairs(),
                        (row.both() + row.lost()) + "/" + row.pairs(),
                        signed(1e2 * row.successChange()),
                        signed(1e2 * row.success().low()) + " to "
                                + signed(1e2 * row.success().high()),
                        number(1e3 * row.moved()),
                        number(1e3 * row.movedAgainst()),
                        signed(1e3 * row.change()),
                        signed(1e3 * row.changeInterval().low()) + " to "
                                + signed(1e3 * row.changeInterval().high()));
            }
        }
        return table;
    }

    /** What it buys and what it does not, in sentences. */
    static List<String> worth(PolicyResult r) {
        return List.of(
                list(r, "More success beyond luck: ", row -> row.successSettled() && row.successChange() > 0),
                list(r, "Less success beyond luck: ", row -> row.successSettled() && row.successChange() < 0),
                list(r, "The object is moved less, beyond luck: ", row -> row.changeSettled() && row.change() < 0),
                list(r, "The object is moved more, beyond luck: ", row -> row.changeSettled() && row.change() > 0),
                list(
                        r,
                        "No difference that could not be luck: ",
                        row -> !row.successSettled() && !row.changeSettled()));
    }

    private static String list(PolicyResult r, String head, Predicate<Row> which) {
        String names = r.rows().stream()
                .filter(Row::possible)
                .filter(which)
                .map(row -> row.object() + " with " + row.grip())
                .collect(Collectors.joining(", "));
        return head + (names.isEmpty() ? "none" : names) + ".";
    }

    private static String signed(double value) {
        if (!Double.isFinite(value)) {
            return "-";
        }
        return (value > 0 ? "+" : "") + number(value);
    }

    private static String number(double value) {
        return Double.isFinite(value) ? QuantityText.number(Math.rint(10 * value) / 10 + 0.0, 4) : "-";
    }
}
