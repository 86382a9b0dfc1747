package gripwright.cli;

/** A hand, grip or object of the project that no closing can start from, such as open fingers that overlap. */
final class RefusedClosing extends IllegalArgumentException {
    private static final long serialVersionUID = 1;

    RefusedClosing(IllegalArgumentException why) {
        super(why.getMessage(), why);
    }

    /** The refusal behind a failure, null if there is none. */
    static @org.jspecify.annotations.Nullable RefusedClosing behind(Throwable failure) {
        for (Throwable t = failure; t != null; t = t.getCause()) {
            if (t instanceof RefusedClosing refused) {
                return refused;
            }
        }
        return null;
    }
}
