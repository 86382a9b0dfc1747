package gripwright.study;

import gripwright.check.Check;
import gripwright.closing.ClosingRunner;
import gripwright.closing.Conditions;
import gripwright.closing.Outcome;
import gripwright.math.Draws;
import gripwright.math.Streams;
import gripwright.model.GraspObject;
import gripwright.model.Hand;
import gripwright.model.Project;
import gripwright.stats.CombinedShares;
import gripwright.stats.Interval;
import gripwright.stats.PairedShares;
import gripwright.study.VaryResult.Difference;
import gripwright.study.VaryResult.Effect;
import gripwright.study.VaryResult.Tried;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * Tries changes of a hand one at a time on the very samples of the hand as it is.
 *
 * @param runs per object for the success; the scoring samples of {@link Trials} with the same seed
 * @param side places per object for the capture area are side times side, one drawn in each of as many equal squares
 * @param span half width of the square over which the places are spread [m]
 */
public record Vary(int runs, int side, double span, long seed, Variation variation) {
    /** What is compared, for printing beside the ranking. */
    public static final String DEFINITION =
            "Effects: change of the weighted success, and of the capture area (held places"
                    + " over places, times the square, weighted over the objects), against the hand as it is on the same samples"
                    + " with the same grips; 95 % intervals of paired shares (Bonett and Price 2012) per object, combined as the"
                    + " weighted total is. Pairs with an undecided run are left out and counted. With this many changes looked at,"
                    + " about one interval in twenty misses by luck, and the greatest of many is flattered by it: so the best one is run"
                    + " again on fresh samples. Believe that effect before cutting metal.";

    public Vary {
        Check.that(runs >= 1, "the number of runs is " + runs + "; it must be at least 1");
        Check.that(side >= 1, "places a side are " + side + "; it must be at least 1");
        Check.positive(span, "span", "m");
    }

    private record Job(int design, int object) {}

    /** Outcomes of one design on one object: runs first, then places; or why there is no such hand. */
    private record Tally(Outcome[] outcomes, String impossible) {}

    /** Closings that {@link #run} makes, the choice of grips and the best change's second run left out. */
    public int closings(Project project) {
        return (DesignChanges.of(project.hand()).size() + 1)
                * project.need().objects().size()
                * (runs + side * side);
    }

    /**
     * Runs all changes; stopped by the progress, it keeps those that are finished for all objects.
     *
     * @param closings makes what closes the hand of a project
     */
    public VaryResult run(
            Project project, Function<Project, RunnerFactory> closings, Jobs jobs, Jobs.Progress progress) {
        List<DesignChange> changes = DesignChanges.of(project.hand());
        TrialsResult trials =
                Trials.run(project, closings.apply(project), Math.min(runs, 20), seed, variation, jobs, progress);
        List<GraspObject> objects = project.need().objects();
        List<Tried> tried =
                objects.stream().map(o -> new Tried(o.name(), grip(trials, o))).toList();
        List<Job> list = new ArrayList<>();
        for (int design = 0; design <= changes.size(); design++) {
            for (int object = 0; object < objects.size(); object++) {
                list.add(new Job(design, object));
            }
        }
        List<Tally> tallies = jobs.run(
                list,
                () -> 0,
                (Integer none, Job job) -> tally(project, changes, closings, job, tried.get(job.object), ""),
                progress);
        VaryResult all = result(project, changes, tried, tallies);
        return all.stopped()
                ? all
                : all.best()
                        .map(best -> all.with(again(project, changes, best, closings, tried, jobs, progress)))
                        .orElse(all);
    }

    /** The best change and the hand as it is on samples that had no part in choosing it; empty if stopped. */
    private Optional<Effect> again(
            Project project,
            List<DesignChange> changes,
            Effect best,
            Function<Project, RunnerFactory> closings,
            List<Tried> tried,
            Jobs jobs,
            Jobs.Progress progress) {
        DesignChange change = changes.stream()
                .filter(c -> c.words().equals(best.words()))
                .findFirst()
                .orElseThrow();
        List<Job> list = new ArrayList<>();
        for (int design : new int[] {0, 1 + changes.indexOf(change)}) {
            for (int object = 0; object < tried.size(); object++) {
                list.add(new Job(design, object));
            }
        }
        List<Tally> tallies = jobs.run(
                list,
                () -> 0,
                (Integer none, Job job) -> tally(project, changes, closings, job, tried.get(job.object), " again"),
                progress);
        List<Tally> base = complete(tallies, 0, tried.size());
        List<Tally> these = complete(tallies, 1, tried.size());
        return base.isEmpty() || these.isEmpty() ? Optional.empty() : Optional.of(effect(project, change, base, these));
    }

    private static String grip(TrialsResult trials, GraspObject object) {
        return trials.best().stream()
                .filter(b -> b.object().equals(object.name()))
                .findFirst()
                .map(TrialsResult.Best::grip)
                .orElse(object.grips().get(0));
    }

    private Tally tally(
            Project project,
            List<DesignChange> changes,
            Function<Project, RunnerFactory> closings,
            Job job,
            Tried tried,
            String samples) {
        GraspObject object = project.need().objects().get(job.object);
        ClosingRunner runner;
        try {
            Hand hand = job.design == 0 ? project.hand() : Changed.named(changes.get(job.design - 1), project.hand());
            Project changed = new Project(hand, project.need(), project.assumptions());
            runner = closings.apply(changed).create(object, hand.grip(tried.grip()));
        } catch (IllegalArgumentException e) {
            if (job.design == 0) {
                throw e;
            }
            return new Tally(new Outcome[0], String.valueOf(e.getMessage()));
        }
        Outcome[] outcomes = new Outcome[runs + side * side];
        Sampler scoring =
                new Sampler(project.need().placement(), variation, new Streams(seed, "trials, scoring" + samples));
        for (int i = 0; i < runs; i++) {
            outcomes[i] = runner.run(scoring.conditions(object.name(), i)).outcome();
        }
        Streams places = new Streams(seed, "vary, places" + samples);
        for (int i = 0; i < side * side; i++) {
            outcomes[runs + i] =
                    runner.run(place(places.draws(object.name(), i), i)).outcome();
        }
        return new Tally(outcomes, "");
    }

    // One place somewhere in each square of a grid: fewer gaps than places drawn freely, and no grid to resonate with.
    private Conditions place(Draws draws, int number) {
        double width = 2 * span / side;
        return Conditions.at(
                -span + width * (number % side + draws.uniform("x")),
                -span + width * (number / side + draws.uniform("y")),
                0);
    }

    private VaryResult result(
            Project project, List<DesignChange> changes, List<Tried> tried, List<@Nullable Tally> tallies) {
        int objects = tried.size();
        double square = 4 * span * span;
        List<Tally> base = complete(tallies, 0, objects);
        if (base.isEmpty()) {
            Difference unknown = new Difference(Double.NaN, 0, square);
            return new VaryResult(
                    seed,
                    runs,
                    side * side,
                    span,
                    tried,
                    new TrialsResult.Weighted(Double.NaN, 0, 1),
                    0,
                    unknown,
                    List.of(),
                    changes.size());
        }
        Difference success = weighted(project, i -> share(base.get(i), 0, runs));
        Difference area = weighted(project, i -> share(base.get(i), runs, runs + side * side));
        List<Effect> effects = new ArrayList<>();
        for (int design = 1; design <= changes.size(); design++) {
            List<Tally> these = complete(tallies, design, objects);
            if (!these.isEmpty()) {
                effects.add(effect(project, changes.get(design - 1), base, these));
            }
        }
        return new VaryResult(
                seed,
                runs,
                side * side,
                span,
                tried,
                new TrialsResult.Weighted(success.value(), success.low(), success.high()),
                undecided(base),
                times(area, square),
                effects,
                changes.size());
    }

    private Effect effect(Project project, DesignChange change, List<Tally> base, List<Tally> these) {
        String impossible = these.stream()
                .map(Tally::impossible)
                .filter(why -> !why.isEmpty())
                .findFirst()
                .orElse("");
        Difference none = new Difference(0, 0, 0);
        if (!impossible.isEmpty()) {
            return new Effect(change.quantity(), change.change(), change.kind(), none, none, 0, impossible);
        }
        Difference success = weighted(project, i -> difference(base.get(i), these.get(i), 0, runs));
        Difference area = weighted(project, i -> difference(base.get(i), these.get(i), runs, runs + side * side));
        return new Effect(
                change.quantity(),
                change.change(),
                change.kind(),
                success,
                times(area, 4 * span * span),
                undecided(these),
                "");
    }

    private interface PerObject {
        CombinedShares.Term of(int object);
    }

    /** Weighted over the objects; terms come with weight 1. */
    private static Difference weighted(Project project, PerObject terms) {
        List<GraspObject> objects = project.need().objects();
        double all = objects.stream().mapToDouble(GraspObject::weight).sum();
        List<CombinedShares.Term> weighted = new ArrayList<>();
        for (int i = 0; i < objects.size(); i++) {
            CombinedShares.Term term = terms.of(i);
            weighted.add(new CombinedShares.Term(objects.get(i).weight() / all, term.share(), term.interval()));
        }
        Interval interval = CombinedShares.interval(weighted);
        return new Difference(CombinedShares.value(weighted), interval.low(), interval.high());
    }

    private static CombinedShares.Term share(Tally tally, int from, int to) {
        int held = 0;
        int decided = 0;
        for (int i = from; i < to; i++) {
            held += tally.outcomes[i] == Outcome.HELD ? 1 : 0;
            decided += tally.outcomes[i].decided() ? 1 : 0;
        }
        Proportion p = Proportion.of(held, decided, to - from - decided);
        // Without a decided run nothing is known: the middle of 0 to 1.
        return new CombinedShares.Term(1, decided == 0 ? 0.5 : p.share(), new Interval(p.low(), p.high()));
    }

    private static CombinedShares.Term difference(Tally before, Tally after, int from, int to) {
        int gained = 0;
        int lost = 0;
        int pairs = 0;
        for (int i = from; i < to; i++) {
            if (before.outcomes[i].decided() && after.outcomes[i].decided()) {
                boolean was = before.outcomes[i] == Outcome.HELD;
                boolean is = after.outcomes[i] == Outcome.HELD;
                pairs++;
                gained += is && !was ? 1 : 0;
                lost += was && !is ? 1 : 0;
            }
        }
        double value = pairs == 0 ? 0 : (double) (gained - lost) / pairs;
        return new CombinedShares.Term(1, value, PairedShares.difference(gained, lost, pairs));
    }

    private static Difference times(Difference d, double factor) {
        return new Difference(d.value() * factor, d.low() * factor, d.high() * factor);
    }

    private static int undecided(List<Tally> tallies) {
        int n = 0;
        for (Tally tally : tallies) {
            for (Outcome outcome : tally.outcomes) {
                n += outcome.decided() ? 0 : 1;
            }
        }
        return n;
    }

    /** The tallies of a design, empty unless all are there. */
    private static List<Tally> complete(List<@Nullable Tally> tallies, int design, int objects) {
        List<Tally> all = new ArrayList<>();
        for (int i = 0; i < objects; i++) {
            Tally tally = tallies.get(design * objects + i);
            if (tally == null) {
                return List.of();
            }
            all.add(tally);
        }
        return all;
    }
}
