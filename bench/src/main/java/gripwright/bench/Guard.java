package gripwright.bench;

import com.sun.net.httpserver.Headers;
import com.sun.net.httpserver.HttpExchange;
import java.io.IOException;
import java.io.InputStream;
import java.net.InetAddress;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/**
 * Who may ask for what. A page of another site in the same browser can send requests to this machine; it is told from
 * our own page by the headers that a browser sets and a page cannot forge.
 */
final class Guard {
    static final int MOST_BODY = 64_000;
    private static final int MOST_DRAINED = 1_000_000;
    static final int LONGEST_QUERY = 4_000;
    private static final String TOKEN_HEADER = "X-Gripwright-Token";
    private static final Set<String> OWN_FETCHES = Set.of("same-origin", "none");

    private final Set<String> hosts;
    private final String token;

    /** @param address that the server listens on */
    Guard(InetAddress address, int port) {
        String given = address.getHostAddress();
        String bracketed = given.contains(":") ? "[" + given + "]" : given;
        this.hosts = address.isLoopbackAddress()
                ? Set.of(bracketed + ":" + port, "localhost:" + port)
                : Set.of(bracketed + ":" + port, address.getHostName().toLowerCase(Locale.ROOT) + ":" + port);
        byte[] random = new byte[24];
        new SecureRandom().nextBytes(random);
        this.token = HexFormat.of().formatHex(random);
    }

    /** Sent with the page; a request that changes anything must bring it back. */
    String token() {
        return token;
    }

    /** @throws Refusal if the request does not come from our own page, or changes something without the token */
    void check(HttpExchange exchange) {
        Headers headers = exchange.getRequestHeaders();
        String host = headers.getFirst("Host");
        // A foreign name that was made to point here (DNS rebinding) stands in the Host header.
        if (host == null
                || headers.getOrDefault("Host", List.of()).size() != 1
                || !hosts.contains(host.toLowerCase(Locale.ROOT))) {
            throw new Refusal(
                    421,
                    "the bench answers to "
                            + String.join(" or ", hosts.stream().sorted().toList()));
        }
        String origin = headers.getFirst("Origin");
        if (origin != null && !origin.toLowerCase(Locale.ROOT).equals("http://" + host.toLowerCase(Locale.ROOT))) {
            throw new Refusal(403, "a page of " + origin + " may not use the bench");
        }
        String path = exchange.getRequestURI().getPath();
        String site = headers.getFirst("Sec-Fetch-Site");
        if (path.startsWith("/api/") && site != null && !OWN_FETCHES.contains(site)) {
            throw new Refusal(403, "a page of another site may not use the bench");
        }
        String query = exchange.getRequestURI().getRawQuery();
        if (query != null && query.length() > LONGEST_QUERY) {
            throw new Refusal(414, "the query has " + query.length() + " characters; at most " + LONGEST_QUERY);
        }
        String method = exchange.getRequestMethod();
        if (method.equals("POST")) {
            String given = headers.getFirst(TOKEN_HEADER);
            if (given == null || !MessageDigest.isEqual(bytes(given), bytes(token))) {
                throw new Refusal(403, "the page is from before the server was started; load it again");
            }
        } else if (!method.equals("GET") && !method.equals("HEAD")) {
            throw new Refusal(405, "method " + method + " is not known here");
        }
    }

    /** The body, refused if it is too long whatever its header says. */
    static String body(HttpExchange exchange) throws IOException {
        try (InputStream in = exchange.getRequestBody()) {
            byte[] bytes = in.readNBytes(MOST_BODY + 1);
            if (bytes.length > MOST_BODY) {
                // What is unread when the connection closes would take the answer with it.
                in.readNBytes(MOST_DRAINED);
                throw new Refusal(413, "the request is longer than " + MOST_BODY + " bytes");
            }
            return new String(bytes, StandardCharsets.UTF_8);
        }
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }
}
