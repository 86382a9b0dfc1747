package gripwright.cli;

import gripwright.closing.Numerics;
import gripwright.model.GraspObject;
import gripwright.model.Grip;
import gripwright.study.CaptureMap;
import gripwright.study.Jobs;
import gripwright.study.MapResult;
import gripwright.study.RunnerFactory;
import gripwright.study.Trials;
import gripwright.study.TrialsResult;

/** Runs studies of one project with progress shown, until an interruption. */
final class Studies {
    private final Surroundings at;
    private final OpenProject open;
    private final RunnerFactory closings;
    private final Jobs jobs;

    Studies(Surroundings at, OpenProject open, Numerics numerics, Jobs jobs) {
        this.at = at;
        this.open = open;
        this.closings = at.closings().of(open.project(), numerics);
        this.jobs = jobs;
        at.interruption().listen();
    }

    RunnerFactory closings() {
        return closings;
    }

    boolean stopped() {
        return at.interruption().requested();
    }

    MapResult map(GraspObject object, Grip grip, CaptureMap map) {
        ProgressLine progress = at.progress("map of " + object.name() + " with " + grip.name());
        try {
            return map.run(object, grip, closings, jobs, CaptureMap.Listener.NONE, progress);
        } finally {
            progress.end();
        }
    }

    TrialsResult trials(int runs, long seed) {
        ProgressLine progress = at.progress("trials");
        try {
            return Trials.run(open.project(), closings, runs, seed, jobs, progress);
        } finally {
            progress.end();
        }
    }
}
