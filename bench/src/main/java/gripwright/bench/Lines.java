package gripwright.bench;

import gripwright.files.Place;
import java.nio.charset.StandardCharsets;

/** A project file's text by places; offsets count characters of the text without a byte order mark. */
final class Lines {
    private static final String MARK = "\ufeff";

    private final String text;
    private final boolean marked;

    private Lines(String text, boolean marked) {
        this.text = text;
        this.marked = marked;
    }

    static Lines of(byte[] content) {
        String text = new String(content, StandardCharsets.UTF_8);
        return text.startsWith(MARK) ? new Lines(text.substring(1), true) : new Lines(text, false);
    }

    String at(Place place) {
        return text.substring(offset(place.line(), place.column()), offset(place.endLine(), place.endColumn()));
    }

    /** The whole line, without its end. */
    String line(int number) {
        int from = offset(number, 1);
        int to = from;
        while (to < text.length() && text.charAt(to) != '\n' && text.charAt(to) != '\r') {
            to++;
        }
        return text.substring(from, to);
    }

    /** The file with other text at one place and every other byte as it was. */
    byte[] with(Place place, String other) {
        String changed = text.substring(0, offset(place.line(), place.column()))
                + other
                + text.substring(offset(place.endLine(), place.endColumn()));
        return ((marked ? MARK : "") + changed).getBytes(StandardCharsets.UTF_8);
    }

    /** Lines end with LF, CR LF or CR; columns count code points. */
    private int offset(int line, int column) {
        int at = 0;
        for (int n = 1; n < line; n++) {
            while (at < text.length() && text.charAt(at) != '\n' && text.charAt(at) != '\r') {
                at++;
            }
            at += text.startsWith("\r\n", at) ? 2 : 1;
        }
        if (at > text.length()) {
            throw new IllegalStateException("line " + line + " is not in the file");
        }
        return text.offsetByCodePoints(at, column - 1);
    }
}
