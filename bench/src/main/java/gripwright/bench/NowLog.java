package gripwright.bench;

import gripwright.files.GrowingFile;
import gripwright.files.LogFollower;
import gripwright.files.SideFollower;
import gripwright.pad.PadSetup;
import gripwright.signal.Layout;
import gripwright.signal.SequenceCheck;
import gripwright.signal.StampCheck;
import gripwright.signal.TaxelWatch;
import gripwright.signal.WatchWords;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** A log that is followed while it grows, and what is known of it so far. Its memory is bounded. */
final class NowLog implements AutoCloseable, LogFollower.Taker {
    /** Bytes read in one look. */
    private static final long A_LOOK = 8L << 20;
    /** Of a log that is farther ahead only the end is read. */
    private static final long MOST_BEHIND = 64L << 20;

    private static final long KEPT = 8L << 20;
    private static final double ZERO_SECONDS = 1;
    private static final long HELD_NANOS = 500_000_000L;
    private static final double GROWING_SECONDS = 3;

    private final Path folder;
    private final Optional<PadSetup> setup;
    private final Layout layout;
    private final LogFollower follower;
    private final SideFollower side;

    private Map<String, String> head = Map.of();
    private Map<String, String> units = Map.of();
    private List<String> absent = List.of();
    private List<Layout.Taxel> taxels = List.of();
    private List<String> columns = List.of();
    private int[] places = {};
    private int time = -1;
    private int sequenceAt = -1;
    private double tick = 1;
    private Optional<String> force = Optional.empty();
    private boolean known;

    private TaxelWatch watch = new TaxelWatch(List.of());
    private SequenceCheck sequence = new SequenceCheck();
    private StampCheck stamps = new StampCheck();
    private Recent recent = new Recent(0);
    private NowForces.Answer forces = new NowForces.Answer(null, "");
    private double[] zeros = {};
    private int[] zeroCounts = {};
    private double[] last = {};
    private long readings;
    private double first = Double.NaN;
    private double since = Double.NaN;
    private double arrival;
    private double wall;
    private long skipped;

    private long size = -1;
    private long grewAt;
    private boolean grew;
    private long askedAt;
    private boolean running;
    private String trouble = "";

    /**
     * Opens a log.
     *
     * @param folder of the project
     * @param age since the file was written to last [s]
     */
    NowLog(Path folder, Path log, Optional<PadSetup> setup, double age, long now) throws IOException {
        this.folder = folder;
        this.setup = setup;
        this.layout = setup.flatMap(s -> s.readings().map(r -> Layout.of(r, s.pads())))
                .orElse(Layout.UNKNOWN);
        this.follower = new LogFollower(log, this);
        this.side = new SideFollower(log);
        this.grewAt = now - (long) (1e9 * Math.max(0, Math.min(age, 1e6)));
    }

    /**
     * Looks at the file.
     *
     * @param now [ns]
     * @return what was found there; counts of {@link GrowingFile.Found#ANOTHER} and GONE are not true any more
     */
    GrowingFile.Found look(long now) throws IOException {
        if (readings > 0 && arrival - first > ZERO_SECONDS && follower.file().behind() > MOST_BEHIND) {
            long from = follower.file().at();
            follower.skip(KEPT);
            skipped += follower.file().at() - from;
            countAnew();
        }
        GrowingFile.Found found = follower.look(A_LOOK);
        boolean more = found == GrowingFile.Found.MORE;
        more |= side.look(A_LOOK);
        long is = follower.file().size();
        if (size >= 0 && is > size) {
            grewAt = now;
            grew = true;
        }
        boolean fresh = size < 0;
        size = is;
        boolean before = running;
        if (grew && silentFor(now) < 1) {
            running = true;
        } else if (fresh || now - askedAt > HELD_NANOS) {
            running = follower.file().held(silentFor(now) < GROWING_SECONDS);
            askedAt = now;
        }
        return found == GrowingFile.Found.NOTHING && (more || before != running) ? GrowingFile.Found.MORE : found;
    }

    /** What was read is only the end of the log: counts begin there. */
    private void countAnew() {
        watch = new TaxelWatch(taxels);
        sequence = new SequenceCheck();
        stamps = new StampCheck();
        recent = new Recent(columns.size());
        since = Double.NaN;
    }

    // ---- what the log says

    @Override
    public int[] head(Map<String, String> values, List<String> names, Map<String, String> unitOf) {
        head = values;
        units = unitOf;
        Layout here = layout.within(names);
        if (here.given() && here.taxels().stream().noneMatch(t -> names.contains(t.column()))) {
            trouble = "pads.yaml names other columns than this log has; those of the log are shown";
            here = Layout.UNKNOWN.within(names);
        }
        absent = here.order().stream().filter(c -> !names.contains(c)).toList();
        taxels = here.taxels().stream().filter(t -> names.contains(t.column())).toList();
        columns = new ArrayList<>();
        time = add(here.time(), names);
        sequenceAt = add(here.sequence(), names);
        places = taxels.stream()
                .mapToInt(t -> add(Optional.of(t.column()), names))
                .toArray();
        here.numbers().forEach(c -> add(Optional.of(c), names));
        tick = here.tick();
        force = here.force().filter(columns::contains);
        zeros = new double[places.length];
        zeroCounts = new int[places.length];
        last = new double[columns.size()];
        java.util.Arrays.fill(last, Double.NaN);
        countAnew();
        forces = trouble.isEmpty() ? NowForces.of(folder, setup, columns, units) : new NowForces.Answer(null, "");
        known = true;
        return columns.stream().mapToInt(names::indexOf).toArray();
    }

    private int add(Optional<String> column, List<String> names) {
        if (column.isEmpty() || !names.contains(column.get())) {
            return -1;
        }
        if (!columns.contains(column.get())) {
            columns.add(column.get());
        }
        return columns.indexOf(column.get());
    }

    @Override
    public void row(double seconds, double wallMillis, double[] values) {
        first = readings == 0 ? seconds : first;
        since = Double.isNaN(since) ? seconds : since;
        readings++;
        arrival = seconds;
        wall = wallMillis;
        if (sequenceAt >= 0 && !Double.isNaN(values[sequenceAt])) {
            sequence.next((long) values[sequenceAt]);
        }
        stamps.next(time < 0 ? Double.NaN : values[time] * tick);
        watch.next(seconds, values, places);
        recent.next(seconds, values);
        if (seconds - first < ZERO_SECONDS && skipped == 0) {
            for (int i = 0; i < places.length; i++) {
                double v = values[places[i]];
                if (!Double.isNaN(v)) {
                    zeros[i] += v;
                    zeroCounts[i]++;
                }
            }
        }
        NowForces in = forces.forces();
        if (in != null) {
            in.next(values);
        }
        System.arraycopy(values, 0, last, 0, last.length);
    }

    // ---- what is known

    /** True if there is more to read at once. */
    boolean behind() throws IOException {
        return follower.file().behind() > 0 && follower.refusal().isEmpty();
    }

    /** True once the log has said which columns it has. */
    boolean known() {
        return known;
    }

    /** Why it cannot be followed, empty if it can. */
    String refusal() {
        return follower.refusal();
    }

    /** Whether a program writes it. */
    boolean running() {
        return running;
    }

    /** Time since it grew [s]. */
    double silentFor(long now) {
        return (now - grewAt) / 1e9;
    }

    Map<String, String> head() {
        return head;
    }

    String unit(String column) {
        return units.getOrDefault(column, "");
    }

    List<Layout.Taxel> taxels() {
        return taxels;
    }

    /** Columns of numbers that are no taxels. */
    List<String> others() {
        List<String> others = new ArrayList<>(columns);
        taxels.forEach(t -> others.remove(t.column()));
        return others;
    }

    /** Of the reference load cell, if there is one. */
    Optional<String> force() {
        return force;
    }

    /** Place among the columns that are read, -1 if there is none of that name. */
    int place(String column) {
        return columns.indexOf(column);
    }

    double last(String column) {
        return last[columns.indexOf(column)];
    }

    /** Mean of a taxel's first second, NaN if it gave no number then. */
    double zero(int taxel) {
        return zeros[taxel] / zeroCounts[taxel];
    }

    TaxelWatch watch() {
        return watch;
    }

    Recent recent() {
        return recent;
    }

    @Nullable
    NowForces forces() {
        return forces.forces();
    }

    /** Readings in the last second, 0 in silence [1/s]. */
    double rate(long now) {
        return silentFor(now) > 1.5 ? 0 : recent.rate();
    }

    /** Readings that were read. */
    long readings() {
        return readings;
    }

    /** Bytes of the log that were left out to keep up. */
    long skipped() {
        return skipped;
    }

    /** From when on it is counted [s since the log's start]. */
    double since() {
        return since;
    }

    /** Of the last reading [s since the log's start]. */
    double arrival() {
        return arrival;
    }

    /** Of the last reading [ms]. */
    double wall() {
        return wall;
    }

    /** What is lost, in words. */
    String lost() {
        return WatchWords.lost(
                sequence.missing(),
                sequence.gaps(),
                sequence.repeats(),
                sequence.late(),
                sequence.restarts(),
                sequence.overruns());
    }

    boolean counts() {
        return sequenceAt >= 0;
    }

    StampCheck stamps() {
        return stamps;
    }

    SideFollower side() {
        return side;
    }

    long unreadable() {
        return follower.unreadable();
    }

    String lastUnreadable() {
        return follower.lastUnreadable();
    }

    /** What the user should know, in words, the worst first. */
    List<String> warnings(long now) {
        List<String> all = new ArrayList<>();
        if (running && silentFor(now) > TaxelWatch.SILENCE) {
            all.add(WatchWords.nothing(silentFor(now)));
        }
        all.addAll(watch.warnings());
        if (!trouble.isEmpty()) {
            all.add(trouble);
        }
        if (!absent.isEmpty()) {
            all.add(WatchWords.some(absent)
                    + (absent.size() == 1
                            ? " is named in pads.yaml and not sent"
                            : " are named in pads.yaml and not sent"));
        }
        if (!forces.why().isEmpty()) {
            all.add("no newtons: " + forces.why());
        }
        return all;
    }

    @Override
    public void close() {
        follower.close();
        side.close();
    }
}
