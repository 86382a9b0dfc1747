package gripwright.cli;

import gripwright.files.DataTable;
import gripwright.files.Tables;
import java.io.IOException;
import java.nio.file.FileSystemException;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;

/** Tables for other programs that a command writes. */
final class TableFile {
    private TableFile() {}

    /** Refuses what could not be written, before anything is computed for it; nothing asked, nothing checked. */
    static void check(@Nullable Path file) {
        if (file != null) {
            Tables.fault(file).ifPresent(fault -> {
                throw new CommandFailure(Exit.USAGE, fault);
            });
        }
    }

    static void write(Surroundings at, Path file, DataTable table) {
        try {
            Tables.write(table, at.path(file));
        } catch (IOException e) {
            String reason = e instanceof FileSystemException ? ResultFile.reason(e) : String.valueOf(e.getMessage());
            throw new CommandFailure(Exit.FILES, "cannot write " + file + ": " + reason, e);
        }
        at.out().println("table    written to " + file);
    }
}
