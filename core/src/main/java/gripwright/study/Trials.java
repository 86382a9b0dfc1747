package gripwright.study;

import gripwright.check.Check;
import gripwright.closing.ClosingRunner;
import gripwright.closing.Conditions;
import gripwright.closing.Outcome;
import gripwright.math.Streams;
import gripwright.model.GraspObject;
import gripwright.model.Grip;
import gripwright.model.Project;
import gripwright.stats.CombinedShares;
import gripwright.stats.Interval;
import gripwright.study.TrialsResult.Best;
import gripwright.study.TrialsResult.Pair;
import gripwright.study.TrialsResult.Weighted;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * Virtual trials: every object of the need with each of its grips, at sampled misplacements and materials.
 *
 * <p>Each object has two sets of samples, shared by all its grips. The best grip is the one with the highest lower end
 * of its 95 % interval on the choosing set; what is reported is its share on the scoring set, since the best of several
 * looks better on the runs that chose it than it is. An object with one grip needs no choosing set.
 */
public final class Trials {
    /** What the total means, for printing beside it. */
    public static final String WEIGHTED_TOTAL =
            "Weighted total: share held with each object's chosen grip on the scoring runs, weighted by the objects'"
                    + " weights; 95 % interval from the objects' own Wilson intervals by the method of variance"
                    + " estimates recovery (Zou, Huang and Zhang 2009). Objects without a decided run are left out.";

    /** Purpose of the scoring samples, shared with studies that are to meet the same ones. */
    static final String SCORING = "trials, scoring";

    private final Project project;
    private final RunnerFactory factory;
    private final int runs;
    private final long seed;
    private final Variation variation;
    private final List<Entry> entries;

    private Trials(Project project, RunnerFactory factory, int runs, long seed, Variation variation) {
        Check.that(runs >= 1, "the number of runs is " + runs + "; it must be at least 1");
        this.project = project;
        this.factory = factory;
        this.runs = runs;
        this.seed = seed;
        this.variation = variation;
        this.entries = project.need().objects().stream()
                .flatMap(object -> object.grips().stream()
                        .map(grip -> new Entry(object, project.hand().grip(grip))))
                .toList();
    }

    /** One object with one of its grips. */
    private record Entry(GraspObject object, Grip grip) {}

    /** Which of the two sets of samples a run belongs to. */
    private enum Part {
        CHOOSING,
        SCORING
    }

    private record Job(int entry, Part part, int sample, String words) {
        @Override
        public String toString() {
            return words;
        }
    }

    /** {@link #run(Project, RunnerFactory, int, long, Variation, Jobs, Jobs.Progress)} with the default variation. */
    public static TrialsResult run(
            Project project, RunnerFactory factory, int runs, long seed, Jobs jobs, Jobs.Progress progress) {
        return run(project, factory, runs, seed, Variation.DEFAULT, jobs, progress);
    }

    /**
     * Runs the trials; stopped by the progress, it keeps what is finished, equally many runs of each pair give or take
     * one. The result depends on the project, the runs, the seed and the variation only.
     *
     * @param runs per pair and set, at least 1
     * @throws IllegalArgumentException if an object names a grip that the hand does not have
     */
    public static TrialsResult run(
            Project project,
            RunnerFactory factory,
            int runs,
            long seed,
            Variation variation,
            Jobs jobs,
            Jobs.Progress progress) {
        return new Trials(project, factory, runs, seed, variation).run(jobs, progress);
    }

    /** Closings that {@link #run} makes, choosing runs included. */
    public static int closings(Project project, int runs) {
        return project.need().objects().stream()
                .mapToInt(object -> object.grips().size() == 1
                        ? runs
                        : 2 * runs * object.grips().size())
                .sum();
    }

    private TrialsResult run(Jobs jobs, Jobs.Progress progress) {
        List<Job> list = jobList();
        Sampler choosing = sampler("trials, choosing");
        Sampler scoring = sampler(SCORING);
        List<Run> results = jobs.run(
                list,
                Runners::new,
                (Runners runners, Job job) -> {
                    String object = entries.get(job.entry).object.name();
                    Sampler sampler = job.part == Part.CHOOSING ? choosing : scoring;
                    Conditions conditions = sampler.conditions(object, job.sample);
                    return new Run(
                            conditions, runners.of(job.entry).run(conditions).outcome());
                },
                progress);
        return result(finished(list, results, Part.CHOOSING), finished(list, results, Part.SCORING));
    }

    // By sample first, so that a stopped study has about as many runs of each pair.
    private List<Job> jobList() {
        List<Job> list = new ArrayList<>();
        for (int sample = 0; sample < runs; sample++) {
            for (int entry = 0; entry < entries.size(); entry++) {
                if (entries.get(entry).object.grips().size() > 1) {
                    list.add(job(entry, Part.CHOOSING, sample));
                }
                list.add(job(entry, Part.SCORING, sample));
            }
        }
        return list;
    }

    private Job job(int entry, Part part, int sample) {
        Entry e = entries.get(entry);
        String set = part == Part.CHOOSING ? "choosing" : "scoring";
        return new Job(
                entry,
                part,
                sample,
                e.object.name() + " with " + e.grip.name() + ", run " + (sample + 1) + " of the " + set + " set, seed "
                        + seed);
    }

    private Sampler sampler(String purpose) {
        return new Sampler(project.need().placement(), variation, new Streams(seed, purpose));
    }

    /** The runners of one thread, each made when first needed. */
    private final class Runners {
        private final @Nullable ClosingRunner[] made = new ClosingRunner[entries.size()];

        ClosingRunner of(int entry) {
            ClosingRunner runner = made[entry];
            if (runner == null) {
                runner = factory.create(entries.get(entry).object, entries.get(entry).grip);
                made[entry] = runner;
            }
            return runner;
        }
    }

    private Map<Integer, List<Run>> finished(List<Job> list, List<Run> results, Part part) {
        Map<Integer, List<Run>> byEntry = new HashMap<>();
        IntStream.range(0, entries.size()).forEach(entry -> byEntry.put(entry, new ArrayList<>()));
        for (int i = 0; i < list.size(); i++) {
            @Nullable Run run = results.get(i);
            if (run != null && list.get(i).part == part) {
                byEntry.getOrDefault(list.get(i).entry, new ArrayList<>()).add(run);
            }
        }
        return byEntry;
    }

    private TrialsResult result(Map<Integer, List<Run>> choosing, Map<Integer, List<Run>> scoring) {
        List<Pair> pairs = new ArrayList<>();
        List<Proportion> chosenOn = new ArrayList<>();
        for (int entry = 0; entry < entries.size(); entry++) {
            pairs.add(pair(entries.get(entry), scoring.getOrDefault(entry, List.of())));
            chosenOn.add(proportion(choosing.getOrDefault(entry, List.of())));
        }
        List<Best> best = new ArrayList<>();
        int first = 0;
        for (GraspObject object : project.need().objects()) {
            int chosen = first;
            for (int entry = first + 1; entry < first + object.grips().size(); entry++) {
                chosen = chosenOn.get(entry).low() > chosenOn.get(chosen).low() ? entry : chosen;
            }
            if (!object.grips().isEmpty()) {
                Pair pair = pairs.get(chosen);
                best.add(new Best(pair.object(), pair.grip(), pair.success()));
            }
            first += object.grips().size();
        }
        return new TrialsResult(seed, runs, pairs, best, weighted(best));
    }

    private Pair pair(Entry entry, List<Run> done) {
        List<SampledInput> varying = List.of(SampledInput.values()).stream()
                .filter(input -> input.varies(project, entry.object, variation))
                .toList();
        Map<Outcome, Integer> outcomes = new EnumMap<>(Outcome.class);
        done.stream().filter(run -> !run.held()).forEach(run -> outcomes.merge(run.outcome(), 1, Integer::sum));
        return new Pair(
                entry.object.name(),
                entry.grip.name(),
                proportion(done),
                outcomes,
                Influences.of(done, varying),
                Examples.of(done, varying),
                Splits.of(done, varying));
    }

    private static Proportion proportion(List<Run> done) {
        int held = (int) done.stream().filter(Run::held).count();
        int decided = (int) done.stream().filter(Run::decided).count();
        return Proportion.of(held, decided, done.size() - decided);
    }

    private Weighted weighted(List<Best> best) {
        List<Best> counted = best.stream().filter(b -> b.success().trials() > 0).toList();
        double total = counted.stream().mapToDouble(this::weight).sum();
        if (!(total > 0)) {
            return new Weighted(Double.NaN, 0, 1);
        }
        List<CombinedShares.Term> terms = counted.stream()
                .map(b -> new CombinedShares.Term(
                        weight(b) / total,
                        b.success().share(),
                        new Interval(b.success().low(), b.success().high())))
                .toList();
        Interval interval = CombinedShares.interval(terms);
        return new Weighted(CombinedShares.value(terms), interval.low(), interval.high());
    }

    private double weight(Best best) {
        return project.need().object(best.object()).weight();
    }
}
