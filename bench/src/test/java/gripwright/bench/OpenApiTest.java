package gripwright.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The description for scripts against what the server answers. */
class OpenApiTest {
    @TempDir
    Path folder;

    /** Paths of the description with this method; it is written with one blank more for each level. */
    private static Set<String> described(String method) throws Exception {
        String text = new String(Objects.requireNonNull(Resource.read("openapi.json")), StandardCharsets.UTF_8);
        Set<String> out = new TreeSet<>();
        String path = "";
        for (String line : text.lines().toList()) {
            Matcher of = Pattern.compile("^  \"(/[^\"]*)\": \\{$").matcher(line);
            if (of.matches()) {
                path = of.group(1);
            } else if (line.equals("   \"" + method + "\": {")) {
                out.add(path);
            }
        }
        return out;
    }

    @Test
    void everyRouteIsDescribedAndNothingElse() throws Exception {
        try (TestBench bench = new TestBench(folder, 0)) {
            Set<String> reading = new TreeSet<>(bench.bench.paths(false));
            reading.add("/api/events");
            assertThat(described("get")).isEqualTo(reading);
            assertThat(described("post")).isEqualTo(new TreeSet<>(bench.bench.paths(true)));
        }
    }

    @Test
    void namedParametersAreTheOnesThatAreMissed() throws Exception {
        try (TestBench bench = new TestBench(folder, 0)) {
            for (String path : described("get")) {
                String text = new String(Objects.requireNonNull(Resource.read("openapi.json")), StandardCharsets.UTF_8);
                int from = text.indexOf("\"" + path + "\": {");
                int to = text.indexOf("\n  }", from);
                boolean required = text.substring(from, to).contains("\"required\": true");
                if (!path.equals("/api/events") && !path.equals("/api/report.html")) {
                    assertThat(bench.get(path).statusCode() == 400).as(path).isEqualTo(required);
                }
            }
        }
    }
}
