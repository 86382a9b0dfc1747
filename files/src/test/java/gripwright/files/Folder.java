package gripwright.files;

import static org.assertj.core.api.Assertions.assertThat;

import gripwright.model.Project;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;

/**
 * A project folder for tests: a sample project with pieces of its text replaced. It looks like the starting project, but
 * is the tests' own, so that the hand people start from can be tuned freely.
 */
record Folder(Path path) {
    static Folder starting(Path path) {
        return new Folder(path)
                .write(ProjectReader.HAND, text(ProjectReader.HAND))
                .write(ProjectReader.NEED, text(ProjectReader.NEED));
    }

    /** Text of a file of the sample. */
    static String text(String file) {
        try (InputStream in = Folder.class.getResourceAsStream("sample/" + file)) {
            return new String(Objects.requireNonNull(in, file).readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    Folder hand(String old, String replacement) {
        return change(ProjectReader.HAND, old, replacement);
    }

    Folder need(String old, String replacement) {
        return change(ProjectReader.NEED, old, replacement);
    }

    private Folder change(String file, String old, String replacement) {
        try {
            String text = Files.readString(path.resolve(file));
            assertThat(text).as("the text to be replaced is there").contains(old);
            return write(file, text.replace(old, replacement));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    Folder write(String file, String text) {
        try {
            Files.writeString(path.resolve(file), text);
            return this;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    Folder write(String file, byte[] bytes) {
        try {
            Files.write(path.resolve(file), bytes);
            return this;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    Project read() {
        return ProjectReader.read(path);
    }

    List<Fault> faults() {
        try {
            ProjectReader.read(path);
        } catch (ProjectFaults faults) {
            return faults.faults();
        }
        return List.of();
    }

    /** The only fault there is. */
    Fault fault() {
        List<Fault> faults = faults();
        assertThat(faults).as("exactly one fault").hasSize(1);
        return faults.get(0);
    }
}
