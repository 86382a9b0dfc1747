package gripwright.bench;

import gripwright.closing.Numerics;
import gripwright.model.GraspObject;
import gripwright.model.Grip;
import gripwright.model.Project;
import gripwright.study.Jobs;
import org.jspecify.annotations.Nullable;

/** The map and the trials of the page: at most one of each at a time; a new one ends the old one. */
final class Studies {
    private final Events events;
    private final Closings closings;
    private final Jobs jobs;
    private final Remembering remembering;
    private @Nullable MapJob map;
    private @Nullable TrialsJob trials;

    Studies(Events events, Closings closings, Jobs jobs, Live live) {
        this.events = events;
        this.closings = closings;
        this.jobs = jobs;
        this.remembering = new Remembering(live::letGoFirst);
    }

    synchronized void startMap(
            Project project, String revision, GraspObject object, Grip grip, double span, int cells) {
        stop();
        MapJob job = new MapJob(
                events,
                revision,
                object,
                grip,
                span,
                cells,
                project.need().wantedSuccess(),
                remembering.over(closings.of(project, Numerics.DEFAULT), revision),
                jobs);
        map = job;
        start(job, "map");
    }

    synchronized void startTrials(Project project, String revision, int runs, long seed) {
        stop();
        TrialsJob job = new TrialsJob(
                events,
                revision,
                project,
                remembering.over(closings.of(project, Numerics.DEFAULT), revision),
                runs,
                seed,
                jobs);
        trials = job;
        start(job, "trials");
    }

    /** Lets the runs under way finish and keeps what is done. */
    synchronized void stop() {
        if (map != null) {
            map.stop();
        }
        if (trials != null) {
            trials.stop();
        }
    }

    synchronized @Nullable MapJob map() {
        return map;
    }

    synchronized @Nullable TrialsJob trials() {
        return trials;
    }

    private static void start(Runnable job, String name) {
        Thread thread = new Thread(job, "gripwright-" + name);
        thread.setDaemon(true);
        thread.start();
    }
}
