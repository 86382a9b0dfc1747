package gripwright.cli;

import gripwright.files.json.PadJson;
import gripwright.pad.PadSetup;
import gripwright.pad.ScanAnswer;
import gripwright.report.ScanPicture;
import picocli.CommandLine.Command;

/** How fast the chips are read. */
@Command(
        name = "scan",
        description = "Say how fast all chips of the hand can be read, and whether the bus can work.",
        footer = {
            "",
            "The exit code is 1 if no scheme works or the lines are faulty.",
            "",
            "Example:",
            "  gripwright scan demo"
        })
final class ScanCommand extends ProjectCommand {
    ScanCommand(Surroundings at) {
        super(at);
    }

    @Override
    Exit run() {
        OpenProject open = open();
        PadSetup setup = PadCommands.setup(open);
        ScanAnswer scan = ScanAnswer.of(setup);
        at.out().println(PadText.of(scan));
        at.out().println(open.assumptionsLine());
        results.json(() -> PadJson.scan(open.origin(), scan));
        results.picture(() -> ScanPicture.draw(scan).standAlone());
        return scan.fastest().isPresent() && scan.electrical().isEmpty() ? Exit.YES : Exit.NO;
    }
}
