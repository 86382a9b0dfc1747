package gripwright.bench;

import gripwright.closing.Numerics;
import gripwright.model.Project;
import gripwright.study.Jobs;
import gripwright.study.MapResult;
import gripwright.study.ShareMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** The map and the trials of the page: at most one of each at a time; a new one ends the old one. */
final class Studies {
    private final Events events;
    private final Jobs jobs;
    private final Journal journal;
    private final Remembering remembering;
    private @Nullable MapJob map;
    /** The last map of each object and grip, for the report. */
    private final Map<String, MapJob> drawn = new LinkedHashMap<>();

    private @Nullable TrialsJob trials;

    Studies(Events events, Closings closings, Jobs jobs, Live live, Journal journal) {
        this.events = events;
        this.jobs = jobs;
        this.journal = journal;
        this.remembering = new Remembering(closings, journal, live::letGoFirst);
    }

    synchronized void startMap(Project project, MapJob.Wish wish) {
        stop();
        Numerics usual = Numerics.DEFAULT;
        ShareMap.Runners runners = new ShareMap.Runners(
                remembering.over(project, usual, wish.revision()),
                remembering.over(project, usual.withStepScale(usual.stepScale() / 2), wish.revision()),
                remembering.over(project, usual.withViscosityScale(usual.viscosityScale() / 2), wish.revision()));
        MapJob job = new MapJob(events, wish, runners, jobs, journal);
        map = job;
        drawn.values().removeIf(old -> !old.revision().equals(wish.revision()));
        drawn.put(wish.object().name() + "\n" + wish.grip().name(), job);
        start(job, "map");
    }

    synchronized void startTrials(Project project, String revision, int runs, long seed) {
        stop();
        TrialsJob job = new TrialsJob(
                events, revision, project, remembering.over(project, Numerics.DEFAULT, revision), runs, seed, jobs);
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

    /** Finished maps of the files as they are in this revision. */
    synchronized List<MapResult> maps(String revision) {
        return drawn.values().stream()
                .filter(job -> job.revision().equals(revision))
                .map(MapJob::finished)
                .filter(Objects::nonNull)
                .toList();
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
