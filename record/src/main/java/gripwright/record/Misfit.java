package gripwright.record;

/** The source and the project do not fit each other, in words for people; the recording cannot go on. */
final class Misfit extends Exception {
    private static final long serialVersionUID = 1;

    Misfit(String message) {
        super(message);
    }
}
