package gripwright.files;

import java.util.List;
import java.util.Optional;

/** A YAML text as far as project files use it: texts, lists and keys, each with its place. */
sealed interface Tree {
    Place place();

    /** What it is, in words, for messages. */
    String words();

    /**
     * One value, as written; numbers stay text.
     *
     * @param asWritten false for quoted and folded texts, where columns inside the value are not those of the file
     */
    record Text(String value, Place place, boolean asWritten) implements Tree {
        @Override
        public String words() {
            return value.isEmpty() ? "nothing" : "'" + Words.clip(value) + "'";
        }
    }

    record Items(List<Tree> items, Place place) implements Tree {
        @Override
        public String words() {
            return items.isEmpty() ? "an empty list" : "a list";
        }
    }

    /** Keys with values, in the order of the file, each key once. */
    record Entries(List<Entry> entries, Place place) implements Tree {
        @Override
        public String words() {
            return entries.isEmpty() ? "an empty block" : "a block of keys";
        }

        Optional<Entry> find(String key) {
            return entries.stream().filter(e -> e.key().value().equals(key)).findFirst();
        }
    }

    record Entry(Text key, Tree value) {}
}
