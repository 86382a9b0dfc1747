package gripwright.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gripwright.files.AssumptionEdit.Change;
import gripwright.files.AssumptionEdit.Edit;
import gripwright.model.Project;
import gripwright.study.ExplainResult;
import gripwright.study.ExplainResult.Estimate;
import gripwright.study.ExplainResult.Placing;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class AssumptionEditTest {
    @TempDir
    @SuppressWarnings("NullAway.Init")
    Path path;

    private static Estimate estimate(String subject, double value, double low, double high, double chance) {
        return new Estimate(subject, value, low, high, false, false, 30, chance, chance);
    }

    private static ExplainResult result(List<Estimate> friction, Estimate common, Optional<Estimate> scatter) {
        return new ExplainResult(
                "hand",
                60,
                List.of(),
                10,
                10,
                List.of(),
                friction,
                Optional.of(common),
                scatter,
                new double[] {0.5, 1},
                new double[] {1},
                new double[][] {{0, -1}},
                List.of(),
                Placing.DEFAULT);
    }

    private Edit edit(ExplainResult result) throws IOException {
        return AssumptionEdit.of(path, ProjectReader.readMarked(path), result);
    }

    /** The diff applied by hand, as patch would; nothing but the values may change. */
    private Project applied(Edit edit) throws IOException {
        Map<String, byte[]> instead = new HashMap<>();
        String file = "";
        List<String> lines = new ArrayList<>();
        int line = 0;
        for (String text : edit.diff().lines().toList()) {
            if (text.startsWith("+++ ")) {
                file = text.substring(4);
                lines = new ArrayList<>(Files.readAllLines(path.resolve(file)));
            } else if (text.startsWith("@@ ")) {
                line = Integer.parseInt(text.replaceAll("@@ -(\\d+) .*", "$1"));
            } else if (text.startsWith("-") && !text.startsWith("--- ")) {
                assertThat(lines.get(line - 1)).isEqualTo(text.substring(1));
            } else if (text.startsWith("+")) {
                lines.set(line - 1, text.substring(1));
                instead.put(file, String.join("\n", lines).getBytes(StandardCharsets.UTF_8));
            }
        }
        return ProjectReader.readMarked(path, instead).project();
    }

    @Test
    void aValueAtTheEndOfWhatWasTriedIsSaidToBeThat() throws IOException {
        Folder.starting(path);
        String surface = ProjectReader.read(path).need().objects().get(0).surface();
        Estimate low = new Estimate(surface, 0.4, 0.4, 0.7, true, false, 30, 0.01, 0.01);
        Edit edit = edit(result(List.of(low), low, Optional.empty()));
        assertThat(edit.changes()).isNotEmpty();
        assertThat(edit.notes())
                .containsExactly("The edit offered for friction on " + surface
                        + " is the end of what was tried, 0.4 times; it may be even less. Measure it.");
    }

    @Test
    void refutedFrictionAndScatterBecomeTheNewValuesOfTheirLines() throws IOException {
        Folder.starting(path);
        Project before = ProjectReader.read(path);
        Estimate glass = estimate("glass", 0.5, 0.4, 0.6, 0.001);
        Estimate paint = estimate("painted metal", 0.9, 0.7, 1.1, 0.5);
        Estimate scatter = estimate("placement", 1.5, 1.2, 1.9, 0.01);
        Edit edit = edit(
                result(List.of(glass, paint), estimate("all surfaces", 0.7, 0.6, 0.8, 0.01), Optional.of(scatter)));
        Project after = applied(edit);
        var was = before.hand().friction().of("soft", "glass").orElseThrow();
        var is = after.hand().friction().of("soft", "glass").orElseThrow();
        assertThat(is.mean()).isCloseTo(0.5 * was.mean(), within(0.005));
        assertThat(is.deviation()).isCloseTo(0.2 / 3.92 * was.mean(), within(0.001));
        assertThat(after.hand().friction().of("soft", "painted metal"))
                .as("not refuted")
                .isEqualTo(before.hand().friction().of("soft", "painted metal"));
        assertThat(after.need().placement().x().size()).isCloseTo(0.018, within(1e-9));
        assertThat(after.need().placement().turn().size()).isCloseTo(Math.toRadians(22.5), within(0.01));
        assertThat(edit.changes()).extracting(Change::file).contains("hand.yaml", "need.yaml");
        assertThat(edit.notes()).isEmpty();
    }

    @Test
    void whereOnlyAllSurfacesTogetherRefuteItAllOfThemChange() throws IOException {
        Folder.starting(path);
        Project before = ProjectReader.read(path);
        Estimate glass = estimate("glass", 0.7, 0.4, 1.1, 0.2);
        Estimate paint = estimate("painted metal", 0.8, 0.5, 1.1, 0.2);
        Edit edit =
                edit(result(List.of(glass, paint), estimate("all surfaces", 0.75, 0.6, 0.9, 0.01), Optional.empty()));
        for (String surface : new String[] {"glass", "painted metal"}) {
            assertThat(applied(edit)
                            .hand()
                            .friction()
                            .of("soft", surface)
                            .orElseThrow()
                            .mean())
                    .isCloseTo(
                            0.75
                                    * before.hand()
                                            .friction()
                                            .of("soft", surface)
                                            .orElseThrow()
                                            .mean(),
                            within(0.006));
        }
    }

    @Test
    void whereOneFactorExplainsEverySurfaceItIsOfferedForAllThoughOnlyOneRefutesAlone() throws IOException {
        Folder.starting(path);
        Estimate glass = estimate("glass", 0.6, 0.45, 0.75, 0.001);
        Estimate paint = estimate("painted metal", 0.65, 0.4, 0.95, 0.053);
        Edit edit =
                edit(result(List.of(glass, paint), estimate("all surfaces", 0.6, 0.5, 0.7, 0.001), Optional.empty()));
        assertThat(edit.changes())
                .extracting(Change::key)
                .contains("friction.soft.glass", "friction.soft.painted metal");
        assertThat(edit.notes())
                .containsExactly(
                        "One factor explains the trials on every surface, so the edit offers it for all 2 of them.");
    }

    @Test
    void whatTheTrialsSupportStaysAsItIs() throws IOException {
        Folder.starting(path);
        Estimate glass = estimate("glass", 0.95, 0.8, 1.1, 0.6);
        Edit edit = edit(result(List.of(glass), glass, Optional.empty()));
        assertThat(edit.diff()).isEmpty();
        assertThat(edit.changes()).isEmpty();
    }
}
