package gripwright.record;

/** The log (or its side file) cannot be written on, in words for people. */
public final class LogFailure extends Exception {
    private static final long serialVersionUID = 1;

    LogFailure(String message) {
        super(message);
    }

    LogFailure(String message, Throwable cause) {
        super(message, cause);
    }
}
