package gripwright.files.json;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.snakeyaml.engine.v2.api.Load;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;

/** An object of a result that was written before, read again; a missing or other property is an IllegalArgumentException. */
record JsonTree(Map<?, ?> properties) {
    /** JSON is YAML, and a reader of YAML is here anyway. */
    static JsonTree of(String text) {
        try {
            Object root = new Load(LoadSettings.builder().build()).loadFromString(text);
            if (root instanceof Map<?, ?> map) {
                return new JsonTree(map);
            }
        } catch (YamlEngineException e) {
            throw new IllegalArgumentException("it is not JSON", e);
        }
        throw new IllegalArgumentException("it is not a JSON object");
    }

    private Object value(String name) {
        Object value = properties.get(name);
        if (value == null) {
            throw new IllegalArgumentException("it has no '" + name + "'");
        }
        return value;
    }

    String text(String name) {
        return value(name).toString();
    }

    /** NaN for null. */
    double number(String name) {
        Object value = properties.get(name);
        if (value == null && properties.containsKey(name)) {
            return Double.NaN;
        }
        if (value instanceof Number number) {
            return number.doubleValue();
        }
        throw new IllegalArgumentException("its '" + name + "' is " + value + "; expected a number");
    }

    boolean truth(String name) {
        return Boolean.TRUE.equals(value(name));
    }

    JsonTree in(String name) {
        return find(name).orElseThrow(() -> new IllegalArgumentException("it has no '" + name + "'"));
    }

    /** Empty for null. */
    Optional<JsonTree> find(String name) {
        return properties.get(name) instanceof Map<?, ?> map ? Optional.of(new JsonTree(map)) : Optional.empty();
    }

    List<JsonTree> all(String name) {
        if (value(name) instanceof List<?> list) {
            return list.stream()
                    .map(item -> {
                        if (item instanceof Map<?, ?> map) {
                            return new JsonTree(map);
                        }
                        throw new IllegalArgumentException("'" + name + "' holds " + item + "; expected objects");
                    })
                    .toList();
        }
        throw new IllegalArgumentException("its '" + name + "' is no list");
    }
}
