package gripwright.cli;

import gripwright.closing.ClosingDetail;
import gripwright.closing.ClosingRunner;
import gripwright.closing.Conditions;
import gripwright.closing.Numerics;
import gripwright.closing.Outcome;
import gripwright.files.json.CloseJson;
import gripwright.model.GraspObject;
import gripwright.model.Grip;
import gripwright.study.Refinement;
import gripwright.study.Sureness;
import gripwright.study.Uncertain;
import java.util.List;
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
            "  gripwright close bench --object mug --grip wrap --refine",
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

    @Option(names = "--once", description = "Close once only, and do not look how sure the outcome is.")
    private boolean once;

    @Option(
            names = "--refine",
            description = "Also halve the step, the pad pitch and the damping in turn, and say what moves; a picture "
                    + "then shows that.")
    private boolean refine;

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
        Sureness sureness = once ? null : sureness(open, object, grip, detail.conditions());
        if (sureness != null) {
            at.out().println(SureText.of(sureness, detail.summary().outcome()));
        }
        List<Refinement> refinements = refine ? refinements(open, object, grip, detail.conditions()) : List.of();
        if (refine) {
            at.out().println("\n" + SureText.of(refinements) + "\n");
        }
        at.out().println(open.assumptionsLine());
        results.json(() -> CloseJson.of(open.origin(), open.project().hand(), grip, object, detail, frames, sureness));
        results.picture(() -> refine
                ? Pictures.refinements(object.name(), refinements)
                : Pictures.closing(open.project().hand(), object, detail));
        return exit(detail.summary().outcome());
    }

    private Sureness sureness(OpenProject open, GraspObject object, Grip grip, Conditions conditions) {
        ClosingRunner runner = at.closings().of(open.project(), pads.numerics()).create(object, grip);
        String subject = Sureness.subject(object.name(), grip.name(), conditions);
        return Sureness.of(runner, conditions, subject, Uncertain.seeded(1));
    }

    private List<Refinement> refinements(OpenProject open, GraspObject object, Grip grip, Conditions conditions) {
        return Refinement.of(
                pads.numerics(),
                numerics -> at.closings()
                        .of(open.project(), numerics)
                        .create(object, grip)
                        .detail(conditions));
    }

    static Exit exit(@Nullable Outcome outcome) {
        if (outcome == null || outcome == Outcome.UNDECIDED) {
            return Exit.UNDECIDED;
        }
        return outcome == Outcome.HELD ? Exit.YES : Exit.NO;
    }
}
