package gripwright.record;

import gripwright.files.LineCutter;
import gripwright.files.LogMarks;
import gripwright.signal.Layout;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Tells line by line what came - names, readings, comments, anything else - and hands it on. */
final class Intake implements LineCutter.Taker<LogFailure> {
    /** Where it goes. */
    interface Into {
        /** The columns, before the first reading. */
        void columns(Columns columns) throws Misfit, LogFailure;

        /** @param paced time by which a replay is paced [s], NaN if there is none */
        void reading(RowReader.Row row, Columns columns, double paced) throws LogFailure;

        /** A line for the side file. */
        void aside(Aside aside) throws LogFailure;

        /** The source does not fit the project. */
        void misfit(String words);

        /** True if no more lines are wanted. */
        boolean over();
    }

    /**
     * A line that is no reading.
     *
     * @param line number in the source, from 1
     * @param length of the whole line
     * @param bytes of which the first {@code kept} are there
     * @param malformed false for a comment of the source, and for its names again
     */
    @SuppressWarnings("ArrayRecordComponent") // handed over for the time of one call
    record Aside(long line, long length, String reason, byte[] bytes, int kept, boolean malformed) {}

    private final RowReader reader = new RowReader();
    private final ColumnFinder finder;
    private final boolean replay;
    private final Into into;
    private @Nullable Columns columns;
    private boolean ownLog;
    private String lastFault = "";
    private long lines;
    private long malformed;
    private long comments;
    private long blank;
    private long heads;

    Intake(Layout layout, SourceAddress source, Into into) {
        this.finder = new ColumnFinder(layout, source.live());
        this.replay = source instanceof SourceAddress.Replay;
        this.into = into;
    }

    @Override
    public void line(byte[] bytes, int kept, long length, boolean ended) throws LogFailure {
        if (into.over()) {
            return;
        }
        lines++;
        if (kept == 0) {
            blank++;
            return;
        }
        try {
            if (!ended) {
                throw new LineFault("the source ended within this line");
            }
            if (length > Recorder.LONGEST_LINE) {
                throw new LineFault("longer than " + Recorder.LONGEST_LINE + " bytes; only so many are kept here");
            }
            String text = reader.text(bytes, kept);
            take(lines == 1 && text.startsWith("\ufeff") ? text.substring(1) : text, bytes, kept);
        } catch (LineFault e) {
            malformed++;
            lastFault = "line " + lines + ": " + e.getMessage();
            into.aside(new Aside(lines, length, String.valueOf(e.getMessage()), bytes, kept, true));
        } catch (Misfit e) {
            into.misfit(String.valueOf(e.getMessage()));
        }
    }

    private void take(String text, byte[] bytes, int kept) throws LineFault, Misfit, LogFailure {
        if (text.startsWith("#")) {
            comments++;
            ownLog |= replay && lines == 1 && text.equals(LogFormat.MAGIC);
            if (!ownLog) {
                into.aside(new Aside(lines, kept, LogMarks.COMMENT, bytes, kept, false));
            }
            return;
        }
        Columns known = columns;
        if (known == null) {
            ColumnFinder.Found found = found(text);
            into.columns(found.columns());
            columns = found.columns();
            if (!found.reading()) {
                return;
            }
            known = found.columns();
        }
        RowReader.Row row = row(ownLog ? withoutOwn(text) : text, known);
        if (row == null) {
            heads++;
            into.aside(new Aside(lines, kept, LogMarks.NAMES_AGAIN, bytes, kept, false));
            return;
        }
        double own = ownLog ? Numbers.value(RowReader.fields(text).get(0)) : known.seconds(row.values());
        into.reading(row, known, own);
    }

    private ColumnFinder.Found found(String text) throws LineFault, Misfit {
        if (!ownLog || !text.startsWith(LogFormat.OWN_COLUMNS)) {
            return finder.look(text, lines);
        }
        List<String> names = RowReader.names(text.substring(LogFormat.OWN_COLUMNS.length()));
        return new ColumnFinder.Found(finder.named(names), false);
    }

    /** A reading, or null if the line names the columns again. */
    private static RowReader.@Nullable Row row(String fields, Columns known) throws LineFault {
        try {
            return RowReader.row(fields, known);
        } catch (LineFault e) {
            if (RowReader.isJson(fields)) {
                throw e;
            }
            List<String> names = RowReader.names(fields);
            if (names.equals(known.names())) {
                return null;
            }
            throw names.size() < 2 ? e : new LineFault("names of other columns than those of this log");
        }
    }

    /** Without the two columns that this program adds, of a log that is replayed. */
    private static String withoutOwn(String text) throws LineFault {
        int first = text.indexOf(',');
        int second = text.indexOf(',', first + 1);
        if (first < 0 || second < 0 || !Numbers.valid(text.substring(0, first))) {
            throw new LineFault("no arrival and wall before the source's fields");
        }
        return text.substring(second + 1);
    }

    @Nullable
    Columns columns() {
        return columns;
    }

    /** True if the source is a log of this program, paced by its arrivals. */
    boolean ownLog() {
        return ownLog;
    }

    /** Why the last malformed line was no reading, empty if there was none. */
    String lastFault() {
        return lastFault;
    }

    long lines() {
        return lines;
    }

    long malformed() {
        return malformed;
    }

    long comments() {
        return comments;
    }

    long blank() {
        return blank;
    }

    /** Lines of names after the first. */
    long heads() {
        return heads;
    }
}
