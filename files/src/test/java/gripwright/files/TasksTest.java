package gripwright.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gripwright.math.Vec3;
import gripwright.model.Press;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Tasks of free fingers in need.yaml. */
class TasksTest {
    private static final String TASK =
            "{grip: pinch, finger: right, greatest tension: 30 N, at: [0 mm, 0 mm, 90 mm], toward: [0, 0, -2], force: 8 N, travel: 3 mm}";

    @TempDir
    Path path;

    private Folder folder = new Folder(Path.of(""));

    @BeforeEach
    void start() {
        folder = Folder.starting(path);
    }

    private Folder with(String task) {
        return folder.need(
                "    surface: painted metal\n", "    surface: painted metal\n    task:\n      spray: " + task + "\n");
    }

    @Test
    void aTaskIsReadInSiUnits() {
        List<Press> tasks = with(TASK).read().need().object("spray can").tasks();
        assertThat(tasks).hasSize(1);
        Press p = tasks.get(0);
        assertThat(p.name()).isEqualTo("spray");
        assertThat(p.grip()).isEqualTo("pinch");
        assertThat(p.finger()).isEqualTo("right");
        assertThat(p.greatestTension()).isEqualTo(30, within(1e-12));
        assertThat(p.point().z()).isEqualTo(0.09, within(1e-12));
        assertThat(p.direction()).isEqualTo(new Vec3(0, 0, -1));
        assertThat(p.force()).isEqualTo(8, within(1e-12));
        assertThat(p.travel()).isEqualTo(0.003, within(1e-12));
    }

    @Test
    void withoutTravelWhatIsPressedDoesNotGiveWayAndThatIsSaid() {
        Folder changed = with(TASK.replace(", travel: 3 mm", ""));
        assertThat(changed.read().need().object("spray can").tasks().get(0).travel())
                .isZero();
        assertThat(changed.read().assumptions())
                .anyMatch(
                        a -> a.where().contains("task.spray.travel") && a.text().contains("does not give way"));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            finger: right | finger: thumb | finger 'thumb' takes part in grip 'pinch' | a finger that this grip leaves free (hand.yaml: grips: fingers: names those taking part)
            finger: right | finger: rigth | there is no finger called 'rigth' | one of left, right, thumb
            grip: pinch | grip: punch | there is no grip called 'punch' | one of wrap, top, tripod, pinch
            [0, 0, -2] | [0, 0, 0] | toward has no direction | three numbers, not all 0, such as [0, 0, -1]
            force: 8 N | force: 0 N | force is 0 N | a force above 0
            greatest tension: 30 N, | | key 'greatest tension' is missing in spray | greatest tension: a force
            at: [0 mm, 0 mm, 90 mm] | at: [0 mm, 0 mm, 900 mm] | the place of task 'spray' lies 900 mm from the shape's origin | a place on the object or near it
            """)
    void aFaultyTaskIsRefusedAtItsLine(String old, String replacement, String message, String expected) {
        Fault fault =
                with(TASK.replace(old, replacement == null ? "" : replacement)).fault();
        assertThat(fault.message()).isEqualTo(message);
        assertThat(fault.expected()).contains(expected);
        assertThat(fault.line()).isBetween(17, 18);
    }
}
