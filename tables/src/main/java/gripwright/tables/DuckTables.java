package gripwright.tables;

import gripwright.files.DataTable;
import gripwright.files.ParquetWriter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.duckdb.DuckDBAppender;
import org.duckdb.DuckDBConnection;
import org.jspecify.annotations.Nullable;

/** Fills a table of DuckDB and copies it out. Its memory is bounded: what does not fit waits in a file beside the result. */
public final class DuckTables implements ParquetWriter {
    private static final String MEMORY = "256MB";

    @Override
    public void write(DataTable table, Path file) throws IOException {
        Path folder = Files.createTempDirectory(file.toAbsolutePath().getParent(), ".table");
        try (Connection db = DriverManager.getConnection("jdbc:duckdb:" + folder.resolve("rows.db"));
                Statement sql = db.createStatement()) {
            sql.execute("SET memory_limit = '" + MEMORY + "'");
            sql.execute("CREATE TABLE rows (" + columns(table) + ")");
            try (DuckDBAppender to = db.unwrap(DuckDBConnection.class).createAppender("main", "rows")) {
                for (List<@Nullable Object> row : table.rows()) {
                    to.beginRow();
                    for (int i = 0; i < row.size(); i++) {
                        append(to, row.get(i), table.columns().get(i));
                    }
                    to.endRow();
                }
            }
            sql.execute("COPY rows TO '" + quoted(file.toString(), '\'') + "' (FORMAT parquet, COMPRESSION zstd)");
        } catch (SQLException e) {
            throw new IOException("cannot write Parquet: " + e.getMessage(), e);
        } finally {
            delete(folder);
        }
    }

    @Override
    public void convert(Path csv, Path file, List<DataTable.Column> columns) throws IOException {
        long before;
        try (Stream<String> lines = Files.lines(csv)) {
            before = lines.takeWhile(line -> line.startsWith("#")).count();
        }
        try (Connection db = DriverManager.getConnection("jdbc:duckdb:");
                Statement sql = db.createStatement()) {
            sql.execute("SET memory_limit = '" + MEMORY + "'");
            // Else every row decides about the kind of its column: a word far down must not be an error or be lost.
            String kinds = columns.isEmpty()
                    ? "sample_size = -1"
                    : "columns = {"
                            + columns.stream()
                                    .map(c -> "'" + quoted(c.name(), '\'') + "': '" + type(c.kind()) + "'")
                                    .collect(Collectors.joining(", "))
                            + "}";
            sql.execute("COPY (SELECT * FROM read_csv('" + quoted(csv.toString(), '\'') + "', skip = " + before
                    + ", header = true, delim = ',', quote = '\"', escape = '\"', " + kinds + ")) TO '"
                    + quoted(file.toString(), '\'') + "' (FORMAT parquet, COMPRESSION zstd)");
        } catch (SQLException e) {
            throw new IOException("cannot write Parquet from " + csv + ": " + e.getMessage(), e);
        }
    }

    private static String columns(DataTable table) {
        return table.columns().stream()
                .map(c -> '"' + quoted(c.name(), '"') + "\" " + type(c.kind()))
                .collect(Collectors.joining(", "));
    }

    private static String type(DataTable.Kind kind) {
        return switch (kind) {
            case NUMBER -> "DOUBLE";
            case WHOLE -> "BIGINT";
            case TRUTH -> "BOOLEAN";
            case TEXT -> "VARCHAR";
        };
    }

    private static void append(DuckDBAppender to, @Nullable Object value, DataTable.Column column) throws SQLException {
        if (value == null) {
            to.appendNull();
            return;
        }
        switch (column.kind()) {
            case NUMBER -> to.append(((Number) value).doubleValue());
            case WHOLE -> to.append(((Number) value).longValue());
            case TRUTH -> to.append((boolean) (Boolean) value);
            case TEXT -> to.append(value.toString());
        }
    }

    private static String quoted(String text, char quote) {
        return text.replace("" + quote, "" + quote + quote);
    }

    private static void delete(Path folder) throws IOException {
        List<Path> files;
        try (var all = Files.list(folder)) {
            files = all.toList();
        }
        for (Path file : files) {
            Files.delete(file);
        }
        Files.delete(folder);
    }
}
