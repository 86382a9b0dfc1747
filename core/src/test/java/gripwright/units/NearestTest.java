package gripwright.units;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

class NearestTest {
    private static final List<String> KEYS = List.of("length", "width", "thickness", "pad", "tip");

    @Test
    void slipsFindTheirWord() {
        assertThat(Nearest.to("lenght", KEYS)).contains("length");
        assertThat(Nearest.to("Width", KEYS)).contains("width");
        assertThat(Nearest.to("thicknes", KEYS)).contains("thickness");
        assertThat(Nearest.to("tipp", KEYS)).contains("tip");
    }

    @Test
    void nothingNearIsNothing() {
        assertThat(Nearest.to("colour", KEYS)).isEmpty();
        assertThat(Nearest.to("", KEYS)).isEmpty();
        assertThat(Nearest.to("x".repeat(100_000), KEYS)).isEmpty();
    }

    /** Source: the classic pair kitten/sitting takes 3 edits (common practice, no source). */
    @Test
    void referenceEditDistance() {
        assertThat(Nearest.edits("kitten", "sitting")).isEqualTo(3);
        assertThat(Nearest.edits("ab", "ba")).isEqualTo(1);
    }
}
