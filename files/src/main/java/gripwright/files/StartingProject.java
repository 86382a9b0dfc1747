package gripwright.files;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;

/** A commented project to start from: a three-finger hand with one motor and four invented objects. */
public final class StartingProject {
    private StartingProject() {}

    /** Text of one of its files, {@link ProjectReader#HAND} or {@link ProjectReader#NEED}. */
    public static String text(String file) {
        try (InputStream in = StartingProject.class.getResourceAsStream("start/" + file)) {
            if (in == null) {
                throw new IllegalArgumentException("the starting project has no file " + file + "; it has "
                        + List.of(ProjectReader.HAND, ProjectReader.NEED));
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /**
     * Writes the project into a folder, which is made if it does not exist.
     *
     * @return the files written
     * @throws FileAlreadyExistsException if one of its files is there already; then nothing is written
     * @throws IOException if the folder cannot be written
     */
    public static List<Path> write(Path folder) throws IOException {
        List<Path> files = List.of(folder.resolve(ProjectReader.HAND), folder.resolve(ProjectReader.NEED));
        for (Path file : files) {
            if (Files.exists(file)) {
                throw new FileAlreadyExistsException(
                        file.toString(), null, "a project file is there already; nothing is overwritten");
            }
        }
        Files.createDirectories(folder);
        for (Path file : files) {
            Files.writeString(file, text(String.valueOf(file.getFileName())), StandardOpenOption.CREATE_NEW);
        }
        return files;
    }
}
