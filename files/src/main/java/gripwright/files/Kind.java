package gripwright.files;

import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * What may stand as a value: how it is read, what the JSON Schema says of it, and how the reference page names it. One
 * object does all three, so that they cannot drift apart.
 */
interface Kind<T> {
    /** The value, or null after noting at least one fault. */
    @Nullable
    T read(Tree tree, String path, Reading reading);

    /**
     * The JSON Schema of the value.
     *
     * @param definitions gathers the schemas of sections by id
     */
    Map<String, Object> schema(Map<String, Object> definitions);

    /** A few words with an example for the reference page, such as "length above 0, such as 12 mm". */
    String words();

    /** Sections met inside, for the reference page. */
    default List<Section<?>> sections() {
        return List.of();
    }

    /** Notes that something else was expected; returns null. */
    default @Nullable T refuse(Tree tree, String path, Reading reading) {
        reading.fault(tree.place(), lastOf(path) + " is " + tree.words(), words());
        return null;
    }

    /** The last key of a path: what the user calls the value. Names with dots stand in quotes. */
    static String lastOf(String path) {
        int open = path.endsWith("\"") ? path.lastIndexOf('"', path.length() - 2) : -1;
        return open >= 0 ? path.substring(open + 1, path.length() - 1) : path.substring(path.lastIndexOf('.') + 1);
    }

    /** The path of a named entry. */
    static String pathOf(String path, String name) {
        return path + "." + (name.contains(".") ? '"' + name + '"' : name);
    }
}
