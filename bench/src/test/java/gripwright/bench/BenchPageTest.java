package gripwright.bench;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserType;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Playwright;
import com.microsoft.playwright.assertions.LocatorAssertions;
import com.microsoft.playwright.assertions.PlaywrightAssertions;
import com.microsoft.playwright.options.ColorScheme;
import gripwright.files.Tables;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Walks the page as a user would, in Debian's Chromium. With -Dshots=DIR it leaves screenshots there. */
@Tag("slow")
class BenchPageTest {
    private static Playwright playwright;
    private static Browser browser;
    /** Studies take longer than clicks. */
    private static final LocatorAssertions.HasCountOptions COUNTED =
            new LocatorAssertions.HasCountOptions().setTimeout(90_000);

    private static final LocatorAssertions.HasCountOptions NOT_NONE =
            new LocatorAssertions.HasCountOptions().setTimeout(60_000);
    private static final LocatorAssertions.ContainsTextOptions CONTAINED =
            new LocatorAssertions.ContainsTextOptions().setTimeout(60_000);

    @TempDir
    Path folder;

    private TestBench bench;
    private Page page;
    private final List<String> complaints = new ArrayList<>();

    @BeforeAll
    static void startBrowser() {
        playwright = Playwright.create(
                new Playwright.CreateOptions().setEnv(Map.of("PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD", "1")));
        PlaywrightAssertions.setDefaultAssertionTimeout(20_000);
        browser = playwright
                .chromium()
                .launch(new BrowserType.LaunchOptions()
                        .setExecutablePath(Path.of("/usr/bin/chromium"))
                        .setHeadless(true)
                        // The tests may run as root, and there may be no graphics processor.
                        .setArgs(List.of("--no-sandbox", "--use-angle=swiftshader", "--enable-unsafe-swiftshader")));
    }

    @AfterAll
    static void endBrowser() {
        playwright.close();
    }

    @BeforeEach
    void open() {
        bench = new TestBench(folder, 0);
        page = page(1280, 800, ColorScheme.LIGHT);
        page.navigate(bench.bench.address());
        ready();
    }

    @AfterEach
    void close() {
        page.close();
        bench.close();
    }

    private Page page(int width, int height, ColorScheme scheme) {
        Page made = browser.newPage(
                new Browser.NewPageOptions().setViewportSize(width, height).setColorScheme(scheme));
        made.setDefaultTimeout(15_000);
        made.onConsoleMessage(m -> {
            if (m.type().equals("error")) {
                complaints.add(m.text());
            }
        });
        made.onPageError(e -> complaints.add("page: " + e));
        return made;
    }

    private void ready() {
        assertThat(page.locator("html[data-ready=true]")).hasCount(1);
        assertThat(page.locator("#outcome")).isVisible();
    }

    private String outcome() {
        return page.locator("#outcome").getAttribute("data-outcome");
    }

    @Test
    void opensWithoutComplaintAndAsksNoOtherMachine() {
        Page other = page(1280, 800, ColorScheme.LIGHT);
        List<String> asked = new ArrayList<>();
        other.onRequest(r -> asked.add(r.url()));
        other.navigate(bench.bench.address());
        assertThat(other.locator("#outcome")).isVisible();
        assertThat(asked)
                .isNotEmpty()
                .allMatch(url -> url.startsWith(bench.bench.address()) || url.startsWith("data:"));
        assertThat(page.locator("#notice")).isEmpty();
        assertThat(page.locator("#plots canvas")).hasCount(3);
        assertThat(complaints).isEmpty();
        shots("open");
        other.close();
    }

    @Test
    void readsWellAtBothSizesAndInTheDark() {
        for (ColorScheme scheme : List.of(ColorScheme.LIGHT, ColorScheme.DARK)) {
            Page wide = page(1920, 1080, scheme);
            wide.navigate(bench.bench.address() + "#q3");
            assertThat(wide.locator("#plots canvas")).hasCount(3);
            // Nothing sticks out of the page sideways.
            int width = wide.locator("#sheet").boundingBox() == null
                    ? 0
                    : (int) wide.locator("body").boundingBox().width;
            assertThat(width).isLessThanOrEqualTo(1920);
            String dir = System.getProperty("shots", "");
            if (!dir.isEmpty()) {
                wide.screenshot(new Page.ScreenshotOptions().setPath(Path.of(dir, "wide-" + scheme + ".png")));
            }
            wide.close();
        }
        assertThat(complaints).isEmpty();
    }

    @Test
    void lengthIsChangedInTheFileAtThatValueOnlyAndComesBack() {
        String before = bench.text("hand.yaml");
        page.locator("#hand [data-key='hand.yaml: fingers.left.phalanges[0].length']")
                .or(page.locator("#hand [data-key='hand.yaml: fingers.right.phalanges[0].length']"))
                .or(page.locator("#hand [data-key='hand.yaml: fingers.thumb.phalanges[0].length']"))
                .first()
                .click();
        page.locator("#field").fill("80 mm");
        assertThat(page.locator("#file-line")).containsText("80 mm");
        shots("edit");
        page.locator("#save").click();
        assertThat(page.locator("#undo")).isEnabled();
        String after = bench.text("hand.yaml");
        assertThat(after).contains("# The stiff first joint and the soft second one make the tip curl early.");
        assertThat(after.replaceFirst("length: 80 mm", "length: 75 mm")).isEqualTo(before);
        page.locator("#undo").click();
        assertThat(page.locator("#redo")).isEnabled();
        assertThat(bench.text("hand.yaml")).isEqualTo(before);
    }

    @Test
    void openFieldIsInSightAsAWholeAndNamesWhatChangesWithIt() {
        Page low = page(1280, 560, ColorScheme.LIGHT);
        low.navigate(bench.bench.address());
        Locator value = low.locator("#hand [data-key='hand.yaml: fingers.left.phalanges[0].length']")
                .first();
        // The value at the lower edge of the window: there is no room under it.
        value.evaluate("e => { const b = e.getBoundingClientRect();"
                + " scrollTo({top: scrollY + b.bottom - innerHeight + 30, behavior: 'instant'}); }");
        value.click();
        assertThat(low.locator("#file-line del")).hasCount(1);
        assertThat((Boolean) low.evaluate("() => { const b = document.querySelector('.card').getBoundingClientRect();"
                        + " return b.top >= 0 && b.bottom <= innerHeight; }"))
                .isTrue();
        assertThat(low.locator("#also")).containsText("fingers, right, phalanges 1, length");
        low.close();
    }

    @Test
    void wrongUnitIsExplainedBesideTheFieldAndNotSaved() {
        String before = bench.text("need.yaml");
        page.locator("#objects-table [aria-label^='change objects, mug, mass']").click();
        page.locator("#field").fill("330 mm");
        Locator wrong = page.locator("#field-fault");
        assertThat(wrong).containsText("not saved");
        assertThat(wrong).containsText("need.yaml:");
        assertThat(page.locator("#save")).isDisabled();
        shots("wrong-unit");
        assertThat(bench.text("need.yaml")).isEqualTo(before);
    }

    @Test
    void draggingOrTypingThePlacementChangesTheOutcomeAndTheAddress() {
        page.locator("#object").selectOption("mug");
        assertThat(page.locator("#a3")).containsText("mug");
        String nominal = outcome();
        page.locator("#y").fill("-120");
        assertThat(page.locator("#outcome")).not().hasAttribute("data-outcome", nominal);
        assertThat(page.url()).contains("y=-120").contains("object=mug");
        page.locator("#nominal").click();
        assertThat(page.locator("#outcome")).hasAttribute("data-outcome", nominal);
        page.locator("[data-view=top]").click();
        page.locator("#stage").scrollIntoViewIfNeeded();
        var box = page.locator("#stage").boundingBox();
        double x = box.x + box.width / 2;
        double y = box.y + box.height / 2;
        page.mouse().move(x, y);
        page.mouse().down();
        for (int i = 1; i <= 12; i++) {
            page.mouse().move(x, y + 16 * i);
            page.waitForTimeout(60);
        }
        page.mouse().up();
        assertThat(page.locator("#outcome")).not().hasAttribute("data-outcome", nominal);
        page.waitForTimeout(1500);
        String times = page.locator("html").getAttribute("data-times");
        System.out.println("request to final state [ms]: " + times);
        shots("dragged");
        page.locator("#scrub").fill("0.5");
        assertThat(page.locator("#tension")).containsText("N");
    }

    @Test
    void mapFillsInAndACellPutsItsClosingInTheView() {
        page.locator("#cells").selectOption("11");
        page.locator("#map-go").click();
        assertThat(page.locator("#map-field")).hasCount(1, COUNTED);
        var box = page.locator("#map-field").boundingBox();
        page.locator("#map-field").scrollIntoViewIfNeeded();
        box = page.locator("#map-field").boundingBox();
        page.mouse().click(box.x + 0.95 * box.width, box.y + box.height / 2);
        assertThat(page.locator("#map-tip")).containsText("x 60, y 0");
        assertThat(page.url()).contains("x=60");
        shots("map");
    }

    @Test
    void invalidFileIsShownInTheWordsOfTheCommandLineAndGoesAwayWhenMended() {
        String sound = bench.text("hand.yaml");
        bench.write("hand.yaml", sound.replace("length: 75 mm, width: 20 mm", "length: 75 kg, width: 20 mm"));
        assertThat(page.locator("#project-fault")).containsText("hand.yaml:");
        assertThat(page.locator("#project-fault")).containsText("75 kg");
        assertThat(page.locator("#project-fault")).containsText("expected");
        shots("faults");
        bench.write("hand.yaml", sound);
        assertThat(page.locator("#project-fault")).hasCount(0);
    }

    @Test
    void pageRecoversWhenTheServerComesBack() {
        int port = bench.port();
        bench.close();
        assertThat(page.locator("#lost")).isVisible();
        bench = new TestBench(folder, port);
        assertThat(page.locator("#lost")).hasCount(0);
        page.locator("#runs").fill("1");
        page.locator("#trials-go").click(); // needs the new server's token
        assertThat(page.locator("#trials table")).hasCount(1, COUNTED);
        assertThat(page.locator("#trials-fault")).isEmpty();
        shots("trials");
    }

    private static final String FIRST_LENGTH = "#hand [data-key='hand.yaml: fingers.left.phalanges[0].length']";

    @Test
    void arrowheadIsPulledAndWhatWillChangeIsShownBeforeItIsSaved() {
        String before = bench.text("hand.yaml");
        Locator head = page.locator("#hand .grab[data-drag='hand.yaml: fingers.left.phalanges[0].length']")
                .last();
        head.scrollIntoViewIfNeeded();
        var box = head.boundingBox();
        double x = box.x + box.width / 2;
        double y = box.y + box.height / 2;
        double ux = Double.parseDouble(head.getAttribute("data-ux"));
        double uy = Double.parseDouble(head.getAttribute("data-uy"));
        page.mouse().move(x, y);
        page.mouse().down();
        page.mouse().move(x + 12 * ux, y + 12 * uy);
        page.mouse().move(x + 24 * ux, y + 24 * uy);
        assertThat(page.locator(FIRST_LENGTH)).containsText("\u0394");
        page.mouse().up();
        String shown = page.locator("#field").inputValue();
        double length = Double.parseDouble(shown.replace(" mm", ""));
        assertThat(length).isGreaterThan(75).isLessThan(95);
        assertThat(page.locator("#file-line ins")).containsText("length: " + shown);
        assertThat(bench.text("hand.yaml")).as("not saved yet").isEqualTo(before);
        page.locator("#save").click();
        assertThat(page.locator("#a2c")).containsText("was 75 mm");
        assertThat(bench.text("hand.yaml"))
                .isEqualTo(before.replaceFirst("length: 75 mm, width: 20", "length: " + shown + ", width: 20"));
    }

    @Test
    void valueIsChangedFromTheKeyboardAlone() {
        String before = bench.text("hand.yaml");
        page.locator(FIRST_LENGTH).focus();
        page.keyboard().press("ArrowUp");
        assertThat(page.locator("#field")).hasValue("76 mm");
        page.keyboard().press("Shift+ArrowUp");
        assertThat(page.locator("#field")).hasValue("86 mm");
        assertThat(page.locator("#file-line ins")).containsText("86 mm");
        page.keyboard().press("Escape");
        assertThat(page.locator("#field")).hasCount(0);
        assertThat(bench.text("hand.yaml")).isEqualTo(before);
        assertThat(page.locator(FIRST_LENGTH)).isFocused();
        page.keyboard().press("Enter");
        page.keyboard().press("ArrowDown");
        assertThat(page.locator("#file-line ins")).containsText("74 mm");
        page.keyboard().press("Enter");
        assertThat(page.locator("#undo")).isEnabled();
        assertThat(bench.text("hand.yaml")).contains("length: 74 mm, width: 20 mm");
    }

    @Test
    void fileChangedMeanwhileShowsBothValuesAndNothingIsLost() {
        page.locator(FIRST_LENGTH).click();
        page.locator("#field").fill("80 mm");
        assertThat(page.locator("#save")).isEnabled();
        String theirs = bench.text("hand.yaml").replace("length: 75 mm, width: 20 mm", "length: 77 mm, width: 20 mm");
        bench.write("hand.yaml", theirs);
        page.locator("#save").click();
        assertThat(page.locator("#field-fault")).containsText("in the file now: 77 mm");
        assertThat(page.locator("#field-fault")).containsText("yours:           80 mm");
        assertThat(bench.text("hand.yaml")).isEqualTo(theirs);
    }

    @Test
    void forcesFrictionConesAndSurenessOfAClosingAreShown() {
        assertThat(page.locator("#forces tbody tr")).not().hasCount(0);
        assertThat(page.locator("#sure[data-sure]")).containsText("runs with friction", CONTAINED);
        assertThat(page.locator("#stage .cone")).hasCount(0);
        page.locator("#stage").focus();
        page.keyboard().press("c");
        assertThat(page.locator("#stage .cone")).not().hasCount(0);
        assertThat(page.locator("#cones")).hasAttribute("aria-pressed", "true");
        page.locator("#scrub").focus();
        page.keyboard().press("Home");
        assertThat(page.locator("#tension")).containsText("coming in");
        page.keyboard().press("End");
        assertThat(page.locator("#tension")).containsText("lifting");
    }

    @Test
    void mapGoesOnByItselfWithANewServer() {
        page.locator("#cells").selectOption("21");
        page.locator("#map-go").click();
        assertThat(page.locator("#map .cells rect")).not().hasCount(0, NOT_NONE);
        int port = bench.port();
        bench.close();
        assertThat(page.locator("#lost")).isVisible();
        bench = new TestBench(folder, port);
        assertThat(page.locator("#lost")).hasCount(0);
        assertThat(page.locator("html[data-map^='done 21']")).hasCount(1, COUNTED);
        assertThat(page.locator("#map-fault")).isEmpty();
        // The map's cells are reached from the keyboard too.
        page.locator("#map-field").focus();
        page.keyboard().press("ArrowRight");
        assertThat(page.locator("#map-tip")).containsText("x 6, y 0");
    }

    @Test
    void padsAreLookedIntoWhenTheirQuestionIsInView() {
        assertThat(page.locator("#feel-say")).hasText("\u200a");
        page.locator(".strip a[data-q='6']").click();
        assertThat(page.locator("#feel-say")).containsText("no pads.yaml");
        assertThat(complaints).allMatch(c -> c.contains("404"));
    }

    @Test
    void tablesAndReportAreHandedOut() {
        page.locator(".files a[href='/api/trials.csv']").click();
        assertThat(page.locator("#trials-fault")).containsText("there are no trials yet");
        page.locator("#runs").fill("1");
        page.locator("#trials-go").click();
        assertThat(page.locator("#trials table")).hasCount(1, COUNTED);
        String csv = bench.get("/api/trials.csv").body();
        assertThat(csv).startsWith("object,grip,chosen,held,decided,share,share_low_95,share_high_95,seed,");
        long pairs = page.locator("#trials tbody .bc").count();
        assertThat(csv.lines()).hasSize((int) pairs + 1);
        // Every pair has one run for choosing and one for scoring, but for objects with one grip.
        assertThat(bench.get("/api/runs.csv").body().lines())
                .hasSizeGreaterThan((int) pairs + 1)
                .hasSizeLessThanOrEqualTo(2 * (int) pairs + 1);
        if (Tables.parquet()) {
            assertThat(bench.get("/api/runs.parquet").body()).startsWith("PAR1");
        } else {
            assertThat(bench.get("/api/runs.parquet").body()).contains("with-tables");
            page.locator("#parquet-how summary").click();
            assertThat(page.locator("#parquet-how p")).containsText("with-tables");
        }
        assertThat(bench.get("/api/trials.json").body()).contains("\"kind\": \"gripwright trials 1\"");
        assertThat(bench.get("/api/report.html").body()).contains("<!DOCTYPE html>");
    }

    @Test
    void axeFindsNothingSeriousInLightAndDark() throws IOException {
        String axe;
        try (InputStream in = BenchPageTest.class.getResourceAsStream("/axe.min.js")) {
            axe = new String(Objects.requireNonNull(in).readAllBytes(), StandardCharsets.UTF_8);
        }
        for (ColorScheme scheme : List.of(ColorScheme.LIGHT, ColorScheme.DARK)) {
            Page other = page(1280, 800, scheme);
            other.navigate(bench.bench.address());
            assertThat(other.locator("#sure[data-sure]")).hasCount(1, COUNTED);
            other.locator("#cells").selectOption("11");
            other.locator("#map-go").click();
            assertThat(other.locator("html[data-map^='done 11']")).hasCount(1, COUNTED);
            other.locator("#runs").fill("1");
            other.locator("#trials-go").click();
            assertThat(other.locator("#trials table")).hasCount(1, COUNTED);
            other.locator("#cones").click();
            other.locator("#x").fill("much");
            other.locator("details").all().forEach(d -> d.evaluate("d => { d.open = true; }"));
            serious(other, axe, scheme + " page");
            other.locator(FIRST_LENGTH).click();
            other.locator("#field").fill("75 kg");
            assertThat(other.locator("#field-fault")).containsText("not saved");
            serious(other, axe, scheme + " field with a fault");
            other.locator("#field").press("Escape");
            other.locator("#help-open").click();
            serious(other, axe, scheme + " help");
            other.close();
        }
    }

    /** Of the rules of WCAG 2.0 to 2.2, levels A and AA, and axe's own advice. */
    private static void serious(Page page, String axe, String where) {
        page.evaluate(axe);
        Object found = page.evaluate("async () => (await axe.run(document, {resultTypes: ['violations']})).violations"
                + ".filter(v => v.impact === 'serious' || v.impact === 'critical')"
                + ".map(v => v.id + ': ' + v.help + ': ' + v.nodes.slice(0, 4).map(n => n.html.slice(0, 160) + ' '"
                + " + n.failureSummary.slice(0, 300)).join(' | '))");
        assertThat((List<?>) found).as(where).isEmpty();
    }

    private void shots(String name) {
        String dir = System.getProperty("shots", "");
        if (!dir.isEmpty()) {
            page.screenshot(new Page.ScreenshotOptions()
                    .setPath(Path.of(dir, name + ".png"))
                    .setFullPage(name.equals("open")));
        }
    }
}
