package gripwright.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

/** A long log thinned for a picture keeps its peaks. */
class ForceCourseTest {
    @Test
    void peaksAndMeansOutliveTheThinning() {
        ForceCourse course = new ForceCourse();
        int rows = 100_000;
        for (int i = 0; i < rows; i++) {
            double force = i == 77_777 ? 9 : i == 33_333 ? -2 : 1;
            course.add(0.01 * i, force, i % 2 == 0 ? Double.NaN : i < rows / 2 ? -0.003 : 0.005);
        }
        List<ForceCourse.Stretch> all = course.stretches();
        assertThat(all).hasSizeBetween(800, 1600);
        assertThat(all.stream().mapToInt(ForceCourse.Stretch::rows).sum()).isEqualTo(rows);
        assertThat(all.stream().mapToDouble(ForceCourse.Stretch::high).max().orElse(0))
                .isEqualTo(9);
        assertThat(all.stream().mapToDouble(ForceCourse.Stretch::low).min().orElse(0))
                .isEqualTo(-2);
        assertThat(all.get(10).centre()).isCloseTo(-0.003, within(1e-15));
        assertThat(all.get(all.size() - 1).centre()).isCloseTo(0.005, within(1e-15));
        assertThat(all.get(0).time()).isZero();
    }
}
