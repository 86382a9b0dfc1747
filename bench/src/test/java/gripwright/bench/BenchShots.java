package gripwright.bench;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonObject;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Base64;
import java.util.List;
import java.util.zip.GZIPInputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Takes the screenshots of docs/shots on the demo; run by {@code ./check bench-shots}. */
class BenchShots {
    private static final Path SHOTS = Path.of("..", "docs", "shots");
    private static final int QUALITY = 82;
    /** Some seconds before the plate presses hardest. */
    private static final double PRESSED_SECONDS = 134.6;

    @TempDir
    Path folder;

    private List<String> rest = List.of();

    @Test
    void shotsOfTheDemoAtBothSizes() throws IOException {
        Files.createDirectories(SHOTS);
        try (DemoPage demo = new DemoPage(folder)) {
            Page hand = demo.open(1280, 800, ColorScheme.LIGHT, "#q2");
            top(hand, "#hand");
            hand.locator("#hand [data-key='hand.yaml: fingers.left.phalanges[0].length']")
                    .click();
            hand.locator("#field").fill("82 mm");
            hand.locator("#file-line ins").waitFor();
            shot(hand, "hand-1280");

            Page close = demo.open(1920, 1080, ColorScheme.LIGHT, "#q3&object=mug&grip=wrap&x=4&y=-8");
            close.locator("#sure[data-sure]").waitFor(DemoPage.attached());
            top(close, "#q3");
            close.locator("#cones").click();
            shot(close, "close-1920");

            Page map = demo.open(1280, 800, ColorScheme.LIGHT, "#q4&object=mug&grip=wrap");
            map.locator("#map-go").click();
            map.locator("html[data-map^=done]").waitFor(DemoPage.attached());
            top(map, "#map-say");
            shot(map, "map-1280");

            try (FakeRecording log = pressed()) {
                Page now = demo.open(1280, 800, ColorScheme.LIGHT, "#q7&taxel=p03");
                now.locator("html[data-now^=running]").waitFor(DemoPage.attached());
                now.locator("#feel tbody tr").first().waitFor(DemoPage.attached());
                top(now, "#q7");
                goOn(log, now);
                shot(now, "now-1280");
            }

            Page dark = demo.open(1920, 1080, ColorScheme.DARK, "#q4&object=mug&grip=wrap");
            dark.locator("#map-field").waitFor(DemoPage.attached());
            top(dark, "#q4");
            shot(dark, "map-dark-1920");
        }
    }

    /** The demo's invented log up to a press by the plate, as if it were being written. */
    private FakeRecording pressed() throws IOException {
        Path log = Path.of("..", "cli", "src", "main", "resources", "demo", "logs", "invented-calibration.csv.gz");
        try (BufferedReader lines = new BufferedReader(
                new InputStreamReader(new GZIPInputStream(Files.newInputStream(log)), StandardCharsets.UTF_8))) {
            List<String> all = lines.lines().toList();
            String columns = all.stream()
                    .filter(l -> l.startsWith("arrival,wall,"))
                    .findFirst()
                    .orElseThrow();
            FakeRecording made = new FakeRecording(
                    folder.resolve("demo"), "2026-11-25-100000.csv", columns.substring("arrival,wall,".length()));
            List<String> rows = all.stream()
                    .filter(l -> !l.startsWith("#") && !l.startsWith("arrival"))
                    .toList();
            int before = (int) rows.stream()
                    .takeWhile(l -> Double.parseDouble(l.substring(0, l.indexOf(','))) < PRESSED_SECONDS)
                    .count();
            made.write(String.join("\n", rows.subList(0, before)) + "\n");
            rest = List.copyOf(rows.subList(before, before + 400));
            return made;
        }
    }

    /** Goes on at the log's pace of 40 readings a second. */
    private void goOn(FakeRecording log, Page page) {
        for (int i = 0; i < 8; i++) {
            log.write(String.join("\n", rest.subList(10 * i, 10 * i + 10)) + "\n");
            page.waitForTimeout(250);
        }
    }

    private static void top(Page page, String what) {
        page.locator(what).evaluate("e => e.scrollIntoView({behavior: 'instant'})");
        page.waitForTimeout(400);
    }

    private static void shot(Page page, String name) throws IOException {
        page.waitForTimeout(600);
        JsonObject how = new JsonObject();
        how.addProperty("format", "webp");
        how.addProperty("quality", QUALITY);
        JsonObject answer = page.context().newCDPSession(page).send("Page.captureScreenshot", how);
        byte[] picture = Base64.getDecoder().decode(answer.get("data").getAsString());
        Files.write(SHOTS.resolve("bench-" + name + ".webp"), picture);
        assertThat(picture).as(name).hasSizeLessThan(150_000);
        page.close();
    }
}
