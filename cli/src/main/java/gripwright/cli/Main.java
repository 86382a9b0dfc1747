package gripwright.cli;

/** Entry point. */
public final class Main {
    private Main() {}

    public static void main(String[] args) {
        System.out.println("hello " + String.join(" ", args));
    }
}
