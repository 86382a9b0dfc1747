package gripwright.bench;

import gripwright.closing.ClosingDetail;
import gripwright.closing.ClosingRunner;
import gripwright.closing.ClosingSummary;
import gripwright.closing.Conditions;
import gripwright.closing.Numerics;
import gripwright.files.KeptRunFile;
import gripwright.model.GraspObject;
import gripwright.model.Grip;
import gripwright.model.Project;
import gripwright.study.RunnerFactory;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.jspecify.annotations.Nullable;

/**
 * Runs nothing twice: a study that is stopped and started again, made finer, or cut off with the server, goes on where
 * it was. Runners are made when the first run is not known yet.
 */
final class Remembering {
    private static final int MOST = 200_000;
    /** So that undo finds what was computed before. */
    private static final int MOST_REVISIONS = 6;

    private final Closings closings;
    private final Journal journal;
    private final Runnable before;
    private final Map<String, Map<String, ClosingSummary>> known = new LinkedHashMap<>();

    /** @param before done before each run that is not known yet */
    Remembering(Closings closings, Journal journal, Runnable before) {
        this.closings = closings;
        this.journal = journal;
        this.before = before;
    }

    RunnerFactory over(Project project, Numerics numerics, String revision) {
        RunnerFactory factory = closings.of(project, numerics);
        Map<String, ClosingSummary> runs = of(revision);
        String hand = project.hand().name();
        return (object, grip) -> new Runner(
                factory, object, grip, runs, revision, KeptRunFile.pair(hand, numerics, object.name(), grip.name()));
    }

    private synchronized Map<String, ClosingSummary> of(String revision) {
        Map<String, ClosingSummary> runs = known.get(revision);
        if (runs == null) {
            runs = new ConcurrentHashMap<>(journal.read(revision));
            while (known.size() >= MOST_REVISIONS) {
                known.remove(known.keySet().iterator().next());
            }
            known.put(revision, runs);
        }
        return runs;
    }

    private final class Runner implements ClosingRunner {
        private final RunnerFactory factory;
        private final GraspObject object;
        private final Grip grip;
        private final Map<String, ClosingSummary> runs;
        private final String revision;
        private final String pair;
        private @Nullable ClosingRunner made;

        Runner(
                RunnerFactory factory,
                GraspObject object,
                Grip grip,
                Map<String, ClosingSummary> runs,
                String revision,
                String pair) {
            this.factory = factory;
            this.object = object;
            this.grip = grip;
            this.runs = runs;
            this.revision = revision;
            this.pair = pair;
        }

        @Override
        public ClosingSummary run(Conditions conditions) {
            String key = KeptRunFile.key(pair, conditions);
            ClosingSummary earlier = runs.get(key);
            if (earlier != null) {
                return earlier;
            }
            before.run();
            ClosingSummary now = runner().run(conditions);
            if (runs.size() < MOST) {
                runs.put(key, now);
                journal.add(revision, key, now);
            }
            return now;
        }

        @Override
        public ClosingDetail detail(Conditions conditions) {
            return runner().detail(conditions);
        }

        private ClosingRunner runner() {
            ClosingRunner runner = made;
            if (runner == null) {
                runner = factory.create(object, grip);
                made = runner;
            }
            return runner;
        }
    }
}
