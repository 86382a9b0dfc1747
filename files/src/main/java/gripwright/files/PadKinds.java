package gripwright.files;

import gripwright.units.Measure;
import gripwright.units.QuantityText;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Kinds of values that several sections of pads.yaml share. */
final class PadKinds {
    private PadKinds() {}

    static Key<Double> length(String name, String says) {
        return Key.required(name, new Quantities.Value(Range.above0(Measure.LENGTH)), says);
    }

    static Key<Integer> whole(String name, int least, int most, String otherwise, String why, String says) {
        return Key.byDefault(name, new Whole(least, most), otherwise, why, says);
    }

    /** A whole number. */
    record Whole(int least, int most) implements Kind<Integer> {
        @Override
        public @Nullable Integer read(Tree tree, String path, Reading reading) {
            Double value = new Quantities.Value(Range.within(Measure.NUMBER, least, most)).read(tree, path, reading);
            if (value != null && value != Math.rint(value)) {
                reading.fault(tree.place(), Kind.lastOf(path) + " is " + tree.words(), words());
                return null;
            }
            return value == null ? null : (int) Math.round(value);
        }

        @Override
        public Map<String, Object> schema(Map<String, Object> definitions) {
            Map<String, Object> schema = Json.object("type", "integer");
            schema.put("minimum", least);
            schema.put("maximum", most);
            return schema;
        }

        @Override
        public String words() {
            return "a whole number from " + least + " to " + most;
        }
    }

    static String mm(double metres) {
        return QuantityText.format(metres, Measure.LENGTH);
    }
}
