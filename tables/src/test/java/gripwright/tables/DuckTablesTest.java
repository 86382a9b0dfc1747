package gripwright.tables;

import static org.assertj.core.api.Assertions.assertThat;

import gripwright.files.DataTable;
import gripwright.files.DataTable.Column;
import gripwright.files.DataTable.Kind;
import gripwright.files.Tables;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is written as Parquet, read back by DuckDB's SQL and compared with the same table as CSV. */
class DuckTablesTest {
    private static final List<Column> COLUMNS = List.of(
            new Column("x_m", Kind.NUMBER),
            new Column("steps", Kind.WHOLE),
            new Column("held", Kind.TRUTH),
            new Column("the \"outcome\"", Kind.TEXT));

    @TempDir
    @SuppressWarnings("NullAway.Init")
    Path folder;

    private static List<@Nullable Object> row(@Nullable Object... values) {
        return Arrays.asList(values);
    }

    private List<List<@Nullable Object>> query(String sql) throws SQLException {
        List<List<@Nullable Object>> rows = new ArrayList<>();
        try (Connection db = DriverManager.getConnection("jdbc:duckdb:");
                ResultSet found = db.createStatement().executeQuery(sql)) {
            while (found.next()) {
                List<@Nullable Object> row = new ArrayList<>();
                for (int i = 1; i <= found.getMetaData().getColumnCount(); i++) {
                    row.add(found.getObject(i));
                }
                rows.add(row);
            }
        }
        return rows;
    }

    @Test
    void whatWasWrittenIsReadBackExactly() throws Exception {
        List<List<@Nullable Object>> rows = List.of(
                row(0.1, 3L, true, "held"),
                row(-1e-300, Long.MAX_VALUE, false, "a, \"b\"\nc"),
                row(null, null, null, null),
                row(Double.MIN_VALUE, -1L, true, ""),
                row(Double.NaN, 0L, false, "π"));
        Path file = folder.resolve("it's.parquet");
        Tables.write(new DataTable(COLUMNS, rows), file);
        String name = file.toString().replace("'", "''");
        assertThat(query("SELECT * FROM '" + name + "'")).isEqualTo(rows);
        assertThat(query("SELECT name, type, converted_type FROM parquet_schema('" + name
                        + "') WHERE name <> 'duckdb_schema'"))
                .extracting(r -> r.get(0))
                .containsExactly("x_m", "steps", "held", "the \"outcome\"");
        try (Stream<Path> left = Files.list(folder)) {
            assertThat(left).containsExactly(file);
        }
    }

    @Test
    void propertyParquetAndCsvSayTheSame() throws Exception {
        Random random = new Random(11);
        List<List<@Nullable Object>> rows = new ArrayList<>();
        for (int i = 0; i < 20_000; i++) {
            rows.add(row(
                    random.nextGaussian() * Math.pow(10, random.nextInt(40) - 20),
                    random.nextLong(),
                    random.nextBoolean(),
                    random.nextInt(10) == 0 ? null : "w" + random.nextInt(5)));
        }
        DataTable table = new DataTable(COLUMNS, rows);
        Tables.write(table, folder.resolve("a.parquet"));
        Tables.write(table, folder.resolve("a.csv"));
        String csv = "read_csv('" + folder.resolve("a.csv")
                + "', columns = {'x_m': 'DOUBLE', 'steps': 'BIGINT', 'held': 'BOOLEAN', 'o': 'VARCHAR'}, header = true)";
        String parquet = "'" + folder.resolve("a.parquet") + "'";
        assertThat(query("SELECT count(*) FROM " + parquet)).isEqualTo(List.of(List.of(20_000L)));
        for (String both :
                List.of(csv + " EXCEPT ALL SELECT * FROM " + parquet, parquet + " EXCEPT ALL SELECT * FROM " + csv)) {
            assertThat(query("SELECT * FROM " + both)).as("seed 11").isEmpty();
        }
    }

    @Test
    void aLogBecomesParquetWithTheKindsOfItsColumns() throws Exception {
        StringBuilder log = new StringBuilder("# gripwright log 1\n# project: a, b\narrival,wall,seq,p00,note\n");
        for (int i = 0; i < 30_000; i++) {
            log.append(i)
                    .append(".5,")
                    .append(1_795_600_000_000L + i)
                    .append(',')
                    .append(i)
                    .append(',');
            log.append(i % 10 == 0 ? "" : i)
                    .append(i == 29_999 ? ".25,last" : ",")
                    .append('\n');
        }
        Files.writeString(folder.resolve("a.csv"), log);
        Tables.parquetOfCsv(folder.resolve("a.csv"), folder.resolve("a.parquet"));
        assertThat(query("SELECT count(*), count(p00), max(seq), max(p00), max(arrival), max(note), max(wall) FROM '"
                        + folder.resolve("a.parquet") + "'"))
                .isEqualTo(
                        List.of(List.of(30_000L, 27_000L, 29_999L, 29_999.25, 29_999.5, "last", 1_795_600_029_999L)));
    }

    @Test
    void aTableThatCannotBeFinishedLeavesNothing() throws Exception {
        Iterable<List<@Nullable Object>> broken = () -> {
            throw new IllegalStateException("planted");
        };
        org.assertj.core.api.Assertions.assertThatThrownBy(
                        () -> Tables.write(new DataTable(COLUMNS, broken), folder.resolve("a.parquet")))
                .hasMessage("planted");
        org.assertj.core.api.Assertions.assertThatThrownBy(
                        () -> Tables.write(new DataTable(COLUMNS, List.of()), folder.resolve("a.xlsx")))
                .isInstanceOf(IOException.class)
                .hasMessageContaining("a table is FILE.csv or FILE.parquet");
        try (Stream<Path> left = Files.list(folder)) {
            assertThat(left).isEmpty();
        }
    }
}
