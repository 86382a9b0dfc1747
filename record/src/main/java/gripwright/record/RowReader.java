package gripwright.record;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;

/** Tells what a line is: a reading, the names of the columns, or neither. */
final class RowReader {
    private static final Pattern NAME = Pattern.compile("\\p{L}[\\p{L}\\p{N}_ .\\[\\]()/%-]{0,79}");
    private static final int CLIP = 40;
    private static final double EXACT = 9e15; // whole numbers below are exact

    private final CharsetDecoder decoder = StandardCharsets.UTF_8
            .newDecoder()
            .onMalformedInput(CodingErrorAction.REPORT)
            .onUnmappableCharacter(CodingErrorAction.REPORT);

    /** Fields in the order of the columns. */
    record Row(String text, double[] values) {}

    /** The line's text; refuses what is no text. */
    String text(byte[] bytes, int length) throws LineFault {
        boolean ascii = true;
        for (int i = 0; i < length; i++) {
            byte b = bytes[i];
            ascii &= b >= 0;
            if (b >= 0 && b < ' ' && b != '\t') {
                throw new LineFault("a control character (code " + b + ") at byte " + (i + 1));
            }
        }
        if (ascii) {
            return new String(bytes, 0, length, StandardCharsets.ISO_8859_1);
        }
        ByteBuffer in = ByteBuffer.wrap(bytes, 0, length);
        try {
            return decoder.decode(in).toString();
        } catch (CharacterCodingException e) {
            throw new LineFault("not UTF-8 at byte " + (in.position() + 1));
        }
    }

    static boolean isJson(String text) {
        return text.startsWith("{");
    }

    /** The names a line gives, none if it does not look like a line of names. */
    static List<String> names(String text) throws LineFault {
        if (isJson(text)) {
            return List.copyOf(JsonLine.read(text).keySet());
        }
        List<String> names = fields(text).stream().map(String::strip).toList();
        boolean named = names.stream().allMatch(n -> NAME.matcher(n).matches() && !Numbers.valid(n));
        return named ? names : List.of();
    }

    static Row row(String text, Columns columns) throws LineFault {
        return isJson(text) ? ofJson(text, columns) : ofCsv(text, columns);
    }

    private static Row ofCsv(String text, Columns columns) throws LineFault {
        List<String> fields = fields(text);
        if (fields.size() != columns.count()) {
            throw new LineFault(
                    fields.size() + (fields.size() == 1 ? " field" : " fields") + "; expected " + columns.count());
        }
        double[] values = new double[fields.size()];
        for (int i = 0; i < values.length; i++) {
            values[i] = value(fields.get(i), i, columns);
        }
        return new Row(text, values);
    }

    private static Row ofJson(String text, Columns columns) throws LineFault {
        Map<String, String> fields = JsonLine.read(text);
        double[] values = new double[columns.count()];
        StringBuilder line = new StringBuilder(text.length());
        for (int i = 0; i < values.length; i++) {
            String name = columns.names().get(i);
            String field = fields.remove(name);
            if (field == null) {
                throw new LineFault("no '" + name + "'");
            }
            values[i] = value(field, i, columns);
            line.append(i == 0 ? "" : ",").append(LogFormat.quoted(field));
        }
        if (!fields.isEmpty()) {
            throw new LineFault("'" + clip(fields.keySet().iterator().next()) + "' is no column of this log");
        }
        return new Row(line.toString(), values);
    }

    private static double value(String field, int column, Columns columns) throws LineFault {
        if (!columns.isNumber(column)) {
            return Double.NaN;
        }
        if (!Numbers.valid(field)) {
            throw new LineFault(columns.names().get(column) + " is '" + clip(field) + "'; expected a number");
        }
        double value = Numbers.value(field);
        if (column == columns.sequence() && !(value == Math.rint(value) && Math.abs(value) < EXACT)) {
            throw new LineFault(columns.names().get(column) + " is '" + clip(field) + "'; expected a whole number");
        }
        return value;
    }

    /** Fields of one line of CSV. A quote never reaches over the end of its line: one bad line costs one line. */
    static List<String> fields(String text) throws LineFault {
        if (text.indexOf('"') < 0) {
            List<String> fields = new ArrayList<>();
            int from = 0;
            for (int comma = text.indexOf(','); comma >= 0; comma = text.indexOf(',', from)) {
                fields.add(text.substring(from, comma));
                from = comma + 1;
            }
            fields.add(text.substring(from));
            return fields;
        }
        if (text.chars().filter(c -> c == '"').count() % 2 != 0) {
            throw new LineFault("a quote that is not closed");
        }
        try (CsvReader<CsvRecord> csv = CsvReader.builder().ofCsvRecord(text)) {
            return csv.iterator().next().getFields();
        } catch (CsvParseException | java.io.IOException e) {
            throw new LineFault("no CSV: " + e.getMessage());
        }
    }

    static String clip(String text) {
        return text.length() <= CLIP ? text : text.substring(0, CLIP) + "...";
    }
}
