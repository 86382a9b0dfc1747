package gripwright.bench;

import gripwright.files.InputHash;
import gripwright.files.Place;
import gripwright.files.ProjectFaults;
import gripwright.files.ProjectReader;
import gripwright.model.Project;
import gripwright.pad.PadSetup;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Comparator;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * The project folder as it lies on the desk: what its files say now, and changes of single values. A change touches the
 * characters of its value and nothing else; it is refused if the file is no longer the one the user saw.
 */
final class Desk {
    private static final List<String> FILES = List.of(ProjectReader.HAND, ProjectReader.NEED, ProjectReader.PADS);
    private static final int LONGEST_VALUE = 200;
    private static final int MOST_UNDOS = 200;
    /** Texts that YAML takes as they are, also within braces and brackets. */
    private static final Pattern PLAIN = Pattern.compile(
            "[\\p{L}\\p{N}.+\\-\u2212\u00b1\u00b0](?:[\\p{L}\\p{N} .+\\-*/^%()_\u00b0\u00b1\u00b7\u00b2]*"
                    + "[\\p{L}\\p{N}.%)\u00b0\u00b2])?");

    private final Path folder;
    private final Deque<Change> undo = new ArrayDeque<>();
    private final Deque<Change> redo = new ArrayDeque<>();
    private State state;

    /**
     * What the files said when they were read.
     *
     * @param revision changes whenever a file of the project does
     * @param project null if there are faults
     * @param pads what pads.yaml says, if there is one
     * @param faults in the words of the command line; empty if there are none
     */
    record State(
            String revision,
            @Nullable Project project,
            Optional<PadSetup> pads,
            Map<String, Place> places,
            String faults,
            Map<String, byte[]> contents) {
        Project sound() {
            if (project == null) {
                throw new Refusal(409, faults, Wire.raw("faults", true));
            }
            return project;
        }
    }

    private record Change(String key, String file, byte[] before, byte[] after) {}

    /** @param folder where hand.yaml and need.yaml are, and pads.yaml if there is one */
    Desk(Path folder) {
        this.folder = folder;
        this.state = read();
    }

    synchronized State state() {
        return state;
    }

    Path folder() {
        return folder;
    }

    /** Looks at the files again; true if they changed. */
    synchronized boolean look() {
        if (hash().equals(state.revision)) {
            return false;
        }
        state = read();
        return true;
    }

    private State read() {
        String revision = hash();
        Map<String, byte[]> contents = new TreeMap<>();
        for (String file : FILES) {
            byte[] content = content(file);
            if (content != null) {
                contents.put(file, content);
            }
        }
        try {
            ProjectReader.Marked marked = ProjectReader.readMarked(folder, contents);
            return new State(revision, marked.project(), marked.pads(), marked.places(), "", contents);
        } catch (ProjectFaults e) {
            return new State(revision, null, Optional.empty(), Map.of(), String.valueOf(e.getMessage()), contents);
        }
    }

    private String hash() {
        try {
            return InputHash.of(folder);
        } catch (IOException e) {
            return "unreadable: " + e.getMessage();
        }
    }

    private byte @Nullable [] content(String file) {
        try {
            Path path = folder.resolve(file);
            return Files.isRegularFile(path) && Files.size(path) < 1_000_000 ? Files.readAllBytes(path) : null;
        } catch (IOException e) {
            return null; // the reader says so in its own words
        }
    }

    /** Every value that can be changed: its key and its text as it stands in the file, in the file's order. */
    synchronized Map<String, String> values() {
        Map<String, String> values = new LinkedHashMap<>();
        Map<String, Lines> lines = new LinkedHashMap<>();
        state.contents.forEach((file, content) -> lines.put(file, Lines.of(content)));
        Comparator<Map.Entry<String, Place>> byPlace = Comparator.comparing(
                        (Map.Entry<String, Place> e) -> fileOf(e.getKey()))
                .thenComparingInt(e -> e.getValue().line())
                .thenComparingInt(e -> e.getValue().column())
                .thenComparing(Map.Entry::getKey);
        state.places.entrySet().stream().sorted(byPlace).forEach(entry -> {
            String key = entry.getKey();
            Place place = entry.getValue();
            Lines in = lines.get(fileOf(key));
            if (in != null && place.line() == place.endLine()) {
                String text = in.at(place);
                if (!text.startsWith("{") && !text.startsWith("[")) {
                    values.put(key, text);
                }
            }
        });
        return values;
    }

    private static String fileOf(String key) {
        return key.substring(0, Math.max(0, key.indexOf(": ")));
    }

    /**
     * One value as it would be.
     *
     * @param line its number in the file
     * @param before and
     * @param after the line
     * @param faults what the project reader would say; empty if nothing
     * @param also keys of other values that are this same text, as those of a finger that is like another
     */
    record Preview(
            String file, int line, String before, String after, String faults, List<String> also, byte[] content) {}

    /** What a change would do, without doing it. */
    synchronized Preview preview(String key, String value) {
        Place place = state.places.get(key);
        String file = fileOf(key);
        byte[] content = state.contents.get(file);
        if (place == null || content == null || !values().containsKey(key)) {
            throw new Refusal(404, "no value of this project is called '" + key + "'");
        }
        if (value.isBlank()
                || value.length() > LONGEST_VALUE
                || value.codePoints().anyMatch(Character::isISOControl)) {
            throw new Refusal(400, "a value is one line of 1 to " + LONGEST_VALUE + " characters");
        }
        Lines lines = Lines.of(content);
        byte[] changed = lines.with(place, written(value.strip(), lines.at(place)));
        String faults = "";
        try {
            Map<String, byte[]> instead = new TreeMap<>(state.contents);
            instead.put(file, changed);
            ProjectReader.readMarked(folder, instead);
        } catch (ProjectFaults e) {
            faults = String.valueOf(e.getMessage());
        }
        String after = Lines.of(changed).line(place.line());
        List<String> also = values().keySet().stream()
                .filter(k -> !k.equals(key) && fileOf(k).equals(file) && place.equals(state.places.get(k)))
                .toList();
        return new Preview(file, place.line(), lines.line(place.line()), after, faults, also, changed);
    }

    /** In the quotes the old text had, or in double ones where YAML would take it for something else. */
    private static String written(String value, String old) {
        if (old.startsWith("'")) {
            return "'" + value.replace("'", "''") + "'";
        }
        if (old.startsWith("\"") || !PLAIN.matcher(value).matches()) {
            return "\"" + value.replace("\\", "\\\\").replace("\"", "\\\"") + "\"";
        }
        return value;
    }

    /**
     * Writes one value into its file.
     *
     * @param revision of the state that the user saw
     * @throws Refusal if a file changed meanwhile (409, with its line now), or the value is faulty (422)
     */
    synchronized void write(String key, String value, String revision) {
        String seen = state.revision;
        look();
        if (!revision.equals(state.revision) || !revision.equals(seen)) {
            String now = state.places.containsKey(key) ? values().getOrDefault(key, "") : "";
            throw new Refusal(
                    409,
                    "the project's files were changed by another program meanwhile; nothing was written",
                    Wire.raw("now", now, "yours", value));
        }
        Preview preview = preview(key, value);
        if (!preview.faults.isEmpty()) {
            throw new Refusal(422, preview.faults, Wire.raw("file", preview.before));
        }
        byte[] before = state.contents.get(preview.file);
        if (before == null || Arrays.equals(before, preview.content)) {
            return;
        }
        replace(preview.file, preview.content);
        undo.push(new Change(key, preview.file, before, preview.content));
        while (undo.size() > MOST_UNDOS) {
            undo.removeLast();
        }
        redo.clear();
    }

    /** Takes the last change back, or does it again; returns its key. */
    synchronized String step(boolean back) {
        look();
        Deque<Change> from = back ? undo : redo;
        Change change = from.peek();
        if (change == null) {
            throw new Refusal(409, back ? "there is nothing to undo" : "there is nothing to redo");
        }
        byte[] now = state.contents.get(change.file);
        if (now == null || !Arrays.equals(now, back ? change.after : change.before)) {
            throw new Refusal(
                    409,
                    change.file + " was changed by another program meanwhile; the change of '" + change.key
                            + "' cannot be taken back here");
        }
        replace(change.file, back ? change.before : change.after);
        from.pop();
        (back ? redo : undo).push(change);
        return change.key;
    }

    synchronized int undos() {
        return undo.size();
    }

    synchronized int redos() {
        return redo.size();
    }

    private void replace(String file, byte[] content) {
        Path target = folder.resolve(file);
        Path beside = folder.resolve("." + file + ".part");
        try {
            if (Files.isSymbolicLink(target)) {
                throw new Refusal(409, file + " is a link; the bench writes only files that lie in the project folder");
            }
            Files.write(beside, content);
            try {
                Files.move(beside, target, StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE);
            } finally {
                Files.deleteIfExists(beside);
            }
        } catch (IOException e) {
            throw new UncheckedIOException("cannot write " + file, e);
        }
        state = read();
    }
}
