package gripwright.cli;

import gripwright.closing.Sensing;
import gripwright.files.json.MapJson;
import gripwright.model.GraspObject;
import gripwright.model.Grip;
import gripwright.study.Findings;
import gripwright.study.Jobs;
import gripwright.study.MapResult;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** How far off the object may stand. */
@Command(
        name = "map",
        description = "Close the hand for every shift of the object on a grid: how far off may it stand?",
        footer = {
            "",
            "Ctrl-C stops the map; what is finished is printed and written, and the same command goes on from there.",
            "The exit code answers for the middle of the map: the object at its nominal place.",
            "",
            "Examples:",
            "  gripwright map bench --object mug --grip wrap",
            "  gripwright map bench --object mug --grip wrap --span \"40 mm\" --cells 21 --picture mug-map.svg"
        })
final class MapCommand extends ProjectCommand {
    @Mixin
    private final PairOptions pair = new PairOptions();

    @Mixin
    private final PadOption pads = new PadOption();

    @Mixin
    private final ThreadOption threads = new ThreadOption();

    @Mixin
    private final GridOptions grid = new GridOptions(41);

    @Mixin
    private final PolicyOption policy = new PolicyOption();

    MapCommand(Surroundings at) {
        super(at);
    }

    @Override
    Exit run() {
        Jobs jobs = threads.jobs();
        grid.map(1); // a wrong grid is said before the project is read
        OpenProject open = open();
        GraspObject object = open.object(pair.object());
        Grip grip = open.grip(pair.grip());
        Sensing sensing = policy.sensing(open, false);
        PolicyOption.check(policy.policy(), open.project().hand(), grip, sensing);
        Studies studies = new Studies(at, open, pads.numerics(), jobs, policy.policy(), sensing);
        MapResult map = studies.map(object, grip, grid.map(open.project().need().wantedSuccess()));
        at.out().println(policy.line() + MapText.of(map) + "\n");
        at.out().println(Words.findings(Answer.inShort(Findings.of(open.project(), map))) + "\n");
        at.out().println(CloseText.judged(OpenProject.CRITERIA));
        at.out().println(open.assumptionsLine());
        results.json(() -> MapJson.of(
                open.origin(), OpenProject.CRITERIA, map, policy.policy().word(), policy.noiseSeed()));
        results.picture(() -> Pictures.map(map, open.project().hand(), object));
        return studies.stopped() ? Exit.STOPPED : CloseCommand.exit(map.outcome(grid.cells() / 2, grid.cells() / 2));
    }
}
