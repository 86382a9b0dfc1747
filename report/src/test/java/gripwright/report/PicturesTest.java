package gripwright.report;

import static org.assertj.core.api.Assertions.assertThat;

import gripwright.closing.ClosingSummary;
import gripwright.closing.Outcome;
import gripwright.model.GraspObject;
import gripwright.model.Hand;
import gripwright.model.Need;
import gripwright.study.MapResult;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
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
}
