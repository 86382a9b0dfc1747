package gripwright.files;

import gripwright.closing.Outcome;
import gripwright.files.ScoreSheet.Sheet;
import gripwright.files.SheetTable.Row;
import gripwright.model.GraspObject;
import gripwright.model.Grip;
import gripwright.model.Project;
import gripwright.study.FieldTrial;
import gripwright.study.Placed;
import gripwright.study.TrialReason;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Makes trials of the lines of one score sheet and notes every fault with its line. */
final class SheetRows {
    private static final int MOST_TRIALS = 5_000;
    private static final int MOST_HANDS = 12;
    private static final double FARTHEST_MM = 1_000;
    private static final double MOST_TURN_DEG = 360;

    private final SheetTable table;
    private final SheetCells cells;
    private final SheetMemory memory;
    private final Project project;
    private final boolean soFar;
    private final List<Fault> faults;
    private int open;
    private int trials;

    SheetRows(SheetTable table, Project project, boolean soFar, List<Fault> faults) {
        this.table = table;
        this.cells = new SheetCells(table);
        this.memory = new SheetMemory(table);
        this.project = project;
        this.soFar = soFar;
        this.faults = faults;
    }

    Sheet read() {
        List<FieldTrial> found = new ArrayList<>();
        for (Row row : table.rows()) {
            FieldTrial trial = trial(row);
            if (trial != null) {
                found.add(trial);
            }
        }
        if (faults.isEmpty() && found.isEmpty()) {
            table.fault(
                    table.headLine(),
                    1,
                    open == 0 ? "no trial follows the column names" : "no trial has an outcome yet",
                    "one line per trial, with its outcome",
                    null);
        }
        if (trials > MOST_TRIALS) {
            table.fault(
                    table.headLine(),
                    1,
                    "the sheet counts " + trials + " trials",
                    "at most " + MOST_TRIALS + " in one sheet",
                    null);
        }
        if (memory.hands() > MOST_HANDS) {
            table.fault(
                    table.headLine(),
                    1,
                    "the sheet names " + memory.hands() + " hands",
                    "at most " + MOST_HANDS + " labels in the column '" + ScoreSheet.HAND + "'",
                    null);
        }
        return new Sheet(found, open, table.aside());
    }

    /** The trial of a line, or null if it is not made yet or has faults. */
    private @Nullable FieldTrial trial(Row row) {
        int before = faults.size();
        int number = number(row);
        String hand = hand(row);
        String object = cells.named(
                row,
                ScoreSheet.OBJECT,
                project.need().objects().stream().map(GraspObject::name).toList(),
                "object of " + ProjectReader.NEED);
        String grip = cells.named(
                row,
                ScoreSheet.GRIP,
                project.hand().grips().stream().map(Grip::name).toList(),
                "grip of " + ProjectReader.HAND);
        Optional<Placed> placed = placed(row);
        String pair = cells.label(row, ScoreSheet.PAIR);
        int count = count(row, pair);
        String reasonWord = table.cell(row, ScoreSheet.REASON);
        if (table.has(ScoreSheet.OUTCOME) && table.cell(row, ScoreSheet.OUTCOME).isEmpty()) {
            unmade(row, number, reasonWord);
            return null;
        }
        Outcome outcome = cells.outcome(row);
        Optional<TrialReason> reason = outcome == null ? Optional.empty() : cells.reason(row, outcome);
        if (faults.size() > before || outcome == null || number < 1 || object.isEmpty() || grip.isEmpty()) {
            return null;
        }
        FieldTrial trial = new FieldTrial(
                number, hand, object, grip, placed, outcome, reason, table.cell(row, ScoreSheet.NOTE), pair, count);
        memory.pair(row, trial);
        return faults.size() > before ? null : trial;
    }

    private int number(Row row) {
        int number =
                table.has(ScoreSheet.TRIAL) ? cells.whole(row, ScoreSheet.TRIAL, 1, "a whole number of 1 or more") : 0;
        if (number > 0) {
            memory.number(row, number);
        }
        return number;
    }

    private String hand(Row row) {
        if (!table.has(ScoreSheet.HAND)) {
            return project.hand().name();
        }
        String hand = cells.label(row, ScoreSheet.HAND);
        if (hand.isEmpty()) {
            cells.needed(row, ScoreSheet.HAND, "the label of the hand or setting, such as A");
        } else {
            memory.hand(row, hand);
        }
        return hand;
    }

    private int count(Row row, String pair) {
        if (!table.has(ScoreSheet.COUNT)) {
            return 1;
        }
        int count = cells.whole(row, ScoreSheet.COUNT, 0, "how many trials ended like this: 0 or more");
        if (count >= 0 && count != 1 && !pair.isEmpty()) {
            table.fault(
                    row,
                    ScoreSheet.COUNT,
                    "a pair with a count of " + count,
                    "a line of its own for each trial of a pair",
                    null);
        }
        trials += Math.max(0, Math.min(count, MOST_TRIALS + 1));
        return Math.max(0, count);
    }

    /** A line without an outcome: a trial not made yet, or one that somebody forgot. */
    private void unmade(Row row, int number, String reason) {
        if (soFar && reason.isEmpty()) {
            open++;
            return;
        }
        table.fault(
                row,
                ScoreSheet.OUTCOME,
                (number > 0 ? "trial " + number : "this trial") + " has "
                        + (reason.isEmpty() ? "no outcome" : "a reason but no outcome"),
                "one of " + ScoreSheet.outcomes()
                        + (reason.isEmpty() ? "; with --so-far, trials not made yet are left out" : ""),
                null);
    }

    private Optional<Placed> placed(Row row) {
        List<String> names = List.of(ScoreSheet.X, ScoreSheet.Y, ScoreSheet.TURN);
        List<String> given =
                names.stream().filter(n -> !table.cell(row, n).isEmpty()).toList();
        if (given.isEmpty()) {
            return Optional.empty();
        }
        Map<String, Double> values = new HashMap<>();
        for (String name : given) {
            Double one = cells.number(row, name, name.equals(ScoreSheet.TURN) ? MOST_TURN_DEG : FARTHEST_MM);
            if (one != null) {
                values.put(name, one);
            }
        }
        if (given.size() < names.size()) {
            String missing = String.join(
                    " and ", names.stream().filter(n -> !given.contains(n)).toList());
            table.fault(
                    row,
                    given.get(0),
                    "a place without " + missing,
                    "x_mm, y_mm and turn_deg together, or all three empty where nobody measured",
                    null);
        }
        return values.size() < names.size()
                ? Optional.empty()
                : Optional.of(ScoreSheet.placed(
                        values.getOrDefault(ScoreSheet.X, 0.0),
                        values.getOrDefault(ScoreSheet.Y, 0.0),
                        values.getOrDefault(ScoreSheet.TURN, 0.0)));
    }
}
