package gripwright.files;

/** Why a log cannot be used: file, line, what is there, what was expected. */
public final class LogFault extends RuntimeException {
    private static final long serialVersionUID = 1;

    /** @param line counted from 1; 0 if it is about the whole file */
    LogFault(String file, int line, String message, String expected) {
        super(file + (line > 0 ? ":" + line : "") + ": " + clean(message) + "\n  expected: " + clean(expected));
    }

    /** Control characters of an untrusted file must not reach a terminal. */
    private static String clean(String text) {
        StringBuilder clean = new StringBuilder(text.length());
        text.codePoints()
                .map(c -> c == '\n' || !Character.isISOControl(c) ? c : '\ufffd')
                .forEach(clean::appendCodePoint);
        return clean.toString();
    }
}
