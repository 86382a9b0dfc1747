package gripwright.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import gripwright.closing.Outcome;
import gripwright.files.ScoreSheet.Sheet;
import gripwright.model.Project;
import gripwright.study.FieldTrial;
import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What people and spreadsheet programs make of a score sheet: understood where it is safe, else a fault with its line. */
class ScoreSheetFaultsTest {
    private static final String HEAD = "trial,hand,object,grip,x_mm,y_mm,turn_deg,pair,outcome,reason,note\n";

    @TempDir
    @SuppressWarnings("NullAway.Init")
    Path path;

    @SuppressWarnings("NullAway.Init")
    private Project project;

    private String what = "";

    @BeforeEach
    void project() {
        project = Folder.starting(path).read();
        what = project.need().objects().get(0).name() + ","
                + project.need().objects().get(0).grips().get(0);
    }

    private String row(int number, String more) {
        return number + ",A," + what + "," + more + "\n";
    }

    private Sheet read(byte[] bytes) throws IOException {
        Path file = path.resolve("sheet.csv");
        Files.write(file, bytes);
        return ScoreSheet.read(file, "sheet.csv", project, false);
    }

    private Sheet read(String text) throws IOException {
        return read(text.getBytes(StandardCharsets.UTF_8));
    }

    private List<Fault> faults(byte[] bytes) throws IOException {
        try {
            read(bytes);
        } catch (ProjectFaults faults) {
            return faults.faults();
        }
        return List.of();
    }

    private void expect(String text, Object... linesAndMessages) throws IOException {
        List<org.assertj.core.groups.Tuple> wanted = new java.util.ArrayList<>();
        for (int i = 0; i < linesAndMessages.length; i += 2) {
            wanted.add(tuple(linesAndMessages[i], linesAndMessages[i + 1]));
        }
        assertThat(faults(text.getBytes(StandardCharsets.UTF_8)))
                .extracting(Fault::line, Fault::message)
                .containsExactlyElementsOf(wanted);
    }

    // ------------------------------------------------- what spreadsheets save

    @Test
    void emptyColumnsAndLinesAtTheEndAreNoFault() throws IOException {
        String text =
                HEAD.strip() + ",,\n" + row(1, ",,,,held,,,,").strip() + "\n,,,,,,,,,,,,\n" + row(2, ",,,,missed,,,,");
        assertThat(read(text).trials()).extracting(FieldTrial::outcome).containsExactly(Outcome.HELD, Outcome.MISSED);
    }

    @Test
    void emptyCellsThatASpreadsheetLeftOutAtTheEndOfALineAreEmpty() throws IOException {
        assertThat(read(HEAD + row(1, ",,,,held") + row(2, ",,,,missed,closed beside it"))
                        .trials())
                .hasSize(2);
        expect(
                HEAD + row(1, "") + "2,A\n",
                2,
                "trial 1 has no outcome",
                3,
                "the line has 2 cells, the column names are 11");
    }

    @Test
    void aSheetSavedAnewWithSemicolonsByteOrderMarkAndQuotedRemarksIsRead() throws IOException {
        String text = "\ufeff\"# reason: empty if held, else one of \"\"dented\"\", \"\"broke\"\"\";;;;;;;;;;\r\n"
                + HEAD.strip().replace(',', ';') + "\r\n\"1\";A;" + what.replace(',', ';')
                + ";\"12,5\";-5;0;;Held;;\"a; b\"\r\n";
        FieldTrial trial = read(text).trials().get(0);
        assertThat(trial.placed().orElseThrow().x()).isEqualTo(0.0125);
        assertThat(trial.note()).isEqualTo("a; b");
    }

    @Test
    void unbreakableBlanksRoundACellAreNoPartOfIt() throws IOException {
        assertThat(read(HEAD + row(1, ",,,, held\u00a0,,")).trials()).hasSize(1);
    }

    @Test
    void otherEncodingsAreSaidLineByLineBesideTheOtherFaults() throws IOException {
        String text = HEAD + row(1, ",,,,held,,caf\u00e9") + row(2, ",,,,hold,,") + row(3, ",,,,held,,na\u00efve");
        assertThat(faults(text.getBytes(StandardCharsets.ISO_8859_1)))
                .extracting(Fault::line, Fault::message)
                .containsExactly(
                        tuple(2, "byte " + (text.indexOf('\u00e9') + 1) + " (0xe9) is not valid UTF-8"),
                        tuple(3, "'hold' is no outcome"),
                        tuple(4, "a byte that is not valid UTF-8"));
        for (Charset charset : List.of(StandardCharsets.UTF_16, Charset.forName("UTF-16LE"))) {
            byte[] bytes = ("\ufeff" + HEAD).getBytes(charset);
            assertThat(faults(bytes)).hasSize(1);
            assertThat(faults(bytes).get(0).message()).isEqualTo("sheet.csv is UTF-16 text");
            assertThat(faults(bytes).get(0).expected()).contains("UTF-8");
        }
    }

    // -------------------------------------------------------- what people type

    @Test
    void aTrialBehindARemarkSignIsLeftOutAndSaid() throws IOException {
        Sheet sheet =
                read("# 1, 2, 3, go\n" + HEAD + row(1, ",,,,held,,") + "#" + row(2, ",,,,held,,") + "# 3 was fine\n");
        assertThat(sheet.trials()).hasSize(1);
        assertThat(sheet.aside()).containsExactly(4);
    }

    @Test
    void aQuoteThatSwallowsTrialsIsAFaultOfItsLine() throws IOException {
        expect(
                HEAD + row(1, ",,,,held,,\"wet") + row(2, ",,,,hold,,") + row(3, ",,,,held,,"),
                2,
                "a quote that opens or ends no text in this line",
                3,
                "'hold' is no outcome");
        expect(
                HEAD + row(1, ",,,,held,,\"wet") + row(2, ",,,,held,,\"dry\"") + row(3, ",,,,held,,"),
                2,
                "a quote that opens or ends no text in this line");
        expect(HEAD + row(1, ",,,,held,,\"wet\" rag"), 2, "a quote that opens or ends no text in this line");
        assertThat(read(HEAD + row(1, ",,,,held,,\"wet\nand cold\"") + row(2, ",,,,held,,"))
                        .trials()
                        .get(0)
                        .note())
                .as("a line break in a cell")
                .isEqualTo("wet\nand cold");
    }

    @Test
    void faultsOfTheColumnNamesDoNotHideThoseOfTheLines() throws IOException {
        expect(
                "trial,hand,objekt,grip,outcome,outcome,,note\n1,A,x,y,hold,,,\n-2,A,x,y,held,,,\n",
                1,
                "'objekt' is no column of a score sheet",
                1,
                "column 'outcome' is there twice",
                1,
                "column 7 has no name",
                1,
                "there is no column 'object'",
                2,
                "'y' is no grip of hand.yaml",
                2,
                "'hold' is no outcome",
                3,
                "trial is -2",
                3,
                "'y' is no grip of hand.yaml");
    }

    @Test
    void secondColumnNamesInAnotherOrderAreStillColumnNames() throws IOException {
        expect(
                HEAD + row(1, ",,,,held,,") + "object,grip,trial,outcome\n" + row(1, ",,,,held,,"),
                3,
                "a second line of column names",
                4,
                "trial 1 is there twice, first in line 2");
    }

    @Test
    void everyFaultOfALineIsListed() throws IOException {
        expect(
                HEAD + "x,,anvil,nail,NaN,1e300,2,,held,dented,\n",
                2,
                "trial is 'x'",
                2,
                "hand is empty",
                2,
                "'anvil' is no object of need.yaml",
                2,
                "'nail' is no grip of hand.yaml",
                2,
                "x_mm is 'NaN'",
                2,
                "y_mm is '1e300'",
                2,
                "'dented' contradicts the outcome 'held'");
    }

    @Test
    void numbersOfOtherCustomsAreFaultsWithAHint() throws IOException {
        List<Fault> faults = faults((HEAD + row(1, "\"12,5\",\u22125,400,,held,,") + row(2, "1,,,,held,,"))
                .getBytes(StandardCharsets.UTF_8));
        assertThat(faults)
                .extracting(Fault::message)
                .containsExactly(
                        "x_mm is '12,5'",
                        "y_mm is '\u22125'",
                        "turn_deg is '400'",
                        "a place without y_mm and turn_deg");
        assertThat(faults).extracting(Fault::suggestion).containsExactly("12.5", "-5", null, null);
    }

    @Test
    void oneHandUnderTwoSpellingsIsAContradiction() throws IOException {
        expect(
                HEAD + row(1, ",,,,held,,") + row(2, ",,,,held,,").replace(",A,", ",a,"),
                3,
                "hand is 'a', but 'A' in line 2");
    }

    @Test
    void aReasonWithoutAnOutcomeIsNoTrialToCome() throws IOException {
        String text = HEAD + row(1, ",,,,held,,") + row(2, ",,,,,dented,");
        expect(text, 3, "trial 2 has a reason but no outcome");
        Path file = path.resolve("sheet.csv");
        try {
            ScoreSheet.read(file, "sheet.csv", project, true);
        } catch (ProjectFaults faults) {
            assertThat(faults).hasMessageContaining("trial 2 has a reason but no outcome");
        }
    }

    @Test
    void labelsThatWouldSpoilATerminalAreFaults() throws IOException {
        expect(HEAD + row(1, ",,,,held,,").replace(",A,", ",A\u001b[2J,"), 2, "hand is 'A\u001b[2J'");
        expect(
                HEAD + row(1, ",,,,held,,").replace(",A,", "," + "A".repeat(61) + ","),
                2,
                "hand is '" + "A".repeat(37) + "...'");
        StringBuilder many = new StringBuilder(HEAD);
        for (int i = 1; i <= 13; i++) {
            many.append(row(i, ",,,,held,,").replace(",A,", ",hand " + i + ","));
        }
        expect(many.toString(), 1, "the sheet names 13 hands");
    }

    @Test
    void hugeLinesAreRefusedInNoTime() throws IOException {
        long start = System.nanoTime();
        String long1 = "x".repeat(1_900_000);
        expect(
                HEAD + row(1, ",,,,held,,").replace(what, long1 + ",top"),
                2,
                "'" + "x".repeat(37) + "...' is no object of need.yaml");
        expect(",".repeat(1_900_000) + "x\n", 1, "the first line has 1900001 cells");
        expect(HEAD + ",".repeat(1_900_000) + "x\n", 2, "the line has 1900001 cells, the column names are 11");
        expect(HEAD + "\n".repeat(1_900_000), 1, "no trial follows the column names");
        assertThat(faults((HEAD + "x,\n".repeat(600_000)).getBytes(StandardCharsets.UTF_8)))
                .hasSizeGreaterThan(100_000);
        assertThat((System.nanoTime() - start) / 1e9).as("seconds").isLessThan(20);
    }

    @Test
    void allFaultsOfALongSheetAreInTheMessage() throws IOException {
        StringBuilder text = new StringBuilder(HEAD);
        for (int i = 1; i <= 120; i++) {
            text.append(row(i, ",,,,fine,,"));
        }
        assertThat(new ProjectFaults(faults(text.toString().getBytes(StandardCharsets.UTF_8))).getMessage())
                .contains("sheet.csv:2:", "sheet.csv:51:", "sheet.csv:52:", "sheet.csv:121:");
    }
}
