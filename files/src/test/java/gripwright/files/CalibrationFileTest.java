package gripwright.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import gripwright.signal.Decoding;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** calibration.yaml: what is understood, and what is refused at its line. */
class CalibrationFileTest {
    private static final String TEXT = """
            version: 1
            log: "a.csv"
            unit: Pa
            pressed by: plate
            taxels:
              "p00":
                pad: "strip"
                zero: 6200.5
                sensitivity: 95.04  # 95 %: 94.9 to 95.1
                quadratic: -1.2E-12
                creep: 1.9
                creep time: 12
                play: 0.03
                noise: 1.6
                sensitivity error: 0.001
                fitted to: 5
              "p01":
                pad: "strip"
                not fitted: "dead"
            slopes:
              "p00": [760, "-"]
            """;

    @TempDir
    @SuppressWarnings("NullAway.Init")
    Path folder;

    private Decoding read(String text) throws IOException {
        Files.writeString(folder.resolve(CalibrationFile.NAME), text);
        return CalibrationFile.read(folder);
    }

    @Test
    void modelsAndReasonsAreRead() throws IOException {
        Decoding decoding = read(TEXT);
        assertThat(decoding.taxels().get(0).model().orElseThrow().quadratic()).isEqualTo(-1.2e-12);
        assertThat(decoding.taxels().get(1).words()).isEqualTo("dead");
        assertThat(decoding.slopes().get("p00")).containsExactly(760.0, Double.NaN);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            version: 1 | version: 2 | 1 | has the form 2
            unit: Pa | unit: bar | 3 | unit is 'bar'
            sensitivity: 95.04 | sensitivity: NaN | 9 | sensitivity is 'NaN'
            sensitivity: 95.04 | sensitivity: -3 | 9 | sensitivity is '-3'
            noise: 1.6 | nose: 1.6 | 14 | unknown key 'nose'
            play: 0.03 | creep time: 0 | 13 | creep time
            [760, "-"] | [760] | 21 | not one number per taxel
            """)
    void faultsStandAtTheirLine(String right, String wrong, int line, String message) {
        assertThat(TEXT).contains(right);
        assertThatThrownBy(() -> read(TEXT.replace(right, wrong)))
                .isInstanceOfSatisfying(ProjectFaults.class, faults -> {
                    assertThat(faults.faults().get(0).line()).isEqualTo(line);
                    assertThat(faults.faults().get(0).message()).contains(message);
                });
    }

    @Test
    void aMissingFileIsSaid() {
        assertThatThrownBy(() -> CalibrationFile.read(folder))
                .hasMessageContaining("there is no file calibration.yaml");
    }
}
