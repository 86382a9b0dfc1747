package gripwright.report;

import gripwright.pad.Bus;
import gripwright.pad.PadAnswer;
import gripwright.pad.TouchAnswer;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** The section on pads with chips: what they feel, how fast they are read, what a touch does. */
final class HtmlPads {
    private HtmlPads() {}

    static String section(ReportInput.Pads pads) {
        Html page = new Html();
        page.say("Computed for pads as drawn: linear rubber, bonded everywhere, cavities full. No pad was measured.");
        page.table(
                "What each pad feels over a chip and between two, by noise alone.",
                List.of(
                        "pad",
                        "#chips",
                        "#pitch",
                        "#over a chip",
                        "#between two",
                        "#clips at",
                        "#recommended pitch",
                        "blind gaps"),
                rows(pads.answers()));
        Map<String, String> drawn = new HashMap<>();
        for (PadAnswer pad : pads.answers()) {
            Picture picture = PadPicture.draw(pad);
            String twin = drawn.putIfAbsent(picture.body(), pad.design().name());
            page.heading(pad.design().name() + (twin == null ? "" : ": drawn like " + twin));
            if (twin == null) {
                page.figure(picture);
            }
        }
        page.heading("How fast all chips are read");
        pads.scan()
                .fastest()
                .ifPresentOrElse(
                        p -> page.say("Fastest: " + p.scheme().label() + ", all "
                                + pads.scan().chips() + " chips in " + Num.unit(Num.digits(1e3 * p.period(), 3), "ms")
                                + "."),
                        () -> page.say("No scheme works: "
                                + pads.scan().plans().stream()
                                        .map(Bus.Plan::obstacle)
                                        .findFirst()
                                        .orElse("") + "."));
        page.figure(ScanPicture.draw(pads.scan()));
        for (TouchAnswer touch : pads.touched().stream().limit(1).toList()) {
            page.heading("What a finger that stops on touch does to each object: pad "
                    + touch.pad().name());
            page.figure(TouchPicture.draw(touch));
        }
        return page.done();
    }

    private static List<List<String>> rows(List<PadAnswer> pads) {
        List<List<String>> rows = new ArrayList<>();
        for (PadAnswer p : pads) {
            rows.add(List.of(
                    p.design().name(),
                    String.valueOf(p.design().cells()),
                    Num.mm(p.design().pitch()),
                    Num.newtons(p.limitBest()),
                    Num.newtons(p.limitWorst()),
                    Num.newtons(p.saturation()),
                    Num.mm(p.strip().recommendedPitch()),
                    p.blind() ? Num.mm(p.strip().gaps().get(0).length()) + " each" : "none"));
        }
        return rows;
    }
}
