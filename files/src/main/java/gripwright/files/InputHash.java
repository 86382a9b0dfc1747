package gripwright.files;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Stream;

/** A hash of everything in a project folder that results are made from. */
public final class InputHash {
    private static final Set<String> KINDS = Set.of("yaml", "yml", "stl", "csv");

    private InputHash() {}

    /**
     * SHA-256, hexadecimal, over name, length and content of the folder's YAML, STL and CSV files in the order of their
     * names, at most three folders deep. The folders {@code results}, {@code logs} and {@code trials} hidden ones, and
     * {@code calibration.yaml} are left out: results must not change what they are made from, and no closing is made from a log or a score sheet.
     */
    public static String of(Path folder) throws IOException {
        MessageDigest digest = sha256();
        for (Path file : inputs(folder)) {
            byte[] content = Files.readAllBytes(file);
            digest.update(name(folder, file).getBytes(StandardCharsets.UTF_8));
            digest.update(("\0" + content.length + "\0").getBytes(StandardCharsets.UTF_8));
            digest.update(content);
        }
        return HexFormat.of().formatHex(digest.digest());
    }

    private static List<Path> inputs(Path folder) throws IOException {
        try (Stream<Path> files = Files.walk(folder, 3)) {
            return files.filter(file -> isInput(name(folder, file)))
                    .filter(Files::isRegularFile)
                    .sorted((a, b) -> name(folder, a).compareTo(name(folder, b)))
                    .toList();
        } catch (java.io.UncheckedIOException e) {
            throw new IOException(e.getMessage(), e);
        }
    }

    private static boolean isInput(String name) {
        String kind = name.substring(name.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT);
        boolean made = name.startsWith("results/")
                || name.startsWith("logs/")
                || name.startsWith("trials/")
                || name.equals(CalibrationFile.NAME);
        return KINDS.contains(kind) && !made && !name.startsWith(".") && !name.contains("/.");
    }

    private static String name(Path folder, Path file) {
        return folder.relativize(file).toString().replace('\\', '/');
    }

    private static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("this Java has no SHA-256, which every Java must have", e);
        }
    }
}
