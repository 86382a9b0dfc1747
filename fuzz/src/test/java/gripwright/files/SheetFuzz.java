package gripwright.files;

import com.code_intelligence.jazzer.junit.FuzzTest;
import gripwright.fuzz.Limit;
import gripwright.model.Project;
import gripwright.study.FieldTrial;
import gripwright.study.Scoring;
import gripwright.study.SheetScore;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/**
 * Any bytes are a score sheet or are refused with reasons that name a line; what was read can be scored, and comes back the
 * same after it was written again.
 */
class SheetFuzz {
    private static final Path FOLDER = folder();
    private static final Project PROJECT = ProjectReader.read(FOLDER);
    private static final Path SHEET = FOLDER.resolve("sheet.csv");

    private static Path folder() {
        try {
            Path folder = Files.createTempDirectory("gripwright-fuzz");
            StartingProject.write(folder);
            return folder;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @FuzzTest
    void anySheetIsScoredOrRefused(byte[] bytes) {
        Limit.hold(() -> {
            Files.write(SHEET, bytes);
            ScoreSheet.isFilled(SHEET);
            read(true);
            List<FieldTrial> trials = read(false);
            if (!trials.isEmpty()) {
                score(trials);
                comesBack(trials);
            }
        });
    }

    private static List<FieldTrial> read(boolean soFar) throws IOException {
        try {
            return ScoreSheet.read(SHEET, "sheet.csv", PROJECT, soFar).trials();
        } catch (ProjectFaults refused) {
            int lines = SourceText.of("", Files.readString(SHEET, java.nio.charset.StandardCharsets.ISO_8859_1))
                    .lines()
                    .size();
            if (refused.faults().isEmpty()) {
                throw new AssertionError("refused without a reason", refused);
            }
            for (Fault fault : refused.faults()) {
                if (fault.message().isBlank() || fault.line() < 1 || fault.line() > lines || fault.column() < 1) {
                    throw new AssertionError("no place: " + fault.text());
                }
            }
            return List.of();
        }
    }

    private static void score(List<FieldTrial> trials) {
        SheetScore score = Scoring.of(trials);
        int counted = score.hands().stream()
                .map(score::total)
                .mapToInt(r -> r.decided() + r.undecided())
                .sum();
        if (counted != trials.stream().mapToInt(FieldTrial::count).sum()) {
            throw new AssertionError(counted + " trials counted of " + trials);
        }
    }

    private static void comesBack(List<FieldTrial> trials) throws IOException {
        if (trials.stream().anyMatch(t -> t.count() != 1 || t.note().lines().count() > 1)) {
            return; // the writer knows neither
        }
        Files.writeString(SHEET, ScoreSheet.write(trials, List.of("again")));
        List<FieldTrial> again = read(false);
        if (!again.stream()
                .map(SheetFuzz::words)
                .toList()
                .equals(trials.stream().map(SheetFuzz::words).toList())) {
            throw new AssertionError(trials + " came back as " + again);
        }
    }

    /** Without the place, which is written to a thousandth of a millimetre. */
    private static String words(FieldTrial t) {
        return List.of(
                        t.number(),
                        t.hand(),
                        t.object(),
                        t.grip(),
                        t.placed().isPresent(),
                        t.outcome(),
                        t.reason(),
                        t.note(),
                        t.pair())
                .toString();
    }
}
