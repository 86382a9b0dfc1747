package gripwright.files;

import gripwright.closing.Outcome;
import gripwright.files.SheetTable.Row;
import gripwright.study.TrialReason;
import gripwright.units.Nearest;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Reads single cells of a score sheet: numbers, names, words of its vocabulary. */
final class SheetCells {
    private static final int LONGEST_LABEL = 60;
    private static final Pattern WHOLE = Pattern.compile("[+-]?[0-9]{1,9}");
    private static final Pattern NUMBER = Pattern.compile("[+-]?([0-9]+\\.?[0-9]*|\\.[0-9]+)");
    private static final char MINUS = '\u2212';

    private final SheetTable table;

    SheetCells(SheetTable table) {
        this.table = table;
    }

    /** A whole number, or -1 after noting a fault. */
    int whole(Row row, String column, int least, String expected) {
        String text = table.cell(row, column);
        boolean sound = WHOLE.matcher(text).matches();
        if (sound && Integer.parseInt(text) >= least) {
            return Integer.parseInt(text);
        }
        String found = text.isEmpty() ? " is empty" : sound ? " is " + text : " is '" + Words.clip(text) + "'";
        table.fault(row, column, column + found, expected, null);
        return -1;
    }

    /** A number without its unit, or null after noting a fault. */
    @Nullable
    Double number(Row row, String column, double most) {
        String text = table.cell(row, column);
        String plain = table.decimalComma() ? text.replace(',', '.') : text;
        boolean sound = NUMBER.matcher(plain).matches();
        double value = sound ? Double.parseDouble(plain) : Double.NaN;
        if (sound && Math.abs(value) <= most) {
            return value;
        }
        String mended = text.replace(',', '.').replace(MINUS, '-');
        table.fault(
                row,
                column,
                column + " is '" + Words.clip(text) + "'",
                "a number of " + (long) -most + " to " + (long) most + " with a decimal point, without its unit",
                !sound && NUMBER.matcher(mended).matches() ? mended : null);
        return null;
    }

    /** One of the known names, or empty after noting a fault; empty too if the sheet has no such column. */
    String named(Row row, String column, List<String> known, String what) {
        String name = needed(row, column, "the name of an " + what);
        if (name.isEmpty() || known.contains(name)) {
            return name;
        }
        table.fault(
                row,
                column,
                "'" + Words.clip(name) + "' is no " + what,
                "one of " + Words.list(known),
                Nearest.to(name, known).orElse(null));
        return "";
    }

    String needed(Row row, String column, String expected) {
        String text = table.cell(row, column);
        if (text.isEmpty() && table.has(column)) {
            table.fault(row, column, column + " is empty", expected, null);
        }
        return text;
    }

    /** Free words that are printed again: short and on one line. */
    String label(Row row, String column) {
        String text = table.cell(row, column);
        if (text.length() > LONGEST_LABEL || text.chars().anyMatch(Character::isISOControl)) {
            table.fault(
                    row,
                    column,
                    column + " is '" + Words.clip(text) + "'",
                    "a label of at most " + LONGEST_LABEL + " characters on one line",
                    null);
        }
        return text;
    }

    @Nullable
    Outcome outcome(Row row) {
        String word = table.cell(row, ScoreSheet.OUTCOME);
        for (Outcome one : Outcome.values()) {
            if (one.words().equalsIgnoreCase(word)) {
                return one;
            }
        }
        if (table.has(ScoreSheet.OUTCOME)) {
            table.fault(
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
        }
        return null;
    }

    Optional<TrialReason> reason(Row row, Outcome outcome) {
        String word = table.cell(row, ScoreSheet.REASON);
        if (word.isEmpty()) {
            return Optional.empty();
        }
        Optional<TrialReason> known = Arrays.stream(TrialReason.values())
                .filter(one -> one.words().equalsIgnoreCase(word))
                .findFirst();
        if (known.isPresent() && known.get().fits(outcome)) {
            return known;
        }
        table.fault(
                row,
                ScoreSheet.REASON,
                known.map(one -> "'" + one.words() + "' contradicts the outcome '" + outcome.words() + "'")
                        .orElse("'" + Words.clip(word) + "' is no reason"),
                fitting(outcome),
                known.isPresent()
                        ? null
                        : Nearest.to(
                                        word,
                                        Arrays.stream(TrialReason.values())
                                                .map(TrialReason::words)
                                                .toList())
                                .orElse(null));
        return Optional.empty();
    }

    private static String fitting(Outcome outcome) {
        return outcome == Outcome.HELD
                ? "no reason for what was held, or another outcome"
                : "one of "
                        + Words.list(TrialReason.of(outcome).stream()
                                .map(r -> "'" + r.words() + "'")
                                .toList())
                        + " for '" + outcome.words() + "'";
    }
}
