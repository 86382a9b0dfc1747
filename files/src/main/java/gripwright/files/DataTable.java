package gripwright.files;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Rows for other programs.
 *
 * @param rows one value a column: Double, Long, Boolean or String as the column has it, or null
 */
public record DataTable(List<Column> columns, Iterable<List<@Nullable Object>> rows) {
    /** What the values of a column are. */
    public enum Kind {
        NUMBER,
        WHOLE,
        TRUTH,
        TEXT
    }

    /** A column; its unit stands in the name, such as {@code x_m}. */
    public record Column(String name, Kind kind) {}

    public DataTable {
        columns = List.copyOf(columns);
    }
}
