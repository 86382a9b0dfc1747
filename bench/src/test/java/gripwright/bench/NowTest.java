package gripwright.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadInfo;
import java.net.URLEncoder;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the server says of a log that grows. */
class NowTest {
    private static final String COLUMNS = "seq,t,p00,p01,F";

    @TempDir
    Path folder;

    private TestBench bench;

    @BeforeEach
    void start() {
        bench = new TestBench(folder, 0);
    }

    @AfterEach
    void end() {
        bench.close();
    }

    private HttpResponse<String> ask(long after, String more) {
        return bench.get("/api/now?after=" + after + more);
    }

    /** Asks for state after state, as the page does, until one is as wanted. */
    private String until(String more, Predicate<String> wanted) {
        long after = 0;
        String last = "";
        for (int i = 0; i < 60; i++) {
            HttpResponse<String> answer = ask(after, more);
            if (answer.statusCode() == 200) {
                last = answer.body();
                after = (long) number(last, "version");
                if (wanted.test(last)) {
                    return last;
                }
            }
        }
        throw new AssertionError("never as wanted; the last state: " + last);
    }

    private static double number(String json, String name) {
        Matcher m = Pattern.compile("\"" + name + "\":(-?[0-9.]+)").matcher(json);
        assertThat(m.find()).as(name + " in " + json).isTrue();
        return Double.parseDouble(m.group(1));
    }

    private static Predicate<String> has(String part) {
        return json -> json.contains(part);
    }

    @Test
    void withoutALogThereIsNothingAndAPageThatKnowsWaitsForOne() {
        assertThat(ask(0, "").body()).contains("\"state\":\"none\"", "\"version\":-1");
        Thread later = new Thread(() -> {
            try {
                Thread.sleep(300);
            } catch (InterruptedException e) {
                return;
            }
            try (FakeRecording log = new FakeRecording(folder, "a.csv", COLUMNS)) {
                log.rows(5, "101000,101001,0.5");
            }
        });
        later.start();
        assertThat(ask(-1, "").body()).contains("\"log\":\"a.csv\"");
    }

    @Test
    void statesFollowTheLogWhileItGrows() {
        try (FakeRecording log = new FakeRecording(folder, "a.csv", COLUMNS)) {
            log.rows(100, "101000,101001,0.5");
            String first = until("&taxel=p01", has("\"readings\":100,"));
            assertThat(first)
                    .contains(
                            "\"state\":\"running\"",
                            "\"source\":\"serial:/dev/ttyACM0?baud=115200\"",
                            "\"lost\":\"no reading missing\"")
                    .contains("\"taxels\":[[\"p00\",\"\"],[\"p01\",\"\"]]", "\"unit\":\"Pa\"", "\"force\":\"F\"")
                    .contains(
                            "\"last\":[101000,101001]",
                            "\"zero\":[101000,101001]",
                            "\"others\":{\"t\":0.99,\"seq\":99,\"F\":0.5}")
                    .contains("\"curves\":{\"p01\":{\"low\":[101001,", "\"F\":{\"low\":[0.5,");
            log.rows(200, "101500,101001,0.7");
            log.lose(3);
            log.write("12,");
            String second = until("&layout=" + TestBench.field(first, "layoutId"), has("\"readings\":300,"));
            assertThat(second).contains("\"layout\":{}", "\"last\":[101500,101001]", "\"zero\":[101000,101001]");
            assertThat(number(second, "rate")).isBetween(99.0, 101.0);
            assertThat(number(second, "values")).isBetween(198.0, 202.0);
            log.truncate(log.size() - 3);
            log.rows(1, "101500,,0.7");
            assertThat(until("", has("\"readings\":301,")))
                    .contains("\"lost\":\"3 readings missing in 1 gap\"", "\"unreadable\":0");
        }
        assertThat(until("", has("\"state\":\"ended\""))).contains("\"readings\":301,");
    }

    @Test
    @Tag("slow")
    void nothingNewIsSaidOfALogThatHasEnded() {
        try (FakeRecording log = new FakeRecording(folder, "a.csv", COLUMNS)) {
            log.rows(5, "1,2,3");
        }
        long version = (long) number(until("", has("\"state\":\"ended\"")), "version");
        assertThat(ask(version, "").statusCode()).isEqualTo(204);
    }

    @Test
    void silenceAndFaultyTaxelsAreNamedInTheWordsOfTheTerminal() throws InterruptedException {
        try (FakeRecording log = new FakeRecording(folder, "a.csv", COLUMNS)) {
            log.rows(10, "101000,101000,0");
            for (int i = 0; i < 600; i++) {
                log.rows(1, "101000," + (i < 300 ? 101_000 + i : "") + ",0");
            }
            assertThat(until("", has("\"readings\":610,")))
                    .contains("\"warnings\":[\"p00 does not change any more: stuck?\",\"p01 gives no number\"]")
                    .contains("\"marks\":\"sn\"", "\"last\":[101000,null]");
            Thread.sleep(2_100);
            assertThat(until("", has("nothing came for"))).contains("\"rate\":0,", "\"state\":\"running\"");
        }
    }

    /** The demo's pads: eight taxels on the left finger, in Pa. */
    private void pads() throws IOException {
        String old = bench.revision();
        Files.copy(Path.of("..", "cli", "src", "main", "resources", "demo", "pads.yaml"), folder.resolve("pads.yaml"));
        for (int i = 0; i < 400 && bench.revision().equals(old); i++) {
            sleep(20);
        }
    }

    private static final String EIGHT = "p00,p01,p02,p03,p04,p05,p06,p07";

    @Test
    void aTaxelAtTheEndOfItsRangeIsNamedAndDrawnWhereItsPadLies() throws IOException {
        pads();
        try (FakeRecording log = new FakeRecording(folder, "a.csv", "seq,t," + EIGHT + ",temp,ambient,F")) {
            log.rows(50, "1e5,1e5,1e5,1e5,1e5,1e5,1e5,1e5,23,1e5,0");
            log.rows(5, "1e5,1e5,115000,1e5,1e5,1e5,1e5,1e5,23,1e5,0");
            String state = until("", has("\"readings\":55,"));
            assertThat(state)
                    .contains("\"p02 reached an end of the chip's range\"", "\"marks\":\"..r.....\"")
                    .contains("pressed is named in pads.yaml and not sent")
                    .contains("[\"p00\",\"left strip\"]")
                    // The phalanx is 75 mm long; eight chips 6 mm apart lie about its middle.
                    .contains(
                            "\"lines\":[{\"name\":\"left\",\"bodies\":[[0,75],[75,123]],\"cells\":[{\"i\":0,\"x\":16.5,");
        }
    }

    @Test
    void aCalibrationGivesNewtonsAndItsAbsenceIsNotMissed() throws IOException {
        pads();
        StringBuilder calibration =
                new StringBuilder("version: 1\nlog: none, by hand\nunit: Pa\npressed by: probe\ntaxels:\n");
        for (String taxel : EIGHT.split(",")) {
            calibration.append("  ").append(taxel).append(":\n    pad: left strip\n    zero: 99000\n");
            calibration.append("    sensitivity: 1000\n    quadratic: 0\n    creep: 0\n    play: 0\n");
            calibration.append("    noise: 10\n    sensitivity error: 0.01\n    fitted to: 5\n");
        }
        try (FakeRecording log = new FakeRecording(folder, "a.csv", "seq,t," + EIGHT + ",temp,ambient,F,pressed")) {
            log.rows(101, "1e5,1e5,1e5,1e5,1e5,1e5,1e5,1e5,23,1e5,0,0");
            assertThat(until("", has("\"readings\":101,"))).doesNotContain("newtons");
            Files.writeString(folder.resolve("calibration.yaml"), calibration);
            log.rows(5, "1e5,100500,102000,1e5,1e5,1e5,1e5,1e5,23,1e5,0,0");
            // Straight lines: the zero is the mean of the first second, so 500 Pa at 1000 Pa/N are half a newton.
            assertThat(until("", has("\"newtons\"")))
                    .contains("\"newtons\":[0,0.5,2,0,0,0,0,0]")
                    .contains("\"name\":\"left strip\",\"force\":2.5,")
                    .contains("\"touched\":true");
            Files.writeString(
                    folder.resolve("calibration.yaml"), calibration.toString().replace("p07", "p17"));
            assertThat(until("", has("no newtons"))).contains("calibration.yaml was made for other taxels");
        }
    }

    @Test
    void malformedLinesAreThoseOfTheSideFile() throws IOException {
        try (FakeRecording log = new FakeRecording(folder, "a.csv", COLUMNS)) {
            Files.writeString(
                    folder.resolve("logs/a.bad.csv"),
                    "line,arrival,bytes,reason,text\n9,0.1,3,2 fields; expected 5,\"1,2\"\n");
            log.rows(1, "1,2,3");
            assertThat(until("", has("\"readings\":1,")))
                    .contains("\"malformed\":1", "\"lastFault\":\"line 9: 2 fields; expected 5\"")
                    .contains("\"logs\":[{\"name\":\"a.csv\",");
        }
    }

    @Test
    void aLogThatIsCutOrReplacedIsReadFromItsBeginningAndADeletedOneIsGone() throws IOException {
        try (FakeRecording log = new FakeRecording(folder, "a.csv", COLUMNS)) {
            long head = log.size();
            log.rows(50, "101000,101001,0");
            until("", has("\"readings\":50,"));
            log.truncate(head);
            log.rows(7, "90000,90001,0");
            assertThat(until("", has("\"readings\":7,"))).contains("\"last\":[90000,90001]", "\"zero\":[90000,90001]");
            Files.delete(log.file);
            until("", has("\"state\":\"none\""));
        }
        try (FakeRecording log = new FakeRecording(folder, "a.csv", COLUMNS)) {
            log.rows(3, "5,6,0");
            assertThat(until("", has("\"readings\":3,"))).contains("\"last\":[5,6]");
        }
    }

    @Test
    void whatIsBrokenInTheLogIsCountedAndDescribedAsText() {
        try (FakeRecording log = new FakeRecording(folder, "a.csv", COLUMNS)) {
            log.rows(1, "1,2,3");
            log.write("0.02,1,<script>,1,1,1,1\n" + "9".repeat(70_000)
                    + "\n0.02,1,1,1,1e300,1,1\n0.02,1,1,1,\u0000,1,1\n");
            log.rows(1, "3,4,5");
            assertThat(until("", has("\"readings\":2,")))
                    .contains("\"unreadable\":4", "a control character at byte 12");
        }
    }

    @Test
    void noNameLeadsOutOfTheFolderOfLogs() throws IOException {
        Files.writeString(folder.resolve("outside.csv"), "# gripwright log 1\narrival,wall,p0\n0,0,1\n");
        Files.createDirectories(folder.resolve("logs"));
        Files.createSymbolicLink(folder.resolve("logs/link.csv"), folder.resolve("outside.csv"));
        for (String name : new String[] {
            "../outside.csv", folder.resolve("outside.csv").toString(), "link.csv", "..", "\u0000", "a/../link.csv"
        }) {
            HttpResponse<String> answer = ask(0, "&log=" + URLEncoder.encode(name, StandardCharsets.UTF_8));
            assertThat(answer.statusCode()).as(name).isEqualTo(404);
            assertThat(answer.body()).contains("there is no log");
        }
        assertThat(ask(0, "").body()).contains("\"state\":\"none\"");
    }

    @Test
    void aFolderOfLogsThatIsALinkIsNotFollowed(@TempDir Path other) throws IOException {
        Files.writeString(other.resolve("a.csv"), "# gripwright log 1\narrival,wall,p0\n0,0,1\n");
        Files.createSymbolicLink(folder.resolve("logs"), other);
        HttpResponse<String> answer = ask(0, "");
        assertThat(answer.statusCode()).isEqualTo(409);
        assertThat(answer.body())
                .contains("logs cannot be looked into: it is no plain folder, and links are not followed");
    }

    @Test
    void whatIsNoLogIsSaidToBeNone() throws IOException {
        Files.createDirectories(folder.resolve("logs"));
        Files.writeString(folder.resolve("logs/a.csv"), "t,p0\n1,2\n");
        assertThat(until("", has("\"state\":\"no log\""))).contains("is no head of a log");
    }

    @Test
    void theLogThatIsWrittenStaysInViewAndAnotherCanBeChosen() throws IOException {
        try (FakeRecording first = new FakeRecording(folder, "first.csv", COLUMNS)) {
            first.rows(5, "1,2,3");
            until("", has("\"log\":\"first.csv\""));
            try (FakeRecording second = new FakeRecording(folder, "second.csv", COLUMNS)) {
                second.rows(9, "4,5,6");
                assertThat(until("", has("\"name\":\"second.csv\""))).contains("\"log\":\"first.csv\"");
                assertThat(until("&log=second.csv", has("\"readings\":9,"))).contains("\"last\":[4,5]");
            }
        }
    }

    @Test
    void aSlowPageGetsTheNewestStateAndNoBacklog() {
        try (FakeRecording log = new FakeRecording(folder, "a.csv", COLUMNS)) {
            log.rows(10, "0,0,0");
            long after = (long) number(until("", has("\"readings\":10,")), "version");
            for (int i = 1; i <= 8; i++) {
                log.rows(1, i + ",0,0");
                sleep(250);
            }
            String next = ask(after, "").body();
            assertThat(next).contains("\"readings\":18,", "\"last\":[8,0]");
        }
    }

    @Test
    @Tag("slow")
    void nothingIsReadOnceNobodyLooks() {
        try (FakeRecording log = new FakeRecording(folder, "a.csv", COLUMNS)) {
            log.rows(1, "1,2,3");
            until("", has("\"readings\":1,"));
            assertThat(following()).isTrue();
            for (int i = 0; i < 100 && following(); i++) {
                sleep(100);
            }
            assertThat(following()).isFalse();
            log.rows(1, "1,2,3");
            assertThat(until("", has("\"readings\":2,"))).contains("\"state\":\"running\"");
        }
    }

    private static boolean following() {
        var threads = ManagementFactory.getThreadMXBean();
        return Arrays.stream(threads.getThreadInfo(threads.getAllThreadIds()))
                .filter(t -> t != null)
                .map(ThreadInfo::getThreadName)
                .anyMatch("gripwright-now"::equals);
    }

    private static void sleep(long milliseconds) {
        try {
            Thread.sleep(milliseconds);
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }
}
