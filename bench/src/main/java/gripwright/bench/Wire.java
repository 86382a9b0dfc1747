package gripwright.bench;

import gripwright.math.Vec3;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Map;

/** Compact JSON for the browser: no blanks, numbers with as many decimals as can be seen. */
final class Wire {
    private final StringBuilder out = new StringBuilder();
    private boolean first = true;

    /** An object of these keys and values, in their order: texts, numbers, truth values, lists, maps, {@link Raw}. */
    static String object(Object... keysAndValues) {
        Wire wire = new Wire();
        wire.out.append('{');
        for (int i = 0; i < keysAndValues.length; i += 2) {
            wire.comma().text(String.valueOf(keysAndValues[i]));
            wire.out.append(':');
            wire.value(keysAndValues[i + 1]);
        }
        return wire.out.append('}').toString();
    }

    /** JSON that is already written. */
    record Raw(String json) {}

    static Raw raw(Object... keysAndValues) {
        return new Raw(object(keysAndValues));
    }

    /** A number rounded to so many decimals. */
    static Raw number(double value, int decimals) {
        return new Raw(text(value, decimals));
    }

    /** Rounded to 0.01 mm [mm]. */
    static List<Raw> millimetres(Vec3 v) {
        return List.of(number(1e3 * v.x(), 2), number(1e3 * v.y(), 2), number(1e3 * v.z(), 2));
    }

    static List<Raw> vector(Vec3 v, int decimals) {
        return List.of(number(v.x(), decimals), number(v.y(), decimals), number(v.z(), decimals));
    }

    private static String text(double value, int decimals) {
        if (!Double.isFinite(value)) {
            return "null";
        }
        BigDecimal d = BigDecimal.valueOf(value)
                .setScale(decimals, RoundingMode.HALF_EVEN)
                .stripTrailingZeros();
        return d.signum() == 0 ? "0" : d.toPlainString();
    }

    private Wire comma() {
        if (!first) {
            out.append(',');
        }
        first = false;
        return this;
    }

    private void value(Object value) {
        if (value instanceof Raw raw) {
            out.append(raw.json);
        } else if (value instanceof Boolean || value instanceof Integer || value instanceof Long) {
            out.append(value);
        } else if (value instanceof Double number) {
            out.append(text(number, 6));
        } else if (value instanceof List<?> list) {
            String between = "[";
            for (Object item : list) {
                out.append(between);
                value(item);
                between = ",";
            }
            out.append(list.isEmpty() ? "[]" : "]");
        } else if (value instanceof Map<?, ?> map) {
            String between = "{";
            for (Map.Entry<?, ?> entry : map.entrySet()) {
                out.append(between);
                text(String.valueOf(entry.getKey()));
                out.append(':');
                value(entry.getValue());
                between = ",";
            }
            out.append(map.isEmpty() ? "{}" : "}");
        } else {
            text(String.valueOf(value));
        }
    }

    private void text(String text) {
        out.append('"');
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c == '"' || c == '\\') {
                out.append('\\').append(c);
            } else if (c < ' ') {
                out.append("\\u00").append(Character.forDigit(c >> 4 & 15, 16)).append(Character.forDigit(c & 15, 16));
            } else {
                out.append(c);
            }
        }
        out.append('"');
    }
}
