package gripwright.files;

import java.io.IOException;
import java.nio.file.Path;

/** Writes Parquet; found by {@link java.util.ServiceLoader} if the module {@code tables} is there. */
public interface ParquetWriter {
    /** Writes a file that is not there yet. */
    void write(DataTable table, Path file) throws IOException;
}
