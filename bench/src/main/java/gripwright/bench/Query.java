package gripwright.bench;

import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Names and values of a query or a form body. */
record Query(Map<String, String> values) {
    /** @throws Refusal if it is not well formed */
    static Query of(@Nullable String raw) {
        Map<String, String> values = new LinkedHashMap<>();
        if (raw != null && !raw.isEmpty()) {
            for (String pair : raw.split("&", -1)) {
                int at = pair.indexOf('=');
                values.put(
                        decoded(at < 0 ? pair : pair.substring(0, at)), at < 0 ? "" : decoded(pair.substring(at + 1)));
            }
        }
        return new Query(values);
    }

    private static String decoded(String text) {
        try {
            return URLDecoder.decode(text, StandardCharsets.UTF_8);
        } catch (IllegalArgumentException e) {
            throw new Refusal(400, "'" + text + "' is not a well formed query");
        }
    }

    String text(String name) {
        String value = values.get(name);
        if (value == null) {
            throw new Refusal(400, "'" + name + "' is missing in the query");
        }
        return value;
    }

    String text(String name, String otherwise) {
        return values.getOrDefault(name, otherwise);
    }

    double number(String name, double otherwise) {
        String value = values.get(name);
        if (value == null) {
            return otherwise;
        }
        try {
            double number = Double.parseDouble(value);
            if (Double.isFinite(number)) {
                return number;
            }
        } catch (NumberFormatException e) {
            // said below
        }
        throw new Refusal(400, name + " is '" + value + "'; expected a number");
    }

    /** @throws Refusal outside the range */
    double number(String name, double otherwise, double least, double greatest, String unit) {
        double value = number(name, otherwise);
        if (value < least || value > greatest) {
            throw new Refusal(400, name + " is " + value + " " + unit + "; expected " + least + " to " + greatest);
        }
        return value;
    }

    int whole(String name, int otherwise, int least, int greatest) {
        double value = number(name, otherwise);
        if (value != Math.rint(value) || value < least || value > greatest) {
            throw new Refusal(
                    400, name + " is " + values.get(name) + "; expected a whole number, " + least + " to " + greatest);
        }
        return (int) value;
    }
}
