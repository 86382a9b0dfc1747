package gripwright.files;

import gripwright.shape.Shape;

/**
 * An everyday object with published size and mass.
 *
 * @param name as it is referred to in a project
 * @param mass [kg]
 * @param source who published the figures
 * @param sizeMark how far to trust the size
 * @param massMark how far to trust the mass
 * @param assumption what had to be assumed beyond the source, such as the rounding of edges; empty if nothing
 */
public record CatalogueEntry(
        String name, Shape shape, double mass, String source, Mark sizeMark, Mark massMark, String assumption) {
    /** Where a figure comes from. */
    public enum Mark {
        /** Read in the named source. */
        SEEN("seen"),
        /** Worked out from other figures. */
        COMPUTED("computed"),
        /** From memory or typical of the trade; not looked up. */
        MEMORY("memory/typical");

        private final String word;

        Mark(String word) {
            this.word = word;
        }

        public String word() {
            return word;
        }
    }

    /** The marks in words: one if size and mass share it. */
    public String mark() {
        return sizeMark == massMark ? sizeMark.word() : "size " + sizeMark.word() + ", mass " + massMark.word();
    }
}
