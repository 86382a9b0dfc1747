package gripwright.bench;

import static org.assertj.core.api.Assertions.assertThat;

import gripwright.closing.ClosingDetail;
import gripwright.closing.ClosingRunner;
import gripwright.closing.ClosingSummary;
import gripwright.closing.Conditions;
import gripwright.closing.Numerics;
import gripwright.study.CaptureMap;
import gripwright.study.Jobs;
import gripwright.study.RunnerFactory;
import gripwright.study.ShareMap;
import gripwright.study.Sureness;
import gripwright.study.ThreadJobs;
import gripwright.study.Uncertain;
import java.io.IOException;
import java.io.InputStream;
import java.net.Socket;
import java.net.URLEncoder;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.zip.GZIPInputStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The server over HTTP: what it answers, and what it refuses to whom. */
class BenchTest {
    private static final String LENGTH = "hand.yaml: fingers.left.phalanges[0].length";

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

    private static String form(String... namesAndValues) {
        StringBuilder out = new StringBuilder();
        for (int i = 0; i < namesAndValues.length; i += 2) {
            out.append(i == 0 ? "" : "&").append(namesAndValues[i]).append('=');
            out.append(URLEncoder.encode(namesAndValues[i + 1], StandardCharsets.UTF_8));
        }
        return out.toString();
    }

    private HttpResponse<String> change(String key, String value) {
        return bench.post("/api/value", form("key", key, "value", value, "revision", bench.revision()));
    }

    /** A request with headers that no honest client sends; the head of the answer. */
    private String raw(String request) throws IOException {
        try (Socket socket = new Socket("127.0.0.1", bench.port())) {
            socket.setSoTimeout(15_000);
            socket.getOutputStream().write(request.getBytes(StandardCharsets.UTF_8));
            socket.getOutputStream().flush();
            byte[] answer = socket.getInputStream().readNBytes(12);
            return new String(answer, StandardCharsets.UTF_8);
        }
    }

    // ---- attacks

    @Test
    void foreignHostNameIsRefused() throws IOException {
        // DNS rebinding: a name of the attacker's that points to this machine.
        assertThat(raw("GET /api/hello HTTP/1.1\r\nHost: evil.example:" + bench.port() + "\r\n\r\n"))
                .contains(" 421");
        assertThat(raw("GET /api/hello HTTP/1.1\r\nHost: localhost:1\r\n\r\n")).contains(" 421");
        assertThat(raw("GET /api/hello HTTP/1.0\r\n\r\n")).contains(" 421");
        assertThat(raw("GET /api/hello HTTP/1.1\r\nHost: localhost:" + bench.port() + "\r\n\r\n"))
                .contains(" 200");
    }

    @Test
    void foreignOriginIsRefusedEvenWithTheToken() {
        String token = TestBench.field(bench.get("/api/hello").body(), "token");
        for (String origin : List.of("https://evil.example", "null", "http://127.0.0.1:1")) {
            HttpResponse<String> answer = bench.send(bench.request("/api/stop")
                    .header("Origin", origin)
                    .header("X-Gripwright-Token", token)
                    .POST(HttpRequest.BodyPublishers.noBody()));
            assertThat(answer.statusCode()).as(origin).isEqualTo(403);
        }
        assertThat(bench.send(bench.request("/api/project").header("Sec-Fetch-Site", "cross-site"))
                        .statusCode())
                .isEqualTo(403);
    }

    @Test
    void changeWithoutTheTokenIsRefusedAndNothingIsWritten() {
        String before = bench.text("hand.yaml");
        String body = form("key", LENGTH, "value", "80 mm", "revision", bench.revision());
        for (String path : List.of("/api/value", "/api/undo", "/api/map", "/api/trials", "/api/stop")) {
            assertThat(bench.send(bench.request(path).POST(HttpRequest.BodyPublishers.ofString(body)))
                            .statusCode())
                    .isEqualTo(403);
            assertThat(bench.send(bench.request(path)
                                    .header("X-Gripwright-Token", "0".repeat(48))
                                    .POST(HttpRequest.BodyPublishers.ofString(body)))
                            .statusCode())
                    .isEqualTo(403);
        }
        assertThat(bench.text("hand.yaml")).isEqualTo(before);
    }

    @Test
    void tokenIsAnotherForEveryServer(@TempDir Path other) {
        try (TestBench second = new TestBench(other, 0)) {
            assertThat(TestBench.field(second.get("/api/hello").body(), "token"))
                    .hasSize(48)
                    .isNotEqualTo(TestBench.field(bench.get("/api/hello").body(), "token"));
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "/../hand.yaml",
                "/js/../../../hand.yaml",
                "/%2e%2e/hand.yaml",
                "/js/%2e%2e%2f%2e%2e%2fhand.yaml",
                "/hand.yaml",
                "/etc/passwd",
                "//etc/passwd",
                "/js/..%5c..%5chand.yaml",
                "/Bench.class",
                "/js/",
                "/api/../hand.yaml"
            })
    void nothingOutsideThePageIsServed(String path) throws IOException {
        String head = "GET " + path + " HTTP/1.1\r\nHost: 127.0.0.1:" + bench.port() + "\r\n\r\n";
        assertThat(raw(head)).matches("HTTP/1.1 4\\d\\d");
    }

    @Test
    void noKeyLeadsOutOfTheProject() throws IOException {
        Path outside = folder.resolveSibling("outside.yaml");
        Files.writeString(outside, "length: 75 mm\n");
        for (String key :
                List.of("../outside.yaml: length", outside + ": length", "need.yaml: ../x", "", "hand.yaml")) {
            assertThat(change(key, "80 mm").statusCode()).as(key).isEqualTo(404);
        }
        assertThat(Files.readString(outside)).isEqualTo("length: 75 mm\n");
        Files.delete(outside);
    }

    @Test
    void linkOutOfTheFolderIsNotWrittenThrough() throws IOException {
        Path outside = Files.createTempFile("outside", ".yaml");
        Files.writeString(outside, bench.text("hand.yaml"));
        Files.delete(folder.resolve("hand.yaml"));
        Files.createSymbolicLink(folder.resolve("hand.yaml"), outside);
        String before = Files.readString(outside);
        assertThat(change(LENGTH, "80 mm").statusCode()).isNotEqualTo(200);
        assertThat(Files.readString(outside)).isEqualTo(before);
        Files.delete(outside);
    }

    @Test
    void hugeRequestsAreRefused() {
        assertThat(bench.post("/api/value", "key=" + "x".repeat(200_000)).statusCode())
                .isEqualTo(413);
        assertThat(bench.get("/api/preview?key=" + "x".repeat(5_000)).statusCode())
                .isEqualTo(414);
        assertThat(bench.post("/api/map", form("object", "mug", "grip", "wrap", "cells", "100001"))
                        .statusCode())
                .isEqualTo(400);
    }

    @Test
    @Tag("slow")
    void dawdlingRequestIsCutOff() throws IOException {
        try (Socket socket = new Socket("127.0.0.1", bench.port())) {
            socket.setSoTimeout(20_000);
            socket.getOutputStream().write("GET /api/hello HTTP/1.1\r\nHost: 12".getBytes(StandardCharsets.UTF_8));
            socket.getOutputStream().flush();
            long start = System.nanoTime();
            assertThat(socket.getInputStream().read()).isEqualTo(-1);
            assertThat((System.nanoTime() - start) / 1e9).isBetween(1.0, Bench.REQUEST_SECONDS + 8.0);
        }
    }

    @Test
    void injectedYamlStaysOneValue() {
        String before = bench.text("need.yaml");
        for (String value : List.of("Bench\nobjects: {}", "Bench\u0000", "")) {
            assertThat(change("need.yaml: name", value).statusCode()).isEqualTo(400);
        }
        assertThat(bench.text("need.yaml")).isEqualTo(before);
        assertThat(change("need.yaml: name", "a # b: {c} \"d\" <script>").statusCode())
                .isEqualTo(200);
        assertThat(bench.text("need.yaml")).contains("name: \"a # b: {c} \\\"d\\\" <script>\"");
        assertThat(TestBench.field(bench.get("/api/project").body(), "need"))
                .isEqualTo("a # b: {c} \\\"d\\\" <script>");
    }

    @Test
    void policyAllowsNoInlineScriptAndThePageHasNone() {
        HttpResponse<String> page = bench.get("/");
        String policy = page.headers().firstValue("Content-Security-Policy").orElseThrow();
        assertThat(policy).contains("default-src 'none'", "script-src 'self';").doesNotContain("unsafe");
        assertThat(page.body()).doesNotContainPattern("<script>|<script type=\"module\">|\\son\\w+=|style=\"");
        assertThat(page.headers().firstValue("Access-Control-Allow-Origin")).isEmpty();
    }

    // ---- what it is for

    @Test
    void changeTouchesItsValueOnlyAndCanBeUndoneAndRedone() {
        String before = bench.text("hand.yaml");
        assertThat(change(LENGTH, "80 mm").statusCode()).isEqualTo(200);
        String after = bench.text("hand.yaml");
        assertThat(after).isEqualTo(before.replaceFirst("length: 75 mm, width: 20 mm", "length: 80 mm, width: 20 mm"));
        assertThat(bench.post("/api/undo", "").statusCode()).isEqualTo(200);
        assertThat(bench.text("hand.yaml")).isEqualTo(before);
        assertThat(bench.post("/api/redo", "").statusCode()).isEqualTo(200);
        assertThat(bench.text("hand.yaml")).isEqualTo(after);
        assertThat(bench.post("/api/redo", "").statusCode()).isEqualTo(409);
    }

    @Test
    void lineEndsAndByteOrderMarkSurvive() {
        String before = "\ufeff" + bench.text("hand.yaml").replace("\n", "\r\n");
        bench.write("hand.yaml", before);
        bench.get("/api/project");
        String revision = waitForChange("");
        assertThat(bench.post("/api/value", form("key", LENGTH, "value", "80 mm", "revision", revision))
                        .statusCode())
                .isEqualTo(200);
        assertThat(bench.text("hand.yaml"))
                .isEqualTo(before.replaceFirst("length: 75 mm, width: 20 mm", "length: 80 mm, width: 20 mm"));
    }

    /** The revision once the server has seen the files as they are now. */
    private String waitForChange(String old) {
        String revision = bench.revision();
        for (int i = 0; i < 100; i++) {
            sleep(40);
            revision = bench.revision();
            if (i > 20 && !revision.equals(old)) {
                return revision;
            }
        }
        return revision;
    }

    private static void sleep(long milliseconds) {
        try {
            Thread.sleep(milliseconds);
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }

    @Test
    void faultyValueIsRefusedWithTheReadersWords() {
        String before = bench.text("hand.yaml");
        HttpResponse<String> answer = change(LENGTH, "80 kg");
        assertThat(answer.statusCode()).isEqualTo(422);
        assertThat(answer.body()).contains("hand.yaml:32:").contains("80 kg").contains("expected");
        assertThat(bench.text("hand.yaml")).isEqualTo(before);
    }

    @Test
    void previewShowsTheLineAndWritesNothing() {
        String before = bench.text("hand.yaml");
        String answer = bench.get("/api/preview?" + form("key", LENGTH, "value", "81 mm"))
                .body();
        assertThat(answer).contains("\"line\":32").contains("length: 81 mm").contains("\"faults\":\"\"");
        assertThat(bench.text("hand.yaml")).isEqualTo(before);
    }

    @Test
    void fileChangedByAnotherProgramIsNotWrittenOver() {
        String revision = bench.revision();
        String theirs =
                bench.text("hand.yaml").replaceFirst("length: 75 mm, width: 20 mm", "length: 77 mm, width: 20 mm");
        bench.write("hand.yaml", theirs);
        HttpResponse<String> answer =
                bench.post("/api/value", form("key", LENGTH, "value", "80 mm", "revision", revision));
        assertThat(answer.statusCode()).isEqualTo(409);
        assertThat(answer.body()).contains("\"now\":\"77 mm\"").contains("\"yours\":\"80 mm\"");
        assertThat(bench.text("hand.yaml")).isEqualTo(theirs);
    }

    @Test
    void undoDoesNotTakeBackWhatAnotherProgramWroteMeanwhile() {
        assertThat(change(LENGTH, "80 mm").statusCode()).isEqualTo(200);
        String theirs = bench.text("hand.yaml") + "# a note\n";
        bench.write("hand.yaml", theirs);
        assertThat(bench.post("/api/undo", "").statusCode()).isEqualTo(409);
        assertThat(bench.text("hand.yaml")).isEqualTo(theirs);
    }

    @Test
    void faultsOfTheFilesAreServedInTheReadersWords() {
        String old = bench.revision();
        bench.write("need.yaml", bench.text("need.yaml").replace("mass: 330 g", "mass: 330 mm"));
        waitForChange(old);
        assertThat(TestBench.field(bench.get("/api/project").body(), "faults"))
                .contains("need.yaml:", "330 mm", "expected");
        assertThat(bench.get("/api/close?object=mug&grip=wrap").statusCode()).isEqualTo(409);
    }

    @Test
    void closingIsSmallAndTheSameAsWithoutTheServer() throws Exception {
        String query = "/api/close?" + form("object", "mug", "grip", "wrap", "x", "5", "y", "-3");
        HttpResponse<byte[]> packed = bench.client.send(
                bench.request(query).header("Accept-Encoding", "gzip").build(),
                HttpResponse.BodyHandlers.ofByteArray());
        assertThat(packed.body()).hasSizeLessThan(300_000);
        String json;
        try (InputStream in = new GZIPInputStream(new java.io.ByteArrayInputStream(packed.body()))) {
            json = new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
        var project = gripwright.files.ProjectReader.read(folder);
        var run = TestBench.SIMULATION
                .of(project, gripwright.closing.Numerics.DEFAULT)
                .create(project.need().object("mug"), project.hand().grip("wrap"))
                .run(gripwright.closing.Conditions.at(0.005, -0.003, 0));
        assertThat(TestBench.field(json, "words")).isEqualTo(run.outcome().words());
        assertThat(json)
                .contains("\"travel\":" + Wire.number(1e3 * run.travel(), 2).json());
    }

    @Test
    void wrongPlacementsAndNamesAreExplained() {
        assertThat(bench.get("/api/close?object=mug&grip=wrap&x=1e9").statusCode())
                .isEqualTo(400);
        assertThat(bench.get("/api/close?object=mug&grip=wrap&x=NaN").statusCode())
                .isEqualTo(400);
        HttpResponse<String> unknown = bench.get("/api/close?object=cup&grip=wrap");
        assertThat(unknown.statusCode()).isEqualTo(422);
        assertThat(unknown.body()).contains("mug");
        assertThat(bench.get("/api/map.svg").statusCode()).isEqualTo(404);
    }

    @Test
    void mapComesAndPicturesAreServed() {
        assertThat(bench.post("/api/map", form("object", "mug", "grip", "wrap", "cells", "5", "span", "40"))
                        .statusCode())
                .isEqualTo(200);
        HttpResponse<String> json = bench.get("/api/map.json");
        for (int i = 0; i < 600 && json.statusCode() == 404; i++) {
            sleep(50);
            json = bench.get("/api/map.json");
        }
        assertThat(bench.get("/api/map.svg").body()).startsWith("<svg").contains("out of 25");
        assertThat(bench.get("/api/map.json").body()).contains("\"kind\": \"gripwright map 1\"");
        assertThat(bench.get("/api/hand.svg").body()).contains("data-key=\"" + LENGTH.replace("left", "left"));
        assertThat(bench.get("/api/objects.svg").body()).startsWith("<svg");
        assertThat(bench.get("/js/main.js").statusCode()).isEqualTo(200);
        assertThat(bench.get("/lib/three.module.min.js").statusCode()).isEqualTo(200);
        assertThat(bench.get("/style.css").body()).contains("--paper:#FAFBF7");
    }

    /** Notes every run that was finished. */
    private static Closings counted(List<String> finished, CountDownLatch enough) {
        return (project, numerics) -> {
            RunnerFactory real = TestBench.SIMULATION.of(project, numerics);
            return (object, grip) -> {
                ClosingRunner runner = real.create(object, grip);
                return new ClosingRunner() {
                    @Override
                    public ClosingSummary run(Conditions c) {
                        ClosingSummary made = runner.run(c);
                        finished.add(numerics + " " + c);
                        enough.countDown();
                        return made;
                    }

                    @Override
                    public ClosingDetail detail(Conditions c) {
                        return runner.detail(c);
                    }
                };
            };
        };
    }

    @Test
    @Tag("slow")
    void killedServerLosesTheRunsUnderWayOnlyAndTheNextOneGoesOn() throws Exception {
        List<String> finished = new CopyOnWriteArrayList<>();
        CountDownLatch some = new CountDownLatch(30);
        bench.close();
        String map = form("object", "mug", "grip", "wrap", "cells", "11", "span", "60");
        Path kept = folder.resolve("results/kept-runs.txt");
        try (TestBench first = new TestBench(folder, 0, counted(finished, some))) {
            assertThat(first.post("/api/map", map).statusCode()).isEqualTo(200);
            assertThat(some.await(60, TimeUnit.SECONDS)).isTrue();
            // What is on the disk while the server runs is all that a kill would leave.
            int done = finished.size();
            assertThat(Files.readAllLines(kept)).hasSizeGreaterThanOrEqualTo(1 + done - 2);
        }
        int before = finished.size();
        Files.writeString(kept, Files.readString(kept) + "cut off in the mid");
        try (TestBench second = new TestBench(folder, 0, counted(finished, new CountDownLatch(1)))) {
            assertThat(second.post("/api/map", map).statusCode()).isEqualTo(200);
            HttpResponse<String> result = second.get("/api/map.json");
            for (int i = 0; i < 600 && result.statusCode() == 404; i++) {
                sleep(50);
                result = second.get("/api/map.json");
            }
            assertThat(result.body()).contains("\"kind\": \"gripwright map 1\"");
        }
        assertThat(finished.size()).isGreaterThan(before);
        assertThat(finished.size() - Set.copyOf(finished).size())
                .as("runs made twice")
                .isLessThanOrEqualTo(2);
    }

    @Test
    void mapIsThatOfTheCommandLine() {
        bench.post("/api/map", form("object", "mug", "grip", "wrap", "cells", "5", "span", "60"));
        String state = "";
        for (int i = 0; i < 600 && !state.contains("\"state\":\"done\""); i++) {
            sleep(50);
            state = bench.bench.greeting();
        }
        var project = gripwright.files.ProjectReader.read(folder);
        Numerics usual = Numerics.DEFAULT;
        var same = new ShareMap(new CaptureMap(0.060, 5, project.need().wantedSuccess()), Uncertain.seeded(1))
                .run(
                        project.need().object("mug"),
                        project.hand().grip("wrap"),
                        new ShareMap.Runners(
                                TestBench.SIMULATION.of(project, usual),
                                TestBench.SIMULATION.of(project, usual.withStepScale(0.5)),
                                TestBench.SIMULATION.of(project, usual.withViscosityScale(0.5))),
                        new ThreadJobs(2),
                        Jobs.Progress.NONE);
        assertThat(state)
                .contains("\"areaCm2\":" + Wire.number(1e4 * same.heldArea(), 1).json() + ",")
                .contains("\"captureMm\":"
                        + Wire.number(1e3 * same.captureRadius(), 2).json() + ",");
        assertThat(bench.get("/api/map.json").body()).contains("\"basis\": \"ensemble\"");
    }

    @Test
    void runsAreNotKeptThroughALink() throws IOException {
        Path outside = Files.createTempDirectory("outside");
        Files.createSymbolicLink(folder.resolve("results"), outside);
        bench.post("/api/map", form("object", "mug", "grip", "wrap", "cells", "5", "span", "40"));
        String state = "";
        for (int i = 0; i < 600 && !state.contains("\"state\":\"done\""); i++) {
            sleep(50);
            state = bench.bench.greeting();
        }
        assertThat(state).contains("cannot be kept");
        try (var files = Files.list(outside)) {
            assertThat(files).isEmpty();
        }
        Files.delete(outside);
    }

    @Test
    void sureAnswerIsThatOfTheCommandLine() {
        String answer = bench.get("/api/sure?" + form("object", "mug", "grip", "wrap", "x", "5"))
                .body();
        var project = gripwright.files.ProjectReader.read(folder);
        Conditions place = Conditions.at(0.005, 0, 0);
        Sureness same = Sureness.of(
                TestBench.SIMULATION
                        .of(project, Numerics.DEFAULT)
                        .create(project.need().object("mug"), project.hand().grip("wrap")),
                place,
                Sureness.subject("mug", "wrap", place),
                Uncertain.seeded(1));
        assertThat(answer)
                .startsWith("{\"held\":" + same.held().successes() + ",\"decided\":"
                        + same.held().trials() + ",")
                .contains("\"clear\":" + same.clear());
    }

    @Test
    void padsOfTheProjectAreAnsweredAndTheirAbsenceIsExplained() throws IOException {
        HttpResponse<String> none = bench.get("/api/pads");
        assertThat(none.statusCode()).isEqualTo(404);
        assertThat(none.body()).contains("no pads.yaml");
        Path demo = Path.of("..", "cli", "src", "main", "resources", "demo", "pads.yaml");
        String old = bench.revision();
        Files.copy(demo, folder.resolve("pads.yaml"));
        waitForChange(old);
        String answer = bench.get("/api/pads").body();
        var setup = gripwright.files.ProjectReader.readMarked(folder).pads().orElseThrow();
        var first = gripwright.pad.PadAnswer.of(setup.pads().get(0), setup);
        assertThat(answer)
                .contains("\"name\":\"" + setup.pads().get(0).name() + "\"")
                .contains("\"overChip\":" + Wire.number(first.limitBest(), 4).json());
        assertThat(bench.get("/api/pads.svg?" + form("pad", setup.pads().get(0).name()))
                        .body())
                .startsWith("<svg");
        assertThat(bench.get("/api/pads.svg?pad=none").statusCode()).isEqualTo(404);
    }
}
