package gripwright.cli;

import gripwright.closing.Criteria;
import gripwright.files.InputHash;
import gripwright.files.ProjectReader;
import gripwright.files.json.Origin;
import gripwright.model.GraspObject;
import gripwright.model.Grip;
import gripwright.model.Project;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Function;

/**
 * A project that was read without faults.
 *
 * @param given folder as the user wrote it, for messages
 * @param folder where it is
 */
record OpenProject(Path given, Path folder, Project project, Origin origin) {
    static final Criteria CRITERIA = Criteria.DEFAULT;

    /**
     * @throws gripwright.files.ProjectFaults if the files have faults
     * @throws CommandFailure if there is no such folder or it cannot be read
     */
    static OpenProject read(Surroundings at, Path given) {
        Path folder = folder(at, given);
        Project project = reading(given, () -> ProjectReader.read(folder));
        Origin origin = new Origin(
                Version.TEXT,
                hash(given, folder),
                project.hand().name(),
                project.need().name(),
                project.assumptions());
        return new OpenProject(given, folder, project, origin);
    }

    static Path folder(Surroundings at, Path given) {
        Path folder = at.path(given);
        if (!Files.isDirectory(folder)) {
            String what = Files.exists(folder) ? given + " is a file" : "there is no folder " + given;
            throw new CommandFailure(
                    Exit.FILES,
                    what + "; expected a project folder with hand.yaml and need.yaml, such as 'gripwright new' makes");
        }
        return folder;
    }

    static String hash(Path given, Path folder) {
        return reading(given, () -> InputHash.of(folder));
    }

    private interface Reading<T> {
        T read() throws IOException;
    }

    private static <T> T reading(Path given, Reading<T> reading) {
        try {
            return reading.read();
        } catch (IOException e) {
            throw new CommandFailure(Exit.FILES, "cannot read " + given + ": " + ResultFile.reason(e), e);
        } catch (UncheckedIOException e) {
            throw new CommandFailure(Exit.FILES, "cannot read " + given + ": " + e.getMessage(), e);
        }
    }

    GraspObject object(String name) {
        return find("object", name, project.need().objects(), GraspObject::name);
    }

    Grip grip(String name) {
        return find("grip", name, project.hand().grips(), Grip::name);
    }

    private <T> T find(String what, String name, List<T> all, Function<T, String> nameOf) {
        return all.stream()
                .filter(one -> nameOf.apply(one).equals(name))
                .findFirst()
                .orElseThrow(() -> new CommandFailure(
                        Exit.USAGE,
                        "no " + what + " of " + given + " is called '" + name + "'; there are: "
                                + String.join(", ", all.stream().map(nameOf).toList())));
    }

    /** One line for the end of an output. */
    String assumptionsLine() {
        int n = project.assumptions().size();
        return n == 0
                ? "assumed  nothing beyond the files"
                : "assumed  " + Say.count(n, "thing", "things") + " the files do not say; 'gripwright check " + given
                        + "' lists them";
    }
}
