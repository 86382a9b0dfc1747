package gripwright.bench;

import gripwright.pad.PadAnswer;
import gripwright.pad.PadDesign;
import gripwright.pad.PadSetup;
import gripwright.pad.ScanAnswer;
import gripwright.pad.TouchAnswer;
import gripwright.report.PadPicture;
import gripwright.report.Picture;
import gripwright.report.ReportInput;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What the pads feel, worked out when it is first asked for and kept until the files change. */
final class Pads {
    private String revision = "";
    private Map<PadDesign, PadAnswer> solved = new HashMap<>();

    /** The answers of all pads, in the order of the file; pads that differ by their name only are worked out once. */
    synchronized List<PadAnswer> answers(Desk.State state) {
        PadSetup setup = setup(state);
        if (!revision.equals(state.revision())) {
            revision = state.revision();
            solved = new HashMap<>();
        }
        return setup.pads().stream()
                .map(pad -> solved.computeIfAbsent(pad.named(""), p -> PadAnswer.of(p, setup))
                        .named(pad.name()))
                .toList();
    }

    private static PadSetup setup(Desk.State state) {
        state.sound();
        return state.pads()
                .orElseThrow(() -> new Refusal(
                        404,
                        "this project has no pads.yaml; write one to say which chips lie under which pads"
                                + " (docs/keys.md; 'gripwright demo --only-files' makes an example)"));
    }

    /** Everything a report says about pads; empty if the project has no pads.yaml. */
    Optional<ReportInput.Pads> forReport(Desk.State state) {
        return state.pads().map(setup -> {
            ScanAnswer scan = ScanAnswer.of(setup);
            List<TouchAnswer> touched = scan.fastest()
                    .map(plan -> setup.pads().stream()
                            .limit(1)
                            .map(pad -> TouchAnswer.of(
                                    setup, pad, plan.period(), state.sound().need()))
                            .toList())
                    .orElse(List.of());
            return new ReportInput.Pads(answers(state), scan, touched);
        });
    }

    String wire(Desk.State state) {
        return Wire.object(
                "revision",
                state.revision(),
                "pads",
                answers(state).stream().map(Pads::pad).toList());
    }

    private static Wire.Raw pad(PadAnswer p) {
        return Wire.raw(
                "name", p.design().name(),
                "chip", p.design().chip().name(),
                "chips", p.design().cells(),
                "pitchMm", Wire.number(1e3 * p.design().pitch(), 2),
                "overChip", Wire.number(p.limitBest(), 4),
                "between", Wire.number(p.limitWorst(), 3),
                "clips", Wire.number(p.saturation(), 2),
                "recommendedMm", Wire.number(1e3 * p.strip().recommendedPitch(), 2),
                "blindMm", Wire.number(p.blind() ? 1e3 * p.strip().gaps().get(0).length() : 0, 2),
                "warnings", p.warnings());
    }

    Picture picture(Desk.State state, String name) {
        return answers(state).stream()
                .filter(p -> p.design().name().equals(name))
                .findFirst()
                .map(PadPicture::draw)
                .orElseThrow(() -> new Refusal(404, "no pad of this project is called '" + name + "'"));
    }
}
