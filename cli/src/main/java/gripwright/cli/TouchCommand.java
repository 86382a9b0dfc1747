package gripwright.cli;

import gripwright.files.json.PadJson;
import gripwright.pad.PadSetup;
import gripwright.pad.TouchAnswer;
import gripwright.report.TouchPicture;
import java.util.List;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** What is knocked away before it is felt. */
@Command(
        name = "touch",
        description = "Say how far each object is pushed before a finger that stops on touch has stopped.",
        footer = {
            "",
            "One finger meets a free object on the table and halts when it feels it.",
            "The exit code is 1 if an object is knocked away.",
            "",
            "Example:",
            "  gripwright touch demo"
        })
final class TouchCommand extends ProjectCommand {
    @Option(names = "--chip", paramLabel = "NAME", description = "Only the pads with this chip.")
    private String chip = "";

    TouchCommand(Surroundings at) {
        super(at);
    }

    @Override
    Exit run() {
        OpenProject open = open();
        PadSetup setup = PadCommands.setup(open);
        double period = PadCommands.period(setup);
        List<TouchAnswer> pads = PadCommands.touched(
                setup, PadCommands.chosen(setup, chip), period, open.project().need());
        for (TouchAnswer pad : pads) {
            at.out().println(PadText.of(pad, setup.touch(), period) + "\n");
        }
        at.out().println(open.assumptionsLine());
        results.json(() -> PadJson.touch(open.origin(), period, pads));
        results.picture(() -> TouchPicture.draw(pads.get(0)).standAlone());
        boolean knocked = pads.stream().flatMap(p -> p.objects().stream()).anyMatch(TouchAnswer.Touched::knocked);
        return knocked ? Exit.NO : Exit.YES;
    }
}
