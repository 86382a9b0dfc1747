package gripwright.cli;

import gripwright.files.json.StrengthJson;
import gripwright.model.Grip;
import gripwright.study.GripStrength;
import gripwright.study.GripStrength.Figures;
import gripwright.study.GripStrength.OfFinger;
import gripwright.study.GripStrength.OnPipe;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Grip figures on pipes, for comparison with a lab. */
@Command(
        name = "strength",
        description =
                "Foretell what a lab would measure on upright PVC pipes: squeeze on a split pipe, pull-out, fingers.",
        footer = {
            "",
            "The pipes are 160 mm high; their outside diameters are those of ASTM D1785, schedule 40.",
            "",
            "Examples:",
            "  gripwright strength bench --grip wrap --surface plastic",
            "  gripwright strength bench --grip wrap --surface plastic --json wrap.json --picture wrap.svg"
        })
final class StrengthCommand extends ProjectCommand {
    private static final String HOW = """
            To measure the same: stand a pipe where the grip aims and close until the motor stalls.
            squeeze   saw the pipe along its axis, put a force sensor between the halves, turn the cut to the stated angle
                      of its normal from the closing direction
            pull      lift, then pull the pipe slowly along its axis with a force gauge; the greatest reading in 5 mm of
                      travel in the hand, the weaker way of up and down
            twist     the same with a torque gauge about the axis, over 9.5 deg
            finger    fasten a pipe to the bench, hold the tendons of the other fingers, let the one finger close on it;
                      the sum of what its pads press
            Cycle time needs the speed of the motor under load, which the project files do not hold: not foretold.""";

    @Option(names = "--grip", required = true, paramLabel = "NAME", description = "The grip, as in hand.yaml.")
    private String grip = "";

    @Option(
            names = "--surface",
            required = true,
            paramLabel = "NAME",
            description = "The surface of the pipes, as in the friction table of hand.yaml.")
    private String surface = "";

    @Mixin
    private final PadOption pads = new PadOption();

    StrengthCommand(Surroundings at) {
        super(at);
    }

    @Override
    Exit run() {
        OpenProject open = open();
        Grip found = open.grip(grip);
        GripStrength strength = new GripStrength(
                open.project().hand(), at.closings().of(open.project(), pads.numerics()), found, surface);
        if (!strength.surfaces().contains(surface)) {
            throw new CommandFailure(
                    Exit.USAGE,
                    "no friction is given for the surface '" + surface + "'; there is for: "
                            + String.join(", ", strength.surfaces()));
        }
        Table pipes =
                new Table("lrlrrrlrl", "pipe", "outside", "picked up", "squeeze", "cut at", "pull", "", "twist", "");
        Figures figures = strength.all();
        figures.pipes().forEach(p -> row(pipes, p));
        at.out().println(pipes);
        at.out().println();
        Table fingers = new Table("lr", "finger alone", "presses");
        for (OfFinger f : figures.fingers()) {
            fingers.row(
                    f.finger(), Double.isNaN(f.force()) ? "- (" + f.outcome().words() + ")" : Say.force(f.force()));
        }
        at.out().println(fingers);
        at.out().println("on a pipe of " + figures.fingerPipe().size() + " that does not move");
        at.out().println();
        at.out().println(HOW);
        at.out().println(open.assumptionsLine());
        results.json(() -> StrengthJson.of(open.origin(), figures, HOW));
        results.picture(() -> Pictures.strength(figures));
        return Exit.YES;
    }

    private static void row(Table table, OnPipe p) {
        table.row(
                p.pipe().size(),
                Say.length(p.pipe().diameter()),
                p.outcome().words(),
                Double.isNaN(p.squeeze()) ? "-" : Say.force(p.squeeze()),
                Double.isNaN(p.squeeze()) ? "-" : Say.angle(p.splitNormal()),
                p.pull().map(r -> Say.force(r.peak())).orElse("-"),
                p.pull().map(r -> r.kind().words()).orElse("-"),
                p.twist().map(r -> Say.torque(r.peak())).orElse("-"),
                p.twist().map(r -> r.kind().words()).orElse("-"));
    }
}
