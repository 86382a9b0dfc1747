package gripwright.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import gripwright.pad.Readings;
import gripwright.signal.SensorLog;
import java.io.IOException;
import java.io.OutputStream;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Logs as they come: what is read, what is left out and said, what is refused and where. */
class PadLogTest {
    private static final String HEAD = """
            # gripwright log 1
            # project: demo
            # units: arrival s, wall ms, t s, a kPa, b kPa, temp degC, F N, air kPa
            arrival,wall,seq,t,a,b,temp,F,air
            """;
    private static final String ROWS = """
            0.001,1795600000000,0,0.000,1.5,2.5,24.0,0.0,101.0
            0.011,1795600000010,1,0.010,1.6,2.6,24.1,0.5,101.1
            0.021,1795600000020,2,0.020,1.7,2.7,24.2,1.0,101.2
            """;
    private static final Readings NAMES = new Readings(
            "t",
            1,
            Optional.of("seq"),
            Map.of("strip", List.of("a", "b")),
            Readings.Scale.KPA,
            Map.of("strip", "temp"),
            Optional.of("air"),
            Optional.of("F"),
            Optional.empty(),
            Optional.empty());

    @TempDir
    @SuppressWarnings("NullAway.Init")
    Path folder;

    private record Read(SensorLog log, List<String> remarks) {}

    private Read read(String text) throws IOException {
        return read(text.getBytes(StandardCharsets.UTF_8), "F");
    }

    private Read read(byte[] bytes, String reference) throws IOException {
        Path file = folder.resolve("log.csv");
        Files.write(file, bytes);
        try (PadLog log = PadLog.toCalibrate(file, NAMES, PadLog.Against.column(reference))) {
            SensorLog all = log.all();
            return new Read(all, log.remarks());
        }
    }

    @Test
    void columnsAreFoundByNameAndComeInBaseUnits() throws IOException {
        Read read = read(HEAD + ROWS);
        assertThat(read.remarks()).isEmpty();
        assertThat(read.log().time()).containsExactly(0, 0.01, 0.02);
        assertThat(read.log().channels().get(1).readings()).containsExactly(2500, 2600, 2700);
        assertThat(read.log().channels().get(1).temperature()).containsExactly(24.0, 24.1, 24.2);
        assertThat(read.log().ambient()[2]).isEqualTo(101200);
        assertThat(read.log().force()).containsExactly(0, 0.5, 1);
    }

    @Test
    void plainCsvPackedByGzipIsReadToo() throws IOException {
        Path file = folder.resolve("log.csv.gz");
        try (OutputStream out = new GZIPOutputStream(Files.newOutputStream(file))) {
            out.write(("\"t\",b,a,temp,F,air\r\n" + "0,2,1,24,0,101\r\n" + "1,3,2,24,0,101\r\n")
                    .getBytes(StandardCharsets.UTF_8));
        }
        try (PadLog log = PadLog.toCalibrate(file, NAMES, PadLog.Against.column("F"))) {
            assertThat(log.all().channels().get(0).readings()).containsExactly(1000, 2000);
        }
    }

    @Test
    void textWithCommasInColumnsThatNobodyAsksForDoesNoHarm() throws IOException {
        String text = HEAD.replace("temp,F,air", "temp,F,air,note") + ROWS.replace("\n", ",\"a, b\"\n");
        Read read = read(text);
        assertThat(read.remarks()).isEmpty();
        assertThat(read.log().ambient()[2]).isEqualTo(101200);
    }

    @Test
    void wrongColumnIsNamedWithTheNearest() {
        assertThatThrownBy(() -> read((HEAD + ROWS).getBytes(StandardCharsets.UTF_8), "Force"))
                .isInstanceOf(LogFault.class)
                .hasMessageContaining("log.csv:4: there is no column 'Force' (the reference)")
                .hasMessageContaining("the columns arrival, wall, seq, t, a, b, temp, F, air");
        assertThatThrownBy(() -> read((HEAD.replace("temp,F", "tmp,F") + ROWS).getBytes(StandardCharsets.UTF_8), "F"))
                .hasMessageContaining("no column 'temp' (readings: temperature in pads.yaml); did you mean 'tmp'?");
    }

    @Test
    void mixedUnitsAreRefused() {
        assertThatThrownBy(() -> read(HEAD.replace("b kPa", "b Pa") + ROWS))
                .hasMessageContaining("mixed units: a is in kPa and b in Pa");
        assertThatThrownBy(() -> read(HEAD.replace("a kPa", "a Pa").replace("b kPa", "b Pa") + ROWS))
                .hasMessageContaining("the log's head says that a is in Pa, pads.yaml (readings: unit) says kPa");
        assertThatThrownBy(() -> read(HEAD.replace("F N", "F mm") + ROWS)).hasMessageContaining("F is in mm");
    }

    @Test
    void forcesInOtherUnitsAreConverted() throws IOException {
        assertThat(read(HEAD.replace("F N", "F mN") + ROWS).log().force()[2]).isEqualTo(1e-3);
    }

    @Test
    void aSecondLineOfColumnNamesIsRefused() {
        assertThatThrownBy(() -> read(HEAD + ROWS + "arrival,wall,seq,t,a,b,temp,F,air\n" + ROWS))
                .hasMessageContaining("log.csv:8: a second line of column names")
                .hasMessageContaining("one log per file");
    }

    @Test
    void aLogCutWithinALineIsReadUpToIt() throws IOException {
        Read read = read(HEAD + ROWS + "0.031,17956000000");
        assertThat(read.log().time()).hasSize(3);
        assertThat(read.remarks()).containsExactly("line 8 was cut off: it has no line end and was not read");
    }

    @Test
    void cellsThatAreNotNumbersAreCountedAndSaid() throws IOException {
        String more = rows(20);
        Read read = read(HEAD + more + "9,9,9,9.1,NaN,1,24,0,101\n");
        assertThat(read.remarks()).containsExactly("1 cell of a are NaN; taken as missing");
        assertThat(read.log().channels().get(0).readings()[20]).isNaN();
        assertThat(read(HEAD + more + "9,9,9,9.1,1e300,1,24,0,101\n").remarks())
                .containsExactly("1 of 21 rows are not rows of numbers and were left out: line 25: a is 1e300, which"
                        + " nothing on a bench reads");
        assertThat(read(HEAD + more + "9,9,9,9.1,1,1\n").remarks().get(0)).contains("line 25: 6 cells instead of 9");
        assertThat(read(HEAD + more + "9,9,9,9.1,x,1,24,0,101\n").remarks().get(0))
                .contains("line 25: a is 'x'");
    }

    private static String rows(int count) {
        StringBuilder rows = new StringBuilder();
        for (int i = 0; i < count; i++) {
            rows.append("0,0,").append(i).append(",0.").append(100 + i).append(",1,2,24,0,101\n");
        }
        return rows.toString();
    }

    @Test
    void aLogOfMostlyBadRowsIsRefused() {
        assertThatThrownBy(() -> read(HEAD + ROWS + "a,b\n")).hasMessageContaining("1 of 4 rows cannot be read");
    }

    @Test
    void stampsThatGoBackAreLeftOutAndCounted() throws IOException {
        assertThat(read(HEAD + ROWS + ROWS).remarks())
                .containsExactly("3 rows have a stamp that is not later than the one before; left out");
    }

    @Test
    void aLineOfTwoGigabytesIsNotReadToItsEnd() throws IOException {
        Path file = folder.resolve("long.csv");
        Files.writeString(file, HEAD + ROWS);
        try (RandomAccessFile sparse = new RandomAccessFile(file.toFile(), "rw")) {
            sparse.setLength(2L << 30);
        }
        assertThatThrownBy(() -> {
                    try (PadLog log = PadLog.toCalibrate(file, NAMES, PadLog.Against.column("F"))) {
                        log.all();
                    }
                })
                .hasMessageContaining("long.csv:8: the line is longer than 65536 bytes");
    }

    @Test
    void whatIsNotUtf8IsRefusedAtItsLine() {
        byte[] bytes = (HEAD + ROWS + "0.1,1,1,0.03,1,1,24,0,101 \u00e4\n").getBytes(StandardCharsets.ISO_8859_1);
        assertThatThrownBy(() -> read(bytes, "F")).hasMessageContaining("log.csv:8: the line is not valid UTF-8");
    }

    @Test
    void emptyAndHeadlessFilesAreRefused() {
        assertThatThrownBy(() -> read("")).hasMessageContaining("holds no line of column names");
        assertThatThrownBy(() -> read("1,2,3\n")).hasMessageContaining("the first line is numbers already");
        assertThatThrownBy(() -> read("t;a;b\n")).hasMessageContaining("not separated by commas");
        assertThatThrownBy(() -> read("t,a,t\n")).hasMessageContaining("column 't' stands there twice");
        assertThatThrownBy(() -> read(HEAD)).hasMessageContaining("0 rows that can be used");
    }
}
