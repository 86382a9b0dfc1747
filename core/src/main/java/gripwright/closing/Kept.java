package gripwright.closing;

/** What a load did to a held object. */
public enum Kept {
    /** It stayed in the hand and came to rest. */
    KEPT("kept"),
    /** It left its place by more than the stated limit. */
    LOST("lost"),
    /** The calculation did not converge: neither. */
    UNDECIDED("undecided");

    private final String words;

    Kept(String words) {
        this.words = words;
    }

    /** The word shown to people. */
    public String words() {
        return words;
    }
}
