package gripwright.files;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Collections;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * Follows a log while it grows. Its memory does not grow with the log, whatever stands in it: lines, columns and the head
 * are bounded, and what is no row of the log's columns is counted and described, not believed.
 */
public final class LogFollower implements AutoCloseable {
    /** Longest line that is read. */
    public static final int LONGEST_LINE = LogLines.LONGEST;

    private static final int MOST_HEAD = 100;
    private static final int OWN = 2;
    private static final double MOST_SECONDS = 1e9;

    private final GrowingFile file;
    private final Taker taker;
    private final CharsetDecoder decoder = StandardCharsets.UTF_8
            .newDecoder()
            .onMalformedInput(CodingErrorAction.REPORT)
            .onUnmappableCharacter(CodingErrorAction.REPORT);
    private final Map<String, String> head = new LinkedHashMap<>();
    private int columns;
    private int[] numbers = {};
    private double[] values = {};
    private long lines;
    private long unreadable;
    private String lastUnreadable = "";
    private String refusal = "";
    private boolean skipped;

    /** Takes what the log says. */
    public interface Taker {
        /**
         * The head is complete.
         *
         * @param columns those of the source
         * @param units by column, as the head has them
         * @return places of the columns that {@link #row} is to give; they hold numbers
         */
        int[] head(Map<String, String> head, List<String> columns, Map<String, String> units);

        /**
         * A reading.
         *
         * @param arrival since the log's start [s]
         * @param wall machine's clock at that time [ms]
         * @param values of the chosen columns, NaN for a missing one; valid during the call only
         */
        void row(double arrival, double wall, double[] values);
    }

    /** @throws IOException if it cannot be opened or is no plain file */
    public LogFollower(Path log, Taker taker) throws IOException {
        this.file = GrowingFile.open(log, LONGEST_LINE);
        this.taker = taker;
    }

    /** Reads on, at most so many bytes. A file that is no log is not read. */
    public GrowingFile.Found look(long most) throws IOException {
        return refusal.isEmpty() ? file.look(most, this::line) : GrowingFile.Found.NOTHING;
    }

    private void line(byte[] bytes, int kept, long length, boolean ended) {
        lines++;
        if (!refusal.isEmpty()) {
            return;
        }
        try {
            if (length > LONGEST_LINE) {
                throw new Unreadable("longer than " + LONGEST_LINE + " bytes");
            }
            text(text(bytes, kept));
        } catch (Unreadable e) {
            unreadable++;
            lastUnreadable = (skipped ? "a line" : "line " + lines) + ": " + e.getMessage();
            if (columns == 0) {
                refusal = "its line " + lines + " is no head of a log: " + e.getMessage();
            }
        }
    }

    private void text(String line) throws Unreadable {
        if (lines == 1 && !line.equals(LogMarks.FIRST_LINE)) {
            throw new Unreadable("expected '" + LogMarks.FIRST_LINE + "', which 'gripwright record' writes");
        }
        if (line.startsWith("#")) {
            int colon = line.indexOf(':');
            if (colon > 0 && columns == 0 && head.size() < MOST_HEAD) {
                head.put(
                        line.substring(1, colon).strip(),
                        line.substring(colon + 1).strip());
            }
        } else if (columns == 0) {
            names(line);
        } else if (!line.isEmpty()) {
            row(line);
        }
    }

    private void names(String line) throws Unreadable {
        List<String> names = LogReader.cells(line);
        if (!line.startsWith(LogMarks.OWN_COLUMNS) || names.size() <= OWN) {
            throw new Unreadable("expected the names of the columns, after " + LogMarks.OWN_COLUMNS);
        }
        if (names.size() > LogReader.MOST_COLUMNS) {
            throw new Unreadable(names.size() + " columns; at most " + LogReader.MOST_COLUMNS);
        }
        if (new HashSet<>(names).size() < names.size()) {
            throw new Unreadable("a column's name stands there twice");
        }
        columns = names.size();
        numbers = taker.head(
                Collections.unmodifiableMap(head),
                names.subList(OWN, columns),
                LogReader.units(head.getOrDefault(LogReader.UNITS, "")));
        values = new double[numbers.length];
    }

    private void row(String line) throws Unreadable {
        if (line.indexOf('"') >= 0) {
            List<String> cells = LogReader.cells(line);
            counted(cells.size());
            for (int k = 0; k < numbers.length; k++) {
                values[k] = number(cells.get(OWN + numbers[k]));
            }
            take(cells.get(0), cells.get(1));
            return;
        }
        int[] from = starts(line);
        for (int k = 0; k < numbers.length; k++) {
            int c = OWN + numbers[k];
            values[k] = number(line.substring(from[c], from[c + 1] - 1));
        }
        take(line.substring(0, from[1] - 1), line.substring(from[1], from[2] - 1));
    }

    /** Where each cell begins, and one place after the end of the last one's comma. */
    private int[] starts(String line) throws Unreadable {
        int[] from = new int[columns + 1];
        int count = 1;
        for (int comma = line.indexOf(','); comma >= 0; comma = line.indexOf(',', comma + 1)) {
            if (count < columns) {
                from[count] = comma + 1;
            }
            count++;
        }
        counted(count);
        from[columns] = line.length() + 1;
        return from;
    }

    private void counted(int cells) throws Unreadable {
        if (cells != columns) {
            throw new Unreadable(cells + " cells instead of " + columns);
        }
    }

    private void take(String arrivalCell, String wallCell) throws Unreadable {
        double arrival = number(arrivalCell);
        double wall = number(wallCell);
        if (!(arrival >= 0 && arrival <= MOST_SECONDS)) {
            throw new Unreadable("its arrival is '" + Words.clip(arrivalCell) + "'");
        }
        taker.row(arrival, wall, values);
    }

    private static double number(String cell) throws Unreadable {
        String word = cell.strip();
        if (word.isEmpty() || word.length() <= 4 && missing(word)) {
            return Double.NaN;
        }
        Double value = LogReader.number(word);
        // A wall time in ms is below this until the year 2600.
        if (value == null || !(Math.abs(value) <= 20 * LogReader.GREATEST)) {
            throw new Unreadable("'" + Words.clip(cell) + "' is no number that can be read on a bench");
        }
        return value;
    }

    private static boolean missing(String word) {
        String small = word.toLowerCase(Locale.ROOT);
        return small.equals("nan") || small.equals("null") || small.equals("-nan") || small.equals("+nan");
    }

    private String text(byte[] bytes, int length) throws Unreadable {
        boolean plain = true;
        for (int i = 0; i < length; i++) {
            if (bytes[i] >= 0 && bytes[i] < ' ' && bytes[i] != '\t') {
                throw new Unreadable("a control character at byte " + (i + 1));
            }
            plain &= bytes[i] >= 0;
        }
        if (plain) {
            return new String(bytes, 0, length, StandardCharsets.ISO_8859_1);
        }
        try {
            return decoder.decode(ByteBuffer.wrap(bytes, 0, length)).toString();
        } catch (CharacterCodingException e) {
            throw new Unreadable("not valid UTF-8");
        }
    }

    /** Leaves out what is there now but for about so many of the last bytes. */
    public void skip(long kept) throws IOException {
        file.skipTo(file.size() - kept);
        skipped = true;
    }

    /** Why it is no log; empty if it is one, or may become one. */
    public String refusal() {
        return refusal;
    }

    /** Lines that are no row of the columns. */
    public long unreadable() {
        return unreadable;
    }

    /** The last of them; empty if there is none. */
    public String lastUnreadable() {
        return lastUnreadable;
    }

    /** The file itself. */
    public GrowingFile file() {
        return file;
    }

    @Override
    public void close() {
        file.close();
    }

    /** What is wrong with a line. */
    private static final class Unreadable extends Exception {
        private static final long serialVersionUID = 1;

        Unreadable(String words) {
            super(words, null, false, false);
        }
    }
}
