package gripwright.report;

import static org.assertj.core.api.Assertions.assertThat;

import gripwright.closing.ClosingSummary;
import gripwright.closing.HoldPlan;
import gripwright.closing.Outcome;
import gripwright.math.Rotation;
import gripwright.model.GraspObject;
import gripwright.model.Hand;
import gripwright.model.Need;
import gripwright.shape.Sphere;
import gripwright.study.CellShare;
import gripwright.study.MapResult;
import gripwright.study.Proportion;
import gripwright.study.TrialsResult;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

class PicturesTest {
    private static final Path OUT = Path.of("target", "pictures");

    static Map<String, Picture> all() {
        Hand hand = Fixtures.hand();
        Need need = Fixtures.need();
        Map<String, Picture> out = new LinkedHashMap<>();
        out.put("hand", HandPicture.draw(hand));
        out.put("objects", ObjectPicture.draw(need));
        out.put(
                "closing",
                ClosingPicture.draw(
                        hand, need.object("mug"), Fixtures.closing(hand, need.object("mug"), Outcome.HELD, true)));
        GraspObject mug = need.object("mug");
        out.put(
                "hold",
                HoldPicture.draw(
                        hand, mug, FakeHolds.hold(Fixtures.closing(hand, mug, Outcome.HELD, true), HoldPlan.DEFAULT)));
        out.put(
                "not-held",
                HoldPicture.draw(
                        hand,
                        mug,
                        FakeHolds.hold(Fixtures.closing(hand, mug, Outcome.DROPPED, true), HoldPlan.DEFAULT)));
        out.put("map", MapPicture.draw(Fixtures.map("mug", "wrap", 41, 0.003), hand, need.object("mug")));
        out.put("trials", TrialsPicture.table(Fixtures.trials(need), need));
        out.put("failures", TrialsPicture.failures(Fixtures.trials(need)));
        out.put("influence", TrialsPicture.influence(Fixtures.trials(need)));
        return out;
    }

    @Test
    void everyPictureIsWellFormedAndHoldsNoUnknownNumber() throws IOException {
        Files.createDirectories(OUT);
        for (Map.Entry<String, Picture> e : all().entrySet()) {
            String file = e.getValue().standAlone();
            Files.writeString(OUT.resolve(e.getKey() + ".svg"), file, StandardCharsets.UTF_8);
            Xml.parse(file);
            assertThat(file).as(e.getKey()).doesNotContain("NaN", "Infinity", "var(--", "<script");
        }
    }

    @Test
    void everyOutcomeStandsInTheLegendOfAMapWithMarkAndWord() {
        String map = MapPicture.draw(
                        Fixtures.map("mug", "wrap", 41, 0.003),
                        Fixtures.hand(),
                        Fixtures.need().object("mug"))
                .standAlone();
        for (Outcome o : Outcome.values()) {
            assertThat(map).contains(">" + o.words() + "<", "#mk-" + Marks.key(o) + "\"", "." + Look.ground(o) + "{");
        }
    }

    @Test
    void aMapThatWasStoppedSaysHowManyCellsAreMissing() {
        MapResult whole = Fixtures.map("mug", "wrap", 21, 0);
        List<@Nullable ClosingSummary> part = new ArrayList<>(whole.runs());
        part.set(3, null);
        part.set(7, null);
        MapResult stopped = new MapResult(
                "mug",
                "wrap",
                whole.span(),
                21,
                part,
                whole.captureRadius(),
                whole.shareRadius(),
                0.9,
                whole.heldArea());
        String map = MapPicture.draw(stopped, Fixtures.hand(), Fixtures.need().object("mug"))
                .standAlone();
        Xml.parse(map);
        assertThat(map).contains("not computed (stopped)", ">2<");
    }

    /** A nominal run that held says little where most runs of its cell did not. */
    @Test
    void aCellHeldInOneOfEightRunsIsNotDrawnAsHalfHeld() {
        List<@Nullable ClosingSummary> runs = java.util.Collections.nCopies(9, Fixtures.summary(Outcome.HELD, 0, 0));
        List<@Nullable CellShare> shares = new ArrayList<>(java.util.Collections.nCopies(
                9, new CellShare(CellShare.Basis.ENSEMBLE, 1, 8, 0, new CellShare.Here(1, 8, 0), false)));
        MapResult map = new MapResult("mug", "wrap", 0.06, 3, runs, 0, 0, 0.9, 1e-3, shares);
        String drawn = MapPicture.draw(map, Fixtures.hand(), Fixtures.need().object("mug"))
                .standAlone();
        String cells =
                drawn.substring(drawn.indexOf("<g class=\"cells\">"), drawn.indexOf("</g>", drawn.indexOf("cells")));
        assertThat(cells).contains("\"share1\"").doesNotContain("share4", "g-held");
        assertThat(drawn).as("nothing is outlined as held").doesNotContain("class=\"held1\"");
        shares.set(4, new CellShare(CellShare.Basis.ENSEMBLE, 5, 8, 0, new CellShare.Here(5, 8, 0), false));
        MapResult middle = new MapResult("mug", "wrap", 0.06, 3, runs, 0, 0, 0.9, 1e-3, shares);
        assertThat(MapPicture.draw(middle, Fixtures.hand(), Fixtures.need().object("mug"))
                        .standAlone())
                .contains("\"share5\"", "class=\"held1\"");
    }

    @Test
    void handsOfOneToFiveFingersInAnyDirectionCanBeDrawn() {
        for (int fingers = 1; fingers <= 5; fingers++) {
            for (int phalanges = 1; phalanges <= 4; phalanges++) {
                String file =
                        HandPicture.draw(Fixtures.radial(fingers, phalanges)).standAlone();
                Xml.parse(file);
                assertThat(file).doesNotContain("NaN", "Infinity");
            }
        }
    }

    @Test
    void everyWayARunCanEndCanBeDrawn() {
        Hand hand = Fixtures.hand();
        GraspObject mug = Fixtures.need().object("mug");
        for (Outcome o : Outcome.values()) {
            for (boolean frames : new boolean[] {true, false}) {
                String file = ClosingPicture.draw(hand, mug, Fixtures.closing(hand, mug, o, frames))
                        .standAlone();
                Xml.parse(file);
                assertThat(file).contains(">" + o.words() + "<").doesNotContain("NaN");
            }
        }
    }

    @Test
    void trialsWithManyGripsLongNamesAndNothingDecidedCanBeDrawn() throws IOException {
        Need need = Fixtures.need();
        String lengthy = "a very long name of an object that someone might give it one day";
        Need named = new Need(
                need.name(),
                need.tableFriction(),
                need.placement(),
                need.lift(),
                need.acceleration(),
                need.wantedSuccess(),
                List.of(Fixtures.object(lengthy, new Sphere(0.03), 0.1, Rotation.IDENTITY, "a", "b", "c", "d", "e")));
        TrialsResult some = Fixtures.trials(named);
        TrialsResult none = new TrialsResult(
                1,
                10,
                List.of(new TrialsResult.Pair(
                        lengthy, "a", Proportion.of(0, 0, 3), Map.of(Outcome.UNDECIDED, 3), List.of(), Map.of())),
                List.of(),
                new TrialsResult.Weighted(Double.NaN, 0, 1));
        Files.createDirectories(OUT);
        for (TrialsResult trials : List.of(some, none)) {
            String file = TrialsPicture.table(trials, named).standAlone();
            Files.writeString(OUT.resolve(trials == some ? "trials5.svg" : "trials0.svg"), file);
            Xml.parse(file);
            assertThat(file).doesNotContain("NaN");
            Xml.parse(TrialsPicture.influence(trials).standAlone());
        }
        assertThat(TrialsPicture.table(none, named).body()).contains("no decided run", "undecided 3");
    }

    @Test
    void everyStyleClassOfADrawingIsInTheStyleSheet() {
        String style = Look.pictureStyle();
        for (Map.Entry<String, Picture> e : all().entrySet()) {
            Matcher used =
                    Pattern.compile("class=\"([^\"]*)\"").matcher(e.getValue().body());
            while (used.find()) {
                for (String name : used.group(1).split(" ", -1)) {
                    // Texture classes refine "tx" where an outcome needs it.
                    if (!name.startsWith("tx-")) {
                        assertThat(style).as(e.getKey()).containsPattern("\\." + Pattern.quote(name) + "[ ,.{]");
                    }
                }
            }
        }
    }
}
