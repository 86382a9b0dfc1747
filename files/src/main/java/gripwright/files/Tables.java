package gripwright.files;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import de.siegmar.fastcsv.writer.QuoteStrategies;
import java.io.BufferedWriter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.Optional;
import java.util.ServiceLoader;
import org.jspecify.annotations.Nullable;

/** Tables as files for other programs: CSV always, Parquet if the module for it is there. */
public final class Tables {
    /** What to do about Parquet that cannot be written. */
    public static final String NO_PARQUET =
            "Parquet needs a module that is not there; './gripwright with-tables' fetches"
                    + " and builds it once (DuckDB, 77 MB), or ask for FILE.csv";

    private Tables() {}

    /** True if {@link #write} can write Parquet. */
    public static boolean parquet() {
        return parquetWriter().isPresent();
    }

    private static Optional<ParquetWriter> parquetWriter() {
        return ServiceLoader.load(ParquetWriter.class).findFirst();
    }

    /** What speaks against a table of that name, before anything is computed for it. */
    public static Optional<String> fault(Path file) {
        return switch (ending(file)) {
            case "csv" -> Optional.empty();
            case "parquet" -> parquet() ? Optional.empty() : Optional.of(file + ": " + NO_PARQUET);
            default -> Optional.of(file + ": a table is FILE.csv or FILE.parquet");
        };
    }

    private static String ending(Path file) {
        String name = String.valueOf(file.getFileName());
        return name.substring(name.lastIndexOf('.') + 1);
    }

    /**
     * Writes the whole table or leaves the old file as it is; makes missing folders.
     *
     * @param file {@code NAME.csv} or {@code NAME.parquet}
     * @throws IOException with what to do, if there is a {@link #fault} or the file cannot be written
     */
    public static void write(DataTable table, Path file) throws IOException {
        Optional<String> fault = fault(file);
        if (fault.isPresent()) {
            throw new IOException(fault.get());
        }
        whole(file, beside -> {
            if (ending(file).equals("csv")) {
                csv(table, beside);
            } else {
                parquet(NO_PARQUET).write(table, beside);
            }
        });
    }

    /**
     * Turns CSV that is there already, such as a log, into Parquet; kinds of columns are found by looking at every row.
     *
     * @throws IOException with what to do, if the module is not there or a file cannot be read or written
     */
    public static void parquetOfCsv(Path csv, Path file) throws IOException {
        parquetOfCsv(csv, file, List.of());
    }

    /** The same with columns of known kinds, so that one without any value does not become one of texts. */
    public static void parquetOfCsv(Path csv, Path file, List<DataTable.Column> columns) throws IOException {
        whole(file, beside -> parquet(file + ": " + NO_PARQUET).convert(csv, beside, columns));
    }

    private static ParquetWriter parquet(String otherwise) throws IOException {
        return parquetWriter().orElseThrow(() -> new IOException(otherwise));
    }

    private interface Writing {
        void to(Path beside) throws IOException;
    }

    /** The whole new file or the whole old one. */
    private static void whole(Path file, Writing writing) throws IOException {
        Path target = file.toAbsolutePath();
        Path folder = target.getParent();
        if (folder != null) {
            Files.createDirectories(folder);
        }
        Path beside = target.resolveSibling("." + target.getFileName() + ".part");
        Files.deleteIfExists(beside);
        try {
            writing.to(beside);
            Files.move(beside, target, StandardCopyOption.REPLACE_EXISTING);
        } finally {
            Files.deleteIfExists(beside);
        }
    }

    /**
     * The same as content, for a download.
     *
     * @param ending {@code csv} or {@code parquet}
     */
    public static byte[] bytes(DataTable table, String ending) throws IOException {
        Path folder = Files.createTempDirectory("gripwright-table");
        Path file = folder.resolve("table." + ending);
        try {
            write(table, file);
            return Files.readAllBytes(file);
        } finally {
            Files.deleteIfExists(file);
            Files.delete(folder);
        }
    }

    /** No value is an empty field, an empty text a quoted one. */
    private static void csv(DataTable table, Path file) throws IOException {
        try (BufferedWriter to = Files.newBufferedWriter(file);
                CsvWriter csv = CsvWriter.builder()
                        .lineDelimiter(LineDelimiter.LF)
                        .quoteStrategy(QuoteStrategies.EMPTY)
                        .build(to)) {
            csv.writeRecord(table.columns().stream().map(DataTable.Column::name).toArray(String[]::new));
            for (List<@Nullable Object> row : table.rows()) {
                @Nullable String[] fields = new @Nullable String[row.size()];
                for (int i = 0; i < fields.length; i++) {
                    Object value = row.get(i);
                    fields[i] = value == null ? null : value.toString();
                }
                csv.writeRecord(fields);
            }
        }
    }
}
