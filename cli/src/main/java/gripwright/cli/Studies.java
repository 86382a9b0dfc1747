package gripwright.cli;

import gripwright.closing.Numerics;
import gripwright.closing.Policies;
import gripwright.closing.Policy;
import gripwright.closing.Sensing;
import gripwright.model.GraspObject;
import gripwright.model.Grip;
import gripwright.study.CaptureMap;
import gripwright.study.Explain;
import gripwright.study.ExplainResult;
import gripwright.study.FieldTrial;
import gripwright.study.Jobs;
import gripwright.study.MapResult;
import gripwright.study.PolicyComparison;
import gripwright.study.PolicyResult;
import gripwright.study.RunnerFactory;
import gripwright.study.ShareMap;
import gripwright.study.Trials;
import gripwright.study.TrialsResult;
import gripwright.study.Uncertain;
import gripwright.study.Vary;
import gripwright.study.VaryResult;
import java.util.List;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;

/** Runs studies of one project with progress shown, until an interruption. */
final class Studies {
    /** Of the ensembles of maps: a map is the same whenever it is made. */
    private static final long MAP_SEED = 1;

    private final Surroundings at;
    private final OpenProject open;
    private final RunnerFactory closings;
    private final Jobs jobs;
    private final Numerics numerics;
    private final KeptRuns kept;

    private int saidUsed;

    private final Policy policy;
    private final @Nullable Sensing sensing;

    Studies(Surroundings at, OpenProject open, Numerics numerics, Jobs jobs) {
        this(at, open, numerics, jobs, Policies.BLIND, null);
    }

    /** @param sensing null for a policy that does not feel */
    Studies(Surroundings at, OpenProject open, Numerics numerics, Jobs jobs, Policy policy, @Nullable Sensing sensing) {
        this.at = at;
        this.open = open;
        this.policy = policy;
        this.sensing = sensing;
        this.kept = new KeptRuns(at.closings(), open);
        this.closings = of(numerics);
        this.jobs = jobs;
        this.numerics = numerics;
        at.interruption().listen();
    }

    private RunnerFactory of(Numerics wanted) {
        return of(policy, wanted);
    }

    private RunnerFactory of(Policy other, Numerics wanted) {
        return PolicyOption.factory(kept, open, wanted, other, sensing);
    }

    RunnerFactory closings() {
        return closings;
    }

    boolean stopped() {
        return at.interruption().requested();
    }

    MapResult map(GraspObject object, Grip grip, CaptureMap map) {
        ShareMap shares = new ShareMap(map, Uncertain.seeded(MAP_SEED));
        ShareMap.Runners runners = new ShareMap.Runners(
                closings,
                of(numerics.withStepScale(numerics.stepScale() / 2)),
                of(numerics.withViscosityScale(numerics.viscosityScale() / 2)));
        ProgressLine progress = at.progress("map of " + object.name() + " with " + grip.name());
        try {
            return shares.run(object, grip, runners, jobs, progress);
        } finally {
            progress.end();
            keep();
        }
    }

    VaryResult vary(Vary vary) {
        ProgressLine progress = at.progress("vary");
        try {
            return vary.run(open.project(), project -> kept.of(project, numerics), jobs, progress);
        } finally {
            progress.end();
            keep();
        }
    }

    PolicyResult policies(Policy against, int runs, long seed, long noiseSeed) {
        ProgressLine progress = at.progress("trials, " + policy.word() + " against " + against.word());
        try {
            return new PolicyComparison(open.project(), side(policy), side(against), runs, seed, noiseSeed)
                    .run(jobs, progress);
        } finally {
            progress.end();
            keep();
        }
    }

    ExplainResult explain(List<FieldTrial> trials, Explain.Settings settings) {
        ProgressLine progress = at.progress("closings for the sheet");
        try {
            return Explain.run(open.project(), trials, settings, project -> kept.of(project, numerics), jobs, progress);
        } catch (IllegalArgumentException e) {
            throw new CommandFailure(Exit.UNDECIDED, String.valueOf(e.getMessage()), e);
        } finally {
            progress.end();
            keep();
        }
    }

    private PolicyComparison.Side side(Policy one) {
        return new PolicyComparison.Side(
                one.word(),
                of(one, numerics),
                grip -> PolicyOption.refusal(one, open.project().hand(), grip, sensing));
    }

    TrialsResult trials(int runs, long seed) {
        return trials(runs, seed, UnaryOperator.identity());
    }

    /** @param listening what the closings go through on their way to the study */
    TrialsResult trials(int runs, long seed, UnaryOperator<RunnerFactory> listening) {
        ProgressLine progress = at.progress("trials");
        try {
            return Trials.run(open.project(), listening.apply(closings), runs, seed, jobs, progress);
        } finally {
            progress.end();
            keep();
        }
    }

    /** Says and keeps what a stopped study leaves, and says what was taken over from one. */
    private void keep() {
        int used = kept.used();
        if (used > saidUsed) {
            at.out()
                    .println("resumed  " + Say.count(used - saidUsed, "run", "runs")
                            + " taken over from a study that was stopped\n");
            saidUsed = used;
        }
        int left = kept.save(stopped());
        if (stopped()) {
            at.out()
                    .println("kept     " + Say.count(left, "finished run", "finished runs") + " in results/"
                            + KeptRuns.NAME + "; the same command goes on from there\n");
        }
    }
}
