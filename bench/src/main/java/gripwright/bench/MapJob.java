package gripwright.bench;

import gripwright.closing.ClosingSummary;
import gripwright.model.GraspObject;
import gripwright.model.Grip;
import gripwright.report.PageLook;
import gripwright.study.CaptureMap;
import gripwright.study.Jobs;
import gripwright.study.MapResult;
import gripwright.study.RunnerFactory;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** A capture map from coarse to fine: whole maps of more and more cells, each keeping the runs of the one before. */
final class MapJob implements Runnable {
    private static final long TELL_NANOSECONDS = 120_000_000;

    private final Events events;
    private final String revision;
    private final GraspObject object;
    private final Grip grip;
    private final double span;
    private final List<Integer> levels = new ArrayList<>();
    private final double wantedShare;
    private final RunnerFactory closings;
    private final Jobs jobs;

    private final List<String> fresh = new ArrayList<>();
    private volatile boolean stopped;
    private volatile String state = "running";
    private volatile @Nullable MapResult result;
    private long told;
    private int done;
    private int of;
    private int cells;

    MapJob(
            Events events,
            String revision,
            GraspObject object,
            Grip grip,
            double span,
            int cells,
            double wantedShare,
            RunnerFactory closings,
            Jobs jobs) {
        this.events = events;
        this.revision = revision;
        this.object = object;
        this.grip = grip;
        this.span = span;
        this.wantedShare = wantedShare;
        this.closings = closings;
        this.jobs = jobs;
        // Halving a grid keeps its cells: 41, 21, 11.
        for (int n = cells; n >= 5; n = n / 2 + 1) {
            levels.add(0, n);
            if (n % 4 != 1) {
                break;
            }
        }
        if (levels.isEmpty()) {
            levels.add(cells);
        }
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

    GraspObject object() {
        return object;
    }

    Grip grip() {
        return grip;
    }

    /** The finest map that is complete; null before the first one. */
    @Nullable
    MapResult result() {
        return result;
    }

    @Override
    public void run() {
        try {
            for (int n : levels) {
                if (!stopped) {
                    level(n);
                }
            }
            state = stopped ? "stopped" : "done";
        } catch (RuntimeException e) {
            state = "failed: " + (e.getCause() == null ? e : e.getCause()).getMessage();
        }
        events.tell("map", wire(true));
    }

    private void level(int n) {
        synchronized (this) {
            cells = n;
            done = 0;
            of = n * n;
            fresh.clear();
        }
        CaptureMap map = new CaptureMap(span, n, wantedShare);
        MapResult made = map.run(object, grip, closings, jobs, this::finished, (finished, all) -> !stopped);
        if (!made.runs().contains(null)) {
            result = made;
            events.tell("map", wire(true));
        }
    }

    private void finished(int row, int column, ClosingSummary run) {
        String told1 = null;
        synchronized (this) {
            done++;
            fresh.add(row + "," + column + "," + PageLook.key(run.outcome()));
            long now = System.nanoTime();
            if (now - told > TELL_NANOSECONDS) {
                told = now;
                told1 = wire(false);
                fresh.clear();
            }
        }
        if (told1 != null) {
            events.tell("map", told1);
        }
    }

    /** @param drawn there is a new picture to fetch; else only the cells since the last time */
    synchronized String wire(boolean drawn) {
        MapResult map = result;
        return Wire.object(
                "object",
                object.name(),
                "grip",
                grip.name(),
                "revision",
                revision,
                "state",
                state,
                "spanMm",
                Wire.number(1e3 * span, 3),
                "finest",
                levels.get(levels.size() - 1),
                "cells",
                cells,
                "done",
                done,
                "of",
                of,
                "picture",
                drawn,
                "fresh",
                String.join(";", fresh),
                "complete",
                map == null ? 0 : map.cells(),
                "captureMm",
                Wire.number(map == null ? Double.NaN : 1e3 * map.captureRadius(), 2),
                "limited",
                map != null && map.captureLimitedBySpan(),
                "areaCm2",
                Wire.number(map == null ? Double.NaN : 1e4 * map.heldArea(), 2));
    }
}
