package gripwright.files;

import gripwright.units.Nearest;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Kinds of values that are words, names, lists and maps. */
final class Kinds {
    private static final int LONGEST_NAME = 60;

    private Kinds() {}

    /** Free text on one line. */
    record Line() implements Kind<String> {
        @Override
        public @Nullable String read(Tree tree, String path, Reading reading) {
            return tree instanceof Tree.Text text && soundName(text, reading)
                    ? text.value()
                    : note(tree, path, reading);
        }

        private @Nullable String note(Tree tree, String path, Reading reading) {
            return tree instanceof Tree.Text ? null : refuse(tree, path, reading);
        }

        @Override
        public Map<String, Object> schema(Map<String, Object> definitions) {
            Map<String, Object> schema = Json.object("type", List.of("string", "number"));
            schema.put("maxLength", LONGEST_NAME);
            return schema;
        }

        @Override
        public String words() {
            return "a text on one line";
        }
    }

    /** One of a few words. */
    record Choice<T>(Map<String, T> meanings) implements Kind<T> {
        /** Of two words, in this order. */
        static <T> Choice<T> of(String first, T firstMeaning, String second, T secondMeaning) {
            Map<String, T> meanings = new LinkedHashMap<>();
            meanings.put(first, firstMeaning);
            meanings.put(second, secondMeaning);
            return new Choice<>(meanings);
        }

        @Override
        public @Nullable T read(Tree tree, String path, Reading reading) {
            if (!(tree instanceof Tree.Text text)) {
                return refuse(tree, path, reading);
            }
            T value = meanings.get(text.value());
            if (value == null) {
                reading.fault(
                        tree.place(),
                        Kind.lastOf(path) + " is " + tree.words(),
                        words(),
                        Nearest.to(text.value(), meanings.keySet()).orElse(null));
            }
            return value;
        }

        @Override
        public Map<String, Object> schema(Map<String, Object> definitions) {
            return Json.object("enum", List.copyOf(meanings.keySet()));
        }

        @Override
        public String words() {
            return "one of " + Words.list(meanings.keySet());
        }
    }

    /** The name of something defined elsewhere. */
    record Name(String family) implements Kind<String> {
        @Override
        public @Nullable String read(Tree tree, String path, Reading reading) {
            if (!(tree instanceof Tree.Text text)) {
                return refuse(tree, path, reading);
            }
            return reading.known(family, text) ? text.value() : null;
        }

        @Override
        public Map<String, Object> schema(Map<String, Object> definitions) {
            return Json.object("type", List.of("string", "number"));
        }

        @Override
        public String words() {
            return "the name of a " + family;
        }
    }

    /** A list. */
    record Many<T>(Kind<T> kind, int least, int most, String of) implements Kind<List<T>> {
        @Override
        public @Nullable List<T> read(Tree tree, String path, Reading reading) {
            if (!(tree instanceof Tree.Items items)) {
                return refuse(tree, path, reading);
            }
            int count = items.items().size();
            if (count < least || count > most) {
                reading.fault(tree.place(), Kind.lastOf(path) + " has " + Words.entries(count), words());
                return null;
            }
            List<T> values = new ArrayList<>();
            for (int i = 0; i < count; i++) {
                String entryPath = path + "[" + i + "]";
                Tree item = items.items().get(i);
                reading.place(entryPath, item.place());
                T value = kind.read(item, entryPath, reading);
                if (value != null) {
                    values.add(value);
                }
            }
            return values.size() == count ? values : null;
        }

        @Override
        public Map<String, Object> schema(Map<String, Object> definitions) {
            Map<String, Object> schema = Json.object("type", "array");
            schema.put("items", kind.schema(definitions));
            schema.put("minItems", least);
            schema.put("maxItems", most);
            return schema;
        }

        @Override
        public String words() {
            return "a list of " + least + " to " + most + " " + of;
        }

        @Override
        public List<Section<?>> sections() {
            return kind.sections();
        }
    }

    /**
     * Named things, in the order of the file.
     *
     * @param family the names become known under this word; null if nothing refers to them
     * @param keyFamily the names must be known under this word; null if they are free
     */
    record Named<T>(
            Kind<T> kind,
            int least,
            int most,
            String of,
            @Nullable String family,
            @Nullable String keyFamily) implements Kind<Map<String, T>> {
        private static final String COPY = "like";

        static <T> Named<T> defining(Kind<T> kind, int least, int most, String of, String family) {
            return new Named<>(kind, least, most, of, family, null);
        }

        static <T> Named<T> per(String keyFamily, Kind<T> kind, String of) {
            return new Named<>(kind, 0, Integer.MAX_VALUE, of, null, keyFamily);
        }

        @Override
        public @Nullable Map<String, T> read(Tree tree, String path, Reading reading) {
            if (!(tree instanceof Tree.Entries entries)) {
                return refuse(tree, path, reading);
            }
            int count = entries.entries().size();
            boolean sound = count >= least && count <= most;
            if (!sound) {
                reading.fault(tree.place(), Kind.lastOf(path) + " has " + Words.entries(count), words());
            }
            Map<String, T> values = new LinkedHashMap<>();
            for (Tree.Entry entry : entries.entries()) {
                T value = entry(entry, entries, path, reading);
                if (value == null) {
                    sound = false;
                } else {
                    values.put(entry.key().value(), value);
                }
            }
            return sound ? values : null;
        }

        private @Nullable T entry(Tree.Entry entry, Tree.Entries all, String path, Reading reading) {
            String name = entry.key().value();
            String entryPath = Kind.pathOf(path, name);
            reading.place(entryPath, entry.value().place());
            boolean known = keyFamily == null ? soundName(entry.key(), reading) : reading.known(keyFamily, entry.key());
            T value;
            if (kind instanceof Section<T> section) {
                Tree body =
                        section.names().contains(COPY) ? copied(entry, all, new ArrayList<>(), reading) : entry.value();
                value = body == null ? null : section.read(body, entry.key(), entryPath, reading);
            } else {
                value = kind.read(entry.value(), entryPath, reading);
            }
            if (family != null) {
                reading.define(family, name, value);
            }
            return known ? value : null;
        }

        /** The block with everything its pattern has and it has not; a key given beside `like` replaces all of it. */
        private static @Nullable Tree copied(Tree.Entry entry, Tree.Entries all, List<String> on, Reading reading) {
            if (!(entry.value() instanceof Tree.Entries own) || own.find(COPY).isEmpty()) {
                return entry.value();
            }
            Tree pattern = own.find(COPY).get().value();
            List<String> others = all.entries().stream()
                    .map(e -> e.key().value())
                    .filter(n -> !n.equals(entry.key().value()))
                    .toList();
            if (!(pattern instanceof Tree.Text name) || !others.contains(name.value())) {
                reading.fault(
                        pattern.place(),
                        "like is " + pattern.words(),
                        "the name of another entry: " + Words.list(others),
                        pattern instanceof Tree.Text t
                                ? Nearest.to(t.value(), others).orElse(null)
                                : null);
                return null;
            }
            on.add(entry.key().value());
            if (on.contains(name.value())) {
                reading.fault(
                        pattern.place(),
                        "like goes round in a circle: " + String.join(", ", on) + ", " + name.value(),
                        "at least one of them in full");
                return null;
            }
            Tree whole = copied(all.find(name.value()).orElseThrow(), all, on, reading);
            if (!(whole instanceof Tree.Entries from)) {
                return null; // said where the pattern itself is read
            }
            List<Tree.Entry> merged = new ArrayList<>(own.entries());
            from.entries().stream()
                    .filter(e -> own.find(e.key().value()).isEmpty())
                    .forEach(merged::add);
            return new Tree.Entries(merged, own.place());
        }

        @Override
        public Map<String, Object> schema(Map<String, Object> definitions) {
            Map<String, Object> schema = Json.object("type", "object");
            schema.put("additionalProperties", kind.schema(definitions));
            schema.put("minProperties", least);
            if (most < Integer.MAX_VALUE) {
                schema.put("maxProperties", most);
            }
            return schema;
        }

        @Override
        public String words() {
            String count = most == Integer.MAX_VALUE
                    ? (least > 0 ? least + " or more" : "any number of")
                    : least + " to " + most;
            return "a block of " + count + " " + of;
        }

        @Override
        public List<Section<?>> sections() {
            return kind.sections();
        }
    }

    /** A single word with a meaning of its own, or else a value of another kind. */
    record WordOr<T>(String word, T meaning, Kind<T> other) implements Kind<T> {
        @Override
        public @Nullable T read(Tree tree, String path, Reading reading) {
            return tree instanceof Tree.Text text && text.value().equals(word)
                    ? meaning
                    : other.read(tree, path, reading);
        }

        @Override
        public Map<String, Object> schema(Map<String, Object> definitions) {
            return Json.object("anyOf", List.of(Json.object("const", word), other.schema(definitions)));
        }

        @Override
        public String words() {
            return word + ", or " + other.words();
        }
    }

    /** A name goes into tables, pictures and file names: one short line without control characters. */
    static boolean soundName(Tree.Text text, Reading reading) {
        String name = text.value();
        boolean sound = !name.isBlank()
                && name.length() <= LONGEST_NAME
                && name.codePoints().noneMatch(c -> Character.isISOControl(c) || c == 0x2028 || c == 0x2029);
        if (!sound) {
            reading.fault(
                    text.place(),
                    "the name " + (name.isBlank() ? "is empty" : "'" + Words.clip(name) + "' cannot be used"),
                    "1 to " + LONGEST_NAME + " characters on one line");
        }
        return sound;
    }
}
