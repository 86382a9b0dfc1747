package gripwright.files;

import org.jspecify.annotations.Nullable;

/**
 * One key of a section: the row of the table from which reading, schema and reference page are made.
 *
 * @param name as written in the file
 * @param presence whether it must be given, and what holds if not
 * @param says what it means, in one sentence
 */
record Key<T>(String name, Kind<T> kind, Presence presence, String says) {
    /** What holds if the key is not given. */
    sealed interface Presence {
        /** It must be given. */
        record Required() implements Presence {}

        /**
         * A value is taken and listed among the assumptions.
         *
         * @param text as the user could have written it
         * @param why source or reason
         */
        record Default(String text, String why) implements Presence {}

        /**
         * There is no value.
         *
         * @param meaning what that means; null if nothing is assumed
         * @param listed whether {@code meaning} goes among the assumptions as it is; else the section's builder lists
         *     what it takes
         */
        record Absent(@Nullable String meaning, boolean listed) implements Presence {}
    }

    static <T> Key<T> required(String name, Kind<T> kind, String says) {
        return new Key<>(name, kind, new Presence.Required(), says);
    }

    static <T> Key<T> byDefault(String name, Kind<T> kind, String text, String why, String says) {
        return new Key<>(name, kind, new Presence.Default(text, why), says);
    }

    /** Optional; if not given, {@code meaning} is listed among the assumptions. */
    static <T> Key<T> optional(String name, Kind<T> kind, String meaning, String says) {
        return new Key<>(name, kind, new Presence.Absent(meaning, true), says);
    }

    /** Optional; if not given, the section's builder takes {@code meaning} and lists it with its value. */
    static <T> Key<T> derived(String name, Kind<T> kind, String meaning, String says) {
        return new Key<>(name, kind, new Presence.Absent(meaning, false), says);
    }

    /** Optional; nothing is assumed without it. */
    static <T> Key<T> maybe(String name, Kind<T> kind, String says) {
        return new Key<>(name, kind, new Presence.Absent(null, false), says);
    }

    boolean isRequired() {
        return presence instanceof Presence.Required;
    }
}
