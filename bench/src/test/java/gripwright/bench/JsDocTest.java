package gripwright.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What a module of the page offers says in JSDoc what it is and of which type each parameter is. */
class JsDocTest {
    private static final Path FOLDER = Path.of("src/main/resources/gripwright/bench/js");
    private static final Pattern EXPORTED = Pattern.compile(
            "^export (?:async )?(?:function (\\w+)\\(([^)]*)\\)|class (\\w+)|const (\\w+) = (?:\\(([^)]*)\\)|(\\w+)) =>)");
    private static final Pattern METHOD =
            Pattern.compile("^  (?:static )?(?:async )?(?!if|for|while|switch|return)(\\w+)\\(([^)]*)\\) \\{$");

    static Stream<Path> modules() throws IOException {
        try (Stream<Path> files = Files.list(FOLDER)) {
            return files.filter(f -> f.toString().endsWith(".js")).sorted().toList().stream();
        }
    }

    @ParameterizedTest
    @MethodSource("modules")
    void everythingOfferedIsDescribedWithItsTypes(Path file) throws IOException {
        List<String> lines = Files.readAllLines(file);
        List<String> missing = new ArrayList<>();
        boolean inClass = false;
        for (int i = 0; i < lines.size(); i++) {
            Matcher exported = EXPORTED.matcher(lines.get(i));
            Matcher method = METHOD.matcher(lines.get(i));
            String parameters = "";
            if (exported.find()) {
                inClass = exported.group(3) != null;
                parameters = first(exported.group(2), exported.group(5), exported.group(6));
            } else if (inClass && method.matches()) {
                parameters = first(method.group(2));
            } else {
                inClass &= !lines.get(i).equals("}");
                continue;
            }
            String doc = docBefore(lines, i);
            if (doc.isBlank()) {
                missing.add((i + 1) + ": no description: " + lines.get(i).strip());
            }
            for (String parameter : names(parameters)) {
                if (!Pattern.compile("@param \\{.+\\} \\[?" + parameter + "\\b")
                        .matcher(doc)
                        .find()) {
                    missing.add((i + 1) + ": no type of " + parameter);
                }
            }
        }
        assertThat(missing).as(file.getFileName().toString()).isEmpty();
    }

    private static String first(String... texts) {
        for (String text : texts) {
            if (text != null) {
                return text;
            }
        }
        return "";
    }

    private static List<String> names(String parameters) {
        List<String> out = new ArrayList<>();
        for (String part : parameters.replaceAll("\\{[^}]*}|\\[[^]]*]", "").split(",")) {
            String name = part.replaceAll("=.*", "").replace("...", "").strip();
            if (!name.isEmpty()) {
                out.add(name);
            }
        }
        return out;
    }

    /** The comment that ends in the line before. */
    private static String docBefore(List<String> lines, int at) {
        StringBuilder doc = new StringBuilder();
        for (int i = at - 1; i >= 0; i--) {
            String line = lines.get(i).strip();
            if (i == at - 1 && !line.endsWith("*/")) {
                return "";
            }
            doc.insert(0, line + "\n");
            if (line.startsWith("/**")) {
                break;
            }
        }
        return doc.toString();
    }
}
