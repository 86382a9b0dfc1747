package gripwright.record;

import static org.assertj.core.api.Assertions.assertThat;

import gripwright.files.Recording;
import gripwright.signal.Layout;
import java.io.IOException;
import java.io.OutputStream;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What can go wrong around a recording: each ends or goes on as docs/logs.md says, with nothing lost that was written. */
class ReliabilityTest {
    private static final String NAMES = "seq,t,p00,p01\n";

    @TempDir
    @SuppressWarnings("NullAway.Init")
    Path folder;

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    private static String reading(int i) {
        return i + "," + i * 0.005 + "," + (101_325 + i % 7) + ",101325\n";
    }

    private static List<String> rows(Path log) throws IOException {
        String text = Files.readString(log);
        return text.substring(0, text.lastIndexOf('\n') + 1)
                .lines()
                .filter(l -> Character.isDigit(l.charAt(0)))
                .map(l -> l.split(",", 3)[2])
                .toList();
    }

    @Test
    void killingItLosesAtMostTheLastSecondAndTheLogIsGoneOnWith() throws Exception {
        Path log = folder.resolve("a.csv");
        long sentASecondBefore = 0;
        try (Program program = new Program("", "-", log.toString())) {
            OutputStream to = program.input();
            to.write(bytes(NAMES));
            int sent = 0;
            long[] sentAt = new long[4_000];
            long end = 0;
            // 200 readings a second for as long as it takes to see some written, and 1.5 s more.
            while (end == 0 || System.nanoTime() < end) {
                sentAt[sent] = System.nanoTime();
                to.write(bytes(reading(sent++)));
                to.flush();
                Thread.sleep(5);
                if (end == 0 && program.written() > 0) {
                    end = System.nanoTime() + 1_500_000_000L;
                }
            }
            long before = System.nanoTime() - 1_000_000_000L;
            program.kill();
            for (int i = 0; i < sent; i++) {
                sentASecondBefore += sentAt[i] < before ? 1 : 0;
            }
            assertThat(rows(log)).hasSizeGreaterThanOrEqualTo((int) Math.max(sentASecondBefore, program.written()));
        }
        assertThat(sentASecondBefore).isGreaterThan(50);
        List<String> kept = rows(log);
        assertThat(kept.get(kept.size() - 1) + "\n").isEqualTo(reading(kept.size() - 1));

        Files.writeString(log, "7.5,17956", java.nio.file.StandardOpenOption.APPEND); // as if cut while it was written
        Recording more = Fake.record(log, Layout.UNKNOWN, NAMES + reading(9_000));
        assertThat(more.continued()).contains(new Recording.Continued(kept.size(), 9));
        assertThat(rows(log)).hasSize(kept.size() + 1).startsWith(kept.get(0));
        assertThat(Files.readString(folder.resolve("a.bad.csv")))
                .contains("0,")
                .contains(",9,the log ended within this line,\"7.5,17956\"");
        List<Double> arrivals = Files.readAllLines(log).stream()
                .filter(l -> Character.isDigit(l.charAt(0)))
                .map(l -> Double.valueOf(l.split(",", 2)[0]))
                .toList();
        assertThat(arrivals).isSorted();
    }

    @Test
    void anotherFileIsNeverOverwrittenOrGoneOnWith() throws Exception {
        Path log = folder.resolve("a.csv");
        Fake.record(log, Layout.UNKNOWN, NAMES + reading(0));
        String before = Files.readString(log);
        Recording r = Fake.record(log, Layout.UNKNOWN, "seq,t,p00\n1,2,3\n");
        assertThat(r.end()).isEqualTo(Recording.End.LOG_FAILED);
        assertThat(r.endWords())
                .contains("is there already and has other columns: arrival,wall,seq,t,p00,p01; this source has"
                        + " arrival,wall,seq,t,p00; choose another file");
        assertThat(log).hasContent(before);
        Path other = folder.resolve("notes.csv");
        Files.writeString(other, "mine\n");
        assertThat(Fake.record(other, Layout.UNKNOWN, NAMES + reading(0)).endWords())
                .contains("is there already and is no log of this program; choose another file");
        assertThat(other).hasContent("mine\n");
        assertThat(Fake.record(folder, Layout.UNKNOWN, NAMES + reading(0)).end())
                .isEqualTo(Recording.End.LOG_FAILED);
    }

    @Test
    void aLogSavedWithOtherLineEndsIsGoneOnWithWhole() throws Exception {
        Path log = folder.resolve("a.csv");
        Fake.record(log, Layout.UNKNOWN, NAMES + reading(0) + reading(1));
        Files.writeString(log, Files.readString(log).replace("\n", "\r\n"));
        Fake.record(log, Layout.UNKNOWN, NAMES + reading(2));
        assertThat(rows(log))
                .containsExactly(
                        reading(0).strip(), reading(1).strip(), reading(2).strip());
    }

    @Test
    void aFileSizeLimitEndsItWithWholeLines() throws Exception {
        Path log = folder.resolve("a.csv");
        try (Program program = new Program("ulimit -f 64; ", "-", log.toString())) { // of 1024 bytes
            StringBuilder text = new StringBuilder(NAMES);
            for (int i = 0; i < 20_000; i++) {
                text.append(reading(i));
            }
            try {
                program.input().write(bytes(text.toString()));
                program.input().flush();
            } catch (IOException e) {
                // it ended before it had read everything
            }
            List<String> said = program.ended();
            String end = said.get(said.size() - 1);
            assertThat(end).contains("end LOG_FAILED: cannot write " + log + ": File too large; free some room");
            List<String> rows = rows(log);
            assertThat(Files.size(log)).isBetween(60_000L, 65_536L);
            assertThat(Files.readString(log)).endsWith("\n");
            assertThat(said.get(said.size() - 2)).startsWith("readings " + rows.size() + " unsaved ");
            for (int i = 0; i < rows.size(); i++) {
                assertThat(rows.get(i) + "\n").isEqualTo(reading(i));
            }
        }
    }

    @Test
    void aFullDeviceEndsIt() throws Exception {
        Recording r = Fake.record(Path.of("/dev/full"), Layout.UNKNOWN, NAMES + reading(0));
        assertThat(r.end()).isEqualTo(Recording.End.LOG_FAILED);
        assertThat(r.endWords())
                .isEqualTo(
                        "cannot write /dev/full: No space left on device; free some room or choose" + " another place");
        assertThat(r.counts().readings()).isZero();
    }

    @Test
    void anUnpluggedPortEndsItAndKeepsWhatCame() throws Exception {
        Path port = folder.resolve("port");
        Path device = folder.resolve("device");
        Process socat = new ProcessBuilder("socat", "pty,raw,echo=0,link=" + port, "pty,raw,echo=0,link=" + device)
                .redirectErrorStream(true)
                .start();
        Path log = folder.resolve("a.csv");
        try {
            for (int i = 0; i < 100 && !(Files.exists(port) && Files.exists(device)); i++) {
                Thread.sleep(50);
            }
            try (Program program = new Program("", "serial:" + port + "?baud=115200", log.toString())) {
                program.await("written 0"); // the port is open
                try (OutputStream to = Files.newOutputStream(device)) {
                    to.write(bytes(NAMES));
                    for (int i = 0; i < 500; i++) {
                        to.write(bytes(reading(i)));
                    }
                    to.flush();
                    program.await("written 500");
                    socat.destroyForcibly().waitFor();
                }
                List<String> said = program.ended();
                assertThat(said.get(said.size() - 1))
                        .isEqualTo("end SOURCE_FAILED: the port " + port + " is gone (unplugged?)");
            }
        } finally {
            socat.destroyForcibly();
        }
        assertThat(rows(log)).hasSize(500);
        assertThat(rows(log).get(499) + "\n").isEqualTo(reading(499));
    }

    @Test
    void aPortThatIsNotThereIsNamedWithThoseThatAre() {
        org.assertj.core.api.Assertions.assertThatThrownBy(
                        () -> Sources.open(SourceAddress.of("serial:/dev/nothing?baud=9600"), folder))
                .hasMessageContaining("there is no serial port /dev/nothing; ");
    }

    @Test
    void aSourceThatStallsIsWaitedForAndItsSilenceCounted() throws Exception {
        try (ServerSocket server = new ServerSocket(0, 1, java.net.InetAddress.getLoopbackAddress())) {
            Thread device = new Thread(() -> {
                try (Socket socket = server.accept()) {
                    OutputStream to = socket.getOutputStream();
                    to.write(bytes(NAMES + reading(0)));
                    to.flush();
                    TimeUnit.MILLISECONDS.sleep(2_600);
                    to.write(bytes(reading(1)));
                } catch (IOException | InterruptedException e) {
                    throw new IllegalStateException(e);
                }
            });
            device.start();
            Path log = folder.resolve("a.csv");
            SourceAddress from = SourceAddress.of("tcp:127.0.0.1:" + server.getLocalPort());
            double[] silent = {0};
            Recording r = Recorder.run(
                    Fake.plan(log, Layout.UNKNOWN, from), Sources.open(from, folder), Clocks.REAL, live -> {
                        silent[0] = Math.max(silent[0], live.silentFor());
                        return true;
                    });
            assertThat(r.end()).isEqualTo(Recording.End.SOURCE_ENDED);
            assertThat(r.counts().readings()).isEqualTo(2);
            assertThat(r.times().silences()).isEqualTo(1);
            assertThat(r.times().longestSilence()).isBetween(2.5, 4.0);
            assertThat(silent[0]).isGreaterThan(2);
            device.join();
        }
    }

    @Test
    void timeIsUpEvenIfNothingComes() throws Exception {
        try (ServerSocket server = new ServerSocket(0, 1, java.net.InetAddress.getLoopbackAddress())) {
            SourceAddress from = SourceAddress.of("tcp:127.0.0.1:" + server.getLocalPort());
            Recorder.Plan p = Fake.plan(folder.resolve("a.csv"), Layout.UNKNOWN, from);
            Recording r = Recorder.run(
                    new Recorder.Plan(p.log(), "a.csv", from, "tcp", p.layout(), p.heading(), 10, 0.3),
                    Sources.open(from, folder),
                    Clocks.REAL,
                    live -> true);
            assertThat(r.end()).isEqualTo(Recording.End.TIME_UP);
            assertThat(r.log()).isEmpty();
        }
    }

    @Test
    void aSourceThatDoesNotAnswerIsNamed() throws Exception {
        int port;
        try (ServerSocket server = new ServerSocket(0, 1, java.net.InetAddress.getLoopbackAddress())) {
            port = server.getLocalPort();
        }
        org.assertj.core.api.Assertions.assertThatThrownBy(
                        () -> Sources.open(SourceAddress.of("tcp:127.0.0.1:" + port), folder))
                .hasMessageContaining("cannot connect to 127.0.0.1 port " + port)
                .hasMessageContaining("does it listen there?");
        org.assertj.core.api.Assertions.assertThatThrownBy(() -> Sources.open(SourceAddress.of("file:no.csv"), folder))
                .hasMessage("there is no file no.csv");
    }

    @Test
    void aReplayKeepsThePaceOfItsTimes() throws Exception {
        Path sent = folder.resolve("sent.csv");
        Files.writeString(sent, "t,p0\n0.0,1\n0.1,2\n0.5,3\n");
        Path log = folder.resolve("a.csv");
        SourceAddress own = new SourceAddress.Replay("sent.csv", true);
        Recording r =
                Recorder.run(Fake.plan(log, Layout.UNKNOWN, own), Sources.open(own, folder), Clocks.REAL, live -> true);
        assertThat(r.times().duration()).isBetween(0.499, 0.8);
        // A log replayed gives the same fields again, paced by its arrival.
        SourceAddress again = new SourceAddress.Replay("a.csv", true);
        Path copy = folder.resolve("b.csv");
        Recording second = Recorder.run(
                Fake.plan(copy, Layout.UNKNOWN, again), Sources.open(again, folder), Clocks.REAL, live -> true);
        assertThat(rows(copy)).isEqualTo(rows(log));
        assertThat(second.times().duration()).isBetween(0.499, 0.8);
        assertThat(second.counts().malformed()).isZero();
        SourceAddress fast = new SourceAddress.Replay("a.csv", false);
        Recording third = Recorder.run(
                Fake.plan(folder.resolve("c.csv"), Layout.UNKNOWN, fast),
                Sources.open(fast, folder),
                Clocks.REAL,
                live -> true);
        assertThat(third.times().duration()).isLessThan(0.3);
        assertThat(third.counts().readings()).isEqualTo(3);
    }

    @Test
    void aFileWithoutTimesHasNoPace() throws Exception {
        Files.writeString(folder.resolve("sent.csv"), "seq,p0\n0,1\n");
        SourceAddress own = new SourceAddress.Replay("sent.csv", true);
        Recording r = Recorder.run(
                Fake.plan(folder.resolve("a.csv"), Layout.UNKNOWN, own),
                Sources.open(own, folder),
                Clocks.REAL,
                live -> true);
        assertThat(r.endWords())
                .isEqualTo("no column holds the time, so the file has no pace of its own; say file:PATH?pace=max");
    }
}
