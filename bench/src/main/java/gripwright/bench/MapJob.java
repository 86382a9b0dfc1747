package gripwright.bench;

import gripwright.closing.ClosingSummary;
import gripwright.closing.Outcome;
import gripwright.model.GraspObject;
import gripwright.model.Grip;
import gripwright.model.Project;
import gripwright.report.PageLook;
import gripwright.study.CaptureMap;
import gripwright.study.CellShare;
import gripwright.study.Finding;
import gripwright.study.Findings;
import gripwright.study.Jobs;
import gripwright.study.MapResult;
import gripwright.study.ShareMap;
import gripwright.study.Uncertain;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The capture map of the command line, shown while it grows: from a coarse grid to held shares. */
final class MapJob implements Runnable, ShareMap.Growth {
    /** Of the ensembles of maps, as on the command line: a map is the same whoever makes it. */
    private static final long SEED = 1;

    private static final long TELL_NANOSECONDS = 100_000_000;
    private static final int MOST_UNDECIDED = 12;
    private static final int MOST_SENTENCES = 4;

    private final Events events;
    private final Wish wish;
    private final ShareMap.Runners runners;
    private final Jobs jobs;
    private final Journal journal;

    private final List<String> fresh = new ArrayList<>();
    private final long started = System.nanoTime();
    private volatile boolean stopped;
    private volatile String state = "running";
    private volatile MapResult result;
    private volatile double seconds;
    /** Whether {@link #result} has cells: before the first grid is complete it has none. */
    private volatile boolean any;

    private long told;
    private int done;
    private int of;
    private int stride;
    private boolean sharing;

    /** What is asked for. */
    record Wish(Project project, String revision, GraspObject object, Grip grip, CaptureMap map) {}

    MapJob(Events events, Wish wish, ShareMap.Runners runners, Jobs jobs, Journal journal) {
        this.events = events;
        this.wish = wish;
        this.runners = runners;
        this.jobs = jobs;
        this.journal = journal;
        int n = wish.map.cells();
        List<@Nullable ClosingSummary> none = Collections.nCopies(n * n, null);
        result = wish.map.summary(wish.object.name(), wish.grip.name(), none);
    }

    void stop() {
        stopped = true;
    }

    boolean running() {
        return state.equals("running");
    }

    String revision() {
        return wish.revision;
    }

    GraspObject object() {
        return wish.object;
    }

    /** The finest map that is complete; before the first one a map without cells. */
    MapResult result() {
        return result;
    }

    /** The same; null before the first one. */
    @Nullable
    MapResult finished() {
        return any ? result : null;
    }

    @Override
    public void run() {
        try {
            ShareMap map = new ShareMap(wish.map, Uncertain.seeded(SEED));
            MapResult made = map.run(wish.object, wish.grip, runners, jobs, this::progress, this);
            if (!made.runs().contains(null)) {
                take(made);
            }
            state = stopped ? "stopped" : "done";
        } catch (RuntimeException e) {
            state = "failed: " + (e.getCause() == null ? e : e.getCause()).getMessage();
        }
        seconds = (System.nanoTime() - started) / 1e9;
        events.tell("map", wire(!stopped));
    }

    private boolean progress(int finished, int all) {
        synchronized (this) {
            done = finished;
            of = all;
        }
        return !stopped;
    }

    private void take(MapResult map) {
        result = map;
        any = true;
    }

    @Override
    public void map(MapResult soFar) {
        take(soFar);
        String json;
        synchronized (this) {
            fresh.clear();
            json = wire(true);
        }
        events.tell("map", json);
    }

    @Override
    public void cell(int row, int column, int apart, ClosingSummary run, CellShare share) {
        String json = null;
        synchronized (this) {
            stride = apart;
            sharing = share.basis() == CellShare.Basis.ENSEMBLE;
            fresh.add(row + "," + column + "," + PageLook.key(run.outcome())
                    + (sharing && share.decided() > 0 ? "," + Math.round(8.0 * share.held() / share.decided()) : ""));
            long now = System.nanoTime();
            if (now - told > TELL_NANOSECONDS) {
                told = now;
                json = wire(false);
                fresh.clear();
            }
        }
        if (json != null) {
            events.tell("map", json);
        }
    }

    /** @param drawn there is a new picture to fetch; else only the cells since the last time */
    synchronized String wire(boolean drawn) {
        MapResult map = result;
        return Wire.object(
                "object",
                wish.object.name(),
                "grip",
                wish.grip.name(),
                "revision",
                wish.revision,
                "state",
                state,
                "spanMm",
                Wire.number(1e3 * wish.map.span(), 3),
                "cells",
                wish.map.cells(),
                "stride",
                stride,
                "sharing",
                sharing,
                "done",
                done,
                "of",
                of,
                "picture",
                drawn,
                "fresh",
                String.join(";", fresh),
                "complete",
                any ? map.cells() : 0,
                "shares",
                any && map.count(share -> share.basis() == CellShare.Basis.ENSEMBLE) > 0,
                "seconds",
                Wire.number(seconds, 1),
                "captureMm",
                Wire.number(any ? 1e3 * map.captureRadius() : Double.NaN, 2),
                "limited",
                any && map.captureLimitedBySpan(),
                "areaCm2",
                Wire.number(any ? 1e4 * map.heldArea() : Double.NaN, 2),
                "sentences",
                any && !running() ? sentences(map) : List.of(),
                "undecided",
                undecided(map),
                "trouble",
                journal.trouble());
    }

    private List<String> sentences(MapResult map) {
        return Findings.of(wish.project, map).stream()
                .filter(f -> f.topic() != Finding.Topic.ANSWER)
                .limit(MOST_SENTENCES)
                .map(Finding::text)
                .toList();
    }

    /** Places [mm] that were not decided, the first of them. */
    private static List<List<Wire.Raw>> undecided(MapResult map) {
        List<List<Wire.Raw>> out = new ArrayList<>();
        for (int row = 0; row < map.cells(); row++) {
            for (int column = 0; column < map.cells() && out.size() < MOST_UNDECIDED; column++) {
                if (map.outcome(row, column) == Outcome.UNDECIDED) {
                    out.add(List.of(Wire.number(1e3 * map.shift(column), 2), Wire.number(1e3 * map.shift(row), 2)));
                }
            }
        }
        return out;
    }
}
