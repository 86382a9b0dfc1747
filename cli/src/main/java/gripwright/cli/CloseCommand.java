package gripwright.cli;

import gripwright.closing.ClosingDetail;
import gripwright.closing.Conditions;
import gripwright.closing.Numerics;
import gripwright.closing.Outcome;
import gripwright.files.json.CloseJson;
import gripwright.model.GraspObject;
import gripwright.model.Grip;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** One closing with all its numbers. */
@Command(
        name = "close",
        description = "Close the hand once on one object and lift; print forces, angles and the outcome.",
        footer = {
            "",
            "Offsets move the object, not the hand: x along the closing direction, y across.",
            "",
            "Examples:",
            "  gripwright close bench --object mug --grip wrap",
            "  gripwright close bench --object mug --grip wrap --offset \"12 mm, -5 mm\" --turn \"20 deg\"",
            "  gripwright close bench --object mug --grip wrap --picture mug.svg --json mug.json --frames"
        })
final class CloseCommand extends ProjectCommand {
    @Mixin
    private final PairOptions pair = new PairOptions();

    @Mixin
    private final PadOption pads = new PadOption();

    @Option(
            names = "--offset",
            paramLabel = "\"X, Y\"",
            converter = Quantities.OffsetReader.class,
            description = "Shift of the object from its nominal place, such as \"12 mm, -5 mm\".")
    private Quantities.Offset offset = new Quantities.Offset(0, 0);

    @Option(
            names = "--turn",
            paramLabel = "ANGLE",
            converter = Quantities.AngleReader.class,
            description = "Turn of the object about the vertical, such as \"20 deg\".")
    private double turn;

    @Option(names = "--frames", description = "Put the moments of the run and the pad pressures into the JSON too.")
    private boolean frames;

    CloseCommand(Surroundings at) {
        super(at);
    }

    @Override
    Exit run() {
        OpenProject open = open();
        GraspObject object = open.object(pair.object());
        Grip grip = open.grip(pair.grip());
        Numerics numerics = results.pictureWanted() || frames ? pads.numerics().recording() : pads.numerics();
        ClosingDetail detail = at.closings()
                .of(open.project(), numerics)
                .create(object, grip)
                .detail(Conditions.at(offset.x(), offset.y(), turn));
        at.out().println(CloseText.of(object.name(), grip.name(), detail));
        at.out().println(open.assumptionsLine());
        results.json(() -> CloseJson.of(open.origin(), open.project().hand(), grip, object, detail, frames));
        results.picture(() -> Pictures.closing(open.project().hand(), object, detail));
        return exit(detail.summary().outcome());
    }

    static Exit exit(@Nullable Outcome outcome) {
        if (outcome == null || outcome == Outcome.UNDECIDED) {
            return Exit.UNDECIDED;
        }
        return outcome == Outcome.HELD ? Exit.YES : Exit.NO;
    }
}
