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
    private static final String TOUCHING = "/demo-touch/";
    /** Begins the part of hand.yaml that the touching hand replaces, and what follows it. */
    private static final String DRIVE = "# One motor.";

    private static final String ARM = "# A light arm:";
    private static final String HEAD = "three fingers, one motor,";
    private static final String NAME = "name: Bench hand, three fingers, one motor";

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

    /** The same bench with a hand whose fingers have motors of their own and chips round their tips. */
    static void copyTouchingTo(Path folder) throws IOException {
        copyTo(folder);
        Files.write(folder.resolve("pads.yaml"), bytes(TOUCHING + "pads.yaml"));
        String hand = new String(read("hand.yaml"), StandardCharsets.UTF_8);
        int drive = hand.indexOf(DRIVE);
        int arm = hand.indexOf(ARM);
        int name = hand.indexOf(NAME);
        if (drive < 0 || arm < drive || name < 0) {
            throw new IllegalStateException("the demo's hand.yaml has no part '" + DRIVE + "' before '" + ARM + "'");
        }
        String changed = hand.substring(0, drive)
                + new String(bytes(TOUCHING + "drive.yaml"), StandardCharsets.UTF_8)
                + hand.substring(arm);
        Files.writeString(
                folder.resolve("hand.yaml"),
                changed.replace(HEAD, "three fingers, three motors,")
                        .replace(NAME, "name: Bench hand, three fingers, three motors"));
    }

    private static byte[] read(String name) throws IOException {
        return bytes(FOLDER + name);
    }

    private static byte[] bytes(String name) throws IOException {
        try (InputStream file = DemoFiles.class.getResourceAsStream(name)) {
            if (file == null) {
                throw new IllegalStateException("the build left out " + name);
            }
            return file.readAllBytes();
        }
    }
}
