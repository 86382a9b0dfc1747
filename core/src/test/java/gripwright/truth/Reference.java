package gripwright.truth;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.ObjectMapper;

/** Tables of numbers from outside, under src/test/resources/reference. */
public final class Reference {
    private Reference() {}

    /** A row of a table with the columns id, quantity, inputs, expected, unit, rel_tol. */
    public record Row(String id, String quantity, Map<String, String> inputs, double expected, String unit) {
        /** An input as a number, in the table's unit. */
        public double input(String name) {
            return Double.parseDouble(
                    Objects.requireNonNull(inputs.get(name), "row " + id + " has no input " + name + ": " + inputs));
        }

        /** All inputs, in the order of their names. */
        public String inputsText() {
            return new TreeMap<>(inputs)
                    .entrySet().stream()
                            .filter(e -> !e.getKey().isBlank())
                            .map(e -> e.getValue().isEmpty() ? e.getKey() : e.getKey() + " = " + e.getValue())
                            .collect(Collectors.joining("; "));
        }

        @Override
        public String toString() {
            return id + " " + quantity;
        }
    }

    public static List<Row> rows(String path) {
        return text(path)
                .lines()
                .filter(line -> !line.startsWith("#") && !line.isBlank())
                .skip(1)
                .map(Reference::row)
                .toList();
    }

    private static Row row(String line) {
        String[] cells = line.split(",", -1);
        Map<String, String> inputs = new HashMap<>();
        for (String input : cells[2].split(";", -1)) {
            String[] pair = input.split("=", 2);
            inputs.put(pair[0].strip(), pair.length == 2 ? pair[1].strip() : "");
        }
        return new Row(cells[0], cells[1], inputs, number(cells[3]), cells[4]);
    }

    /** Yes and no count as 1 and 0. */
    private static double number(String cell) {
        return switch (cell) {
            case "true" -> 1;
            case "false" -> 0;
            default -> Double.parseDouble(cell);
        };
    }

    public static JsonNode json(String path) {
        return new ObjectMapper().readTree(text(path));
    }

    public static Stream<JsonNode> elements(JsonNode array) {
        return Stream.iterate(0, i -> i < array.size(), i -> i + 1).map(array::get);
    }

    private static String text(String path) {
        try (InputStream in = Objects.requireNonNull(
                Reference.class.getResourceAsStream("/reference/" + path), "no reference " + path)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
