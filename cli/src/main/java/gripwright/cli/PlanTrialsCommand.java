package gripwright.cli;

import gripwright.files.ScoreSheet;
import gripwright.files.json.PlanJson;
import gripwright.model.Need;
import gripwright.report.BenchSheetPage;
import gripwright.report.TrialSheetPage;
import gripwright.study.PlanGoal;
import gripwright.study.TrialPlan;
import gripwright.study.TrialPlanner;
import gripwright.study.TrialPlanner.Choice;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Which trials to make with the built hand, in which order. */
@Command(
        name = "plan-trials",
        description =
                "Plan trials of the built hand: how many of which object, where, in which order; sheets to fill in.",
        footer = {
            "",
            "Writes to the folder trials of the project: sheet.csv to type into, sheet.html to print,",
            "measurements.html with bench measurements that replace assumptions (friction, springs, pads,",
            "tendons), and plan.svg. A sheet that somebody has filled in is never overwritten.",
            "'gripwright score' reads it.",
            "",
            "Examples:",
            "  gripwright plan-trials bench",
            "  gripwright plan-trials bench --difference \"20 %%\" --hands \"soft pads,hard pads\" --per-day 60",
            "  gripwright plan-trials bench --interval \"15 %%\" --object mug --object \"spray can\" --places in-use"
        })
final class PlanTrialsCommand extends ProjectCommand {
    /** Label of the hand of the project on a sheet. */
    static final String THIS_HAND = "this hand";

    private static final double WIDTH = 0.2;
    private static final int MOST_A_DAY = 10_000;
    private static final int MOST_TRIALS = 5_000;

    /** How objects come to stand. */
    enum Places {
        drawn,
        in_use {
            @Override
            public String toString() {
                return "in-use";
            }
        };

        static Places of(String word) {
            return Stream.of(values())
                    .filter(p -> p.toString().equals(word))
                    .findFirst()
                    .orElseThrow(() ->
                            new CommandFailure(Exit.USAGE, "--places is '" + word + "'; expected 'drawn' or 'in-use'"));
        }
    }

    @Option(
            names = "--difference",
            paramLabel = "SHARE",
            converter = ShareReader.class,
            description = "Difference of two hands or settings to be seen in the share held, such as \"20 %%\".")
    private @Nullable Double difference;

    @Option(
            names = "--interval",
            paramLabel = "SHARE",
            converter = ShareReader.class,
            description =
                    "Wanted width of the 95 %% interval of the share held, end to end; \"20 %%\" unless said otherwise.")
    private @Nullable Double interval;

    @Option(
            names = "--power",
            paramLabel = "SHARE",
            converter = ShareReader.class,
            description = "Chance to see the difference if it is there; \"80 %%\" unless said otherwise.")
    private double power = 0.8;

    @Option(
            names = "--expected",
            paramLabel = "SHARE",
            converter = ShareReader.class,
            description =
                    "Expected share held (by the better hand); the wanted success of the need unless said otherwise.")
    private @Nullable Double expected;

    @Option(
            names = "--hands",
            paramLabel = "A,B",
            split = ",",
            description = "Labels of the hands or settings, with commas between.")
    private List<String> hands = List.of();

    @Option(names = "--unpaired", description = "Compare hands at places of their own instead of the same places.")
    private boolean unpaired;

    @Option(
            names = "--object",
            paramLabel = "NAME",
            description = "Object to try; may be repeated. All objects unless said otherwise.")
    private List<String> objects = List.of();

    @Option(
            names = "--all-grips",
            description = "Try every grip that an object names; only the first unless said otherwise.")
    private boolean allGrips;

    @Option(
            names = "--places",
            paramLabel = "HOW",
            description =
                    "drawn: put objects where the sheet says, drawn from the need's scatter. in-use: where they stand "
                            + "when the camera finds them, which tells the scatter. drawn unless said otherwise.")
    private String places = "drawn";

    @Option(
            names = "--per-day",
            paramLabel = "N",
            description = "Trials a day has room for; ${DEFAULT-VALUE} unless said otherwise.")
    private int perDay = 80;

    @Option(
            names = "--seed",
            paramLabel = "S",
            description = "Seed of order and places; ${DEFAULT-VALUE} unless said otherwise.")
    private long seed = 1;

    @Option(
            names = "--to",
            paramLabel = "FOLDER",
            description = "Write there instead of the folder trials of the project.")
    private @Nullable Path to;

    PlanTrialsCommand(Surroundings at) {
        super(at);
    }

    @Override
    Exit run() {
        Quantities.whole("--per-day", perDay, 1, MOST_A_DAY);
        OpenProject open = open();
        Need need = open.project().need();
        TrialPlan plan = plan(open, need);
        Path folder = to == null ? dir().resolve("trials") : to;
        Path sheet = folder.resolve("sheet.csv");
        boolean renewed = refuseFilled(sheet);
        write(
                sheet,
                ScoreSheet.write(
                        plan,
                        List.of(
                                "Score sheet of Gripwright " + Version.TEXT + " for "
                                        + open.project().hand().name(),
                                "need: " + need.name() + "; seed " + plan.seed()
                                        + "; keep the order; leave empty what was not made")));
        write(folder.resolve("sheet.html"), TrialSheetPage.write(plan, need.name(), sheet.toString()));
        write(folder.resolve("measurements.html"), BenchSheetPage.write(open.project()));
        write(folder.resolve("plan.svg"), Pictures.plan(plan, need));
        at.out().println(PlanText.of(plan) + "\n");
        at.out()
                .println("written  to " + folder + ": sheet.csv" + (renewed ? " (an empty one was there)" : "")
                        + ", sheet.html, measurements.html, plan.svg");
        at.out()
                .println("next     fill in sheet.csv, then: gripwright score " + dir() + " --sheet " + sheet
                        + " --against prediction" + which(open, plan));
        results.json(() -> PlanJson.of(open.origin(), plan));
        results.picture(() -> Pictures.plan(plan, need));
        return Exit.YES;
    }

    /** Labels that do not say which of them is the hand of the project. */
    private static String which(OpenProject open, TrialPlan plan) {
        List<String> hands = plan.hands();
        return hands.size() == 1
                        || hands.contains(THIS_HAND)
                        || hands.contains(open.project().hand().name())
                ? ""
                : " --hand \"" + hands.get(0) + "\", if that is the hand of hand.yaml";
    }

    private TrialPlan plan(OpenProject open, Need need) {
        if (difference != null && interval != null) {
            throw new CommandFailure(Exit.USAGE, "--difference and --interval were both given; expected one of them");
        }
        boolean set = Places.of(places) == Places.drawn;
        List<String> labels = labels();
        objects.forEach(open::object);
        List<Choice> all = allGrips ? TrialPlanner.all(need) : TrialPlanner.first(need);
        List<Choice> chosen = all.stream()
                .filter(c -> objects.isEmpty() || objects.contains(c.object()))
                .toList();
        try {
            PlanGoal goal = difference != null
                    ? new PlanGoal.Difference(difference, power, set && !unpaired)
                    : new PlanGoal.Width(interval == null ? WIDTH : interval);
            double share = expected == null ? need.wantedSuccess() : expected;
            int trials = goal.trials(share);
            if ((long) trials * labels.size() > MOST_TRIALS) {
                throw new CommandFailure(
                        Exit.USAGE,
                        "that takes " + trials + " trials of each hand; expected at most " + MOST_TRIALS
                                + " in all. Look for a greater difference or a wider interval");
            }
            return new TrialPlanner(need, chosen, perDay, set).plan(labels, goal, share, seed);
        } catch (IllegalArgumentException e) {
            throw new CommandFailure(Exit.USAGE, String.valueOf(e.getMessage()), e);
        }
    }

    private List<String> labels() {
        List<String> given = hands.stream().map(String::strip).toList();
        if (given.stream().anyMatch(String::isEmpty)
                || given.stream().distinct().count() < given.size()) {
            throw new CommandFailure(
                    Exit.USAGE, "--hands is " + hands + "; expected different labels with commas between");
        }
        if (difference != null && !given.isEmpty() && given.size() < 2) {
            throw new CommandFailure(
                    Exit.USAGE, "--hands names " + given.size() + " hand; a difference needs two, such as \"A,B\"");
        }
        if (!given.isEmpty()) {
            return given;
        }
        return difference == null ? List.of(THIS_HAND) : List.of(THIS_HAND, "other hand");
    }

    /** True if an empty sheet is there, which will be replaced. */
    private boolean refuseFilled(Path sheet) {
        Path file = at.path(sheet);
        try {
            if (!Files.exists(file)) {
                return false;
            }
            if (ScoreSheet.isFilled(file)) {
                throw new CommandFailure(
                        Exit.FILES,
                        sheet
                                + " is filled in (or no sheet of this program); nothing was written. Keep it under another"
                                + " name, or choose another folder with --to");
            }
            return true;
        } catch (IOException e) {
            throw new CommandFailure(Exit.FILES, "cannot read " + sheet + ": " + ResultFile.reason(e), e);
        }
    }

    private void write(Path file, String text) {
        ResultFile.write(at.path(file), text);
    }
}
