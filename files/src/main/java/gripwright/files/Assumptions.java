package gripwright.files;

import gripwright.model.Project.Assumption;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The list of assumptions in a form that people read. */
public final class Assumptions {
    private static final int MOST_NAMED = 6;

    private Assumptions() {}

    /**
     * The same assumptions, those that say the same of the same key of a file put together: ten objects that stand
     * upright by default make one line. The order is that of the first of each.
     */
    public static List<Assumption> grouped(List<Assumption> assumptions) {
        Map<String, List<String>> owners = new LinkedHashMap<>();
        Map<String, Assumption> first = new LinkedHashMap<>();
        for (Assumption one : assumptions) {
            String file = one.where().substring(0, one.where().indexOf(": ") + 2);
            String path = one.where().substring(file.length());
            String key = Kind.lastOf(path);
            String group = file + key + "\n" + one.text();
            first.putIfAbsent(group, one);
            String owner = path.length() > key.length() ? path.substring(0, path.length() - key.length() - 1) : "";
            owners.computeIfAbsent(group, g -> new ArrayList<>()).add(owner);
        }
        List<Assumption> grouped = new ArrayList<>();
        first.forEach((group, one) -> {
            List<String> all = owners.getOrDefault(group, List.of());
            String fileAndKey = group.substring(0, group.indexOf('\n'));
            String where = all.size() == 1 ? one.where() : fileAndKey + " of " + named(all);
            grouped.add(new Assumption(where, one.text()));
        });
        return grouped;
    }

    private static String named(List<String> owners) {
        String shown = String.join(", ", owners.stream().limit(MOST_NAMED).toList());
        int more = owners.size() - MOST_NAMED;
        return more > 0 ? shown + " and " + more + " more" : shown;
    }
}
