package gripwright.files;

import org.jspecify.annotations.Nullable;

/**
 * One thing that is wrong in a project file.
 *
 * @param file name of the file within the project folder
 * @param line counted from 1
 * @param column counted from 1
 * @param sourceLine the line as it stands in the file; empty if there is none
 * @param message what is wrong, with the value
 * @param expected what should be there
 * @param suggestion the nearest valid key, unit, name or text, if one is near
 */
public record Fault(
        String file,
        int line,
        int column,
        String sourceLine,
        String message,
        String expected,
        @Nullable String suggestion) {
    private static final int WINDOW = 110;

    /** Where and what, in one line. */
    String headline() {
        return withoutControls(file + ":" + line + ":" + column + ": " + message.replaceAll("\\R", " "));
    }

    /** The fault in words with the line and a mark under it, over several lines, without a line end. */
    public String text() {
        StringBuilder text = new StringBuilder();
        text.append(file).append(':').append(line).append(':').append(column);
        text.append(": ").append(message);
        if (!sourceLine.isBlank()) {
            int from = Math.max(0, Math.min(column - 1 - WINDOW / 2, sourceLine.length() - WINDOW));
            int to = Math.min(sourceLine.length(), from + WINDOW);
            String number = String.valueOf(line);
            text.append("\n  ").append(number).append(" | ").append(sourceLine, from, to);
            text.append("\n  ").append(" ".repeat(number.length())).append(" | ");
            text.append(" ".repeat(Math.max(0, Math.min(column - 1 - from, WINDOW))))
                    .append('^');
        }
        text.append("\n  expected: ").append(expected);
        if (suggestion != null) {
            text.append("\n  did you mean '").append(suggestion).append("'?");
        }
        return withoutControls(text.toString());
    }

    /** Control characters of an untrusted file must not reach a terminal. */
    private static String withoutControls(String text) {
        StringBuilder clean = new StringBuilder(text.length());
        text.codePoints()
                .map(c -> c == '\n' || !Character.isISOControl(c) ? c : c == '\t' ? ' ' : '\ufffd')
                .forEach(clean::appendCodePoint);
        return clean.toString();
    }
}
