package gripwright.files;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;

/** Writes Parquet; found by {@link java.util.ServiceLoader} if the module {@code tables} is there. */
public interface ParquetWriter {
    /** Writes a file that is not there yet. */
    void write(DataTable table, Path file) throws IOException;

    /**
     * Turns CSV with a line of names, and lines that begin with # before it, into a file that is not there yet.
     *
     * @param columns all of them; empty to find their kinds by looking at every row
     */
    void convert(Path csv, Path file, List<DataTable.Column> columns) throws IOException;
}
