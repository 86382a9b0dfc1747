package gripwright.model;

import gripwright.model.Project.Assumption;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * One statement that was assumed at one place or at several: a reader sees it once, with all its places.
 *
 * @param file such as "need.yaml"
 * @param key the last part of the keys, such as "stands"
 * @param places what stands before it, such as "objects.mug", in the order of the file; empty text for a key at the top
 * @param text what was assumed, with its value, unit and source
 */
public record SharedAssumption(String file, String key, List<String> places, String text) {
    public SharedAssumption {
        places = List.copyOf(places);
    }

    private record Statement(String file, String key, String text) {}

    /** All assumptions, each statement once, in the order of its first place. */
    public static List<SharedAssumption> of(List<Assumption> assumptions) {
        Map<Statement, List<String>> places = new LinkedHashMap<>();
        for (Assumption assumption : assumptions) {
            String where = assumption.where();
            int colon = where.indexOf(": ");
            String file = colon < 0 ? "" : where.substring(0, colon);
            String path = colon < 0 ? where : where.substring(colon + 2);
            int dot = path.lastIndexOf('.');
            Statement statement = new Statement(file, path.substring(dot + 1), assumption.text());
            places.computeIfAbsent(statement, s -> new ArrayList<>()).add(path.substring(0, Math.max(0, dot)));
        }
        List<SharedAssumption> shared = new ArrayList<>();
        places.forEach((s, where) -> shared.add(new SharedAssumption(s.file, s.key, where, s.text)));
        return List.copyOf(shared);
    }

    /** Such as "need.yaml: objects.mug.stands", or "need.yaml: stands of objects.mug, objects.bracket". */
    public String where() {
        String start = file.isEmpty() ? "" : file + ": ";
        if (places.size() == 1) {
            return start + (places.get(0).isEmpty() ? key : places.get(0) + "." + key);
        }
        return start + key + " of " + String.join(", ", places);
    }
}
