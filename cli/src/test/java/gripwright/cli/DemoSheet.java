package gripwright.cli;

import gripwright.closing.ClosingRunner;
import gripwright.closing.Conditions;
import gripwright.closing.Numerics;
import gripwright.closing.Outcome;
import gripwright.files.ProjectReader;
import gripwright.files.ScoreSheet;
import gripwright.model.FrictionTable;
import gripwright.model.Hand;
import gripwright.model.Placement;
import gripwright.model.Project;
import gripwright.model.Spread;
import gripwright.study.FieldTrial;
import gripwright.study.Placed;
import gripwright.study.PlanGoal;
import gripwright.study.TrialPlan;
import gripwright.study.TrialPlan.Planned;
import gripwright.study.TrialPlanner;
import gripwright.study.TrialPlanner.Choice;
import gripwright.study.TrialReason;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;

/**
 * Makes score sheets with the closing model itself, for the demo and for closed loops: trials at planned places by two
 * hands of which the first has another friction than its files say, and trials of the first where objects stand as in
 * use, with another scatter. One copy of a hand has one stiffness of pads and springs, and one table.
 *
 * @param friction factor on the friction of all rubbers of the first hand
 * @param otherFriction the same of the second
 * @param scatter factor on the placement scatter in use
 * @param inUse trials in use of each object
 */
record DemoSheet(Project project, double friction, double otherFriction, double scatter, int inUse, long seed) {
    private static final List<String> HANDS = List.of(PlanTrialsCommand.THIS_HAND, "washed pads");
    private static final double PLACING = 0.002;
    private static final double TURNING = Math.toRadians(2);

    /** Writes the sheet of the demo: arguments are the project folder and the file. */
    public static void main(String[] args) throws IOException {
        Project project = ProjectReader.read(Path.of(args[0]));
        DemoSheet demo = new DemoSheet(project, 0.6, 1.05, 1.5, 10, 20261125);
        TrialPlan plan = new TrialPlanner(project.need(), parts(), 80, true)
                .plan(HANDS, new PlanGoal.Difference(0.2, 0.8, true), 0.9, 1);
        List<FieldTrial> trials = demo.trials(plan, true);
        String sheet = ScoreSheet.write(
                trials,
                List.of(
                        "INVENTED DATA. Nobody made these trials: the closing model did, with less friction and more scatter",
                        "than the files of the demo say, so that 'gripwright score' has something to find.",
                        "Empty places: the object stood as in use, and nobody measured where."));
        Files.writeString(Path.of(args[1]), sheet);
    }

    static List<Choice> parts() {
        return List.of(
                new Choice("oil bottle", "wrap"),
                new Choice("tape roll", "low"),
                new Choice("cable coil", "low"),
                new Choice("bearing", "pinch"));
    }

    /** All trials of a plan, then those in use; with one that does not count if {@code mishap}. */
    List<FieldTrial> trials(TrialPlan plan, boolean mishap) {
        Random random = new Random(seed);
        Map<String, double[]> copies = new LinkedHashMap<>();
        for (String hand : plan.hands()) {
            copies.put(hand, new double[] {
                Math.exp(0.15 * random.nextGaussian()), Math.exp(0.05 * random.nextGaussian()), random.nextGaussian()
            });
        }
        List<FieldTrial> trials = new ArrayList<>();
        for (Planned t : plan.trials()) {
            Placed at = t.placed().orElseThrow();
            Conditions c = conditions(
                    random,
                    at.x() + PLACING * random.nextGaussian(),
                    at.y() + PLACING * random.nextGaussian(),
                    at.turn() + TURNING * random.nextGaussian(),
                    project.need().placement().height().size() * random.nextGaussian(),
                    copies.getOrDefault(t.hand(), new double[0]));
            Outcome outcome = mishap && t.number() == 17
                    ? Outcome.UNDECIDED
                    : runner(t.hand(), t.object(), t.grip()).run(c).outcome();
            trials.add(trial(t.number(), t.hand(), t.object(), t.grip(), t.placed(), outcome, t.pair(), random));
        }
        Placement p = project.need().placement();
        for (TrialPlan.Part part : plan.parts()) {
            for (int i = 0; i < inUse; i++) {
                Conditions c = conditions(
                        random,
                        scatter * p.x().size() * random.nextGaussian(),
                        scatter * p.y().size() * random.nextGaussian(),
                        scatter * p.turn().size() * random.nextGaussian(),
                        scatter * p.height().size() * random.nextGaussian(),
                        copies.getOrDefault(plan.hands().get(0), new double[0]));
                trials.add(trial(
                        trials.size() + 1,
                        plan.hands().get(0),
                        part.object(),
                        part.grip(),
                        Optional.empty(),
                        runner(plan.hands().get(0), part.object(), part.grip())
                                .run(c)
                                .outcome(),
                        "",
                        random));
            }
        }
        return trials;
    }

    private static Conditions conditions(Random random, double x, double y, double turn, double height, double[] copy) {
        return new Conditions(x, y, turn, height, 0, copy[2], random.nextGaussian(), copy[0], copy[1]);
    }

    private static FieldTrial trial(
            int number,
            String hand,
            String object,
            String grip,
            Optional<Placed> placed,
            Outcome outcome,
            String pair,
            Random random) {
        List<TrialReason> reasons = TrialReason.of(outcome);
        Optional<TrialReason> reason = outcome == Outcome.UNDECIDED
                ? Optional.of(TrialReason.ROBOT_STOPPED)
                : reasons.isEmpty()
                        ? Optional.empty()
                        : Optional.of(reasons.get(random.nextInt(Math.max(1, reasons.size() - 1))));
        return new FieldTrial(number, hand, object, grip, placed, outcome, reason, "", pair, 1);
    }

    private ClosingRunner runner(String label, String object, String grip) {
        double factor = label.equals(PlanTrialsCommand.THIS_HAND) ? friction : otherFriction;
        Hand hand = with(project.hand(), factor);
        Project other = new Project(hand, project.need(), List.of());
        return Surroundings.SIMULATION
                .of(other, Numerics.DEFAULT)
                .create(project.need().object(object), hand.grip(grip));
    }

    private static Hand with(Hand h, double factor) {
        Map<String, Map<String, Spread>> byRubber = new LinkedHashMap<>();
        h.friction().byRubber().forEach((rubber, table) -> {
            Map<String, Spread> moved = new LinkedHashMap<>();
            table.forEach((surface, mu) -> moved.put(surface, Spread.exactly(factor * mu.mean())));
            byRubber.put(rubber, moved);
        });
        return new Hand(
                h.name(),
                h.palm(),
                h.fingers(),
                h.motors(),
                new FrictionTable(byRubber, Spread.exactly(h.friction().bone().mean())),
                h.arm(),
                h.grips());
    }
}
