package gripwright.files;

import static org.assertj.core.api.Assertions.assertThat;

import gripwright.pad.PadSetup;
import gripwright.pad.Readings;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** pads.yaml: what is understood, and what is refused at its line. */
class PadsFileTest {
    private static final String TEXT = """
            chips:
              c: {outline: [3 mm, 5 mm], height: 1.2 mm, port radius: 0.5 mm, lid: 0.2 mm, cavity radius: 1.2 mm,
                  cavity height: 0.5 mm, noise: 150 Pa, range: [50 kPa, 115 kPa], conversion: 1.6 ms,
                  start bytes: 1, result bytes: 4}
            pads:
              strip: {chip: c, on: left, board: 1 mm, chips: 5, pitch: 6 mm}
            bus: {kind: i2c, clock: 400 kHz, branches: 8, switch: several at once}
            touch: {speed: 50 mm/s, closing: 1 s, false alarms: 0.1 %, delay: 10 ms, deceleration: 5 m/s^2,
                    finger stiffness: 1 N/mm}
            casting: {vacuum: 3.1 kPa, viscosity: 3 Pa*s, pot life: 30 min}
            wanted: {force: 0.5 N}
            readings:
              time: {column: t, unit: us}
              taxels: {strip: [a, b, c, d, e]}
              unit: kPa
              temperature: temp
              ambient: air
              force: F
              pressed: at
            """;

    @TempDir
    @SuppressWarnings("NullAway.Init")
    Path path;

    private Folder folder(String text) {
        return Folder.starting(path).write(ProjectReader.PADS, text);
    }

    @Test
    void rubberAndThicknessComeFromTheHand() {
        folder(TEXT);
        ProjectReader.Marked marked = ProjectReader.readMarked(path);
        PadSetup pads = marked.pads().orElseThrow();
        double thickness = marked.project()
                .hand()
                .fingers()
                .get(0)
                .phalanges()
                .get(0)
                .pad()
                .thickness();
        assertThat(pads.pads().get(0).overBoard()).isEqualTo(thickness - 1e-3);
        assertThat(pads.pads().get(0).overChip()).isEqualTo(thickness - 1e-3 - 1.2e-3);
        // 1 byte to a register: 20 + 9 bit times; 4 bytes from one: 30 + 36.
        assertThat(pads.pads().get(0).chip().startBits()).isEqualTo(29);
        assertThat(pads.pads().get(0).chip().readBits()).isEqualTo(66);
        assertThat(marked.project().assumptions()).anyMatch(a -> a.text().contains("over the chip"));
    }

    @Test
    void readingsNameTheColumnsOfALog() {
        folder(TEXT);
        Readings readings =
                ProjectReader.readMarked(path).pads().orElseThrow().readings().orElseThrow();
        assertThat(readings.columns()).containsExactly("t", "a", "b", "c", "d", "e", "temp", "air", "F", "at");
        assertThat(readings.tick()).isEqualTo(1e-6);
        assertThat(readings.unit().factor()).isEqualTo(1000);
        assertThat(readings.temperature()).containsOnly(Map.entry("strip", "temp"));
    }

    @Test
    void readingsMayNameOnlyTheClockAndTheTaxels() {
        folder(TEXT.replaceAll(
                "(?s)readings:.*", "readings: {time: t, taxels: {strip: [a, b, c, d, e]}, unit: counts}"));
        Readings readings =
                ProjectReader.readMarked(path).pads().orElseThrow().readings().orElseThrow();
        assertThat(readings.tick()).isEqualTo(1);
        assertThat(readings.force()).isEmpty();
        assertThat(readings.temperature()).isEmpty();
    }

    @Test
    void aProjectNeedsNoPadsFile() {
        Folder.starting(path);
        assertThat(ProjectReader.readMarked(path).pads()).isEmpty();
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            port radius: 0.5 mm | port radius: 2.3 mm | 2 | wider than the lid
            port radius: 0.5 mm | port radius: 1.3 mm | 2 | not below the cavity's
            height: 1.2 mm, port | height: 3.4 mm, port | 6 | the chip is 3.4 mm high and the rubber over the board only 3 mm
            cavity height: 0.5 mm | cavity height: 1.1 mm | 3 | lid and cavity are 1.3 mm high
            pitch: 6 mm | pitch: 2.5 mm | 6 | overlap
            chips: 5 | chips: 50 | 6 | along a pad of
            pitch: 6 mm | pitch: 6 mm, stagger: 3 mm | 6 | a single row has none to be shifted against
            pitch: 6 mm | pitch: 6 mm, rows: 2, stagger: 7 mm | 6 | rows shifted by 7 mm at a pitch of 6 mm
            conversion: 1.6 ms | conversion: 1.6 ms, temperature every: 10 | 3 | the temperature is read every 10 scans
            conversion: 1.6 ms | conversion: 1.6 ms, heat: 3 kPa | 3 | 3 kPa
            pitch: 6 mm | pitch: 6 mm, poisson ratio: 0.5 | 6 | infinite bulk modulus
            on: left | on: lift | 6 | there is no finger called
            board: 1 mm | phalanx: 4, board: 1 mm | 6 | has no phalanx 4
            chips: 5 | chips: 5.5 | 6 | chips is
            115 kPa | 95 kPa | 3 | no room above the air's pressure
            400 kHz | 4 MHz | 7 | the clock is
            vacuum: 3.1 kPa | vacuum: 0.2 MPa | 10 | vacuum is
            [a, b, c, d, e] | [a, b, c, d] | 13 | pad 'strip' has 5 chips but 4 entries
            [a, b, c, d, e] | [a, b, c, d, a] | 14 | column 'a' is named twice, under taxels and under taxels
            temperature: temp | temperature: t | 16 | column 't' is named twice
            strip: [a | stripe: [a | 14 | there is no sensing pad called 'stripe'
            unit: kPa | unit: mmHg | 15 | unit is 'mmHg'
            unit: us | unit: min | 13 | unit is 'min'
            """)
    void impossiblePadsAreRefusedAtTheirLine(String right, String wrong, int line, String message) {
        assertThat(TEXT).contains(right);
        Fault fault = folder(TEXT.replace(right, wrong)).fault();
        assertThat(fault.file()).isEqualTo(ProjectReader.PADS);
        assertThat(fault.line()).isEqualTo(line);
        assertThat(fault.message()).contains(message);
    }
}
