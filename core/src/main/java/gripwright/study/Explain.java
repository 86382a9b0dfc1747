package gripwright.study;

import gripwright.check.Check;
import gripwright.closing.ClosingRunner;
import gripwright.closing.Conditions;
import gripwright.closing.Outcome;
import gripwright.math.Draws;
import gripwright.math.Streams;
import gripwright.model.FrictionTable;
import gripwright.model.GraspObject;
import gripwright.model.Grip;
import gripwright.model.Hand;
import gripwright.model.Placement;
import gripwright.model.Project;
import gripwright.model.Scatter;
import gripwright.model.Spread;
import gripwright.study.ExplainResult.Placing;
import gripwright.study.HeldSurface.Sample;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * Asks the closing model about trials of the built hand: what it foretold, and which friction and which placement
 * scatter explain what was seen.
 *
 * <p>For each object and grip a fixed set of closings is made, spread over places, heights and a factor on the friction
 * of all rubbers, half of them near the places of the sheet; {@link HeldSurface} smooths them into a chance. From it
 * come the predictions and the likelihood of the sheet, so that a finer grid costs no closings. Both are averaged over
 * surfaces that the closings leave possible: too few closings widen intervals instead of shifting them. Bare bone keeps its
 * friction.
 */
public final class Explain {
    /** What is assumed, for printing beside the numbers. */
    public static final String MODEL =
            "The update of assumptions takes friction as one unknown factor per surface, the same in all trials, and the"
                    + " scatter as one factor on x, y, turn and height of trials whose place nobody measured. Mass, table"
                    + " friction, pad stiffness and spring rate vary from trial to trial as in virtual trials. One trial"
                    + " in a hundred is taken to end by something the model does not know. Intervals hold the factors"
                    + " that the trials do not refute: log-likelihood within 1.92 of the greatest (Wilks 1938), the"
                    + " likelihood averaged over what the closings leave open. Chances of luck are corrected by Holm: those"
                    + " of one friction factor for all surfaces and of the scatter together, then those of single surfaces.";

    private static final double LEAST_FACTOR = 0.4;
    private static final double MOST_FACTOR = 1.6;
    private static final double FACTOR_STEP = 0.04;
    private static final double MOST_SCATTER = 2.5;
    private static final int SCATTER_STEPS = 11;
    /** Standard deviation of the probe's friction over its mean: one score is this change of the factor. */
    private static final double PER_SCORE = 0.25;

    private static final double OUTSIDE = 0.01;
    private static final int ERRORS = 16;
    private static final int PLACES = 100;
    /** Surfaces that the closings leave possible, over which likelihoods and predictions are averaged. */
    private static final int POSSIBLE = 48;

    private final Project project;
    private final Project probe;
    private final List<FieldTrial> trials;
    private final Settings settings;
    private final List<Part> parts = new ArrayList<>();
    private final Streams streams;
    private final Placement placement;

    /**
     * How much is computed.
     *
     * @param closings for each object and grip
     * @param seed of the closings
     * @param placing error of measured places
     */
    public record Settings(int closings, long seed, Placing placing) {
        public static final int CLOSINGS = 300;

        public Settings {
            Check.that(closings >= 40, "closings are " + closings + " for each object and grip; expected 40 or more");
        }
    }

    private record Part(GraspObject object, Grip grip, List<FieldTrial> trials) {
        String words() {
            return object.name() + " with " + grip.name();
        }

        List<FieldTrial> placed() {
            return trials.stream().filter(t -> t.placed().isPresent()).toList();
        }
    }

    private record Job(int part, int sample, String words) {
        @Override
        public String toString() {
            return words;
        }
    }

    Explain(Project project, List<FieldTrial> trials, Settings settings) {
        this.project = project;
        this.probe = probe(project);
        this.settings = settings;
        this.streams = new Streams(settings.seed, "explaining a score sheet");
        this.placement = project.need().placement();
        this.trials = trials.stream().filter(t -> t.decided() && t.count() > 0).toList();
        Map<List<String>, List<FieldTrial>> byPart = new LinkedHashMap<>();
        this.trials.forEach(t -> byPart.computeIfAbsent(List.of(t.object(), t.grip()), k -> new ArrayList<>())
                .add(t));
        byPart.forEach((key, of) ->
                parts.add(new Part(probe.need().object(key.get(0)), probe.hand().grip(key.get(1)), of)));
    }

    /**
     * Makes the closings and judges the trials.
     *
     * @param trials of one hand, the one of the project; at least one decided
     * @param closings makes what closes a hand; called with the project's hand under another friction table
     * @throws IllegalArgumentException if a trial names an object or grip that the project does not have
     */
    public static ExplainResult run(
            Project project,
            List<FieldTrial> trials,
            Settings settings,
            Function<Project, RunnerFactory> closings,
            Jobs jobs,
            Jobs.Progress progress) {
        Explain explain = new Explain(project, trials, settings);
        List<@Nullable Outcome> outcomes = explain.outcomes(closings.apply(explain.probe), jobs, progress);
        int made = (int) outcomes.stream().filter(o -> o != null).count();
        return made < outcomes.size()
                ? explain.stopped(made, outcomes.size())
                : explain.judged(explain.surfaces(outcomes), made);
    }

    /** Closings that {@link #run} makes for so many objects and grips. */
    public static int closings(int parts, Settings settings) {
        return parts * settings.closings;
    }

    /** The same hand with friction that one score moves by a stated factor. */
    private static Project probe(Project project) {
        Hand h = project.hand();
        Map<String, Map<String, Spread>> byRubber = new LinkedHashMap<>();
        h.friction().byRubber().forEach((rubber, surfaces) -> {
            Map<String, Spread> moved = new LinkedHashMap<>();
            surfaces.forEach((surface, mu) -> moved.put(surface, new Spread(mu.mean(), PER_SCORE * mu.mean())));
            byRubber.put(rubber, moved);
        });
        FrictionTable table =
                new FrictionTable(byRubber, Spread.exactly(h.friction().bone().mean()));
        Hand hand = new Hand(
                h.name() + ", friction as a factor", h.palm(), h.fingers(), h.motors(), table, h.arm(), h.grips());
        return new Project(hand, project.need(), project.assumptions());
    }

    // ---------------------------------------------------------------- closings

    /** The closings of the design, in order; null where stopped. */
    List<@Nullable Outcome> outcomes(RunnerFactory factory, Jobs jobs, Jobs.Progress progress) {
        List<Job> list = new ArrayList<>();
        for (int sample = 0; sample < settings.closings; sample++) {
            for (int part = 0; part < parts.size(); part++) {
                String words = parts.get(part).words() + ", closing " + (sample + 1) + ", seed " + settings.seed;
                list.add(new Job(part, sample, words));
            }
        }
        return jobs.run(
                list,
                () -> new @Nullable ClosingRunner[parts.size()],
                (runners, job) -> {
                    ClosingRunner runner = runners[job.part];
                    if (runner == null) {
                        runner = factory.create(parts.get(job.part).object, parts.get(job.part).grip);
                        runners[job.part] = runner;
                    }
                    return runner.run(conditions(job.part, job.sample)).outcome();
                },
                progress);
    }

    /** The fitted chances, one for each object and grip, from all closings. */
    List<HeldSurface> surfaces(List<@Nullable Outcome> outcomes) {
        List<HeldSurface> surfaces = new ArrayList<>();
        for (int part = 0; part < parts.size(); part++) {
            List<Sample> samples = new ArrayList<>();
            int undecided = 0;
            for (int sample = 0; sample < settings.closings; sample++) {
                Outcome outcome = outcomes.get(sample * parts.size() + part);
                if (outcome != null && outcome.decided()) {
                    Conditions c = conditions(part, sample);
                    samples.add(new Sample(c, 1 + PER_SCORE * c.padFriction(), outcome == Outcome.HELD));
                } else {
                    undecided++;
                }
            }
            Part p = parts.get(part);
            Check.that(
                    samples.size() >= settings.closings / 2,
                    undecided + " of " + settings.closings + " closings of " + p.words()
                            + " did not converge: too many to judge the sheet by the closing model. Score it with"
                            + " --no-closings, or without this object");
            surfaces.add(new HeldSurface(p.object.name(), p.grip.name(), samples, undecided, placement));
        }
        return surfaces;
    }

    ExplainResult judged(List<HeldSurface> surfaces, int made) {
        return new Judging(surfaces).result(made);
    }

    Project probe() {
        return probe;
    }

    /** Even samples wide about the nominal place, odd ones near the measured places in turn. */
    private Conditions conditions(int part, int sample) {
        Part p = parts.get(part);
        Draws d = streams.draws(p.words(), sample);
        double wide = 0.3 + 2.2 * d.uniform("width");
        double factor = LEAST_FACTOR + (MOST_FACTOR - LEAST_FACTOR) * d.uniform("friction");
        List<FieldTrial> placed = p.placed();
        boolean near = sample % 2 == 1 && !placed.isEmpty();
        double x = scattered(placement.x(), d, SampledInput.X, wide);
        double y = scattered(placement.y(), d, SampledInput.Y, wide);
        double turn = scattered(placement.turn(), d, SampledInput.TURN, wide);
        double height = scattered(placement.height(), d, SampledInput.HEIGHT, near ? 1 : wide);
        if (near) {
            Placed at = placed.get(sample / 2 % placed.size()).placed().orElseThrow();
            x = at.x() + settings.placing.shift() * d.normal("placing x");
            y = at.y() + settings.placing.shift() * d.normal("placing y");
            turn = at.turn() + settings.placing.turn() * d.normal("placing turn");
        }
        Variation v = Variation.DEFAULT;
        return new Conditions(
                x,
                y,
                turn,
                height,
                (factor - 1) / PER_SCORE,
                d.normal(SampledInput.TABLE_FRICTION.words()),
                d.normal(SampledInput.MASS.words()),
                Variation.factor(v.padStiffness(), d.normal(SampledInput.PAD_STIFFNESS.words())),
                Variation.factor(v.springRate(), d.normal(SampledInput.SPRING_RATE.words())));
    }

    private static double scattered(Scatter scatter, Draws draws, SampledInput input, double times) {
        double score = scatter.law() == Scatter.Law.NORMAL
                ? draws.normal(input.words())
                : 2 * draws.uniform(input.words()) - 1;
        return times * scatter.size() * score;
    }

    private ExplainResult stopped(int made, int wanted) {
        return new ExplainResult(
                project.hand().name(),
                count(),
                List.of(),
                made,
                wanted,
                List.of(),
                List.of(),
                java.util.Optional.empty(),
                java.util.Optional.empty(),
                new double[0],
                new double[0],
                new double[0][0],
                List.of(),
                settings.placing);
    }

    private int count() {
        return trials.stream().mapToInt(FieldTrial::count).sum();
    }

    static double[] factors() {
        int n = (int) Math.rint((MOST_FACTOR - LEAST_FACTOR) / FACTOR_STEP);
        double[] grid = new double[n + 1];
        for (int i = 0; i <= n; i++) {
            grid[i] = Math.rint((LEAST_FACTOR + i * FACTOR_STEP) * 100) / 100;
        }
        return grid;
    }

    static double[] scatters(boolean any) {
        if (!any) {
            return new double[] {1};
        }
        double[] grid = new double[2 * SCATTER_STEPS + 1];
        for (int i = 0; i < grid.length; i++) {
            grid[i] = StrictMath.pow(MOST_SCATTER, (double) (i - SCATTER_STEPS) / SCATTER_STEPS);
        }
        return grid;
    }

    // ---------------------------------------------------------------- judging

    /** Chances of all trials over the grids, and what follows from them. */
    private final class Judging {
        private final List<HeldSurface> surfaces;
        private final double[] factors = factors();
        private final double[] scatters =
                scatters(trials.stream().anyMatch(t -> t.placed().isEmpty()));
        private final int asAssumed = scatters.length / 2;
        private final Map<FieldTrial, double[][]> placed = new HashMap<>();
        private final List<double[][][]> unplaced = new ArrayList<>();
        private final Map<Integer, Map<Integer, Double>> scores = new HashMap<>();

        Judging(List<HeldSurface> surfaces) {
            this.surfaces = surfaces;
            for (int part = 0; part < parts.size(); part++) {
                Part p = parts.get(part);
                unplaced.add(p.placed().size() < p.trials.size() ? unplaced(part) : new double[0][0][0]);
                for (FieldTrial t : p.placed()) {
                    placed.put(t, placed(part, t.placed().orElseThrow()));
                }
            }
        }

        /** Chances by possible surface and friction factor of a trial whose place was measured [-]. */
        private double[][] placed(int part, Placed at) {
            List<double[]> places = new ArrayList<>();
            for (EvenScores e : EvenScores.of(ERRORS, 4)) {
                places.add(surfaces.get(part)
                        .place(
                                at.x() + settings.placing.shift() * e.normal(0),
                                at.y() + settings.placing.shift() * e.normal(1),
                                at.turn() + settings.placing.turn() * e.normal(2),
                                e.scattered(placement.height(), 3, 1)));
            }
            return chances(part, places);
        }

        /** Chances by scatter, possible surface and friction factor of a trial at an unknown place [-]. */
        private double[][][] unplaced(int part) {
            double[][][] chances = new double[scatters.length][][];
            for (int s = 0; s < scatters.length; s++) {
                List<double[]> places = new ArrayList<>();
                for (EvenScores e : EvenScores.of(PLACES, 4)) {
                    places.add(surfaces.get(part)
                            .place(
                                    e.scattered(placement.x(), 0, scatters[s]),
                                    e.scattered(placement.y(), 1, scatters[s]),
                                    e.scattered(placement.turn(), 2, scatters[s]),
                                    e.scattered(placement.height(), 3, scatters[s])));
                }
                chances[s] = chances(part, places);
            }
            return chances;
        }

        private double[][] chances(int part, List<double[]> places) {
            Draws draws =
                    streams.draws("possible surfaces of " + parts.get(part).words(), 0);
            Map<Integer, Double> own = scores.computeIfAbsent(part, k -> new HashMap<>());
            double[][] chances = surfaces.get(part)
                    .chances(places, factors, POSSIBLE, i -> own.computeIfAbsent(i, k -> draws.normal("score " + k)));
            for (double[] one : chances) {
                for (int f = 0; f < one.length; f++) {
                    one[f] = OUTSIDE / 2 + (1 - OUTSIDE) * one[f];
                }
            }
            return chances;
        }

        private double[][] chance(int part, FieldTrial t, int scatter) {
            double[][] known = placed.get(t);
            return known != null ? known : unplaced.get(part)[scatter];
        }

        ExplainResult result(int made) {
            Evidence evidence = new Evidence(factors, scatters, POSSIBLE + 1);
            for (int part = 0; part < parts.size(); part++) {
                Part p = parts.get(part);
                for (FieldTrial t : p.trials) {
                    for (int s = 0; s < scatters.length; s++) {
                        evidence.add(p.object.surface(), s, chance(part, t, s), t.held(), t.count());
                    }
                    evidence.seen(p.object.surface(), t.count(), t.placed().isEmpty());
                }
            }
            evidence.close();
            Evidence.Said said = evidence.said();
            return new ExplainResult(
                    project.hand().name(),
                    count(),
                    List.of(),
                    made,
                    made,
                    foretold(),
                    said.friction(),
                    java.util.Optional.of(said.common()),
                    said.scatter(),
                    factors,
                    scatters,
                    evidence.support(),
                    surfaces.stream().map(HeldSurface::quality).toList(),
                    settings.placing);
        }

        private List<ExplainResult.Foretold> foretold() {
            List<Foretelling> all = new ArrayList<>();
            for (int part = 0; part < parts.size(); part++) {
                Part p = parts.get(part);
                Foretelling one = new Foretelling(p.object.name(), p.grip.name(), factors, spread(p.object.surface()));
                for (FieldTrial t : p.trials) {
                    one.add(chance(part, t, asAssumed), t.held(), t.count());
                }
                all.add(one);
            }
            return Foretelling.finished(all);
        }

        /** Mean coefficient of variation of the rubbers' friction on a surface [-]. */
        private double spread(String surface) {
            FrictionTable table = project.hand().friction();
            return table.byRubber().keySet().stream()
                    .flatMap(rubber -> table.of(rubber, surface).stream())
                    .filter(mu -> mu.mean() > 0)
                    .mapToDouble(mu -> mu.deviation() / mu.mean())
                    .average()
                    .orElse(0);
        }
    }
}
