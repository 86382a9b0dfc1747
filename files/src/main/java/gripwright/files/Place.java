package gripwright.files;

/**
 * Where something stands in a file; lines and columns count from 1.
 *
 * @param endColumn the column after the last character
 */
public record Place(int line, int column, int endLine, int endColumn) {
    static final Place START = new Place(1, 1, 1, 1);

    /** The place {@code characters} further on in the same line. */
    Place shifted(int characters) {
        return new Place(line, column + characters, endLine, Math.max(endColumn, column + characters));
    }
}
