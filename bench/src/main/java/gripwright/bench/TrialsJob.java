package gripwright.bench;

import gripwright.closing.Conditions;
import gripwright.closing.Outcome;
import gripwright.files.DataTable;
import gripwright.files.RunTable;
import gripwright.model.Project;
import gripwright.report.PageLook;
import gripwright.study.Findings;
import gripwright.study.Jobs;
import gripwright.study.Proportion;
import gripwright.study.RunnerFactory;
import gripwright.study.Trials;
import gripwright.study.TrialsResult;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Virtual trials with their progress told while they run. */
final class TrialsJob implements Runnable {
    private static final long TELL_NANOSECONDS = 200_000_000;
    private static final int SENTENCES = 6;

    private final Events events;
    private final String revision;
    private final Project project;
    private final RunTable table = new RunTable();
    private final RunnerFactory closings;
    private final int runs;
    private final long seed;
    private final Jobs jobs;
    private volatile boolean stopped;
    private volatile String state = "running";
    private volatile @Nullable TrialsResult result;
    private volatile int done;
    private volatile int of;
    private long told;

    TrialsJob(Events events, String revision, Project project, RunnerFactory closings, int runs, long seed, Jobs jobs) {
        this.events = events;
        this.revision = revision;
        this.project = project;
        this.closings = table.through(closings);
        this.runs = runs;
        this.seed = seed;
        this.jobs = jobs;
        this.of = Trials.closings(project, runs);
    }

    void stop() {
        stopped = true;
    }

    boolean running() {
        return state.equals("running");
    }

    String revision() {
        return revision;
    }

    Project project() {
        return project;
    }

    @Nullable
    TrialsResult result() {
        return result;
    }

    /** Every run so far, those that only chose the grip too. */
    DataTable runs() {
        return table.table(project.need());
    }

    @Override
    public void run() {
        try {
            result = Trials.run(project, closings, runs, seed, jobs, this::progress);
            state = stopped ? "stopped" : "done";
        } catch (RuntimeException e) {
            state = "failed: " + (e.getCause() == null ? e : e.getCause()).getMessage();
        }
        events.tell("trials", wire());
    }

    private boolean progress(int finished, int all) {
        done = finished;
        of = all;
        long now = System.nanoTime();
        if (now - told > TELL_NANOSECONDS) {
            told = now;
            events.tell("trials", wire());
        }
        return !stopped;
    }

    String wire() {
        TrialsResult made = result;
        return Wire.object(
                "state", state,
                "revision", revision,
                "runs", runs,
                "seed", seed,
                "done", done,
                "of", of,
                "result", made != null,
                "share", Wire.number(made == null ? Double.NaN : made.weighted().share(), 4),
                "low", Wire.number(made == null ? Double.NaN : made.weighted().low(), 4),
                "high", Wire.number(made == null ? Double.NaN : made.weighted().high(), 4));
    }

    /** The table with everything needed to watch one of its failures. */
    static String table(Project project, TrialsResult trials) {
        List<Wire.Raw> pairs = new ArrayList<>();
        for (TrialsResult.Pair pair : trials.pairs()) {
            List<Wire.Raw> outcomes = new ArrayList<>();
            for (Map.Entry<Outcome, Integer> entry : pair.outcomes().entrySet()) {
                if (entry.getKey() != Outcome.HELD) {
                    Conditions example = pair.examples().get(entry.getKey());
                    outcomes.add(Wire.raw(
                            "outcome", PageLook.key(entry.getKey()),
                            "words", entry.getKey().words(),
                            "count", entry.getValue(),
                            "example", example == null ? new Wire.Raw("null") : conditions(example)));
                }
            }
            Proportion p = pair.success();
            boolean best = trials.best().stream()
                    .anyMatch(b -> b.object().equals(pair.object()) && b.grip().equals(pair.grip()));
            pairs.add(Wire.raw(
                    "object", pair.object(),
                    "grip", pair.grip(),
                    "best", best,
                    "held", p.successes(),
                    "decided", p.trials(),
                    "undecided", p.undecided(),
                    "share", Wire.number(p.share(), 4),
                    "low", Wire.number(p.low(), 4),
                    "high", Wire.number(p.high(), 4),
                    "outcomes", outcomes));
        }
        return Wire.object(
                "seed",
                trials.seed(),
                "runs",
                trials.runsPerPair(),
                "stopped",
                trials.stopped(),
                "wanted",
                project.need().wantedSuccess(),
                "share",
                Wire.number(trials.weighted().share(), 4),
                "low",
                Wire.number(trials.weighted().low(), 4),
                "high",
                Wire.number(trials.weighted().high(), 4),
                "sentences",
                Findings.of(project, trials).stream()
                        .limit(SENTENCES)
                        .map(f -> f.text())
                        .toList(),
                "pairs",
                pairs);
    }

    private static Wire.Raw conditions(Conditions c) {
        return Wire.raw(
                "x", Wire.number(1e3 * c.x(), 4),
                "y", Wire.number(1e3 * c.y(), 4),
                "turn", Wire.number(Math.toDegrees(c.turn()), 4),
                "height", Wire.number(1e3 * c.height(), 4),
                "padFriction", Wire.number(c.padFriction(), 5),
                "tableFriction", Wire.number(c.tableFriction(), 5),
                "mass", Wire.number(c.mass(), 5),
                "padStiffness", Wire.number(c.padStiffness(), 5),
                "springRate", Wire.number(c.springRate(), 5));
    }
}
