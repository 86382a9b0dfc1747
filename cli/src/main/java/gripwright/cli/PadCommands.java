package gripwright.cli;

import gripwright.files.ProjectReader;
import gripwright.pad.PadAnswer;
import gripwright.pad.PadDesign;
import gripwright.pad.PadSetup;
import gripwright.pad.ScanAnswer;
import java.util.List;

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
        return pads.stream()
                .map(p -> PadAnswer.of(p, setup.judging(), setup.casting()))
                .toList();
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
