package gripwright.cli;

import gripwright.closing.ClosingDetail;
import gripwright.closing.ClosingRunner;
import gripwright.closing.ClosingSummary;
import gripwright.closing.Conditions;
import gripwright.closing.Numerics;
import gripwright.closing.Outcome;
import gripwright.closing.Policy;
import gripwright.closing.Sensing;
import gripwright.model.Project;
import gripwright.study.RunnerFactory;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Finished runs of a stopped study, kept in the folder {@code results} of the project so that the same command goes on
 * from there. A run is known by its hand, object, grip, calculation and conditions, so it does not matter which command
 * made it; runs of other inputs or of another version are not used.
 */
final class KeptRuns implements Surroundings.Closings {
    static final String NAME = "kept-runs.txt";
    /** Beyond this the later runs of a stopped study are made again. */
    private static final int MOST = 200_000;

    private final Surroundings.Closings closings;
    private final Path file;
    private final String head;
    private final Map<String, ClosingSummary> kept = new ConcurrentHashMap<>();
    private final Map<String, ClosingSummary> made = new ConcurrentHashMap<>();
    private final Set<String> used = ConcurrentHashMap.newKeySet();

    KeptRuns(Surroundings.Closings closings, OpenProject open) {
        this.closings = closings;
        this.file = open.folder().resolve("results").resolve(NAME);
        this.head =
                "gripwright kept runs 1\t" + Version.TEXT + "\t" + open.origin().inputs();
        read();
    }

    @Override
    public RunnerFactory of(Project project, Numerics numerics) {
        return keeping(closings.of(project, numerics), project.hand().name(), numerics);
    }

    @Override
    public RunnerFactory of(Project project, Numerics numerics, Policy policy, Sensing sensing) {
        // a blind hand does the same whatever its chips say
        String name = policy.feels()
                ? project.hand().name() + ", policy " + policy.word() + ", noise " + sensing.seed()
                : project.hand().name();
        return keeping(closings.of(project, numerics, policy, sensing), name, numerics);
    }

    private RunnerFactory keeping(RunnerFactory factory, String name, Numerics numerics) {
        String hand = word(name) + "\t" + numerics.padRows() + "\t" + numerics.padColumns() + "\t"
                + numerics.stepScale() + "\t" + numerics.viscosityScale();
        return (object, grip) -> {
            ClosingRunner runner = factory.create(object, grip);
            String prefix = hand + "\t" + word(object.name()) + "\t" + word(grip.name());
            return new ClosingRunner() {
                @Override
                public ClosingSummary run(Conditions conditions) {
                    return known(prefix + "\t" + text(conditions), runner, conditions);
                }

                @Override
                public ClosingDetail detail(Conditions conditions) {
                    return runner.detail(conditions);
                }
            };
        };
    }

    private ClosingSummary known(String key, ClosingRunner runner, Conditions conditions) {
        ClosingSummary run = kept.get(key);
        if (run != null) {
            used.add(key);
            return run;
        }
        run = runner.run(conditions);
        if (made.size() < MOST) {
            made.put(key, run);
        }
        return run;
    }

    /** How many kept runs were taken over so far. */
    int used() {
        return used.size();
    }

    /** After a study: keeps what is finished if it was stopped, else forgets the kept runs that it needed. */
    int save(boolean stopped) {
        Map<String, ClosingSummary> all = new TreeMap<>(kept);
        if (stopped) {
            all.putAll(made);
        } else {
            all.keySet().removeAll(used);
        }
        if (!stopped && used.isEmpty()) {
            return 0;
        }
        if (all.isEmpty()) {
            delete();
            return 0;
        }
        StringBuilder text = new StringBuilder(head).append('\n');
        all.forEach(
                (key, run) -> text.append(key).append('\t').append(text(run)).append('\n'));
        ResultFile.write(file, text.toString());
        return all.size();
    }

    private void delete() {
        try {
            Files.deleteIfExists(file);
        } catch (IOException e) {
            throw new CommandFailure(Exit.FILES, "cannot delete " + file + ": " + ResultFile.reason(e), e);
        }
    }

    private void read() {
        if (!Files.isRegularFile(file)) {
            return;
        }
        try {
            List<String> lines = Files.readAllLines(file);
            if (lines.isEmpty() || !lines.get(0).equals(head)) {
                return; // of other inputs: a finished study overwrites it
            }
            for (String line : lines.subList(1, lines.size())) {
                String[] words = line.split("\t", -1);
                if (words.length == KEY_WORDS + RUN_WORDS) {
                    kept.put(
                            String.join("\t", List.of(words).subList(0, KEY_WORDS)),
                            run(List.of(words).subList(KEY_WORDS, words.length)));
                }
            }
        } catch (IOException | IllegalArgumentException e) {
            kept.clear(); // damaged: the runs are made again
        }
    }

    private static final int KEY_WORDS = 16;
    private static final int RUN_WORDS = 14;

    private static String text(Conditions c) {
        return c.x() + "\t" + c.y() + "\t" + c.turn() + "\t" + c.height() + "\t" + c.padFriction() + "\t"
                + c.tableFriction() + "\t" + c.mass() + "\t" + c.padStiffness() + "\t" + c.springRate();
    }

    // Java writes as many digits as it needs to read the very same number again.
    private static String text(ClosingSummary s) {
        return s.outcome().name() + "\t" + s.travel() + "\t" + s.travelX() + "\t" + s.travelY() + "\t" + s.tilt() + "\t"
                + s.sink() + "\t" + s.landingForce() + "\t" + s.peakForce() + "\t" + s.peakPressure() + "\t"
                + s.links() + "\t" + s.objectResidual() + "\t" + s.jointResidual() + "\t" + s.steps() + "\t"
                + s.iterations();
    }

    private static ClosingSummary run(List<String> w) {
        return new ClosingSummary(
                Outcome.valueOf(w.get(0)),
                Double.parseDouble(w.get(1)),
                Double.parseDouble(w.get(2)),
                Double.parseDouble(w.get(3)),
                Double.parseDouble(w.get(4)),
                Double.parseDouble(w.get(5)),
                Double.parseDouble(w.get(6)),
                Double.parseDouble(w.get(7)),
                Double.parseDouble(w.get(8)),
                Integer.parseInt(w.get(9)),
                Double.parseDouble(w.get(10)),
                Double.parseDouble(w.get(11)),
                Integer.parseInt(w.get(12)),
                Integer.parseInt(w.get(13)));
    }

    private static String word(String name) {
        return name.replaceAll("\\s", " ");
    }
}
