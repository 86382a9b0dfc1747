package gripwright.files;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvRecord;
import gripwright.closing.Outcome;
import gripwright.files.ScoreSheet.Sheet;
import gripwright.model.GraspObject;
import gripwright.model.Grip;
import gripwright.model.Project;
import gripwright.study.FieldTrial;
import gripwright.study.Placed;
import gripwright.study.TrialReason;
import gripwright.units.Nearest;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Reads the lines of one score sheet and notes every fault with its line. */
final class SheetRows {
    private static final int MOST_TRIALS = 5_000;
    private static final double FARTHEST_MM = 1_000;
    private static final double MOST_TURN_DEG = 360;
    private static final Pattern WHOLE = Pattern.compile("[+-]?[0-9]{1,9}");
    private static final Pattern NUMBER = Pattern.compile("[+-]?([0-9]+\\.?[0-9]*|\\.[0-9]+)");

    private final SourceText source;
    private final Project project;
    private final boolean soFar;
    private final List<Fault> faults;
    private final char separator;
    private final Map<String, Integer> columns = new HashMap<>();
    private final Map<Integer, Integer> lineOfTrial = new HashMap<>();
    private final Map<String, Integer> lineOfPair = new HashMap<>();
    private final Map<String, FieldTrial> placeOfPair = new LinkedHashMap<>();
    private final Map<String, Integer> lineOfPlace = new HashMap<>();
    private List<String> head = List.of();
    private int open;
    private int trials;

    SheetRows(SourceText source, Project project, boolean soFar, List<Fault> faults) {
        this.source = source;
        this.project = project;
        this.soFar = soFar;
        this.faults = faults;
        this.separator = ScoreSheet.separator(source);
    }

    @Nullable
    Sheet read() {
        List<CsvRecord> records;
        try {
            records = ScoreSheet.records(source);
        } catch (CsvParseException e) {
            fault(
                    1,
                    1,
                    "this is not CSV: " + e.getMessage(),
                    "cells between commas, texts with commas in \"quotes\"",
                    null);
            return null;
        }
        if (records.isEmpty()) {
            fault(1, 1, "the sheet is empty", "a line of column names (" + names() + ") and one line per trial", null);
            return null;
        }
        if (!head(records.get(0))) {
            return null;
        }
        List<FieldTrial> found = new ArrayList<>();
        for (CsvRecord row : records.subList(1, records.size())) {
            FieldTrial trial = row(row);
            if (trial != null) {
                found.add(trial);
            }
        }
        if (faults.isEmpty() && found.isEmpty()) {
            fault(
                    (int) records.get(0).getStartingLineNumber(),
                    1,
                    open == 0 ? "no trial follows the column names" : "no trial has an outcome yet",
                    "one line per trial, with its outcome",
                    null);
        }
        if (trials > MOST_TRIALS) {
            fault(1, 1, "the sheet counts " + trials + " trials", "at most " + MOST_TRIALS + " in one sheet", null);
        }
        return new Sheet(found, open);
    }

    private static String names() {
        return String.join(",", ScoreSheet.WRITTEN);
    }

    private boolean head(CsvRecord row) {
        int line = (int) row.getStartingLineNumber();
        head = row.getFields().stream().map(String::strip).toList();
        int before = faults.size();
        for (int i = 0; i < head.size(); i++) {
            String name = head.get(i);
            if (!ScoreSheet.KNOWN.contains(name)) {
                fault(
                        line,
                        column(row, i),
                        "'" + Words.clip(name) + "' is no column of a score sheet",
                        "some of " + Words.list(ScoreSheet.KNOWN),
                        Nearest.to(name, ScoreSheet.KNOWN).orElse(null));
            } else if (columns.putIfAbsent(name, i) != null) {
                fault(line, column(row, i), "column '" + name + "' is there twice", "each column once", null);
            }
        }
        for (String required : ScoreSheet.REQUIRED) {
            if (!columns.containsKey(required)) {
                fault(line, 1, "there is no column '" + required + "'", "column names such as " + names(), null);
            }
        }
        return faults.size() == before;
    }

    private @Nullable FieldTrial row(CsvRecord row) {
        int line = (int) row.getStartingLineNumber();
        if (row.getFields().stream().map(String::strip).toList().equals(head)) {
            fault(
                    line,
                    1,
                    "a second line of column names",
                    "one line of column names at the top; were two sheets pasted together? Score them apart with --against",
                    null);
            return null;
        }
        if (row.getFieldCount() != head.size()) {
            fault(
                    line,
                    1,
                    "the line has " + row.getFieldCount() + " cells, the column names are " + head.size(),
                    "one cell for each column; texts with commas in \"quotes\"",
                    null);
            return null;
        }
        int before = faults.size();
        int number = whole(row, ScoreSheet.TRIAL, 0);
        if (faults.size() == before && number < 1) {
            fault(row, ScoreSheet.TRIAL, "trial is " + number, "a whole number of 1 or more", null);
        } else if (faults.size() == before) {
            Integer first = lineOfTrial.putIfAbsent(number, line);
            if (first != null) {
                fault(
                        row,
                        ScoreSheet.TRIAL,
                        "trial " + number + " is there twice, first in line " + first,
                        "each trial number once",
                        null);
            }
        }
        String hand = columns.containsKey(ScoreSheet.HAND)
                ? needed(row, ScoreSheet.HAND, "the label of the hand or setting, such as A")
                : project.hand().name();
        String object = named(
                row,
                ScoreSheet.OBJECT,
                project.need().objects().stream().map(GraspObject::name).toList(),
                "object of " + ProjectReader.NEED);
        String grip = named(
                row,
                ScoreSheet.GRIP,
                project.hand().grips().stream().map(Grip::name).toList(),
                "grip of " + ProjectReader.HAND);
        Optional<Placed> placed = placed(row);
        String pair = cell(row, ScoreSheet.PAIR);
        int count = columns.containsKey(ScoreSheet.COUNT) ? whole(row, ScoreSheet.COUNT, 1) : 1;
        if (count < 0) {
            fault(row, ScoreSheet.COUNT, "count is " + count, "how many trials ended like this: 0 or more", null);
        } else if (count != 1 && !pair.isEmpty()) {
            fault(
                    row,
                    ScoreSheet.COUNT,
                    "a pair with a count of " + count,
                    "a line of its own for each trial of a pair",
                    null);
        }
        trials += Math.max(0, Math.min(count, MOST_TRIALS + 1));
        if (cell(row, ScoreSheet.OUTCOME).isEmpty()) {
            if (soFar && cell(row, ScoreSheet.REASON).isEmpty()) {
                open++;
            } else {
                fault(
                        row,
                        ScoreSheet.OUTCOME,
                        "trial " + number + " has no outcome",
                        "one of " + ScoreSheet.outcomes() + "; with --so-far, trials not made yet are left out",
                        null);
            }
            return null;
        }
        Outcome outcome = outcome(row);
        Optional<TrialReason> reason = outcome == null ? Optional.empty() : reason(row, outcome);
        if (faults.size() > before || outcome == null) {
            return null;
        }
        FieldTrial trial = new FieldTrial(
                number, hand, object, grip, placed, outcome, reason, cell(row, ScoreSheet.NOTE), pair, count);
        checkPair(row, line, trial);
        return faults.size() > before ? null : trial;
    }

    private @Nullable Outcome outcome(CsvRecord row) {
        String word = cell(row, ScoreSheet.OUTCOME);
        for (Outcome one : Outcome.values()) {
            if (one.words().equalsIgnoreCase(word)) {
                return one;
            }
        }
        fault(
                row,
                ScoreSheet.OUTCOME,
                "'" + Words.clip(word) + "' is no outcome",
                "one of " + ScoreSheet.outcomes(),
                Nearest.to(
                                word,
                                Arrays.stream(Outcome.values())
                                        .map(Outcome::words)
                                        .toList())
                        .orElse(null));
        return null;
    }

    private Optional<TrialReason> reason(CsvRecord row, Outcome outcome) {
        String word = cell(row, ScoreSheet.REASON);
        if (word.isEmpty()) {
            return Optional.empty();
        }
        String fitting = outcome == Outcome.HELD
                ? "no reason for what was held, or another outcome"
                : "one of "
                        + Words.list(TrialReason.of(outcome).stream()
                                .map(r -> "'" + r.words() + "'")
                                .toList())
                        + " for '" + outcome.words() + "'";
        for (TrialReason one : TrialReason.values()) {
            if (one.words().equalsIgnoreCase(word)) {
                if (one.fits(outcome)) {
                    return Optional.of(one);
                }
                fault(
                        row,
                        ScoreSheet.REASON,
                        "'" + one.words() + "' contradicts the outcome '" + outcome.words() + "'",
                        fitting,
                        null);
                return Optional.empty();
            }
        }
        fault(
                row,
                ScoreSheet.REASON,
                "'" + Words.clip(word) + "' is no reason",
                fitting,
                Nearest.to(
                                word,
                                Arrays.stream(TrialReason.values())
                                        .map(TrialReason::words)
                                        .toList())
                        .orElse(null));
        return Optional.empty();
    }

    private Optional<Placed> placed(CsvRecord row) {
        List<String> names = List.of(ScoreSheet.X, ScoreSheet.Y, ScoreSheet.TURN);
        List<String> given = names.stream().filter(n -> !cell(row, n).isEmpty()).toList();
        if (given.isEmpty()) {
            return Optional.empty();
        }
        if (given.size() < names.size()) {
            String missing = String.join(
                    " and ", names.stream().filter(n -> !given.contains(n)).toList());
            fault(
                    row,
                    given.get(0),
                    "a place without " + missing,
                    "x_mm, y_mm and turn_deg together, or all three empty where nobody measured",
                    null);
            return Optional.empty();
        }
        double[] value = new double[names.size()];
        boolean sound = true;
        for (int i = 0; i < value.length; i++) {
            Double one = number(row, names.get(i), i < 2 ? FARTHEST_MM : MOST_TURN_DEG);
            sound &= one != null;
            value[i] = one == null ? 0 : one;
        }
        return sound ? Optional.of(ScoreSheet.placed(value[0], value[1], value[2])) : Optional.empty();
    }

    private void checkPair(CsvRecord row, int line, FieldTrial trial) {
        if (trial.pair().isEmpty()) {
            return;
        }
        String place = trial.object() + "\n" + trial.grip() + "\n" + trial.pair();
        Integer first = lineOfPair.putIfAbsent(place + "\n" + trial.hand(), line);
        if (first != null) {
            fault(
                    row,
                    ScoreSheet.PAIR,
                    "hand '" + Words.clip(trial.hand()) + "' has pair '" + Words.clip(trial.pair())
                            + "' twice, first in line " + first,
                    "one trial of each hand in a pair",
                    null);
            return;
        }
        lineOfPlace.putIfAbsent(place, line);
        FieldTrial other = placeOfPair.putIfAbsent(place, trial);
        if (other != null && !other.placed().equals(trial.placed())) {
            fault(
                    row,
                    ScoreSheet.PAIR,
                    "pair '" + Words.clip(trial.pair()) + "' stood elsewhere in line " + lineOfPlace.get(place),
                    "the same x_mm, y_mm and turn_deg for all hands of a pair",
                    null);
        }
    }

    private String named(CsvRecord row, String column, List<String> known, String what) {
        String name = needed(row, column, "the name of an " + what);
        if (!name.isEmpty() && !known.contains(name)) {
            fault(
                    row,
                    column,
                    "'" + Words.clip(name) + "' is no " + what,
                    "one of " + Words.list(known),
                    Nearest.to(name, known).orElse(null));
        }
        return name;
    }

    private String needed(CsvRecord row, String column, String expected) {
        String text = cell(row, column);
        if (text.isEmpty()) {
            fault(row, column, column + " is empty", expected, null);
        }
        return text;
    }

    private int whole(CsvRecord row, String column, int missing) {
        String text = cell(row, column);
        if (!WHOLE.matcher(text).matches()) {
            fault(
                    row,
                    column,
                    text.isEmpty() ? column + " is empty" : column + " is '" + Words.clip(text) + "'",
                    "a whole number",
                    null);
            return missing;
        }
        return Integer.parseInt(text);
    }

    private @Nullable Double number(CsvRecord row, String column, double most) {
        String text = cell(row, column);
        String plain = separator == ',' ? text : text.replace(',', '.');
        boolean sound = NUMBER.matcher(plain).matches();
        double value = sound ? Double.parseDouble(plain) : Double.NaN;
        if (!sound || !(Math.abs(value) <= most)) {
            String comma = !sound && text.indexOf(',') >= 0 ? text.replace(',', '.') : null;
            fault(
                    row,
                    column,
                    column + " is '" + Words.clip(text) + "'",
                    "a number of " + (long) -most + " to " + (long) most + " with a decimal point, without its unit",
                    comma);
            return null;
        }
        return value;
    }

    private String cell(CsvRecord row, String column) {
        Integer at = columns.get(column);
        return at == null ? "" : row.getField(at).strip();
    }

    private void fault(CsvRecord row, String column, String message, String expected, @Nullable String suggestion) {
        fault(
                (int) row.getStartingLineNumber(),
                column(row, columns.getOrDefault(column, 0)),
                message,
                expected,
                suggestion);
    }

    private void fault(int line, int column, String message, String expected, @Nullable String suggestion) {
        faults.add(source.fault(new Place(line, column, line, column), message, expected, suggestion));
    }

    /** Where a cell begins in its line; exact where no cell before it holds quotes. */
    private int column(CsvRecord row, int cell) {
        int line = (int) row.getStartingLineNumber();
        String text = line <= source.lines().size() ? source.lines().get(line - 1) : "";
        int at = 0;
        boolean quoted = false;
        int seen = 0;
        while (at < text.length() && seen < cell) {
            char c = text.charAt(at++);
            quoted ^= c == '"';
            seen += c == separator && !quoted ? 1 : 0;
        }
        return seen == cell ? at + 1 : 1;
    }
}
