package gripwright.files;

import de.siegmar.fastcsv.reader.CommentStrategy;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import gripwright.closing.Outcome;
import gripwright.model.Project;
import gripwright.study.FieldTrial;
import gripwright.study.Placed;
import gripwright.study.TrialPlan;
import gripwright.study.TrialReason;
import gripwright.units.QuantityText;
import java.io.IOException;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/**
 * Score sheets of trials as CSV: written from a plan, read back when filled in. Comma, semicolon or tab between cells
 * (as spreadsheets save them); a comma as the decimal sign only with the other two. Lines that begin with # are remarks.
 */
public final class ScoreSheet {
    /** More than a year of trials. */
    static final int GREATEST_SIZE = 2_000_000;

    static final String TRIAL = "trial";
    static final String HAND = "hand";
    static final String OBJECT = "object";
    static final String GRIP = "grip";
    static final String X = "x_mm";
    static final String Y = "y_mm";
    static final String TURN = "turn_deg";
    static final String PAIR = "pair";
    static final String OUTCOME = "outcome";
    static final String REASON = "reason";
    static final String NOTE = "note";
    static final String COUNT = "count";

    /** Columns in the order in which they are written. */
    static final List<String> WRITTEN =
            List.of(TRIAL, "day", "block", HAND, OBJECT, GRIP, X, Y, TURN, PAIR, OUTCOME, REASON, NOTE);

    /** All columns that are understood. */
    static final List<String> KNOWN =
            Stream.concat(WRITTEN.stream(), Stream.of(COUNT)).toList();

    static final List<String> REQUIRED = List.of(TRIAL, OBJECT, GRIP, OUTCOME);

    private ScoreSheet() {}

    /**
     * What a sheet holds.
     *
     * @param open lines whose trial has not been made yet
     */
    public record Sheet(List<FieldTrial> trials, int open) {
        public Sheet {
            trials = List.copyOf(trials);
        }
    }

    /**
     * Reads a filled sheet.
     *
     * @param name for messages
     * @param project whose objects and grips the sheet may name
     * @param soFar lines without an outcome are trials not made yet; else they are faults
     * @throws ProjectFaults with every fault of the sheet
     * @throws IOException if the file cannot be read
     */
    public static Sheet read(Path file, String name, Project project, boolean soFar) throws IOException {
        List<Fault> faults = new ArrayList<>();
        SourceText source = source(file, name, faults);
        Sheet sheet = source == null ? null : new SheetRows(source, project, soFar, faults).read();
        if (sheet == null || !faults.isEmpty()) {
            throw new ProjectFaults(faults);
        }
        return sheet;
    }

    private static @org.jspecify.annotations.Nullable SourceText source(Path file, String name, List<Fault> faults)
            throws IOException {
        long size = Files.size(file);
        if (size > GREATEST_SIZE) {
            faults.add(new Fault(
                    name,
                    1,
                    1,
                    "",
                    name + " has " + size + " bytes",
                    "at most " + GREATEST_SIZE + " bytes; is this the right file?",
                    null));
            return null;
        }
        return SourceText.utf8(name, SourceText.readUpTo(file, GREATEST_SIZE + 1), faults);
    }

    /**
     * True if somebody has written into the file: an outcome, a reason or a note stands in it, or it is not a sheet of
     * this program at all.
     */
    public static boolean isFilled(Path file) throws IOException {
        SourceText source = source(file, "sheet", new ArrayList<>());
        if (source == null) {
            return true;
        }
        List<CsvRecord> records;
        try {
            records = records(source);
        } catch (de.siegmar.fastcsv.reader.CsvParseException e) {
            return true;
        }
        if (records.isEmpty() || !records.get(0).getFields().equals(WRITTEN)) {
            return true;
        }
        for (CsvRecord row : records.subList(1, records.size())) {
            for (String column : List.of(OUTCOME, REASON, NOTE)) {
                int at = WRITTEN.indexOf(column);
                if (at >= row.getFieldCount() || !row.getField(at).isBlank()) {
                    return true;
                }
            }
        }
        return false;
    }

    /** Lines with cells, remarks and empty lines left out. */
    static List<CsvRecord> records(SourceText source) {
        return CsvReader.builder()
                .fieldSeparator(separator(source))
                .commentStrategy(CommentStrategy.SKIP)
                .allowExtraFields(true)
                .allowMissingFields(true)
                .ofCsvRecord(source.text())
                .stream()
                .toList();
    }

    /** What stands between the names of the columns. */
    static char separator(SourceText source) {
        String head = source.lines().stream()
                .filter(line -> !line.isBlank() && !line.startsWith("#"))
                .findFirst()
                .orElse("");
        return head.indexOf('\t') >= 0 ? '\t' : head.indexOf(';') >= 0 && head.indexOf(',') < 0 ? ';' : ',';
    }

    /**
     * The sheet of a plan, nothing filled in.
     *
     * @param head remarks, each a line
     */
    public static String write(TrialPlan plan, List<String> head) {
        StringWriter text = new StringWriter();
        for (String line : head) {
            text.append("# ").append(line.replaceAll("\\R", " ")).append('\n');
        }
        text.append("# outcome: one of ").append(outcomes()).append('\n');
        text.append("# reason: empty if held, else one of ").append(reasons()).append('\n');
        try (CsvWriter csv = CsvWriter.builder().lineDelimiter(LineDelimiter.LF).build(text)) {
            csv.writeRecord(WRITTEN);
            for (TrialPlan.Planned t : plan.trials()) {
                csv.writeRecord(
                        String.valueOf(t.number()),
                        String.valueOf(t.day()),
                        String.valueOf(t.block()),
                        t.hand(),
                        t.object(),
                        t.grip(),
                        t.placed().map(p -> whole(1e3 * p.x())).orElse(""),
                        t.placed().map(p -> whole(1e3 * p.y())).orElse(""),
                        t.placed().map(p -> whole(Math.toDegrees(p.turn()))).orElse(""),
                        t.pair(),
                        "",
                        "",
                        "");
            }
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
        return text.toString();
    }

    private static String whole(double value) {
        return QuantityText.number(Math.rint(value * 1e3) / 1e3 + 0.0, 9);
    }

    /** Words of the column outcome. */
    static String outcomes() {
        return String.join(
                ", ",
                java.util.Arrays.stream(Outcome.values()).map(Outcome::words).toList());
    }

    /** Words of the column reason. */
    static String reasons() {
        return String.join(
                ", ",
                java.util.Arrays.stream(TrialReason.values())
                        .map(r -> "\"" + r.words() + "\"")
                        .toList());
    }

    /** For tests and generated sheets: filled rows in the columns of a plan. */
    public static String write(List<FieldTrial> trials, List<String> head) {
        StringWriter text = new StringWriter();
        for (String line : head) {
            text.append("# ").append(line.replaceAll("\\R", " ")).append('\n');
        }
        try (CsvWriter csv = CsvWriter.builder().lineDelimiter(LineDelimiter.LF).build(text)) {
            csv.writeRecord(TRIAL, HAND, OBJECT, GRIP, X, Y, TURN, PAIR, OUTCOME, REASON, NOTE);
            for (FieldTrial t : trials) {
                csv.writeRecord(
                        String.valueOf(t.number()),
                        t.hand(),
                        t.object(),
                        t.grip(),
                        t.placed().map(p -> whole(1e3 * p.x())).orElse(""),
                        t.placed().map(p -> whole(1e3 * p.y())).orElse(""),
                        t.placed().map(p -> whole(Math.toDegrees(p.turn()))).orElse(""),
                        t.pair(),
                        t.outcome().words(),
                        t.reason().map(TrialReason::words).orElse(""),
                        t.note());
            }
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
        return text.toString();
    }

    static Placed placed(double xMillimetres, double yMillimetres, double turnDegrees) {
        return new Placed(1e-3 * xMillimetres, 1e-3 * yMillimetres, Math.toRadians(turnDegrees));
    }
}
