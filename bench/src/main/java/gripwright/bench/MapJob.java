package gripwright.bench;

import gripwright.closing.ClosingDetail;
import gripwright.closing.ClosingRunner;
import gripwright.closing.ClosingSummary;
import gripwright.closing.Conditions;
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
import gripwright.study.RunnerFactory;
import gripwright.study.ShareMap;
import gripwright.study.Uncertain;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** The capture map of the command line, shown while it grows: from a coarse grid to held shares. */
final class MapJob implements Runnable {
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

    private final Map<Integer, String> fresh = new LinkedHashMap<>();
    private final Map<Integer, int[]> members = new HashMap<>();
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
    /** How far the cells of the present grid lie apart. */
    private int stride;

    private boolean sharing;

    /** What is asked for. */
    record Wish(Project project, String revision, GraspObject object, Grip grip, CaptureMap map) {}

    MapJob(Events events, Wish wish, ShareMap.Runners runners, Jobs jobs, Journal journal) {
        this.events = events;
        this.wish = wish;
        this.runners = new ShareMap.Runners(seen(runners.usual()), runners.halfStep(), runners.halfDamping());
        this.jobs = jobs;
        this.journal = journal;
        int n = wish.map.cells();
        stride = n / 2 >= 8 ? 4 : n / 2 >= 4 ? 2 : 1;
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
            MapResult made = map.run(wish.object, wish.grip, runners, jobs, this::progress, this::soFar);
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

    private void soFar(MapResult map) {
        take(map);
        String json;
        synchronized (this) {
            stride = Math.max(1, (wish.map.cells() - 1) / (map.cells() - 1) / 2);
            fresh.clear();
            json = wire(true);
        }
        events.tell("map", json);
    }

    /** The same closings, each shown in its cell as soon as it is finished. */
    private RunnerFactory seen(RunnerFactory factory) {
        return (object, grip) -> {
            ClosingRunner runner = factory.create(object, grip);
            return new ClosingRunner() {
                @Override
                public ClosingSummary run(Conditions conditions) {
                    ClosingSummary run = runner.run(conditions);
                    show(conditions, run);
                    return run;
                }

                @Override
                public ClosingDetail detail(Conditions conditions) {
                    return runner.detail(conditions);
                }
            };
        };
    }

    private void show(Conditions c, ClosingSummary run) {
        int n = wish.map.cells();
        double pitch = 2 * wish.map.span() / (n - 1);
        int column = (int) Math.rint(c.x() / pitch) + n / 2;
        int row = (int) Math.rint(c.y() / pitch) + n / 2;
        boolean single = c.equals(Conditions.at(c.x(), c.y(), 0));
        String json = null;
        synchronized (this) {
            sharing = !single;
            int[] counts = members.computeIfAbsent(row * n + column, k -> new int[2]);
            counts[0] += run.held() ? 1 : 0;
            counts[1] += run.outcome().decided() ? 1 : 0;
            if (single) {
                fresh.put(row * n + column, row + "," + column + "," + PageLook.key(run.outcome()));
            } else if (counts[1] > 1) {
                fresh.put(row * n + column, row + "," + column + ",," + Math.round(8.0 * counts[0] / counts[1]));
            }
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
                String.join(";", fresh.values()),
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
                "areaCm2", // one decimal, as in every other place: rounded twice it could differ there
                Wire.number(any ? 1e4 * map.heldArea() : Double.NaN, 1),
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
