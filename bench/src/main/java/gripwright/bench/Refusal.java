package gripwright.bench;

/** A request that is not carried out; the message is shown to the user where they are looking. */
final class Refusal extends RuntimeException {
    private static final long serialVersionUID = 1;

    private final int status;
    private final transient Wire.Raw more;

    Refusal(int status, String message) {
        this(status, message, Wire.raw());
    }

    /** @param more anything that helps to go on, such as what stands in the file now */
    Refusal(int status, String message, Wire.Raw more) {
        super(message);
        this.status = status;
        this.more = more;
    }

    int status() {
        return status;
    }

    String body() {
        return Wire.object("error", String.valueOf(getMessage()), "more", more);
    }
}
