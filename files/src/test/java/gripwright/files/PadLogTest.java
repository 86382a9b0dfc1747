package gripwright.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

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

    /** Rows at 100 a second, a load cell at 50 by its own clock in milliseconds, which stays until the next reading. */
    private static String merged(int rows) {
        StringBuilder text = new StringBuilder("# units: t s, a kPa, b kPa, tF ms\nt,a,b,temp,F,air,tF\n");
        for (int i = 0; i < rows; i++) {
            text.append(i / 100.0).append(",1,2,24,").append(i / 2).append(",101,");
            text.append(5000 + 20 * (i / 2)).append('\n');
        }
        return text.toString();
    }

    private SensorLog own(String text) throws IOException {
        Path file = folder.resolve("own.csv");
        Files.writeString(file, text);
        try (PadLog log =
                PadLog.toCalibrate(file, NAMES, new PadLog.Against("F", Optional.of("tF"), 0, Optional.empty()))) {
            return log.all();
        }
    }

    @Test
    void aReferenceWithItsOwnClockKeepsItsStamps() throws IOException {
        SensorLog log = own(merged(400));
        assertThat(log.own().orElseThrow().stamp()).hasSize(200);
        assertThat(log.own().orElseThrow().stamp()[1]).isCloseTo(5.02, within(1e-9));
        assertThat(log.own().orElseThrow().beside()).startsWith(0, 0.02);
        assertThat(log.own().orElseThrow().force()).startsWith(0, 1);
        assertThat(log.force()).isEmpty();
        assertThat(log.time()).hasSize(400);
    }

    /** As a join of both tables gives it: rows of the load cell alone lie between those of the device. */
    @Test
    void rowsOfTheLoadCellAloneCountForIt() throws IOException {
        StringBuilder text = new StringBuilder("t,a,b,temp,F,air,tF\n");
        for (int i = 0; i < 200; i++) {
            text.append(i / 100.0)
                    .append(",1,2,24,,101,\n,,,,")
                    .append(i)
                    .append(",,")
                    .append(7 + i / 100.0)
                    .append('\n');
        }
        SensorLog log = own(text.toString());
        assertThat(log.time()).hasSize(200);
        assertThat(log.own().orElseThrow().stamp()).hasSize(200);
        assertThat(log.own().orElseThrow().beside()).startsWith(0, 0.01);
    }

    @Test
    void anOwnClockThatIsMissingGoesBackOrIsTooCoarseIsRefused() {
        assertThatThrownBy(() -> own(merged(400).replace("air,tF", "air,tG")))
                .hasMessageContaining("own.csv:2: there is no column 'tF' (the reference's own clock)");
        assertThatThrownBy(() -> own(merged(400).replace(",6000\n", ",600\n")))
                .hasMessageContaining("own.csv:103: the reference's own clock tF goes back from 5.98 s to 0.6 s")
                .hasMessageContaining("expected: stamps that rise, or stay with the same force until the next reading")
                .hasMessageContaining("sort the load cell's readings before merging them, or name another column");
        assertThatThrownBy(() -> own(merged(400).replace("1,101,5020\n", "1,101,5000\n")))
                .hasMessageContaining("tF stays at 5 s while the force goes from 0 N to 1 N");
        assertThatThrownBy(() -> own(merged(20)))
                .hasMessageContaining("stamps 10 readings; a calibration needs at least 100 (column tF)");
        assertThatThrownBy(() -> own(merged(400).replace("tF ms", "tF Pa"))).hasMessageContaining("tF is in Pa");
    }

    /** Microseconds since 1970 are no fault of a clock. */
    @Test
    void aClockMayCountFromNineteenSeventy() throws IOException {
        String text = merged(400).replace("tF ms", "tF us").replaceAll(",(\\d{4})\n", ",1795600000$100\n");
        assertThat(own(text).own().orElseThrow().stamp()[1]).isCloseTo(1795600000.502, within(1e-6));
    }

    @Test
    void onePadOfSeveralIsReadByItself() throws IOException {
        Readings two = new Readings(
                "t",
                1,
                Optional.empty(),
                new java.util.TreeMap<>(Map.of("left", List.of("a", "b"), "thumb", List.of("c", "d"))),
                Readings.Scale.PA,
                Map.of("left", "temp", "thumb", "temp"),
                Optional.empty(),
                Optional.of("F"),
                Optional.empty(),
                Optional.of("pressed"));
        Path file = folder.resolve("two.csv");
        Files.writeString(file, "t,c,d,temp,F,pressed\n0,1,2,24,0,0\n1,1,2,24,1,1\n2,1,2,24,1,4\n3,1,2,24,1,9\n");
        try (PadLog log =
                PadLog.toCalibrate(file, two, new PadLog.Against("F", Optional.empty(), 0, Optional.of("thumb")))) {
            SensorLog all = log.all();
            assertThat(all.channels()).extracting(SensorLog.Channel::number).containsExactly(3, 4);
            assertThat(all.channels()).extracting(SensorLog.Channel::column).containsExactly("c", "d");
            // Taxel 1 is the other pad's: no press on this one. There is no taxel 9, which the calibration says.
            assertThat(all.pressed()).containsExactly(0, -1, 4, 9);
        }
    }
}
