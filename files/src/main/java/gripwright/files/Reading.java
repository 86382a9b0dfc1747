package gripwright.files;

import gripwright.model.Project.Assumption;
import gripwright.units.Nearest;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** What is gathered while the files of one project folder are read: faults, assumptions, names, places. */
final class Reading {
    private final Path folder;
    private final Set<Fault> faults = new LinkedHashSet<>();
    private final List<Assumption> assumptions = new ArrayList<>();
    private final Set<Object> assumed = new HashSet<>();
    private final Map<String, Place> places = new LinkedHashMap<>();
    private final Map<String, Map<String, @Nullable Object>> names = new HashMap<>();
    private Map<String, byte[]> instead = Map.of();
    private SourceText source = SourceText.of("", "");

    Reading(Path folder) {
        this.folder = folder;
    }

    Path folder() {
        return folder;
    }

    /** Contents to be read in the place of files, by name. */
    void instead(Map<String, byte[]> contents) {
        instead = Map.copyOf(contents);
    }

    /** A file's text, or null after saying in {@code why} why not. */
    @Nullable
    SourceText source(String file, List<Fault> why) {
        byte[] content = instead.get(file);
        return content == null ? SourceText.read(folder, file, why) : SourceText.decode(file, content, why);
    }

    void start(SourceText next) {
        source = next;
    }

    String file() {
        return source.file();
    }

    int faultCount() {
        return faults.size();
    }

    List<Fault> faults() {
        return List.copyOf(faults);
    }

    List<Assumption> assumptions() {
        return assumptions;
    }

    Map<String, Place> places() {
        return places;
    }

    void place(String path, Place place) {
        places.putIfAbsent(file() + ": " + path, place);
    }

    /** Where the value of a path of this file stands. */
    Place placeOf(String path, Place otherwise) {
        return places.getOrDefault(file() + ": " + path, otherwise);
    }

    void fault(Place place, String message, String expected) {
        fault(place, message, expected, null);
    }

    void fault(Place place, String message, String expected, @Nullable String suggestion) {
        // A copied finger repeats its pattern's faults word for word at the same place: the set keeps one.
        faults.add(source.fault(place, message, expected, suggestion));
    }

    void addAll(List<Fault> more) {
        faults.addAll(more);
    }

    /** Notes something the files do not say. */
    void assume(String path, String text) {
        assumptions.add(new Assumption(file() + ": " + path, text));
    }

    /** As {@link #assume}, but once only per place and key: a copied finger does not repeat its pattern's defaults. */
    void assumeOnce(Place place, String key, String path, String text) {
        if (assumed.add(List.of(file(), place, key))) {
            assume(path, text);
        }
    }

    /** Makes a name known, with what it stands for, or null if that is faulty. */
    void define(String family, String name, @Nullable Object value) {
        names.computeIfAbsent(family, f -> new LinkedHashMap<>()).put(name, value);
    }

    /** The names of a family; empty if none could be read, which has then been said already. */
    Set<String> names(String family) {
        return names.getOrDefault(family, Map.of()).keySet();
    }

    @Nullable
    Object named(String family, String name) {
        return names.getOrDefault(family, Map.of()).get(name);
    }

    /** Whether the name is known; if not, a fault is noted (unless no name of the family could be read at all). */
    boolean known(String family, Tree.Text text) {
        Set<String> all = names(family);
        if (all.contains(text.value())) {
            return true;
        }
        if (!all.isEmpty()) {
            fault(
                    text.place(),
                    "there is no " + family + " called '" + Words.clip(text.value()) + "'",
                    "one of " + Words.list(all),
                    Nearest.to(text.value(), all).orElse(null));
        }
        return false;
    }
}
