package gripwright.report;

import java.util.ArrayList;
import java.util.List;

/** Breaks a sentence into lines of a picture, at spaces only. */
final class Wrap {
    private Wrap() {}

    /** The text, or its beginning with an ellipsis if it has too many letters. */
    static String shortened(String text, int most) {
        if (text.codePointCount(0, text.length()) <= most) {
            return text;
        }
        return text.substring(0, text.offsetByCodePoints(0, Math.max(1, most - 1)))
                        .strip() + "\u2026";
    }

    static List<String> lines(String text, int most) {
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder();
        for (String word : text.strip().split("[ \\t\\n]+", -1)) {
            if (line.length() > 0 && line.length() + 1 + word.length() > most) {
                lines.add(line.toString());
                line.setLength(0);
            }
            line.append(line.length() == 0 ? "" : " ").append(word);
        }
        lines.add(line.toString());
        return lines;
    }
}
