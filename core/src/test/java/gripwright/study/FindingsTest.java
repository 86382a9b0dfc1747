package gripwright.study;

import static org.assertj.core.api.Assertions.assertThat;

import gripwright.closing.Conditions;
import gripwright.closing.Outcome;
import gripwright.model.Grip;
import gripwright.model.Project;
import gripwright.study.Fakes.RuleRunner;
import gripwright.study.Finding.Topic;
import gripwright.study.TrialsResult.Split;
import gripwright.study.TrialsResult.Split.Side;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import org.junit.jupiter.api.Test;

class FindingsTest {
    private static final Project BENCH = Fakes.project(
            0.9,
            Fakes.object("mug", 3, "wrap", "top"),
            Fakes.object("bare bulb", 1, "top"),
            Fakes.object("spray can", 2, "wrap"));

    private static Outcome outcome(String object, String grip, Conditions c) {
        if (object.equals("spray can")) {
            return Outcome.HELD;
        }
        if (object.equals("bare bulb")) {
            return c.padStiffness() > 1.1 ? Outcome.SQUEEZED : c.turn() > 0.28 ? Outcome.UNDECIDED : Outcome.HELD;
        }
        if (grip.equals("top")) {
            return c.x() > 0 ? Outcome.HELD : Outcome.KNOCKED_OVER;
        }
        return c.y() > 0.012 ? Outcome.PUSHED_AWAY : Outcome.HELD;
    }

    private static TrialsResult trials(int runs, int threads, Jobs.Progress progress) {
        RunnerFactory factory = (object, grip) -> new RuleRunner(c -> outcome(object.name(), grip.name(), c));
        return Trials.run(BENCH, factory, runs, 1, new ThreadJobs(threads), progress);
    }

    private static List<String> texts(List<Finding> findings, Topic topic) {
        return findings.stream()
                .filter(finding -> finding.topic() == topic)
                .map(Finding::text)
                .toList();
    }

    /** The counts of the sentences, taken from the result and not from the code that words them. */
    @Test
    void everyObjectIsAnsweredWithItsCounts() {
        TrialsResult result = trials(100, 2, Jobs.Progress.NONE);
        List<Finding> findings = Findings.of(BENCH, result);
        int pushed = result.pair("mug", "wrap").outcomes().getOrDefault(Outcome.PUSHED_AWAY, 0);
        Proportion bulb = result.pair("bare bulb", "top").success();
        int squeezed = result.pair("bare bulb", "top").outcomes().getOrDefault(Outcome.SQUEEZED, 0);
        assertThat(texts(findings, Topic.ANSWER)).hasSize(1);
        assertThat(texts(findings, Topic.ANSWER).get(0)).contains("95 % interval", "Wanted: 90 %");
        assertThat(texts(findings, Topic.REASON))
                .anyMatch(text -> text.startsWith("The mug is pushed away in " + pushed + " of 100 runs with wrap ("))
                .anyMatch(text -> text.startsWith("The bare bulb is squeezed too hard in " + squeezed + " of "
                        + bulb.trials() + " runs with top ("))
                .contains("The spray can holds in all 100 runs with wrap (at least 96 %, 95 % interval).");
        assertThat(texts(findings, Topic.OBJECTS))
                .anyMatch(text -> text.startsWith("Picked up at least as often as wanted: spray can with wrap"))
                .anyMatch(text -> text.startsWith("Picked up less often than wanted: bare bulb with top "
                        + bulb.successes() + " of " + bulb.trials()));
        assertThat(texts(findings, Topic.GRIPS))
                .singleElement()
                .asString()
                .contains("wrap was chosen on separate runs", "most often knocked over");
    }

    @Test
    void failuresHaveTheirDirectionAsSeenFromTheHand() {
        assertThat(texts(Findings.of(BENCH, trials(100, 2, Jobs.Progress.NONE)), Topic.WHERE))
                .anyMatch(text -> text.startsWith(
                        "It fails more often when the mug is more than 12 mm off towards the palm (+y): "))
                .anyMatch(text ->
                        text.startsWith("It fails more often when the pads are more than 10 % stiffer than nominal: "));
    }

    @Test
    void undecidedRunsAreSaidWithWhatTheyCouldChange() {
        TrialsResult result = trials(100, 2, Jobs.Progress.NONE);
        int undecided = result.pair("bare bulb", "top").success().undecided();
        assertThat(undecided).isPositive();
        assertThat(texts(Findings.of(BENCH, result), Topic.CAUTION))
                .singleElement()
                .asString()
                .startsWith(undecided + " of 400 runs undecided")
                .contains("Had all of them failed, the total would be 89 %; had all held, 90 %.");
    }

    @Test
    void aStoppedStudySaysHowManyRunsItHas() {
        TrialsResult result = trials(100, 2, (finished, of) -> finished < 77);
        assertThat(texts(Findings.of(BENCH, result), Topic.CAUTION).get(0))
                .startsWith("The study was stopped: " + result.scoredRuns() + " of 400 scoring runs are done");
        assertThat(texts(Findings.of(BENCH, trials(5, 1, (finished, of) -> false)), Topic.OBJECTS))
                .anyMatch(text ->
                        text.startsWith("Not counted (no decided run): mug with wrap; bare bulb with top; spray can"));
    }

    @Test
    void aMapSaysHowFarInWhichDirectionAndWhatHappensThere() {
        List<Finding> findings = Findings.of(
                BENCH,
                map(
                        c -> c.y() > 0.0181 ? Outcome.PUSHED_AWAY : c.x() > 0.055 ? Outcome.UNDECIDED : Outcome.HELD,
                        Jobs.Progress.NONE));
        assertThat(texts(findings, Topic.ANSWER).get(0))
                .isEqualTo("Holds the mug with wrap within 20 mm of the nominal place (all 145 cells up to there hold)."
                        + " The nearest place where it does not is 21 mm off, at x 0 mm, y 21 mm: there it is pushed"
                        + " away.");
        assertThat(texts(findings, Topic.WHERE))
                .contains("Away from the palm (-y) it holds to the edge of the map (60 mm).")
                .first()
                .asString()
                .startsWith("Towards the palm (+y)");
        assertThat(texts(findings, Topic.WHERE))
                .anyMatch(text -> text.startsWith(
                        "Towards the palm (+y) it holds up to 18 mm; the next cell is pushed away; in the quarter on"))
                .anyMatch(text -> text.startsWith(
                        "Along the closing direction (+x) it holds up to 54 mm; the next cell is undecided"));
        assertThat(texts(findings, Topic.WHERE).get(1))
                .isEqualTo(
                        "To 2 sides the map ends before the hold does: make it wider than +-60 mm to see how far that"
                                + " goes.");
        assertThat(texts(findings, Topic.CAUTION).get(0)).startsWith("54 cells of 1681 undecided");
    }

    @Test
    void aMapThatFailsInTheMiddleSaysSoFirst() {
        assertThat(Findings.of(BENCH, map(c -> Outcome.KNOCKED_OVER, Jobs.Progress.NONE))
                        .get(0)
                        .text())
                .isEqualTo("Even at its nominal place the mug is knocked over with wrap.");
    }

    @Test
    void aWhollyHeldMapClaimsNoMoreThanItsSpan() {
        assertThat(Findings.of(BENCH, map(c -> Outcome.HELD, Jobs.Progress.NONE))
                        .get(0)
                        .text())
                .startsWith("Holds the mug with wrap within at least 60 mm of the nominal place");
    }

    @Test
    void aStoppedMapSaysWhatItRestsOn() {
        List<Finding> findings = Findings.of(BENCH, map(c -> Outcome.HELD, (finished, of) -> finished < 20));
        assertThat(findings.get(0).text()).contains("cells computed so far up to there hold");
        assertThat(texts(findings, Topic.CAUTION).get(0)).startsWith("The map was stopped after 20 of 1681 cells");
        assertThat(Findings.of(BENCH, map(c -> Outcome.HELD, (finished, of) -> false)))
                .allMatch(finding -> !finding.text().contains("edge of the map"));
    }

    @Test
    void directionsReadAsSeenFromTheHand() {
        assertThat(when("x", Side.BELOW, 0.012, Grip.Approach.ABOVE))
                .isEqualTo("the mug is more than 12 mm off against the closing direction (-x)");
        assertThat(when("y", Side.BELOW, 0.0085, Grip.Approach.SIDE))
                .isEqualTo("the mug is more than 8.5 mm off away from the palm (-y)");
        assertThat(when("y", Side.EITHER, 0.012, Grip.Approach.ABOVE))
                .isEqualTo("the mug is more than 12 mm off across the closing direction (y), either way");
        assertThat(when("turn", Side.ABOVE, Math.toRadians(20), Grip.Approach.SIDE))
                .isEqualTo("the mug is turned more than 20 deg counter-clockwise seen from above");
        assertThat(when("height", Side.BELOW, 0.003, Grip.Approach.SIDE))
                .isEqualTo("the hand is more than 3 mm too low");
        assertThat(when("mass", Side.ABOVE, 1.3, Grip.Approach.SIDE))
                .isEqualTo("the mass of the mug is more than 1.3 standard deviations above its mean");
        assertThat(when("spring rate", Side.BELOW, 0.04, Grip.Approach.SIDE))
                .isEqualTo("the joint springs are more than 4 % softer than nominal");
    }

    private static String when(String input, Side side, double threshold, Grip.Approach approach) {
        return Directions.when(new Split(input, side, threshold, 1, 2, 3, 4), "mug", approach);
    }

    @Test
    void sharesAreNeverRoundedToCertaintyNorIntervalsNarrowed() {
        assertThat(Phrases.percent(0.997)).isEqualTo("over 99 %");
        assertThat(Phrases.percent(1)).isEqualTo("100 %");
        assertThat(Phrases.percent(0.001)).isEqualTo("under 1 %");
        assertThat(Phrases.percent(Double.NaN)).isEqualTo("unknown");
        assertThat(Phrases.interval(0.8799, 0.9201)).isEqualTo("87 to 93 %");
        assertThat(Phrases.interval(0.29, 0.57)).isEqualTo("29 to 57 %");
    }

    @Test
    void verdictsNeedTheWholeInterval() {
        assertThat(Verdict.of(Proportion.of(100, 100, 0), 0.9)).isEqualTo(Verdict.REACHES);
        assertThat(Verdict.of(Proportion.of(95, 100, 0), 0.9)).isEqualTo(Verdict.MAY_REACH);
        assertThat(Verdict.of(Proportion.of(50, 100, 0), 0.9)).isEqualTo(Verdict.BELOW);
        assertThat(Verdict.of(Proportion.of(0, 0, 7), 0.9)).isEqualTo(Verdict.UNKNOWN);
        assertThat(Verdict.of(Proportion.of(100, 100, 0), 1)).isEqualTo(Verdict.MAY_REACH);
    }

    @Test
    void wordsDoNotDependOnTheLocale() {
        Locale before = Locale.getDefault();
        List<Finding> here = Findings.of(BENCH, trials(40, 2, Jobs.Progress.NONE));
        try {
            Locale.setDefault(Locale.forLanguageTag("ar-EG"));
            assertThat(Findings.of(BENCH, trials(40, 2, Jobs.Progress.NONE))).isEqualTo(here);
        } finally {
            Locale.setDefault(before);
        }
    }

    private static MapResult map(Function<Conditions, Outcome> rule, Jobs.Progress progress) {
        return new CaptureMap(0.06, 41, 0.9)
                .run(
                        BENCH.need().object("mug"),
                        Fakes.grip("wrap", Grip.Approach.SIDE),
                        (o, g) -> new RuleRunner(rule),
                        new ThreadJobs(1),
                        CaptureMap.Listener.NONE,
                        progress);
    }
}
