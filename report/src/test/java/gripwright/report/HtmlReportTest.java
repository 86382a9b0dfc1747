package gripwright.report;

import static org.assertj.core.api.Assertions.assertThat;

import gripwright.closing.Criteria;
import gripwright.closing.HoldPlan;
import gripwright.closing.Numerics;
import gripwright.closing.Outcome;
import gripwright.model.Project;
import gripwright.pad.Bus;
import gripwright.pad.Chip;
import gripwright.pad.PadAnswer;
import gripwright.pad.PadDesign;
import gripwright.pad.PadSetup;
import gripwright.pad.ScanAnswer;
import gripwright.pad.TouchAnswer;
import gripwright.pad.TouchStop;
import gripwright.study.DesignChange;
import gripwright.study.Refinement;
import gripwright.study.TrialsResult;
import gripwright.study.VaryResult;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class HtmlReportTest {
    /** One strip of an invented chip with blind gaps. */
    private static ReportInput.Pads pads() {
        Chip chip = new Chip(
                "c",
                3e-3,
                5e-3,
                1.2e-3,
                0.5e-3,
                0.2e-3,
                1.2e-3,
                0.5e-3,
                150,
                50e3,
                115e3,
                1.6e-3,
                29,
                66,
                0,
                0,
                0,
                Double.NaN,
                15);
        PadDesign strip = new PadDesign("strip", chip, 3e-3, 0.7e6, 1.5e9, 4, 6e-3, 1, 6e-3, 0, 0.02);
        PadSetup setup = new PadSetup(
                List.of(strip),
                new Bus(false, 400e3, 20e-6, 8, true, true, 0, 0, 3.3),
                1,
                new TouchStop(0.05, 1, 0.01, 1e-3, 0.05, 0.01, 5, 1000),
                new PadSetup.Casting(3100, 3, 1800, 0.05),
                new PadSetup.Judging(0.05, 0.05, 100, 0.05, 0.5),
                Optional.empty());
        ScanAnswer scan = ScanAnswer.of(setup);
        double period = scan.fastest().orElseThrow().period();
        return new ReportInput.Pads(
                List.of(PadAnswer.of(strip, setup)),
                scan,
                List.of(TouchAnswer.of(setup, strip, period, Fixtures.project().need())));
    }

    @Test
    void padsAreToldWithTheirGapsAndPictures() {
        String page = HtmlReport.write(input());
        assertThat(page)
                .contains(
                        "What do the pads feel?",
                        "1 pad with blind gaps",
                        "heavy bars: blind",
                        "all read: the scan ends");
    }

    private static ReportInput input() {
        Project project = Fixtures.project();
        return new ReportInput(
                project,
                List.of(
                        new ReportInput.Closing(
                                "mug",
                                "top",
                                "The nominal place.",
                                Fixtures.closing(project.hand(), project.need().object("mug"), Outcome.HELD, true)),
                        new ReportInput.Closing(
                                "tape roll",
                                "top",
                                "A typical failure.",
                                Fixtures.closing(
                                        project.hand(),
                                        project.need().object("tape roll"),
                                        Outcome.PUSHED_AWAY,
                                        true))),
                List.of(Fixtures.map("mug", "wrap", 41, 0.003), Fixtures.map("D cell", "top", 21, 0.04)),
                Optional.of(Fixtures.trials(project.need())),
                List.of(hold(project, "mug", Outcome.HELD), hold(project, "tape roll", Outcome.PUSHED_AWAY)),
                Optional.of(pads()),
                Optional.empty(),
                List.of(),
                Criteria.DEFAULT,
                Numerics.DEFAULT,
                new ReportInput.Provenance(
                        "0.1.0",
                        1,
                        "7c1e04ab55aa00ff1234",
                        "2026-11-25",
                        "gripwright report demo",
                        List.of("hand.yaml", "need.yaml")));
    }

    @Test
    void whatToChangeAndHowSureItIsHaveSectionsOfTheirOwn() {
        ReportInput in = input();
        assertThat(HtmlReport.write(in))
                .contains("What is worth changing?", "How far can the numbers be believed?", "gripwright vary DIR");
        Project project = in.project();
        VaryResult.Difference some = new VaryResult.Difference(0.02, 0.01, 0.03);
        VaryResult.Effect effect =
                new VaryResult.Effect("first joint spring", "20 % less", DesignChange.Kind.DESIGN, some, some, 0, "");
        VaryResult vary = new VaryResult(
                1,
                10,
                4,
                0.06,
                List.of(),
                new TrialsResult.Weighted(0.8, 0.7, 0.9),
                0,
                some,
                List.of(effect),
                1,
                Optional.of(effect));
        Refinement finer = new Refinement(
                "half the step",
                Fixtures.closing(project.hand(), project.need().object("mug"), Outcome.HELD, false),
                Fixtures.closing(project.hand(), project.need().object("mug"), Outcome.DROPPED, false));
        String page = HtmlReport.write(new ReportInput(
                project,
                in.closings(),
                in.maps(),
                in.trials(),
                in.holds(),
                in.pads(),
                Optional.of(vary),
                List.of(new ReportInput.Refined("mug", "top", List.of(finer))),
                in.criteria(),
                in.numerics(),
                in.provenance()));
        assertThat(page)
                .contains(
                        "Best single change: first joint spring 20 % less",
                        "On fresh samples",
                        "dropped in the lift instead of held",
                        "1 of 1 outcomes change when calculated finer");
    }

    private static ReportInput.Hold hold(Project project, String object, Outcome outcome) {
        return new ReportInput.Hold(
                object,
                "top",
                FakeHolds.hold(
                        Fixtures.closing(project.hand(), project.need().object(object), outcome, true),
                        HoldPlan.DEFAULT));
    }

    @Test
    void theSectionOnTheHoldSaysWhatDecides() {
        assertThat(HtmlReport.write(input()))
                .contains("How hard does it hold?", "the pulls decide", "slips", "pushed away");
    }

    @Test
    void thePageIsOneWellFormedFileThatNeedsNothingElse() throws IOException {
        String page = HtmlReport.write(input());
        Files.createDirectories(Path.of("target", "pictures"));
        Files.writeString(Path.of("target", "pictures", "report.html"), page, StandardCharsets.UTF_8);
        Xml.parse(page.replace("<!DOCTYPE html>", ""));
        assertThat(page)
                .doesNotContain("<script", "http://", "https://", "@import", "NaN", "Infinity", "null", "src=")
                .contains("ISO 10218", "ISO/TS 15066", "licensed engineer", "Closing fingers pinch");
    }

    @Test
    void theSameInputGivesTheSameBytesWhateverTheLocale() {
        Locale before = Locale.getDefault();
        try {
            Locale.setDefault(Locale.US);
            String first = HtmlReport.write(input());
            Locale.setDefault(Locale.forLanguageTag("ar-EG"));
            assertThat(HtmlReport.write(input())).isEqualTo(first);
        } finally {
            Locale.setDefault(before);
        }
    }

    @Test
    void whatTheUserWroteIsShownAsTextNotAsMarkup() {
        String page = HtmlReport.write(input());
        assertThat(page)
                .contains(
                        "bracket &lt;L&gt; &amp; &quot;co&quot;",
                        "middle of the &lt;shape&gt;",
                        "against the hand &amp; tilted")
                .doesNotContain("<L>", "<reaches>", "<shape>");
    }

    @Test
    void everyOutcomeIsToldByMarkAndWord() {
        String page = HtmlReport.write(input());
        for (Outcome o : Outcome.values()) {
            assertThat(page).contains("id=\"mk-" + Marks.key(o) + "\"", "#mk-" + Marks.key(o) + "\"", o.words());
        }
    }

    @Test
    void aProjectWithoutResultsStillGivesAPageThatSaysSo() {
        ReportInput full = input();
        String page = HtmlReport.write(new ReportInput(
                full.project(),
                List.of(),
                List.of(),
                Optional.empty(),
                full.criteria(),
                full.numerics(),
                full.provenance()));
        Xml.parse(page.replace("<!DOCTYPE html>", ""));
        assertThat(page).contains("what the hand picks up is not answered here", "No trials were made.");
    }
}
