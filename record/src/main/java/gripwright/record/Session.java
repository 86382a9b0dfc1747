package gripwright.record;

import gripwright.files.LineCutter;
import gripwright.files.LogMarks;
import gripwright.files.Recording;
import gripwright.files.Recording.End;
import gripwright.signal.SequenceCheck;
import gripwright.signal.StampCheck;
import gripwright.signal.TaxelWatch;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;

/** One recording while it runs: from the bytes of a source to the log, its side file and the counts. */
final class Session implements Intake.Into {
    private static final long POLL_MILLIS = 50;
    private static final long FLUSH_NANOS = 250_000_000L;
    private static final long FORCE_MILLIS = 400;
    private static final long LOOK_NANOS = 100_000_000L;
    private static final double SECOND = 1e9;

    private final Recorder.Plan plan;
    private final Clocks clocks;
    private final Recorder.Watcher watcher;
    private final Intake intake;
    private final LineCutter cutter = new LineCutter(Recorder.LONGEST_LINE);
    private final SequenceCheck sequence = new SequenceCheck();
    private final StampCheck stamps = new StampCheck();
    private final Traces traces = new Traces();
    private final Pace pace = new Pace();
    private final Hearing hearing;
    private final SideFile side;
    private final boolean replay;
    private final boolean ownPace;
    private final long start;
    private final long startWall;

    private @Nullable Feed feed;
    private volatile @Nullable LogFile log;
    private TaxelWatch taxels = new TaxelWatch(List.of());
    private double[] lastValues = {};

    private long chunkNanos;
    private long chunkWall;
    private long readings;
    private double firstArrival = Double.NaN;
    private double lastArrival;

    private long flushedAt;
    private long lookedAt;
    private long rateSince;
    private long rateReadings;
    private double rate;

    private boolean stopping;
    private @Nullable End end;
    private String endWords = "";

    Session(Recorder.Plan plan, Clocks clocks, Recorder.Watcher watcher) {
        this.plan = plan;
        this.clocks = clocks;
        this.watcher = watcher;
        this.side = new SideFile(LogMarks.sideFile(plan.log()));
        this.replay = plan.source() instanceof SourceAddress.Replay;
        this.ownPace = plan.source() instanceof SourceAddress.Replay file && file.ownPace();
        this.start = clocks.nanos().getAsLong();
        this.startWall = clocks.wall().getAsLong();
        this.flushedAt = start;
        this.rateSince = start;
        this.hearing = new Hearing(start);
        this.intake = new Intake(plan.layout(), plan.source(), this);
    }

    /** Runs it to its end. */
    Recording record(Source source) {
        Thread forcing = new Thread(this::forceNowAndThen, "gripwright-force");
        forcing.setDaemon(true);
        forcing.start();
        try (Feed opened = new Feed(source, clocks)) {
            feed = opened;
            while (end == null) {
                step(opened);
            }
        } catch (LogFailure e) {
            finish(End.LOG_FAILED, String.valueOf(e.getMessage()));
        } catch (InterruptedException e) {
            finish(End.STOPPED, "stopped");
            Thread.currentThread().interrupt();
        } finally {
            forcing.interrupt();
        }
        close();
        return recording(true);
    }

    private void step(Feed from) throws LogFailure, InterruptedException {
        Feed.Chunk chunk = from.next(stopping ? 0 : POLL_MILLIS);
        if (chunk == null) {
            tick();
            if (stopping) {
                finish(End.STOPPED, "stopped");
            }
            return;
        }
        if (chunk.bytes().length == 0) {
            ended(from);
            return;
        }
        if (!replay && seconds(chunk.nanos()) > plan.seconds()) {
            finish(End.TIME_UP, "the time is up");
            return;
        }
        chunkNanos = chunk.nanos();
        chunkWall = chunk.wall();
        hearing.heard(chunkNanos, chunkWall);
        cutter.feed(chunk.bytes(), intake);
        tick();
    }

    private void ended(Feed from) throws LogFailure {
        IOException failure = from.failure();
        if (stopping) {
            finish(End.STOPPED, "stopped"); // a line that had only begun is nothing that was lost
            return;
        }
        cutter.finish(intake);
        if (failure != null) {
            finish(End.SOURCE_FAILED, String.valueOf(failure.getMessage()));
        } else {
            finish(End.SOURCE_ENDED, "the source has ended");
        }
    }

    private void finish(End why, String words) {
        if (end == null) {
            end = why;
            endWords = words;
        }
    }

    private double seconds(long nanos) {
        return (nanos - start) / SECOND;
    }

    /** Writes out, looks at the time and asks the watcher. */
    private void tick() throws LogFailure {
        long now = clocks.nanos().getAsLong();
        if (now - flushedAt >= FLUSH_NANOS) {
            flush();
            flushedAt = now;
        }
        if (seconds(now) > plan.seconds() && (replay || feedIsEmpty())) {
            finish(End.TIME_UP, "the time is up");
        }
        if (!replay && feedIsEmpty()) {
            hearing.still(now);
        }
        if (now - lookedAt >= LOOK_NANOS) {
            lookedAt = now;
            look(now);
        }
    }

    private boolean feedIsEmpty() {
        Feed from = feed;
        return from == null || from.waiting() == 0;
    }

    private void look(long now) {
        if (now - rateSince >= SECOND) {
            rate = (readings - rateReadings) * SECOND / (now - rateSince);
            rateReadings = readings;
            rateSince = now;
        }
        Feed from = feed;
        Live live = new Live(
                recording(false),
                seconds(now),
                rate,
                replay ? 0 : hearing.silentFor(now),
                from == null ? 0 : from.waiting(),
                others(),
                taxels.warnings(),
                intake.lastFault());
        if (!stopping && !watcher.goOn(live)) {
            stopping = true;
            if (from != null) {
                from.close(); // what has arrived is still written
            }
        }
    }

    private Map<String, Double> others() {
        Map<String, Double> others = new LinkedHashMap<>();
        Columns known = intake.columns();
        if (known != null && lastValues.length > 0) {
            for (int i = 0; i < known.count(); i++) {
                String name = known.names().get(i);
                if (known.isNumber(i)
                        && known.taxels().stream().noneMatch(t -> t.column().equals(name))) {
                    others.put(name, lastValues[i]);
                }
            }
        }
        return others;
    }

    private void forceNowAndThen() {
        try {
            while (true) {
                Thread.sleep(FORCE_MILLIS);
                force();
            }
        } catch (InterruptedException e) {
            return; // the recording has ended and forces once more itself
        }
    }

    private void force() {
        LogFile opened = log;
        if (opened != null) {
            opened.force();
        }
        side.force();
    }

    private void flush() throws LogFailure {
        LogFile opened = log;
        if (opened != null) {
            opened.flush();
        }
        side.flush();
    }

    private void close() {
        try {
            flush();
        } catch (LogFailure e) {
            end = End.LOG_FAILED; // whatever ended it, this matters more
            endWords = String.valueOf(e.getMessage());
        }
        force();
        LogFile opened = log;
        if (opened != null) {
            opened.close();
        }
        side.close();
    }

    // ---- what the lines bring

    @Override
    public boolean over() {
        return end != null;
    }

    @Override
    public void misfit(String words) {
        finish(End.SOURCE_FAILED, words);
    }

    @Override
    public void aside(Intake.Aside aside) throws LogFailure {
        LogFile opened = log;
        long base = opened == null ? 0 : opened.base();
        side.line(
                aside.line(),
                base + (chunkNanos - start) / 1000,
                aside.length(),
                aside.reason(),
                aside.bytes(),
                aside.kept());
        if (aside.malformed()) {
            traces.malformed(seconds(chunkNanos));
        }
    }

    @Override
    public void columns(Columns known) throws Misfit, LogFailure {
        if (ownPace && !intake.ownLog() && known.time() < 0) {
            throw new Misfit("no column holds the time, so the file has no pace of its own; say file:PATH?pace=max");
        }
        LogFile opened = LogFile.open(plan.log(), plan.heading(), plan.sourceText(), startWall, known);
        log = opened;
        taxels = new TaxelWatch(known.taxels());
        traces.taxels(known.taxels().size());
        if (!opened.cutTail().isEmpty()) {
            byte[] tail = opened.cutTail().getBytes(StandardCharsets.UTF_8);
            long cut = opened.continued().map(Recording.Continued::cutBytes).orElse(0L);
            side.line(0, opened.base(), cut, "the log ended within this line", tail, tail.length);
        }
    }

    @Override
    public void reading(RowReader.Row row, Columns known, double paced) throws LogFailure {
        if (ownPace) {
            awaitPace(paced);
        }
        LogFile to = log;
        if (to == null || end != null) {
            return;
        }
        double at = seconds(chunkNanos);
        to.reading(to.base() + (chunkNanos - start) / 1000, chunkWall, row.text());
        readings++;
        firstArrival = readings == 1 ? at : firstArrival;
        lastArrival = at;
        long lacking = known.sequence() < 0 ? 0 : sequence.next((long) row.values()[known.sequence()]);
        stamps.next(known.seconds(row.values()));
        traces.reading(at, lacking);
        taxels.next(at, row.values(), known.taxelPlaces());
        for (int i = 0; i < taxels.count(); i++) {
            double value = row.values()[known.taxel(i)];
            if (!Double.isNaN(value)) {
                traces.value(at, i, value);
            }
        }
        lastValues = row.values();
        if (readings >= plan.lines()) {
            finish(End.LINES_REACHED, "the wanted number of readings has come");
        }
    }

    /** Waits until a replayed reading is due, and goes on writing and looking meanwhile. */
    private void awaitPace(double stamp) throws LogFailure {
        long left;
        while (end == null && (left = pace.left(stamp, clocks.nanos().getAsLong())) > 0) {
            try {
                TimeUnit.NANOSECONDS.sleep(Math.min(POLL_MILLIS * 1_000_000, left));
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
                finish(End.STOPPED, "stopped");
            }
            tick();
            if (stopping) {
                finish(End.STOPPED, "stopped");
            }
        }
        chunkNanos = clocks.nanos().getAsLong();
        chunkWall = clocks.wall().getAsLong();
    }

    // ---- what came of it

    private Recording recording(boolean whole) {
        LogFile opened = log;
        Columns known = intake.columns();
        Feed from = feed;
        double duration = readings > 1 ? lastArrival - firstArrival : 0;
        return new Recording(
                opened == null ? "" : plan.logName(),
                side.made() ? sideName() : "",
                plan.sourceText(),
                LogFormat.started(startWall),
                known == null ? List.of() : known.names(),
                known == null ? List.of() : known.absent(),
                opened == null ? Optional.empty() : opened.continued(),
                counts(opened),
                new Recording.Times(
                        duration,
                        duration > 0 ? (readings - 1) / duration : Double.NaN,
                        hearing.silences(),
                        hearing.longest(),
                        hearing.wallSteps(),
                        from == null ? 0 : from.mostWaiting(),
                        from == null ? 0 : from.waits()),
                traces.width(),
                whole ? traces.strips() : List.of(),
                cells(whole),
                end == null ? End.STOPPED : end,
                endWords);
    }

    private String sideName() {
        Path name = LogMarks.sideFile(Path.of(plan.logName()));
        return name.toString();
    }

    private Recording.Counts counts(@Nullable LogFile opened) {
        return new Recording.Counts(
                intake.lines(),
                opened == null ? 0 : opened.written(),
                opened == null ? 0 : opened.safe(),
                opened == null ? 0 : opened.unsaved(),
                intake.malformed(),
                intake.comments(),
                intake.blank(),
                intake.heads(),
                sequence.gaps(),
                sequence.missing(),
                sequence.repeats(),
                sequence.late(),
                sequence.restarts(),
                sequence.overruns(),
                stamps.back(),
                stamps.equal());
    }

    private List<Recording.Taxel> cells(boolean whole) {
        List<Recording.Taxel> cells = new ArrayList<>();
        for (int i = 0; i < taxels.count(); i++) {
            cells.add(new Recording.Taxel(
                    taxels.column(i),
                    taxels.pad(i),
                    taxels.values(i),
                    taxels.last(i),
                    taxels.least(i),
                    taxels.greatest(i),
                    taxels.saturated(i),
                    taxels.stuckFor(i) > 0,
                    taxels.unchanged(i),
                    whole ? traces.low(i) : List.of(),
                    whole ? traces.high(i) : List.of()));
        }
        return cells;
    }
}
