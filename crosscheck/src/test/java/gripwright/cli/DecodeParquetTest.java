package gripwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Decoded forces as Parquet, with the module for it there: read back by SQL, they say what the CSV says. */
class DecodeParquetTest {
    private static final String CALIBRATION = """
            version: 1
            log: "a.csv"
            unit: Pa
            pressed by: probe
            taxels:
            """;
    private static final String TAXEL = """
              "%s":
                pad: "left strip"
                zero: 101600
                sensitivity: 1700
                quadratic: -18
                creep: 40
                creep time: 7
                play: 0.045
                noise: 150
                sensitivity error: 0.01
                fitted to: 5
            """;

    @TempDir
    @SuppressWarnings("NullAway.Init")
    Path folder;

    private int run(String... args) {
        PrintWriter nowhere = new PrintWriter(new StringWriter());
        return Gripwright.commands(new Surroundings(
                        folder,
                        nowhere,
                        nowhere,
                        false,
                        () -> 0,
                        () -> LocalDate.of(2026, 1, 2),
                        new Interruption(),
                        Surroundings.real().closings()))
                .execute(args);
    }

    private List<List<Object>> query(String sql) throws SQLException {
        List<List<Object>> rows = new ArrayList<>();
        try (Connection db = DriverManager.getConnection("jdbc:duckdb:");
                ResultSet found = db.createStatement().executeQuery(sql)) {
            while (found.next()) {
                List<Object> row = new ArrayList<>();
                for (int i = 1; i <= found.getMetaData().getColumnCount(); i++) {
                    row.add(String.valueOf(found.getObject(i)));
                }
                rows.add(row);
            }
        }
        return rows;
    }

    @Test
    void parquetAndCsvOfTheDemosLogSayTheSame() throws Exception {
        run("demo", "--only-files", "--to", "d");
        StringBuilder text = new StringBuilder(CALIBRATION);
        for (int i = 0; i < 8; i++) {
            text.append(
                    i == 5
                            ? "  \"p05\":\n    pad: \"left strip\"\n    not fitted: \"dead\"\n"
                            : TAXEL.formatted("p0" + i));
        }
        Files.writeString(folder.resolve("d/calibration.yaml"), text);
        String log = "d/logs/invented-calibration.csv.gz";
        assertThat(run("decode", "d", "--log", log, "--to", "f.csv")).isEqualTo(Exit.YES.code());
        assertThat(run("decode", "d", "--log", log, "--to", "f.parquet")).isEqualTo(Exit.YES.code());

        String parquet = "'" + folder.resolve("f.parquet") + "'";
        String csv = "read_csv('" + folder.resolve("f.csv") + "', sample_size = -1)";
        List<List<Object>> count =
                query("SELECT count(*), count(p00_N), count(p05_N), max(\"left strip_touched\") FROM " + parquet);
        assertThat(count.get(0).subList(1, 4)).isEqualTo(List.of(count.get(0).get(0), "0", "1"));
        assertThat(Long.parseLong(String.valueOf(count.get(0).get(0)))).isGreaterThan(13_000);
        // A column without any value is one of numbers all the same.
        assertThat(query("SELECT typeof(p05_N), typeof(p00_sd_N), typeof(\"left strip_slip\") FROM " + parquet
                        + " LIMIT 1"))
                .isEqualTo(List.of(List.of("DOUBLE", "DOUBLE", "BIGINT")));
        String same = "SELECT * EXCLUDE (p05_N, p05_sd_N) FROM ";
        assertThat(query(same + csv + " EXCEPT ALL " + same + parquet)).isEmpty();
        assertThat(query(same + parquet + " EXCEPT ALL " + same + csv)).isEmpty();
        try (Stream<Path> left = Files.list(folder)) {
            assertThat(left.map(p -> String.valueOf(p.getFileName())))
                    .containsExactlyInAnyOrder("d", "f.csv", "f.parquet");
        }
    }
}
