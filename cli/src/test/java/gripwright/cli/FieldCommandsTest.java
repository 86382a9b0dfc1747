package gripwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.networknt.schema.InputFormat;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import gripwright.cli.Shell.Ran;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Trials of the built hand: planned, filled in, scored; closings by the stand-in. */
class FieldCommandsTest {
    private static final SchemaRegistry SCHEMAS = SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12);

    @TempDir
    @SuppressWarnings("NullAway.Init")
    Path folder;

    @SuppressWarnings("NullAway.Init")
    private Shell shell;

    @BeforeEach
    void projectInAFolder() {
        shell = new Shell(folder);
        assertThat(shell.run("new", "p").code()).isZero();
    }

    private String text(String file) throws IOException {
        return Files.readString(folder.resolve(file));
    }

    private void write(String file, String text) throws IOException {
        Files.writeString(folder.resolve(file), text);
    }

    private List<String> schemaFaults(SchemaCommand.Kind kind, String file) throws IOException {
        return SCHEMAS
                .getSchema(SchemaCommand.text(kind), InputFormat.JSON)
                .validate(text(file), InputFormat.JSON)
                .stream()
                .map(Object::toString)
                .toList();
    }

    /** Fills the sheet of the plan: held where the stand-in holds, one in twenty at random the other way. */
    private void fill(String from, String to) throws IOException {
        Random random = new Random(3);
        StringBuilder filled = new StringBuilder();
        for (String line : text(from).lines().toList()) {
            if (line.startsWith("#") || line.startsWith("trial")) {
                filled.append(line).append('\n');
                continue;
            }
            String[] cells = line.split(",", -1);
            double x = cells[6].isEmpty() ? 12 * random.nextGaussian() : Double.parseDouble(cells[6]);
            double y = cells[7].isEmpty() ? 12 * random.nextGaussian() : Double.parseDouble(cells[7]);
            boolean held = Math.hypot(x, y) < 20 ^ random.nextInt(20) == 0;
            filled.append(line.replaceAll(",,,$", held ? ",held,," : ",pushed away,rolled away,"))
                    .append('\n');
        }
        write(to, filled.toString());
    }

    @Test
    void planTrialsWritesSheetsToFillInAndSaysHowMany() throws IOException {
        Ran ran = shell.run(
                "plan-trials", "p", "--difference", "30 %", "--hands", "soft pads, hard pads", "--json", "plan.json");
        assertThat(ran.err()).isEmpty();
        assertThat(ran.code()).isZero();
        assertThat(ran.out())
                .contains(
                        "To see a difference of 30 % from an expected", "soft pads and hard pads", "McNemar", "seed 1");
        assertThat(text("p/trials/sheet.csv"))
                .contains("trial,day,block,hand,object,grip,x_mm,y_mm,turn_deg,pair,outcome,reason,note")
                .contains("# outcome: one of undecided, landed on it", "hard pads");
        assertThat(text("p/trials/sheet.html")).contains("Closing fingers pinch", "hard pads", "</html>");
        assertThat(text("p/trials/measurements.html"))
                .contains(
                        "Tilt test", "Spring rate of a joint", "Shear of a pad", "Loss of a tendon", "eyes protected");
        assertThat(text("p/trials/plan.svg")).contains("<svg", "soft pads");
        assertThat(schemaFaults(SchemaCommand.Kind.plan, "plan.json")).isEmpty();
    }

    @Test
    void anEmptySheetIsReplacedAndAFilledOneIsNot() throws IOException {
        shell.run("plan-trials", "p");
        assertThat(shell.run("plan-trials", "p", "--seed", "2").out()).contains("an empty one was there");
        fill("p/trials/sheet.csv", "p/trials/sheet.csv");
        String filled = text("p/trials/sheet.csv");
        String page = text("p/trials/sheet.html");
        Ran ran = shell.run("plan-trials", "p", "--seed", "3");
        assertThat(ran.code()).isEqualTo(Exit.FILES.code());
        assertThat(ran.err()).contains("sheet.csv is filled in", "nothing was written", "--to");
        assertThat(text("p/trials/sheet.csv")).isEqualTo(filled);
        assertThat(text("p/trials/sheet.html")).isEqualTo(page);
        assertThat(shell.run("plan-trials", "p", "--to", "elsewhere").code()).isZero();
    }

    @Test
    void wrongWishesForAPlanAreRefused() {
        usage("--difference and --interval were both given", "--difference", "20 %", "--interval", "10 %");
        usage("--hands names 1 hand; a difference needs two", "--difference", "20 %", "--hands", "A");
        usage("expected different labels", "--hands", "A,A");
        usage("no object of p is called 'anvil'", "--object", "anvil");
        usage("leaves nothing", "--difference", "60 %", "--expected", "50 %");
        usage("'20 mm' is a length, not a share", "--difference", "20 mm");
        usage("'120 %' is not above 0 % and at most 100 %", "--expected", "120 %");
        usage("trials of each hand; expected at most 5000", "--difference", "1 %");
        usage("--places is 'somewhere'", "--places", "somewhere");
    }

    private void usage(String message, String... more) {
        List<String> args = new java.util.ArrayList<>(List.of("plan-trials", "p"));
        args.addAll(List.of(more));
        Ran ran = shell.run(args.toArray(new String[0]));
        assertThat(ran.err()).contains(message);
        assertThat(ran.code()).isEqualTo(Exit.USAGE.code());
    }

    @Test
    void scoreCountsComparesForetellsAndUpdates() throws IOException {
        shell.run("plan-trials", "p", "--difference", "30 %", "--hands", "this hand,other hand");
        fill("p/trials/sheet.csv", "filled.csv");
        Ran ran = shell.run(
                "score",
                "p",
                "--sheet",
                "filled.csv",
                "--against",
                "prediction",
                "--closings",
                "80",
                "--json",
                "score.json",
                "--picture",
                "score.svg");
        assertThat(ran.err()).isEmpty();
        assertThat(ran.code()).isZero();
        assertThat(ran.out())
                .contains("This hand: held in", "exact McNemar test", "predicted", "friction on", "page     written to")
                .contains("Holm");
        assertThat(schemaFaults(SchemaCommand.Kind.score, "score.json")).isEmpty();
        assertThat(text("p/results/score.html"))
                .contains("How often did it hold?", "Was it foretold?", "Which assumptions explain it?");
        assertThat(text("score.svg")).contains("Share of trials on the bench held");
    }

    @Test
    void scoreIsTheSameOnAnyNumberOfThreads() throws IOException {
        shell.run("plan-trials", "p", "--interval", "40 %");
        fill("p/trials/sheet.csv", "filled.csv");
        String[] start = {"score", "p", "--sheet", "filled.csv", "--closings", "60", "--json"};
        shell.run(more(start, "one.json", "--threads", "1"));
        shell.run(more(start, "two.json", "--threads", "3"));
        assertThat(text("one.json")).isEqualTo(text("two.json")).contains("\"friction\"");
    }

    private static String[] more(String[] start, String... more) {
        List<String> args = new java.util.ArrayList<>(List.of(start));
        args.addAll(List.of(more));
        return args.toArray(new String[0]);
    }

    @Test
    void aStoppedScoreCountsAndGoesOnFromThere() throws IOException {
        shell.run("plan-trials", "p", "--interval", "40 %");
        fill("p/trials/sheet.csv", "filled.csv");
        int[] runs = {0};
        shell.closings.atEachRun = () -> {
            if (++runs[0] == 50) {
                shell.interruption.request();
            }
        };
        String[] score = {
            "score", "p", "--sheet", "filled.csv", "--closings", "60", "--threads", "1", "--json", "s.json"
        };
        Ran stopped = shell.run(score);
        assertThat(stopped.code()).isEqualTo(Exit.STOPPED.code());
        assertThat(stopped.out()).contains("stopped  after 50 of", "This hand: held in");
        assertThat(schemaFaults(SchemaCommand.Kind.score, "s.json")).isEmpty();
        Ran again = new Shell(folder).run(score);
        assertThat(again.code()).isZero();
        assertThat(again.out()).contains("resumed  50 runs taken over");
    }

    @Test
    void anotherSheetIsComparedWithoutPairs() throws IOException {
        String object = "";
        shell.run("plan-trials", "p", "--interval", "40 %");
        for (String line : text("p/trials/sheet.csv").lines().toList()) {
            object = line.startsWith("1,") ? line.split(",", -1)[4] + "," + line.split(",", -1)[5] : object;
        }
        String head = "trial,object,grip,outcome,count\n";
        write("may.csv", head + "1," + object + ",held,48\n2," + object + ",missed,32\n");
        write("june.csv", head + "1," + object + ",held,56\n2," + object + ",missed,14\n");
        Ran ran = shell.run("score", "p", "--sheet", "may.csv", "--against", "june.csv", "--no-closings");
        assertThat(ran.err()).isEmpty();
        assertThat(ran.out().replaceAll("\\s+", " "))
                .contains(
                        "(june.csv) against",
                        ": 20 points more held",
                        "difference 5 to 33",
                        "Fisher's exact test on 70 and 80 trials");
    }

    @Test
    void faultsOfASheetAreListedAndNothingIsComputed() throws IOException {
        write("bad.csv", "trial,object,grip,outcome\n1,anvil,wrap,held\n-2,anvil,wrap,\n");
        Ran ran = shell.run("score", "p", "--sheet", "bad.csv");
        assertThat(ran.code()).isEqualTo(Exit.FAULTS.code());
        assertThat(ran.err())
                .contains("bad.csv:2:3: 'anvil' is no object of need.yaml", "bad.csv:3:1: trial is -2", "4 faults");
        assertThat(Files.exists(folder.resolve("p/results/score.html"))).isFalse();
        assertThat(shell.run("score", "p", "--sheet", "bad.csv", "--placing", "80 mm")
                        .err())
                .contains("'80 mm' is no error of a measured place; expected 0 mm to 50 mm");
        assertThat(shell.run("score", "p", "--sheet", "bad.csv", "--against", "prediction", "--no-closings")
                        .err())
                .contains("a prediction needs closings");
        assertThat(shell.run("score", "p", "--sheet", "none.csv").err())
                .contains("there is no file none.csv; expected a score sheet");
    }

    @Test
    void withoutKnowingWhichHandIsTheProjectsNothingIsForetold() throws IOException {
        shell.run("plan-trials", "p", "--difference", "40 %", "--hands", "A,B");
        fill("p/trials/sheet.csv", "filled.csv");
        Ran ran = shell.run("score", "p", "--sheet", "filled.csv");
        assertThat(ran.out()).contains("is the hand of the project? Say so with --hand");
        assertThat(shell.run("score", "p", "--sheet", "filled.csv", "--hand", "C")
                        .err())
                .contains("no trial is of hand 'C'; there are: ");
    }

    /** Values as the sheets of bench measurements say to write them. */
    @Test
    void measuredValuesGoIntoTheProjectAsTheSheetsSay() throws IOException {
        shell.run("demo", "--only-files", "--to", "demo");
        shell.run("plan-trials", "demo");
        assertThat(text("demo/trials/measurements.html"))
                .contains("glass: 0.74 +- 0.06", "pin: {spring: 0.137 N*m/rad}", "soft: {modulus: 0.71 MPa}")
                .contains("sheath friction: 0.092", "surface: {friction: 0.31 +- 0.03}");
        String hand = text("demo/hand.yaml");
        String measured = hand.replace("glass: 0.9 +- 0.2", "glass: 0.74 +- 0.06")
                .replace("pin: {spring: 0.14 N*m/rad,", "pin: {spring: 0.137 N*m/rad,")
                .replace("soft: {hardness: 20 Shore A}", "soft: {modulus: 0.71 MPa}")
                .replace("sheath friction: 0.1", "sheath friction: 0.092");
        assertThat(measured.lines().filter(line -> !hand.contains(line))).hasSize(4);
        write("demo/hand.yaml", measured);
        write("demo/need.yaml", text("demo/need.yaml").replace("friction: 0.35 +- 0.05}", "friction: 0.31 +- 0.03}"));
        Ran ran = shell.run("check", "demo");
        assertThat(ran.code()).isZero();
        assertThat(ran.err()).isEmpty();
    }

    @Test
    void whatLooksLikeATrialBehindARemarkSignIsSaid() throws IOException {
        shell.run("demo", "--only-files", "--to", "demo");
        String sheet = "demo/trials/invented-sheet.csv";
        write("some.csv", text(sheet).replace("\n7,", "\n#7,"));
        Ran ran = shell.run("score", "demo", "--sheet", "some.csv", "--no-closings");
        assertThat(ran.code()).isZero();
        assertThat(ran.out().replaceAll("\\s+", " "))
                .contains("Not counted, since a # stands before: what looks like trials in line 11 of some.csv.");
    }

    @Test
    void theSheetOfTheDemoIsSoundAndSaysThatItIsInvented() throws IOException {
        shell.run("demo", "--only-files", "--to", "demo");
        String sheet = "demo/trials/invented-sheet.csv";
        assertThat(text(sheet)).startsWith("# INVENTED DATA");
        Ran ran = shell.run("score", "demo", "--sheet", sheet, "--no-closings");
        assertThat(ran.err()).isEmpty();
        assertThat(ran.out()).contains("This hand: held in", "washed pads", "pairs");
    }
}
