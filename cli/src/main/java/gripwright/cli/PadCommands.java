package gripwright.cli;

import gripwright.files.ProjectReader;
import gripwright.model.Need;
import gripwright.pad.PadAnswer;
import gripwright.pad.PadDesign;
import gripwright.pad.PadSetup;
import gripwright.pad.ScanAnswer;
import gripwright.pad.TouchAnswer;
import gripwright.report.ReportInput;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What the commands on pads have in common. */
final class PadCommands {
    private PadCommands() {}

    static PadSetup setup(OpenProject open) {
        return ProjectReader.readMarked(open.folder())
                .pads()
                .orElseThrow(() -> new CommandFailure(
                        Exit.USAGE,
                        open.given() + " has no " + ProjectReader.PADS
                                + "; write one to say which chips lie under which pads (docs/keys.md; 'gripwright demo"
                                + " --only-files' makes an example)"));
    }

    /** The pads with that chip; all if it is empty. */
    static List<PadDesign> chosen(PadSetup setup, String chip) {
        List<PadDesign> pads = setup.pads().stream()
                .filter(p -> chip.isEmpty() || p.chip().name().equals(chip))
                .toList();
        if (pads.isEmpty()) {
            throw new CommandFailure(
                    Exit.USAGE,
                    "no pad has a chip called '" + chip + "'; there are: "
                            + String.join(
                                    ", ",
                                    setup.pads().stream()
                                            .map(p -> p.chip().name())
                                            .distinct()
                                            .toList()));
        }
        return pads;
    }

    static List<PadAnswer> answers(PadSetup setup, List<PadDesign> pads) {
        Map<PadDesign, PadAnswer> solved = new HashMap<>();
        List<PadAnswer> out = new ArrayList<>();
        for (PadDesign pad : pads) {
            out.add(solved.computeIfAbsent(pad.named(""), p -> PadAnswer.of(p, setup))
                    .named(pad.name()));
        }
        return out;
    }

    static List<TouchAnswer> touched(PadSetup setup, List<PadDesign> pads, double period, Need need) {
        Map<PadDesign, TouchAnswer> solved = new HashMap<>();
        List<TouchAnswer> out = new ArrayList<>();
        for (PadDesign pad : pads) {
            out.add(solved.computeIfAbsent(pad.named(""), p -> TouchAnswer.of(setup, p, period, need))
                    .named(pad.name()));
        }
        return out;
    }

    /** Everything a report says about pads; empty if the project has no pads.yaml. */
    static Optional<ReportInput.Pads> forReport(OpenProject open) {
        return ProjectReader.readMarked(open.folder()).pads().map(setup -> {
            ScanAnswer scan = ScanAnswer.of(setup);
            return new ReportInput.Pads(
                    answers(setup, setup.pads()),
                    scan,
                    scan.fastest()
                            .map(plan -> touched(
                                    setup,
                                    setup.pads(),
                                    plan.period(),
                                    open.project().need()))
                            .orElse(List.of()));
        });
    }

    /** Period of the fastest scheme, or a refusal that says what stands in the way [s]. */
    static double period(PadSetup setup) {
        ScanAnswer scan = ScanAnswer.of(setup);
        return scan.fastest()
                .orElseThrow(() -> new CommandFailure(
                        Exit.USAGE,
                        "the chips cannot be read: " + scan.plans().get(0).obstacle()
                                + "; change `bus` in pads.yaml ('gripwright scan' says more)"))
                .period();
    }
}
