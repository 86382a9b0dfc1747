package gripwright.cli;

import java.io.IOException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Locale;

/** Writes results so that a file is either the whole old one or the whole new one. */
final class ResultFile {
    private ResultFile() {}

    /** Writes UTF-8 text; makes missing folders on the way. */
    static void write(Path file, String text) {
        Path target = file.toAbsolutePath();
        Path folder = target.getParent();
        try {
            if (folder != null) {
                Files.createDirectories(folder);
            }
            if (Files.isSymbolicLink(target) || Files.exists(target) && !Files.isRegularFile(target)) {
                Files.writeString(target, text); // a link stays one, a pipe or /dev/stdout cannot be replaced
                return;
            }
            Path beside = target.resolveSibling("." + target.getFileName() + ".part");
            try {
                Files.writeString(beside, text);
                Files.move(beside, target, StandardCopyOption.REPLACE_EXISTING);
            } finally {
                Files.deleteIfExists(beside);
            }
        } catch (IOException e) {
            throw new CommandFailure(
                    Exit.FILES,
                    "cannot write " + file + ": " + reason(e) + "; choose another place or free this one",
                    e);
        }
    }

    /** What the file system says, without the name that the message has already. */
    static String reason(IOException e) {
        String kind = e.getClass().getSimpleName().replaceAll("Exception$", "");
        String words = kind.replaceAll("(?<=[a-z])(?=[A-Z])", " ").toLowerCase(Locale.ROOT);
        return e instanceof FileSystemException f && f.getReason() == null ? words : String.valueOf(e.getMessage());
    }
}
