package gripwright.bench;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.assertions.PlaywrightAssertions;
import com.microsoft.playwright.options.ColorScheme;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Question 7 in a browser, on the demo, while a log grows. */
@Tag("slow")
class NowPageTest {
    private static final String COLUMNS = "seq,t,p00,p01,p02,p03,p04,p05,p06,p07,temp,ambient,F,pressed";

    @TempDir
    Path folder;

    private DemoPage demo;
    private final List<String> complaints = new ArrayList<>();
    private final AtomicInteger asked = new AtomicInteger();

    @BeforeEach
    void start() throws IOException {
        PlaywrightAssertions.setDefaultAssertionTimeout(20_000);
        demo = new DemoPage(folder);
    }

    @AfterEach
    void end() {
        demo.close();
    }

    private FakeRecording recording() {
        return new FakeRecording(folder.resolve("demo"), "a.csv", COLUMNS);
    }

    private static String pressed(int p03) {
        return "100000,100000,100000," + p03 + ",100000,100000,115000,,23.5,100000,0.25,4";
    }

    private Page open(ColorScheme scheme, String hash) {
        Page page = demo.open(1280, 800, scheme, hash);
        page.onConsoleMessage(m -> {
            if (m.type().equals("error")) {
                complaints.add(m.text());
            }
        });
        page.onPageError(e -> complaints.add("page: " + e));
        page.onRequest(r -> {
            if (r.url().contains("/api/now")) {
                asked.incrementAndGet();
            }
        });
        return page;
    }

    private static double height(Page page, int taxel) {
        return Double.parseDouble(page.locator("#now-pads .nowbar").nth(taxel).getAttribute("height"));
    }

    @Test
    void whatToRunIsSaidAndTheRecordingAppearsByItself() {
        Page page = open(ColorScheme.LIGHT, "#q7");
        assertThat(page.locator("#now-say")).containsText("./gripwright record demo --from serial:");
        // What is worked out above, once a strip of it is in view, must not push it out of view: then it would rightly
        // be
        // asked for no more.
        page.mouse().wheel(0, -40);
        assertThat(page.locator("#feel tbody tr")).hasCount(2);
        assertThat(page.locator("#now-say")).isInViewport();
        try (FakeRecording log = recording()) {
            log.rows(150, pressed(100_000));
            assertThat(page.locator("#now-say"))
                    .containsText("Recording for 1 s from serial:/dev/ttyACM0?baud=115200 into logs/a.csv");
            assertThat(page.locator("#now-pads .nowbar")).hasCount(8);
            assertThat(page.locator("#now-curves canvas")).hasCount(2);
            assertThat(page.locator("#now-faults")).containsText("p06 reached an end of the chip's range");
            log.rows(100, pressed(102_000));
            assertThat(page.locator("html[data-now='running 250']")).hasCount(1);
            assertThat(height(page, 3)).isGreaterThan(20);
            assertThat(height(page, 2)).isLessThan(2);
            assertThat(page.locator("#now-scale")).hasText("A full bar is 3000 Pa above a taxel's zero.");
            assertThat(page.locator("#now-tallies")).containsText("no reading missing");
        }
        assertThat(page.locator("#now-say")).containsText("No recording runs.");
        assertThat(complaints).isEmpty();
    }

    @Test
    void aTaxelIsChosenFromTheKeyboardAndStandsInTheAddress() {
        try (FakeRecording log = recording()) {
            log.rows(300, pressed(102_000));
            Page page = open(ColorScheme.LIGHT, "#q7&taxel=p02");
            assertThat(page.locator("#now-one")).containsText("p02 of left strip: 100");
            page.locator("#now-pads").focus();
            page.keyboard().press("ArrowRight");
            assertThat(page.locator("#now-one")).containsText("p03 of left strip");
            assertThat(page.locator("#now-curves h3").first()).containsText("p03 above its zero, Pa");
            assertThat(page.url()).contains("taxel=p03");
            assertThat(page.locator("#now-taxel")).hasValue("p03");
            log.rows(10, pressed(103_000));
            assertThat(page.locator("#now-one")).containsText("1000\u00a0Pa above its zero");
            page.keyboard().press("z");
            assertThat(page.locator("#now-one")).containsText("0\u00a0Pa above its zero");
            assertThat(page.locator("#now-zero")).hasAttribute("aria-pressed", "true");
            page.keyboard().press("h");
            assertThat(page.locator("#now-hold")).hasAttribute("aria-pressed", "true");
            log.rows(10, pressed(104_000));
            page.waitForTimeout(700);
            assertThat(page.locator("html[data-now='running 310']")).hasCount(1);
            page.keyboard().press("h");
            assertThat(page.locator("html[data-now='running 320']")).hasCount(1);
            page.locator("#now-pads .click").first().click();
            assertThat(page.locator("#now-one")).containsText("p00 of left strip");
            page.locator("#fold-now summary").click();
            assertThat(page.locator("#now-table tbody tr")).hasCount(8);
            assertThat(page.locator("#now-table tbody tr").nth(7)).containsText("gives no number");
        }
        assertThat(complaints).isEmpty();
    }

    @Test
    void nothingIsAskedWhileTheSectionIsOutOfView() {
        try (FakeRecording log = recording()) {
            log.rows(10, pressed(100_000));
            Page page = open(ColorScheme.LIGHT, "#q1");
            page.waitForTimeout(800);
            assertThat(asked.get()).isZero();
            page.locator(".strip a[data-q='7']").click();
            assertThat(page.locator("#a7")).containsText("readings a second");
            page.locator(".strip a[data-q='1']").click();
            assertThat(page.locator("#a7")).hasClass(java.util.regex.Pattern.compile(".*stale.*"));
            int before = asked.get();
            page.waitForTimeout(1_500);
            assertThat(asked.get()).isEqualTo(before);
        }
    }

    @Test
    void axeFindsNothingSeriousAndNothingSticksOutInLightDarkAndNarrow() throws IOException {
        String axe;
        try (InputStream in = NowPageTest.class.getResourceAsStream("/axe.min.js")) {
            axe = new String(Objects.requireNonNull(in).readAllBytes(), StandardCharsets.UTF_8);
        }
        try (FakeRecording log = recording()) {
            log.rows(300, pressed(102_000));
            for (ColorScheme scheme : List.of(ColorScheme.LIGHT, ColorScheme.DARK)) {
                Page page = open(scheme, "#q7");
                page.locator("#fold-now").evaluate("d => { d.open = true; }");
                assertThat(page.locator("#now-table tbody tr")).hasCount(8);
                page.evaluate(axe);
                Object found =
                        page.evaluate("async () => (await axe.run('#q7', {resultTypes: ['violations']})).violations"
                                + ".filter(v => v.impact === 'serious' || v.impact === 'critical')"
                                + ".map(v => v.id + ': ' + v.nodes.map(n => n.html.slice(0, 160)).join(' | '))");
                assertThat((List<?>) found).as(scheme.toString()).isEmpty();
                page.setViewportSize(480, 800);
                page.waitForTimeout(600);
                Object out = page.evaluate("[...document.querySelectorAll('#q7 *')].filter(e => !e.closest('.tscroll')"
                        + " && e.getBoundingClientRect().right > document.querySelector('#q7').getBoundingClientRect()"
                        + ".right + 1).map(e => e.outerHTML.slice(0, 120))");
                assertThat((List<?>) out).isEmpty();
                page.close();
            }
        }
    }
}
