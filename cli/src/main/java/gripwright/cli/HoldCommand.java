package gripwright.cli;

import gripwright.closing.HoldDetail;
import gripwright.closing.HoldPlan;
import gripwright.closing.Kept;
import gripwright.closing.LoadResult;
import gripwright.closing.PressResult;
import gripwright.closing.PressResult.Verdict;
import gripwright.files.json.HoldJson;
import gripwright.model.GraspObject;
import gripwright.model.Grip;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** How hard one grip holds one object. */
@Command(
        name = "hold",
        description =
                "Close the hand once on one object, lift, then pull, turn and shake what it holds and let it go again.",
        footer = {
            "",
            "Pulls go through the object's centre of mass; displacements are those in the hand.",
            "Says yes if it is held, bears the transport that need.yaml asks for, and a free finger can do its tasks.",
            "",
            "Examples:",
            "  gripwright hold bench --object mug --grip wrap",
            "  gripwright hold bench --object mug --grip wrap --travel \"10 mm\" --picture hold.svg"
        })
final class HoldCommand extends ProjectCommand {
    @Mixin
    private final PairOptions pair = new PairOptions();

    @Mixin
    private final PadOption pads = new PadOption();

    @Mixin
    private final StartOptions start = new StartOptions();

    @Option(
            names = "--travel",
            paramLabel = "LENGTH",
            converter = Quantities.TravelReader.class,
            description = "How far each pull goes; 5 mm unless said otherwise. Turns go by it over 30 mm.")
    private double travel = HoldPlan.DEFAULT.travel();

    HoldCommand(Surroundings at) {
        super(at);
    }

    @Override
    Exit run() {
        OpenProject open = open();
        GraspObject object = open.object(pair.object());
        Grip grip = open.grip(pair.grip());
        HoldPlan plan = HoldPlan.DEFAULT
                .withTravel(travel)
                .withAcceleration(open.project().need().acceleration());
        HoldDetail hold = at.closings()
                .of(open.project(), pads.numerics())
                .create(object, grip)
                .hold(start.conditions(), plan);
        at.out().println(HoldText.of(object.name(), grip.name(), hold));
        object.tasks().stream()
                .filter(task -> !task.grip().equals(grip.name()))
                .forEach(task -> at.out()
                        .println("task     '" + task.name() + "' is for grip '" + task.grip()
                                + "': not tried with this one"));
        at.out().println(open.assumptionsLine());
        results.json(() -> HoldJson.of(open.origin(), grip, object, hold));
        results.picture(() -> Pictures.hold(open.project().hand(), object, hold));
        return exit(hold);
    }

    private static Exit exit(HoldDetail hold) {
        Exit closed = CloseCommand.exit(hold.closing().summary().outcome());
        if (closed != Exit.YES) {
            return closed;
        }
        Set<Verdict> tasks = hold.presses().stream().map(PressResult::verdict).collect(Collectors.toSet());
        boolean failed = tasks.stream().anyMatch(v -> v != Verdict.WORKS && v != Verdict.UNDECIDED);
        boolean lost = failed || transport(hold).anyMatch(l -> l.kept() == Kept.LOST);
        boolean undecided =
                tasks.contains(Verdict.UNDECIDED) || transport(hold).anyMatch(l -> l.kept() == Kept.UNDECIDED);
        return lost ? Exit.NO : undecided ? Exit.UNDECIDED : Exit.YES;
    }

    private static Stream<LoadResult> transport(HoldDetail hold) {
        return Stream.concat(hold.pulses().stream(), hold.steadyTurn().stream());
    }
}
