package gripwright.pad;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gripwright.signal.Decoder;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Places of cells by hand: 3 in a row 6 mm apart, two rows 5 mm apart, the second shifted by 3 mm. */
class PadDesignTest {
    private static final PadDesign PAD =
            new PadDesign("strip", Chips.WIDE, 3e-3, 0.7e6, 1.5e9, 3, 6e-3, 2, 5e-3, 3e-3, 0.02);
    private static final double[] ALONG = {-7.5e-3, -1.5e-3, 4.5e-3, -4.5e-3, 1.5e-3, 7.5e-3};

    @Test
    void cellsOfStaggeredRowsLieAboutTheMiddleOfTheStrip() {
        for (int cell = 0; cell < PAD.cells(); cell++) {
            assertThat(PAD.along(cell)).as("along, cell " + cell).isCloseTo(ALONG[cell], within(1e-12));
            assertThat(PAD.across(cell))
                    .as("across, cell " + cell)
                    .isCloseTo(cell < 3 ? -2.5e-3 : 2.5e-3, within(1e-12));
        }
    }

    @Test
    void forcesAreDecodedAtThePlacesOfTheCells() {
        Readings readings = new Readings(
                "t",
                1,
                Optional.empty(),
                Map.of("strip", List.of("a", "b", "c", "d", "e", "f")),
                Readings.Scale.PA,
                Map.of(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
        assertThat(Decoder.places(List.of(PAD), readings).get(0).along()).containsExactly(ALONG, within(1e-12));
    }
}
