package gripwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Every run of the trials as a table; the module for Parquet is not there in these tests, as for most users. */
class TableOptionTest {
    @TempDir
    @SuppressWarnings("NullAway.Init")
    Path folder;

    @SuppressWarnings("NullAway.Init")
    private Shell shell;

    @BeforeEach
    void project() {
        shell = new Shell(folder);
        shell.run("new", "p");
    }

    @Test
    void everyRunIsARowWhateverTheNumberOfThreads() throws Exception {
        AtomicInteger runs = new AtomicInteger();
        shell.closings.atEachRun = runs::incrementAndGet;
        Shell.Ran ran = shell.run("trials", "p", "--runs", "20", "--threads", "2", "--table", "out/runs.csv");
        assertThat(ran.out()).contains("table    written to out/runs.csv");
        List<String> lines = Files.readAllLines(folder.resolve("out/runs.csv"));
        assertThat(lines.get(0)).startsWith("object,grip,x_m,y_m,turn_rad,").endsWith(",steps,iterations");
        assertThat(lines.size() - 1).isEqualTo(runs.get());
        shell.run("trials", "p", "--runs", "20", "--threads", "1", "--table", "again.csv");
        assertThat(folder.resolve("again.csv")).hasSameTextualContentAs(folder.resolve("out/runs.csv"));
    }

    @Test
    void parquetWithoutItsModuleIsRefusedBeforeAnythingIsComputed() {
        Shell.Ran ran = shell.run("trials", "p", "--runs", "20", "--table", "runs.parquet");
        assertThat(ran.err())
                .contains(
                        "runs.parquet: Parquet needs a module that is not there; './gripwright with-tables' fetches and"
                                + " builds it once (DuckDB, 77 MB), or ask for FILE.csv");
        assertThat(ran.code()).isEqualTo(Exit.USAGE.code());
        assertThat(ran.out()).isEmpty();
        assertThat(shell.run("trials", "p", "--table", "runs.xlsx").err())
                .contains("runs.xlsx: a table is FILE.csv or FILE.parquet");
    }
}
