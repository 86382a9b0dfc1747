package gripwright.files;

import gripwright.files.SheetTable.Row;
import gripwright.study.FieldTrial;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** What earlier lines of a score sheet said, to find lines that contradict them. */
final class SheetMemory {
    private final SheetTable table;
    private final Map<Integer, Integer> lineOfTrial = new HashMap<>();
    private final Map<String, First<String>> hands = new HashMap<>();
    private final Map<List<String>, Integer> lineOfPair = new HashMap<>();
    private final Map<List<String>, First<FieldTrial>> places = new HashMap<>();

    private record First<T>(T what, int line) {}

    SheetMemory(SheetTable table) {
        this.table = table;
    }

    int hands() {
        return hands.size();
    }

    void number(Row row, int number) {
        Integer first = lineOfTrial.putIfAbsent(number, row.line());
        if (first != null) {
            table.fault(
                    row,
                    ScoreSheet.TRIAL,
                    "trial " + number + " is there twice, first in line " + first,
                    "each trial number once",
                    null);
        }
    }

    /** Two spellings of one label would be two hands, each with half of the trials. */
    void hand(Row row, String label) {
        String key = label.toLowerCase(Locale.ROOT).replaceAll("\\s+", " ");
        First<String> first = hands.putIfAbsent(key, new First<>(label, row.line()));
        if (first != null && !first.what.equals(label)) {
            table.fault(
                    row,
                    ScoreSheet.HAND,
                    "hand is '" + Words.clip(label) + "', but '" + Words.clip(first.what) + "' in line " + first.line,
                    "one spelling for one hand",
                    first.what);
        }
    }

    void pair(Row row, FieldTrial trial) {
        if (trial.pair().isEmpty()) {
            return;
        }
        Integer before =
                lineOfPair.putIfAbsent(List.of(trial.object(), trial.grip(), trial.pair(), trial.hand()), row.line());
        if (before != null) {
            table.fault(
                    row,
                    ScoreSheet.PAIR,
                    "hand '" + Words.clip(trial.hand()) + "' has pair '" + Words.clip(trial.pair())
                            + "' twice, first in line " + before,
                    "one trial of each hand in a pair",
                    null);
            return;
        }
        First<FieldTrial> first =
                places.putIfAbsent(List.of(trial.object(), trial.grip(), trial.pair()), new First<>(trial, row.line()));
        if (first != null && !first.what.placed().equals(trial.placed())) {
            table.fault(
                    row,
                    ScoreSheet.PAIR,
                    "pair '" + Words.clip(trial.pair()) + "' stood elsewhere in line " + first.line,
                    "the same x_mm, y_mm and turn_deg for all hands of a pair",
                    null);
        }
    }
}
