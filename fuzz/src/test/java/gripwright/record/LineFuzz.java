package gripwright.record;

import com.code_intelligence.jazzer.api.FuzzedDataProvider;
import com.code_intelligence.jazzer.junit.FuzzTest;
import java.util.List;

/** Whatever bytes a source sends, a line is a reading, names, or refused in words. */
class LineFuzz {
    private static final Columns COLUMNS = new Columns(List.of("seq", "t", "p00", "F"), Layout.UNKNOWN);

    @FuzzTest
    void aLineIsAReadingOrRefused(FuzzedDataProvider data) {
        byte[] bytes = data.consumeRemainingAsBytes();
        try {
            String text = new RowReader().text(bytes, bytes.length);
            RowReader.names(text);
            RowReader.Row row = RowReader.row(text, COLUMNS);
            if (RowReader.fields(row.text()).size() != COLUMNS.count()) {
                throw new IllegalStateException("the log would get another number of fields: " + row.text());
            }
        } catch (LineFault expected) {
            return;
        }
    }
}
