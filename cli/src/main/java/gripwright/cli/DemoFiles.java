package gripwright.cli;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** The worked example that comes with the program. */
final class DemoFiles {
    private static final String FOLDER = "/demo/";

    private DemoFiles() {}

    /** Names of the files, as listed in the resource {@code demo/FILES}; jars cannot be listed like folders. */
    static List<String> names() throws IOException {
        return new String(read("FILES"), StandardCharsets.UTF_8)
                .lines()
                .filter(line -> !line.isBlank())
                .toList();
    }

    /** Copies the example to a folder that does not hold a project yet. */
    static void copyTo(Path folder) throws IOException {
        for (String name : names()) {
            Path target = folder.resolve(name);
            Path parent = target.getParent();
            if (parent != null) {
                Files.createDirectories(parent);
            }
            Files.write(target, read(name));
        }
    }

    private static byte[] read(String name) throws IOException {
        try (InputStream file = DemoFiles.class.getResourceAsStream(FOLDER + name)) {
            if (file == null) {
                throw new IllegalStateException("the build left out demo/" + name);
            }
            return file.readAllBytes();
        }
    }
}
