package gripwright.signal;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.junit.jupiter.api.Test;

/** What the count of the readings gives away. */
class SequenceCheckTest {
    private static String found(long... counts) {
        SequenceCheck check = new SequenceCheck();
        for (long count : counts) {
            check.next(count);
        }
        return "gaps " + check.gaps() + " missing " + check.missing() + " repeats " + check.repeats() + " late "
                + check.late() + " restarts " + check.restarts() + " overruns " + check.overruns();
    }

    @Test
    void whatIsWholeHasNoFault() {
        assertThat(found(5, 6, 7, 8)).isEqualTo("gaps 0 missing 0 repeats 0 late 0 restarts 0 overruns 0");
    }

    @Test
    void gapsAndWhatIsMissingThere() {
        assertThat(found(5, 6, 9, 10, 20)).isEqualTo("gaps 2 missing 11 repeats 0 late 0 restarts 0 overruns 0");
    }

    @Test
    void repeatsAtOnceAndLater() {
        assertThat(found(5, 5, 6, 7, 6, 8)).isEqualTo("gaps 0 missing 0 repeats 2 late 0 restarts 0 overruns 0");
    }

    @Test
    void aLateOneIsNotMissingAnyMore() {
        assertThat(found(5, 6, 8, 7, 9)).isEqualTo("gaps 1 missing 0 repeats 0 late 1 restarts 0 overruns 0");
    }

    @Test
    void aNewStartIsNoFloodOfRepeats() {
        assertThat(found(0, 1, 2, 3, 4, 5, 0, 1, 2, 3))
                .isEqualTo("gaps 0 missing 0 repeats 0 late 0 restarts 1 overruns 0");
        assertThat(found(90_000, 90_001, 0, 1)).isEqualTo("gaps 0 missing 0 repeats 0 late 0 restarts 1 overruns 0");
    }

    @Test
    void smallCountersRunOver() {
        assertThat(found(254, 255, 0, 1)).isEqualTo("gaps 0 missing 0 repeats 0 late 0 restarts 0 overruns 1");
        assertThat(found(65_533, 65_534, 1, 2)).isEqualTo("gaps 1 missing 2 repeats 0 late 0 restarts 0 overruns 1");
        assertThat(found(4_294_967_295L, 0)).isEqualTo("gaps 0 missing 0 repeats 0 late 0 restarts 0 overruns 1");
    }

    @Test
    void propertyAnEightBitCounterThatRunsOverManyTimesLosesNothing() {
        SequenceCheck check = new SequenceCheck();
        for (int i = 0; i < 2_000; i++) {
            check.next(i % 256);
        }
        assertThat(check.missing() + check.repeats() + check.late() + check.restarts())
                .isZero();
        assertThat(check.overruns()).isEqualTo(7);
    }

    @Test
    void propertyMissingReadingsAreCountedExactly() {
        Random random = new Random(3);
        for (int trial = 0; trial < 50; trial++) {
            SequenceCheck check = new SequenceCheck();
            int dropped = 0;
            check.next(0);
            for (int count = 1; count < 5_000; count++) {
                boolean drop = random.nextInt(20) == 0 && count < 4_999;
                dropped += drop ? 1 : 0;
                if (!drop) {
                    check.next(count);
                }
            }
            assertThat(check.missing()).as("trial " + trial + " of seed 3").isEqualTo(dropped);
        }
    }
}
