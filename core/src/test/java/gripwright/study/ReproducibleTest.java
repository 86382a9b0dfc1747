package gripwright.study;

import static org.assertj.core.api.Assertions.assertThat;

import gripwright.closing.BenchHands;
import gripwright.closing.ClosingSimulator;
import gripwright.closing.ClosingSummary;
import gripwright.closing.Criteria;
import gripwright.closing.Numerics;
import gripwright.math.Streams;
import gripwright.model.GraspObject;
import gripwright.model.Grip;
import gripwright.model.Placement;
import gripwright.model.Scatter;
import gripwright.model.Spread;
import gripwright.shape.Cylinder;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The same study gives the same bits whatever compiles or interprets it, on any number of threads. */
@Tag("slow")
class ReproducibleTest {
    /** Our own earlier output: made anew with -Daccept=true where a change of the physics is meant. */
    private static final Path STORED = Path.of("src/test/resources/reference/reproducible.sha256");

    @ParameterizedTest
    @ValueSource(strings = {"-Xint", "-XX:TieredStopAtLevel=1", "-XX:-TieredCompilation", "-Dthreads=3"})
    void regressionSameBitsInEveryModeOfThisJava(String mode) throws IOException, InterruptedException {
        assertThat(hash(Path.of(System.getProperty("java.home")), mode)).isEqualTo(stored());
    }

    @Test
    void regressionSameBitsOnANewerJava() throws IOException, InterruptedException {
        List<Path> newer = newerJavas();
        Assumptions.assumeFalse(newer.isEmpty(), "no newer Java is installed beside this one: nothing to compare with");
        for (Path java : newer) {
            assertThat(hash(java, "-Dthreads=2")).as(java.toString()).isEqualTo(stored());
        }
    }

    private static String stored() throws IOException, InterruptedException {
        if (Boolean.getBoolean("accept")) {
            Files.createDirectories(STORED.getParent());
            Files.writeString(STORED, hash(Path.of(System.getProperty("java.home")), "-Dthreads=1") + "\n");
        }
        return Files.readString(STORED).strip();
    }

    /** Javas of a later release in the folder in which this one lies. */
    private static List<Path> newerJavas() throws IOException {
        Path folder = Path.of(System.getProperty("java.home")).toRealPath().getParent();
        List<Path> found = new ArrayList<>();
        try (Stream<Path> all = Files.list(folder == null ? Path.of(".") : folder)) {
            for (Path java : all.sorted().toList()) {
                Path release = java.resolve("release");
                if (Files.isRegularFile(release) && Files.isExecutable(java.resolve("bin/java"))) {
                    String text = Files.readString(release).replaceAll("(?s).*JAVA_VERSION=\"(\\d+).*", "$1");
                    if (text.matches("\\d+")
                            && Integer.parseInt(text) > Runtime.version().feature()) {
                        found.add(java);
                    }
                }
            }
        }
        return found;
    }

    private static String hash(Path java, String mode) throws IOException, InterruptedException {
        Process process = new ProcessBuilder(
                        java.resolve("bin/java").toString(),
                        mode,
                        "-XX:+UseSerialGC",
                        "-cp",
                        System.getProperty("java.class.path"),
                        Study.class.getName())
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
        String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(process.waitFor()).as(mode).isZero();
        return out.strip();
    }

    /** A small study in a process of its own; prints the hash of all bits of all runs. */
    static final class Study {
        private Study() {}

        public static void main(String[] arguments) throws NoSuchAlgorithmException {
            GraspObject can = BenchHands.object("can", new Cylinder(0.033, 0.05, 0.003), 0.25);
            Grip grip = new Grip(
                    "top",
                    Grip.Approach.ABOVE,
                    new Grip.PalmToObject(0.03, Double.NaN),
                    0,
                    Map.of(),
                    List.of("left", "right", "thumb"));
            Scatter scatter = new Scatter(Scatter.Law.NORMAL, 0.015);
            Sampler sampler = new Sampler(
                    new Placement(scatter, scatter, new Scatter(Scatter.Law.UNIFORM, 0.3), Scatter.NONE),
                    Variation.DEFAULT,
                    new Streams(1, "reproducible"));
            List<Integer> samples = IntStream.range(0, 6).boxed().toList();
            List<ClosingSummary> runs = new ThreadJobs(Integer.getInteger("threads", 1))
                    .run(
                            samples,
                            () -> new ClosingSimulator(
                                    BenchHands.threeFinger(),
                                    grip,
                                    can,
                                    new Spread(0.4, 0.05),
                                    Numerics.DEFAULT,
                                    Criteria.DEFAULT),
                            (runner, sample) -> runner.run(sampler.conditions("can", sample)),
                            Jobs.Progress.NONE);
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            runs.forEach(run -> digest.update(bits(run).getBytes(StandardCharsets.UTF_8)));
            System.out.println(HexFormat.of().formatHex(digest.digest()));
        }

        // As bits: the text of a double is not the same on every Java.
        private static String bits(ClosingSummary s) {
            StringBuilder text = new StringBuilder(s.outcome().name());
            for (double value : new double[] {
                s.travel(),
                s.travelX(),
                s.travelY(),
                s.tilt(),
                s.sink(),
                s.landingForce(),
                s.peakForce(),
                s.peakPressure(),
                s.objectResidual(),
                s.jointResidual(),
                s.links(),
                s.steps(),
                s.iterations()
            }) {
                text.append(' ').append(Double.doubleToLongBits(value));
            }
            return text.append('\n').toString();
        }
    }
}
