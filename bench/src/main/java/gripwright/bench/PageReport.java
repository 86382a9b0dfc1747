package gripwright.bench;

import gripwright.closing.ClosingDetail;
import gripwright.closing.Conditions;
import gripwright.closing.Criteria;
import gripwright.closing.HoldPlan;
import gripwright.closing.Numerics;
import gripwright.closing.Outcome;
import gripwright.model.GraspObject;
import gripwright.model.Project;
import gripwright.report.HtmlReport;
import gripwright.report.ReportInput;
import gripwright.study.Jobs;
import gripwright.study.MapResult;
import gripwright.study.RunnerFactory;
import gripwright.study.TrialsResult;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** The report of the command line, from what the page has computed so far: its maps, its trials, its pads. */
final class PageReport {
    private final Bench.Options options;
    private final Project project;
    private final String revision;
    private final @Nullable TrialsResult trials;

    /** @param trials of the files as they are, if there are any */
    PageReport(Bench.Options options, Project project, String revision, @Nullable TrialsResult trials) {
        this.options = options;
        this.project = project;
        this.revision = revision;
        this.trials = trials;
    }

    String write(List<MapResult> maps, Optional<ReportInput.Pads> pads) {
        List<String> files = new ArrayList<>(List.of("hand.yaml", "need.yaml"));
        if (pads.isPresent()) {
            files.add("pads.yaml");
        }
        return HtmlReport.write(new ReportInput(
                project,
                closings(),
                maps,
                Optional.ofNullable(trials),
                holds(),
                pads,
                Optional.empty(),
                List.of(),
                Criteria.DEFAULT,
                Numerics.DEFAULT,
                new ReportInput.Provenance(
                        options.version(),
                        trials == null ? 0 : trials.seed(),
                        revision,
                        options.today(),
                        "gripwright bench",
                        files)));
    }

    /** The grip that the trials chose, or the first one. */
    private String grip(GraspObject object) {
        return trials == null
                ? object.grips().get(0)
                : trials.best().stream()
                        .filter(best -> best.object().equals(object.name()))
                        .findFirst()
                        .map(TrialsResult.Best::grip)
                        .orElse(object.grips().get(0));
    }

    /** Each object at its nominal place, and its most frequent failure if the trials found one. */
    private List<ReportInput.Closing> closings() {
        RunnerFactory recording = options.closings().of(project, Numerics.DEFAULT.recording());
        List<ReportInput.Closing> closings = new ArrayList<>();
        for (GraspObject object : project.need().objects()) {
            String grip = grip(object);
            var runner = recording.create(object, project.hand().grip(grip));
            ClosingDetail nominal = runner.detail(Conditions.NOMINAL);
            closings.add(new ReportInput.Closing(object.name(), grip, "at its nominal place", nominal));
            if (trials != null) {
                TrialsResult.Pair pair = trials.pair(object.name(), grip);
                Outcome failure = mainFailure(pair).orElse(null);
                Conditions example = failure == null ? null : pair.examples().get(failure);
                if (failure != null && example != null) {
                    closings.add(new ReportInput.Closing(
                            object.name(),
                            grip,
                            "a typical run of the trials that ends in: " + failure.words(),
                            runner.detail(example)));
                }
            }
        }
        return closings;
    }

    private static Optional<Outcome> mainFailure(TrialsResult.Pair pair) {
        return pair.outcomes().entrySet().stream()
                .filter(e -> e.getKey() != Outcome.HELD && e.getKey().decided())
                .max(Comparator.comparingInt((Map.Entry<Outcome, Integer> e) -> e.getValue())
                        .thenComparing(Map.Entry::getKey, Comparator.reverseOrder()))
                .map(Map.Entry::getKey);
    }

    private List<ReportInput.Hold> holds() {
        HoldPlan tests = HoldPlan.DEFAULT.withAcceleration(project.need().acceleration());
        RunnerFactory runners = options.closings().of(project, Numerics.DEFAULT);
        List<ReportInput.Hold> holds = options.jobs()
                .run(
                        project.need().objects(),
                        () -> runners,
                        (factory, object) -> new ReportInput.Hold(
                                object.name(),
                                grip(object),
                                factory.create(object, project.hand().grip(grip(object)))
                                        .hold(Conditions.NOMINAL, tests)),
                        Jobs.Progress.NONE);
        return holds.stream().filter(Objects::nonNull).toList();
    }
}
