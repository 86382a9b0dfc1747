package gripwright.bench;

import gripwright.closing.ClosingDetail;
import gripwright.closing.ClosingRunner;
import gripwright.closing.ClosingSummary;
import gripwright.closing.Conditions;
import gripwright.model.GraspObject;
import gripwright.model.Grip;
import gripwright.study.RunnerFactory;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.jspecify.annotations.Nullable;

/**
 * Runs nothing twice: a study that is stopped and started again, or made finer, goes on where it was. Runners are made
 * when the first run is not known yet.
 */
final class Remembering {
    private static final int MOST = 200_000;

    private final Runnable before;
    private final Map<Key, ClosingSummary> known = new ConcurrentHashMap<>();

    private record Key(String revision, String object, String grip, Conditions conditions) {}

    /** @param before done before each run that is not known yet */
    Remembering(Runnable before) {
        this.before = before;
    }

    RunnerFactory over(RunnerFactory factory, String revision) {
        return (object, grip) -> new Runner(factory, revision, object, grip);
    }

    private final class Runner implements ClosingRunner {
        private final RunnerFactory factory;
        private final String revision;
        private final GraspObject object;
        private final Grip grip;
        private @Nullable ClosingRunner made;

        Runner(RunnerFactory factory, String revision, GraspObject object, Grip grip) {
            this.factory = factory;
            this.revision = revision;
            this.object = object;
            this.grip = grip;
        }

        @Override
        public ClosingSummary run(Conditions conditions) {
            Key key = new Key(revision, object.name(), grip.name(), conditions);
            ClosingSummary earlier = known.get(key);
            if (earlier != null) {
                return earlier;
            }
            before.run();
            ClosingSummary now = runner().run(conditions);
            if (known.size() >= MOST) {
                known.clear();
            }
            known.put(key, now);
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
