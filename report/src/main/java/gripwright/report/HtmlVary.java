package gripwright.report;

import gripwright.study.Vary;
import gripwright.study.VaryFindings;
import gripwright.study.VaryResult;
import java.util.Optional;

/** The section on what to change. */
final class HtmlVary {
    private HtmlVary() {}

    static String section(ReportInput input) {
        Optional<VaryResult> vary = input.vary();
        if (vary.isEmpty()) {
            return new Html()
                    .small(
                            "Not looked at here. 'gripwright vary DIR --json DIR/results/vary.json' tries changes of the hand"
                                    + " one at a time; the next report then shows what it found.")
                    .done();
        }
        return new Html()
                .say(VaryFindings.best(vary.get()))
                .figure(VaryPicture.draw(vary.get()))
                .small(Vary.DEFINITION)
                .done();
    }

    /** The best change in a few words, for the list of questions. */
    static String brief(ReportInput input) {
        return input.vary()
                .flatMap(VaryResult::best)
                .map(VaryResult.Effect::words)
                .orElse("");
    }
}
