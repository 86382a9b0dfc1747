package gripwright.report;

import static org.assertj.core.api.Assertions.assertThat;

import gripwright.closing.Outcome;
import gripwright.model.Hand;
import gripwright.model.Need;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
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
}
