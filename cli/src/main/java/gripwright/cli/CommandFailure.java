package gripwright.cli;

/** A command that cannot go on for a reason the user can do something about. */
final class CommandFailure extends RuntimeException {
    private static final long serialVersionUID = 1;

    private final Exit exit;

    CommandFailure(Exit exit, String message) {
        super(message);
        this.exit = exit;
    }

    CommandFailure(Exit exit, String message, Throwable cause) {
        super(message, cause);
        this.exit = exit;
    }

    Exit exit() {
        return exit;
    }
}
