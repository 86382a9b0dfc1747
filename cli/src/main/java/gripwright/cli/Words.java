package gripwright.cli;

import gripwright.study.Finding;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** Sentences broken into lines. */
final class Words {
    private static final int WIDTH = 110;

    /** A blank, but not the one between a number and its unit. */
    private static final Pattern BREAK = Pattern.compile("(?<![0-9]) | (?![a-zA-Z%])");

    private Words() {}

    /** Each finding as a paragraph of its own. */
    static String findings(List<Finding> findings) {
        return findings.stream().map(f -> wrapped(f.text())).collect(Collectors.joining("\n"));
    }

    /** Broken at blanks so that no line is longer than a terminal; a number stays with what follows it. */
    static String wrapped(String text) {
        StringBuilder lines = new StringBuilder();
        int length = 0;
        for (String piece : BREAK.split(text, -1)) {
            if (length > 0 && length + 1 + piece.length() > WIDTH) {
                lines.append("\n  ");
                length = 2;
            } else if (length > 0) {
                lines.append(' ');
                length++;
            }
            lines.append(piece);
            length += piece.length();
        }
        return lines.toString();
    }
}
