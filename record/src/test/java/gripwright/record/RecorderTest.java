package gripwright.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import gripwright.files.Recording;
import gripwright.files.Recording.End;
import gripwright.signal.Layout;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** From lines to log, side file and counts. */
class RecorderTest {
    private static final String NAMES = "seq,t,p00,p01\n";

    @TempDir
    @SuppressWarnings("NullAway.Init")
    Path folder;

    private Path log() {
        return folder.resolve("logs/a.csv");
    }

    private List<String> logLines() throws IOException {
        return Files.readAllLines(log());
    }

    private String side() throws IOException {
        return Files.readString(folder.resolve("logs/a.bad.csv"));
    }

    /** Fields of the source in the log. */
    private List<String> readings() throws IOException {
        return logLines().stream()
                .filter(line -> !line.startsWith("#") && !line.startsWith("arrival"))
                .map(line -> line.split(",", 3)[2])
                .toList();
    }

    @Test
    void aLogHasItsHeadAndTheFieldsAsTheyCame() throws IOException {
        Recording r = Fake.record(log(), Fake.layout(), NAMES + "0,0.000,101325.50,1e5\n1,0.005, 101326 ,-0\r\n");
        assertThat(logLines())
                .startsWith(
                        "# gripwright log 1",
                        "# project: bench",
                        "# hand: three fingers",
                        "# pads: left strip",
                        "# source: -",
                        "# started: 2026-11-25T09:46:40.001Z",
                        "# clock: arrival in seconds since the start (monotonic), wall is UTC milliseconds",
                        "# units: arrival s, wall ms, t s, p00 Pa",
                        "arrival,wall,seq,t,p00,p01")
                .hasSize(11);
        assertThat(readings()).containsExactly("0,0.000,101325.50,1e5", "1,0.005, 101326 ,-0");
        assertThat(logLines().get(9)).matches("0\\.00[0-9]{4},17956000000[0-9]{2},0,.*");
        assertThat(r.counts().readings()).isEqualTo(2);
        assertThat(r.counts().safe()).isEqualTo(2);
        assertThat(r.counts().whole()).isTrue();
        assertThat(r.end()).isEqualTo(End.SOURCE_ENDED);
        assertThat(folder.resolve("logs/a.bad.csv")).doesNotExist();
    }

    @Test
    void columnsThatTheSourceDoesNotNameAreThoseOfTheProject() throws IOException {
        Fake.record(log(), Fake.layout(), "0,0,1,2\n1,0.1,3,4\n");
        assertThat(logLines()).contains("arrival,wall,seq,t,p00,p01");
        assertThat(readings()).containsExactly("0,0,1,2", "1,0.1,3,4");
    }

    @Test
    void columnsThatTheProjectDoesNotNameAreThoseOfTheSource() throws IOException {
        Recording r = Fake.record(log(), Layout.UNKNOWN, "t,state,p7\n0,ok,1\n1,\"a, b\",2\n");
        assertThat(readings()).containsExactly("0,ok,1", "1,\"a, b\",2");
        assertThat(r.taxels()).extracting(Recording.Taxel::column).containsExactly("p7");
        assertThat(r.taxels().get(0).greatest()).isEqualTo(2);
    }

    @Test
    void linesOfJsonAreReadingsToo() throws IOException {
        Recording r = Fake.record(
                log(),
                Layout.UNKNOWN,
                "{\"seq\": 7, \"t\": 0.10, \"p\": [1.50, null], \"note\": \"a, b\"}\n"
                        + "{\"p\": [3, NaN], \"t\": 0.20, \"seq\": 8, \"note\": \"c\"}\n");
        assertThat(logLines()).contains("arrival,wall,seq,t,p00,p01,note");
        assertThat(readings()).containsExactly("7,0.10,1.50,,\"a, b\"", "8,0.20,3,NaN,c");
        assertThat(r.taxels().get(1).values()).isZero();
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '~', textBlock = """
            1,2,3                                       | 3 fields; expected 4
            1,2,3,4,5                                   | 5 fields; expected 4
            1,2,x3,4                                    | p00 is 'x3'; expected a number
            1,2,1e999,4                                 | p00 is '1e999'; expected a number
            1,2,0x10,4                                  | p00 is '0x10'; expected a number
            1,2,inf,4                                   | p00 is 'inf'; expected a number
            1.5,2,3,4                                   | seq is '1.5'; expected a whole number
            ,2,3,4                                      | seq is ''; expected a whole number
            1,2,"3,4                                    | a quote that is not closed
            {"seq": 1, "t": 2, "p00": 3}                | no 'p01'
            {"seq": 1, "t": 2, "p00": 3, "p01": 4, "x": 5} | 'x' is no column of this log
            {"seq": 1, "t": 2, "p00": {}, "p01": 4}     | 'p00' is no number or text
            {"seq": 1, "t": 2, "p00": 3, "p00": 3, "p01": 4} | 'p00' stands there twice
            {"seq": 1, "t": 2,                          | no JSON:
            {"seq": 1, "t": 2, "p00": 3, "p01": "4\\u000a"} | an escaped control character
            {"seq": 1, "t": 2, "p00": 3, "p01": "\\ud800"} | an escaped half of a character
            a,b                                         | names of other columns than those of this log
            """)
    void aLineThatIsNoReadingIsKeptWithItsReason(String line, String reason) throws IOException {
        Recording r = Fake.record(log(), Fake.layout(), NAMES + "0,0,1,2\n" + line + "\n1,0,1,2\n");
        assertThat(readings()).containsExactly("0,0,1,2", "1,0,1,2");
        assertThat(r.counts().malformed()).isEqualTo(1);
        assertThat(r.counts().whole()).isFalse();
        assertThat(side())
                .startsWith("line,arrival,bytes,reason,text\n3,0.0")
                .contains("," + line.length() + ",")
                .contains(reason.replace("\"", "\"\""))
                .endsWith(",\"" + line.replace("\"", "\"\"").replace("\\", "\\\\") + "\"\n");
    }

    @Test
    void bytesThatAreNoTextAreKeptAsNumbers() throws IOException {
        byte[] bytes = (NAMES + "0,0,1,2\n1,0,\u00003,2\n1,0,€,2\n").getBytes(StandardCharsets.UTF_8);
        int euro = new String(bytes, StandardCharsets.ISO_8859_1).indexOf('\u00e2');
        bytes[euro + 1] = 'x'; // cuts the three bytes of the euro sign
        Recorder.run(Fake.plan(log(), Fake.layout()), Fake.source(null, bytes), Fake.clocks(), live -> true);
        assertThat(side())
                .contains("a control character (code 0) at byte 5,\"1,0,\\x003,2\"")
                .contains("not UTF-8 at byte 5,\"1,0,\\xe2x\\xac,2\"");
    }

    /** The log keeps what was sent: what is missing stays so, and what no chip can read is counted as saturated. */
    @Test
    void missingAndAbsurdValuesAreKeptAsTheyCame() throws IOException {
        Recording r = Fake.record(
                log(), Fake.layout(), NAMES + "0,0,101000,101000\n1,1,nan,101000\n2,2,,1e300\n3,3,101000,101000\n");
        assertThat(readings())
                .containsExactly("0,0,101000,101000", "1,1,nan,101000", "2,2,,1e300", "3,3,101000,101000");
        assertThat(r.counts().malformed()).isZero();
        assertThat(r.taxels().get(0).saturated()).isZero();
        assertThat(r.taxels().get(1).saturated()).isEqualTo(1);
    }

    @Test
    void aLineThatIsTooLongIsCutWithItsLengthSaid() throws IOException {
        Recording r = Fake.record(log(), Fake.layout(), NAMES + "9".repeat(200_000) + "\n0,0,1,2\n");
        assertThat(r.counts().malformed()).isEqualTo(1);
        assertThat(readings()).containsExactly("0,0,1,2");
        assertThat(side()).contains(",200000,longer than 65000 bytes; only so many are kept here,\"999");
        assertThat(side().length()).isBetween(65_000, 65_300);
    }

    @Test
    void commentsBlankLinesAndNamesAgainAreCounted() throws IOException {
        Recording r = Fake.record(log(), Fake.layout(), "# boot 3\n" + NAMES + "\n0,0,1,2\n" + NAMES + "1,0,1,2\n");
        assertThat(r.counts().comments()).isEqualTo(1);
        assertThat(r.counts().blank()).isEqualTo(1);
        assertThat(r.counts().heads()).isEqualTo(1);
        assertThat(r.counts().malformed()).isZero();
        assertThat(side()).contains("a comment of the source,\"# boot 3\"", "the names again");
    }

    @Test
    void aLastLineWithoutItsEndIsNotTakenForAReading() throws IOException {
        Recording r = Fake.record(log(), Fake.layout(), NAMES + "0,0,1,2\n1,0,1,23");
        assertThat(readings()).containsExactly("0,0,1,2");
        assertThat(r.counts().malformed()).isEqualTo(1);
        assertThat(side()).contains("the source ended within this line,\"1,0,1,23\"");
    }

    @Test
    void namesThatLackAColumnOfTheProjectEndTheRecording() {
        Recording r = Fake.record(log(), Fake.layout(), "seq,t,p00\n0,0,1\n");
        assertThat(r.end()).isEqualTo(End.SOURCE_FAILED);
        assertThat(r.endWords()).isEqualTo("the source names the columns seq, t, p00; pads.yaml wants p01 too");
        assertThat(r.log()).isEmpty();
        assertThat(log()).doesNotExist();
    }

    @Test
    void columnsThatNobodyNamesEndTheRecording() {
        Recording r = Fake.record(log(), Layout.UNKNOWN, "0,0,1\n");
        assertThat(r.endWords())
                .isEqualTo("the columns are not known: pads.yaml names none, and line 1 of the source, '0,0,1', is no"
                        + " line of names; send one first, or name the columns under `readings` in pads.yaml");
    }

    @Test
    void aLiveSourceMayBeginInTheMiddleOfALine() throws IOException {
        SourceAddress live = new SourceAddress.Serial("/dev/x", 9600);
        Recorder.run(
                Fake.plan(log(), Fake.layout(), live), Fake.source("p00,p01\n0,0,1,2\n"), Fake.clocks(), l -> true);
        assertThat(readings()).containsExactly("0,0,1,2");
        assertThat(side()).contains("1,", "the end of a line of names,\"p00,p01\"");
        Path other = folder.resolve("b.csv");
        Recorder.run(
                Fake.plan(other, Layout.UNKNOWN, live),
                Fake.source("5,6\n" + NAMES + "0,0,1,2\n"),
                Fake.clocks(),
                l -> true);
        assertThat(Files.readString(other)).contains("seq,t,p00,p01");
    }

    @Test
    void gapsRepeatsAndStampsThatGoBackAreCounted() {
        Recording r =
                Fake.record(log(), Fake.layout(), NAMES + "0,0.0,1,2\n3,0.3,1,2\n3,0.3,1,2\n4,0.2,1,2\n5,0.5,1,2\n");
        assertThat(r.counts().gaps()).isEqualTo(1);
        assertThat(r.counts().missing()).isEqualTo(2);
        assertThat(r.counts().repeats()).isEqualTo(1);
        assertThat(r.counts().stampsBack()).isEqualTo(1);
        assertThat(r.counts().stampsEqual()).isEqualTo(1);
        assertThat(r.strips().stream().mapToLong(Recording.Strip::missing).sum())
                .isEqualTo(2);
    }

    @Test
    void aClockThatStepsBackMovesTheWallColumnOnly() throws IOException {
        AtomicLong ticks = new AtomicLong();
        Clocks clocks = new Clocks(
                () -> ticks.incrementAndGet() * 1_000_000,
                () -> 1_795_600_000_000L + ticks.get() - (ticks.get() > 20 ? 3_600_000 : 0));
        byte[][] pieces = new byte[30][];
        for (int i = 0; i < pieces.length; i++) {
            pieces[i] = (i + "," + i + ",1,2\n").getBytes(StandardCharsets.UTF_8);
        }
        Recording r = Recorder.run(Fake.plan(log(), Fake.layout()), Fake.source(null, pieces), clocks, live -> true);
        assertThat(r.times().wallSteps()).isEqualTo(1);
        assertThat(r.counts().readings()).isEqualTo(30);
        List<String> rows =
                logLines().stream().filter(l -> Character.isDigit(l.charAt(0))).toList();
        assertThat(rows)
                .isSortedAccordingTo((a, b) ->
                        Double.compare(Double.parseDouble(a.split(",", 2)[0]), Double.parseDouble(b.split(",", 2)[0])));
        long first = Long.parseLong(rows.get(0).split(",", 3)[1]);
        long last = Long.parseLong(rows.get(29).split(",", 3)[1]);
        assertThat(last - first).isBetween(-3_600_000L, -3_599_000L);
    }

    @Test
    void aSourceThatFailsKeepsWhatCame() throws IOException {
        Recording r = Recorder.run(
                Fake.plan(log(), Fake.layout()),
                Fake.source(new IOException("gone"), "0,0,1,2\n1,1,1".getBytes(StandardCharsets.UTF_8)),
                Fake.clocks(),
                live -> true);
        assertThat(r.end()).isEqualTo(End.SOURCE_FAILED);
        assertThat(r.endWords()).isEqualTo("gone");
        assertThat(readings()).containsExactly("0,0,1,2");
        assertThat(side()).contains("the source ended within this line,\"1,1,1\"");
    }

    @Test
    void theWantedNumberOfReadingsIsMetExactly() throws IOException {
        Recorder.Plan plan = Fake.plan(log(), Fake.layout());
        Recording r = Recorder.run(
                new Recorder.Plan(
                        plan.log(), plan.logName(), plan.source(), "-", plan.layout(), plan.heading(), 2, 1e9),
                Fake.source("0,0,1,2\nx\n1,0,1,2\n2,0,1,2\n3,0,1,2\n"),
                Fake.clocks(),
                live -> true);
        assertThat(r.end()).isEqualTo(End.LINES_REACHED);
        assertThat(readings()).containsExactly("0,0,1,2", "1,0,1,2");
    }

    @Test
    void whatHasArrivedWhenItIsStoppedIsWritten() throws IOException {
        CountDownLatch closed = new CountDownLatch(1);
        Source endless = new Source() {
            private int next;

            @Override
            public int read(byte[] into) {
                if (next < 10) {
                    byte[] line = (next + "," + next++ + ",1,2\n").getBytes(StandardCharsets.UTF_8);
                    System.arraycopy(line, 0, into, 0, line.length);
                    return line.length;
                }
                try {
                    closed.await();
                } catch (InterruptedException e) {
                    Thread.currentThread().interrupt();
                }
                return -1;
            }

            @Override
            public void close() {
                closed.countDown();
            }
        };
        Recording r = Recorder.run(
                Fake.plan(log(), Fake.layout()),
                endless,
                Clocks.REAL,
                live -> live.soFar().counts().lines() < 10);
        assertThat(r.end()).isEqualTo(End.STOPPED);
        assertThat(r.counts().readings()).isEqualTo(10);
        assertThat(r.counts().safe()).isEqualTo(10);
        assertThat(readings()).hasSize(10);
    }

    @Test
    void aLogThatIsBeingWrittenIsNotGoneOnWith() throws IOException {
        try (AppendFile file = AppendFile.create(folder.resolve("x"))) {
            assertThat(file.linesWritten()).isZero();
            assertThatThrownBy(() -> AppendFile.goOn(folder.resolve("x"), 0))
                    .isInstanceOf(LogFailure.class)
                    .hasMessageContaining("is being written by another program");
        }
    }

    @Test
    void taxelsThatAreStuckOrSaturatedAreNamed() {
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < 200; i++) {
            text.append(i).append(',').append(i * 0.1).append(',');
            text.append(i < 20 ? 101_000 + i : 101_020).append(',').append(i == 150 ? 115_000 : 101_000 + i);
            text.append('\n');
        }
        byte[][] pieces = text.toString()
                .lines()
                .map(l -> (l + "\n").getBytes(StandardCharsets.UTF_8))
                .toArray(byte[][]::new);
        AtomicLong ticks = new AtomicLong();
        Clocks tenthsOfSeconds = new Clocks(() -> ticks.incrementAndGet() * 50_000_000, () -> ticks.get() * 50);
        Recording r =
                Recorder.run(Fake.plan(log(), Fake.layout()), Fake.source(null, pieces), tenthsOfSeconds, live -> true);
        assertThat(r.taxels().get(0).stuck()).isTrue();
        assertThat(r.taxels().get(0).saturated()).isZero();
        assertThat(r.taxels().get(1).stuck()).isFalse();
        assertThat(r.taxels().get(1).saturated()).isEqualTo(1);
    }
}
