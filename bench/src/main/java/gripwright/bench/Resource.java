package gripwright.bench;

import java.io.IOException;
import java.io.InputStream;
import java.util.Map;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Files of the page, from the program's own jar: only names of one folder and one plain file name are looked for. */
final class Resource {
    private static final Pattern NAME = Pattern.compile("(?:(?:js|lib)/)?[A-Za-z0-9][A-Za-z0-9_.-]*");
    private static final Map<String, String> KINDS = Map.of(
            "js", "text/javascript; charset=utf-8",
            "css", "text/css; charset=utf-8",
            "html", "text/html; charset=utf-8",
            "json", "application/json; charset=utf-8",
            "svg", "image/svg+xml; charset=utf-8");

    private Resource() {}

    static String kind(String name) {
        return KINDS.getOrDefault(name.substring(name.lastIndexOf('.') + 1), "text/plain; charset=utf-8");
    }

    /** The content, or null if there is no such file. */
    static byte @Nullable [] read(String name) throws IOException {
        if (!NAME.matcher(name).matches() || name.contains("..")) {
            return null;
        }
        try (InputStream in = Resource.class.getResourceAsStream(name)) {
            return in == null || name.endsWith(".class") ? null : in.readAllBytes();
        }
    }
}
