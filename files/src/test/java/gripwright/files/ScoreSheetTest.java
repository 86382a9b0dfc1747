package gripwright.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import gripwright.closing.Outcome;
import gripwright.files.ScoreSheet.Sheet;
import gripwright.model.Project;
import gripwright.study.FieldTrial;
import gripwright.study.Placed;
import gripwright.study.PlanGoal;
import gripwright.study.TrialPlan;
import gripwright.study.TrialPlanner;
import gripwright.study.TrialReason;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ScoreSheetTest {
    private static final String HEAD = "trial,hand,object,grip,x_mm,y_mm,turn_deg,pair,outcome,reason,note\n";

    @TempDir
    @SuppressWarnings("NullAway.Init")
    Path path;

    @SuppressWarnings("NullAway.Init")
    private Project project;

    private String object = "";
    private String grip = "";

    @BeforeEach
    void project() {
        project = Folder.starting(path).read();
        object = project.need().objects().get(0).name();
        grip = project.need().objects().get(0).grips().get(0);
    }

    private String row(String number, String more) {
        return number + ",A," + object + "," + grip + "," + more + "\n";
    }

    private Sheet read(String text, boolean soFar) throws IOException {
        Path file = path.resolve("sheet.csv");
        Files.writeString(file, text);
        return ScoreSheet.read(file, "sheet.csv", project, soFar);
    }

    private List<Fault> faults(String text) throws IOException {
        try {
            read(text, false);
        } catch (ProjectFaults faults) {
            return faults.faults();
        }
        return List.of();
    }

    private Fault fault(String text) throws IOException {
        List<Fault> faults = faults(text);
        assertThat(faults).as("exactly one fault").hasSize(1);
        return faults.get(0);
    }

    @Test
    void readsWhatWasFilledIn() throws IOException {
        Sheet sheet = read(
                "# a remark\n" + HEAD + row("1", "12,-5,30,p1,held,,") + "\n"
                        + row("2", ",,,,dropped in the lift,slipped down,\"wet, cold\""),
                false);
        assertThat(sheet.trials())
                .containsExactly(
                        new FieldTrial(
                                1,
                                "A",
                                object,
                                grip,
                                Optional.of(new Placed(0.012, -0.005, Math.toRadians(30))),
                                Outcome.HELD,
                                Optional.empty(),
                                "",
                                "p1",
                                1),
                        new FieldTrial(
                                2,
                                "A",
                                object,
                                grip,
                                Optional.empty(),
                                Outcome.DROPPED,
                                Optional.of(TrialReason.SLIPPED_DOWN),
                                "wet, cold",
                                "",
                                1));
    }

    @Test
    void semicolonsAndDecimalCommasOfSpreadsheetsAreUnderstood() throws IOException {
        String text = HEAD.replace(',', ';') + "1;A;" + object + ";" + grip + ";12,5;-5;0;;Held;;\n";
        FieldTrial trial =
                read("\ufeff" + text.replace("\n", "\r\n"), false).trials().get(0);
        assertThat(trial.placed().orElseThrow().x()).isEqualTo(0.0125);
        assertThat(trial.held()).isTrue();
    }

    @Test
    void aPlanComesBackOnceItIsFilledIn() throws IOException {
        TrialPlan plan = new TrialPlanner(project.need(), TrialPlanner.first(project.need()), 50, true)
                .plan(List.of("soft", "hard"), new PlanGoal.Width(0.3), 0.8, 4);
        String text = ScoreSheet.write(plan, List.of("need: two\nlines"));
        Path file = path.resolve("plan.csv");
        Files.writeString(file, text);
        assertThat(ScoreSheet.isFilled(file)).isFalse();
        Sheet sheet = read(text.replaceAll("(?m),,,$", ",held,,"), false);
        assertThat(sheet.trials()).hasSameSizeAs(plan.trials());
        for (int i = 0; i < plan.trials().size(); i++) {
            Placed set = plan.trials().get(i).placed().orElseThrow();
            Placed got = sheet.trials().get(i).placed().orElseThrow();
            assertThat(Math.abs(got.x() - set.x()) + Math.abs(got.turn() - set.turn()))
                    .isLessThan(1e-9);
            assertThat(sheet.trials().get(i).pair())
                    .isEqualTo(plan.trials().get(i).pair());
        }
    }

    @Test
    void aSheetInWhichSomebodyWroteIsFilled() throws IOException {
        TrialPlan plan = new TrialPlanner(project.need(), TrialPlanner.first(project.need()), 50, true)
                .plan(List.of("A"), new PlanGoal.Width(0.4), 0.8, 4);
        String text = ScoreSheet.write(plan, List.of());
        Path file = path.resolve("plan.csv");
        Files.writeString(file, text.replaceFirst(",,,\n", ",,,dusty\n"));
        assertThat(ScoreSheet.isFilled(file)).isTrue();
        Files.writeString(file, "# Tuesday: new pads\n" + text);
        assertThat(ScoreSheet.isFilled(file)).as("a remark of one's own").isTrue();
        Files.writeString(file, "my,own,table\n1,2,3\n");
        assertThat(ScoreSheet.isFilled(file)).as("not ours").isTrue();
        Files.writeString(file, text.replace(',', ';'));
        assertThat(ScoreSheet.isFilled(file)).as("saved anew by a spreadsheet").isFalse();
    }

    @Test
    void openTrialsAreFaultsUnlessOneAsksForTheScoreSoFar() throws IOException {
        String text = HEAD + row("1", ",,,,held,,") + row("2", ",,,,,,");
        assertThat(fault(text).message()).isEqualTo("trial 2 has no outcome");
        assertThat(fault(text).line()).isEqualTo(3);
        assertThat(fault(text).expected()).contains("--so-far");
        assertThat(read(text, true).open()).isEqualTo(1);
        assertThat(read(text, true).trials()).hasSize(1);
    }

    @Test
    void everyFaultIsListedWithItsLine() throws IOException {
        String known = object;
        object = known + "x";
        String wrongObject = row("3", ",,,,held,,");
        object = known;
        List<Fault> faults = faults(HEAD
                + row("1", ",,,,held,slipped down,") // 2: contradiction
                + wrongObject // 3: not in the need
                + row("3", "1,2,3,,held,,") // 4: number twice
                + row("5", "NaN,2,3,,held,,") // 5
                + row("6", "1,,,,held,,") // 6: half a place
                + row("7", ",,,,hold,,") // 7: no outcome
                + row("-8", ",,,,held,,") // 8
                + row("9", ",,,,missed,dented,") // 9: does not fit
                + row("10", ",,,,missed,fell asleep,") // 10
                + HEAD // 11
                + "12,A\n" // 12
                + row("13", ",,,,,,")); // 13
        assertThat(faults).extracting(Fault::line).containsExactly(2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13);
        assertThat(faults)
                .extracting(Fault::message)
                .containsExactly(
                        "'slipped down' contradicts the outcome 'held'",
                        "'" + known + "x' is no object of need.yaml",
                        "trial 3 is there twice, first in line 3",
                        "x_mm is 'NaN'",
                        "a place without y_mm and turn_deg",
                        "'hold' is no outcome",
                        "trial is -8",
                        "'dented' contradicts the outcome 'missed'",
                        "'fell asleep' is no reason",
                        "a second line of column names",
                        "the line has 2 cells, the column names are 11",
                        "trial 13 has no outcome");
        assertThat(faults.get(1).suggestion()).isEqualTo(known);
        assertThat(faults.get(5).suggestion()).isEqualTo("held");
        assertThat(faults.get(5).column()).isGreaterThan(10);
    }

    @Test
    void contradictingPairsAreFaults() throws IOException {
        String other = row("2", "1,2,4,p,held,,").replace(",A,", ",B,");
        assertThat(fault(HEAD + row("1", "1,2,3,p,held,,") + other).message())
                .isEqualTo("pair 'p' stood elsewhere in line 2");
        assertThat(fault(HEAD + row("1", "1,2,3,p,held,,") + row("2", "1,2,3,p,held,,"))
                        .message())
                .isEqualTo("hand 'A' has pair 'p' twice, first in line 2");
    }

    @Test
    void countsMustNotBeNegativeNorBelongToAPair() throws IOException {
        String head = "trial,object,grip,outcome,count,pair\n";
        String start = object + "," + grip + ",held,";
        assertThat(read(head + "1," + start + "17,\n2," + object + "," + grip + ",missed,3,\n", false)
                        .trials())
                .extracting(FieldTrial::count)
                .containsExactly(17, 3);
        assertThat(fault(head + "1," + start + "-3,\n").message()).isEqualTo("count is -3");
        assertThat(fault(head + "1," + start + "2,p\n").message()).isEqualTo("a pair with a count of 2");
        assertThat(fault(head + "1," + start + "1e300,\n").message()).isEqualTo("count is '1e300'");
        assertThat(fault(head + "1," + start + "99999,\n").message()).contains("counts 5001 trials");
    }

    @Test
    void wrongColumnsAreNamed() throws IOException {
        List<Fault> faults = faults("trial,objekt,grip,outcome,outcome\n1,a,b,held,held\n");
        assertThat(faults)
                .extracting(Fault::message)
                .containsExactly(
                        "'objekt' is no column of a score sheet",
                        "column 'outcome' is there twice",
                        "there is no column 'object'",
                        "'b' is no grip of hand.yaml");
        assertThat(faults.get(0).suggestion()).isEqualTo("object");
    }

    @Test
    void filesThatAreNoSheetAreRefusedWithWhy() throws IOException {
        assertThat(fault("").message()).isEqualTo("the sheet is empty");
        assertThat(fault(HEAD).message()).isEqualTo("no trial follows the column names");
        Path file = path.resolve("sheet.csv");
        Files.write(file, (HEAD + "1,A,caf\u00e9").getBytes(StandardCharsets.ISO_8859_1));
        assertThatThrownBy(() -> ScoreSheet.read(file, "sheet.csv", project, false))
                .hasMessageContaining("sheet.csv:2:8", "(0xe9) is not valid UTF-8");
        try (RandomAccessFile hole = new RandomAccessFile(file.toFile(), "rw")) {
            hole.setLength(2L << 30);
        }
        assertThatThrownBy(() -> ScoreSheet.read(file, "sheet.csv", project, false))
                .hasMessageContaining("sheet.csv has 2147483648 bytes");
    }

    @Test
    void propertyDamagedSheetsEndInFaultsAndNothingElse() throws IOException {
        String text = HEAD + row("1", "12,-5,30,p1,held,,") + row("2", ",,,,missed,closed beside it,\"a, b\"");
        for (int seed = 0; seed < 300; seed++) {
            Random random = new Random(seed);
            StringBuilder damaged = new StringBuilder(text);
            for (int i = 0; i < 3; i++) {
                int at = random.nextInt(damaged.length());
                damaged.setCharAt(at, "\",;\n#\t 0-\u0000x".charAt(random.nextInt(11)));
            }
            try {
                read(damaged.toString(), random.nextBoolean());
            } catch (ProjectFaults faults) {
                assertThat(faults.faults()).as("seed " + seed).isNotEmpty();
            }
        }
    }
}
