package gripwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import gripwright.cli.Shell.Ran;
import gripwright.closing.Criteria;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CommandsTest {
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

    @Test
    void newRefusesAFolderThatHoldsAProjectAndLeavesItAlone() throws IOException {
        Files.writeString(folder.resolve("p/hand.yaml"), "mine");
        Ran ran = shell.run("new", "p");
        assertThat(ran.code()).isEqualTo(Exit.FILES.code());
        assertThat(ran.err()).contains("p holds a hand.yaml already; nothing was written");
        assertThat(folder.resolve("p/hand.yaml")).hasContent("mine");
    }

    @Test
    void checkSaysWhatIsInTheProjectAndWhatWasAssumed() {
        Ran ran = shell.run("check", "p");
        assertThat(ran.code()).isZero();
        assertThat(ran.out()).contains("p has no faults.", "hand  ", "need  ", "object", "ssumed");
    }

    @Test
    void checkListsFaultsAndWritesThemAsJsonToo() throws IOException {
        Files.writeString(folder.resolve("p/hand.yaml"), "faulty: 1\n");
        Ran ran = shell.run("check", "p", "--json", "c.json");
        assertThat(ran.code()).isEqualTo(Exit.FAULTS.code());
        assertThat(ran.err()).contains("hand.yaml:1:", "expected", "nothing was computed");
        assertThat(folder.resolve("c.json")).content().contains("\"valid\": false", "\"file\": \"hand.yaml\"");
    }

    @Test
    void everyCommandOnAMissingFolderSaysSo() {
        for (String command : new String[] {"check", "trials", "report"}) {
            Ran ran = shell.run(command, "nowhere");
            assertThat(ran.code()).isEqualTo(Exit.FILES.code());
            assertThat(ran.err()).contains("there is no folder nowhere; expected a project folder with hand.yaml");
        }
    }

    @Test
    void wrongWordsAreRefusedWithWhatWasMeant() {
        assertUsage("no option", "Possible solutions: --offset", close("--ofset", "1 mm, 2 mm"));
        assertUsage("no unit", "'3' has no unit; expected a length", close("--offset", "1 mm, 3"));
        assertUsage(
                "one part", "'1 mm' has 1 part; expected x and y, such as \"12 mm, -5 mm\"", close("--offset", "1 mm"));
        assertUsage("no angle", "'20 mm' is a length, not an angle", close("--turn", "20 mm"));
        assertUsage("pads", "'14' is not rows x columns; expected such as 28x12", close("--pad-points", "14"));
        assertUsage("pads", "pad points are 1 x 6; expected 2..400 along", close("--pad-points", "1x6"));
        assertUsage("command", "Did you mean: gripwright close", new String[] {"clos"});
        assertUsage("object", "Missing required options: '--object=NAME', '--grip=NAME'", new String[] {"close", "p"});
        assertUsage("kind", "Invalid value for positional parameter at index 0 (KIND)", new String[] {"schema", "hnd"});
    }

    @Test
    void namesThatTheProjectDoesNotHaveAreRefusedWithThoseItHas() {
        assertUsage("object", "no object of p is called 'anvil'; there are: " + names(), new String[] {
            "close", "p", "--object", "anvil", "--grip", grip()
        });
        assertUsage("grip", "no grip of p is called 'bite'; there are: ", new String[] {
            "map", "p", "--object", object(), "--grip", "bite"
        });
    }

    @Test
    void countsOutOfRangeAreRefused() {
        assertUsage("cells", "--cells is 10; expected an odd number", map("--cells", "10"));
        assertUsage("cells", "--cells is 1; expected a whole number of 3 to 1001", map("--cells", "1"));
        assertUsage("threads", "--threads is 0; expected a whole number of 1 to 1024", map("--threads", "0"));
        assertUsage(
                "runs", "--runs is -1; expected a whole number of 1 to", new String[] {"trials", "p", "--runs", "-1"});
        assertUsage("span", "'0 mm' is not above 0 mm", map("--span", "0 mm"));
    }

    @Test
    void closeAnswersWithItsExitCode() {
        Ran held = shell.run(close("--offset", "12 mm, -5 mm", "--turn", "20 deg"));
        assertThat(held.out())
                .contains("\u25cf held: " + object() + " with " + grip(), "shifted x 12 mm, y -5 mm, turned 20 deg");
        assertThat(held.code()).isEqualTo(Exit.YES.code());
        assertThat(shell.run(close("--offset", "30 mm, 0 mm")).code()).isEqualTo(Exit.NO.code());
        assertThat(shell.run(close("--offset", "55 mm, 0 mm")).code()).isEqualTo(Exit.UNDECIDED.code());
    }

    @Test
    void holdTellsPullsTurnsAndWhatDecides() {
        String[] hold = {"hold", "p", "--object", object(), "--grip", grip(), "--picture", "h.svg"};
        Ran ran = shell.run(hold);
        assertThat(ran.code()).isEqualTo(Exit.YES.code());
        assertThat(ran.out())
                .contains(
                        "is held least towards +x: 4 N, where it slips at 3 mm; left 1 gave way first",
                        "the pulls decide",
                        "test",
                        "undecided",
                        "pull ",
                        "over 25 m/s^2",
                        "force x",
                        "pulled 5 mm and turned 9.55 deg");
        assertThat(folder.resolve("h.svg")).content().contains("How hard the hand holds");
        assertUsage("far", "expected at most 45 mm", new String[] {
            "hold", "p", "--object", object(), "--grip", grip(), "--travel", "60 mm"
        });
        Ran lost = shell.run("hold", "p", "--object", object(), "--grip", grip(), "--offset", "30 mm, 0 mm");
        assertThat(lost.code()).isEqualTo(Exit.NO.code());
        assertThat(lost.out()).contains("there is no hold to test");
    }

    @Test
    void closeShowsForcesResidualsAndCriteriaWithUnits() {
        String out = shell.run(close()).out();
        assertThat(out)
                .contains("at its nominal place", "moved 3.1 mm (x 3 mm, y 1 mm), tilted 1.15 deg")
                .contains("force    at most 12.3 N", "pressure at most 23 kPa", "pulls 40 N, wound in 23 mm")
                .contains("120 steps, 310 iterations", "3.0e-06 N on the object, 2.0e-08 N*m at a joint")
                .contains("landing force " + Say.force(Criteria.DEFAULT.landingForce()), "dropped past", "assumed");
    }

    @Test
    void mapDrawsTheOutcomesTheRangeAndWhatItMeans() {
        Ran ran = shell.run(map("--span", "60 mm", "--cells", "13", "--threads", "2"));
        assertThat(ran.out())
                .contains("13 x 13 cells of 10 mm", "capture range   10 mm", "Capture range:", "judged   by landing")
                .contains("\u25cf \u25cf \u25cf", "? undecided 13");
        assertThat(ran.code()).isZero();
    }

    @Test
    void trialsAnswerPerObjectAndInAll() {
        Ran ran = shell.run("trials", "p", "--runs", "40", "--seed", "3");
        assertThat(ran.out())
                .contains("40 runs for each object and grip, seed 3", "best grip", "all, weighted", "Weighted total:");
        assertThat(ran.code()).isIn(Exit.YES.code(), Exit.NO.code(), Exit.UNDECIDED.code());
    }

    @Test
    void sameSeedGivesTheSameBytesOnAnyNumberOfThreads() throws IOException {
        shell.run("trials", "p", "--runs", "30", "--threads", "1", "--json", "one.json");
        shell.run("trials", "p", "--runs", "30", "--threads", "3", "--json", "three.json");
        assertThat(folder.resolve("three.json")).hasSameBinaryContentAs(folder.resolve("one.json"));
    }

    @Test
    void stoppedStudiesPrintAndWriteWhatIsFinished() throws IOException {
        int[] runs = {0};
        shell.closings.atEachRun = () -> {
            if (++runs[0] == 5) {
                shell.interruption.request();
            }
        };
        Ran map = shell.run(map("--cells", "13", "--threads", "1", "--json", "map.json"));
        assertThat(map.code()).isEqualTo(Exit.STOPPED.code());
        assertThat(map.out()).contains("not computed 164", "capture range", "kept     5 finished runs");
        assertThat(folder.resolve("map.json")).content().contains("\"complete\": false", "null");
        Ran trials = shell.run("trials", "p", "--runs", "9", "--threads", "1", "--json", "trials.json");
        assertThat(trials.code()).isEqualTo(Exit.STOPPED.code());
        assertThat(trials.out()).contains("stopped before the end");
        assertThat(folder.resolve("trials.json")).content().contains("\"complete\": false");
    }

    @Test
    void stoppedStudyGoesOnFromItsFinishedRunsAndEndsAsIfItHadNotBeenStopped() throws IOException {
        String[] whole = map("--cells", "13", "--threads", "1", "--json", "whole.json");
        shell.run(whole);
        java.util.concurrent.atomic.AtomicInteger runs = new java.util.concurrent.atomic.AtomicInteger();
        Shell stopping = new Shell(folder);
        stopping.closings.atEachRun = () -> {
            if (runs.incrementAndGet() == 20) {
                stopping.interruption.request();
            }
        };
        Ran stopped = stopping.run(map("--cells", "13", "--threads", "1", "--json", "map.json"));
        assertThat(stopped.code()).isEqualTo(Exit.STOPPED.code());
        assertThat(stopped.out()).contains("kept     20 finished runs in results/kept-runs.txt");
        runs.set(0);
        Shell resuming = new Shell(folder);
        resuming.closings.atEachRun = runs::incrementAndGet;
        Ran resumed = resuming.run(map("--cells", "13", "--threads", "1", "--json", "map.json"));
        assertThat(resumed.out()).contains("resumed  20 runs taken over");
        assertThat(folder.resolve("map.json")).hasSameBinaryContentAs(folder.resolve("whole.json"));
        assertThat(folder.resolve("p/results/kept-runs.txt")).doesNotExist();
        int all = runs.get();
        runs.set(0);
        resuming.run(whole);
        assertThat(all).isEqualTo(runs.get() - 20);
    }

    @Test
    void finishedRunsOfOtherInputsAreNotUsed() throws IOException {
        shell.closings.atEachRun = shell.interruption::request;
        assertThat(shell.run("trials", "p", "--runs", "9", "--threads", "1").out())
                .contains("kept     1 finished run");
        Files.writeString(folder.resolve("p/need.yaml"), "\n# a remark\n", java.nio.file.StandardOpenOption.APPEND);
        assertThat(new Shell(folder)
                        .run("trials", "p", "--runs", "9", "--threads", "1")
                        .out())
                .doesNotContain("resumed");
    }

    @Test
    void closeSaysHowSureItIsAndWhatAFinerCalculationChanges() {
        assertThat(shell.run(close()).out()).contains("sure     all 6 runs", "are held");
        assertThat(shell.run(close("--once")).out()).doesNotContain("\nsure ");
        Ran refined = shell.run(close("--refine", "--picture", "r.svg"));
        assertThat(refined.out()).contains("half the step", "half the pad pitch", "half the damping", "outcome stays");
        assertThat(folder.resolve("r.svg")).content().contains("<svg", "half the damping");
    }

    @Test
    void varyRanksChangesAndFaults() throws IOException {
        Ran ran = shell.run("vary", "p", "--runs", "4", "--places", "2", "--json", "v.json", "--picture", "v.svg");
        assertThat(ran.err()).isEmpty();
        assertThat(ran.code()).isZero();
        assertThat(ran.out()).contains("first moment arm 20 % more", "worn", "cut", "No single change", "undecided");
        assertThat(ResultSchemasTest.faults(SchemaCommand.Kind.vary, folder.resolve("v.json")))
                .isEmpty();
        assertThat(folder.resolve("v.svg")).content().contains("<svg", "What can go wrong");
    }

    @Test
    void aResultThatCannotBeWrittenIsSaid() throws IOException {
        Files.writeString(folder.resolve("file"), "");
        Ran ran = shell.run(close("--json", "file/close.json"));
        assertThat(ran.code()).isEqualTo(Exit.FILES.code());
        assertThat(ran.err()).contains("cannot write", "file/close.json");
    }

    @Test
    void aDefectIsCalledOneAndDoesNotLookLikeAFaultOfTheProject() {
        shell.closings.atEachRun = () -> {
            throw new IllegalStateException("planted");
        };
        Ran ran = shell.run(map("--cells", "3"));
        assertThat(ran.code()).isEqualTo(Exit.DEFECT.code());
        assertThat(ran.err()).contains("a defect in Gripwright itself", "planted", "command: map p");
    }

    @Test
    void picturesAreWritten() {
        shell.run("check", "p", "--picture", "h.svg");
        assertThat(shell.run(close("--picture", "c.svg")).out()).contains("picture  written to c.svg");
        shell.run(map("--cells", "5", "--picture", "m.svg"));
        shell.run("trials", "p", "--runs", "5", "--picture", "t.svg");
        for (String name : new String[] {"h.svg", "c.svg", "m.svg", "t.svg"}) {
            assertThat(folder.resolve(name)).content().contains("<svg");
        }
    }

    @Test
    void reportIsOnePageWithTheResultsBesideIt() {
        Ran ran = shell.run("report", "p", "--runs", "5", "--cells", "5", "--map", object());
        assertThat(ran.err()).isEmpty();
        assertThat(ran.code()).isZero();
        assertThat(ran.out()).contains("report   written to p/results/report.html");
        assertThat(folder.resolve("p/results/report.html")).content().contains("<html", "2026-01-02", Version.TEXT);
        assertThat(folder.resolve("p/results/trials.json")).exists();
        assertThat(folder.resolve("p/results"))
                .isDirectoryContaining(f -> f.getFileName().toString().startsWith("map-"));
    }

    @Test
    void resultsDoNotChangeTheHashOfTheirInputs() throws IOException {
        String before = project().origin().inputs();
        shell.run("report", "p", "--runs", "2", "--cells", "3");
        assertThat(project().origin().inputs()).isEqualTo(before);
        assertThat(shell.run("check", "p").out()).doesNotContain("Stale");
        Files.writeString(folder.resolve("p/need.yaml"), "\n# a remark\n", java.nio.file.StandardOpenOption.APPEND);
        assertThat(project().origin().inputs()).isNotEqualTo(before);
        assertThat(shell.run("check", "p").out())
                .contains("Stale, made from other files than these: map-", "trials.json");
    }

    @Test
    void stoppedReportIsWrittenFromWhatIsFinished() {
        int[] runs = {0};
        shell.closings.atEachRun = () -> {
            if (++runs[0] == 30) {
                shell.interruption.request();
            }
        };
        Ran ran = shell.run("report", "p", "--threads", "1");
        assertThat(ran.code()).isEqualTo(Exit.STOPPED.code());
        assertThat(folder.resolve("p/results/report.html")).exists();
    }

    @Test
    void demoMakesItsFolderOnceAndEndsWithTheAnswerAndTheReport() throws IOException {
        Ran first = shell.run("demo");
        assertThat(first.err()).isEmpty();
        assertThat(first.code()).isZero();
        assertThat(first.out())
                .contains("made demo: hand.yaml, need.yaml", "report   written to demo/results/report.html");
        Files.writeString(folder.resolve("demo/hand.yaml"), "\n# mine\n", java.nio.file.StandardOpenOption.APPEND);
        Ran second = shell.run("demo");
        assertThat(second.out()).contains("demo exists and is used as it is.");
        assertThat(folder.resolve("demo/hand.yaml")).content().contains("# mine");
    }

    @Test
    void demoFilesAreAllListed() throws IOException {
        Path resources = Path.of("src/main/resources/demo");
        try (var files = Files.walk(resources)) {
            assertThat(files.filter(Files::isRegularFile)
                            .map(f -> resources.relativize(f).toString())
                            .filter(f -> !f.equals("FILES")))
                    .containsExactlyInAnyOrderElementsOf(DemoFiles.names());
        }
    }

    @Test
    void helpVersionAndCompletionGoToTheOutput() {
        assertThat(shell.run("--help").out()).contains("Usage: gripwright", "gripwright demo");
        assertThat(shell.run("close", "--help").out()).contains("Examples:", "--offset");
        assertThat(shell.run("--version").out()).contains("gripwright " + Version.TEXT);
        assertThat(shell.run("completion").out()).contains("complete", "trials");
        Ran bare = shell.run();
        assertThat(bare.code()).isEqualTo(Exit.USAGE.code());
        assertThat(bare.err()).contains("Usage: gripwright");
    }

    private void assertUsage(String what, String message, String[] args) {
        Ran ran = shell.run(args);
        assertThat(ran.err()).as(what).contains(message);
        assertThat(ran.code()).as(what).isEqualTo(Exit.USAGE.code());
        assertThat(ran.out()).as(what).isEmpty();
    }

    private OpenProject project() {
        return OpenProject.read(
                new Surroundings(
                        folder,
                        new java.io.PrintWriter(java.io.Writer.nullWriter()),
                        new java.io.PrintWriter(java.io.Writer.nullWriter()),
                        false,
                        () -> 0,
                        () -> java.time.LocalDate.of(2026, 1, 2),
                        new Interruption(),
                        shell.closings),
                Path.of("p"));
    }

    private String object() {
        return project().project().need().objects().get(0).name();
    }

    private String names() {
        return String.join(
                ", ",
                project().project().need().objects().stream().map(o -> o.name()).toList());
    }

    private String grip() {
        return project().project().need().objects().get(0).grips().get(0);
    }

    private String[] close(String... more) {
        return pair("close", more);
    }

    private String[] map(String... more) {
        return pair("map", more);
    }

    private String[] pair(String command, String... more) {
        java.util.List<String> args =
                new java.util.ArrayList<>(java.util.List.of(command, "p", "--object", object(), "--grip", grip()));
        args.addAll(java.util.List.of(more));
        return args.toArray(new String[0]);
    }
}
