package gripwright.cli;

import gripwright.files.AssumptionEdit;
import gripwright.files.ProjectReader;
import gripwright.files.ScoreSheet;
import gripwright.files.ScoreSheet.Sheet;
import gripwright.files.json.ScoreJson;
import gripwright.report.ScorePage;
import gripwright.study.Explain;
import gripwright.study.ExplainResult;
import gripwright.study.ExplainResult.Placing;
import gripwright.study.FieldTrial;
import gripwright.study.Jobs;
import gripwright.study.ScoreFindings;
import gripwright.study.Scoring;
import gripwright.study.SheetScore;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** What the trials of the built hand say. */
@Command(
        name = "score",
        description = "Score filled sheets of trials: shares held, differences of hands, prediction, assumptions.",
        footer = {
            "",
            "Every fault of a sheet is listed with its line, and nothing is computed. Assumptions that the",
            "trials refute are offered as an edit of the project files and never applied; saved to a file,",
            "'patch -d DIR < FILE' does it.",
            "Ctrl-C stops the closings; the same command goes on from there. The exit code says only whether",
            "it was scored.",
            "",
            "Examples:",
            "  gripwright score bench --sheet bench/trials/sheet.csv --against prediction",
            "  gripwright score bench --sheet may.csv --against june.csv --hand \"soft pads\"",
            "  gripwright score bench --sheet bench/trials/sheet.csv --so-far --no-closings"
        })
final class ScoreCommand extends ProjectCommand {
    private static final String PREDICTION = "prediction";
    private static final int MOST_CLOSINGS = 2_000;

    @Mixin
    private final PadOption pads = new PadOption();

    @Mixin
    private final ThreadOption threads = new ThreadOption();

    @Option(names = "--sheet", required = true, paramLabel = "FILE", description = "The filled score sheet, CSV.")
    private Path sheet = Path.of("");

    @Option(
            names = "--against",
            paramLabel = "WHAT",
            description = "'prediction', or another sheet with trials of another hand or setting.")
    private @Nullable String against;

    @Option(
            names = "--hand",
            paramLabel = "LABEL",
            description = "Label of the project's hand on the sheet; '" + PlanTrialsCommand.THIS_HAND
                    + "', the name of the hand, or the only label unless said otherwise.")
    private @Nullable String hand;

    @Option(names = "--so-far", description = "Leave out trials without an outcome instead of refusing them.")
    private boolean soFar;

    @Option(names = "--no-closings", description = "Only count: no prediction, no update of assumptions.")
    private boolean noClosings;

    @Option(
            names = "--closings",
            paramLabel = "N",
            description = "Closings for each object and grip on the sheet; ${DEFAULT-VALUE} unless said otherwise.")
    private int closings = Explain.Settings.CLOSINGS;

    @Option(
            names = "--placing",
            paramLabel = "LENGTH",
            converter = PlacingReader.class,
            description =
                    "How well a place on the sheet is known, one standard deviation; \"2 mm\" unless said otherwise.")
    private double placing = Placing.DEFAULT.shift();

    @Option(
            names = "--seed",
            paramLabel = "S",
            description = "Seed of the closings; ${DEFAULT-VALUE} unless said otherwise.")
    private long seed = 1;

    @Option(
            names = "--page",
            paramLabel = "FILE.html",
            description = "Write the page there instead of results/score.html.")
    private @Nullable Path page;

    ScoreCommand(Surroundings at) {
        super(at);
    }

    @Override
    Exit run() {
        Jobs jobs = threads.jobs();
        Quantities.whole("--closings", closings, 40, MOST_CLOSINGS);
        boolean foretold = PREDICTION.equals(against);
        if (foretold && noClosings) {
            throw new CommandFailure(
                    Exit.USAGE, "--against prediction and --no-closings were both given; a prediction needs closings");
        }
        OpenProject open = open();
        List<String> cautions = new ArrayList<>();
        List<String> sheets = new ArrayList<>(List.of(sheet.toString()));
        List<FieldTrial> trials = new ArrayList<>(read(open, sheet, cautions));
        if (against != null && !foretold) {
            Path other = Path.of(against);
            sheets.add(against);
            trials.addAll(renamed(trials, read(open, other, cautions), String.valueOf(other.getFileName())));
        }
        Optional<String> label =
                label(open, trials.stream().map(FieldTrial::hand).distinct().toList());
        // The hand of the project comes first, whatever the lot said.
        trials.sort(Comparator.comparing(t -> !label.equals(Optional.of(t.hand()))));
        SheetScore score = Scoring.of(trials);
        double wanted = open.project().need().wantedSuccess();
        Studies studies = new Studies(at, open, pads.numerics(), jobs);
        Optional<ExplainResult> explained =
                noClosings ? Optional.empty() : explained(studies, label, score, trials, cautions);
        Optional<AssumptionEdit.Edit> edit = explained.map(e -> edit(open, e));
        edit.ifPresent(e -> cautions.addAll(e.notes()));
        List<String> answer = ScoreFindings.of(score, wanted, explained, foretold);
        at.out().println(ScoreText.of(score, explained, foretold) + "\n");
        answer.forEach(line -> at.out().println(Words.wrapped(line)));
        cautions.forEach(line -> at.out().println(Words.wrapped(line)));
        explained.ifPresent(e -> at.out().println("\n" + ScoreText.offered(e, edit)));
        Path to = page == null ? dir().resolve("results/score.html") : page;
        ResultFile.write(
                at.path(to),
                ScorePage.write(new ScorePage.Input(
                        open.project().need().name(),
                        sheets,
                        score,
                        wanted,
                        explained,
                        foretold,
                        edit.map(AssumptionEdit.Edit::diff).orElse(""),
                        answer,
                        cautions)));
        results.json(() -> ScoreJson.of(open.origin(), sheets, wanted, score, explained, edit));
        results.picture(() -> Pictures.score(score, wanted));
        at.out().println("page     written to " + to);
        return studies.stopped() ? Exit.STOPPED : Exit.YES;
    }

    private List<FieldTrial> read(OpenProject open, Path file, List<String> cautions) {
        try {
            if (!Files.isRegularFile(at.path(file))) {
                throw new CommandFailure(
                        Exit.FILES, "there is no file " + file + "; expected a score sheet as plan-trials writes it");
            }
            Sheet read = ScoreSheet.read(at.path(file), file.toString(), open.project(), soFar);
            if (read.open() > 0) {
                cautions.add("Left out: " + Say.count(read.open(), "trial", "trials") + " of " + file
                        + " without an outcome.");
            }
            if (!read.aside().isEmpty()) {
                cautions.add("Not counted, since a # stands before: what looks like trials in line "
                        + read.aside().stream().map(String::valueOf).collect(Collectors.joining(", ")) + " of " + file
                        + ".");
            }
            return read.trials();
        } catch (IOException e) {
            throw new CommandFailure(Exit.FILES, "cannot read " + file + ": " + ResultFile.reason(e), e);
        }
    }

    /** A label that both sheets use means two things: the second one says where it comes from. */
    private static List<FieldTrial> renamed(List<FieldTrial> first, List<FieldTrial> second, String file) {
        List<String> taken = first.stream().map(FieldTrial::hand).distinct().toList();
        return second.stream()
                .map(t -> !taken.contains(t.hand())
                        ? t
                        : new FieldTrial(
                                t.number(),
                                t.hand() + " (" + file + ")",
                                t.object(),
                                t.grip(),
                                t.placed(),
                                t.outcome(),
                                t.reason(),
                                t.note(),
                                t.pair(),
                                t.count()))
                .toList();
    }

    private Optional<ExplainResult> explained(
            Studies studies, Optional<String> label, SheetScore score, List<FieldTrial> trials, List<String> cautions) {
        if (label.isEmpty()) {
            cautions.add("No prediction and no update of assumptions: which of " + String.join(", ", score.hands())
                    + " is the hand of the project? Say so with --hand.");
            return Optional.empty();
        }
        List<FieldTrial> own =
                trials.stream().filter(t -> t.hand().equals(label.get())).toList();
        if (own.stream().noneMatch(t -> t.decided() && t.count() > 0)) {
            cautions.add("No prediction and no update of assumptions: no decided trial of " + label.get() + ".");
            return Optional.empty();
        }
        Placing error = new Placing(placing, Placing.DEFAULT.turn());
        return Optional.of(studies.explain(own, new Explain.Settings(closings, seed, error)));
    }

    private Optional<String> label(OpenProject open, List<String> hands) {
        if (hand != null) {
            if (!hands.contains(hand)) {
                throw new CommandFailure(
                        Exit.USAGE, "no trial is of hand '" + hand + "'; there are: " + String.join(", ", hands));
            }
            return Optional.of(hand);
        }
        if (hands.size() == 1) {
            return Optional.of(hands.get(0));
        }
        return hands.stream()
                .filter(h -> h.equals(PlanTrialsCommand.THIS_HAND)
                        || h.equals(open.project().hand().name()))
                .findFirst();
    }

    private static AssumptionEdit.Edit edit(OpenProject open, ExplainResult result) {
        try {
            return AssumptionEdit.of(open.folder(), ProjectReader.readMarked(open.folder()), result);
        } catch (IOException e) {
            throw new CommandFailure(Exit.FILES, "cannot read " + open.given() + ": " + ResultFile.reason(e), e);
        }
    }
}
