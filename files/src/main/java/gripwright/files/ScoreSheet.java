package gripwright.files;

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
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

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

    /** How the remarks of an empty sheet begin. */
    private static final List<String> REMARKS =
            List.of("# Score sheet of ", "# need: ", "# outcome: one of ", "# reason: empty if held");

    private static final char REPLACED = '\ufffd';
    private static final String UTF8 = "a file saved as UTF-8 (spreadsheets call it \"CSV UTF-8\")";

    private ScoreSheet() {}

    /**
     * What a sheet holds.
     *
     * @param open lines whose trial has not been made yet
     * @param aside lines that begin with # and look like trials; not counted
     */
    public record Sheet(List<FieldTrial> trials, int open, List<Integer> aside) {
        public Sheet {
            trials = List.copyOf(trials);
            aside = List.copyOf(aside);
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
        Set<Integer> unreadable = new TreeSet<>();
        SourceText source = source(file, name, unreadable, faults);
        SheetTable table = source == null ? null : SheetTable.read(source, unreadable, faults);
        Sheet sheet = table == null ? null : new SheetRows(table, project, soFar, faults).read();
        if (sheet == null || !faults.isEmpty()) {
            faults.sort(
                    Comparator.comparingInt(Fault::line)); // those of form and of meaning, as they stand in the file
            throw new ProjectFaults(faults);
        }
        return sheet;
    }

    /** The text, or null after noting why not; lines that are no UTF-8 are noted one by one. */
    private static @Nullable SourceText source(Path file, String name, Set<Integer> unreadable, List<Fault> faults)
            throws IOException {
        long size = Files.size(file);
        if (size > GREATEST_SIZE) {
            faults.add(whole(
                    name,
                    name + " has " + size + " bytes",
                    "at most " + GREATEST_SIZE + " bytes; is this the right file?"));
            return null;
        }
        byte[] bytes = SourceText.readUpTo(file, GREATEST_SIZE + 1);
        if (bytes.length >= 2 && ((bytes[0] == -1 && bytes[1] == -2) || (bytes[0] == -2 && bytes[1] == -1))) {
            faults.add(whole(name, name + " is UTF-16 text", UTF8));
            return null;
        }
        SourceText source = SourceText.utf8(name, bytes, faults);
        if (source != null) {
            return source;
        }
        Fault first = faults.remove(faults.size() - 1);
        SourceText lenient = SourceText.of(name, new String(bytes, StandardCharsets.UTF_8));
        for (int line = first.line(); line <= lenient.lines().size(); line++) {
            int at = lenient.lines().get(line - 1).indexOf(REPLACED);
            if (at >= 0 && unreadable.add(line)) {
                String what = line == first.line() ? first.message() : "a byte that is not valid UTF-8";
                faults.add(lenient.fault(new Place(line, at + 1, line, at + 2), what, UTF8, null));
            }
        }
        return lenient;
    }

    private static Fault whole(String name, String message, String expected) {
        return new Fault(name, 1, 1, "", message, expected, null);
    }

    /**
     * True if somebody has written into the file: an outcome, a reason, a note or a remark of one's own stands in it, or it
     * is not a sheet of this program at all.
     */
    public static boolean isFilled(Path file) throws IOException {
        List<Fault> faults = new ArrayList<>();
        SourceText source = source(file, "sheet", new TreeSet<>(), faults);
        if (source == null || !faults.isEmpty()) {
            return true;
        }
        List<SheetTable.Row> rows = SheetTable.rows(source);
        if (rows.isEmpty()
                || !rows.get(0).cells().subList(0, rows.get(0).filled()).equals(WRITTEN)) {
            return true;
        }
        return source.lines().stream()
                        .anyMatch(
                                line -> line.startsWith("#") && REMARKS.stream().noneMatch(line::startsWith))
                || rows.stream().skip(1).anyMatch(row -> row.filled() > WRITTEN.indexOf(OUTCOME));
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
        text.append(REMARKS.get(2)).append(outcomes()).append('\n');
        text.append(REMARKS.get(3)).append(", else one of ").append(reasons()).append('\n');
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
