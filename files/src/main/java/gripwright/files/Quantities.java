package gripwright.files;

import gripwright.math.Vec3;
import gripwright.model.Scatter;
import gripwright.model.Spread;
import gripwright.units.Measure;
import gripwright.units.QuantityText;
import gripwright.units.UnitFault;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/** Kinds of values that are numbers with units. */
final class Quantities {
    private Quantities() {}

    /** One value [SI]. */
    record Value(Range range) implements Kind<Double> {
        @Override
        public @Nullable Double read(Tree tree, String path, Reading reading) {
            return text(tree, path, reading, words(), t -> QuantityText.value(t, range.measure()), v -> v, range);
        }

        @Override
        public Map<String, Object> schema(Map<String, Object> definitions) {
            return pattern(range, "");
        }

        @Override
        public String words() {
            return range.rule() + ", such as " + range.measure().example();
        }
    }

    /** A value that may carry one standard deviation. */
    record WithSpread(Range range) implements Kind<Spread> {
        @Override
        public @Nullable Spread read(Tree tree, String path, Reading reading) {
            return text(
                    tree,
                    path,
                    reading,
                    words(),
                    t -> {
                        QuantityText.Measured m = QuantityText.measured(t, range.measure());
                        return new Spread(m.value(), m.deviation());
                    },
                    Spread::mean,
                    range);
        }

        @Override
        public Map<String, Object> schema(Map<String, Object> definitions) {
            return pattern(range, "( *(\\+-|\u00b1).+)?");
        }

        @Override
        public String words() {
            String example = range.measure().example();
            return range.rule() + ", such as " + example + " or " + example + " +- "
                    + (range.measure().usualUnit().isEmpty()
                            ? "0.1"
                            : "2 " + range.measure().usualUnit());
        }
    }

    /** A scatter about 0: {@code 12 mm sd} or {@code 12 mm uniform}. */
    record ScatterAbout0(Measure measure) implements Kind<Scatter> {
        @Override
        public @Nullable Scatter read(Tree tree, String path, Reading reading) {
            return text(
                    tree,
                    path,
                    reading,
                    words(),
                    t -> {
                        QuantityText.Scattering s = QuantityText.scattering(t, measure);
                        return new Scatter(s.uniform() ? Scatter.Law.UNIFORM : Scatter.Law.NORMAL, s.size());
                    },
                    Scatter::size,
                    Range.from0(measure));
        }

        @Override
        public Map<String, Object> schema(Map<String, Object> definitions) {
            return Json.object(
                    "pattern", "^ *" + Range.from0(measure).pattern().replace(".*", "") + ".* (sd|uniform)$");
        }

        @Override
        public String words() {
            return measure.words() + " with its law: " + measure.example() + " sd (one standard deviation) or "
                    + measure.example() + " uniform (half width)";
        }
    }

    /** A list of exactly so many values [SI]. */
    record Several(int count, Range range, String meaning) implements Kind<List<Double>> {
        @Override
        public @Nullable List<Double> read(Tree tree, String path, Reading reading) {
            if (tree instanceof Tree.Text written
                    && !written.asWritten()
                    && written.value().startsWith("[")) {
                return read(listed(written), path, reading);
            }
            if (!(tree instanceof Tree.Items items) || items.items().size() != count) {
                String found = tree instanceof Tree.Items items
                        ? "has " + Words.entries(items.items().size())
                        : "is " + tree.words();
                reading.fault(tree.place(), Kind.lastOf(path) + " " + found, words());
                return null;
            }
            Value one = new Value(range);
            List<Double> values = new ArrayList<>();
            for (int i = 0; i < count; i++) {
                String entryPath = path + "[" + i + "]";
                reading.place(entryPath, items.items().get(i).place());
                Double value = one.read(items.items().get(i), entryPath, reading);
                if (value != null) {
                    values.add(value);
                }
            }
            return values.size() == count ? values : null;
        }

        /** A default is a text such as {@code [0 mm, 0 mm]}. */
        private static Tree listed(Tree.Text text) {
            String inside = text.value().substring(1, text.value().length() - 1);
            List<Tree> items = new ArrayList<>();
            for (String item : inside.split(",", -1)) {
                items.add(new Tree.Text(item.strip(), text.place(), false));
            }
            return new Tree.Items(items, text.place());
        }

        @Override
        public Map<String, Object> schema(Map<String, Object> definitions) {
            Map<String, Object> schema = Json.object("type", "array");
            schema.put("items", pattern(range, ""));
            schema.put("minItems", count);
            schema.put("maxItems", count);
            return schema;
        }

        @Override
        public String words() {
            String example = range.measure().example();
            return "[" + String.join(", ", java.util.Collections.nCopies(count, example)) + "]: " + meaning
                    + (range.least() >= 0 ? ", each " + range.rule() : "");
        }
    }

    static Vec3 vec(List<Double> three) {
        return new Vec3(three.get(0), three.get(1), three.get(2));
    }

    /** Reads a text by {@code parse}; faults of units point at their character. */
    static <T> @Nullable T text(
            Tree tree,
            String path,
            Reading reading,
            String expected,
            Function<String, T> parse,
            Function<T, Double> main,
            Range range) {
        if (!(tree instanceof Tree.Text text)) {
            reading.fault(tree.place(), Kind.lastOf(path) + " is " + tree.words(), expected);
            return null;
        }
        try {
            T value = parse.apply(text.value());
            if (range.holds(main.apply(value))) {
                return value;
            }
            reading.fault(tree.place(), Kind.lastOf(path) + " is " + Words.clip(text.value()), range.rule());
        } catch (UnitFault fault) {
            reading.fault(
                    text.asWritten() ? tree.place().shifted(fault.column()) : tree.place(),
                    Kind.lastOf(path) + ": " + fault.getMessage(),
                    fault.expected(),
                    fault.suggestion().orElse(null));
        }
        return null;
    }

    /** Schema of a text that is such a quantity; plain numbers are welcome where there is no unit. */
    static Map<String, Object> pattern(Range range, String tail) {
        Map<String, Object> schema = Json.object("pattern", "^ *" + range.pattern() + tail + " *$");
        if (!range.measure().dimension().equals(Measure.NUMBER.dimension())) {
            schema.put("type", "string");
            return schema;
        }
        // "pattern" only looks at texts and "minimum" only at numbers.
        schema.put("type", List.of("number", "string"));
        if (range.least() > Double.NEGATIVE_INFINITY) {
            schema.put(range.open() ? "exclusiveMinimum" : "minimum", plain(range.least()));
        }
        if (range.greatest() < Double.POSITIVE_INFINITY) {
            schema.put("maximum", plain(range.greatest()));
        }
        return schema;
    }

    private static Number plain(double value) {
        return value == Math.rint(value) ? (Number) Math.round(value) : (Number) value;
    }
}
