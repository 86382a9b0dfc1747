package gripwright.cli;

import gripwright.closing.ClosingDetail;
import gripwright.closing.Conditions;
import gripwright.closing.HoldPlan;
import gripwright.closing.Numerics;
import gripwright.closing.Outcome;
import gripwright.files.json.MapJson;
import gripwright.files.json.TrialsJson;
import gripwright.files.json.VaryJson;
import gripwright.model.GraspObject;
import gripwright.model.Project;
import gripwright.report.HtmlReport;
import gripwright.report.ReportInput;
import gripwright.study.CaptureMap;
import gripwright.study.Jobs;
import gripwright.study.MapResult;
import gripwright.study.Refinement;
import gripwright.study.RunnerFactory;
import gripwright.study.TrialsResult;
import gripwright.study.VaryResult;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;

/** Trials, maps and film strips of one project, and the report and the files made from them. */
final class ReportMaker {
    /**
     * How much to compute.
     *
     * @param map its span and cells, for each of the objects in {@code mapped}, with its best grip
     * @param command as typed, to be printed in the report
     */
    record Plan(
            int runs,
            long seed,
            CaptureMap map,
            List<GraspObject> mapped,
            Numerics numerics,
            Jobs jobs,
            String command) {
        Plan {
            mapped = List.copyOf(mapped);
        }
    }

    /** What was computed; maps and closings may be missing if it was stopped. */
    record Made(
            TrialsResult trials,
            List<MapResult> maps,
            List<ReportInput.Closing> closings,
            List<ReportInput.Hold> holds,
            List<ReportInput.Refined> refined,
            boolean stopped) {}

    private final Surroundings at;
    private final OpenProject open;
    private final Project project;
    private final Plan plan;

    ReportMaker(Surroundings at, OpenProject open, Plan plan) {
        this.at = at;
        this.open = open;
        this.project = open.project();
        this.plan = plan;
    }

    Made compute() {
        Studies studies = new Studies(at, open, plan.numerics, plan.jobs);
        TrialsResult trials = studies.trials(plan.runs, plan.seed);
        List<MapResult> maps = new ArrayList<>();
        for (GraspObject object : plan.mapped) {
            if (!studies.stopped()) {
                maps.add(studies.map(object, project.hand().grip(bestGrip(trials, object)), plan.map));
            }
        }
        List<ReportInput.Closing> closings = studies.stopped() ? List.of() : closings(trials);
        List<ReportInput.Hold> holds = studies.stopped() ? List.of() : holds(trials);
        List<ReportInput.Refined> refined = studies.stopped() ? List.of() : refined(trials);
        return new Made(trials, maps, closings, holds, refined, studies.stopped());
    }

    /** Writes the report and beside it the results it is made from; returns the sentences of the answer. */
    List<String> write(Made made, Path report) {
        Path folder = report.resolveSibling("");
        ResultFile.write(
                folder.resolve("trials.json"),
                TrialsJson.of(
                        open.origin(), OpenProject.CRITERIA, project.need().wantedSuccess(), made.trials));
        for (MapResult map : made.maps) {
            ResultFile.write(
                    folder.resolve("map-" + fileName(map.object()) + "-" + fileName(map.grip()) + ".json"),
                    MapJson.of(open.origin(), OpenProject.CRITERIA, map));
        }
        List<String> answer = Answer.lines(project, made.trials, made.maps);
        ResultFile.write(
                report,
                HtmlReport.write(new ReportInput(
                        project,
                        made.closings,
                        made.maps,
                        Optional.of(made.trials),
                        made.holds,
                        PadCommands.forReport(open),
                        vary(folder),
                        made.refined,
                        OpenProject.CRITERIA,
                        plan.numerics,
                        new ReportInput.Provenance(
                                Version.TEXT,
                                plan.seed,
                                open.origin().inputs(),
                                at.today().get().toString(),
                                plan.command,
                                List.of("hand.yaml", "need.yaml")))));
        return answer;
    }

    private String bestGrip(TrialsResult trials, GraspObject object) {
        return trials.best().stream()
                .filter(best -> best.object().equals(object.name()))
                .findFirst()
                .map(TrialsResult.Best::grip)
                .orElse(object.grips().get(0));
    }

    /** Each object with its best grip at its nominal place, and the most frequent failure if there is one. */
    private List<ReportInput.Closing> closings(TrialsResult trials) {
        RunnerFactory recording = at.closings().of(project, plan.numerics.recording());
        List<ReportInput.Closing> closings = new ArrayList<>();
        for (GraspObject object : project.need().objects()) {
            String grip = bestGrip(trials, object);
            TrialsResult.Pair pair = trials.pair(object.name(), grip);
            closings.add(closing(recording, object, grip, "at its nominal place", Conditions.NOMINAL));
            mainFailure(pair).ifPresent(outcome -> {
                Conditions example = pair.examples().get(outcome);
                if (example != null) {
                    String note = "a typical run of the trials that ends in: " + outcome.words();
                    closings.add(closing(recording, object, grip, note, example));
                }
            });
        }
        return closings;
    }

    /** What 'vary' left beside the report, unless it is of other inputs. */
    private Optional<VaryResult> vary(Path folder) {
        Path file = folder.resolve("vary.json");
        if (!Files.isRegularFile(file)) {
            return Optional.empty();
        }
        try {
            Optional<VaryResult> vary =
                    VaryJson.read(Files.readString(file), open.origin().inputs());
            if (vary.isEmpty()) {
                at.err().println("gripwright: " + file + " is of other inputs and left out of the report");
            }
            return vary;
        } catch (IOException | IllegalArgumentException e) {
            at.err().println("gripwright: " + file + " is left out of the report: " + e.getMessage());
            return Optional.empty();
        }
    }

    private List<ReportInput.Refined> refined(TrialsResult trials) {
        List<ReportInput.Refined> out = new ArrayList<>();
        for (GraspObject object : project.need().objects()) {
            String grip = bestGrip(trials, object);
            out.add(new ReportInput.Refined(
                    object.name(),
                    grip,
                    Refinement.of(
                            plan.numerics,
                            numerics -> at.closings()
                                    .of(project, numerics)
                                    .create(object, project.hand().grip(grip))
                                    .detail(Conditions.NOMINAL))));
        }
        return out;
    }

    private record Held(GraspObject object, String grip) {}

    /** Each object with its best grip, then with the grips of its tasks. */
    private List<Held> held(TrialsResult trials) {
        Set<Held> pairs = new LinkedHashSet<>();
        project.need().objects().forEach(o -> pairs.add(new Held(o, bestGrip(trials, o))));
        project.need().objects().forEach(o -> o.tasks().forEach(task -> pairs.add(new Held(o, task.grip()))));
        return List.copyOf(pairs);
    }

    /** Each object with its best grip at its nominal place; those that were not done when it was stopped are missing. */
    private List<ReportInput.Hold> holds(TrialsResult trials) {
        RunnerFactory runners = at.closings().of(project, plan.numerics);
        HoldPlan tests = HoldPlan.DEFAULT.withAcceleration(project.need().acceleration());
        ProgressLine progress = at.progress("holds");
        try {
            return plan
                    .jobs
                    .run(
                            held(trials),
                            () -> runners,
                            (factory, pair) -> new ReportInput.Hold(
                                    pair.object().name(),
                                    pair.grip(),
                                    factory.create(pair.object(), project.hand().grip(pair.grip()))
                                            .hold(Conditions.NOMINAL, tests)),
                            progress)
                    .stream()
                    .filter(Objects::nonNull)
                    .toList();
        } finally {
            progress.end();
        }
    }

    private ReportInput.Closing closing(
            RunnerFactory recording, GraspObject object, String grip, String note, Conditions conditions) {
        ClosingDetail detail =
                recording.create(object, project.hand().grip(grip)).detail(conditions);
        return new ReportInput.Closing(object.name(), grip, note, detail);
    }

    private static Optional<Outcome> mainFailure(TrialsResult.Pair pair) {
        return pair.outcomes().entrySet().stream()
                .filter(e -> e.getKey() != Outcome.HELD && e.getKey().decided())
                .max(Comparator.comparingInt((Map.Entry<Outcome, Integer> e) -> e.getValue())
                        .thenComparing(Map.Entry::getKey, Comparator.reverseOrder()))
                .map(Map.Entry::getKey);
    }

    private static String fileName(String name) {
        return name.toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}\\p{N}]+", "-");
    }
}
