package gripwright.cli;

import gripwright.files.ProjectFaults;
import gripwright.files.json.CheckJson;
import gripwright.model.Finger;
import gripwright.model.GraspObject;
import gripwright.model.Hand;
import gripwright.model.Project;
import gripwright.model.SharedAssumption;
import java.util.List;
import picocli.CommandLine.Command;

/** Reads a project and says what is in it and what was assumed, or everything that is wrong with it. */
@Command(
        name = "check",
        description = "Read a project folder; list every fault, or what was understood and assumed.",
        footer = {"", "Example:", "  gripwright check bench"})
final class CheckCommand extends ProjectCommand {
    CheckCommand(Surroundings at) {
        super(at);
    }

    @Override
    Exit run() {
        try {
            OpenProject open = open();
            at.out().println(summary(open));
            List<String> stale = StaleResults.in(open);
            if (!stale.isEmpty()) {
                at.out()
                        .println("\nStale, made from other files than these: " + String.join(", ", stale) + " in "
                                + dir().resolve("results") + ";\n'gripwright report " + dir() + "' makes them anew.");
            }
            results.json(() -> CheckJson.of(open.origin(), open.project()));
            results.picture(() -> Pictures.hand(open.project().hand()));
            return Exit.YES;
        } catch (ProjectFaults faults) {
            String inputs = OpenProject.hash(dir(), OpenProject.folder(at, dir()));
            results.json(() -> CheckJson.of(Version.TEXT, inputs, faults.faults()));
            throw faults;
        }
    }

    private static String summary(OpenProject open) {
        return open.given() + " has no faults.\n\n" + contents(open) + "\n\n" + assumptions(open.project());
    }

    /** Hand, need and objects. */
    static String contents(OpenProject open) {
        Project project = open.project();
        Hand hand = project.hand();
        int phalanges =
                hand.fingers().stream().mapToInt(f -> f.phalanges().size()).sum();
        StringBuilder text = new StringBuilder();
        text.append("hand     ").append(hand.name()).append(": ");
        text.append(Say.count(hand.fingers().size(), "finger", "fingers")).append(" (");
        text.append(String.join(", ", hand.fingers().stream().map(Finger::name).toList()))
                .append("), ");
        text.append(Say.count(phalanges, "phalanx", "phalanges")).append(", ");
        text.append(Say.count(hand.motors().size(), "motor", "motors")).append(", ");
        text.append(Say.count(hand.grips().size(), "grip", "grips")).append('\n');
        text.append("need     ").append(project.need().name()).append(": ");
        text.append(Say.count(project.need().objects().size(), "object", "objects"))
                .append(", wanted ");
        text.append(Say.exactly(project.need().wantedSuccess())).append("\n\n");
        Table objects = new Table("lrrl", "object", "mass", "weight", "grips");
        for (GraspObject object : project.need().objects()) {
            objects.row(
                    object.name(),
                    Say.mass(object.mass()),
                    gripwright.units.QuantityText.number(object.weight(), 3),
                    String.join(", ", object.grips()));
        }
        return text.append(objects).toString();
    }

    private static String assumptions(Project project) {
        if (project.assumptions().isEmpty()) {
            return "Nothing was assumed beyond the files.";
        }
        StringBuilder text = new StringBuilder("Assumed, since the files do not say (");
        text.append(project.assumptions().size()).append("):");
        for (SharedAssumption assumption : SharedAssumption.of(project.assumptions())) {
            text.append("\n  ").append(assumption.where()).append(": ").append(assumption.text());
        }
        return text.toString();
    }
}
