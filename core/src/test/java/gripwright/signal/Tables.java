package gripwright.signal;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;

/** Tables of numbers under src/test/resources/reference/signal; their sources stand in their first lines. */
final class Tables {
    private Tables() {}

    static List<String[]> rows(String name) {
        try (InputStream in = Tables.class.getResourceAsStream("/reference/signal/" + name + ".csv")) {
            String text = new String(Objects.requireNonNull(in, name).readAllBytes(), StandardCharsets.UTF_8);
            return text.lines()
                    .filter(l -> !l.startsWith("#") && !l.isBlank())
                    .skip(1)
                    .map(l -> l.split(",", -1))
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static double[] column(String name, int column) {
        return rows(name).stream()
                .mapToDouble(r -> Double.parseDouble(r[column]))
                .toArray();
    }

    static double certified(String dataset, String quantity) {
        return row(dataset, quantity)[0];
    }

    static double[] row(String dataset, String quantity) {
        String[] found = rows("strd_certified").stream()
                .filter(r -> r[0].equals(dataset) && r[1].equals(quantity))
                .findFirst()
                .orElseThrow();
        return new double[] {
            Double.parseDouble(found[2]), found[3].isEmpty() ? Double.NaN : Double.parseDouble(found[3])
        };
    }

    /** Digits that agree. */
    static double digits(double value, double expected) {
        return value == expected ? 16 : -Math.log10(Math.abs(value - expected) / Math.abs(expected));
    }
}
