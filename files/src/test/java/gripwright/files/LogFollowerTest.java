package gripwright.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import gripwright.files.GrowingFile.Found;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A log while it grows, and what may happen to it meanwhile. */
class LogFollowerTest {
    private static final String HEAD =
            "# gripwright log 1\n# started: now\n# units: arrival s, wall ms, p0 Pa\narrival,wall,seq,p0,note\n";
    private static final long MUCH = 1 << 20;

    @TempDir
    Path folder;

    private final List<String> got = new ArrayList<>();

    private final LogFollower.Taker taker = new LogFollower.Taker() {
        @Override
        public int[] head(Map<String, String> head, List<String> columns, Map<String, String> units) {
            got.add("head " + head.get("started") + " " + columns + " " + units.get("p0"));
            return new int[] {columns.indexOf("p0"), columns.indexOf("seq")};
        }

        @Override
        public void row(double arrival, double wall, double[] values) {
            got.add(arrival + " " + wall + " " + Arrays.toString(values));
        }
    };

    private Path log() {
        return folder.resolve("a.csv");
    }

    private void append(String text) throws IOException {
        append(text.getBytes(StandardCharsets.UTF_8));
    }

    private void append(byte[] bytes) throws IOException {
        Files.write(log(), bytes, StandardOpenOption.CREATE, StandardOpenOption.APPEND);
    }

    private LogFollower open() throws IOException {
        return new LogFollower(log(), taker);
    }

    @Test
    void rowsComeAsTheyAreWrittenAndTheUnfinishedLastOneWaits() throws IOException {
        append(HEAD + "0.1,1000,7,101.5,ok\n0.2,10");
        try (LogFollower log = open()) {
            assertThat(log.look(MUCH)).isEqualTo(Found.MORE);
            assertThat(got).containsExactly("head now [seq, p0, note] Pa", "0.1 1000.0 [101.5, 7.0]");
            assertThat(log.look(MUCH)).isEqualTo(Found.NOTHING);
            append("05,8,nan,\"a, \"\"b\"\"\"\n");
            assertThat(log.look(MUCH)).isEqualTo(Found.MORE);
            assertThat(got).endsWith("0.2 1005.0 [NaN, 8.0]");
            assertThat(log.unreadable()).isZero();
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "0.3,1,2,3",
                "0.3,1,2,3,a,b",
                "x,1,2,3,a",
                ",1,2,3,a",
                "-1,1,2,3,a",
                "1e300,1,2,3,a",
                "0.3,1,2,0x1p3,a",
                "0.3,1,2,1e300,a",
                "0.3,1,2,Infinity,a",
                "0.3,1,2,\"3,a",
                "0.3,1,2,3,\u0007"
            })
    void whatIsNoRowIsCountedWithItsLineAndNotBelieved(String line) throws IOException {
        append(HEAD + line + "\n0.4,1,2,3,a\n");
        try (LogFollower log = open()) {
            log.look(MUCH);
            assertThat(got).hasSize(2).endsWith("0.4 1.0 [3.0, 2.0]");
            assertThat(log.unreadable()).isEqualTo(1);
            assertThat(log.lastUnreadable()).startsWith("line 5: ");
        }
    }

    @Test
    void whatIsNotUtf8IsCounted() throws IOException {
        append(HEAD);
        append(new byte[] {'0', ',', '1', ',', '2', ',', '3', ',', (byte) 0xff, '\n'});
        append("0.4,1,2,3,\u00e4\n");
        try (LogFollower log = open()) {
            log.look(MUCH);
            assertThat(log.lastUnreadable()).isEqualTo("line 5: not valid UTF-8");
            assertThat(got).hasSize(2);
        }
    }

    @Test
    void aLineWithoutEndIsNeitherKeptNorBelieved() throws IOException {
        append(HEAD);
        byte[] block = new byte[1 << 20];
        Arrays.fill(block, (byte) '1');
        try (LogFollower log = open()) {
            for (int i = 0; i < 24; i++) {
                append(block);
                assertThat(log.look(MUCH)).isEqualTo(Found.MORE);
            }
            append("\n0.4,1,2,3,a\n");
            while (log.look(MUCH) == Found.MORE) {
                continue;
            }
            assertThat(log.lastUnreadable()).isEqualTo("line 5: longer than 65536 bytes");
            assertThat(got).endsWith("0.4 1.0 [3.0, 2.0]");
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "seq,t,p0\n",
                "# gripwright log 1\nseq,t,p0\n",
                "# gripwright log 1\narrival,wall,p0,p0\n",
                "# gripwright log 1\narrival,wall\n",
                "<html>\n"
            })
    void whatIsNoLogIsRefusedWithAReason(String text) throws IOException {
        append(text);
        try (LogFollower log = open()) {
            log.look(MUCH);
            assertThat(log.refusal()).contains("is no head of a log");
            assertThat(got).isEmpty();
            append("0,1,2\n");
            assertThat(log.look(MUCH)).isEqualTo(Found.NOTHING);
        }
    }

    @Test
    void tooManyColumnsAreRefused() throws IOException {
        StringBuilder names = new StringBuilder("# gripwright log 1\narrival,wall");
        for (int i = 0; i < 2_100; i++) {
            names.append(",p").append(i);
        }
        append(names.append('\n').toString());
        try (LogFollower log = open()) {
            log.look(MUCH);
            assertThat(log.refusal()).contains("at most 2000");
        }
    }

    @Test
    void aLogThatIsCutReplacedOrDeletedIsNotReadOn() throws IOException {
        append(HEAD + "0.1,1,2,3,a\n0.2,1,2,3,a\n");
        try (LogFollower log = open()) {
            log.look(MUCH);
            try (FileChannel file = FileChannel.open(log(), StandardOpenOption.WRITE)) {
                file.truncate(HEAD.length());
            }
            assertThat(log.look(MUCH)).isEqualTo(Found.ANOTHER);
        }
        try (LogFollower log = open()) {
            log.look(MUCH);
            // The same place, as long and longer: only its content shows it.
            Files.writeString(log(), HEAD.replace("now", "new"), StandardOpenOption.TRUNCATE_EXISTING);
            append("0.1,1,2,9,a\n0.2,1,2,9,a\n");
            assertThat(log.look(MUCH)).isEqualTo(Found.ANOTHER);
        }
        try (LogFollower log = open()) {
            log.look(MUCH);
            Path other = folder.resolve("b");
            Files.copy(log(), other);
            Files.move(other, log(), StandardCopyOption.REPLACE_EXISTING);
            assertThat(log.look(MUCH)).isEqualTo(Found.ANOTHER);
        }
        try (LogFollower log = open()) {
            log.look(MUCH);
            Files.delete(log());
            assertThat(log.look(MUCH)).isEqualTo(Found.GONE);
        }
    }

    @Test
    void theCutEndOfALineIsForgottenWhenARecordingGoesOnBehindIt() throws IOException {
        append(HEAD + "0.1,1,2,3,a\n0.2,1,2,3");
        try (LogFollower log = open()) {
            log.look(MUCH);
            try (FileChannel file = FileChannel.open(log(), StandardOpenOption.WRITE)) {
                file.truncate(HEAD.length() + "0.1,1,2,3,a\n".length());
            }
            assertThat(log.look(MUCH)).isNotEqualTo(Found.ANOTHER);
            append("0.9,1,2,4,a\n");
            log.look(MUCH);
            assertThat(got).hasSize(3).endsWith("0.9 1.0 [4.0, 2.0]");
            assertThat(log.unreadable()).isZero();
        }
    }

    @Test
    void ofALogThatIsFarAheadTheEndIsReadFromAWholeLineOn() throws IOException {
        append(HEAD);
        try (LogFollower log = open()) {
            log.look(MUCH);
            for (int i = 0; i < 1000; i++) {
                append("0." + i + ",1," + i + ",3,a\n");
            }
            assertThat(log.file().behind()).isGreaterThan(10_000);
            log.skip(100);
            log.look(MUCH);
            assertThat(got).hasSizeBetween(3, 10).endsWith("0.999 1.0 [3.0, 999.0]");
            assertThat(log.unreadable()).isZero();
        }
    }

    @Test
    void linksFoldersAndPipesAreNotOpened() throws IOException {
        append(HEAD);
        Path link = folder.resolve("link.csv");
        Files.createSymbolicLink(link, log());
        assertThatThrownBy(() -> new LogFollower(link, taker)).isInstanceOf(IOException.class);
        assertThatThrownBy(() -> new LogFollower(folder, taker)).hasMessageContaining("no plain file");
        try (LogFollower log = open()) {
            log.look(MUCH);
            Files.move(log(), folder.resolve("b"));
            Files.createSymbolicLink(log(), folder.resolve("b"));
            assertThat(log.look(MUCH)).isEqualTo(Found.ANOTHER);
        }
    }

    @Test
    void whoWritesHoldsIt() throws IOException {
        append(HEAD);
        try (GrowingFile file = GrowingFile.open(log(), 100);
                FileChannel writing = FileChannel.open(log(), StandardOpenOption.WRITE)) {
            assertThat(file.held(true)).isFalse();
            try (var lock = writing.lock()) {
                assertThat(lock.isValid()).isTrue();
                assertThat(file.held(false)).isTrue();
            }
            assertThat(file.held(true)).isFalse();
        }
    }

    @Test
    void propertyRowsDoNotDependOnWhenOneLooks() throws IOException {
        StringBuilder text = new StringBuilder(HEAD);
        for (int i = 0; i < 200; i++) {
            text.append(i / 10.0)
                    .append(",1,")
                    .append(i)
                    .append(i % 7 == 0 ? ",," : ",2.5,")
                    .append("x\n");
        }
        byte[] all = text.toString().getBytes(StandardCharsets.UTF_8);
        Files.write(log(), all);
        try (LogFollower log = open()) {
            log.look(MUCH);
        }
        List<String> atOnce = List.copyOf(got);
        assertThat(atOnce).hasSize(201);
        for (int seed = 0; seed < 20; seed++) {
            got.clear();
            Random random = new Random(seed);
            Files.write(log(), new byte[0]);
            try (LogFollower log = open()) {
                int from = 0;
                while (from < all.length) {
                    int to = Math.min(all.length, from + 1 + random.nextInt(900));
                    append(Arrays.copyOfRange(all, from, to));
                    from = to;
                    log.look(1 + random.nextInt(2_000));
                }
                while (log.look(MUCH) == Found.MORE) {
                    continue;
                }
            }
            assertThat(got).as("seed " + seed).isEqualTo(atOnce);
        }
    }

    @Test
    void malformedLinesOfTheSideFileAreCountedAndCommentsAreNot() throws IOException {
        append(HEAD);
        Path side = folder.resolve("a.bad.csv");
        try (SideFollower follower = new SideFollower(log())) {
            assertThat(follower.look(MUCH)).isFalse();
            Files.writeString(
                    side,
                    "line,arrival,bytes,reason,text\n1,0.1,9,a comment of the source,\"# a\"\n"
                            + "17,0.2,23,\"p03 is '101x', \"\"so\"\"\",\"16,0.080\"\n18,0.2,0,bro");
            assertThat(follower.look(MUCH)).isTrue();
            assertThat(follower.malformed()).isEqualTo(1);
            assertThat(follower.last()).isEqualTo("line 17: p03 is '101x', \"so\"");
            Files.write(side, "ken,\"x\"\n".getBytes(StandardCharsets.UTF_8), StandardOpenOption.APPEND);
            follower.look(MUCH);
            assertThat(follower.last()).isEqualTo("line 18: broken");
            Files.delete(side);
            follower.look(MUCH);
            assertThat(follower.malformed()).isZero();
        }
    }

    @Test
    void aSparseHugeLogIsReadInBoundedSteps() throws IOException {
        append(HEAD);
        try (FileChannel file = FileChannel.open(log(), StandardOpenOption.WRITE)) {
            file.write(ByteBuffer.wrap(new byte[] {'x'}), 3L << 30); // zeros before it, on no disk
        }
        try (LogFollower log = open()) {
            assertThat(log.look(MUCH)).isEqualTo(Found.MORE);
            assertThat(log.file().at()).isEqualTo(MUCH);
        }
    }
}
