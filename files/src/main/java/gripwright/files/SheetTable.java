package gripwright.files;

import de.siegmar.fastcsv.reader.CommentStrategy;
import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import gripwright.units.Nearest;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * A score sheet as named columns and lines of cells, whatever a spreadsheet program made of it: comma, semicolon or tab
 * between cells, empty columns and lines at the end, remarks in quotes, cells missing at the end of a line. What cannot be
 * told apart safely is a fault with its line.
 */
final class SheetTable {
    private static final int MOST_COLUMNS = 50;
    private static final int MOST_CELLS = 10_000;
    private static final Pattern REMARKED_TRIAL = Pattern.compile("#?\\s*[0-9]+\\s*");
    private static final Pattern BLANK_ENDS = Pattern.compile("^[\\s\\p{Z}]+|[\\s\\p{Z}]+$");

    private final SourceText source;
    private final List<Fault> faults;
    private final char separator;
    private final Map<String, Integer> columns = new HashMap<>();
    private final List<Row> rows = new ArrayList<>();
    private final List<Integer> aside = new ArrayList<>();
    private List<String> head = List.of();
    private int headLine = 1;

    /** One line; a cell in quotes may hold line breaks. */
    record Row(int line, List<String> cells) {
        boolean blank() {
            return filled() == 0;
        }

        /** Cells up to the last one that is not empty. */
        int filled() {
            int n = cells.size();
            while (n > 0 && cells.get(n - 1).isEmpty()) {
                n--;
            }
            return n;
        }
    }

    private SheetTable(SourceText source, List<Fault> faults) {
        this.source = source;
        this.faults = faults;
        this.separator = separator(source);
    }

    /**
     * Reads a sheet and notes what is wrong with its form.
     *
     * @param unreadable lines already found to hold bytes that are no text; left out
     * @return null if there are no column names that could be used
     */
    static @Nullable SheetTable read(SourceText source, Set<Integer> unreadable, List<Fault> faults) {
        SheetTable table = new SheetTable(source, faults);
        List<Row> all = table.split();
        all.removeIf(row -> row.blank() || unreadable.contains(row.line));
        if (all.isEmpty()) {
            if (faults.isEmpty()) {
                table.fault(
                        1,
                        1,
                        "the sheet is empty",
                        "a line of column names (" + names() + ") and a line per trial",
                        null);
            }
            return null;
        }
        if (!table.head(all.get(0))) {
            return null;
        }
        all.subList(1, all.size()).forEach(table::row);
        return table;
    }

    private static String names() {
        return String.join(",", ScoreSheet.WRITTEN);
    }

    // ---------------------------------------------------------------- cells

    /** What stands most often between the names of the columns. */
    static char separator(SourceText source) {
        String names = source.lines().stream()
                .filter(line -> !line.isBlank() && !line.startsWith("#") && !line.startsWith("\"#"))
                .findFirst()
                .orElse("");
        char best = ',';
        for (char one : new char[] {';', '\t'}) {
            best = count(names, one) > count(names, best) ? one : best;
        }
        return best;
    }

    private static long count(String text, char sought) {
        return text.chars().filter(c -> c == sought).count();
    }

    /** All lines as cells, remarks left out. */
    static List<Row> rows(SourceText source) {
        return new SheetTable(source, new ArrayList<>()).split();
    }

    private List<Row> split() {
        try {
            List<Row> whole = reader().ofCsvRecord(source.text()).stream()
                    .filter(this::counts)
                    .map(r -> row((int) r.getStartingLineNumber(), r))
                    .toList();
            if (whole.stream().noneMatch(this::swallows)) {
                return new ArrayList<>(whole);
            }
        } catch (CsvParseException e) {
            // Line by line below, so that one stray quote does not hide what the other lines hold.
        }
        List<Row> single = new ArrayList<>();
        for (int line = 1; line <= source.lines().size(); line++) {
            String text = source.lines().get(line - 1);
            try {
                int parts = (int) count(text, separator) + 1;
                if (text.startsWith("#")) {
                    remark(line, text);
                } else if (parts > MOST_CELLS) { // more than the reader takes: no need to know what they are
                    single.add(new Row(line, Collections.nCopies(parts, "?")));
                } else if (count(text, '"') % 2 != 0) {
                    stray(line, text.lastIndexOf('"') + 1);
                } else if (!text.isBlank()) {
                    CsvRecord one = reader().ofSingleCsvRecord(text);
                    single.add(row(line, one));
                }
            } catch (CsvParseException e) {
                stray(line, text.indexOf('"') + 1);
            }
        }
        return single;
    }

    private static Row row(int line, CsvRecord cells) {
        return new Row(
                line, cells.getFields().stream().map(SheetTable::stripped).toList());
    }

    /** Without blanks at the ends, the unbreakable ones of word processors among them. */
    private static String stripped(String cell) {
        return BLANK_ENDS.matcher(cell).replaceAll("");
    }

    private void stray(int line, int column) {
        fault(
                line,
                Math.max(1, column),
                "a quote that opens or ends no text in this line",
                "texts in quotes begin and end in one line, with \"\" for a quote inside",
                null);
    }

    private CsvReader.CsvReaderBuilder reader() {
        return CsvReader.builder()
                .fieldSeparator(separator)
                .commentStrategy(CommentStrategy.READ)
                .allowExtraFields(true)
                .allowMissingFields(true);
    }

    /** False for remarks, also for those which a spreadsheet put into quotes. */
    private boolean counts(CsvRecord record) {
        String first = record.getField(0);
        if (record.isComment()) {
            remark((int) record.getStartingLineNumber(), first);
            return false;
        }
        if (first.startsWith("#")) {
            remark((int) record.getStartingLineNumber(), String.join(String.valueOf(separator), record.getFields()));
            return false;
        }
        return true;
    }

    /** A trial behind a # is left out, but not without saying so. */
    private void remark(int line, String text) {
        int at = text.indexOf(separator);
        if (at > 0
                && REMARKED_TRIAL.matcher(text.substring(0, at)).matches()
                && count(text, separator) >= ScoreSheet.REQUIRED.size() - 1) {
            aside.add(line);
        }
    }

    /** True if a text in quotes runs on into what looks like further trials: somebody forgot to close it. */
    private boolean swallows(Row row) {
        return row.cells.stream()
                .filter(cell -> cell.indexOf('\n') >= 0 || cell.indexOf('\r') >= 0)
                .flatMap(cell -> cell.lines().skip(1))
                .anyMatch(inner -> {
                    int at = inner.indexOf(separator);
                    return at > 0
                            && count(inner, separator) >= ScoreSheet.REQUIRED.size() - 1
                            && inner.substring(0, at).strip().matches("[0-9]+");
                });
    }

    // ------------------------------------------------------------- columns

    private boolean head(Row row) {
        headLine = row.line;
        head = row.cells.subList(0, row.filled());
        if (head.size() > MOST_COLUMNS) {
            fault(headLine, 1, "the first line has " + head.size() + " cells", "column names such as " + names(), null);
            return false;
        }
        for (int i = 0; i < head.size(); i++) {
            String name = head.get(i);
            if (name.isEmpty()) {
                fault(
                        headLine,
                        column(row, i),
                        "column " + (i + 1) + " has no name",
                        "column names such as " + names(),
                        null);
            } else if (!ScoreSheet.KNOWN.contains(name)) {
                fault(
                        headLine,
                        column(row, i),
                        "'" + Words.clip(name) + "' is no column of a score sheet",
                        "some of " + Words.list(ScoreSheet.KNOWN),
                        Nearest.to(name, ScoreSheet.KNOWN).orElse(null));
            } else if (columns.putIfAbsent(name, i) != null) {
                fault(headLine, column(row, i), "column '" + name + "' is there twice", "each column once", null);
            }
        }
        for (String required : ScoreSheet.REQUIRED) {
            if (!has(required)) {
                fault(headLine, 1, "there is no column '" + required + "'", "column names such as " + names(), null);
            }
        }
        return ScoreSheet.REQUIRED.stream().filter(this::has).count() >= 2; // else the first line is no head at all
    }

    private void row(Row row) {
        int used = row.filled();
        if (isHead(row)) {
            fault(
                    row.line,
                    1,
                    "a second line of column names",
                    "one line of column names at the top; were two sheets pasted together? Score them apart with --against",
                    null);
        } else if (used > head.size() || lacksNeeded(used)) {
            fault(
                    row.line,
                    1,
                    "the line has " + cells(used) + ", the column names are " + head.size(),
                    "one cell for each column, with '" + (separator == '\t' ? "tab" : separator)
                            + "' between; texts that hold it in \"quotes\"",
                    null);
        } else {
            rows.add(row);
        }
    }

    private static String cells(int count) {
        return count == 1 ? "1 cell" : count + " cells";
    }

    private boolean isHead(Row row) {
        long known = row.cells.stream().filter(ScoreSheet.KNOWN::contains).count();
        return known >= Math.min(3, head.size());
    }

    /**
     * Cells that are missing at the end of a line are empty ones (spreadsheets leave them out); but a line without even the
     * name of the object is no trial.
     */
    private boolean lacksNeeded(int used) {
        return ScoreSheet.REQUIRED.stream()
                .filter(name -> !name.equals(ScoreSheet.OUTCOME))
                .anyMatch(name -> columns.getOrDefault(name, 0) >= used);
    }

    // ------------------------------------------------------------ for readers

    List<Row> rows() {
        return rows;
    }

    int headLine() {
        return headLine;
    }

    /** Lines of remarks below the column names that look like trials. */
    List<Integer> aside() {
        return aside.stream()
                .filter(line -> line > headLine)
                .distinct()
                .sorted()
                .toList();
    }

    boolean has(String column) {
        return columns.containsKey(column);
    }

    boolean decimalComma() {
        return separator != ',';
    }

    /** Empty if there is no such column. */
    String cell(Row row, String column) {
        int at = columns.getOrDefault(column, Integer.MAX_VALUE);
        return at < row.cells.size() ? row.cells.get(at) : "";
    }

    void fault(Row row, String column, String message, String expected, @Nullable String suggestion) {
        fault(row.line, column(row, columns.getOrDefault(column, 0)), message, expected, suggestion);
    }

    void fault(int line, int column, String message, String expected, @Nullable String suggestion) {
        faults.add(source.fault(new Place(line, column, line, column), message, expected, suggestion));
    }

    /** Where a cell begins in its line; the line's start if a cell before it holds a line break. */
    private int column(Row row, int cell) {
        String text = row.line <= source.lines().size() ? source.lines().get(row.line - 1) : "";
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
