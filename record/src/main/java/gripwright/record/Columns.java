package gripwright.record;

import gripwright.signal.Layout;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** The columns of one source, once they are known. */
final class Columns {
    private final List<String> names;
    private final Layout layout;
    private final Map<String, Integer> places = new HashMap<>();
    private final boolean[] number;
    private final int time;
    private final int sequence;
    private final int[] taxels;

    /** @param layout every column of which must be among the names */
    Columns(List<String> names, Layout layout) {
        this.names = List.copyOf(names);
        this.layout = layout.within(names);
        for (int i = 0; i < names.size(); i++) {
            places.put(names.get(i), i);
        }
        this.number = new boolean[names.size()];
        this.time = mark(this.layout.time().orElse(null));
        this.sequence = mark(this.layout.sequence().orElse(null));
        this.layout.numbers().forEach(this::mark);
        this.taxels = this.layout.taxels().stream()
                .mapToInt(cell -> mark(cell.column()))
                .toArray();
    }

    private int mark(@Nullable String name) {
        Integer place = name == null ? null : places.get(name);
        if (place == null) {
            return -1;
        }
        number[place] = true;
        return place;
    }

    List<String> names() {
        return names;
    }

    int count() {
        return names.size();
    }

    /** Where a column stands, or -1. */
    int place(String name) {
        return places.getOrDefault(name, -1);
    }

    /** True if only numbers may stand there. */
    boolean isNumber(int column) {
        return number[column];
    }

    /** Where the source's own time stands, or -1. */
    int time() {
        return time;
    }

    /** Where the count of readings stands, or -1. */
    int sequence() {
        return sequence;
    }

    List<Layout.Taxel> taxels() {
        return layout.taxels();
    }

    /** Where a taxel stands. */
    int taxel(int index) {
        return taxels[index];
    }

    /** Where each taxel stands. */
    int[] taxelPlaces() {
        return taxels;
    }

    /** Columns that the project names and the source does not send. */
    List<String> absent() {
        return layout.order().stream().filter(name -> !places.containsKey(name)).toList();
    }

    /** The source's own time in a reading, NaN if it has none [s]. */
    double seconds(double[] values) {
        return time < 0 ? Double.NaN : values[time] * layout.tick();
    }

    /** What is wrong with these names. */
    static Optional<String> fault(List<String> names, Layout layout) {
        if (new HashSet<>(names).size() < names.size()) {
            return Optional.of("the source gives a column's name twice: " + String.join(", ", clipped(names)));
        }
        List<String> missing =
                layout.wanted().stream().filter(name -> !names.contains(name)).toList();
        return missing.isEmpty()
                ? Optional.empty()
                : Optional.of("the source names the columns " + String.join(", ", clipped(names)) + "; pads.yaml wants "
                        + String.join(", ", clipped(missing)) + " too");
    }

    private static List<String> clipped(List<String> names) {
        int most = 12;
        if (names.size() <= most) {
            return names;
        }
        List<String> some = new ArrayList<>(names.subList(0, most));
        some.add("and " + (names.size() - most) + " more");
        return some;
    }
}
