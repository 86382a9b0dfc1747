package gripwright.bench;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Measures the page on the demo, in the browser, and writes the figures into docs/bench.md. Run by
 * {@code ./check bench-figures}; not part of {@code ./check}, because a time is not a fact about the program alone.
 */
class BenchFigures {
    private static final Path PAGE = Path.of("..", "docs", "bench.md");
    private static final String BEGIN = "<!-- figures: written by ./check bench-figures -->";
    private static final String END = "<!-- end of figures -->";
    private static final int MOVES = 60;
    private static final int CLOSINGS = 25;

    @TempDir
    Path folder;

    private final List<String> rows = new ArrayList<>();

    @Test
    void figuresOfTheDemo() throws Exception {
        double load = ManagementFactory.getOperatingSystemMXBean().getSystemLoadAverage();
        try (DemoPage demo = new DemoPage(folder)) {
            demo.open(1280, 800, ColorScheme.LIGHT, "").close(); // the server is warm after this
            opening(demo);
            dragging(demo);
            closing(demo);
            map(demo);
        }
        String text = String.join("\n", rows);
        System.out.println("load " + load + "\n" + text);
        String before = Files.readString(PAGE);
        int from = before.indexOf(BEGIN);
        int to = before.indexOf(END);
        assertThat(from).isPositive().isLessThan(to);
        Files.writeString(
                PAGE,
                before.substring(0, from)
                        + BEGIN
                        + "\n"
                        + Runtime.getRuntime().availableProcessors()
                        + " cores; load average at the start " + number(load, 1)
                        + " (what other programs asked of them), Chromium with software rendering.\n\n"
                        + "| What | Bar | Measured |\n|---|---|---|\n"
                        + text
                        + "\n"
                        + before.substring(to));
    }

    private void row(String what, String bar, String measured) {
        rows.add("| " + what + " | " + bar + " | " + measured + " |");
    }

    private static String number(double value, int decimals) {
        return String.format(Locale.ROOT, "%." + decimals + "f", value);
    }

    private void opening(DemoPage demo) {
        Page page = demo.open(1280, 800, ColorScheme.LIGHT, "");
        double paint = number(page, "performance.getEntriesByName('first-contentful-paint')[0].startTime");
        double bytes = number(
                page,
                "[...performance.getEntriesByType('resource'), ...performance.getEntriesByType('navigation')]"
                        + ".reduce((sum, e) => sum + e.transferSize, 0)");
        page.close();
        row("first paint, warm server", "under 1.5 s", number(paint / 1e3, 2) + " s");
        row("total transfer until the first closing is drawn", "under 2.5 MB", number(bytes / 1e6, 2) + " MB");
        assertThat(bytes).isBetween(1e5, 2.5e6);
    }

    private void dragging(DemoPage demo) {
        Page page = demo.open(1280, 800, ColorScheme.LIGHT, "#q3&object=mug&grip=wrap");
        page.locator("#sure[data-sure]").waitFor(DemoPage.attached());
        page.locator("[data-view=top]").click();
        page.locator("#stage").scrollIntoViewIfNeeded();
        int known = times(page).length;
        var box = page.locator("#stage").boundingBox();
        double x = box.x + box.width / 2;
        double y = box.y + box.height / 2;
        page.mouse().move(x, y);
        page.mouse().down();
        for (int i = 1; i <= MOVES; i++) {
            page.mouse().move(x + 40 * Math.sin(i * 0.35), y + 30 * Math.sin(i * 0.23));
            page.waitForTimeout(80);
        }
        page.mouse().up();
        page.waitForTimeout(1500);
        double[] all = times(page);
        double[] dragged = Arrays.copyOfRange(all, Math.min(known, all.length - 1), all.length);
        page.close();
        Arrays.sort(dragged);
        row(
                "request to final state in the view while dragging, median of " + dragged.length + " answers to "
                        + MOVES + " moves",
                "under 100 ms",
                number(dragged[dragged.length / 2], 0) + " ms (slowest tenth from "
                        + number(dragged[(int) (0.9 * dragged.length)], 0) + " ms)");
    }

    /** Kept by the page: the last hundred of them [ms]. */
    private static double[] times(Page page) {
        String times = String.valueOf(page.evaluate("document.documentElement.dataset.times"));
        return Arrays.stream(times.split(" ")).mapToDouble(Double::parseDouble).toArray();
    }

    private void closing(DemoPage demo) throws IOException, InterruptedException {
        HttpResponse<byte[]> packed = demo.bench.client.send(
                demo.bench
                        .request("/api/close?object=mug&grip=wrap&x=7&y=3")
                        .header("Accept-Encoding", "gzip")
                        .build(),
                HttpResponse.BodyHandlers.ofByteArray());
        double start = processorSeconds();
        for (int i = 0; i < CLOSINGS; i++) {
            demo.bench.get("/api/close?object=mug&grip=wrap&x=" + i + "&y=-" + i + "&number=" + i);
        }
        row(
                "processor time of the server for one closing with its moments, mean of " + CLOSINGS,
                "",
                number(1e3 * (processorSeconds() - start) / CLOSINGS, 0) + " ms");
        row("one closing with its moments, packed", "under 300 kB", number(packed.body().length / 1e3, 0) + " kB");
        assertThat(packed.body()).hasSizeBetween(2_000, 300_000);
    }

    private void map(DemoPage demo) {
        Page page = demo.open(1280, 800, ColorScheme.LIGHT, "#q4");
        page.locator("#sure[data-sure]").waitFor(DemoPage.attached());
        double before = processorSeconds();
        page.evaluate("() => { window.seen = []; new MutationObserver(() => window.seen.push([performance.now(),"
                + " document.documentElement.dataset.map])).observe(document.documentElement,"
                + " {attributes: true, attributeFilter: ['data-map']}); window.begun = performance.now();"
                + " document.getElementById('map-go').click(); }");
        page.locator("html[data-map^=done]").waitFor(DemoPage.attached());
        double coarse = number(page, "window.seen.find(s => Number(s[1].split(' ')[1]) >= 11)[0] - window.begun");
        double fine = number(page, "window.seen.find(s => Number(s[1].split(' ')[1]) >= 41)[0] - window.begun");
        double done = number(page, "window.seen.find(s => s[1].startsWith('done'))[0] - window.begun");
        double used = processorSeconds() - before;
        page.close();
        row("map of the first object: the first picture, 11 x 11", "under 2 s", number(coarse / 1e3, 1) + " s");
        row("41 x 41, one run where it matters", "", number(fine / 1e3, 1) + " s");
        row(
                "41 x 41 complete with held shares",
                "under 15 s",
                number(done / 1e3, 1) + " s; processor time of the server " + number(used, 1) + " s, so at least "
                        + number(used / 2, 1) + " s on two free cores");
    }

    private static double processorSeconds() {
        return ((com.sun.management.OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean())
                        .getProcessCpuTime()
                / 1e9;
    }

    private static double number(Page page, String script) {
        return ((Number) page.evaluate(script)).doubleValue();
    }
}
