package gripwright.cli;

/** Entry point of the program. */
public final class Main {
    private Main() {}

    public static void main(String[] args) {
        Surroundings at = Surroundings.real();
        int code = Gripwright.commands(at).execute(args);
        at.out().flush();
        at.err().flush();
        at.interruption().finished();
        System.exit(code);
    }
}
