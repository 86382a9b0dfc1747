package gripwright.cli;

import gripwright.study.Finding;
import java.util.List;
import java.util.stream.Collectors;

/** Sentences broken into lines. */
final class Words {
    private static final int WIDTH = 110;

    private Words() {}

    /** Each finding as a paragraph of its own. */
    static String findings(List<Finding> findings) {
        return findings.stream().map(f -> wrapped(f.text())).collect(Collectors.joining("\n"));
    }

    /** Broken at blanks so that no line is longer than a terminal, unless a word is. */
    static String wrapped(String text) {
        StringBuilder lines = new StringBuilder();
        int length = 0;
        for (String word : text.split(" ", -1)) {
            if (length > 0 && length + 1 + word.length() > WIDTH) {
                lines.append("\n  ");
                length = 2;
            } else if (length > 0) {
                lines.append(' ');
                length++;
            }
            lines.append(word);
            length += word.length();
        }
        return lines.toString();
    }
}
