package gripwright.files;

import java.util.ArrayList;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.api.lowlevel.Parse;
import org.snakeyaml.engine.v2.events.AliasEvent;
import org.snakeyaml.engine.v2.events.CollectionStartEvent;
import org.snakeyaml.engine.v2.events.Event;
import org.snakeyaml.engine.v2.events.NodeEvent;
import org.snakeyaml.engine.v2.events.ScalarEvent;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.exceptions.MarkedYamlEngineException;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;

/**
 * YAML text to a {@link Tree}, from the parser's events, so that nothing is built that the events do not hold: aliases
 * (which can grow a small file to gigabytes), tags and deep nesting are refused as they come.
 */
final class TreeReader {
    private static final int DEEPEST = 30;
    private static final int MOST_VALUES = 50_000;

    private final SourceText source;
    private final List<Fault> faults;
    private final Iterator<Event> events;
    private int depth;
    private int values;

    /** Ends the reading of a file whose rest cannot be understood; its fault has been noted. */
    private static final class GivenUp extends RuntimeException {
        private static final long serialVersionUID = 1;
    }

    private TreeReader(SourceText source, List<Fault> faults, Iterator<Event> events) {
        this.source = source;
        this.faults = faults;
        this.events = events;
    }

    /** The whole text, or null if it is not YAML that can be read on; faults are added. */
    static @Nullable Tree read(SourceText source, List<Fault> faults) {
        LoadSettings settings = LoadSettings.builder()
                .setLabel(source.file())
                .setCodePointLimit(SourceText.GREATEST_SIZE + 1)
                .build();
        try {
            TreeReader reader = new TreeReader(
                    source,
                    faults,
                    new Parse(settings).parseString(source.text()).iterator());
            return reader.document();
        } catch (MarkedYamlEngineException e) {
            Optional<Mark> mark = e.getProblemMark().or(e::getContextMark);
            String what = e.getContext() == null ? "" : e.getContext() + ", ";
            faults.add(source.fault(
                    mark.map(m -> place(mark, mark)).orElse(Place.START),
                    "this is not YAML: " + what + e.getProblem(),
                    "keys as `key: value`, nested by blanks, lists in [ ], short blocks in { }",
                    null));
            return null;
        } catch (YamlEngineException e) {
            faults.add(source.fault(
                    Place.START,
                    "this is not YAML: " + String.valueOf(e.getMessage()).split("\n", 2)[0],
                    "plain text without control characters",
                    null));
            return null;
        } catch (GivenUp e) {
            return null;
        }
    }

    private @Nullable Tree document() {
        Event event = next();
        while (event.getEventId() == Event.ID.StreamStart || event.getEventId() == Event.ID.DocumentStart) {
            event = next();
        }
        if (event.getEventId() == Event.ID.StreamEnd) {
            add(Place.START, source.file() + " holds only comments", "the keys of " + source.file());
            return null;
        }
        Tree tree = value(event);
        next(); // the document's end
        Event after = next();
        if (after.getEventId() != Event.ID.StreamEnd) {
            add(
                    place(after.getStartMark(), after.getEndMark()),
                    "a second document starts here",
                    "one document per file");
        }
        return tree;
    }

    private Tree value(Event event) {
        Place place = place(event.getStartMark(), event.getEndMark());
        if (event instanceof AliasEvent) {
            throw giveUp(place, "an alias (*name)", "the value itself, or `like:` for a finger like another");
        }
        if (event instanceof NodeEvent node && node.getAnchor().isPresent()) {
            throw giveUp(place, "an anchor (&name)", "no anchors; `like:` copies a finger");
        }
        if (++values > MOST_VALUES) {
            throw giveUp(place, "more than " + MOST_VALUES + " values", "a project file of ordinary size");
        }
        if (event instanceof ScalarEvent scalar) {
            if (scalar.getTag().isPresent()) {
                throw giveUp(place, "a tag (" + scalar.getTag().get() + ")", "plain values without tags");
            }
            boolean asWritten = scalar.isPlain() && place.line() == place.endLine();
            return new Tree.Text(scalar.getValue(), place, asWritten);
        }
        if (event instanceof CollectionStartEvent start && start.getTag().isPresent()) {
            throw giveUp(place, "a tag (" + start.getTag().get() + ")", "plain values without tags");
        }
        if (++depth > DEEPEST) {
            throw giveUp(place, "blocks nested more than " + DEEPEST + " deep", "shallower nesting");
        }
        Tree tree = event.getEventId() == Event.ID.SequenceStart ? items(place) : entries(place);
        depth--;
        return tree;
    }

    private Tree items(Place start) {
        List<Tree> items = new ArrayList<>();
        Event event = next();
        while (event.getEventId() != Event.ID.SequenceEnd) {
            items.add(value(event));
            event = next();
        }
        return new Tree.Items(items, upTo(start, event));
    }

    private Tree entries(Place start) {
        Map<String, Tree.Entry> entries = new LinkedHashMap<>();
        Event event = next();
        while (event.getEventId() != Event.ID.MappingEnd) {
            Tree key = value(event);
            Tree value = value(next());
            if (!(key instanceof Tree.Text text)) {
                throw giveUp(key.place(), "a key that is " + key.words(), "a word as the key");
            }
            Tree.Entry first = entries.putIfAbsent(text.value(), new Tree.Entry(text, value));
            if (first != null) {
                add(
                        key.place(),
                        "key '" + Words.clip(text.value()) + "' is given twice, first in line "
                                + first.key().place().line(),
                        "each key once in a block");
            }
            event = next();
        }
        return new Tree.Entries(List.copyOf(entries.values()), upTo(start, event));
    }

    private Event next() {
        return events.next();
    }

    private void add(Place place, String message, String expected) {
        faults.add(source.fault(place, message, expected, null));
    }

    private GivenUp giveUp(Place place, String message, String expected) {
        add(place, message, expected);
        return new GivenUp();
    }

    private static Place upTo(Place start, Event end) {
        Place last = place(end.getStartMark(), end.getEndMark());
        return new Place(start.line(), start.column(), last.endLine(), last.endColumn());
    }

    private static Place place(Optional<Mark> start, Optional<Mark> end) {
        if (start.isEmpty()) {
            return Place.START;
        }
        Mark from = start.get();
        Mark to = end.orElse(from);
        return new Place(from.getLine() + 1, from.getColumn() + 1, to.getLine() + 1, to.getColumn() + 1);
    }
}
