package gripwright.files;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** JSON text from maps, lists, texts, numbers and truth values; keys keep their order. */
final class Json {
    private Json() {}

    /** An object with one key, to which more can be added. */
    static Map<String, Object> object(String key, Object value) {
        Map<String, Object> object = new LinkedHashMap<>();
        object.put(key, value);
        return object;
    }

    static String write(Object value) {
        StringBuilder out = new StringBuilder();
        write(value, "", out);
        return out.append('\n').toString();
    }

    private static void write(Object value, String indent, StringBuilder out) {
        String deeper = indent + "  ";
        if (value instanceof Map<?, ?> map) {
            String comma = "";
            out.append('{');
            for (Map.Entry<?, ?> entry : map.entrySet()) {
                out.append(comma).append('\n').append(deeper);
                text(String.valueOf(entry.getKey()), out);
                out.append(": ");
                write(entry.getValue(), deeper, out);
                comma = ",";
            }
            out.append(map.isEmpty() ? "}" : "\n" + indent + "}");
        } else if (value instanceof List<?> list) {
            String comma = "";
            out.append('[');
            boolean plain = list.stream().noneMatch(e -> e instanceof Map || e instanceof List);
            for (Object element : list) {
                out.append(comma).append(plain ? (comma.isEmpty() ? "" : " ") : "\n" + deeper);
                write(element, deeper, out);
                comma = ",";
            }
            out.append(plain ? "]" : "\n" + indent + "]");
        } else if (value instanceof Number || value instanceof Boolean) {
            out.append(value);
        } else {
            text(String.valueOf(value), out);
        }
    }

    private static void text(String text, StringBuilder out) {
        out.append('"');
        for (char c : text.toCharArray()) {
            if (c == '"' || c == '\\') {
                out.append('\\').append(c);
            } else if (c < ' ') {
                out.append("\\u00").append(Character.forDigit(c >> 4, 16)).append(Character.forDigit(c & 15, 16));
            } else {
                out.append(c);
            }
        }
        out.append('"');
    }
}
