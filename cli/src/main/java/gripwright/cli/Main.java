package gripwright.cli;

/** Entry point of the program. */
public final class Main {
    private Main() {}

    public static void main(String[] args) {
        run(Surroundings.real(), args);
    }

    /** Ends the program with the command's exit code. */
    static void run(Surroundings at, String... args) {
        int code = Gripwright.commands(at).execute(args);
        at.out().flush();
        at.err().flush();
        at.interruption().finished();
        System.exit(code);
    }
}
