package gripwright.record;

import java.util.ArrayList;
import java.util.List;

/** What {@code --from} says. */
public sealed interface SourceAddress {
    /** What an address may look like, for messages. */
    String WORDS =
            "serial:/dev/ttyACM0?baud=115200, tcp:HOST:PORT, file:PATH, file:PATH?pace=max, or - (standard input)";

    /** A serial port; 8 bits, no parity, one stop bit. */
    record Serial(String port, int baud) implements SourceAddress {}

    /** A connection to a server. */
    record Tcp(String host, int port) implements SourceAddress {}

    /** Standard input. */
    record StandardInput() implements SourceAddress {}

    /**
     * A file of what a source once sent, or a log of this program.
     *
     * @param ownPace as fast as its times say; otherwise as fast as it can be read
     */
    record Replay(String path, boolean ownPace) implements SourceAddress {}

    /** True if its beginning may be the middle of a line, because it sent before anyone listened. */
    default boolean live() {
        return this instanceof Serial || this instanceof Tcp;
    }

    /**
     * Reads an address.
     *
     * @throws IllegalArgumentException in words for people
     */
    static SourceAddress of(String text) {
        if (text.equals("-")) {
            return new StandardInput();
        }
        int colon = text.indexOf(':');
        String kind = colon < 0 ? "" : text.substring(0, colon);
        String rest = text.substring(colon + 1);
        return switch (kind) {
            case "serial" -> serial(text, rest);
            case "tcp" -> tcp(text, rest);
            case "file" -> file(text, rest);
            default -> throw new IllegalArgumentException("'" + text + "' is no source; expected " + WORDS);
        };
    }

    private static SourceAddress serial(String text, String rest) {
        List<String> parts = parts(rest);
        String baud = "";
        for (String option : parts.subList(1, parts.size())) {
            if (!option.startsWith("baud=")) {
                throw new IllegalArgumentException(
                        "'" + text + "': a serial port has no option '" + option + "'; expected baud=RATE");
            }
            baud = option.substring("baud=".length());
        }
        if (parts.get(0).isEmpty() || baud.isEmpty()) {
            throw new IllegalArgumentException("'" + text + "' lacks " + (baud.isEmpty() ? "its rate" : "its port")
                    + "; expected serial:PORT?baud=RATE, such as serial:/dev/ttyACM0?baud=115200");
        }
        return new Serial(parts.get(0), whole(text, "baud", baud, 1, 20_000_000));
    }

    private static SourceAddress tcp(String text, String rest) {
        int colon = rest.lastIndexOf(':');
        if (colon <= 0) {
            throw new IllegalArgumentException("'" + text + "' lacks host or port; expected tcp:HOST:PORT");
        }
        String host = rest.substring(0, colon).replaceAll("^\\[|]$", ""); // [::1] as in a URL
        return new Tcp(host, whole(text, "port", rest.substring(colon + 1), 1, 65_535));
    }

    private static SourceAddress file(String text, String rest) {
        boolean fast = rest.endsWith("?pace=max");
        boolean own = rest.endsWith("?pace=own");
        String path = fast || own ? rest.substring(0, rest.lastIndexOf('?')) : rest;
        if (path.isEmpty()) {
            throw new IllegalArgumentException("'" + text + "' names no file; expected file:PATH");
        }
        if (!fast && !own && path.matches(".*\\?pace=.*")) {
            throw new IllegalArgumentException("'" + text + "': expected pace=own (unless said otherwise) or pace=max");
        }
        return new Replay(path, !fast);
    }

    private static List<String> parts(String rest) {
        List<String> parts = new ArrayList<>();
        int question = rest.indexOf('?');
        parts.add(question < 0 ? rest : rest.substring(0, question));
        if (question >= 0) {
            parts.addAll(List.of(rest.substring(question + 1).split("&", -1)));
        }
        return parts;
    }

    private static int whole(String text, String what, String digits, int least, int most) {
        if (digits.matches("[0-9]{1,9}")) {
            int value = Integer.parseInt(digits);
            if (value >= least && value <= most) {
                return value;
            }
        }
        throw new IllegalArgumentException("'" + text + "': " + what + " is '" + digits
                + "'; expected a whole number from " + least + " to " + most);
    }
}
