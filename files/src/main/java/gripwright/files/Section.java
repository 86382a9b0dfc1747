package gripwright.files;

import gripwright.files.Key.Presence;
import gripwright.units.Nearest;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * A block of keys that makes one record: the table of its keys, checks between them, and how the record is made.
 *
 * @param id name in the schema and on the reference page
 * @param says what it describes, in one sentence
 * @param choices groups of keys of which exactly one must be given
 * @param check looks at what could be read, sound or not, and notes faults between keys
 * @param build makes the record; runs only if the section has no fault
 */
record Section<T>(
        String id,
        String says,
        List<Key<?>> keys,
        List<List<Key<?>>> choices,
        Consumer<Bound> check,
        Function<Bound, T> build)
        implements Kind<T> {
    private static final String COPY = "like";

    Section {
        keys = List.copyOf(keys);
        choices = List.copyOf(choices);
    }

    static <T> Section<T> of(String id, String says, List<Key<?>> keys, Function<Bound, T> build) {
        return new Section<>(id, says, keys, List.of(), b -> {}, build);
    }

    /** The same, with exactly one of these keys to be given. */
    Section<T> oneOf(List<? extends Key<?>> choice) {
        List<List<Key<?>>> more = new ArrayList<>(choices);
        more.add(List.copyOf(choice));
        return new Section<>(id, says, keys, more, check, build);
    }

    Section<T> checked(Consumer<Bound> with) {
        return new Section<>(id, says, keys, choices, check.andThen(with), build);
    }

    @Override
    public @Nullable T read(Tree tree, String path, Reading reading) {
        return read(tree, null, path, reading);
    }

    /** As {@link #read(Tree, String, Reading)}; faults of the section as a whole are shown at the key it stands under. */
    @Nullable
    T read(Tree tree, Tree.@Nullable Text key, String path, Reading reading) {
        if (!(tree instanceof Tree.Entries entries)) {
            reading.fault(
                    tree.place(),
                    (path.isEmpty() ? reading.file() : Kind.lastOf(path)) + " is " + tree.words(),
                    "a block with the keys " + Words.list(names()));
            return null;
        }
        int before = reading.faultCount();
        Bound bound =
                new Bound(key == null ? tree.place() : key.place(), key == null ? "" : key.value(), path, reading);
        entries.entries().forEach(bound::give);
        Set<String> misspelt = refuseUnknown(entries, bound);
        boolean sound = true;
        for (Key<?> each : keys) {
            sound &= readKey(each, entries, misspelt.contains(each.name()), bound);
        }
        for (List<Key<?>> choice : choices) {
            sound &= checkChoice(choice, misspelt, bound);
        }
        check.accept(bound);
        if (!sound || reading.faultCount() > before) {
            return null;
        }
        try {
            T value = build.apply(bound);
            return reading.faultCount() > before ? null : value;
        } catch (IllegalArgumentException e) {
            // The records check themselves; what the table did not catch is still a fault of the file.
            reading.fault(bound.place(), String.valueOf(e.getMessage()), "values that fit together");
            return null;
        }
    }

    /** Notes unknown keys; returns the keys they were probably meant to be, which are then not missed as well. */
    private Set<String> refuseUnknown(Tree.Entries entries, Bound bound) {
        List<String> names = names();
        Set<String> meant = new HashSet<>();
        for (Tree.Entry entry : entries.entries()) {
            String name = entry.key().value();
            if (!names.contains(name)) {
                List<String> free =
                        names.stream().filter(n -> entries.find(n).isEmpty()).toList();
                Optional<String> nearest = Nearest.to(name, free);
                nearest.ifPresent(meant::add);
                bound.reading()
                        .fault(
                                entry.key().place(),
                                "unknown key '" + Words.clip(name) + "' in " + bound.owner(),
                                "one of " + Words.list(names),
                                nearest.or(() -> Nearest.to(name, names)).orElse(null));
            }
        }
        return meant;
    }

    private <V> boolean readKey(Key<V> key, Tree.Entries entries, boolean misspelt, Bound bound) {
        Reading reading = bound.reading();
        String path = bound.path(key);
        Optional<Tree.Entry> entry = entries.find(key.name());
        if (entry.isPresent()) {
            Tree tree = entry.get().value();
            reading.place(path, tree.place());
            if (tree instanceof Tree.Text text && text.value().isEmpty() && text.asWritten()) {
                reading.fault(
                        entry.get().key().place(),
                        "key '" + key.name() + "' has no value",
                        key.kind().words());
                return false;
            }
            V value = key.kind() instanceof Section<V> section
                    ? section.read(tree, entry.get().key(), path, reading)
                    : key.kind().read(tree, path, reading);
            bound.put(key, value);
            return value != null;
        }
        if (misspelt) {
            return false;
        }
        Presence presence = key.presence();
        if (presence instanceof Presence.Required) {
            reading.fault(
                    bound.place(),
                    "key '" + key.name() + "' is missing in " + bound.owner(),
                    key.name() + ": " + key.kind().words());
            return false;
        }
        if (presence instanceof Presence.Default byDefault) {
            bound.put(key, key.kind().read(new Tree.Text(byDefault.text(), bound.place(), false), path, reading));
            bound.assume(key, "not given; taken as " + byDefault.text() + " (" + byDefault.why() + ")");
        } else if (presence instanceof Presence.Absent absent && absent.listed()) {
            bound.assume(key, "not given: " + absent.meaning());
        }
        return true;
    }

    private static boolean checkChoice(List<Key<?>> choice, Set<String> misspelt, Bound bound) {
        List<Key<?>> given = choice.stream().filter(bound::isGiven).toList();
        List<String> names = choice.stream().map(Key::name).toList();
        if (given.size() == 1) {
            return true;
        }
        String owner = bound.owner();
        if (given.isEmpty() && names.stream().anyMatch(misspelt::contains)) {
            return false;
        }
        if (given.isEmpty()) {
            bound.reading()
                    .fault(bound.place(), owner + " has none of the keys " + Words.list(names), "exactly one of them");
        } else {
            Key<?> second = given.get(1);
            bound.reading()
                    .fault(
                            bound.keyPlace(second),
                            owner + " has both '" + given.get(0).name() + "' and '" + second.name() + "'",
                            "exactly one of " + Words.list(names));
        }
        return false;
    }

    List<String> names() {
        return keys.stream().map(Key::name).toList();
    }

    @Override
    public String words() {
        return "a block with " + Words.list(names());
    }

    @Override
    public List<Section<?>> sections() {
        return List.of(this);
    }

    @Override
    public Map<String, Object> schema(Map<String, Object> definitions) {
        if (!definitions.containsKey(id)) {
            definitions.put(id, Map.of()); // stops a section that holds itself from going round for ever
            definitions.put(id, body(definitions));
        }
        return Json.object("$ref", "#/$defs/" + id.replace(" ", "%20"));
    }

    /** The schema itself, not a reference to it. */
    Map<String, Object> body(Map<String, Object> definitions) {
        Map<String, Object> properties = new LinkedHashMap<>();
        for (Key<?> key : keys) {
            Map<String, Object> schema = new LinkedHashMap<>(key.kind().schema(definitions));
            schema.put("description", key.says());
            if (key.presence() instanceof Presence.Default byDefault) {
                schema.put("default", byDefault.text());
            }
            properties.put(key.name(), schema);
        }
        Map<String, Object> body = new LinkedHashMap<>();
        body.put("type", "object");
        body.put("description", says);
        body.put("additionalProperties", false);
        body.put("properties", properties);
        List<String> required =
                keys.stream().filter(Key::isRequired).map(Key::name).toList();
        if (names().contains(COPY)) {
            body.put("anyOf", List.of(Json.object("required", List.of(COPY)), Json.object("required", required)));
        } else if (!required.isEmpty()) {
            body.put("required", required);
        }
        if (!choices.isEmpty()) {
            body.put(
                    "allOf",
                    choices.stream()
                            .map(choice -> Json.object(
                                    "oneOf",
                                    choice.stream()
                                            .map(k -> Json.object("required", List.of(k.name())))
                                            .toList()))
                            .toList());
        }
        return body;
    }
}
