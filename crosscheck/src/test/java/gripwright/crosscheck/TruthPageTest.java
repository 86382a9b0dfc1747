package gripwright.crosscheck;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Holds docs/truth.md to what the tests of this very run recorded: the same rows, the numbers within the printed digits.
 * Runs last (the tests of the other modules ran before this module's). {@code ./check truth} writes the page anew.
 */
@Order(Integer.MAX_VALUE)
@Tag("slow")
class TruthPageTest {
    private static final String ANEW = "; ./check truth writes the page anew (look at what changed)";

    @Test
    void thePageSaysWhatTheTestsFound() throws IOException {
        List<TruthRow> rows = TruthRow.read(TruthPage.RECORDED);
        assertThat(rows)
                .as("records of this run: run all tests, not this one alone")
                .isNotEmpty();
        if ("write".equals(System.getProperty("truth"))) {
            TruthPage.write(rows);
        }
        Map<String, TruthRow> page = byKey(TruthRow.read(List.of(TruthPage.TABLE)));
        Map<String, TruthRow> run = byKey(rows);
        assertThat(new TreeSet<>(run.keySet())).as("rows" + ANEW).isEqualTo(new TreeSet<>(page.keySet()));
        List<String> changed = new ArrayList<>();
        for (TruthRow row : run.values()) {
            TruthRow printed = page.get(row.key());
            if (printed == null || !row.agrees(printed) || !row.tolerance().equals(printed.tolerance())) {
                changed.add(row + " is on the page as " + printed);
            }
        }
        assertThat(changed).as("numbers" + ANEW).isEmpty();
        // the page itself, numbers left out: the same lines as these rows give
        assertThat(words(Files.readString(TruthPage.PAGE)))
                .as("words" + ANEW)
                .isEqualTo(words(TruthPage.markdown(rows)));
    }

    /** The headings and the groups of the page; which row is the worst of its kind may change with the last digits. */
    private static List<String> words(String page) {
        return Arrays.stream(page.split("\n", -1))
                .filter(line -> !line.startsWith("| ") || line.contains("worst of"))
                .map(line -> line.replaceFirst("(worst of [0-9]+).*", "$1"))
                .toList();
    }

    /** Rows of one key are told apart by their order. */
    private static Map<String, TruthRow> byKey(List<TruthRow> rows) {
        Map<String, TruthRow> map = new LinkedHashMap<>();
        Map<String, Integer> seen = new LinkedHashMap<>();
        for (TruthRow row : rows) {
            int n = seen.merge(row.key(), 1, Integer::sum);
            map.put(n == 1 ? row.key() : row.key() + " #" + n, row);
        }
        return map;
    }
}
