package gripwright.benchmarks;

import gripwright.closing.ClosingSimulator;
import gripwright.closing.Criteria;
import gripwright.closing.Numerics;
import gripwright.files.ProjectReader;
import gripwright.model.Project;
import gripwright.pad.PadSetup;
import gripwright.study.RunnerFactory;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** The project of `gripwright demo`, read from the jar. */
public final class DemoCase {
    private DemoCase() {}

    public static Project project() {
        return reading("/demo/pads.yaml").project();
    }

    /** The pads that feel. */
    public static PadSetup pads() {
        return reading("/demo/pads.yaml").pads().orElseThrow();
    }

    /** The chips round the tips of the touching demo, under the pads of the demo's one-motor hand. */
    public static PadSetup chips() {
        return reading("/demo-touch/pads.yaml").pads().orElseThrow();
    }

    private static ProjectReader.Marked reading(String pads) {
        List<Path> copied = new ArrayList<>();
        try {
            Path folder = Files.createTempDirectory("gripwright-bench");
            copied.add(folder);
            for (String name : new String(read("/demo/FILES"), StandardCharsets.UTF_8)
                    .lines()
                    .toList()) {
                // what lies deeper is no part of the project
                if (!name.isBlank() && !name.contains("/")) {
                    byte[] text = read(name.equals(ProjectReader.PADS) ? pads : "/demo/" + name);
                    copied.add(Files.write(folder.resolve(name), text));
                }
            }
            ProjectReader.Marked project = ProjectReader.readMarked(folder);
            for (int i = copied.size() - 1; i >= 0; i--) {
                Files.delete(copied.get(i));
            }
            return project;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    public static RunnerFactory closings(Project project) {
        return (object, grip) -> new ClosingSimulator(
                project.hand(), grip, object, project.need().tableFriction(), Numerics.DEFAULT, Criteria.DEFAULT);
    }

    private static byte[] read(String name) throws IOException {
        try (InputStream file = DemoCase.class.getResourceAsStream(name)) {
            if (file == null) {
                throw new IOException("the build left out " + name);
            }
            return file.readAllBytes();
        }
    }
}
