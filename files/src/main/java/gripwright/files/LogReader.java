package gripwright.files;

import de.siegmar.fastcsv.reader.CsvReader;
import gripwright.units.Nearest;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.IntFunction;
import org.jspecify.annotations.Nullable;

/**
 * A log of readings: lines of {@code # key: value}, one line of column names, then rows of numbers. Rows come one by one,
 * so that a log of any length can be read.
 *
 * <p>What is wrong with single rows is counted and the first few are described in {@link #remarks}; a log of which more
 * than a tenth is wrong is refused.
 */
public final class LogReader implements AutoCloseable {
    static final String UNITS = "units";
    static final int MOST_COLUMNS = 2000;
    private static final int MOST_HEAD = 1000;
    private static final int SHOWN = 5;
    static final double GREATEST = 1e12;

    /** Of a clock: nanoseconds since 1970 and some more. */
    private static final double LATEST = 1e19;

    private static final int TRIAL = 200;

    private final LogLines lines;
    private final Map<String, String> head;
    private final List<String> columns;
    private final Map<String, String> units;
    private int[] wanted = new int[0];
    private double[] greatest = new double[0];
    private long rows;
    private long wrong;
    private final List<String> described = new ArrayList<>();
    private final Map<String, Long> notNumbers = new LinkedHashMap<>();

    private LogReader(LogLines lines, Map<String, String> head, List<String> columns, Map<String, String> units) {
        this.lines = lines;
        this.head = head;
        this.columns = columns;
        this.units = units;
    }

    /**
     * Opens a log and reads up to its column names.
     *
     * @throws LogFault if there are none
     */
    public static LogReader open(Path path) throws IOException {
        LogLines lines = LogLines.open(path);
        try {
            Map<String, String> head = new LinkedHashMap<>();
            String line = lines.next();
            while (line != null && (line.startsWith("#") || line.isBlank())) {
                int colon = line.indexOf(':');
                if (colon > 0 && head.size() < MOST_HEAD) {
                    head.put(
                            line.substring(1, colon).strip(),
                            line.substring(colon + 1).strip());
                }
                line = lines.next();
            }
            if (line == null) {
                throw new LogFault(
                        lines.file(),
                        Math.max(1, lines.number()),
                        lines.cut() ? "the log ends within its first line" : "the log holds no line of column names",
                        "a line of column names and then rows of numbers, separated by commas");
            }
            List<String> columns = names(lines, line);
            return new LogReader(lines, head, columns, units(head.getOrDefault(UNITS, "")));
        } catch (IOException | RuntimeException e) {
            lines.close();
            throw e;
        }
    }

    private static List<String> names(LogLines lines, String line) {
        List<String> names = cells(line);
        if (names.size() == 1 && (line.indexOf(';') >= 0 || line.indexOf('\t') >= 0)) {
            throw new LogFault(
                    lines.file(),
                    lines.number(),
                    "the columns are not separated by commas",
                    "commas, and decimal points");
        }
        if (names.stream().allMatch(n -> number(n) != null)) {
            throw new LogFault(
                    lines.file(),
                    lines.number(),
                    "the first line is numbers already: '" + Words.clip(line) + "'",
                    "a line of column names before the rows");
        }
        if (names.size() > MOST_COLUMNS) {
            throw new LogFault(
                    lines.file(), lines.number(), names.size() + " columns", "at most " + MOST_COLUMNS + " columns");
        }
        Set<String> seen = new HashSet<>();
        for (String name : names) {
            if (!seen.add(name)) {
                throw new LogFault(
                        lines.file(),
                        lines.number(),
                        "column '" + Words.clip(name) + "' stands there twice",
                        "each column once");
            }
        }
        return names;
    }

    static List<String> cells(String line) {
        if (line.indexOf('"') < 0) {
            return Arrays.stream(line.split(",", -1)).map(String::strip).toList();
        }
        try (CsvReader<de.siegmar.fastcsv.reader.CsvRecord> reader =
                CsvReader.builder().ofCsvRecord(line)) {
            return reader.stream().findFirst().map(r -> r.getFields()).orElse(List.of());
        } catch (IOException | RuntimeException e) {
            return List.of(line);
        }
    }

    /** Such as {@code t s, p00 Pa}: the last word is the unit. */
    static Map<String, String> units(String text) {
        Map<String, String> units = new HashMap<>();
        for (String one : text.split(",", -1)) {
            String item = one.strip();
            int cut = item.lastIndexOf(' ');
            if (cut > 0) {
                units.put(item.substring(0, cut).strip(), item.substring(cut + 1));
            }
        }
        return units;
    }

    public String file() {
        return lines.file();
    }

    /** Number of the line read last, from 1. */
    int line() {
        return lines.number();
    }

    /** The {@code # key: value} lines at the log's head. */
    public Map<String, String> head() {
        return Collections.unmodifiableMap(head);
    }

    public List<String> columns() {
        return columns;
    }

    /** Unit of a column as the log's head has it; empty if it does not say. */
    public String unit(String column) {
        return units.getOrDefault(column, "");
    }

    /**
     * Chooses the columns that {@link #next} gives.
     *
     * @param why who asks for a column, for messages
     * @param clocks those of the names that are clocks
     * @throws LogFault naming all columns that are not there
     */
    public void choose(List<String> names, Map<String, String> why, Set<String> clocks) {
        List<String> missing = names.stream().filter(n -> !columns.contains(n)).toList();
        if (!missing.isEmpty()) {
            String first = missing.get(0);
            String near = Nearest.to(first, columns)
                    .map(n -> "; did you mean '" + n + "'?")
                    .orElse("");
            throw new LogFault(
                    file(),
                    lines.number(),
                    "there is no column "
                            + missing.stream()
                                    .map(n -> "'" + Words.clip(n) + "'"
                                            + (why.containsKey(n) ? " (" + why.get(n) + ")" : ""))
                                    .limit(12)
                                    .reduce((a, b) -> a + ", " + b)
                                    .orElse("")
                            + near,
                    "the columns " + Words.list(columns));
        }
        wanted = names.stream().mapToInt(columns::indexOf).toArray();
        greatest = names.stream()
                .mapToDouble(n -> clocks.contains(n) ? LATEST : GREATEST)
                .toArray();
    }

    /**
     * The next row.
     *
     * @param into out: the chosen columns, NaN for a cell that is empty
     * @return false after the last row
     */
    public boolean next(double[] into) throws IOException {
        String line = lines.next();
        while (line != null) {
            if (!line.isEmpty() && !line.startsWith("#")) {
                rows++;
                String fault = parse(line, into);
                if (fault == null) {
                    return true;
                }
                isHeaderAgain(line);
                wrong++;
                if (described.size() < SHOWN) {
                    described.add("line " + lines.number() + ": " + fault);
                }
                if (wrong > TRIAL && wrong > rows / 10) {
                    throw tooMany();
                }
            }
            line = lines.next();
        }
        if (wrong > 0 && wrong > rows / 10) {
            throw tooMany();
        }
        return false;
    }

    private LogFault tooMany() {
        return new LogFault(
                file(),
                0,
                wrong + " of " + rows + " rows cannot be read; " + String.join("; ", described),
                "rows of " + columns.size() + " numbers");
    }

    private void isHeaderAgain(String line) {
        List<String> cells = cells(line);
        if (cells.size() >= Math.min(4, columns.size())
                && cells.stream().filter(c -> number(c) == null && !c.isEmpty()).count() > cells.size() / 2) {
            throw new LogFault(
                    file(),
                    lines.number(),
                    "a second line of column names: '" + Words.clip(line) + "'",
                    "one log per file, all rows under one line of column names");
        }
    }

    /** What is wrong with the row; null if nothing is. */
    private @Nullable String parse(String line, double[] into) {
        if (line.indexOf('"') >= 0) {
            List<String> cells = cells(line);
            return cells.size() == columns.size()
                    ? values(k -> cells.get(wanted[k]), into)
                    : cells.size() + " cells instead of " + columns.size();
        }
        int[] from = new int[columns.size() + 1];
        int count = 0;
        int at = 0;
        while (true) {
            if (count < columns.size()) {
                from[count] = at;
            }
            count++;
            int comma = line.indexOf(',', at);
            if (comma < 0) {
                break;
            }
            at = comma + 1;
        }
        if (count != columns.size()) {
            return count + " cells instead of " + columns.size();
        }
        from[count] = line.length() + 1;
        return values(k -> line.substring(from[wanted[k]], from[wanted[k] + 1] - 1), into);
    }

    /** The chosen cells as numbers, or what is wrong with one. */
    private @Nullable String values(IntFunction<String> cells, double[] into) {
        for (int k = 0; k < wanted.length; k++) {
            int c = wanted[k];
            String cell = cells.apply(k);
            if (cell.isBlank() || cell.strip().equalsIgnoreCase("nan")) {
                into[k] = Double.NaN;
                if (!cell.isBlank()) {
                    notNumbers.merge(columns.get(c), 1L, Long::sum);
                }
                continue;
            }
            Double value = number(cell);
            if (value == null) {
                return columns.get(c) + " is '" + Words.clip(cell) + "'";
            }
            if (!(Math.abs(value) <= greatest[k])) {
                return columns.get(c) + " is " + Words.clip(cell) + ", which nothing on a bench reads";
            }
            into[k] = value;
        }
        return null;
    }

    /** A finite number with a decimal point; null if it is not one. */
    static @Nullable Double number(String text) {
        String cell = text.strip();
        if (cell.isEmpty()) {
            return null;
        }
        char last = cell.charAt(cell.length() - 1);
        if (!(last >= '0' && last <= '9' || last == '.')) {
            return null; // also Infinity, and the letters that Java takes after a number
        }
        try {
            double value = Double.parseDouble(cell);
            return cell.indexOf('x') >= 0 || cell.indexOf('X') >= 0 ? null : (Double) value;
        } catch (NumberFormatException e) {
            return null;
        }
    }

    /** What was left out or odd, in sentences; complete once {@link #next} has said false. */
    public List<String> remarks() {
        List<String> all = new ArrayList<>();
        if (wrong > 0) {
            all.add(wrong + " of " + rows + " rows are not rows of numbers and were left out: "
                    + String.join("; ", described) + (wrong > described.size() ? "; and more" : ""));
        }
        notNumbers.forEach((column, count) ->
                all.add(count + (count == 1 ? " cell of " : " cells of ") + column + " are NaN; taken as missing"));
        if (lines.cut()) {
            all.add("line " + (lines.number() + 1) + " was cut off: it has no line end and was not read");
        }
        return all;
    }

    @Override
    public void close() throws IOException {
        lines.close();
    }
}
