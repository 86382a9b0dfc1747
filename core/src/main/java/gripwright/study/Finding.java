package gripwright.study;

/**
 * One thing found, as a sentence or two with its numbers.
 *
 * @param object it is about, or "" if about the whole study
 * @param grip it is about, or ""
 * @param text in plain words; units are mm, deg, cm2 and %
 */
public record Finding(Topic topic, String object, String grip, String text) {
    /** What kind of thing, in the order in which findings are listed. */
    public enum Topic {
        /** The answer to the main question. */
        ANSWER,
        /** Which objects meet the need and which do not. */
        OBJECTS,
        /** How often, and why not. */
        REASON,
        /** In which direction or part of the range failures lie. */
        WHERE,
        /** Which inputs matter. */
        INPUTS,
        /** How the grips of an object compare. */
        GRIPS,
        /** What must be known before the rest is believed. */
        CAUTION
    }
}
