package gripwright.files.json;

import gripwright.math.Rotation;
import gripwright.math.Vec3;
import java.io.StringWriter;
import java.util.List;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import tools.jackson.core.JsonGenerator;
import tools.jackson.core.ObjectWriteContext;
import tools.jackson.core.PrettyPrinter;
import tools.jackson.core.StreamWriteFeature;
import tools.jackson.core.json.JsonFactory;

/**
 * Writes one JSON document. Numbers are the shortest text that reads back as the same double, whatever the Java version
 * (the JDK's own text changed in 19); a number that is not finite becomes null, which the schemas allow where it can
 * happen.
 */
final class JsonText {
    private static final JsonFactory FACTORY = JsonFactory.builder()
            .enable(StreamWriteFeature.USE_FAST_DOUBLE_WRITER)
            .build();

    private final JsonGenerator to;

    private JsonText(JsonGenerator to) {
        this.to = to;
    }

    /** The document whose outer object {@code body} fills, with a line feed at its end. */
    static String of(Consumer<JsonText> body) {
        StringWriter text = new StringWriter();
        try (JsonGenerator to = FACTORY.createGenerator(new Layout(), text)) {
            to.writeStartObject();
            body.accept(new JsonText(to));
            to.writeEndObject();
        }
        return text.append('\n').toString();
    }

    JsonText text(String name, String value) {
        to.writeStringProperty(name, value);
        return this;
    }

    JsonText truth(String name, boolean value) {
        to.writeBooleanProperty(name, value);
        return this;
    }

    JsonText whole(String name, long value) {
        to.writeNumberProperty(name, value);
        return this;
    }

    JsonText number(String name, double value) {
        to.writeName(name);
        return number(value);
    }

    /** An element of an array. */
    JsonText number(double value) {
        if (Double.isFinite(value)) {
            to.writeNumber(value == 0 ? 0.0 : value); // no "-0.0": it says nothing and reads like a fault
        } else {
            to.writeNull();
        }
        return this;
    }

    JsonText none(String name) {
        to.writeNullProperty(name);
        return this;
    }

    JsonText vector(String name, Vec3 v) {
        return numbers(name, v.x(), v.y(), v.z());
    }

    JsonText numbers(String name, double... values) {
        to.writeArrayPropertyStart(name);
        for (double value : values) {
            number(value);
        }
        to.writeEndArray();
        return this;
    }

    /** Row by row; the columns are the body's axes. */
    JsonText matrix(String name, Rotation r) {
        to.writeArrayPropertyStart(name);
        double[] m = r.toArray();
        for (int row = 0; row < 3; row++) {
            to.writeStartArray();
            number(m[3 * row]).number(m[3 * row + 1]).number(m[3 * row + 2]);
            to.writeEndArray();
        }
        to.writeEndArray();
        return this;
    }

    JsonText texts(String name, List<String> values) {
        to.writeArrayPropertyStart(name);
        values.forEach(to::writeString);
        to.writeEndArray();
        return this;
    }

    JsonText object(String name, Consumer<JsonText> body) {
        to.writeObjectPropertyStart(name);
        body.accept(this);
        to.writeEndObject();
        return this;
    }

    /** An array of objects, one per item. */
    <T> JsonText objects(String name, List<T> items, BiConsumer<JsonText, T> body) {
        to.writeArrayPropertyStart(name);
        for (T item : items) {
            object(() -> body.accept(this, item));
        }
        to.writeEndArray();
        return this;
    }

    /** An array whose elements {@code body} writes with {@link #object(Runnable)}, {@link #number(double)} or null. */
    JsonText array(String name, Runnable body) {
        to.writeArrayPropertyStart(name);
        body.run();
        to.writeEndArray();
        return this;
    }

    /** An object as an element of an array. */
    void object(Runnable body) {
        to.writeStartObject();
        body.run();
        to.writeEndObject();
    }

    /** Null as an element of an array. */
    void none() {
        to.writeNull();
    }

    /** Outer properties and the elements of outer lists each on a line of their own, so that two results can be diffed. */
    private static final class Layout extends ObjectWriteContext.Base implements PrettyPrinter {
        private static final int DEEPEST_LINE = 2;

        private int depth;

        @Override
        public PrettyPrinter getPrettyPrinter() {
            return this;
        }

        @Override
        public boolean hasPrettyPrinter() {
            return true;
        }

        @Override
        public void writeRootValueSeparator(JsonGenerator to) {
            to.writeRaw('\n');
        }

        @Override
        public void writeStartObject(JsonGenerator to) {
            to.writeRaw('{');
            depth++;
        }

        @Override
        public void writeEndObject(JsonGenerator to, int entries) {
            depth--;
            end(to, entries);
            to.writeRaw('}');
        }

        @Override
        public void writeStartArray(JsonGenerator to) {
            to.writeRaw('[');
            depth++;
        }

        @Override
        public void writeEndArray(JsonGenerator to, int values) {
            depth--;
            end(to, values);
            to.writeRaw(']');
        }

        @Override
        public void writeObjectEntrySeparator(JsonGenerator to) {
            separate(to);
        }

        @Override
        public void writeArrayValueSeparator(JsonGenerator to) {
            separate(to);
        }

        @Override
        public void writeObjectNameValueSeparator(JsonGenerator to) {
            to.writeRaw(": ");
        }

        @Override
        public void beforeArrayValues(JsonGenerator to) {
            line(to, depth);
        }

        @Override
        public void beforeObjectEntries(JsonGenerator to) {
            line(to, depth);
        }

        private void separate(JsonGenerator to) {
            to.writeRaw(',');
            if (depth > DEEPEST_LINE) {
                to.writeRaw(' ');
            }
            line(to, depth);
        }

        private void end(JsonGenerator to, int entries) {
            if (entries > 0 && depth < DEEPEST_LINE) {
                line(to, depth);
            }
        }

        private static void line(JsonGenerator to, int depth) {
            if (depth <= DEEPEST_LINE) {
                to.writeRaw('\n');
                to.writeRaw("  ".repeat(depth));
            }
        }
    }
}
