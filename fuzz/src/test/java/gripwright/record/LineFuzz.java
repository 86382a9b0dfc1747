package gripwright.record;

import com.code_intelligence.jazzer.junit.FuzzTest;
import gripwright.signal.Layout;
import java.util.List;

/** Whatever bytes a source sends, a line is a reading with its number of fields on one line, or refused with a reason. */
class LineFuzz {
    private static final Columns COLUMNS = new Columns(List.of("seq", "t", "p00", "note"), Layout.UNKNOWN);

    @FuzzTest
    void anyLineIsAReadingOrRefused(byte[] bytes) throws LineFault {
        try {
            String text = new RowReader().text(bytes, bytes.length);
            RowReader.names(text);
            String fields = RowReader.row(text, COLUMNS).text();
            if (RowReader.fields(fields).size() != COLUMNS.count()
                    || fields.lines().count() > 1) {
                throw new AssertionError("the log would get " + fields);
            }
        } catch (LineFault refused) {
            if (refused.getMessage() == null || refused.getMessage().isBlank()) {
                throw new AssertionError("refused without a reason", refused);
            }
        }
    }
}
