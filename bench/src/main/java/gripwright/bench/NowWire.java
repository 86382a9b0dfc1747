package gripwright.bench;

import gripwright.signal.Layout;
import gripwright.signal.TaxelWatch;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** What a page is told of a log that is followed. */
final class NowWire {
    private static final int DIGITS = 7;
    private static final int LONGEST = 120;

    private NowWire() {}

    /** As many decimals as can be told apart at that size. */
    static Wire.Raw number(double value) {
        if (!Double.isFinite(value) || value == 0) {
            return Wire.number(value, 0);
        }
        int whole = (int) Math.floor(Math.log10(Math.abs(value))) + 1;
        return Wire.number(value, Math.max(0, Math.min(6, DIGITS - whole)));
    }

    /**
     * The state of a log.
     *
     * @param layout description of the columns if the page has not got it yet
     * @param taxel whose last seconds are sent too
     */
    static String of(Now.Followed f, Wire.Raw logs, Wire.Raw layout, String taxel, long now) {
        NowLog log = f.log();
        List<Object> out = new ArrayList<>(List.of(
                "version", f.version(),
                "logs", logs,
                "log", f.name(),
                "state", !log.refusal().isEmpty() ? "no log" : log.running() ? "running" : "ended",
                "known", log.known(),
                "refusal", log.refusal(),
                "layoutId", f.layoutId(),
                "layout", layout));
        if (log.known()) {
            add(
                    out,
                    "started",
                    head(log, "started"),
                    "source",
                    head(log, "source"),
                    "wall",
                    Wire.number(log.wall(), 0),
                    "arrival",
                    Wire.number(log.arrival(), 3),
                    "since",
                    Wire.number(log.since(), 3),
                    "skipped",
                    log.skipped(),
                    "reading",
                    f.behind(),
                    "silent",
                    Wire.number(log.running() ? log.silentFor(now) : 0, 1),
                    "rate",
                    Wire.number(log.rate(now), 1),
                    "values",
                    Wire.number(log.rate(now) * log.taxels().size(), 0),
                    "readings",
                    log.readings(),
                    "lost",
                    log.counts() ? log.lost() : "",
                    "back",
                    log.stamps().back(),
                    "equal",
                    log.stamps().equal(),
                    "malformed",
                    log.side().malformed(),
                    "lastFault",
                    log.side().last(),
                    "unreadable",
                    log.unreadable(),
                    "lastUnreadable",
                    log.lastUnreadable(),
                    "warnings",
                    log.warnings(now));
            values(out, log);
            curves(out, log, taxel);
        }
        return Wire.object(out.toArray());
    }

    private static String head(NowLog log, String key) {
        String value = log.head().getOrDefault(key, "");
        return value.length() <= LONGEST ? value : value.substring(0, LONGEST) + "...";
    }

    private static void add(List<Object> to, Object... keysAndValues) {
        to.addAll(List.of(keysAndValues));
    }

    /** Last values of all columns; a letter for the state of each taxel. */
    private static void values(List<Object> out, NowLog log) {
        TaxelWatch watch = log.watch();
        StringBuilder marks = new StringBuilder();
        List<Wire.Raw> last = new ArrayList<>();
        List<Wire.Raw> zero = new ArrayList<>();
        for (int i = 0; i < log.taxels().size(); i++) {
            boolean silent = watch.silentFor(i) > 0 || watch.values(i) == 0;
            marks.append(
                    watch.saturatedNow(i)
                            ? 'r'
                            : silent ? 'n' : watch.stuckFor(i) > 0 ? 's' : watch.saturated(i) > 0 ? 'w' : '.');
            last.add(number(silent ? Double.NaN : watch.last(i)));
            zero.add(number(log.zero(i)));
        }
        Map<String, Wire.Raw> others = new LinkedHashMap<>();
        log.others().forEach(c -> others.put(c, number(log.last(c))));
        add(out, "marks", marks.toString(), "last", last, "zero", zero, "others", others);
        NowForces forces = log.forces();
        if (forces != null && forces.there()) {
            List<Wire.Raw> newtons = new ArrayList<>();
            for (int i = 0; i < log.taxels().size(); i++) {
                newtons.add(Wire.number(forces.force(i), 3));
            }
            add(out, "newtons", newtons, "pads", forces.pads());
        }
    }

    private static void curves(List<Object> out, NowLog log, String taxel) {
        List<String> wanted = new ArrayList<>();
        log.taxels().stream()
                .map(Layout.Taxel::column)
                .filter(c -> c.equals(taxel))
                .forEach(wanted::add);
        log.force().ifPresent(wanted::add);
        Recent recent = log.recent();
        Map<String, Wire.Raw> curves = new LinkedHashMap<>();
        for (String column : wanted) {
            int place = log.place(column);
            List<Wire.Raw> low = new ArrayList<>();
            List<Wire.Raw> high = new ArrayList<>();
            for (long s = recent.oldest(); s <= recent.newest(); s++) {
                low.add(number(recent.low(place, s)));
                high.add(number(recent.high(place, s)));
            }
            curves.put(column, Wire.raw("low", low, "high", high));
        }
        add(out, "from", Wire.number(recent.oldest() * Recent.WIDTH, 2), "width", Recent.WIDTH, "curves", curves);
    }

    /** What does not change from look to look. */
    static Wire.Raw layout(NowLog log, List<Wire.Raw> lines) {
        Map<String, String> units = new LinkedHashMap<>();
        log.others().forEach(c -> units.put(c, log.unit(c)));
        return Wire.raw(
                "taxels",
                        log.taxels().stream()
                                .map(t -> List.of(t.column(), t.pad()))
                                .toList(),
                "unit",
                        log.taxels().isEmpty()
                                ? ""
                                : log.unit(log.taxels().get(0).column()),
                "units", units,
                "force", log.force().orElse(""),
                "lines", lines,
                "project", head(log, "project"),
                "hand", head(log, "hand"));
    }
}
