package gripwright.cli;

import gripwright.closing.ClosingDetail;
import gripwright.closing.ClosingRunner;
import gripwright.closing.ClosingSummary;
import gripwright.closing.Conditions;
import gripwright.closing.Numerics;
import gripwright.closing.Policy;
import gripwright.closing.Sensing;
import gripwright.files.KeptRunFile;
import gripwright.model.Project;
import gripwright.study.RunnerFactory;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
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
    static final String NAME = KeptRunFile.NAME;
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
        this.file = open.folder().resolve(KeptRunFile.FOLDER).resolve(NAME);
        this.head = KeptRunFile.head(Version.TEXT, open.origin().inputs());
        kept.putAll(KeptRunFile.read(file, head));
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
        return (object, grip) -> {
            ClosingRunner runner = factory.create(object, grip);
            String pair = KeptRunFile.pair(name, numerics, object.name(), grip.name());
            return new ClosingRunner() {
                @Override
                public ClosingSummary run(Conditions conditions) {
                    return known(KeptRunFile.key(pair, conditions), runner, conditions);
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
        all.forEach((key, run) -> text.append(KeptRunFile.line(key, run)).append('\n'));
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
}
