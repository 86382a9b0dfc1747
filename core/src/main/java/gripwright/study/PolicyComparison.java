package gripwright.study;

import gripwright.check.Check;
import gripwright.closing.ClosingRunner;
import gripwright.closing.ClosingSummary;
import gripwright.closing.Conditions;
import gripwright.math.Streams;
import gripwright.model.GraspObject;
import gripwright.model.Grip;
import gripwright.model.Project;
import gripwright.stats.Interval;
import gripwright.stats.MedianInterval;
import gripwright.stats.PairedShares;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * What one drive policy is worth beside another: both close on the scoring samples of the virtual trials, pair by pair.
 * The result depends on the project, the policies, the runs and the seeds only.
 */
public final class PolicyComparison {
    /** Why a hand cannot follow a policy with a grip; empty if it can. */
    public interface Refusal {
        String of(Grip grip);
    }

    /** One policy: its word, what closes with it, and what it cannot do. */
    public record Side(String word, RunnerFactory factory, Refusal refusal) {}

    private final Project project;
    private final Side policy;
    private final Side against;
    private final int runs;
    private final long seed;
    private final long noiseSeed;

    /**
     * @param runs of each object with each of its grips and each policy
     * @param noiseSeed of the chips, to be printed
     */
    public PolicyComparison(Project project, Side policy, Side against, int runs, long seed, long noiseSeed) {
        Check.that(runs >= 1, "the number of runs is " + runs + "; it must be at least 1");
        this.project = project;
        this.policy = policy;
        this.against = against;
        this.runs = runs;
        this.seed = seed;
        this.noiseSeed = noiseSeed;
    }

    private record Entry(int index, GraspObject object, Grip grip, String impossible) {}

    private record Job(Entry entry, int sample, String words) {
        @Override
        public String toString() {
            return words;
        }
    }

    private record Two(Conditions conditions, ClosingSummary policy, ClosingSummary against) {
        boolean decided() {
            return policy.outcome().decided() && against.outcome().decided();
        }
    }

    /** Runners of one thread, each made when first needed. */
    private final class Runners {
        private final Map<Integer, ClosingRunner> first = new HashMap<>();
        private final Map<Integer, ClosingRunner> second = new HashMap<>();

        Two run(Entry e, Conditions conditions) {
            return new Two(
                    conditions,
                    first.computeIfAbsent(e.index, k -> policy.factory.create(e.object, e.grip))
                            .run(conditions),
                    second.computeIfAbsent(e.index, k -> against.factory.create(e.object, e.grip))
                            .run(conditions));
        }
    }

    /** Stopped by the progress, it keeps what is finished, about equally many pairs of each row. */
    public PolicyResult run(Jobs jobs, Jobs.Progress progress) {
        List<Entry> entries = new ArrayList<>();
        for (GraspObject object : project.need().objects()) {
            for (String name : object.grips()) {
                Grip grip = project.hand().grip(name);
                String no = policy.refusal.of(grip);
                entries.add(new Entry(entries.size(), object, grip, no.isEmpty() ? against.refusal.of(grip) : no));
            }
        }
        List<Job> list = new ArrayList<>();
        for (int sample = 0; sample < runs; sample++) {
            for (Entry e : entries) {
                if (e.impossible.isEmpty()) {
                    list.add(new Job(
                            e,
                            sample,
                            e.object.name() + " with " + e.grip.name() + ", run " + (sample + 1) + ", " + policy.word
                                    + " against " + against.word + ", seed " + seed));
                }
            }
        }
        Sampler sampler = new Sampler(project.need().placement(), Variation.DEFAULT, new Streams(seed, Trials.SCORING));
        List<Two> done = jobs.run(
                list,
                Runners::new,
                (Runners runners, Job job) ->
                        runners.run(job.entry, sampler.conditions(job.entry.object.name(), job.sample)),
                progress);
        Map<Integer, List<Two>> byEntry = new HashMap<>();
        for (int i = 0; i < list.size(); i++) {
            @Nullable Two two = done.get(i);
            if (two != null) {
                byEntry.computeIfAbsent(list.get(i).entry.index, k -> new ArrayList<>())
                        .add(two);
            }
        }
        List<PolicyResult.Row> rows = entries.stream()
                .map(e -> row(e, byEntry.getOrDefault(e.index, List.of())))
                .toList();
        return new PolicyResult(policy.word, against.word, seed, noiseSeed, runs, rows);
    }

    private static PolicyResult.Row row(Entry e, List<Two> all) {
        List<Two> pairs = all.stream().filter(Two::decided).toList();
        int both = 0;
        int gained = 0;
        int lost = 0;
        double[] moved = new double[pairs.size()];
        double[] movedAgainst = new double[pairs.size()];
        double[] change = new double[pairs.size()];
        double[] off = new double[pairs.size()];
        for (int i = 0; i < pairs.size(); i++) {
            Two two = pairs.get(i);
            boolean a = two.policy.held();
            boolean b = two.against.held();
            both += a && b ? 1 : 0;
            gained += a && !b ? 1 : 0;
            lost += b && !a ? 1 : 0;
            moved[i] = two.policy.travel();
            movedAgainst[i] = two.against.travel();
            change[i] = moved[i] - movedAgainst[i];
            off[i] = StrictMath.hypot(two.conditions.x(), two.conditions.y());
        }
        Interval success = PairedShares.difference(gained, lost, pairs.size());
        return new PolicyResult.Row(
                e.object.name(),
                e.grip.name(),
                e.impossible,
                pairs.size(),
                both,
                gained,
                lost,
                all.size() - pairs.size(),
                success,
                MedianInterval.median(moved),
                MedianInterval.median(movedAgainst),
                MedianInterval.median(change),
                MedianInterval.of(change),
                MedianInterval.median(off));
    }
}
