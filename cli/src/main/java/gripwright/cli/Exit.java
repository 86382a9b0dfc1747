package gripwright.cli;

/** Exit codes of every command. */
enum Exit {
    YES(0, "done, and the answer (if there is one) is yes"),
    NO(1, "done, and the answer is no: not held, the middle of the map not held, fewer successes than wanted"),
    USAGE(2, "the command line was not understood, or names something the project does not have"),
    FAULTS(3, "the project folder has faults; each is printed with its place"),
    UNDECIDED(4, "done, but the solver did not converge where the answer hangs on it"),
    FILES(5, "a file could not be read or written, or Java or Maven is missing"),
    DEFECT(70, "a defect in Gripwright itself"),
    STOPPED(130, "stopped by Ctrl-C; what was finished is printed and written");

    private final int code;
    private final String meaning;

    Exit(int code, String meaning) {
        this.code = code;
        this.meaning = meaning;
    }

    int code() {
        return code;
    }

    String meaning() {
        return meaning;
    }
}
