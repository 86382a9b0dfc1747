package gripwright.closing;

/** How a run ends; exactly one, tested in this order. Words and terminal marks are the project's own. */
public enum Outcome {
    /** The solver did not converge: neither a success nor a failure of the hand. */
    UNDECIDED("undecided", '?'),
    /** On its way the open hand pressed on the object or the table harder than allowed. */
    LANDED_ON_IT("landed on it", 'v'),
    /** The object's own limit of force or pressure was passed at some time. */
    SQUEEZED("squeezed too hard", '#'),
    /** Never touched. */
    MISSED("missed", '.'),
    /** Left the working space of the hand. */
    THROWN_OUT("thrown out", '*'),
    /** Not held, and tilted past the stated angle. */
    KNOCKED_OVER("knocked over", '/'),
    /** Not held, and displaced past the stated distance. */
    PUSHED_AWAY("pushed away", '>'),
    /** Not held: it stayed on the table, or sank out of the hand in the lift. */
    DROPPED("dropped in the lift", 'o'),
    /** Off the table after the lift. */
    HELD("held", '\u25cf');

    private final String words;
    private final char mark;

    Outcome(String words, char mark) {
        this.words = words;
        this.mark = mark;
    }

    /** The word shown to people. */
    public String words() {
        return words;
    }

    /** One character for the terminal. */
    public char mark() {
        return mark;
    }

    /** False only for a run that did not converge. */
    public boolean decided() {
        return this != UNDECIDED;
    }
}
