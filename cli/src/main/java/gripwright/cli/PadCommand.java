package gripwright.cli;

import gripwright.files.json.PadJson;
import gripwright.pad.PadAnswer;
import gripwright.pad.PadSetup;
import gripwright.report.CastingSheet;
import gripwright.report.PadPicture;
import java.nio.file.Path;
import java.util.List;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** What the pads feel. */
@Command(
        name = "pad",
        description = "Say what barometer chips under the hand's rubber feel, and where they feel nothing.",
        footer = {
            "",
            "The exit code is 1 if a strip has blind gaps.",
            "",
            "Examples:",
            "  gripwright pad demo",
            "  gripwright pad demo --picture strip.svg --casting-sheet sheet.html"
        })
final class PadCommand extends ProjectCommand {
    @Option(names = "--chip", paramLabel = "NAME", description = "Only the pads with this chip.")
    private String chip = "";

    @Option(
            names = "--casting-sheet",
            paramLabel = "FILE.html",
            description = "Also write a sheet for the workshop: how to pour these pads and test that they are filled.")
    private @Nullable Path sheet;

    PadCommand(Surroundings at) {
        super(at);
    }

    @Override
    Exit run() {
        OpenProject open = open();
        PadSetup setup = PadCommands.setup(open);
        List<PadAnswer> pads = PadCommands.answers(setup, PadCommands.chosen(setup, chip));
        at.out().println(PadText.of(pads, setup.judging()));
        at.out().println(open.assumptionsLine());
        results.json(() -> PadJson.pads(open.origin(), pads));
        results.picture(() -> PadPicture.draw(pads.get(0)).standAlone());
        if (sheet != null) {
            ResultFile.write(at.path(sheet), CastingSheet.write(pads, setup.casting()));
            at.out().println("sheet    written to " + sheet);
        }
        return pads.stream().anyMatch(PadAnswer::blind) ? Exit.NO : Exit.YES;
    }
}
