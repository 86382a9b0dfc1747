package gripwright.files;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** The values read for one section, asked for by their keys. */
final class Bound {
    private final Map<String, Object> values = new LinkedHashMap<>();
    private final Map<String, Tree.Entry> given = new LinkedHashMap<>();
    private final Place place;
    private final String name;
    private final String path;
    private final Reading reading;

    Bound(Place place, String name, String path, Reading reading) {
        this.place = place;
        this.name = name;
        this.path = path;
        this.reading = reading;
    }

    void give(Tree.Entry entry) {
        given.put(entry.key().value(), entry);
    }

    void put(Key<?> key, @Nullable Object value) {
        if (value != null) {
            values.put(key.name(), value);
        }
    }

    /** The value of a key that is required or has a default; only in a builder, which runs when all are sound. */
    <T> T get(Key<T> key) {
        return find(key).orElseThrow(() -> new IllegalStateException("no value for key " + key.name()));
    }

    /** The value if the key is given and sound. */
    @SuppressWarnings("unchecked") // put() stores what the key's own kind has read
    <T> Optional<T> find(Key<T> key) {
        return Optional.ofNullable((T) values.get(key.name()));
    }

    /** Whether the user wrote the key, soundly or not. */
    boolean isGiven(Key<?> key) {
        return given.containsKey(key.name());
    }

    /** Where the value of the key stands, or the section itself. */
    Place place(Key<?> key) {
        Tree.Entry entry = given.get(key.name());
        return entry == null ? place : entry.value().place();
    }

    Place keyPlace(Key<?> key) {
        Tree.Entry entry = given.get(key.name());
        return entry == null ? place : entry.key().place();
    }

    Optional<Tree> tree(Key<?> key) {
        return Optional.ofNullable(given.get(key.name())).map(Tree.Entry::value);
    }

    Place place() {
        return place;
    }

    /** The key the section stands under: the name of a finger, an object, a rubber. */
    String name() {
        return name;
    }

    /** What the section is called in messages. */
    String owner() {
        return path.isEmpty() ? reading.file() : Kind.lastOf(path);
    }

    String path() {
        return path;
    }

    /** Path of a key within this section. */
    String path(Key<?> key) {
        return path.isEmpty() ? key.name() : path + "." + key.name();
    }

    Reading reading() {
        return reading;
    }

    void fault(Key<?> key, String message, String expected) {
        reading.fault(place(key), message, expected);
    }

    void assume(Key<?> key, String text) {
        reading.assumeOnce(place, key.name(), path(key), text);
    }
}
