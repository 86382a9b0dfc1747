package gripwright.record;

/** Why a line is no reading, in words for people. */
final class LineFault extends Exception {
    private static final long serialVersionUID = 1;

    LineFault(String reason) {
        super(reason, null, false, false); // a noisy line makes thousands of them: no stack trace
    }
}
