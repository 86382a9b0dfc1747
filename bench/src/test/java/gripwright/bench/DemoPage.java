package gripwright.bench;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserType;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Playwright;
import com.microsoft.playwright.options.ColorScheme;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/** A bench over a fresh copy of the demo, and a browser to look at it. */
final class DemoPage implements AutoCloseable {
    private static final Path DEMO = Path.of("..", "cli", "src", "main", "resources", "demo");

    final TestBench bench;
    private final Playwright playwright;
    private final Browser browser;

    /** @param in where a folder "demo" is made; its name stands on the page */
    DemoPage(Path in) throws IOException {
        Path folder = Files.createDirectories(in.resolve("demo"));
        try (Stream<Path> files = Files.list(DEMO)) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                Files.copy(file, folder.resolve(file.getFileName().toString()));
            }
        }
        bench = new TestBench(folder, 0);
        playwright = Playwright.create(
                new Playwright.CreateOptions().setEnv(Map.of("PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD", "1")));
        browser = playwright
                .chromium()
                .launch(new BrowserType.LaunchOptions()
                        .setExecutablePath(Path.of("/usr/bin/chromium"))
                        .setHeadless(true)
                        .setArgs(List.of("--no-sandbox", "--use-angle=swiftshader", "--enable-unsafe-swiftshader")));
    }

    /** A page of its own, with nothing in its cache, once the closing in view is drawn. */
    Page open(int width, int height, ColorScheme scheme, String hash) {
        Page page = browser.newPage(
                new Browser.NewPageOptions().setViewportSize(width, height).setColorScheme(scheme));
        page.setDefaultTimeout(120_000);
        page.navigate(bench.bench.address() + hash);
        page.locator("html[data-ready=true]").waitFor(attached());
        page.locator("#outcome").waitFor(attached());
        return page;
    }

    static com.microsoft.playwright.Locator.WaitForOptions attached() {
        return new com.microsoft.playwright.Locator.WaitForOptions()
                .setState(com.microsoft.playwright.options.WaitForSelectorState.ATTACHED)
                .setTimeout(900_000);
    }

    @Override
    public void close() {
        browser.close();
        playwright.close();
        bench.close();
    }
}
