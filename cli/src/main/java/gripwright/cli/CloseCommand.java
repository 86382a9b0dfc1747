package gripwright.cli;

import gripwright.closing.ChipReadings;
import gripwright.closing.ClosingDetail;
import gripwright.closing.ClosingRunner;
import gripwright.closing.Conditions;
import gripwright.closing.Numerics;
import gripwright.closing.Outcome;
import gripwright.closing.SensedDetail;
import gripwright.closing.Sensing;
import gripwright.files.json.CloseJson;
import gripwright.model.GraspObject;
import gripwright.model.Grip;
import gripwright.study.Refinement;
import gripwright.study.Sureness;
import gripwright.study.Uncertain;
import java.nio.file.Path;
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
            "  gripwright close bench --object mug --grip wrap --sensed --readings mug.csv",
            "  gripwright close bench --object mug --grip wrap --picture mug.svg --json mug.json --frames"
        })
final class CloseCommand extends ProjectCommand {
    @Mixin
    private final PairOptions pair = new PairOptions();

    @Mixin
    private final PadOption pads = new PadOption();

    @Mixin
    private final StartOptions start = new StartOptions();

    @Option(names = "--frames", description = "Put the moments of the run and the pad pressures into the JSON too.")
    private boolean frames;

    @Option(names = "--once", description = "Close once only, and do not look how sure the outcome is.")
    private boolean once;

    @Option(
            names = "--refine",
            description = "Also halve the step, the pad pitch and the damping in turn, and say what moves; a picture "
                    + "then shows that.")
    private boolean refine;

    @Mixin
    private final PolicyOption policy = new PolicyOption();

    @Option(
            names = "--sensed",
            description = "Say what the chips of pads.yaml read; JSON and picture then hold every reading.")
    private boolean sensed;

    @Option(
            names = "--readings",
            paramLabel = "FILE.csv",
            description = "Also write every reading of every chip; means --sensed.")
    private @Nullable Path readingsFile;

    CloseCommand(Surroundings at) {
        super(at);
    }

    @Override
    Exit run() {
        OpenProject open = open();
        GraspObject object = open.object(pair.object());
        Grip grip = open.grip(pair.grip());
        Numerics numerics = results.pictureWanted() || frames ? pads.numerics().recording() : pads.numerics();
        Sensing sensing = policy.sensing(open, sensed || readingsFile != null);
        PolicyOption.check(policy.policy(), open.project().hand(), grip, sensing);
        ClosingRunner closing = runner(open, object, grip, numerics, sensing);
        Conditions wanted = start.conditions();
        SensedDetail both = sensing == null ? null : closing.sensed(wanted);
        ChipReadings readings = both == null ? null : both.readings();
        ClosingDetail detail = both == null ? closing.detail(wanted) : both.closing();
        at.out().println(CloseText.of(object.name(), grip.name(), detail));
        if (readings != null) {
            at.out().println("\n" + SensedText.of(policy.policy(), readings) + "\n");
        }
        Sureness sureness = once ? null : sureness(open, object, grip, detail.conditions(), sensing);
        if (sureness != null) {
            at.out().println(SureText.of(sureness, detail.summary().outcome()));
        }
        List<Refinement> refinements =
                refine ? refinements(open, object, grip, detail.conditions(), sensing) : List.of();
        if (refine) {
            at.out().println("\n" + SureText.of(refinements) + "\n");
        }
        at.out().println(open.assumptionsLine());
        results.json(() ->
                CloseJson.of(open.origin(), open.project().hand(), grip, object, detail, frames, sureness, readings));
        results.picture(() -> refine
                ? Pictures.refinements(object.name(), refinements)
                : Pictures.closing(open.project().hand(), object, detail, readings));
        if (readings != null && readingsFile != null) {
            ResultFile.write(at.path(readingsFile), SensedText.csv(readings));
            at.out().println("readings written to " + readingsFile);
        }
        return exit(detail.summary().outcome());
    }

    private ClosingRunner runner(
            OpenProject open, GraspObject object, Grip grip, Numerics numerics, @Nullable Sensing sensing) {
        return PolicyOption.factory(at.closings(), open, numerics, policy.policy(), sensing)
                .create(object, grip);
    }

    private Sureness sureness(
            OpenProject open, GraspObject object, Grip grip, Conditions conditions, @Nullable Sensing sensing) {
        ClosingRunner runner = runner(open, object, grip, pads.numerics(), sensing);
        String subject = Sureness.subject(object.name(), grip.name(), conditions);
        return Sureness.of(runner, conditions, subject, Uncertain.seeded(1));
    }

    private List<Refinement> refinements(
            OpenProject open, GraspObject object, Grip grip, Conditions conditions, @Nullable Sensing sensing) {
        return Refinement.of(
                pads.numerics(),
                numerics -> runner(open, object, grip, numerics, sensing).detail(conditions));
    }

    static Exit exit(@Nullable Outcome outcome) {
        if (outcome == null || outcome == Outcome.UNDECIDED) {
            return Exit.UNDECIDED;
        }
        return outcome == Outcome.HELD ? Exit.YES : Exit.NO;
    }
}
