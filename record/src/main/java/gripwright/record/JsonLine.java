package gripwright.record;

import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import tools.jackson.core.JacksonException;
import tools.jackson.core.JsonParser;
import tools.jackson.core.JsonToken;
import tools.jackson.core.ObjectReadContext;
import tools.jackson.core.json.JsonFactory;
import tools.jackson.core.json.JsonReadFeature;

/** One reading as a JSON object on one line; a list under a name, {@code "p": [1, 2]}, counts as p00, p01 and so on. */
final class JsonLine {
    private static final JsonFactory FACTORY = JsonFactory.builder()
            .enable(JsonReadFeature.ALLOW_NON_NUMERIC_NUMBERS)
            .build();

    private JsonLine() {}

    /** Fields by name in their order, numbers as they were written, null as empty text. */
    static Map<String, String> read(String line) throws LineFault {
        Map<String, String> fields = new LinkedHashMap<>();
        try (JsonParser json = FACTORY.createParser(ObjectReadContext.empty(), line)) {
            json.nextToken();
            while (json.nextToken() != JsonToken.END_OBJECT) {
                String name = json.currentName();
                if (json.nextToken() == JsonToken.START_ARRAY) {
                    int index = 0;
                    while (json.nextToken() != JsonToken.END_ARRAY) {
                        put(fields, name + String.format(Locale.ROOT, "%02d", index++), json);
                    }
                } else {
                    put(fields, name, json);
                }
            }
            if (json.nextToken() != null) {
                throw new LineFault("something follows the closing brace");
            }
        } catch (JacksonException e) {
            throw new LineFault("no JSON: " + e.getOriginalMessage());
        }
        return fields;
    }

    /** A field of the log is one line of UTF-8, whatever JSON can escape. */
    private static void writable(String text) throws LineFault {
        boolean control = text.chars().anyMatch(c -> c < ' ');
        if (control || !StandardCharsets.UTF_8.newEncoder().canEncode(text)) {
            throw new LineFault("an escaped " + (control ? "control character" : "half of a character")
                    + ", which no line of a log can hold");
        }
    }

    private static void put(Map<String, String> fields, String name, JsonParser json) throws LineFault {
        JsonToken token = json.currentToken();
        if (token == null || !token.isScalarValue()) {
            throw new LineFault("'" + name + "' is no number or text");
        }
        String text = token == JsonToken.VALUE_NULL ? "" : json.getString();
        writable(name);
        writable(text);
        if (fields.put(name, text) != null) {
            throw new LineFault("'" + name + "' stands there twice");
        }
    }
}
